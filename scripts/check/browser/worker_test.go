package browser

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

// What the tests of long work type into: a calculator that is worked out beside the page, a field of it, and entries that
// take no time. The other long entry is a large rough slab, made flat enough: it takes a worker a minute.
const (
	longPage  = "levels"
	longField = "step_x"
	quick     = "2 ft"
	quicker   = "3 ft"
	flatTile  = `#levels input[value="flat"]`
	planeTile = `#levels input[value="plane"]`
)

// rough is a file of heights that no plane comes near: n rows of n, in millimetres.
func rough(t *testing.T, n int) string {
	t.Helper()
	random := rand.New(rand.NewPCG(1, 2))
	var b strings.Builder
	b.WriteString("7 mm")
	for i := 1; i < n*n; i++ {
		if i%n == 0 {
			b.WriteString("\r\n")
		} else {
			b.WriteString(",")
		}
		b.WriteString(strconv.Itoa(2*(i/n) + random.IntN(40)))
	}
	name := filepath.Join(t.TempDir(), "rough.csv")
	require.NoError(t, os.WriteFile(name, []byte(b.String()), 0o644))
	return name
}

// upload has a file chosen for a table.
func (v *visit) upload(selector, file string) {
	v.Helper()
	v.do(chromedp.SetUploadFiles(chromedp.CSS(selector), []string{file}))
	v.wait(`document.querySelector('[data-part="file-grid"]').textContent`)
}

// blocks notes how long the main thread was held up at a time: the longest pause between two looks at the clock.
const blocks = `(() => {
	let last = performance.now()
	window.longest = 0
	const look = () => { const now = performance.now(); longest = Math.max(longest, now - last); last = now; setTimeout(look) }
	look()
	return ""
})()`

func long(part string) string { return `#` + longPage + ` [data-part="` + part + `"]` }

func (v *visit) busy() { v.Helper(); v.wait(`document.querySelector('` + long("work") + ` progress')`) }

func (v *visit) worked() {
	v.Helper()
	v.wait(`!document.querySelector("#` + longPage + `").hasAttribute("data-working")`)
	assert.Contains(v, v.text(long("state")), "Your figures")
	assert.Empty(v, v.text(long("work")))
}

// At mount nothing long is worked: the page as served shows the example, and no worker is started for it.
func TestALongExampleIsNotWorkedAgain(t *testing.T) {
	v := begin(t, browser.Phone, `Worker = class extends Worker { constructor(...a) { super(...a); window.workers = (window.workers || 0) + 1 } }`)
	v.open(longPage + "/")
	time.Sleep(300 * time.Millisecond)
	assert.Zero(t, eval[int](v, `window.workers || 0`))
	assert.NotEmpty(t, v.text(long("answers")))
	v.enter(longPage, longField, quick)
	v.worked()
	v.enter(longPage, longField, quicker)
	v.worked()
	assert.Equal(t, 1, eval[int](v, `window.workers`), "it stays after its first use")
}

// The page takes keys and paints while a long work goes on, shows that it does, keeps the last answer in sight
// meanwhile, and ends with the best so far when it is told to stop.
func TestALongWorkLeavesThePageFree(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open(longPage + "/")
	v.upload(`#levels [data-load="grid"]`, rough(t, 300))
	v.worked()
	last := v.text(long("answers"))
	pace := eval[float64](v, hundredMillion)
	eval[string](v, blocks)
	v.press(flatTile)
	v.busy()
	assert.Equal(t, last, v.text(long("answers")), "the last answer stays")
	assert.Contains(t, v.text(long("state")), "Being worked out")
	v.wait(`document.querySelector("progress").value > 0`)
	first := eval[float64](v, `document.querySelector("progress").value`)
	v.wait(`document.querySelector("progress").value !== ` + strconv.FormatFloat(first, 'f', -1, 64))
	assert.Equal(t, last, v.text(long("answers")))
	v.press(`#` + longPage + ` [data-do="stop"]`)
	v.wait(`document.querySelector('` + long("state") + `').textContent.includes("Stopped early")`)
	assert.NotEqual(t, last, v.text(long("answers")), "the best so far")
	longest := eval[float64](v, `window.longest`)
	pace = max(pace, eval[float64](v, hundredMillion))
	t.Logf("the main thread was held up for %.0f ms at most, while a hundred million additions take it %.0f ms", longest, pace)
	assert.Less(t, longest, 3*pace, "where the page works it out itself, it is seconds")
}

