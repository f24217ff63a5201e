package browser

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/scripts/internal/browser"
)

// late has the browser tell of each completed transaction so many milliseconds late, as a slow phone does.
const late = `{ const real = IDBTransaction.prototype.addEventListener;
	IDBTransaction.prototype.addEventListener = function (event, f, ...rest) { return real.call(this, event, event === "complete" ? (...a) => setTimeout(() => f(...a), window.held ?? 0) : f, ...rest) } }`

// note puts a note into the diary.
func (v *visit) note(text string) {
	v.Helper()
	v.fill("note-text", text)
	v.jobDo("note")
}

// noted is what the diary of a job holds as it is kept.
func (v *visit) noted(id string) (list []string) {
	v.Helper()
	for _, n := range v.kept(id).Notes {
		list = append(list, n.Text)
	}
	return list
}

// turn changes the address of a job's page within the page, as a link or the buttons of the browser do.
func (v *visit) turn(hash string) {
	v.Helper()
	eval[bool](v, `(location.hash = `+quote(hash)+`, true)`)
}

// A list that another page has overtaken deletes nothing for good, and brings nothing back that is no more.
func TestAStaleListChangesNothing(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	v.jobDo("delete")
	v.wait(`location.pathname.endsWith("/jobs/") && document.querySelector('[data-job-do="erase"]')`)
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("jobs/")
	other.wait(`document.querySelector('[data-job-do="erase"]')`)
	v.jobDo("back")
	v.wait(`document.querySelector('#jobs [data-part="found"]').innerText.includes("Courtyard")`)
	v.openJob("job/#job=" + id)
	v.note("since then")
	v.saved()
	other.erase()
	other.wait(`document.querySelector("#jobs").innerText.includes("changed on another page")`)
	assert.Contains(t, v.noted(id), "since then")
	other.wait(`document.querySelector('#jobs [data-part="found"]').innerText.includes("Courtyard")`)

	v.jobDo("delete")
	v.wait(`location.pathname.endsWith("/jobs/") && document.querySelector('[data-job-do="back"]')`)
	other.openJob("jobs/")
	other.wait(`document.querySelector('[data-job-do="back"]')`)
	v.erase()
	v.wait(`!document.querySelector('[data-job-do="erase"]')`)
	other.jobDo("back")
	other.wait(`document.querySelector("#jobs").innerText.includes("changed on another page")`)
	assert.NotContains(t, other.text("#jobs"), "newer Setbook")
	assert.Zero(t, eval[int](v, inStore(`got(db.transaction("jobs").objectStore("jobs").count())`)))
}

// Two pages that both hold a job which a third has deleted can both keep it again: what each has, and what was saved before, is lost from neither.
func TestAJobIsKeptAgainFromTwoPages(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	other, third := look(t, shared, v.site, browser.Phone), look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + id)
	third.openJob("job/#job=" + id)
	third.note("of the third page")
	third.saved()
	third.jobDo("delete")
	third.wait(`location.pathname.endsWith("/jobs/") && document.querySelector('[data-job-do="back"]')`)
	v.note("of the first page")
	v.unsaved()
	other.note("of the second page")
	other.unsaved()
	v.jobDo("again")
	v.saved()
	assert.ElementsMatch(t, []string{"of the third page", "of the first page"}, v.noted(id))
	other.jobDo("again")
	other.wait(`document.querySelector('[data-job-do="both"]')`)
	assert.NotContains(t, v.noted(id), "of the second page")
	other.jobDo("both")
	other.saved()
	assert.ElementsMatch(t, []string{"of the third page", "of the first page", "of the second page"}, v.noted(id))
	v.note("later")
	v.unsaved() // it is behind now, and says so
	v.jobDo("both")
	v.saved()
	assert.Len(t, v.noted(id), 4)
}

// What was typed on one page while another saved something else stays when the two are put together.
func TestBothPagesKeepWhatWasTyped(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	v.fill("place", "Old town")
	v.saved()
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + id)
	other.fill("place", "New town")
	other.fill("address", "")
	other.saved()
	v.fill("address", "Mill Lane 1")
	v.unsaved()
	v.note("mine")
	other.note("theirs")
	other.saved()
	v.jobDo("both")
	v.saved()
	j := v.kept(id)
	assert.Equal(t, "Mill Lane 1", j.Address, "typed here, and nowhere else")
	assert.Equal(t, "New town", j.Place, "typed there, and not here since")
	assert.ElementsMatch(t, []string{"mine", "theirs"}, v.noted(id))
}

