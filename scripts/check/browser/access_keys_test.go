package browser

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

// keyboardUp is a phone whose own keyboard leaves so much of the page in sight: the head that stays there takes a good
// part of it.
var keyboardUp = browser.Size{Width: 390, Height: 480}

// halt is where the focus is: at which of the page's stops, and what is wrong with how it is seen there.
type halt struct {
	At     int
	What   string
	Faults []string
}

// counts notes what can be reached by Tab, in the order of the document, and what stands in the way of that order being the order
// in which the page is read.
const counts = `(() => {` + seeing + `
	window.halts = stops()
	const faults = [...document.querySelectorAll("[tabindex]")].filter(e => e.tabIndex > 0).map(e => "goes first: " + called(e))
	for (const e of document.querySelectorAll("body, body *")) {
		const s = getComputedStyle(e)
		if (s.order !== "0" || /reverse/.test(s.flexDirection + s.flexWrap)) faults.push("set in another order: " + called(e))
		const does = Object.keys(e.dataset).filter(k => /^(do|use|puts|fill|insert|press|save|start|many|carry|jobDo|classDo|classView|checkDo|unitsChoice|themeChoice)$/.test(k))
		if (does.length > 0 && !e.matches("button, a[href], input, select, textarea")) faults.push("no key presses it: " + called(e))
	}
	return faults
})()`

// at tells whether the focus is seen (WCAG 2.2, 2.4.7), and that nothing lies over it (2.4.11): over none of it, which is 2.4.12, or,
// where it is higher than half the screen, not over all of it.
const at = `(() => {` + seeing + `
	const e = document.activeElement
	if (e === document.body) return {At: -2, What: "the page", Faults: []}
	const faults = ring(e), r = e.getClientRects()[0], spots = [], {clientWidth: wide, clientHeight: high} = document.documentElement
	for (const x of [0.03, 0.5, 0.97]) for (const y of [0.1, 0.5, 0.9]) spots.push([r.x + x * r.width, r.y + y * r.height])
	const inside = spots.filter(([x, y]) => x >= 0 && y >= 0 && x < wide && y < high)
	const clear = inside.filter(([x, y]) => { const hit = document.elementFromPoint(x, y); return hit && (e.contains(hit) || e.closest("label")?.contains(hit)) })
	if (clear.length === 0 || r.height <= high / 2 && clear.length < inside.length) {
		const over = inside.map(([x, y]) => document.elementFromPoint(x, y)).find(hit => !hit || !e.contains(hit))
		faults.push(clear.length + " of " + inside.length + " spots are seen; over the others lies " + (over ? over.outerHTML.slice(0, 60) : "the edge of the screen") + " " + [r.x, r.y, r.width, r.height])
	}
	const scrolls = e.scrollHeight > e.clientHeight || e.scrollWidth > e.clientWidth
	return {At: scrolls && !halts.includes(e) ? -1 : halts.indexOf(e), What: called(e), Faults: faults}
})()`

// walk goes through the page by Tab and back by Shift and Tab: past every stop, in order, out at the end.
func (v *visit) walk() {
	v.Helper()
	require.NoError(v, v.tab.Resize(keyboardUp))
	assert.Empty(v, eval[[]string](v, counts))
	count := eval[int](v, `halts.length`)
	require.Greater(v, count, 5)
	forth, back := chromedp.KeyEvent(kb.Tab), chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift))
	pass := func(from, to, by int, press chromedp.Action[chromedp.Void], way string) {
		v.Helper()
		for want := from; ; {
			h := eval[halt](v, at)
			assert.Empty(v, h.Faults, "%s: %s", way, h.What)
			if h.At != -1 { // a region that the browser lets keys scroll is a stop of its own
				require.Equal(v, want, h.At, "%s: %s, where %s was to be", way, h.What, eval[string](v, fmt.Sprintf(`halts[%d].outerHTML.slice(0, 140)`, want)))
				if want == to {
					break
				}
				want += by
			}
			v.do(press)
		}
		v.do(press)
		assert.NotEqual(v, to, eval[halt](v, at).At, "%s: it leads out again", way)
	}
	eval[bool](v, `(halts[0].focus({focusVisible: true}), true)`)
	pass(0, count-1, 1, forth, "Tab")
	v.do(back)
	pass(count-1, 0, -1, back, "Shift and Tab")
}

