package browser

import (
	"context"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/scripts/internal/browser"
)

// shop is a site of somebody else: pages that are served from an origin of their own. Localhost and 127.0.0.1 are two
// sites to the browser, so what it keeps for a frame is kept apart, as it is on two hosts.
type shop struct {
	origin string
	pages  map[string]string
}

func openShop(t *testing.T) *shop {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	s := &shop{fmt.Sprintf("http://localhost:%d", listener.Addr().(*net.TCPAddr).Port), map[string]string{}}
	server := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		text, ok := s.pages[r.URL.Path]
		if r.URL.Path == "/favicon.ico" {
			w.WriteHeader(http.StatusNoContent)
			return
		}
		if !ok {
			http.NotFound(w, r)
			return
		}
		kind := "text/html; charset=utf-8"
		if strings.HasSuffix(r.URL.Path, ".csv") {
			kind = "text/csv; charset=utf-8"
		}
		w.Header().Set("Content-Type", kind)
		fmt.Fprint(w, text)
	})}
	go server.Serve(listener)
	t.Cleanup(func() { server.Close() })
	return s
}

// naming is the site as built for a host that has named an origin.
func naming(t *testing.T, origins ...string) *browser.Site {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "named")
	require.NoError(t, os.CopyFS(dir, os.DirFS(dist)))
	page := filepath.Join(dir, "embed", "frame", "en", "index.html")
	text, err := os.ReadFile(page)
	require.NoError(t, err)
	require.Contains(t, string(text), `data-embed=""`, "nobody is named as it comes")
	named := strings.Replace(string(text), `data-embed=""`, `data-embed="`+strings.Join(origins, " ")+`"`, 1)
	require.NoError(t, os.WriteFile(page, []byte(named), 0o644))
	require.NoError(t, os.Remove(page+".br"))
	require.NoError(t, os.Remove(page+".gz"))
	site, err := browser.Serve(dir, netlify)
	require.NoError(t, err)
	t.Cleanup(func() { site.Stop() })
	return site
}

// listening is a page with three calculators that writes down whatever it is told.
func listening(site *browser.Site) string {
	return `<!doctype html><html lang="en"><meta name="viewport" content="width=device-width"><title>A shop</title>
<script>
	window.told = []; window.heard = [];
	addEventListener("message", e => told.push([e.origin, e.data]));
	for (const kind of ["ready", "answers", "height"]) addEventListener("setbook-" + kind, e => heard.push({of: e.target.id, ...e.detail}));
	window.last = of => heard.findLast(m => m.of === of && m.kind === "answers");
</script>
<script src="` + site.URL + `embed/embed.js" defer></script>
<style>#one { --setbook-paper: #ffffff; --setbook-ink: #999999; --setbook-line: #7a0026 }</style>
<setbook-calculator id="one" calculator="bed" label="Notch to bed" fixed="notch=square&amp;width=3/8 in" start="area=200 ft2" hide="hold,skim" units="us"></setbook-calculator>
<setbook-calculator id="two" calculator="batch" sheet="goods.csv" units="metric"></setbook-calculator>
<setbook-calculator id="three" calculator="wait" theme="dark"></setbook-calculator>`
}

const goods = "product,type,bag,liquid,liquid_min,liquid_max\nGreyline Bed 20,mortar,20 kg,5.5 L,5.1 L,5.9 L\n"

// frame gives the frame of a calculator in a page, once its program listens.
func (v *visit) frame(calculator string) *visit {
	v.Helper()
	tab, err := v.tab.Frame(func(url string) bool {
		return strings.HasPrefix(url, v.site.URL) && strings.Contains(url, "calculator="+calculator)
	})
	require.NoError(v, err)
	v.Cleanup(func() {
		assert.Empty(v, tab.Faults(), "what the frame's console says")
		tab.Close()
	})
	f := &visit{v.T, v.site, tab}
	f.live()
	return f
}

// comesTrue waits until what a promise brings is true. (To wait, every promise is true already.)
func (v *visit) comesTrue(promise string) {
	v.Helper()
	require.Eventually(v, func() bool { return eval[bool](v, promise) }, 15*time.Second, 50*time.Millisecond, promise)
}

func (v *visit) goTo(address string) {
	v.Helper()
	v.do(chromedp.Navigate(address))
}