// A third page saves just as two are put together: what was typed here outlives that, too.
func TestAThirdPageSavesMeanwhile(t *testing.T) {
	v := begin(t, browser.Phone, `{ const real = IDBDatabase.prototype.transaction; IDBDatabase.prototype.transaction = function (stores, mode) {
		if (window.third && mode === "readwrite" && [].concat(stores).includes("jobs")) { const [id, head, record] = window.third; window.third = null;
			const t = real.call(this, ["jobs", "jobheads"], "readwrite"); t.objectStore("jobs").put(record, id); t.objectStore("jobheads").put(head, id) }
		return real.apply(this, arguments) } }`)
	id := v.beginJob("North terrace")
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + id)
	other.fill("place", "New town")
	other.saved()
	v.fill("address", "Mill Lane 1")
	v.unsaved()
	third := v.kept(id)
	third.Revision++
	third.Notes = append(third.Notes, job.Note{ID: "third", When: third.Changed, Text: "of the third page"})
	head := jobpage.HeadOf(third)
	eval[bool](v, `!!(window.third = [`+quote(id)+`, `+quote(head.Text())+`, `+quote(job.Write(third))+`])`)
	v.jobDo("both")
	v.wait(`window.third === null`)
	v.unsaved()
	v.jobDo("both")
	v.saved()
	j := v.kept(id)
	assert.Equal(t, []string{"New town", "Mill Lane 1"}, []string{j.Place, j.Address})
	assert.Equal(t, []string{"of the third page"}, v.noted(id))
}

// What is typed while a save is on its way is no part of what that save kept.
func TestTypingDuringASaveOutlivesAConflict(t *testing.T) {
	v := begin(t, browser.Phone, late)
	id := v.beginJob("North terrace")
	eval[bool](v, `!!(window.held = 3000)`)
	v.note("first")
	v.wait(inStore(`got(db.transaction("jobs").objectStore("jobs").get(` + quote(id) + `)).then(text => text.includes("first"))`))
	v.fill("place", "Old town")
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + id)
	other.note("second")
	other.saved()
	v.unsaved()
	eval[bool](v, `!(window.held = 0)`)
	v.jobDo("both")
	v.saved()
	assert.Equal(t, "Old town", v.kept(id).Place)
	assert.ElementsMatch(t, []string{"first", "second"}, v.noted(id))
}

// A copy that was made of a job on the page does not stand under the address of the job any more, nor does what was half typed in it.
func TestACopyLeavesTheAddressOfTheJob(t *testing.T) {
	v := begin(t, browser.Phone)
	two := v.beginJob("South terrace")
	one := v.beginJob("North terrace")
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + one)
	other.note("theirs")
	other.saved()
	v.note("mine")
	v.unsaved()
	v.fill("note-text", "half typed")
	v.turn("job=" + two)
	v.wait(`document.querySelector("#job h1").innerText.includes("South")`)
	v.turn("job=" + one)
	v.wait(`document.querySelector("#job h1").innerText.includes("North")`)
	v.jobDo("mine")
	v.saved()
	copied := strings.TrimPrefix(eval[string](v, `location.hash`), "#job=")
	v.turn("job=" + one)
	v.wait(`document.querySelector('#job [data-part="notes"]').innerText.includes("theirs")`)
	assert.Equal(t, "North terrace", v.text("#job h1"))
	assert.Empty(t, eval[string](v, `document.querySelector('[data-job-field="note-text"]').value`))
	v.turn("job=" + copied)
	v.wait(`document.querySelector("#job h1").innerText.includes("(copy)")`)
	assert.Equal(t, "half typed", eval[string](v, `document.querySelector('[data-job-field="note-text"]').value`))
}