// TestByKeyboardAlone walks through a page of each kind in English: the parts they are made of are the same in every language.
func TestByKeyboardAlone(t *testing.T) {
	for name, open := range map[string]func(v *visit){
		"bed": func(v *visit) { v.show("bed/") },
		"setout": func(v *visit) {
			v.show("setout/")
			v.press(`#setout [data-key="edges"][value*=","]`)
			v.wait(`document.querySelector('#setout [data-each]')`)
			v.press(`#setout [data-do="drag"]`)
			v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`)
		},
		"levels": func(v *visit) { v.show("levels/") },
		"class": func(v *visit) {
			v.show("class/#v=1&calculator=bed&units=metric&count=2&seed=11&view=round")
			v.solve("123456 m")
			eval[string](v, unfold)
		},
		"jobs": func(v *visit) {
			v.demoJob()
			v.openJob("jobs/")
		},
		"job": func(v *visit) {
			v.demoJob()
			v.jobDo("remove")
			v.wait(`document.querySelector(".job-undo")`)
			v.saved()
			eval[string](v, unfold)
		},
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone)
			open(v)
			v.walk()
		})
	}
}

// on puts the focus on an element as Tab would.
func (v *visit) on(selector string) {
	v.Helper()
	require.True(v, eval[bool](v, `(e => e ? (e.focus(), document.activeElement === e) : false)(document.querySelector(`+quote(selector)+`))`), selector)
}

// TestKeysDoWhatAPressDoes: Enter and Space press buttons, open what is folded, arrows choose.
func TestKeysDoWhatAPressDoes(t *testing.T) {
	enter, space := chromedp.KeyEvent("\r"), chromedp.KeyEvent(" ")
	v := begin(t, browser.Phone)
	v.open("bed/")
	before := v.text(answersOf)
	v.on(`#bed input[type="radio"]:checked`)
	v.do(chromedp.KeyEvent(kb.ArrowDown))
	assert.NotEqual(t, before, v.text(answersOf), "an arrow chooses the next tile")
	assert.Equal(t, "radio", eval[string](v, `document.activeElement.type`))
	for i, press := range []chromedp.Action[chromedp.Void]{enter, space} {
		fill := fmt.Sprintf(`#bed [data-fill][data-for="width"]:nth-child(%d)`, i+1)
		v.on(fill)
		v.do(press)
		assert.Equal(t, eval[string](v, `document.querySelector(`+quote(fill)+`).dataset.fill`), v.field("bed", "width"))
		v.on(`#bed .fold-working summary`)
		v.do(press)
		assert.Equal(t, i == 0, eval[bool](v, `document.querySelector("#bed .fold-working").open`))
	}
	v.on(`[data-units-choice="metric"]`)
	v.do(space)
	v.wait(`document.documentElement.dataset.units === "metric"`)
	v.on(`#bed [data-do="example"]`)
	v.do(enter)
	assert.Contains(t, v.text(headOf), "Worked example")
	assert.Equal(t, "example", eval[string](v, `document.activeElement.dataset.do`))

	v.open("setout/")
	rest := func() { v.Helper(); v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`) }
	outline := v.field("setout", "outline")
	v.on(`#setout [data-tool="rectangle"] summary`)
	v.do(enter)
	v.enter("setout", "rectangle.long", "10 ft")
	v.on(`#setout [data-use="rectangle"]`)
	v.do(space)
	rest()
	assert.NotEqual(t, outline, v.field("setout", "outline"))
	assert.Equal(t, "rectangle", eval[string](v, `document.activeElement.dataset.use`))
	v.on(`#setout tbody tr:nth-child(2) [data-puts]`)
	v.do(enter)
	rest()
	assert.True(t, eval[bool](v, `document.querySelector('#setout input[value="fixed"]').checked`))
	v.on(`#setout [data-do="drag"]`)
	v.do(space)
	start := v.field("setout", "start_x")
	v.do(chromedp.KeyEvent(kb.Tab))
	require.Equal(t, "yes", eval[string](v, `document.activeElement.dataset.pull ?? ""`), "the drawing comes next")
	v.do(chromedp.KeyEvent(kb.ArrowRight))
	rest()
	assert.NotEqual(t, start, v.field("setout", "start_x"))
	assert.Equal(t, "yes", eval[string](v, `document.activeElement.dataset.pull ?? ""`), "and keeps the focus")

	id := v.beginJob("By keys")
	v.fill("note-text", "written by keys")
	v.on(`[data-job-do="note"]`)
	v.do(enter)
	v.saved()
	assert.Len(t, v.kept(id).Notes, 1)
	eval[string](v, unfold)
	v.on(`[data-job-do="remove"]`)
	v.do(space)
	v.saved()
	v.on(`[data-job-do="undo"]`)
	v.do(enter)
	v.saved()
	assert.Len(t, v.kept(id).Notes, 1)
}