// TestThreeCalculatorsInAPageThatIsNamed: events arrive, with the answers that the book itself gives; the page may fill fields,
// but for those it has fixed.
func TestThreeCalculatorsInAPageThatIsNamed(t *testing.T) {
	around := openShop(t)
	site := naming(t, "https://elsewhere.example", around.origin)
	around.pages["/"], around.pages["/goods.csv"] = listening(site), goods
	v := look(t, shared, site, browser.Tablet)
	v.goTo(around.origin)
	v.wait(`["one", "two", "three"].every(last)`)

	bed, _ := all.ByID("bed")
	e, problems := bed.Read(calc.Texts{"notch": "square", "width": "3/8 in", "area": "200 ft2"}, calc.Habit{})
	require.Empty(t, problems)
	sheet := bed.Solve(e)
	for _, a := range sheet.Answers {
		value, symbol := a.Is.Kind.SI(a.Is.Base)
		assert.Equal(t, value, eval[float64](v, `last("one").answers["`+a.Key+`"].value`), a.Key)
		assert.Equal(t, symbol, eval[string](v, `last("one").answers["`+a.Key+`"].unit`))
	}
	assert.Equal(t, 1, eval[int](v, `last("one").setbook`))
	assert.False(t, eval[bool](v, `last("one").stale`))

	one := v.frame("bed")
	assert.False(t, eval[bool](one, `!!document.querySelector('[data-key="width"], [data-key="hold"]')`), "neither what is fixed nor what is hidden is asked for")
	assert.Contains(t, one.text("#bed"), "Set by this page")
	assert.Contains(t, one.text(".frame-foot"), "The page around it is told", "the visitor is told who is told")
	one.enter("bed", "depth", "1/4 in")
	v.wait(`last("one").entry.includes("depth=1/4+in")`)
	one.enter("bed", "depth", "nonsense")
	v.wait(`last("one").stale`)
	assert.NotZero(t, eval[float64](v, `last("one").answers.bed.value`), "the last good answers stay")

	eval[string](v, `(document.querySelector("#one").fill({depth: "1/2 in", width: "1 in", area: "300 ft2"}), "")`)
	v.wait(`!last("one").stale && last("one").entry.includes("area=300+ft2")`)
	assert.Equal(t, "300 ft2", one.field("bed", "area"))
	assert.Contains(t, eval[string](v, `last("one").entry`), "width=3/8+in", "what is fixed stays")

	assert.Equal(t, "metric", eval[string](v.frame("batch"), `document.documentElement.dataset.units`))
	assert.Equal(t, "dark", eval[string](v.frame("wait"), `document.documentElement.dataset.theme`))
	eval[string](v, `(document.querySelector("#three").setAttribute("theme", "light"), "")`)
	v.frame("wait").wait(`document.documentElement.dataset.theme === "light"`)
}

// TestAFrameIsAsHighAsWhatIsInIt and stays so as that changes.
func TestAFrameIsAsHighAsWhatIsInIt(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"], around.pages["/goods.csv"] = listening(site), goods
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	v.wait(`["one", "two", "three"].every(last)`)
	one := v.frame("bed")
	fits := func(when string) {
		t.Helper()
		v.wait(fmt.Sprintf(`document.querySelector("#one iframe").clientHeight === %d`, eval[int](one, `document.body.offsetHeight`)))
		assert.True(t, eval[bool](one, `document.documentElement.scrollHeight <= innerHeight`), "%s: nothing is cut off", when)
	}
	fits("at first")
	short := eval[int](v, `document.querySelector("#one iframe").clientHeight`)
	eval[string](one, unfold)
	v.wait(fmt.Sprintf(`document.querySelector("#one iframe").clientHeight > %d`, short))
	fits("unfolded")
	eval[string](one, `(document.querySelectorAll("details").forEach(d => d.open = false), "")`)
	v.wait(fmt.Sprintf(`document.querySelector("#one iframe").clientHeight === %d`, short))
	assert.Equal(t, int64(390), eval[int64](v, `Math.max(document.documentElement.scrollWidth, innerWidth)`), "no wider than a phone")
}

// TestColoursOfThePageAround: the paper and the line are taken, the ink is not, since it would be too faint.
func TestColoursOfThePageAround(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"], around.pages["/goods.csv"] = listening(site), goods
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	v.wait(`last("one")`)
	one := v.frame("bed")
	colour := func(name string) string {
		return eval[string](one, `getComputedStyle(document.documentElement).getPropertyValue("--`+name+`")`)
	}
	assert.Equal(t, "#15171a", colour("ink"), "#999999 would have 2.7 to 1")
	assert.Equal(t, "#7a0026", colour("chalk"))
	two := v.frame("batch")
	assert.Equal(t, "#16478f", eval[string](two, `getComputedStyle(document.documentElement).getPropertyValue("--chalk").trim()`), "a page that asks for nothing keeps the book's own")
}

// TestASheetBesideThePage is fetched by the script, and fills the fields.
func TestASheetBesideThePage(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"], around.pages["/goods.csv"] = listening(site), goods
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	two := v.frame("batch")
	two.wait(`document.querySelector("[data-product]")`)
	eval[string](two, `(() => { const s = document.querySelector("[data-product]"); s.selectedIndex = 1; s.dispatchEvent(new Event("change", {bubbles: true})); return "" })()`)
	assert.Equal(t, "5.5 L", two.field("batch", "liquid"))
	assert.Contains(t, two.text(`[data-part="note-liquid"]`), "From the data sheet: Greyline Bed 20")
	v.wait(`last("two").entry.includes("bag=20+kg")`)
}

