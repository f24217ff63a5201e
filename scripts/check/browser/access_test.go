package browser

import (
	"encoding/json"
	"os"
	"strings"
	"testing"
	"unicode"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/npm"
)

// zoomed is a window of 1280 by 1024 px at 400 % (WCAG 2.2, 1.4.10).
var zoomed = browser.Size{Width: 320, Height: 256}

// TestEveryPageForEverybody looks at each page as served and with every field wrong: at 400 %, with the spacing of WCAG 2.2,
// 1.4.12, with forced colours, and through the accessibility tree. One page is one visit, since there are many.
func TestEveryPageForEverybody(t *testing.T) {
	site := serving(t)
	for _, p := range pages(t) {
		t.Run(p, func(t *testing.T) {
			v := look(t, shared, site, browser.Phone)
			v.show(p)
			v.forEverybody("as served")
			if eval[int](v, wrong) > 0 {
				v.forEverybody("every field wrong")
			}
		})
	}
}

func (v *visit) forEverybody(state string) {
	v.Helper()
	eval[string](v, spaced)
	assert.Empty(v, eval[[]string](v, cut), "%s, with wide spacing", state)
	require.NoError(v, v.tab.Resize(zoomed))
	assert.Empty(v, eval[[]string](v, cut), "%s, at 400 %% with wide spacing", state)
	eval[string](v, `(document.adoptedStyleSheets = [], "")`)
	assert.Empty(v, eval[[]string](v, cut), "%s, at 400 %%", state)
	require.NoError(v, v.tab.Resize(browser.Phone))
	v.media("forced-colors", "active")
	assert.Empty(v, eval[[]string](v, untold), "%s, with forced colours", state)
	v.media("forced-colors", "none")
	assert.Empty(v, v.unread(), "%s, in the accessibility tree", state)
}

// media has the browser say that the person has chosen something for the whole device.
func (v *visit) media(name, value string) {
	v.Helper()
	_, err := browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: name, Value: value}, {Name: "prefers-reduced-motion", Value: "reduce"}, // no colour is on its way when it is looked at
	}})
	require.NoError(v, err)
}

// spaced sets the spacing of text as somebody does who reads with difficulty: the figures of WCAG 2.2, 1.4.12.
const spaced = `{ const s = new CSSStyleSheet()
	s.replaceSync("* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-block-end: 2em !important }")
	document.adoptedStyleSheets = [s]; "" }`

// cut lists what cannot be seen whole, or only by scrolling sideways: but for tables, drawings, code and the text of a field, each in
// a region of its own. A line that is cut short on purpose must stand whole elsewhere on the page.
const cut = `(() => {
	const faults = [], name = e => e.outerHTML.slice(0, 100)
	const {clientWidth: wide, clientHeight: high} = document.documentElement // the browser makes innerWidth larger where a page is too wide
	if (document.documentElement.scrollWidth > wide) faults.push("the page scrolls sideways: " + document.documentElement.scrollWidth)
	for (const e of document.querySelectorAll("body *")) {
		if (e.closest("svg") || !e.checkVisibility({visibilityProperty: true})) continue
		const style = getComputedStyle(e), r = e.getBoundingClientRect()
		if (!r.width || !r.height) continue
		let region = null
		for (let p = e.parentElement; p !== document.body && p; p = p.parentElement) if (/auto|scroll/.test(getComputedStyle(p).overflowX)) region = p
		if (r.right > wide + 0.5 && !region) faults.push("past the edge: " + name(e))
		const over = e.scrollWidth > e.clientWidth + 1
		if (over && /auto|scroll/.test(style.overflowX) && !e.matches("textarea, input, pre") && !e.querySelector("table, svg"))
			faults.push("only by scrolling sideways: " + name(e))
		if (/hidden|clip/.test(style.overflowX + style.overflowY) && e.clientWidth && !e.matches("input, select") && (over || e.scrollHeight > e.clientHeight + 1)) {
			const whole = style.textOverflow === "ellipsis" && e.textContent.split(": ").slice(1).join(": ")
			if (!whole || ![...document.querySelectorAll("main *")].some(o => o !== e && !o.contains(e) && o.textContent.includes(whole)))
				faults.push("cut off: " + name(e))
		}
		if (e.matches("button, .button, summary, legend, label") && over && style.display !== "inline") faults.push("runs over: " + name(e))
		if (/sticky|fixed/.test(style.position) && !region && r.height > high * 0.41) faults.push("in the way: " + name(e))
	}
	return faults
})()`

