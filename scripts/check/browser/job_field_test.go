package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/scripts/internal/browser"
)

// put sets a field of a job's page as a paste does, whatever its length.
func (v *visit) put(field, text string) {
	v.Helper()
	require.True(v, eval[bool](v, `(f => { for (let d = f.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; f.focus(); f.select();
		return document.execCommand("insertText", false, `+quote(text)+`) })(document.querySelector('[data-job-field="`+field+`"], [data-jobs-field="`+field+`"]'))`), field)
}

// focused is what has the focus: its field, its button, or its text.
func (v *visit) focused() string {
	v.Helper()
	return eval[string](v, `(e => e === document.body ? "body" : e.dataset.jobField ?? e.dataset.jobsField ?? e.dataset.jobDo ?? e.closest("[data-fold]")?.dataset.fold ?? e.innerText)(document.activeElement)`)
}

func TestATextThatIsTooLongStaysAndIsSaid(t *testing.T) {
	v := begin(t, browser.Phone)
	v.openJob("jobs/")
	v.put("name", strings.Repeat("n", 101))
	v.wait(`document.querySelector('[data-part="new-name"]').innerText.includes("101 characters")`)
	v.jobDo("new")
	assert.Equal(t, "name", v.focused())
	id := v.beginJob("North terrace")
	v.put("note-text", strings.Repeat("x", 4001))
	v.wait(`document.querySelector('[data-part="note-note-text"]').innerText.match(/4.?001 characters/)`)
	v.jobDo("note")
	assert.Equal(t, "note-text", v.focused())
	assert.Equal(t, 4001, eval[int](v, `document.querySelector('[data-job-field="note-text"]').value.length`), "nothing of it is lost")
	assert.Equal(t, "true", eval[string](v, `document.querySelector('[data-job-field="note-text"]').getAttribute("aria-invalid")`))
	assert.Empty(t, v.kept(id).Notes)
	v.put("note-text", strings.Repeat("y", 4000))
	v.jobDo("note")
	v.saved()
	assert.Len(t, v.kept(id).Notes[0].Text, 4000)
}

// A press says near its button that it is kept, once; a wrong field elsewhere does not take the focus; what is removed leads to its undoing and back.
func TestWhereTheFocusGoesAndWhatIsSaid(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	v.fill("air", "much")
	for _, note := range []string{"one", "two"} {
		v.fill("note-text", note)
		assert.Empty(t, v.text(`[data-said="note"]`), "nothing is said of what is only typed")
		v.jobDo("note")
		v.saved()
		v.wait(`document.querySelector('[data-said="note"]').innerText === "Put in and saved."`)
		assert.Equal(t, "note", v.focused())
	}
	assert.Equal(t, "status", eval[string](v, `document.querySelector('[data-said="note"]').role`))
	assert.Less(t, eval[float64](v, `document.querySelector('[data-said="note"]').getBoundingClientRect().top - document.querySelector('[data-job-do="note"]').getBoundingClientRect().bottom`), 40.0, "it stands by the button")
	v.jobDo("note")
	assert.Equal(t, "note-text", v.focused(), "the empty field of the same line")

	first := "notes/" + v.kept(id).Notes[0].ID
	at := `[data-job-do="remove"][data-job-id="` + first + `"]`
	eval[bool](v, `(b => { b.closest("details").open = true; b.focus(); b.click(); return true })(document.querySelector(`+quote(at)+`))`)
	v.saved()
	assert.Equal(t, "undo", v.focused())
	assert.True(t, eval[bool](v, `(r => r.top >= 0 && r.bottom <= innerHeight)(document.activeElement.getBoundingClientRect())`), "it can be seen")
	v.do(chromedp.KeyEvent("\r"))
	v.saved()
	assert.Equal(t, strings.Replace(first, "/", "-", 1), v.focused())
	assert.Len(t, v.kept(id).Notes, 2)
}

