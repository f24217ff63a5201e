package browser

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"net/url"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

// shapes are the four outlines of the pictures, each with the area that it has by hand or, for the curve, by the
// surveyor's formula worked out here.
func shapes() map[string]struct {
	entry  string
	metres float64
} {
	var corners []string
	var xs, ys []float64
	for i := range 60 {
		a := float64(i) * 2 * math.Pi / 60
		r := 4.5 * (1 + 0.2*math.Cos(2*a) + 0.1*math.Sin(3*a))
		xs, ys = append(xs, math.Round(1200*r*math.Cos(a))/1000), append(ys, math.Round(1000*r*math.Sin(a))/1000)
		corners = append(corners, fmt.Sprintf("%.3f m,%.3f m", xs[i], ys[i]))
	}
	curve := 0.0
	for i := range xs {
		j := (i + 1) % len(xs)
		curve += (xs[i]*ys[j] - xs[j]*ys[i]) / 2
	}
	return map[string]struct {
		entry  string
		metres float64
	}{
		"rectangle": {"outline=0 m,0 m;6.4 m,0 m;6.4 m,4.3 m;0 m,4.3 m&edges=building,open,open,open", 27.52},
		"ell":       {"outline=0 m,0 m;7.2 m,0 m;7.2 m,3.1 m;4.1 m,3.1 m;4.1 m,6 m;0 m,6 m&holes=5.2 m,1.4 m;5.35 m,1.55 m&edges=building,open,open,wall,open,building", 7.2*3.1 + 4.1*2.9 - 0.15*0.15},
		"curve":     {"outline=" + strings.Join(corners, ";"), curve},
		"wedge":     {"outline=0 m,0 m;8 m,0.6 m;1.2 m,3.2 m&edges=wall,open,open&turn=4.289 deg", (8*3.2 - 1.2*0.6) / 2},
	}
}

// link is an entry as the address bar holds it.
func fragment(entry string) string {
	var pairs []string
	for pair := range strings.SplitSeq(entry, "&") {
		key, value, _ := strings.Cut(pair, "=")
		pairs = append(pairs, key+"="+url.QueryEscape(value))
	}
	return "setout/#" + strings.Join(pairs, "&")
}

// inked is the area of all closed outlines of a kind on the plan, over the area within the outermost, as a share.
const inked = `(() => {
	const area = d => d.split("Z").filter(Boolean).map(r => {
		const n = r.match(/-?[\d.]+/g).map(Number)
		let sum = 0
		for (let i = 0; i < n.length; i += 2) sum += n[i] * n[(i + 3) % n.length] - n[(i + 2) % n.length] * n[i + 1]
		return sum / 2
	})
	const kinds = {}
	for (const p of document.querySelectorAll('#setout [data-part="drawing"] .plan-shapes .line')) {
		const kind = p.getAttribute("class").split("s-")[1]
		if (p.getAttribute("d").includes("Z")) (kinds[kind] ||= []).push(area(p.getAttribute("d")))
	}
	const sum = of => of.flat().reduce((a, b) => a + b, 0)
	const whole = kinds.outline.slice(0, -1), outline = kinds.outline.at(-1)
	return Math.abs(sum(whole) + sum(kinds.mortar || [])) / Math.abs(sum([outline]))
})()`

// The four shapes come up from a link with answers and a plan whose pavers cover what the area of the outline leaves
// beside the joints.
func TestSetOutShapes(t *testing.T) {
	for name, shape := range shapes() {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, `try { localStorage.setItem("setbook.units", "metric") } catch {}`)
			v.open(fragment(shape.entry))
			v.wait(`document.querySelector('#setout [data-part="state"], #setout [data-part="head"]').textContent.includes("Your figures")`)
			v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`)
			assert.Regexp(t, `\d`, v.text(`#setout [data-answer="full"] dd`))
			covered := eval[float64](v, inked)
			assert.InDelta(t, 0.98, covered, 0.015, "pavers and what joints leave")
			assert.GreaterOrEqual(t, eval[int](v, `document.querySelectorAll("#setout figure.drawing svg.drawing").length`), 4)
			working := eval[string](v, `document.querySelector('#setout [data-part="working"]').textContent`)
			got := regexp.MustCompile(`= ([\d.]+) m² \(`).FindStringSubmatch(working)
			require.NotNil(t, got, "the step that adds the areas up")
			area, err := strconv.ParseFloat(got[1], 64)
			require.NoError(t, err)
			assert.InDelta(t, shape.metres, area, 1e-4)
		})
	}
}