// seeing are what the checks of colours share: the ground under an element, and the contrast of WCAG 2.2.
const seeing = `
	const channels = colour => { const c = colour.match(/[\d.]+/g).map(Number); return {rgb: c.slice(0, 3), a: c[3] ?? 1} }
	const luminance = colour => channels(colour).rgb.map(c => c / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
		.reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0)
	const contrast = (a, b) => { const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y); return (light + 0.05) / (dark + 0.05) }
	const ground = e => { // colours that let others through lie over what is under them
		const {rgb, a} = e ? channels(getComputedStyle(e).backgroundColor) : {rgb: [255, 255, 255], a: 1}
		const below = a < 1 && channels(ground(e.parentElement)).rgb
		return "rgb(" + rgb.map((c, i) => a < 1 ? a * c + (1 - a) * below[i] : c).join() + ")"
	}
	const stops = () => [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter(e =>
		e.tabIndex >= 0 && !e.disabled && e.checkVisibility({visibilityProperty: true}) && (e.type !== "radio" || e.checked))
	const ring = e => {
		e = e.closest(".job-file") ?? e // its whole label is the button
		const s = getComputedStyle(e), at = parseFloat(s.outlineWidth)
		return s.outlineStyle !== "none" && at >= 2 && contrast(s.outlineColor, ground(e.parentElement)) >= 3 ? [] : ["its focus is not seen: " + s.outline]
	}
	const called = e => e.outerHTML.slice(0, 140)
`

// untold lists what cannot be told any more once the browser has put its own few colours in the place of all others:
// the edge of what can be pressed or written in (3:1, WCAG 2.2, 1.4.11), what is pressed or chosen, the cell that is
// written, lines and letters of drawings, what is wrong, answers from before, the focus.
const untold = `(() => {` + seeing + `
	if (!matchMedia("(forced-colors: active)").matches) return ["no colours are forced"]
	const faults = [], all = s => [...document.querySelectorAll(s)].filter(e => e.checkVisibility({visibilityProperty: true}))
	const look = e => { const s = getComputedStyle(e); return [s.backgroundColor, s.borderTopWidth, s.borderTopStyle, s.outlineStyle].join() }
	for (const e of all('button, .button, input:not([type="radio"]), textarea, select, .tile input')) {
		if (getComputedStyle(e).opacity === "0") continue
		const s = getComputedStyle(e)
		if (!(parseFloat(s.borderBottomWidth) >= 1 && contrast(s.borderBottomColor, ground(e.parentElement)) >= 3)) faults.push("no edge: " + called(e))
		if (e.innerText && contrast(s.color, ground(e)) < 4.5) faults.push("its words are not read: " + called(e))
	}
	for (const e of all("[aria-pressed]")) {
		const was = e.getAttribute("aria-pressed"), before = look(e)
		e.setAttribute("aria-pressed", was !== "true")
		if (look(e) === before) faults.push("pressed or not: " + called(e))
		e.setAttribute("aria-pressed", was)
	}
	for (const e of all('.tile input:checked')) {
		const other = document.querySelector('input[name="' + e.name + '"]:not(:checked)')
		if (other && look(other) === look(e)) faults.push("chosen or not: " + called(e))
		if (contrast(getComputedStyle(e.nextElementSibling).color, ground(e)) < 4.5) faults.push("a choice is not read: " + called(e))
	}
	for (const e of all("td > [aria-current]")) {
		const other = document.querySelector("td > [data-pad]:not([aria-current])")
		if (other && look(other) === look(e)) faults.push("which cell: " + called(e))
	}
	for (const e of all("svg.drawing :is(.line, .dim, .hatch-line, .arrow, text)")) {
		const s = getComputedStyle(e), filled = e.matches(".arrow, text"), ink = filled ? s.fill : s.stroke
		if (ink !== "none" && !(contrast(ink, ground(e.closest("figure, div"))) >= (e.matches("text") ? 4.5 : 3))) faults.push("not drawn: " + called(e) + ink)
	}
	for (const e of all('[aria-invalid="true"]')) if (getComputedStyle(e).borderBottomStyle !== "double") faults.push("wrong or not: " + called(e))
	for (const e of all(".calculator[data-stale]")) {
		if (getComputedStyle(e.querySelector(".head")).borderBottomStyle !== "dashed" || !e.querySelector(".state-stale")?.innerText) faults.push("old or not: " + called(e))
	}
	for (const e of stops()) { e.focus({preventScroll: true, focusVisible: true}); faults.push(...ring(e).map(f => f + ": " + called(e))) }
	document.activeElement.blur()
	return faults
})()`