// TestAHostileParentLearnsNothingAndChangesNothing: a page that is not named frames a calculator in which a visitor types. It is
// told nothing, and nothing that it sends or does to the address of the frame reaches a field.
func TestAHostileParentLearnsNothingAndChangesNothing(t *testing.T) {
	named, hostile := openShop(t), openShop(t)
	site := naming(t, named.origin)
	hostile.pages["/"], hostile.pages["/goods.csv"] = listening(site), goods
	v := look(t, shared, site, browser.Tablet)
	v.goTo(hostile.origin)
	one := v.frame("bed")
	one.enter("bed", "depth", "3/16 in")
	before := one.text(answersOf)
	eval[string](v, `(() => {
		const frame = document.querySelector("#one iframe")
		for (const target of ["*", "`+strings.TrimSuffix(site.URL, "/")+`"]) for (const message of [
			{setbook: 1, kind: "fields", fields: {depth: "1 in", area: "900 ft2"}},
			{setbook: 1, kind: "theme", theme: "dark"},
			{setbook: 1, kind: "sheet", text: "product,type\nX,mortar\n"},
			"fields", null, 1, {setbook: "1"}, {setbook: 1, kind: "fields", fields: null},
		]) frame.contentWindow.postMessage(message, target)
		document.querySelector("#one").fill({depth: "1 in"})
		document.querySelector("#one").setAttribute("theme", "dark")
		frame.contentWindow.location = frame.src + "#depth=1+in&width=1+in"
		return ""
	})()`)
	one.wait(`location.hash.includes("depth")`)
	eval[string](one, `new Promise(done => setTimeout(() => done(""), 300))`)
	assert.Equal(t, before, one.text(answersOf))
	assert.Equal(t, "3/16 in", one.field("bed", "depth"))
	assert.Equal(t, "auto", eval[string](one, `document.documentElement.dataset.theme`))
	assert.Zero(t, eval[int](v, `told.length`), "not a word")
	assert.Contains(t, one.text(".frame-foot"), "nothing sent")
	assert.Zero(t, eval[int](v, `heard.length`))
	assert.Equal(t, 720, eval[int](v, `document.querySelector("#one iframe").clientHeight`), "not even how high the page is")
	assert.Contains(t, eval[string](v, `(() => { try { return document.querySelector("#one iframe").contentWindow.location.href } catch (e) { return e.name } })()`), "SecurityError")
	eval[string](one, `(location.reload(), "")`)
}

// TestOtherPagesRefuseAFrame: only the page that is made for it may stand in one.
func TestOtherPagesRefuseAFrame(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"] = `<!doctype html><meta name="viewport" content="width=device-width"><title>A shop</title><iframe src="` + site.URL + `bed/"></iframe><iframe src="` + site.URL + `embed/frame/en/?calculator=bed"></iframe>`
	v := look(t, shared, site, browser.Tablet)
	v.goTo(around.origin)
	v.frame("bed")
	tab, err := v.tab.Frame(func(url string) bool { return url == site.URL+"bed/" })
	require.NoError(t, err)
	defer tab.Close()
	require.NoError(t, tab.Wait(`location.href === "chrome-error://chromewebdata/"`), "the other one is refused")
	v.tab.Forget()
}