func TestAJobGoesForGoodOnlyByTwoPressesApart(t *testing.T) {
	v := begin(t, browser.Phone)
	v.beginJob("North terrace")
	v.jobDo("delete")
	v.wait(`location.pathname.endsWith("/jobs/") && document.querySelector("#jobs").dataset.shown && document.querySelector('[data-job-do="erase"]')`)
	for _, size := range []browser.Size{browser.Narrow, browser.Phone, browser.Tablet} {
		require.NoError(t, v.tab.Resize(size))
		where := eval[[]float64](v, `(b => { b.scrollIntoView({block: "center"}); const r = b.getBoundingClientRect(); return [r.left, r.right, r.top, r.bottom] })(document.querySelector('[data-job-do="erase"]'))`)
		v.press(`[data-job-do="erase"]`)
		assert.Equal(t, "spare", v.focused(), "the focus is on what keeps it")
		assert.Contains(t, v.text(`#jobs [role="alert"]`), "Nothing brings it back")
		sure := eval[[]float64](v, `(r => [r.left, r.right, r.top, r.bottom, r.width, r.height])(document.querySelector('[data-job-do="erase-sure"]').getBoundingClientRect())`)
		assert.True(t, sure[2] > where[3] || sure[3] < where[2] || sure[0] > where[1] || sure[1] < where[0], "%v: a second press on the same spot does not erase: %v %v", size, where, sure)
		spare := eval[[]float64](v, `(r => [r.left, r.right, r.top, r.bottom, r.width, r.height])(document.querySelector('[data-job-do="spare"]').getBoundingClientRect())`)
		for _, b := range [][]float64{sure, spare} {
			assert.GreaterOrEqual(t, b[4], 56.0)
			assert.GreaterOrEqual(t, b[5], 56.0)
		}
		assert.GreaterOrEqual(t, sure[2]-spare[3], 16.0, "%v: the two are apart", size)
		assert.Equal(t, size.Width, eval[int64](v, `Math.max(document.documentElement.scrollWidth, innerWidth)`))
		v.do(chromedp.KeyEvent("\r")) // on "Keep it"
		v.wait(`document.querySelector('[data-job-do="erase"]')`)
		assert.Equal(t, "erase", v.focused())
	}
	v.jobDo("erase")
	v.jobDo("erase-sure")
	v.wait(`!document.querySelector('[data-part="gone"]').innerText.trim()`)
	assert.Equal(t, 0, eval[int](v, inStore(`got(db.transaction("jobs").objectStore("jobs").count())`)))
}