// told is what a page says in words that the accessibility tree must say too.
type told struct {
	Fields []struct {
		Name, Note string
		Invalid    bool
	}
	Choices  []string
	Answers  []string // name, value, name, value
	Drawings []string // title, description
	Tables   int
}

const tells = `(() => {
	const all = s => [...document.querySelectorAll(s)].filter(e => e.checkVisibility({visibilityProperty: true}))
	return {
		Fields: all('input:not([type="radio"], [type="file"], [type="checkbox"]), textarea, select').map(e => ({
			Name: e.labels[0]?.textContent ?? "", Invalid: e.getAttribute("aria-invalid") === "true",
			Note: e.closest("section, form")?.querySelector('[data-part="note-' + (e.dataset.key ?? e.dataset.jobField) + '"]')?.textContent ?? "",
		})),
		Choices: all("fieldset").map(e => e.querySelector("legend").textContent),
		Answers: all('[data-part="head"] .main-answer').flatMap(e => [e.querySelector("dt").textContent, e.querySelector("strong").textContent]),
		Tables: all("table").length,
		Drawings: all("svg.drawing").flatMap(e => ["title", "desc"].map(part => e.querySelector(part)?.textContent ?? "")),
	}
})()`

// tree is the accessibility tree, the nodes that are passed over left out.
type tree map[accessibility.NodeID]*accessibility.Node

func (v *visit) tree() tree {
	v.Helper()
	got, err := browser.Call(v.tab, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	require.NoError(v, err)
	require.NotEmpty(v, got.Nodes)
	t := tree{}
	for _, n := range got.Nodes {
		t[n.NodeID] = n
	}
	return t
}

// is is a value of the tree as text.
func is(value *accessibility.Value) string {
	if value == nil {
		return ""
	}
	var text string
	if json.Unmarshal(value.Value, &text) != nil {
		return string(value.Value)
	}
	return text
}

func property(n *accessibility.Node, name accessibility.PropertyName) string {
	for _, p := range n.Properties {
		if p.Name == name {
			return is(p.Value)
		}
	}
	return ""
}

// under is all text under a node.
func (t tree) under(n *accessibility.Node) string {
	if is(n.Role) == "StaticText" {
		return is(n.Name)
	}
	var b strings.Builder
	for _, id := range n.ChildIDs {
		if child := t[id]; child != nil {
			b.WriteString(t.under(child) + " ")
		}
	}
	return b.String()
}

// inGroup reports whether a node is in a group with a name.
func (t tree) inGroup(n *accessibility.Node) bool {
	for ; n != nil; n = t[n.ParentID] {
		if role := is(n.Role); (role == "group" || role == "radiogroup") && is(n.Name) != "" {
			return true
		}
	}
	return false
}

// bare is a text without its spaces, which the tree and the page set differently.
func bare(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, text)
}