// TestAPlainFrameNeedsNoScript: a page with a bare frame is told the same, where it is named.
func TestAPlainFrameNeedsNoScript(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"] = `<!doctype html><meta name="viewport" content="width=device-width"><title>A shop</title><script>window.told = []; addEventListener("message", e => told.push(e.data))</script>
		<iframe src="` + site.URL + `embed/frame/en/?calculator=slope&fixed=run%3D10+ft&wide=1" width="100%" height="900" sandbox="allow-scripts allow-same-origin"></iframe>`
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	v.wait(`told.some(m => m.kind === "answers" && m.calculator === "slope") && told.some(m => m.kind === "height")`)
	f := v.frame("slope")
	assert.Contains(t, f.text("#notices"), "There is no setting named “wide”.", "what cannot be followed is said")
	assert.Equal(t, int64(1), eval[int64](f, `document.querySelectorAll("h1").length`))
}

// TestWhatASandboxTakesAway holds the page about permissions to what happens.
func TestWhatASandboxTakesAway(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"] = `<!doctype html><meta name="viewport" content="width=device-width"><title>A shop</title><iframe src="` + site.URL + `embed/frame/en/?calculator=bed" sandbox="allow-scripts"></iframe>`
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	tab, err := v.tab.Frame(func(url string) bool { return strings.Contains(url, "calculator=bed") })
	require.NoError(t, err)
	defer tab.Close()
	require.NoError(t, tab.Wait(`document.readyState === "complete"`))
	ran, err := browser.Eval[bool](tab, `new Promise(done => setTimeout(() => done("Go" in window || !!document.querySelector(".calculator")), 1000))`)
	require.NoError(t, err)
	assert.False(t, ran, "without allow-same-origin not even the head script is loaded")
	v.tab.Forget()
}

// TestAFrameWorksOutOfReachOfTheNetwork after one visit: the host of the book is gone, the page around still there.
func TestAFrameWorksOutOfReachOfTheNetwork(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"], around.pages["/goods.csv"] = listening(site), goods
	own, err := browser.Start(context.Background(), t.TempDir())
	require.NoError(t, err)
	t.Cleanup(own.Kill)
	v := look(t, own, site, browser.Phone)
	v.goTo(around.origin)
	one := v.frame("bed")
	one.enter("bed", "depth", "3/16 in")
	one.wait(`navigator.serviceWorker.controller`)
	one.comesTrue(`new Promise(done => {
		const open = indexedDB.open("setbook")
		open.onsuccess = () => {
			const keys = open.result.transaction("entries").objectStore("entries").getAllKeys()
			keys.onsuccess = () => { open.result.close(); done(keys.result.length === 1) }
		}
	})`)
	one.tab.Close()

	require.NoError(t, site.Stop())
	v.goTo(around.origin)
	v.wait(`["one", "two", "three"].every(last)`)
	again := v.frame("bed")
	assert.Equal(t, "3/16 in", again.field("bed", "depth"), "what was typed is kept")
	before := again.text(answersOf)
	again.enter("bed", "depth", "1/2 in")
	assert.NotEqual(t, before, again.text(answersOf))
	v.wait(`last("one").entry.includes("depth=1/2+in")`)
}

// TestALongCalculatorInAFrame is worked out beside the frame's page, and tells the page around the same.
func TestALongCalculatorInAFrame(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"] = `<!doctype html><meta name="viewport" content="width=device-width"><title>A shop</title><script>window.told = []; addEventListener("message", e => told.push(e.data))</script>
		<iframe src="` + site.URL + `embed/frame/en/?calculator=levels" width="100%" height="900" sandbox="allow-scripts allow-same-origin"></iframe>`
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	v.wait(`told.some(m => m.kind === "answers" && Object.keys(m.answers).length > 0)`)
	levels, _ := all.ByID("levels")
	for _, a := range levels.Solve(levels.Example()).Answers {
		value, symbol := a.Is.Kind.SI(a.Is.Base)
		assert.Equal(t, value, eval[float64](v, `told.findLast(m => m.kind === "answers").answers["`+a.Key+`"].value`), a.Key)
		assert.Equal(t, symbol, eval[string](v, `told.findLast(m => m.kind === "answers").answers["`+a.Key+`"].unit`))
	}
	assert.Contains(t, v.frame("levels").text(`[data-part="answers"]`), "Answers")
}

// TestASheetOfTheSite is named in the address of a frame, with no script and no named origin.
func TestASheetOfTheSite(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "stocked")
	require.NoError(t, os.CopyFS(dir, os.DirFS(dist)))
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "sheets"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "sheets", "goods.csv"), []byte(goods), 0o644))
	site, err := browser.Serve(dir, netlify)
	require.NoError(t, err)
	t.Cleanup(func() { site.Stop() })
	v := look(t, shared, site, browser.Phone)
	v.open("embed/frame/en/?calculator=batch&site-sheet=goods.csv")
	v.wait(`document.querySelector("[data-product]")`)
	assert.Contains(t, v.text("[data-product]"), "Greyline Bed 20")
	v.open("embed/frame/en/?calculator=batch&site-sheet=none.csv")
	v.wait(`document.querySelector('[data-notice="sheet"]')`)
	v.tab.Forget()
}

// TestAFrameInSpanish speaks it, and leads to the whole page in it.
func TestAFrameInSpanish(t *testing.T) {
	around := openShop(t)
	site := naming(t, around.origin)
	around.pages["/"] = `<!doctype html><title>A shop</title><script src="` + site.URL + `embed/embed.js" defer></script><setbook-calculator calculator="bed" lang="es" hide="skim"></setbook-calculator>`
	v := look(t, shared, site, browser.Phone)
	v.goTo(around.origin)
	f := v.frame("bed")
	assert.Equal(t, "es", eval[string](f, `document.documentElement.lang`))
	assert.Contains(t, f.text("#bed"), "Fijado por esta página")
	assert.Equal(t, "/in/es/bed/", eval[string](f, `document.querySelector("#frame-whole").pathname`))
}