// What another page changes comes in without taking away what was refused here, what can be brought back, the fold that is open or the focus.
func TestWhatComesInTakesNothingAway(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	eval[string](v, unfold)
	v.press(`#job [data-part="notes"] [data-job-do="remove"]`)
	v.saved()
	v.fill("air", "72 or so")
	v.fill("check-where", "By the gate")
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + id)
	other.note("news")
	other.saved()
	eval[bool](v, `(document.dispatchEvent(new Event("visibilitychange")), true)`)
	v.wait(`document.querySelector('[data-part="notes"]').innerText.includes("news")`)
	assert.Equal(t, "72 or so", eval[string](v, `document.querySelector('[data-job-field="air"]').value`))
	assert.Equal(t, "check-where By the gate", eval[string](v, `document.activeElement.dataset.jobField + " " + document.activeElement.value`))
	assert.True(t, eval[bool](v, `document.querySelector('[data-fold="hand-on"]').open`))
	v.jobDo("undo")
	v.saved()
	assert.Len(t, v.noted(id), 3)
}

// A save that is on its way when the page turns to another job, or to another view of the same, is carried through, and so is what is
// changed there meanwhile.
func TestAPageTurnsDuringASave(t *testing.T) {
	v := begin(t, browser.Phone, late)
	one := v.beginJob("North terrace")
	two := v.beginJob("South terrace")
	v.openJob("job/#job=" + one)
	eval[bool](v, `!!(window.held = 1500)`)
	v.note("of one")
	v.turn("job=" + two)
	v.wait(`document.querySelector("#job h1").innerText.includes("South")`)
	v.note("of two")
	v.turn("job=" + one)
	v.wait(`document.querySelector("#job h1").innerText.includes("North")`)
	v.note("of one again")
	v.turn("job=" + one + "&view=hand-over")
	v.wait(`document.querySelector("#job .paper")`)
	eval[bool](v, `!(window.held = 0)`)
	v.saved()
	require.Eventually(t, func() bool { return len(v.noted(one)) == 2 && len(v.noted(two)) == 1 }, patience, tick)
	assert.ElementsMatch(t, []string{"of one", "of one again"}, v.noted(one))
	assert.Equal(t, []string{"of two"}, v.noted(two))
	v.turn("job=" + two)
	v.wait(`document.querySelector("#job h1").innerText.includes("South")`)
	v.note("of two again")
	v.saved()
	assert.Equal(t, []string{"of two", "of two again"}, v.noted(two))
}

// What could not be saved stays with its job while another is looked at, and the browser asks before the page is left.
func TestWhatIsNotKeptStaysOnThePage(t *testing.T) {
	v := begin(t, browser.Phone, `navigator.serviceWorker.register = () => new Promise(() => {})`)
	one := v.beginJob("North terrace")
	two := v.beginJob("South terrace")
	v.openJob("job/#job=" + one)
	eval[bool](v, `(window.put = IDBObjectStore.prototype.put, IDBObjectStore.prototype.put = function () { throw new Error("broken") }, true)`)
	v.note("of one")
	v.unsaved()
	v.tab.Forget() // the console tells of it
	v.turn("job=" + two)
	v.wait(`document.querySelector("#job h1").innerText.includes("South")`)
	v.turn("job=" + one)
	v.wait(`document.querySelector("#job h1").innerText.includes("North")`)
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "did not carry it out")
	assert.Contains(t, v.text(`#job [data-part="notes"]`), "of one")
	assert.True(t, eval[bool](v, `!dispatchEvent(new Event("beforeunload", {cancelable: true}))`), "the browser is told to ask")
	eval[bool](v, `!(IDBObjectStore.prototype.put = window.put)`)
	v.jobDo("again")
	v.saved()
	assert.Equal(t, []string{"of one"}, v.noted(one))
	assert.True(t, eval[bool](v, `dispatchEvent(new Event("beforeunload", {cancelable: true}))`), "all is kept, and it is not asked")
}

// Where nothing is kept, the sheet and the order of the job on the page are views of that page.
func TestTheSheetOfAJobThatIsKeptNowhere(t *testing.T) {
	v := begin(t, browser.Phone, `Object.defineProperty(window, "indexedDB", {value: undefined})`)
	v.openJob("jobs/")
	v.jobDo("demo")
	v.wait(`document.querySelector('#jobs [data-part="notes"]')`)
	v.note("only here")
	v.wait(`document.querySelector('#jobs [data-part="notes"]').innerText.includes("only here")`)
	eval[string](v, unfold)
	v.press(`#jobs a[href*="view=hand-over"]`)
	v.wait(`document.querySelector("#jobs .paper")`)
	v.press(`#jobs .job-way a`)
	v.wait(`document.querySelector('#jobs [data-part="notes"]')?.innerText.includes("only here")`)
}

