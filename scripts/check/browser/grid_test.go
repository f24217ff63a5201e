package browser

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

// keys presses keys of the pad of levels: each sign for itself, words between spaces.
func (v *visit) keys(keys string) {
	v.Helper()
	for _, k := range strings.Fields(keys) {
		signs := []string{k}
		if strings.ContainsAny(k[:1], "-.0123456789") {
			signs = strings.Split(k, "")
		}
		for _, sign := range signs {
			v.press(`#levels [data-pad="grid"][data-press="` + sign + `"]`)
		}
	}
}

func (v *visit) cell() string {
	v.Helper()
	return eval[string](v, `(c => c.dataset.row + "," + c.dataset.col + " " + c.textContent)(document.querySelector('#levels [data-pad][aria-current]'))`)
}

func (v *visit) rested() {
	v.Helper()
	v.wait(`!document.querySelector("#levels").hasAttribute("data-working")`)
}

// A setter types a grid with large keys, the next cell comes by itself, and a keyboard does the same.
func TestTypingAGridOnThePad(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("levels/")
	example := v.text(`#levels [data-part="answers"]`)
	v.keys("empty 12 mm next 13 next 11 row 14 next none 12 next 9 next 10")
	assert.Equal(t, "12mm, 13, 11\n14, , 12\n9, 10", v.field("levels", "grid"))
	assert.Equal(t, "2,1 10", v.cell())
	assert.Contains(t, v.text(`#levels [data-part="padat-grid"]`), "Row 3, reading 2, in mm")
	v.rested() // 12 mm is 0.47244 in, and the reader has US units
	assert.NotEqual(t, example, v.text(`#levels [data-part="answers"]`))
	v.wait(`location.hash.includes("grid=0.47244")`)

	v.press(`#levels [data-pad="grid"][data-row="1"][data-col="1"]`)
	v.do(chromedp.Focus(chromedp.CSS(`#levels [data-padded="grid"]`)))
	v.do(chromedp.KeyEvent("15"))
	assert.Equal(t, "12mm, 13, 11\n14, 15, 12\n9, 10", v.field("levels", "grid"), "by keyboard")
	v.do(chromedp.KeyEvent("\r"))
	assert.Equal(t, "1,2 12", v.cell(), "Enter is Next")
	v.do(chromedp.KeyEvent("7"))
	v.do(chromedp.KeyEvent("\r"))
	assert.Equal(t, "2,0 9", v.cell(), "the next row by itself")
	assert.Equal(t, "12mm, 13, 11\n14, 15, 7\n9, 10", v.field("levels", "grid"), "what was there is typed over")

	v.enter("levels", "grid", "1 mm,2\n3,4")
	assert.Equal(t, "0,0 1 mm", eval[string](v, `(c => c.dataset.row + "," + c.dataset.col + " " + c.textContent)(document.querySelector('#levels [data-pad][data-row]'))`), "the pad follows the field")
	assert.Empty(t, eval[[]string](v, `{ const focusing = false; `+smallTargets+` }`))
}

// A file is loaded as the spreadsheet wrote it; a bad one says where and changes nothing.
func TestLoadingAFile(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("levels/")
	file := func(name, text string) string {
		name = filepath.Join(t.TempDir(), name)
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
		return name
	}
	v.upload(`#levels [data-load="grid"]`, file("good.csv", "\uFEFF12,5 mm;13;11\r\n14;;12\r\n9;10;8\r\n"))
	v.rested()
	assert.Contains(t, v.text(`#levels [data-part="file-grid"]`), "good.csv")
	assert.Contains(t, v.text(`#levels [data-part="file-grid"]`), "mm")
	held := v.field("levels", "grid")
	assert.Equal(t, 3, len(strings.Split(held, "\n")), held)
	answers := v.text(`#levels [data-part="answers"]`)
	v.upload(`#levels [data-load="grid"]`, file("bad.csv", "12 mm,13\n14,wet\n"))
	v.wait(`document.querySelector('#levels [data-part="file-grid"]').textContent.includes("bad.csv")`)
	said := v.text(`#levels [data-part="file-grid"]`)
	assert.Contains(t, said, "row 2")
	assert.Contains(t, said, "wet")
	assert.Equal(t, held, v.field("levels", "grid"))
	assert.Equal(t, answers, v.text(`#levels [data-part="answers"]`))
}