// unread lists what somebody who hears the page is not told.
func (v *visit) unread() (faults []string) {
	v.Helper()
	said, t := eval[told](v, tells), v.tree()
	byRole := map[string][]*accessibility.Node{}
	for _, n := range t {
		if !n.Ignored {
			byRole[is(n.Role)] = append(byRole[is(n.Role)], n)
		}
	}
	for _, role := range []string{"button", "link", "textbox", "searchbox", "combobox", "radio", "checkbox", "table", "region", "progressbar", "image", "img"} {
		for _, n := range byRole[role] {
			if is(n.Name) == "" {
				faults = append(faults, role+" without a name: "+t.under(n))
			}
		}
	}
	fields := append(append(byRole["textbox"], byRole["searchbox"]...), byRole["combobox"]...)
	for _, f := range said.Fields {
		found := false
		for _, n := range fields {
			found = found || bare(is(n.Name)) == bare(f.Name) && strings.Contains(bare(is(n.Description)), bare(f.Note)) &&
				f.Invalid == (property(n, accessibility.PropertyNameInvalid) == "true")
		}
		if !found {
			faults = append(faults, "no such field: "+f.Name+", "+f.Note)
		}
	}
	for _, choice := range said.Choices {
		found := false
		for _, n := range byRole["group"] {
			found = found || bare(is(n.Name)) == bare(choice)
		}
		if !found {
			faults = append(faults, "no such choice: "+choice)
		}
	}
	for _, n := range byRole["radio"] {
		if !t.inGroup(n) {
			faults = append(faults, "not in a group: "+is(n.Name))
		}
	}
	if got := len(byRole["table"]); got != said.Tables {
		faults = append(faults, "tables are not told as such")
	}
	for i := 0; i < len(said.Drawings); i += 2 {
		title, says, found := bare(said.Drawings[i]), bare(said.Drawings[i+1]), false
		for _, n := range append(byRole["img"], byRole["image"]...) {
			found = found || title != "" && says != "" && strings.Contains(bare(is(n.Name)), title) && strings.Contains(bare(is(n.Name)+is(n.Description)), says)
		}
		if !found {
			faults = append(faults, "a drawing without a name or a description: "+said.Drawings[i])
		}
	}
	head := ""
	for _, n := range byRole["status"] {
		if property(n, accessibility.PropertyNameLive) != "" {
			head += t.under(n)
		}
	}
	for _, text := range said.Answers {
		if !strings.Contains(bare(head), bare(text)) {
			faults = append(faults, "no live region says: "+text)
		}
	}
	return faults
}

// TestAnAnswerIsAnnounced: after a key, the region that is read out as it changes is the same as before, polite and read as a whole, and
// holds name and value of each main answer; what is wrong is said there too. On one page of each kind: worked on the page, beside it.
func TestAnAnswerIsAnnounced(t *testing.T) {
	for page, field := range map[string]string{"bed": "width", "levels": "step_x", "setout": "paver_l"} {
		t.Run(page, func(t *testing.T) {
			v := begin(t, browser.Phone)
			v.open(page + "/")
			rest := func() { v.Helper(); v.wait(`!document.querySelector("#` + page + `").hasAttribute("data-working")`) }
			head := `document.querySelector('#` + page + ` [data-part="head"]')`
			eval[bool](v, `(window.status = 0, window.region = `+head+`, true)`)
			announced := func(state string) {
				t.Helper()
				require.True(t, eval[bool](v, `window.region === `+head), "the region stays, or nothing is read out")
				said, tree := eval[told](v, tells), v.tree()
				for _, n := range tree {
					if is(n.Role) == "status" && strings.Contains(tree.under(n), state) {
						assert.Equal(t, "polite", property(n, accessibility.PropertyNameLive))
						assert.Equal(t, "true", property(n, accessibility.PropertyNameAtomic))
						require.NotEmpty(t, said.Answers)
						for _, text := range said.Answers {
							assert.Contains(t, bare(tree.under(n)), bare(text))
						}
						return
					}
				}
				assert.Fail(t, "no status says "+state)
			}
			announced("Worked example")
			before := v.text("#" + page + ` [data-part="answers"]`)
			v.enter(page, field, "7/16 in")
			if page != "bed" {
				v.enter(page, field, "2 ft")
			}
			rest()
			assert.NotEqual(t, before, v.text("#"+page+` [data-part="answers"]`))
			announced("Your figures")
			v.enter(page, field, "nonsense")
			announced("Not worked")
		})
	}
}