// A link to a sum of a job holds the figures of the day when it was made. What the job keeps now is shown, and one key writes nothing old over it.
func TestAnOldLinkToASumOfAJob(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	v.open("gohold/?job=" + id)
	v.wait(`!document.querySelector("#job-strip").hidden`)
	v.enter("gohold", "air", "70 F")
	v.jobDo("add")
	v.wait(`document.querySelector("#job-strip").innerText.includes("Saved")`)
	old := strings.TrimPrefix(eval[string](v, `location.href`), v.site.URL)
	require.Contains(t, old, "air=70+F")
	v.enter("gohold", "lowest", "62 F")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "lowest=62+F") }, patience, tick)
	v.openJob("job/#job=" + id)
	v.fill("air", "84 F")
	v.saved()

	v.open(old)
	v.wait(`document.querySelector("#job-strip").innerText.includes("the link held other figures")`)
	assert.Regexp(t, `^62.°?F$`, v.field("gohold", "lowest"), "as the job keeps it")
	assert.Regexp(t, `^84.°?F$`, v.field("gohold", "air"), "in the weather of the job")
	v.enter("gohold", "wind", "5 mph")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "wind=5+mph") }, patience, tick)
	assert.Contains(t, v.kept(id).Entries[0].Link, "lowest=62+F", "the old figure is not written over it")
	assert.Contains(t, v.kept(id).Entries[0].Link, "air=84")

	v.reload()
	v.wait(`document.querySelector("#job-strip").innerText.includes("kept in the job")`)
	assert.Regexp(t, `^5.mph$`, v.field("gohold", "wind"))
	assert.NotContains(t, v.text("#job-strip"), "the link held", "the address is in step")

	// An old link put into the address bar of the open page, and a step back.
	_, fragment, _ := strings.Cut(old, "#")
	eval[bool](v, `(location.hash = `+quote(fragment)+`, true)`)
	v.wait(`document.querySelector("#job-strip").innerText.includes("the link held other figures")`)
	assert.Regexp(t, `^62.°?F$`, v.field("gohold", "lowest"))
	eval[bool](v, `(history.back(), true)`)
	v.enter("gohold", "wind", "6 mph")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "wind=6+mph") }, patience, tick)
	assert.Contains(t, v.kept(id).Entries[0].Link, "lowest=62+F")

	// Another page changes the sum and the weather: a page that comes in sight again shows them.
	other := look(t, shared, v.site, browser.Phone)
	other.open(strings.TrimPrefix(eval[string](v, `location.href`), v.site.URL))
	other.wait(`!document.querySelector("#job-strip").hidden`)
	other.enter("gohold", "wind", "9 mph")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "wind=9+mph") }, patience, tick)
	eval[bool](v, `(document.dispatchEvent(new Event("visibilitychange")), true)`)
	v.wait(`/^9.mph$/.test(document.querySelector('#gohold [data-key="wind"]').value)`)
}

// stilled waits until a sum of a job is shown and worked out, and whatever is kept for it has been.
func (v *visit) stilled() {
	v.Helper()
	v.live()
	v.wait(`!document.querySelector("#job-strip").hidden && !document.querySelector("section.calculator").hasAttribute("data-working")`)
	v.do(chromedp.Sleep(6 * tick))
	v.wait(`document.querySelector("#job-strip").dataset.kept === "saved" && !document.querySelector("section.calculator").hasAttribute("data-working")`)
}

// sums are the addresses of the sums of a job as its page links them, by the page of the calculator.
func (v *visit) sums(id string) map[string]string {
	v.Helper()
	v.openJob("job/#job=" + id)
	hrefs := map[string]string{}
	for _, href := range eval[[]string](v, `[...document.querySelectorAll('#job [data-part="sums"] a[href*="entry="]')].map(a => new URL(a.href)).map(u => u.pathname.slice(1) + u.search + u.hash)`) {
		page, _, _ := strings.Cut(href, "/")
		hrefs[page] = href
	}
	return hrefs
}

// Whoever only looks at a sum of a job changes nothing in the record, and not what is remembered of the calculator either: not by opening it,
// loading it again, going away and back, other units or another language.
func TestLookingAtTheSumsOfAJobChangesNothing(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	before := v.kept(id)
	hrefs := v.sums(id)
	require.Contains(t, hrefs, "levels")
	require.Contains(t, hrefs, "setout")
	require.Greater(t, len(hrefs), 8)
	for page, href := range hrefs {
		same := func(after string) {
			t.Helper()
			v.stilled()
			require.Equal(t, before, v.kept(id), "%s, %s", page, after)
			assert.NotContains(t, v.text("#job-strip"), "Saved", "%s, %s", page, after)
			assert.NotContains(t, v.text("#job-strip"), "the link held", "%s, %s", page, after)
		}
		v.open(href)
		same("opened")
		v.press(`[data-units-choice][aria-pressed="false"]`)
		same("in other units")
		v.reload()
		same("loaded again")
		eval[bool](v, `(dispatchEvent(new Event("pageshow")), document.dispatchEvent(new Event("visibilitychange")), true)`)
		same("in sight again")
		if page == "levels" || page == "setout" {
			v.open("about/")
			eval[bool](v, `(history.back(), true)`)
			v.wait(`location.pathname.includes(` + quote(page) + `) && document.querySelector("#job-strip")`)
			same("back")
			v.open("in/es/" + href)
			v.stilled()
			require.Equal(t, before, v.kept(id), "%s in Spanish", page)
		}
	}
	assert.Empty(t, eval[[]string](v, inStore(`got(db.transaction("entries").objectStore("entries").getAllKeys()).then(all => all.filter(k => k !== "in step"))`)), "nothing is remembered as the person's own last entry")
}