// hundredMillion is a measure of the machine as it is now: how long it takes over so many additions, in milliseconds.
const hundredMillion = `(() => { const from = performance.now(); let x = 0; for (let i = 0; i < 1e8; i++) x += i; return performance.now() - from + x * 0 })()`

// A survey of a thousand by a thousand is loaded, worked, remembered and opened again, and the page takes keys all the
// while. The address bar does not hold it.
func TestAMillionReadings(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("levels/")
	file := rough(t, 1000)
	pace := eval[float64](v, hundredMillion)
	eval[string](v, blocks)
	v.upload(`#levels [data-load="grid"]`, file)
	end := time.Now().Add(90 * time.Second)
	for eval[bool](v, `document.querySelector("#levels").hasAttribute("data-working")`) {
		require.True(t, time.Now().Before(end), "it comes to an end")
		time.Sleep(100 * time.Millisecond)
	}
	longest := eval[float64](v, `window.longest`)
	pace = (pace + eval[float64](v, hundredMillion)) / 2
	t.Logf("the main thread was held up for %.0f ms at most, while a hundred million additions take it %.0f ms", longest, pace)
	assert.Contains(t, v.text(`#levels`), "1000000 cells in 1000 rows are held")
	assert.Contains(t, v.text(`#levels [data-part="linked"]`), "too long for a link")
	assert.Empty(t, eval[string](v, `location.hash`))
	assert.Less(t, eval[int](v, `document.querySelectorAll('#levels [data-pad][data-row]').length`), 100)
	assert.Less(t, eval[int](v, `document.querySelector("#levels").innerHTML.length`), 400_000)
	assert.Less(t, longest, 8*pace)
}

// drag moves a finger over the page, from a place in an element.
func (v *visit) drag(selector string, right, down float64) {
	v.Helper()
	at := eval[[]float64](v, `(async e => {
		e.scrollIntoView({block: "center"})
		for (let i = 0; i < 3; i++) await new Promise(requestAnimationFrame) // the browser's own scrolling follows
		const r = e.getBoundingClientRect()
		return [r.x + r.width / 2, r.y + r.height / 2]
	})(document.querySelector(`+quote(selector)+`))`)
	touch := func(kind input.DispatchTouchEventType, points ...*input.TouchPoint) {
		_, err := browser.Call(v.tab, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
		require.NoError(v, err)
	}
	touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: at[0], Y: at[1]})
	for i := 1.0; i <= 4; i++ {
		touch(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: at[0] + right*i/4, Y: at[1] + down*i/4})
	}
	touch(input.DispatchTouchEventTypeTouchEnd)
}

// A layout is dragged with a finger once that is asked for; before that, the finger scrolls the page.
func TestDraggingALayout(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("setout/")
	rest := func() { v.Helper(); v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`) }
	start := func() string { return v.field("setout", "start_x") + " " + v.field("setout", "start_y") }
	first := start()
	v.drag(`#setout [data-part="drawing"] svg`, 0, -120)
	v.wait(`scrollY > 0`)
	assert.Equal(t, first, start())
	time.Sleep(time.Second) // the page rolls on for a while
	v.press(`#setout [data-do="drag"]`)
	v.wait(`document.querySelector('#setout [data-do="drag"][aria-pressed="true"]')`)
	eval[string](v, `(["pointerdown", "pointerup"].forEach(e => addEventListener(e, () => window["at" + e] = scrollY, true)), "")`)
	v.drag(`#setout [data-part="drawing"] svg`, 40, -30)
	rest()
	moved := start()
	assert.NotEqual(t, first, moved)
	assert.Equal(t, eval[float64](v, `atpointerdown`), eval[float64](v, `atpointerup`), "the page stays where it was under the finger")
	assert.Contains(t, v.text(`#setout [data-part="drag"]`), "Moved")
	v.wait(`location.hash.includes("start=fixed")`)

	eval[string](v, `(document.querySelector('#setout [data-pull]').focus(), "")`)
	v.do(chromedp.KeyEvent(kb.ArrowRight)) // the right arrow
	rest()
	assert.NotEqual(t, moved, start(), "an arrow key nudges it")
	v.press(`#setout [data-do="drag"]`)
	assert.False(t, eval[bool](v, `document.querySelector('#setout [data-pull]').hasAttribute("tabindex")`))
}