// TestAxeFindsNothingInFurtherStates looks at what only comes about by use.
func TestAxeFindsNothingInFurtherStates(t *testing.T) {
	path, err := npm.Axe.File("axe.min.js")
	require.NoError(t, err)
	axe, err := os.ReadFile(path)
	require.NoError(t, err)
	const stuck = `Worker = class extends Worker { postMessage(m) { if (m[0] !== "work") super.postMessage(m) } }`
	for name, state := range map[string]struct {
		script string
		do     func(v *visit) *visit
	}{
		"a bad reading": {"", func(v *visit) *visit {
			v.show("levels/")
			v.do(chromedp.Focus(chromedp.CSS(`#levels [data-padded="grid"]`)), chromedp.KeyEvent("wet"))
			v.wait(`document.querySelector("#levels[data-stale]")`)
			return v
		}},
		"work under way": {stuck, func(v *visit) *visit {
			v.show(longPage + "/")
			v.paste(longPage, longField, quicker)
			v.busy()
			return v
		}},
		"tools, choices one by one and dragging": {"", func(v *visit) *visit {
			v.show("setout/")
			v.press(`#setout [data-key="edges"][value*=","]`)
			v.wait(`document.querySelector('#setout [data-each]')`)
			v.press(`#setout [data-use="rectangle"]`)
			v.press(`#setout [data-do="drag"]`)
			v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`)
			return v
		}},
		"a wrong answer": {"", func(v *visit) *visit {
			v.show("class/#v=1&calculator=bed&units=metric&count=2&seed=11&view=round")
			v.solve("123456 m")
			eval[string](v, unfold)
			return v
		}},
		"a worksheet with its key": {"", func(v *visit) *visit {
			v.show("class/#v=1&calculator=bed&units=metric&count=2&seed=11&view=key")
			return v
		}},
		"a job with a conflict, and one thing removed": {"", func(v *visit) *visit {
			id := v.demoJob()
			other := look(v.T, shared, v.site, browser.Phone)
			other.openJob("job/#job=" + id)
			v.fill("note-text", "from the first page")
			v.jobDo("note")
			v.saved()
			other.fill("note-text", "from the second page")
			other.jobDo("note")
			other.unsaved()
			other.jobDo("remove")
			eval[string](other, unfold)
			return other
		}},
		"what is handed over": {"", func(v *visit) *visit {
			v.openJob("job/#job=" + v.demoJob() + "&view=hand-over")
			v.wait(`document.querySelector(".paper")`)
			eval[string](v, unfold)
			return v
		}},
		"an order": {"", func(v *visit) *visit {
			v.openJob("job/#job=" + v.demoJob() + "&view=order")
			v.wait(`document.querySelector(".paper")`)
			eval[string](v, unfold)
			return v
		}},
		"a tablet for everybody that counts down": {onCounter, func(v *visit) *visit {
			v.show("batch/")
			eval[string](v, `(document.dispatchEvent(new PointerEvent("pointerdown")), ahead += 45000, document.dispatchEvent(new Event("visibilitychange")), "")`)
			v.wait(`document.querySelector(".idle")`)
			return v
		}},
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, state.script)
			v = state.do(v)
			v.T = t
			v.do(chromedp.Evaluate[chromedp.Void](string(axe)))
			for _, theme := range []string{"light", "dark"} {
				eval[string](v, `(document.documentElement.dataset.theme = "`+theme+`", "")`)
				eval[string](v, settled)
				assert.Empty(t, eval[[]string](v, axeRuns), theme)
			}
			v.media("prefers-contrast", "more")
			eval[string](v, `(document.documentElement.dataset.theme = "auto", "")`)
			eval[string](v, settled)
			assert.Empty(t, eval[[]string](v, axeRuns), "with more contrast")
			assert.Empty(t, eval[[]string](v, `{ const focusing = false; `+smallTargets+` }`))
			v.forEverybody(name)
		})
	}
}