// A change is kept all the same, also where the sum is worked out beside the page: typed, dragged, too long to be read on the page, and taken
// back. The same in other words is none.
func TestAChangeOfALongSumIsKept(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	hrefs := v.sums(id)
	entry := func(page string) string {
		for _, e := range v.kept(id).Entries {
			if e.Calculator == page {
				return e.Link
			}
		}
		return ""
	}
	holds := func(page, text string) {
		t.Helper()
		require.Eventually(t, func() bool { return strings.Contains(entry(page), text) }, patience, tick, text)
		v.stilled()
	}
	v.open(hrefs["setout"])
	v.stilled()
	before := v.kept(id)
	v.paste("setout", "joint", "0.5 cm")
	v.stilled()
	assert.Equal(t, before, v.kept(id), "the same in other words")
	v.paste("setout", "joint", "6 mm")
	holds("setout", "joint=6+mm")
	v.paste("setout", "joint", "5 mm")
	holds("setout", "joint=5+mm")
	v.press(`#setout [data-do="drag"]`)
	v.wait(`document.querySelector('#setout [data-do="drag"][aria-pressed="true"]')`)
	v.drag(`#setout [data-part="drawing"] svg`, 40, -30)
	holds("setout", "start=fixed")
	assert.NotContains(t, entry("setout"), "start_x=0+m")

	v.open(hrefs["levels"])
	v.stilled()
	v.paste("levels", "step_x", "1.45 m")
	holds("levels", "step_x=1.45+m")
	v.paste("levels", "grid", strings.Repeat(strings.Repeat("10,", 99)+"10 mm\n", 160)+strings.Repeat("10,", 99)+"17.5 mm")
	require.Eventually(t, func() bool { return len(entry("levels")) > 40_000 }, patience, tick, "too long to be read on the page")
	v.stilled()
	long := v.kept(id)
	v.reload()
	v.stilled()
	v.press(`[data-units-choice][aria-pressed="false"]`)
	v.stilled()
	assert.Equal(t, long, v.kept(id), "looking at a long one changes nothing either")
}

// A link that is only opened outside jobs does not take the place of the person's own last entry, also where it is worked out beside the page.
func TestLookingAtALinkRemembersNothing(t *testing.T) {
	v := begin(t, browser.Phone)
	for page, field := range map[string]string{"levels": "step_x", "bed": "width"} {
		v.open(page + "/")
		v.paste(page, field, "31 mm")
		v.wait(`location.hash.includes("31+mm") && !document.querySelector("section.calculator").hasAttribute("data-working")`)
		v.open("about/")
		v.open(page + "/#v=1&" + field + "=34+mm")
		v.press(`[data-units-choice][aria-pressed="false"]`)
		v.wait(`!document.querySelector("section.calculator").hasAttribute("data-working")`)
		v.do(chromedp.Sleep(6 * tick))
		v.open("about/")
		v.open(page + "/")
		v.wait(`location.hash.includes("31+mm")`)
	}
}