func TestTypingAgainTakesThePlaceOfALongWork(t *testing.T) {
	v := begin(t, browser.Phone, `Worker = class extends Worker { postMessage(m, ...more) { (window.sent ||= []).push(m[0]); super.postMessage(m, ...more) } }`)
	v.open(longPage + "/")
	v.upload(`#levels [data-load="grid"]`, rough(t, 400))
	v.worked()
	plane := v.text(long("answers"))
	v.press(flatTile)
	v.busy()
	v.press(planeTile)
	v.worked()
	assert.True(t, eval[bool](v, `sent.includes("drop") && sent.at(-1) === "work"`), "it was told to end, and not waited for")
	assert.Equal(t, plane, v.text(long("answers")))
	v.paste(longPage, longField, "nonsense")
	assert.NotEmpty(t, v.text(long("note-"+longField)), "what is wrong is said, though the grid is too long to be read on the page")
	v.wait(`document.querySelector('#levels [data-key="step_x"]').hasAttribute("aria-invalid")`)
	assert.Equal(t, plane, v.text(long("answers")))
	v.press(`[data-units-choice="metric"]`)
	assert.Equal(t, "nonsense", v.field(longPage, longField))
	v.enter(longPage, longField, "1 ft")
	v.worked()
	assert.NotEqual(t, plane, v.text(long("answers")), "in metric units")
}

// What goes wrong beside the page leaves the last answer, says so, and is tried again.
func TestAFaultBesideThePage(t *testing.T) {
	for name, plant := range map[string]string{
		"a panic":           `m = ["work"]`,
		"a worker's end":    `setTimeout(() => this.dispatchEvent(new Event("error"))); return`,
		"a broken program":  `setTimeout(() => this.dispatchEvent(new MessageEvent("message", {data: ["broken", "planted"]}))); return`,
		"one that is stuck": `return`,
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, `Worker = class extends Worker { postMessage(m) { if (window.plant && m[0] === "work") { window.plant = false; `+plant+` } super.postMessage(m) } }`)
			v.open(longPage + "/")
			v.enter(longPage, longField, quick)
			v.worked()
			last := v.text(long("answers"))
			eval[bool](v, `window.plant = true`)
			v.paste(longPage, longField, quicker)
			switch name {
			case "a panic":
				v.wait(`document.querySelector('#notices [data-notice="fault-beside"]')`)
				assert.Equal(t, last, v.text(long("answers")))
				assert.True(t, eval[bool](v, `document.querySelector("#`+longPage+`").hasAttribute("data-stale")`))
				v.enter(longPage, longField, quick)
			case "one that is stuck":
				v.busy()
				v.enter(longPage, longField, "4 ft")
			}
			v.worked()
			if name == "a panic" || name == "a broken program" {
				require.Len(t, v.tab.Faults(), 1, "it is in the console")
				v.tab.Forget()
			}
			assert.Empty(t, v.tab.Faults())
		})
	}
}

// Out of reach of the network the worker comes out of the cache, as the page does.
func TestALongWorkWithoutANetwork(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open(longPage + "/")
	v.wait(`navigator.serviceWorker.controller`)
	require.NoError(t, v.site.Stop())
	v.reload()
	before := v.text(long("answers"))
	v.enter(longPage, longField, quick)
	v.worked()
	assert.NotEqual(t, before, v.text(long("answers")))
	assert.True(t, eval[bool](v, `typeof setbookAside === "function"`), "beside the page, not on it")
}

// Where a browser has no workers, the answer comes all the same, with the key.
func TestABrowserWithoutWorkers(t *testing.T) {
	for _, script := range []string{`delete window.Worker`, `Worker = class { constructor() { throw new Error("planted") } }`} {
		v := begin(t, browser.Phone, script)
		v.open(longPage + "/")
		before := v.text(long("answers"))
		v.paste(longPage, longField, quick)
		assert.NotEqual(t, before, v.text(long("answers")))
		assert.Contains(t, v.text(long("state")), "Your figures")
	}
}

// What was worked beside the page is remembered, and opened again with the units of the reader.
func TestALongEntryIsRemembered(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open(longPage + "/")
	example := v.text(long("answers"))
	v.enter(longPage, longField, quick)
	v.worked()
	v.wait(`location.hash.includes("step_x=2+ft")`)
	v.press(`[data-units-choice="metric"]`)
	v.wait(`document.querySelector('` + long("state") + `') && !document.querySelector("#levels").hasAttribute("data-working")`)
	answers := v.text(long("answers"))
	assert.NotEqual(t, example, answers)
	v.reload()
	v.wait(`document.querySelector('` + long("answers") + `').innerText === ` + quote(answers))
	v.open("about/")
	v.open(longPage + "/") // with nothing in the address
	v.wait(`document.querySelector('` + long("answers") + `').innerText === ` + quote(answers))
	v.press(`[data-units-choice="us"]`)
	v.press(`#` + longPage + ` [data-do="example"]`)
	v.wait(`document.querySelector('` + long("answers") + `').innerText === ` + quote(example))
	assert.Contains(t, v.text(long("state")), "Worked example")
}