// What stands half typed, and a picture that was taken, outlive a look at the sheet and the page itself, which a phone throws away while its camera is
// open. What was removed can still be brought back after a look at the sheet.
func TestWhatIsHalfTypedOutlivesThePage(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	v.fill("check-where", "By the gate")
	v.fill("wind", "much")
	v.shoot("choose-picture", "", photo(t, 64, 48))
	v.drawn("")
	eval[string](v, unfold)
	v.press(`#job [data-part="notes"] [data-job-do="remove"]`)
	v.saved()
	half := func() {
		t.Helper()
		assert.Equal(t, "By the gate", eval[string](v, `document.querySelector('[data-job-field="check-where"]').value`))
		assert.Equal(t, "much", eval[string](v, `document.querySelector('[data-job-field="wind"]').value`))
		assert.Equal(t, "true", eval[string](v, `document.querySelector('[data-job-field="wind"]').ariaInvalid ?? ""`))
		v.drawn("")
	}
	v.turn("job=" + id + "&view=hand-over")
	v.wait(`document.querySelector("#job .paper")`)
	v.turn("job=" + id)
	v.wait(`document.querySelector('#job [data-part="notes"]')`)
	half()
	v.jobDo("undo")
	v.saved()
	assert.Len(t, v.kept(id).Notes, 2)
	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	half()
	v.fill("check-contact", "96")
	v.jobDo("check")
	v.saved()
	last := v.kept(id).Checks[3]
	assert.Equal(t, "By the gate", last.Where)
	assert.NotEmpty(t, last.Picture)
	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	assert.Empty(t, eval[string](v, `document.querySelector('[data-job-field="check-where"]').value`), "what is in the log is no draft")
}

// A file of a job that was deleted here brings it back, with all that it had: an older file takes nothing from it.
func TestAFileOfADeletedJob(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	old := job.Write(v.kept(id))
	v.note("since the file")
	v.saved()
	v.jobDo("delete")
	v.wait(`location.pathname.endsWith("/jobs/") && document.querySelector('[data-job-do="back"]')`)
	v.choose("job.json", old)
	assert.Contains(t, v.text(`#jobs [data-part="preview"]`), "deleted here")
	v.jobDo("take")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	assert.Contains(t, v.noted(id), "since the file")
}

// A preview that another page has overtaken is shown anew, and can then be taken.
func TestAPreviewIsOvertaken(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	brought := *v.kept(id)
	brought.Notes = append(brought.Notes, job.Note{ID: "from-b", When: brought.Changed, Text: "From the other phone"})
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("jobs/")
	other.choose("job.json", job.Write(&brought))
	v.note("meanwhile")
	v.saved()
	other.jobDo("take")
	other.wait(`document.querySelector("#jobs").innerText.includes("changed on another page")`)
	assert.NotContains(t, v.noted(id), "From the other phone")
	other.jobDo("take")
	other.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	assert.Subset(t, v.noted(id), []string{"From the other phone", "meanwhile"})
}

// A change that would make a record which its own reader refuses is not kept: it is said why, and the record that is kept stays whole.
func TestAJobThatCouldNotBeReadAgain(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	v.open("levels/")
	v.wait(`!document.querySelector("#job-strip").hidden`)
	const side = 300 // rows and columns: more letters than an entry of a job takes
	before := v.text(`#levels [data-part="answers"]`)
	eval[bool](v, fmt.Sprintf(`(f => { f.value = Array.from({length: %d}, (_, y) => Array.from({length: %d}, (_, x) => (y ? "" : "12.345678 mm").slice(0, x ? 0 : 99) || "12.34567" + (x * y) %% 10).join(", ")).join("\n"); f.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector('#levels [data-key="grid"]'))`, side, side))
	v.rested()
	require.NotEqual(t, before, v.text(`#levels [data-part="answers"]`))
	v.jobDo("add")
	v.wait(`document.querySelector("#job-strip").dataset.kept === "not"`)
	assert.Empty(t, v.kept(id).Entries)
	v.do(chromedp.Navigate(v.site.URL + "about/"))
	v.live()
	v.openJob("job/#job=" + id)
	assert.Contains(t, v.text("#job h1"), "North terrace")
}