// A sum that was removed on another page is called so, and can be added again.
func TestASumThatWasRemovedOnAnotherPage(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	href := v.sums(id)["slope"]
	remove := func() {
		t.Helper()
		other := look(t, shared, v.site, browser.Phone)
		other.openJob("job/#job=" + id)
		at := `[...document.querySelectorAll('#job [data-job-do="remove"]')].find(b => b.closest("li").querySelector('a[href*="/slope/"]'))`
		eval[bool](other, `(b => { for (let d = b.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; b.click(); return true })(`+at+`)`)
		other.saved()
	}
	says := func() {
		t.Helper()
		v.wait(`document.querySelector("#job-strip").dataset.kept === "not"`)
		assert.Contains(t, v.text("#job-strip"), "this sum was removed from the job on another page")
		assert.NotContains(t, v.text("#job-strip"), "no longer kept on this phone")
	}
	v.open(href)
	v.stilled()
	all := len(v.kept(id).Entries)
	remove()
	require.Len(t, v.kept(id).Entries, all-1)
	v.paste("slope", "drop", "80 mm")
	says()
	v.jobDo("add")
	v.wait(`document.querySelector("#job-strip").dataset.kept === "saved"`)
	assert.Contains(t, v.kept(id).Entries[all-1].Link, "drop=80+mm")
	v.paste("slope", "drop", "81 mm")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[all-1].Link, "drop=81+mm") }, patience, tick)
	v.stilled()

	// A page that comes in sight again says so before anything is changed.
	remove()
	eval[bool](v, `(document.dispatchEvent(new Event("visibilitychange")), true)`)
	says()
}

// What is typed before the job is read is neither lost nor a reason to write an old link over the job.
func TestTypingBeforeTheJobIsRead(t *testing.T) {
	v := begin(t, browser.Phone, `{ const real = IDBDatabase.prototype.transaction; const start = performance.now();
		window.slow = () => performance.now() - start < 2500;
		const add = IDBRequest.prototype.addEventListener;
		IDBRequest.prototype.addEventListener = function (event, fn, ...rest) {
			return add.call(this, event, event === "success" && sessionStorage.slow && this.source?.name === "jobs" ? e => { const ask = () => window.slow() ? setTimeout(ask, 50) : fn(e); ask() } : fn, ...rest) } }`)
	id := v.beginJob("North terrace")
	v.open("bed/?job=" + id)
	v.wait(`!document.querySelector("#job-strip").hidden`)
	v.enter("bed", "width", "3/8 in")
	v.jobDo("add")
	v.wait(`document.querySelector("#job-strip").innerText.includes("Saved")`)
	old := strings.TrimPrefix(eval[string](v, `location.href`), v.site.URL)
	v.enter("bed", "depth", "5/16 in")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "depth=5/16+in") }, patience, tick)
	eval[bool](v, `(sessionStorage.slow = "yes", true)`)
	v.open("about/")
	v.open(old)
	require.True(t, eval[bool](v, `window.slow() && document.querySelector("#job-strip").hidden`), "the job is still being read")
	v.enter("bed", "land", "1/4 in")
	v.wait(`!document.querySelector("#job-strip").hidden`)
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "land=1/4+in") }, patience, tick)
	assert.Contains(t, v.kept(id).Entries[0].Link, "depth=5/16+in")
	assert.Equal(t, []string{"5/16 in", "1/4 in"}, []string{v.field("bed", "depth"), v.field("bed", "land")})
}

// Where the strip says "Try again" there is a button for it, and the sum can be taken away as a file.
func TestTheStripWhereThereIsNoRoom(t *testing.T) {
	v := begin(t, browser.Phone, catches, `{ const real = IDBObjectStore.prototype.put; // the transaction ends as one does for which there is no room
		IDBObjectStore.prototype.put = function (...a) { const r = real.apply(this, a), t = this.transaction;
			if (window.full && this.name === "jobs") r.addEventListener("success", () => { Object.defineProperty(t, "error", {value: new DOMException("no room", "QuotaExceededError")}); t.abort() });
			return r } }`)
	id := v.beginJob("North terrace")
	v.open("bed/?job=" + id)
	v.wait(`!document.querySelector("#job-strip").hidden`)
	eval[bool](v, `window.full = true`)
	v.enter("bed", "width", "3/8 in")
	v.jobDo("add")
	v.wait(`document.querySelector("#job-strip").dataset.kept === "not"`)
	assert.Contains(t, v.text("#job-strip"), "no more room")
	assert.Empty(t, v.kept(id).Entries)
	v.jobDo("file")
	assert.Contains(t, v.handed(), "width=3/8+in", "the file has the sum in it")
	eval[bool](v, `(window.full = false, true)`)
	v.jobDo("again")
	v.wait(`document.querySelector("#job-strip").dataset.kept === "saved"`)
	assert.Contains(t, v.kept(id).Entries[0].Link, "width=3/8+in")
}

