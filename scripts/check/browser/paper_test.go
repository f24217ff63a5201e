package browser

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/scripts/internal/browser"
)

// papers are the sizes that are printed, in inches.
var papers = map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}}

// languages are the folders of the pages, by what a page of each is called.
var languages = map[string]string{"English": "", "Spanish": "in/es/"}

// take brings a job into the store through its file.
func (v *visit) take(j *job.Job) {
	v.Helper()
	text := job.Write(j)
	_, problems := job.Read(text)
	require.Empty(v, problems)
	v.openJob("jobs/")
	v.choose("j.json", text)
	v.jobDo("take")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
}

// anew opens a view of a job where another part of the same address may be open, which would load nothing.
func (v *visit) anew(at string) {
	v.Helper()
	v.open("about/")
	v.openJob(at)
}

var (
	pageContents = regexp.MustCompile(`/Contents (\d+) 0 R`)
	textLine     = regexp.MustCompile(`1 0 0 -1 \S+ (\S+) Tm`)
)

// written counts the lines of text on each page of a PDF as Chromium writes it: how many heights letters stand at.
func written(t *testing.T, pdf []byte) (pages []int) {
	t.Helper()
	for _, page := range pageContents.FindAllSubmatch(pdf, -1) {
		_, after, ok := bytes.Cut(pdf, fmt.Appendf(nil, "\n%s 0 obj", page[1]))
		require.True(t, ok)
		_, packed, ok := bytes.Cut(after, []byte("stream\n"))
		require.True(t, ok)
		if bytes.HasPrefix(packed, []byte("\nendstream")) { // an empty page has an empty stream, which is not packed
			pages = append(pages, 0)
			continue
		}
		r, err := zlib.NewReader(bytes.NewReader(packed))
		require.NoError(t, err)
		content, err := io.ReadAll(r)
		require.NoError(t, err)
		heights := map[string]bool{}
		for _, m := range textLine.FindAllSubmatch(content, -1) {
			heights[string(m[1])] = true
		}
		pages = append(pages, len(heights))
	}
	return pages
}

// The order of the demo job goes on one sheet and its hand-over sheet on four, with no page that says next to nothing, in each language and on each paper.
func TestAJobOnPaper(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	for language, folder := range languages {
		v.anew(folder + "job/#job=" + id + "&view=order")
		for name, size := range papers {
			_, sheets := v.paper(size[0], size[1])
			assert.Equal(t, 1, sheets, "the order in %s on %s", language, name)
		}
		v.anew(folder + "job/#job=" + id + "&view=hand-over")
		for name, size := range papers {
			pdf, sheets := v.paper(size[0], size[1])
			lines := written(t, pdf)
			assert.Len(t, lines, sheets)
			assert.Equal(t, 4, sheets, "the hand-over sheet in %s on %s", language, name)
			for i, n := range lines {
				assert.GreaterOrEqual(t, n, 10, "page %d in %s on %s", i+1, language, name)
			}
		}
	}
}

// However long a hand-over sheet is, its last words are not alone on a page: it is lengthened by a line and a half at a time over more than a page.
func TestNoPageHasOnlyTheFoot(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	for language, name := range map[string]string{"English": "A4", "Spanish": "Letter"} {
		v.anew(languages[language] + "job/#job=" + id + "&view=hand-over")
		eval[bool](v, `document.querySelector(".paper-sources").insertAdjacentHTML("beforebegin", "<div id=longer></div>"), document.querySelectorAll(".paper figure").forEach(f => f.remove()), true`)
		before := 0
		for longer := 0; longer < 1050; longer += 30 {
			eval[bool](v, fmt.Sprintf(`document.querySelector("#longer").style.height = "%dpx", true`, longer))
			pdf, sheets := v.paper(papers[name][0], papers[name][1])
			lines := written(t, pdf)
			assert.GreaterOrEqual(t, lines[len(lines)-1], 5, "longer by %d px, in %s on %s: %v", longer, language, name, lines)
			if longer == 0 {
				before = sheets
			}
			assert.True(t, before <= sheets && sheets <= before+2, "%d sheets", sheets)
		}
	}
}

