package browser

import (
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/bed"
	"setbook/calc/drill"
	"setbook/calc/slope"
	"setbook/calc/unit"
	"setbook/scripts/internal/browser"
)

// solve answers the exercise on the page.
func (v *visit) solve(text string) {
	v.Helper()
	require.True(v, eval[bool](v, `(() => { const f = document.querySelector("#class-answer"); f.focus(); f.select(); return true })()`))
	v.do(chromedp.KeyEvent(text), chromedp.KeyEvent("\r"))
}

// A student opens the teacher's link, works a round with no signal, and finds the score again; the key that counts is made
// by the calculator itself, beside the browser.
func TestAStudentWorksARound(t *testing.T) {
	const link = "class/#v=1&calculator=bed&units=metric&count=2&seed=11&view=round"
	set := drill.Set(&bed.Calculator, 11, 2, unit.Metric)
	print := func(i int) string { return unit.Style{System: unit.Metric, Decimal: '.'}.Print(set[i].Asked.Is) }
	v := begin(t, browser.Phone)
	v.open(link)
	v.wait(`navigator.serviceWorker.controller`)
	require.NoError(t, v.site.Stop())
	v.reload()
	assert.Contains(t, v.text("#class"), "Exercise 1 of 2")
	v.solve("nonsense")
	assert.Contains(t, v.text(".class-verdict"), "cannot be read")
	v.solve(print(0))
	assert.Contains(t, v.text(".class-verdict"), "Right")
	assert.Contains(t, v.text("#class"), "The key, step by step")
	v.press(`[data-class-do="next"]`)
	v.solve("123456 m")
	v.solve(print(1))
	v.press(`[data-class-do="next"]`)
	assert.Contains(t, v.text("#class"), "1 of 2 right at the first try")
	v.reload()
	v.press(`[data-class-do="next"]`)
	v.press(`[data-class-do="next"]`)
	assert.Contains(t, v.text("#class"), "0 of 2 right at the first try")
	assert.Contains(t, v.text("#class"), "out of ten: 5", "the best round is kept on the device")
	v.press(`[data-class-do="again"]`)
	assert.Equal(t, "#v=1&calculator=bed&units=metric&count=2&seed=12&view=round", eval[string](v, "location.hash"))
}

// A class that comes with no link begins with a sum that makes a first exercise, in round numbers of the reader's own units.
func TestAClassBegins(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("class/")
	assert.Equal(t, "slope", eval[string](v, `document.querySelector("#class-calculator").value`))
	x := drill.Set(&slope.Calculator, 1, 1, unit.US)[0]
	for _, in := range x.Given() {
		assert.Contains(t, v.text(".class-given"), x.Entry.Reading(in.Key).Text)
	}
}

// A worksheet prints with room to work in, and its key on a page of its own.
func TestAWorksheetPrints(t *testing.T) {
	sheets := map[string]int{}
	for _, view := range []string{"sheet", "key"} {
		v := begin(t, browser.Tablet)
		v.open("class/#v=1&calculator=bed&units=us&count=2&seed=11&view=" + view)
		pdf, err := browser.Call(v.tab, page.PrintToPDF, page.PrintToPDFParams{})
		require.NoError(t, err)
		sheets[view] = len(pdfPage.FindAllString(string(pdf.Data), -1))
		assert.Contains(t, v.text("#class"), "Set 11, 2 exercises")
		if view == "key" {
			_, err = browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
			require.NoError(t, err)
			assert.Equal(t, "page", eval[string](v, `getComputedStyle(document.querySelector(".worksheet-key")).breakBefore`))
		}
	}
	assert.GreaterOrEqual(t, sheets["sheet"], 1)
	assert.LessOrEqual(t, sheets["sheet"], 2, "two exercises")
	assert.Greater(t, sheets["key"], sheets["sheet"], "the key has its own page")
}