// A share that the browser refuses is said; one that the person gave up is not.
func TestAShareThatIsRefused(t *testing.T) {
	for name, says := range map[string]bool{"NotAllowedError": true, "AbortError": false} {
		v := begin(t, browser.Phone, `navigator.canShare = () => true; navigator.share = () => new Promise((ok, no) => setTimeout(() => { no(new DOMException("no", "`+name+`")); window.refused = true }, 50))`)
		v.demoJob()
		v.jobDo("share")
		v.wait(`window.refused`)
		v.do(chromedp.Sleep(4 * tick))
		assert.Equal(t, says, strings.Contains(v.text(`[data-said="hand-on"]`), "did not share"), name)
	}
}

// On Spanish pages the help says the reader's own word for bags, which is read, and the light theme is called as one is.
func TestAJobInSpanish(t *testing.T) {
	v := begin(t, browser.Phone)
	v.openJob("in/es/jobs/")
	v.fill("name", "Terraza")
	v.jobDo("new")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	id := strings.TrimPrefix(eval[string](v, `location.hash`), "#job=")
	assert.Contains(t, v.text(`[data-part="note-mix-amount"]`), "2 sacos")
	v.fill("mix-amount", "2 sacos")
	v.jobDo("mix")
	v.saved()
	assert.Equal(t, "2 bags", v.kept(id).Mixes[0].Amount)
	assert.Contains(t, v.text(`[data-part="mixes"]`), "2 sacos")
	assert.Equal(t, "Claro", v.text(`[data-theme-choice="light"]`))
}

// The weather is as old as its oldest reading: that is said under each old one, and one press says that all of them still hold.
func TestTheWeatherIsAsOldAsItsOldestReading(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	head := eval[string](v, inStore(`got(db.transaction("jobheads").objectStore("jobheads").get(`+quote(id)+`))`))
	j := v.kept(id)
	j.Weather.When -= 72 * 3_600_000
	v.keepRecord(id, head, job.Write(j))
	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	v.fill("air", "")
	v.put("air", eval[string](v, `(f => f.defaultValue)(document.querySelector('[data-job-field="air"]'))`)) // the same again
	v.saved()
	assert.Equal(t, j.Weather.When, v.kept(id).Weather.When, "the wind is three days old still")
	assert.Empty(t, v.text(`[data-part="note-air"]`))
	assert.Contains(t, v.text(`[data-part="note-wind"]`), "Last entered")
	before := eval[int64](v, `Date.now()`)
	v.jobDo("still")
	v.saved()
	assert.GreaterOrEqual(t, int64(v.kept(id).Weather.When), before)
	assert.Empty(t, v.text(`[data-part="note-wind"]`))
	assert.NotEqual(t, "body", v.focused(), "the focus stays where the button was")
}

// What a sum is for is refused in the same way, under its field, while it is typed.
func TestWhatASumIsForThatIsTooLong(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	before := v.kept(id)
	v.put("entry-e1", strings.Repeat("w", 301))
	v.wait(`document.querySelector('[data-part="note-entry-e1"]').innerText.includes("301 characters")`)
	assert.Equal(t, 301, eval[int](v, `document.querySelector('[data-job-field="entry-e1"]').value.length`))
	assert.Equal(t, before, v.kept(id))
}
