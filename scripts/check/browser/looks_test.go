package browser

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/npm"
)

// pages lists the address of every page of the site, relative to its top.
func pages(t *testing.T) []string {
	t.Helper()
	var list []string
	require.NoError(t, fs.WalkDir(os.DirFS(dist), ".", func(path string, _ fs.DirEntry, err error) error {
		if filepath.Ext(path) == ".html" {
			list = append(list, strings.TrimSuffix(path, "index.html"))
		}
		return err
	}))
	require.GreaterOrEqual(t, len(list), 4)
	return list
}

// unfold opens everything that can be folded away, so that it is looked at too.
const unfold = `(document.querySelectorAll("details").forEach(d => d.open = true), "")`

// wrong fills every field with what cannot be worked.
const wrong = `(() => {
	for (const f of document.querySelectorAll('input[type="text"][data-key], textarea')) {
		f.value = "nonsense"
		f.dispatchEvent(new Event("input", {bubbles: true}))
	}
	return document.querySelectorAll("[aria-invalid]").length
})()`

// settled waits until no colour is on its way to another.
const settled = `Promise.all(document.getAnimations().map(a => a.finished)).then(() => "")`

// axeRuns runs every rule of axe that is on by default, and two that are not: text at 7:1 (WCAG 2.2, 1.4.6) and
// the size of targets (2.5.8). Where axe cannot decide about contrast (text of a drawing, text under the head that stays in
// sight) the text is held against the nearest ground that is not transparent, by the formula of WCAG 2.2 for contrast:
// 7:1, or 4.5:1 from 24 px, 18.66 px in bold.
const axeRuns = `axe.run(document, {rules: {"color-contrast-enhanced": {enabled: true}, "target-size": {enabled: true}}}).then(found => {
	const channels = colour => { const c = colour.match(/[\d.]+/g).map(Number); return {rgb: c.slice(0, 3), a: c[3] ?? 1} }
	const luminance = rgb => rgb.map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
		.reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0)
	const under = e => {
		for (; e; e = e.parentElement) {
			const c = channels(getComputedStyle(e).backgroundColor)
			if (c.a === 1) return c.rgb
		}
		return [255, 255, 255]
	}
	const faults = found.violations.flatMap(v => v.nodes.map(n => v.id + ": " + n.target.join(" ") + ": " + n.failureSummary))
	for (const v of found.incomplete.filter(i => i.id.startsWith("color-contrast"))) for (const n of v.nodes) {
		const e = document.querySelector(n.target.join(" ")), style = getComputedStyle(e)
		const [dark, light] = [luminance(channels(e.closest("svg") ? style.fill : style.color).rgb), luminance(under(e))].sort((a, b) => a - b)
		const size = parseFloat(style.fontSize), large = size >= 24 || size >= 18.66 && style.fontWeight >= 700
		const ratio = (light + 0.05) / (dark + 0.05)
		if (!(ratio >= (large ? 4.5 : 7))) faults.push("contrast " + ratio + ": " + n.target.join(" "))
	}
	return faults
})`

// TestAxeFindsNothing looks at every page in light and dark, and again with every field wrong.
func TestAxeFindsNothing(t *testing.T) {
	path, err := npm.Axe.File("axe.min.js")
	require.NoError(t, err)
	axe, err := os.ReadFile(path)
	require.NoError(t, err)
	site := serving(t)
	for _, p := range pages(t) {
		t.Run(p, func(t *testing.T) {
			v := look(t, shared, site, browser.Phone)
			v.show(p)
			v.do(chromedp.Evaluate[chromedp.Void](string(axe)))
			clean := func(state string) {
				t.Helper()
				for _, theme := range []string{"light", "dark"} {
					eval[string](v, `(document.documentElement.dataset.theme = "`+theme+`", "")`)
					eval[string](v, settled)
					assert.Empty(t, eval[[]string](v, axeRuns), "%s, %s", theme, state)
				}
			}
			clean("as served")
			if eval[int](v, wrong) > 0 {
				clean("every field wrong")
			}
		})
	}
}

// smallTargets lists what can be pressed and is under 56 px in one direction: a gloved finger needs that much.
// Excepted, as WCAG 2.2 excepts it in 2.5.5, is a link inside a sentence or a citation, whose height is that of
// the line. A radio button is pressed by the label around it.
const smallTargets = `[...document.querySelectorAll("a, button, input, textarea, select, summary, [tabindex='0']")].flatMap(e => {
	if (e.matches('input[type="radio"]')) e = e.closest("label")
	if (e.matches("a") && e.closest("p, li, dd, .cite") && getComputedStyle(e).display === "inline") return []
	if (focusing) e.focus() // the link that skips to the page, and the keys beside a field, are there only with the focus
	const r = e.getBoundingClientRect(), shown = e.checkVisibility() && r.width > 0
	return shown && (r.width < 55.9 || r.height < 55.9) ? [e.outerHTML.slice(0, 120) + ": " + r.width + " x " + r.height] : []
})`

// wide lists what reaches past the right edge of the screen, to find the cause when the page scrolls sideways.
const wide = `[...document.querySelectorAll("body *")].filter(e => e.getBoundingClientRect().right > innerWidth + 0.5 && !e.closest("svg"))
	.map(e => e.outerHTML.slice(0, 120))`