// On paper the plan stands on sheets of its own, and a length on it measures what the stated scale says: on the page as it is laid
// out for print, and in the file, which a browser would make smaller as a whole if anything on the page were too wide.
func TestSetOutPrints(t *testing.T) {
	for _, paper := range []struct{ wide, high float64 }{{8.27, 11.69}, {8.5, 11}} {
		v := begin(t, browser.Tablet, `try { localStorage.setItem("setbook.units", "metric") } catch {}`)
		v.open(fragment(shapes()["rectangle"].entry))
		v.wait(`document.querySelector('#setout [data-part="drawing"] .plan-sheet')`)
		v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`)
		assert.False(t, eval[bool](v, `document.querySelector(".plan-sheet").checkVisibility()`), "a screen shows no sheet")

		_, err := browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		require.NoError(t, err)
		assert.True(t, eval[bool](v, `document.querySelector(".plan-sheet").checkVisibility()`))
		assert.Equal(t, "Scale 1:50", eval[string](v, `document.querySelector(".plan-scale").textContent`))
		const mm = `.getBoundingClientRect().width * 25.4 / 96`
		assert.InDelta(t, 40, eval[float64](v, `document.querySelector(".plan-bar")`+mm), 0.5, "2 m, and the line's width")
		assert.InDelta(t, 178, eval[float64](v, `document.querySelector(".plan-sheet")`+mm), 0.05)
		_, err = browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
		require.NoError(t, err)

		yes := true
		file, err := browser.Call(v.tab, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: paper.wide, PaperHeight: paper.high, PrintBackground: &yes, PreferCSSPageSize: &yes})
		require.NoError(t, err)
		if keep := os.Getenv("SETBOOK_PDF"); keep != "" {
			require.NoError(t, os.WriteFile(fmt.Sprintf("%s-%.0f.pdf", keep, paper.high*10), file.Data, 0o644))
		}
		scales := pageScales(t, file.Data)
		require.Greater(t, len(scales), 3, "pages")
		for _, s := range scales {
			assert.InDelta(t, 0.75, s, 1e-3, "points of paper a CSS pixel: 72 over 96, unless the page is made smaller")
		}
	}
}

var (
	stream = regexp.MustCompile(`(?s)stream\r?\n(.*?)endstream`)
	// A page begins by turning its y axis down, from the page's height, and then scales CSS pixels.
	pageStart = regexp.MustCompile(`^([\d.]+) 0 0 -[\d.]+ 0 [\d.]+ cm\nq\n([\d.]+) 0 0 [\d.]+ [\d.]+ [\d.]+ cm`)
)

// pageScales is the scale at which each page of a PDF is drawn, in points a CSS pixel.
func pageScales(t *testing.T, pdf []byte) (scales []float64) {
	t.Helper()
	for _, m := range stream.FindAllSubmatch(pdf, -1) {
		r, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue // it is not packed
		}
		content, err := io.ReadAll(r)
		if err != nil {
			continue
		}
		found := pageStart.FindSubmatch(content)
		if found == nil {
			continue // a font, a picture, a hatch
		}
		scale := 1.0
		for _, f := range found[1:] {
			n, err := strconv.ParseFloat(string(f), 64)
			require.NoError(t, err)
			scale *= n
		}
		scales = append(scales, scale)
	}
	return scales
}

// A search that is stopped gives the best layouts so far and says so, and one that is left to its end does not.
func TestSetOutSearchStops(t *testing.T) {
	v := begin(t, browser.Phone, `try { localStorage.setItem("setbook.units", "metric") } catch {}`)
	v.open(fragment(shapes()["curve"].entry + "&paver_l=100 mm&paver_w=100 mm&joint=3 mm&turn=33 deg&start=fixed"))
	v.wait(`document.querySelector('#setout [data-part="head"]').textContent.includes("Your figures")`)
	v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`)
	assert.Equal(t, "(not there)", v.text(`#setout [data-table="layouts"]`), "a given start is not searched for")
	// The button is there for a second or so: it is pressed as soon as it comes.
	eval[string](v, `(new MutationObserver((_, o) => {
		const stop = document.querySelector('#setout [data-do="stop"]')
		if (stop) { o.disconnect(); stop.click() }
	}).observe(document.querySelector("#setout"), {childList: true, subtree: true}), "")`)
	v.press(`#setout input[value="search"]`)
	v.wait(`document.querySelector('#setout [data-table="layouts"]')?.textContent.includes("ended early")`)
	v.press(`#setout [data-do="again"]`)
	v.wait(`document.querySelector('#setout [data-table="layouts"]') && !document.querySelector('#setout [data-table="layouts"]').textContent.includes("ended early")`)
	assert.GreaterOrEqual(t, eval[int](v, `document.querySelectorAll('#setout [data-table="layouts"] tbody tr').length`), 2)
	// What a layout offers goes into the fields.
	eval[string](v, `(document.querySelector('#setout [data-table="layouts"] tbody tr:nth-child(2) button').click(), "")`)
	v.wait(`document.querySelector('#setout input[value="fixed"]').checked`)
	assert.NotEqual(t, "0 m", v.field("setout", "start_x"))
}