// unbroken is a job with words that no line holds, wherever one can be typed.
func unbroken() *job.Job {
	j := job.Demo(1_795_000_000_000)
	word := strings.Repeat("Z", 120)
	j.ID, j.Name, j.Place, j.Address = "unbroken", word[:100], strings.Repeat("Averylongword", 10)+"Averylongw", word
	j.Checks[1].Where, j.Checks[1].Corners, j.Checks[1].Note = word, word, word
	j.Mixes[1].Lot, j.Mixes[1].Product = word, word
	j.HandOver.Materials[0] = job.Material{ID: "m1", Name: word, Product: word, Lots: word}
	j.HandOver.Client, j.HandOver.Crew, j.HandOver.Care, j.HandOver.Remarks = word, word, word, word
	j.Notes[0].Text = word
	j.Entries[0].Name, j.Entries[10].Name = word[:80], word[:80]
	return j
}

// beyond lists what reaches further right than a width, but for what a table scrolls by itself.
func beyond(width int, table string) string {
	return fmt.Sprintf(`[...document.querySelectorAll("main *")].filter(e => e.getBoundingClientRect().right > %d.5 && e.checkVisibility() && !e.closest("svg, .hidden%s")).map(e => e.tagName + "." + e.className + " " + Math.round(e.getBoundingClientRect().right) + " " + e.textContent.slice(0, 40))`, width, table)
}

// A word that no line holds pushes nothing off the screen of a small phone, at its usual size and with letters twice as large (WCAG 2.2, 1.4.4 and 1.4.10), nor
// off the paper, where a contact that cannot be read is no record.
func TestNothingOfAJobIsPushedOff(t *testing.T) {
	v := begin(t, browser.Phone)
	v.take(unbroken())
	for language, folder := range languages {
		for _, at := range []string{"jobs/", "job/#job=unbroken", "job/#job=unbroken&view=hand-over", "job/#job=unbroken&view=order"} {
			v.anew(folder + at)
			eval[string](v, unfold)
			require.NoError(t, v.tab.Resize(browser.Narrow))
			for _, letters := range []string{"100%", "200%"} {
				eval[bool](v, `document.documentElement.style.fontSize = "`+letters+`", true`)
				assert.Equal(t, browser.Narrow.Width, eval[int64](v, `document.documentElement.scrollWidth`), "%s in %s at %s", at, language, letters)
				assert.Empty(t, eval[[]string](v, beyond(int(browser.Narrow.Width), ", .paper-wide table")), "%s in %s at %s", at, language, letters)
			}
			eval[bool](v, `document.documentElement.style.fontSize = "", true`)

			const wide = 680 // 180 mm, as A4 has between its margins
			require.NoError(t, v.tab.Resize(browser.Size{Width: wide, Height: 1000}))
			_, err := browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
			require.NoError(t, err)
			assert.Empty(t, eval[[]string](v, beyond(wide, "")), "%s in %s on paper", at, language)
			_, err = browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
			require.NoError(t, err)
			require.NoError(t, v.tab.Resize(browser.Phone))
		}
	}
}

// The sheet names each source with a year or says that none is known, the plan's sheet says whose it is, and a figure is never parted from its unit.
func TestWhatAHandOverSheetSays(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	for language, none := range map[string]string{"English": ", no date known", "Spanish": ", sin fecha conocida"} {
		v.anew(languages[language] + "job/#job=" + id + "&view=hand-over")
		listed := eval[[]string](v, `[...document.querySelectorAll(".paper-sources li")].map(e => e.textContent)`)
		assert.Greater(t, len(listed), 20)
		for _, s := range listed {
			if !strings.Contains(s, none) {
				assert.Regexp(t, `, ([A-Z][a-z]+ )?(19|20)\d\d(, [a-z]+ [A-Z][a-z]+ 20\d\d)?$`, s)
			}
		}
		assert.Contains(t, strings.Join(listed, "\n"), none)
		assert.Contains(t, eval[string](v, `document.querySelector(".plan-sheet .plan-title").textContent`), " · Courtyard (demo job) · Invented")
	}
	v.anew("job/#job=" + id + "&view=order")
	assert.Empty(t, eval[[]string](v, `[...document.querySelectorAll(".paper td")].filter(e => e.textContent.length < 12 && / /.test(e.textContent) && getComputedStyle(e).whiteSpace !== "nowrap").map(e => e.textContent)`))
}

// No page of a layout on paper is empty: the sheet of its plan fits a page of Letter, with the page turned before it.
func TestNoPageOfALayoutIsEmpty(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("setout/")
	v.wait(`document.querySelector('#setout [data-part="drawing"] .plan-sheet') && !document.querySelector("#setout").hasAttribute("data-working")`)
	for name, size := range papers {
		pdf, sheets := v.paper(size[0], size[1])
		lines := written(t, pdf)
		assert.Len(t, lines, sheets)
		assert.NotContains(t, lines, 0, "on %s: %v", name, lines)
	}
}