// TestPagesFitEveryScreen: targets fit a glove, and nothing scrolls sideways (WCAG 2.2, 1.4.10) down to 320 px, in both
// systems of units, also with every field wrong and everything unfolded.
func TestPagesFitEveryScreen(t *testing.T) {
	site := serving(t)
	for _, p := range pages(t) {
		t.Run(p, func(t *testing.T) {
			v := look(t, shared, site, browser.Phone)
			v.show(p)
			require.Positive(t, eval[int](v, `document.querySelectorAll("a, button").length`))
			fits := func(state string) {
				t.Helper()
				for _, size := range []browser.Size{browser.Narrow, browser.Phone, browser.Tablet} {
					require.NoError(t, v.tab.Resize(size))
					assert.Equal(t, size.Width, eval[int64](v, `Math.max(document.documentElement.scrollWidth, innerWidth)`),
						"%d px, %s: %v", size.Width, state, eval[[]string](v, wide))
					assert.Empty(t, eval[[]string](v, `{ const focusing = true; `+smallTargets+` }`), "%d px, %s", size.Width, state)
					strips := eval[[]string](v, `{ const focusing = false; [...document.querySelectorAll(".strip")].flatMap(s => {
						s.closest("[data-field]").querySelector("[data-key]").focus()
						return `+smallTargets+` }) }`)
					assert.Empty(t, strips, "%d px, %s, with the keys beside a field", size.Width, state)
				}
			}
			fits("as served")
			v.press(`[data-units-choice="metric"]`)
			eval[string](v, unfold)
			fits("metric")
			if eval[int](v, wrong) > 0 {
				fits("every field wrong")
			}
		})
	}
}

// show opens a page and everything on it that can be folded away. The page for a missing
// page may rightly come with the status 404.
func (v *visit) show(path string) {
	v.Helper()
	v.open(path)
	if path == "404.html" {
		v.tab.Forget()
	}
	eval[string](v, unfold)
}

// TestScriptsOff reads the page as served, through the browser's own tree: no script can run to look at it.
func TestScriptsOff(t *testing.T) {
	v := begin(t, browser.Phone)
	_, err := browser.Call(v.tab, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	require.NoError(t, err)
	for _, p := range []string{"bed", "batch"} {
		v.do(chromedp.Navigate(v.site.URL + p + "/"))
		shown := map[string]string{}
		for name, selector := range map[string]string{"head": `[data-part="head"] strong`, "answers": `[data-part="answers"] b`, "told": ".noscript"} {
			box, text := v.seen(selector)
			assert.Positive(t, box, "%s %s has a height", p, name)
			shown[name] = text
		}
		assert.Regexp(t, regexp.MustCompile(`>[^<]*\d`), shown["head"], "a figure stands in the head")
		assert.Regexp(t, regexp.MustCompile(`>[^<]*\d`), shown["answers"])
		assert.Contains(t, shown["told"], "Scripts are off")
	}
}

// seen gives the height of an element as laid out, and its markup, without a script. While the page is
// still being read the browser may number its elements anew, so it is asked again.
func (v *visit) seen(selector string) (height int64, markup string) {
	v.Helper()
	end := time.Now().Add(10 * time.Second)
	for {
		height, markup, err := v.look(selector)
		if err == nil {
			return height, markup
		}
		require.True(v, time.Now().Before(end), "%s: %v", selector, err)
		time.Sleep(50 * time.Millisecond)
	}
}

func (v *visit) look(selector string) (height int64, markup string, err error) {
	top, err := browser.Call(v.tab, dom.GetDocument, dom.GetDocumentParams{})
	if err != nil {
		return 0, "", err
	}
	found, err := browser.Call(v.tab, dom.QuerySelector, dom.QuerySelectorParams{NodeID: top.Root.NodeID, Selector: selector})
	if err != nil {
		return 0, "", err
	}
	box, err := browser.Call(v.tab, dom.GetBoxModel, dom.GetBoxModelParams{NodeID: found.NodeID})
	if err != nil {
		return 0, "", err
	}
	outer, err := browser.Call(v.tab, dom.GetOuterHTML, dom.GetOuterHTMLParams{NodeID: found.NodeID})
	return box.Model.Height, outer.OuterHTML, err
}

var pdfPage = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

func TestAPagePrints(t *testing.T) {
	for _, p := range []string{"bed/", "batch/"} {
		v := begin(t, browser.Phone)
		v.open(p)
		pdf, err := browser.Call(v.tab, page.PrintToPDF, page.PrintToPDFParams{})
		require.NoError(t, err)
		count := len(pdfPage.FindAllString(string(pdf.Data), -1))
		assert.GreaterOrEqual(t, count, 1, p)
		assert.LessOrEqual(t, count, 6, "%s: a sheet that nobody carries", p)
		assert.Contains(t, string(pdf.Data), "/FontDescriptor", "%s: there is text on it", p)

		_, err = browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		require.NoError(t, err)
		assert.True(t, eval[bool](v, `document.querySelector('[data-part="answers"]').checkVisibility()`), "the answers are printed")
		assert.True(t, eval[bool](v, `document.querySelector('[data-part="cautions"]').checkVisibility()`), "and the cautions")
		assert.False(t, eval[bool](v, `document.querySelector('[data-do="copy"]').checkVisibility()`), "but no buttons")
	}
}
