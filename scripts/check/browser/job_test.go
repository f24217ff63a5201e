package browser

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/job"
	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/npm"
)

// patience and tick are how long something is waited for that the page does not tell, and how often it is looked at.
const patience, tick = 15 * time.Second, 50 * time.Millisecond

// quota cuts down what the site may store, in bytes; below nought: the browser's own limit.
func (v *visit) quota(bytes float64) {
	v.Helper()
	p := storage.OverrideQuotaForOriginParams{Origin: strings.TrimSuffix(v.site.URL, "/")}
	if bytes >= 0 {
		p.QuotaSize = &bytes
	}
	_, err := browser.Call(v.tab, storage.OverrideQuotaForOrigin, p)
	require.NoError(v, err)
}

// blank is a page of the site that runs nothing. It names an icon that is there, so that the browser looks for none.
const blank = `<!doctype html><html lang="en"><title>x</title><link rel="icon" href="/manifest.webmanifest">`

// fill types into a field of a job's page over what stands in it.
func (v *visit) fill(field, text string) {
	v.Helper()
	at := `document.querySelector('[data-job-field="` + field + `"], [data-jobs-field="` + field + `"]')`
	require.True(v, eval[bool](v, at+` ? (`+at+`.closest("details") && (`+at+`.closest("details").open = true), `+at+`.focus(), `+at+`.select(), true) : false`), "no field %s", field)
	v.do(chromedp.KeyEvent(text))
}

// act presses a button of a job's page, wherever it is folded away.
func (v *visit) jobDo(do string) {
	v.Helper()
	at := `[data-job-do="` + do + `"]`
	require.True(v, eval[bool](v, `(b => { for (let d = b?.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; return !!b })(document.querySelector(`+quote(at)+`))`), "no button %s", do)
	v.press(at)
}

// saved waits until the page says that everything is kept.
func (v *visit) saved() {
	v.Helper()
	v.wait(`document.querySelector("#job, #jobs").dataset.kept === "saved"`)
}

// unsaved waits until the page says that it is not.
func (v *visit) unsaved() {
	v.Helper()
	v.wait(`document.querySelector("#job, #jobs").dataset.kept === "not"`)
}

// openJob goes to a job's page and waits until it is shown.
func (v *visit) openJob(path string) {
	v.Helper()
	v.open(path)
	v.wait(`document.querySelector("#job, #jobs").dataset.shown`)
}

// beginJob makes a job and gives its ID.
func (v *visit) beginJob(name string) string {
	v.Helper()
	v.openJob("jobs/")
	v.fill("name", name)
	v.jobDo("new")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	return strings.TrimPrefix(eval[string](v, `location.hash`), "#job=")
}

// demoJob makes the demo job and gives its ID.
func (v *visit) demoJob() string {
	v.Helper()
	v.openJob("jobs/")
	v.jobDo("demo")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	return strings.TrimPrefix(eval[string](v, `location.hash`), "#job=")
}

// inStore asks the browser's database, of whatever version it is, with a script that has it as db and gives a promise.
func inStore(script string) string {
	return `(async () => {
		const db = await new Promise((ok, no) => { const r = indexedDB.open("setbook"); r.onsuccess = () => ok(r.result); r.onerror = () => no(r.error) });
		const got = r => new Promise((ok, no) => { r.onsuccess = () => ok(r.result); r.onerror = () => no(r.error) });
		try { return await (` + script + `) } finally { db.close() } })()`
}

// kept reads a job's record out of the browser's database, with no help from the page, and holds it to be whole.
func (v *visit) kept(id string) *job.Job {
	v.Helper()
	both := eval[[]string](v, inStore(`(t => Promise.all(["jobs", "jobheads"].map(n => got(t.objectStore(n).get(`+quote(id)+`)).then(t => t ?? ""))))(db.transaction(["jobs", "jobheads"]))`))
	j, problems := job.Read(both[0])
	require.Empty(v, problems, both[0])
	assert.Contains(v, both[1], fmt.Sprintf("&revision=%d&", j.Revision), "head and record are of one save")
	return j
}

// keep puts a record into the browser's database as another program would have.
func (v *visit) keepRecord(id, head, record string) {
	v.Helper()
	eval[bool](v, inStore(`(() => { const t = db.transaction(["jobs", "jobheads"], "readwrite"); t.objectStore("jobs").put(`+quote(record)+`, `+quote(id)+`);
		t.objectStore("jobheads").put(`+quote(head)+`, `+quote(id)+`); return new Promise((ok, no) => { t.oncomplete = () => ok(true); t.onabort = no }) })()`))
}

func TestEveryChangeOfAJobIsKept(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	assert.Equal(t, "North terrace", v.text("#job h1"))
	v.fill("air", "84 F")
	v.fill("mix-amount", "50 lb")
	v.fill("mix-lot", "M-0417")
	v.jobDo("mix")
	v.saved()
	v.fill("note-text", "Slab swept")
	v.jobDo("note")
	v.saved()
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "Saved ")
	assert.Contains(t, v.text(`#job [data-part="mixes"]`), "M-0417")
	j := v.kept(id)
	assert.Equal(t, "84 F", strings.Replace(j.Weather.Air, "°F", "F", 1))
	require.Len(t, j.Mixes, 1)
	assert.Equal(t, "50 lb", j.Mixes[0].Amount)
	require.Len(t, j.Notes, 1)

	v.jobDo("remove")
	v.saved()
	assert.Less(t, len(v.kept(id).Mixes)+len(v.kept(id).Notes), 2)
	v.jobDo("undo")
	v.saved()
	assert.Equal(t, 2, len(v.kept(id).Mixes)+len(v.kept(id).Notes))

	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	assert.Contains(t, v.text(`#job [data-part="notes"]`), "Slab swept")
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "Kept on this phone")
}

// "Saved" is said only once the browser's transaction is complete, not when its requests have succeeded: here it never completes.
func TestSavedIsSaidOnlyOnceTheTransactionIsComplete(t *testing.T) {
	v := begin(t, browser.Phone, `{ const real = IDBTransaction.prototype.addEventListener;
		IDBTransaction.prototype.addEventListener = function (event, ...rest) { if (!(window.held && event === "complete")) return real.call(this, event, ...rest) } }`,
		`Object.defineProperty(navigator, "storageBuckets", {value: undefined})`) // the second copy, which is waited for too, would hide the first
	v.beginJob("North terrace")
	v.fill("note-text", "first")
	v.jobDo("note")
	v.saved()
	eval[bool](v, `window.held = true`)
	v.fill("note-text", "second")
	v.jobDo("note")
	// The request has long succeeded: another page can read it.
	v.wait(inStore(`got(db.transaction("jobs").objectStore("jobs").getAll()).then(all => all[0].includes("second"))`))
	assert.Equal(t, "saving", eval[string](v, `document.querySelector("#job").dataset.kept`))
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "Saving…")
}

func TestASaveIsStrict(t *testing.T) {
	v := begin(t, browser.Phone, `{ window.asked = []; const real = IDBDatabase.prototype.transaction;
		IDBDatabase.prototype.transaction = function (stores, mode, options) { if (mode === "readwrite" && stores.includes("jobs")) asked.push(options?.durability); return real.apply(this, arguments) } }`)
	v.beginJob("North terrace")
	v.fill("note-text", "first")
	v.jobDo("note")
	v.saved()
	assert.Equal(t, []string{"strict"}, eval[[]string](v, `[...new Set(window.asked)]`))
}

// Two pages on one job: neither overwrites the other silently.
func TestTwoPagesOnOneJob(t *testing.T) {
	for _, way := range []string{"both", "theirs", "mine"} {
		t.Run(way, func(t *testing.T) {
			v := begin(t, browser.Phone)
			id := v.beginJob("North terrace")
			other := look(t, shared, v.site, browser.Phone)
			other.openJob("job/#job=" + id)
			v.fill("note-text", "from the first page")
			v.jobDo("note")
			v.saved()
			other.fill("note-text", "from the second page")
			other.jobDo("note")
			other.unsaved()
			assert.Contains(t, other.text(`#job [data-part="kept"]`), "changed on another page")
			assert.Contains(t, other.text(`#job [data-part="kept"]`), "from the first page", "it says what differs")
			require.Len(t, v.kept(id).Notes, 1)
			assert.Equal(t, "from the first page", v.kept(id).Notes[0].Text, "nothing is overwritten")

			other.jobDo(way)
			other.saved()
			switch way {
			case "both":
				notes := v.kept(id).Notes
				require.Len(t, notes, 2)
				assert.ElementsMatch(t, []string{"from the first page", "from the second page"}, []string{notes[0].Text, notes[1].Text})
			case "theirs":
				assert.Contains(t, other.text(`#job [data-part="notes"]`), "from the first page")
				assert.NotContains(t, other.text(`#job [data-part="notes"]`), "from the second page")
			case "mine":
				copied := strings.TrimPrefix(eval[string](other, `location.hash`), "#job=")
				require.NotEqual(t, id, copied)
				assert.Equal(t, "from the second page", v.kept(copied).Notes[0].Text)
				assert.Equal(t, "North terrace (copy)", v.kept(copied).Name)
				assert.Equal(t, "from the first page", v.kept(id).Notes[0].Text)
			}
			// From then on both pages can save again.
			other.fill("note-text", "afterwards")
			other.jobDo("note")
			other.saved()
		})
	}
}

// A page that comes in sight again shows what another page has made of the job.
func TestAPageOfAJobThatComesBackInSight(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=" + id)
	v.fill("note-text", "news")
	v.jobDo("note")
	v.saved()
	eval[bool](other, `(document.dispatchEvent(new Event("visibilitychange")), true)`)
	other.wait(`document.querySelector('[data-part="notes"]').innerText.includes("news")`)
	other.fill("note-text", "more")
	other.jobDo("note")
	other.saved()
	assert.Len(t, v.kept(id).Notes, 2)
}

// noStore and the like stand in for what a browser does where it keeps nothing, or no more.
func TestAJobWhereNothingIsKept(t *testing.T) {
	for name, script := range map[string]string{
		"no IndexedDB": `Object.defineProperty(window, "indexedDB", {value: undefined})`,
		"forbidden":    `Object.defineProperty(window, "indexedDB", {get() { throw new DOMException("no", "SecurityError") }})`,
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, script, catches)
			v.openJob("jobs/")
			assert.Contains(t, v.text("#jobs"), "keeps nothing")
			v.jobDo("demo")
			v.wait(`document.querySelector('#jobs [data-part="notes"]')`)
			assert.Contains(t, v.text(`#jobs [data-part="kept"]`), "keeps nothing")
			v.fill("note-text", "said all the same")
			v.jobDo("note")
			v.jobDo("file")
			assert.Contains(t, v.handed(), "said all the same", "it can be copied out")
		})
	}
}

// catches keeps what is handed to the browser as a file.
const catches = `{ window.files = []; const real = URL.createObjectURL; URL.createObjectURL = blob => { blob.text().then(t => files.push(t)); return real(blob) };
	HTMLAnchorElement.prototype.click = function () {} }`

// handed is the last file that was handed over, which must be a record.
func (v *visit) handed() string {
	v.Helper()
	v.wait(`window.files.length`)
	text := eval[string](v, `window.files.at(-1)`)
	_, problems := job.Read(text)
	require.Empty(v, problems)
	return text
}

// The storage is full, by the browser's own count: the site's quota is cut down through its protocol. The change is not kept, which is said; the
// job can be copied out, and kept once there is room.
func TestAJobBeyondTheQuota(t *testing.T) {
	v := begin(t, browser.Phone, catches, `navigator.serviceWorker.register = () => new Promise(() => {})`) // its cache would count too
	v.site.Add("blank/", blank)
	v.do(chromedp.Navigate(v.site.URL + "blank/"))
	v.quota(300_000) // before the site stores anything: the browser remembers for a while how much room there was
	id := v.beginJob("North terrace")
	for i := range 60 {
		v.fill("note-text", "")
		eval[bool](v, `(f => { f.value = "x".repeat(3900) + "`+fmt.Sprint(i)+`"; f.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector('[data-job-field="note-text"]'))`)
		v.jobDo("note")
		v.wait(`document.querySelector("#job").dataset.kept !== "saving"`)
		if eval[string](v, `document.querySelector("#job").dataset.kept`) == "not" {
			break
		}
	}
	assert.Equal(t, "not", eval[string](v, `document.querySelector("#job").dataset.kept`))
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "no more room")
	held := len(v.kept(id).Notes)
	v.jobDo("file")
	v.handed()
	v.quota(-1)
	v.jobDo("again")
	v.saved()
	assert.Equal(t, held+1, len(v.kept(id).Notes))
}

// The browser cleared the site's storage under an open page, as it does when it runs short of room.
func TestAJobThatWasEvicted(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.beginJob("North terrace")
	v.fill("note-text", "before")
	v.jobDo("note")
	v.saved()
	eval[bool](v, inStore(`(() => { const t = db.transaction(["jobs", "jobheads"], "readwrite"); t.objectStore("jobs").clear(); t.objectStore("jobheads").clear(); return new Promise(ok => t.oncomplete = () => ok(true)) })()`))
	v.fill("note-text", "after")
	v.jobDo("note")
	v.unsaved()
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "no longer kept")
	v.jobDo("again")
	v.saved()
	assert.Len(t, v.kept(id).Notes, 2, "all that the page held")

	other := look(t, shared, v.site, browser.Phone)
	other.openJob("job/#job=never-here")
	assert.Contains(t, other.text("#job"), "not on this phone")
}

// The browser has deleted the whole database, as Chromium does with one that it takes for corrupt: the jobs come back from the second copy,
// which stands in files of its own, and that is said. What was deleted by hand stays so.
func TestAJobComesBackFromTheSecondCopy(t *testing.T) {
	v := begin(t, browser.Phone)
	gone := v.demoJob()
	v.jobDo("delete")
	v.wait(`location.pathname.endsWith("/jobs/") && document.querySelector("#jobs").dataset.shown`)
	id := v.beginJob("North terrace")
	v.fill("note-text", "before")
	v.jobDo("note")
	v.saved()
	before := v.kept(id)
	v.site.Add("blank/", blank)
	v.do(chromedp.Navigate(v.site.URL + "blank/"))
	require.True(t, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.deleteDatabase("setbook"); r.onsuccess = () => ok(true); r.onerror = no })`))
	v.openJob("job/#job=" + id)
	assert.Contains(t, v.text(`#job [data-part="notes"]`), "before")
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "brought back from the second copy: 2")
	assert.Equal(t, before, v.kept(id))
	v.openJob("job/#job=" + gone)
	assert.NotContains(t, v.text("#job"), "Courtyard")
	v.openJob("jobs/")
	v.erase()
	v.fill("query", "north")
	v.do(chromedp.Navigate(v.site.URL + "blank/"))
	require.True(t, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.deleteDatabase("setbook"); r.onsuccess = () => ok(true); r.onerror = no })`))
	v.openJob("jobs/")
	v.wait(`document.querySelector('#jobs [data-part="found"] a')`)
	assert.Zero(t, eval[int](v, `document.querySelectorAll('[data-job-do="back"]').length`), "what was deleted for good is in neither copy")
}

// The browser is asked at the first save to keep what is stored, and what it answers is said.
func TestTheBrowserIsAskedToKeepIt(t *testing.T) {
	for answer, says := range map[string]string{"true": "has promised", "false": "did not promise"} {
		v := begin(t, browser.Phone, `navigator.storage.persist = () => (sessionStorage.asked = 1 + Number(sessionStorage.asked ?? 0), Promise.resolve(`+answer+`)); navigator.storage.persisted = () => Promise.resolve(`+answer+`)`)
		v.openJob("jobs/")
		assert.Equal(t, 0, eval[int](v, `Number(sessionStorage.asked ?? 0)`), "not before anything is saved")
		v.beginJob("North terrace") // which keeps it
		v.wait(`document.querySelector('#job [data-part="kept"]').innerText.includes("` + says + `")`)
		assert.Equal(t, 1, eval[int](v, `Number(sessionStorage.asked)`))
		v.reload()
		v.wait(`document.querySelector("#job").dataset.shown && document.querySelector('#job [data-part="kept"]').innerText.includes("` + says + `")`)
		assert.Equal(t, 1, eval[int](v, `Number(sessionStorage.asked)`), "it is asked once")
	}
}

// A job that a newer Setbook wrote is looked at and handed on as it is; whatever is typed or pressed, it is not changed.
func TestANewerJobIsReadOnly(t *testing.T) {
	v := begin(t, browser.Phone, catches)
	id := v.demoJob()
	record := strings.Replace(eval[string](v, inStore(`got(db.transaction("jobs").objectStore("jobs").get(`+quote(id)+`))`)), `"version": 1`, `"version": 2, "tilt": {"x": 1}`, 1)
	require.Contains(t, record, "tilt")
	head := eval[string](v, inStore(`got(db.transaction("jobheads").objectStore("jobheads").get(`+quote(id)+`))`))
	v.keepRecord(id, head, record)
	v.reload()
	v.wait(`document.querySelector("#job").dataset.shown`)
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "newer Setbook")
	assert.Contains(t, v.text("#job"), "Courtyard", "what is understood is shown")
	v.fill("name", "Mine")
	v.fill("note-text", "mine")
	v.jobDo("note")
	v.jobDo("file")
	v.wait(`window.files.length`)
	assert.Equal(t, record, eval[string](v, `window.files[0]`), "handed on byte by byte")
	assert.Equal(t, record, eval[string](v, inStore(`got(db.transaction("jobs").objectStore("jobs").get(`+quote(id)+`))`)))
	assert.Equal(t, head, eval[string](v, inStore(`got(db.transaction("jobheads").objectStore("jobheads").get(`+quote(id)+`))`)))
}

// A database of a later version than this program knows is told, read and not changed.
func TestADatabaseOfLater(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	v.site.Add("blank/", blank)
	v.do(chromedp.Navigate(v.site.URL + "blank/"))
	require.True(t, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.open("setbook", 9); r.onerror = no; r.onblocked = no;
		r.onupgradeneeded = () => r.result.createObjectStore("tomorrow").put("kept", "x"); r.onsuccess = () => (r.result.close(), ok(true)) })`))
	before := v.kept(id)
	v.openJob("job/#job=" + id)
	assert.Contains(t, v.text(`#job [data-part="kept"]`), "newer Setbook")
	assert.Contains(t, v.text("#job"), "Courtyard")
	v.fill("note-text", "mine")
	v.jobDo("note")
	v.open("bed/")
	v.enter("bed", "width", "3/8 in")
	v.wait(`document.querySelector('#notices [data-notice="storage"]')`)
	assert.Equal(t, before, v.kept(id))
	assert.Equal(t, "kept", eval[string](v, inStore(`got(db.transaction("tomorrow").objectStore("tomorrow").get("x"))`)))
	assert.Equal(t, 9, eval[int](v, inStore(`Promise.resolve(db.version)`)))
}

// The databases of versions 1 and 2 become one of version 3 with all that is in them, and a job can be made of it.
func TestTheDatabasesBeforeJobs(t *testing.T) {
	for version, fill := range map[int]string{
		1: `r.result.createObjectStore("entries").put("v=1&binder=rapid&bag_time=7+h&bag_temp=70+F&temp=70+F", "wait")`,
		2: `r.result.createObjectStore("entries").put("v=1&binder=rapid&bag_time=7+h&bag_temp=70+F&temp=70+F", "wait");
			r.result.createObjectStore("countdowns").put("countdown=1&name=Foot+traffic&of=wait&from=1781252000123&until=1781257400123&entry=v%3D1%26bag_time%3D24%2Bh", "a-1")`,
	} {
		t.Run(fmt.Sprint(version), func(t *testing.T) {
			v := begin(t, browser.Phone)
			v.site.Add("blank/", blank)
			v.do(chromedp.Navigate(v.site.URL + "blank/"))
			require.True(t, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.open("setbook", `+fmt.Sprint(version)+`); r.onerror = no;
				r.onupgradeneeded = () => { `+fill+` }; r.onsuccess = () => (r.result.close(), ok(true)) })`))
			v.openJob("jobs/")
			assert.Equal(t, 3, eval[int](v, inStore(`Promise.resolve(db.version)`)))
			assert.Equal(t, "countdowns,entries,jobheads,jobs", eval[string](v, inStore(`Promise.resolve([...db.objectStoreNames].join())`)))
			assert.Equal(t, version-1, eval[int](v, inStore(`got(db.transaction("countdowns").objectStore("countdowns").count())`)), "countdowns")
			v.jobDo("gather")
			v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
			j := v.kept(strings.TrimPrefix(eval[string](v, `location.hash`), "#job="))
			require.Len(t, j.Entries, 1)
			assert.Contains(t, j.Entries[0].Link, "bag_time=7+h")
			assert.Len(t, j.Countdowns, version-1)
			v.open("wait/")
			v.wait(`document.querySelector('#wait [data-key="bag_time"]').value === "7 h"`)
		})
	}
}

func TestAJobIsDeletedAndBroughtBack(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	before := v.kept(id)
	v.jobDo("delete")
	v.wait(`location.pathname.endsWith("/jobs/") && document.querySelector("#jobs").dataset.shown && document.querySelector('[data-job-do="back"]')`)
	assert.NotContains(t, v.text(`#jobs [data-part="found"]`), "Courtyard")
	v.openJob("job/#job=" + id)
	assert.Contains(t, v.text("#job"), "not on this phone")
	v.openJob("jobs/")
	v.wait(`document.querySelector('[data-job-do="back"]')`)
	v.jobDo("back")
	v.wait(`document.querySelector('#jobs [data-part="found"]').innerText.includes("Courtyard")`)
	assert.Equal(t, before, v.kept(id))
	v.press(`#jobs [data-part="found"] a`)
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	assert.Contains(t, v.text("#job h1"), "Courtyard")
}

// choose hands a file to the page, as a person does who picks one.
func (v *visit) choose(name, text string) {
	v.Helper()
	eval[bool](v, `(f => { const d = new DataTransfer(); d.items.add(new File([`+quote(text)+`], `+quote(name)+`)); f.files = d.files; f.dispatchEvent(new Event("change", {bubbles: true})); return true })(document.querySelector("[data-job-file]"))`)
	v.wait(`document.querySelector('#jobs [data-part="preview"]').innerText.trim()`)
}

// everything is all that the database holds, to see that nothing changed.
var everything = inStore(`Promise.all([...db.objectStoreNames].flatMap(n => [n, got(db.transaction(n).objectStore(n).getAllKeys()), got(db.transaction(n).objectStore(n).getAll())])).then(JSON.stringify)`)

func TestAnImportIsShownFirst(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	mine := v.kept(id)
	brought := *mine
	brought.Changed++
	brought.Notes = append(append([]job.Note(nil), mine.Notes...), job.Note{ID: "from-b", When: mine.Changed, Text: "From the other phone"})
	v.openJob("jobs/")
	before := eval[string](v, everything)
	v.choose("job.json", job.Write(&brought))
	assert.Contains(t, v.text(`#jobs [data-part="preview"]`), "From the other phone")
	assert.Equal(t, before, eval[string](v, everything), "shown, and nothing changed")
	v.jobDo("leave")
	v.wait(`!document.querySelector('#jobs [data-part="preview"]').innerText.trim()`)
	assert.Equal(t, before, eval[string](v, everything), "left, and nothing changed")

	v.choose("job.json", job.Write(&brought))
	v.jobDo("take")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	assert.Equal(t, brought.Notes, v.kept(id).Notes)
	assert.Equal(t, mine.Revision+1, v.kept(id).Revision)

	// A link brings a whole job to a phone that does not have it.
	packed, ok := job.Pack(&brought)
	require.True(t, ok)
	other := begin(t, browser.Phone)
	other.openJob("jobs/#" + packed)
	other.wait(`document.querySelector('#jobs [data-part="preview"]').innerText.includes("Courtyard")`)
	assert.Equal(t, 0, eval[int](other, inStore(`got(db.transaction("jobs").objectStore("jobs").count())`)))
	other.jobDo("take")
	other.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	assert.Equal(t, brought.Notes, other.kept(id).Notes)
}

// Whatever a file or a link holds, nothing of it runs, and nothing is changed by looking at it.
func TestAHostileImport(t *testing.T) {
	const evil = `<img src=x onerror="window.struck=1"><script>window.struck=1</script>`
	v := begin(t, browser.Phone)
	v.demoJob()
	v.openJob("jobs/")
	before := eval[string](v, everything)
	hostile := job.Job{ID: "x", Name: evil, Place: evil, Notes: []job.Note{{ID: "n", Text: evil}}, Entries: []job.Entry{{ID: "e", Calculator: "bed", Name: evil, Link: "v=1"}}}
	for _, text := range []string{
		"", "{", evil, `{"setbook": "job"}`, strings.Repeat("[", 100_000), "\x00\xff", job.Write(&hostile), strings.Replace(job.Write(&hostile), `"version": 1`, `"version": 99`, 1),
		strings.Replace(job.Write(&hostile), `"id": "x"`, `"id": "../../x"`, 1), `{"setbook": "job", "version": 1, "__proto__": {"a": 1}}`,
		strings.Repeat(" ", job.MaxSize+10),
	} {
		v.choose("job.json", text)
		assert.Zero(t, eval[int](v, `document.querySelectorAll("#jobs img, #jobs script").length`))
		assert.Equal(t, before, eval[string](v, everything), "nothing changed")
		v.jobDo("leave")
		v.wait(`!document.querySelector('#jobs [data-part="preview"]').innerText.trim()`)
	}
	for _, fragment := range []string{"packed=1.", "packed=1.AAAA", "packed=1." + strings.Repeat("A", 20_000), "packed=1." + evil, "packed=9.AAAA", "job=" + evil} {
		v.openJob("jobs/#" + fragment)
		v.openJob("job/#" + fragment)
		assert.False(t, eval[bool](v, `"struck" in window`))
		assert.Equal(t, before, eval[string](v, everything), "nothing changed")
	}
	// Taken over knowingly, it is a job with ugly names.
	packed, ok := job.Pack(&hostile)
	require.True(t, ok)
	v.openJob("jobs/#" + packed)
	v.wait(`document.querySelector('#jobs [data-job-do="take"]')`)
	v.jobDo("take")
	v.wait(`location.pathname.endsWith("/job/") && document.documentElement.dataset.live && document.querySelector("#job").dataset.shown`)
	for _, view := range []string{"", "&view=hand-over", "&view=order"} {
		v.openJob("job/#job=x" + view)
		assert.Zero(t, eval[int](v, `document.querySelectorAll("#job img, #job script").length`))
		assert.Contains(t, v.text("#job"), "onerror", "it is shown as text")
	}
	assert.False(t, eval[bool](v, `"struck" in window`))
}

func TestAJobIsHandedOn(t *testing.T) {
	v := begin(t, browser.Phone, catches, `{ window.copies = []; navigator.clipboard.writeText = t => (copies.push(t), Promise.resolve());
		navigator.canShare = w => w.files[0].type === "text/plain"; navigator.share = w => w.files[0].text().then(t => files.push("shared " + w.files[0].name + " " + t)) }`)
	id := v.demoJob()
	text := job.Write(v.kept(id))
	v.jobDo("file")
	assert.Equal(t, text, v.handed())
	v.jobDo("copy")
	v.wait(`window.copies.length === 1`)
	assert.Equal(t, text, eval[string](v, `window.copies[0]`))
	v.jobDo("link")
	v.wait(`window.copies.length === 2`)
	at, fragment, _ := strings.Cut(eval[string](v, `window.copies[1]`), "#")
	assert.Equal(t, v.site.URL+"jobs/", at)
	linked, problems := job.Unpack(fragment)
	require.Empty(t, problems)
	assert.Equal(t, text, job.Write(linked))
	assert.LessOrEqual(t, len(fragment), job.MaxPacked)
	v.jobDo("share")
	v.wait(`window.files.length === 2`)
	assert.Regexp(t, `^shared setbook-courtyard-demo-job-[\d-]+\.json\.txt \{`, eval[string](v, `window.files[1]`), "a browser that shares no JSON shares text")
}

// A small job fits a code, which is drawn black on white on a dark page too; a large one is said to be too large.
func TestAJobAsACode(t *testing.T) {
	v := begin(t, browser.Phone)
	v.beginJob("North terrace")
	v.press(`[data-theme-choice="dark"]`)
	v.jobDo("code")
	v.wait(`document.querySelector("#job svg.job-code path")`)
	assert.Equal(t, "white black", eval[string](v, `[...document.querySelectorAll("#job svg.job-code > *")].map(e => e.getAttribute("fill")).join(" ")`))
	for range 3 {
		eval[bool](v, `(f => { f.value = Array.from({length: 500}, () => Math.random().toString(36)).join(" ").slice(0, 3900); f.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector('[data-job-field="note-text"]'))`)
		v.jobDo("note")
		v.saved()
	}
	v.jobDo("code")
	v.wait(`document.querySelector('[data-said="hand-on"]').innerText.includes("too large")`)
}

// The sum of a page belongs to a job by a press, and is kept in it from then on.
func TestASumOfAJob(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/")
	assert.True(t, eval[bool](v, `document.querySelector("#job-strip").hidden`), "no job, no strip")
	id := v.beginJob("North terrace")
	v.fill("air", "84 F")
	v.saved()
	v.open("bed/")
	v.wait(`!document.querySelector("#job-strip").hidden`)
	v.enter("bed", "width", "3/8 in")
	assert.Empty(t, v.kept(id).Entries, "nothing is put into a job unasked")
	v.jobDo("add")
	v.wait(`document.querySelector("#job-strip").dataset.kept === "saved" && document.querySelector("#job-strip").innerText.includes("Saved")`)
	require.Len(t, v.kept(id).Entries, 1)
	v.enter("bed", "width", "5/16 in")
	v.wait(`document.querySelector("#job-strip").dataset.kept === "saved"`)
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "width=5/16+in") }, patience, tick)
	v.reload()
	v.wait(`!document.querySelector("#job-strip").hidden`)
	v.enter("bed", "width", "1/4 in")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "width=1/4+in") }, patience, tick)

	v.openJob("job/#job=" + id)
	eval[string](v, unfold)
	assert.Contains(t, v.text(`#job [data-part="sums"]`), "Open the sum")
	v.press(`#job [data-part="sums"] a`)
	v.wait(`document.querySelector('#bed [data-key="width"]') && document.documentElement.dataset.live`)
	assert.Equal(t, "1/4 in", v.field("bed", "width"))

	// Another page changes the very same sum: it is said.
	other := look(t, shared, v.site, browser.Phone)
	other.open(strings.TrimPrefix(eval[string](v, `location.href`), v.site.URL))
	other.wait(`!document.querySelector("#job-strip").hidden`)
	v.wait(`!document.querySelector("#job-strip").hidden`)
	v.enter("bed", "width", "1/2 in")
	require.Eventually(t, func() bool { return strings.Contains(v.kept(id).Entries[0].Link, "width=1/2+in") }, patience, tick)
	other.enter("bed", "width", "3/8 in")
	other.wait(`document.querySelector("#job-strip").dataset.kept === "not"`)
	assert.Contains(t, other.text("#job-strip"), "changed on another page")
	other.jobDo("add")
	other.wait(`document.querySelector("#job-strip").dataset.kept === "saved"`)
	require.Eventually(t, func() bool { return len(v.kept(id).Entries) == 2 }, patience, tick)

	// The weather of the job stands in a sum that is begun from it.
	v.openJob("job/#job=" + id)
	eval[string](v, unfold)
	v.do(chromedp.Navigate(v.site.URL + strings.TrimPrefix(eval[string](v, `[...document.querySelectorAll('a[href*="/heat/?job="]')][0].getAttribute("href")`), "../")))
	v.live()
	assert.Regexp(t, `^84 °?F$`, v.field("heat", "air"))
}

// paper prints a page and gives its PDF and how many sheets it takes.
func (v *visit) paper(width, height float64) (pdf []byte, sheets int) {
	v.Helper()
	made, err := browser.Call(v.tab, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: width, PaperHeight: height})
	require.NoError(v, err)
	return made.Data, len(pdfPage.FindAllString(string(made.Data), -1))
}

// The demo job goes from slab to hand-over with the server gone: the day, a mix, a check, a sum, the sheet, the order, on paper.
func TestTheDemoJobFromSlabToHandOver(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("")
	v.wait(`navigator.serviceWorker.controller`)
	require.NoError(t, v.site.Stop())

	id := v.demoJob()
	day := v.text(`#job [data-part="day"]`)
	for _, want := range []string{"What to do next", "Walk on the terrace", "Set on the membrane", "The course of the work", "Look at the slab"} {
		assert.Contains(t, day, want)
	}
	v.fill("air", "71 F")
	v.saved()
	for _, stage := range []string{"slope", "bed", "grout", "sealant"} { // a sum of each stage is opened and kept
		v.openJob("job/#job=" + id)
		eval[string](v, unfold)
		v.press(`#job [data-part="sums"] a[href*="/` + stage + `/"]`)
		v.wait(`document.querySelector("section.calculator[data-calculator=` + stage + `]") && document.documentElement.dataset.live && !document.querySelector("#job-strip").hidden`)
	}
	v.openJob("job/#job=" + id)
	v.fill("mix-amount", "25 kg")
	v.fill("mix-product", "Grout")
	v.fill("mix-lot", "G-1031")
	v.fill("mix-air", "21 C")
	v.jobDo("mix")
	v.saved()
	v.fill("check-where", "By the gate")
	v.fill("check-contact", "96")
	v.jobDo("check")
	v.saved()
	v.fill("note-text", "Joints grouted, washed twice.")
	v.jobDo("note")
	v.saved()

	v.openJob("job/#job=" + id + "&view=hand-over")
	v.fill("client", "Somebody invented")
	v.jobDo("handed")
	v.saved()
	require.NotZero(t, v.kept(id).HandOver.When)
	sheet := v.text(`#job [data-part="sheet"]`)
	for _, want := range []string{"Somebody invented", "G-1031", "By the gate", "96 %", "Care of the surface", "What the figures rest on", "edition "} {
		assert.Contains(t, sheet, want)
	}
	for _, paper := range [][2]float64{{8.27, 11.69}, {8.5, 11}} { // A4 and Letter, in inches
		pdf, sheets := v.paper(paper[0], paper[1])
		assert.True(t, 1 <= sheets && sheets <= 4, "%d sheets", sheets)
		assert.Contains(t, string(pdf), "/FontDescriptor")
	}
	_, err := browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	require.NoError(t, err)
	assert.True(t, eval[bool](v, `document.querySelector(".paper").checkVisibility()`))
	assert.Equal(t, "", eval[string](v, `[...document.querySelectorAll("button, input, textarea, .top, .foot")].filter(e => e.checkVisibility()).map(e => e.outerHTML.slice(0, 80)).join()`), "no button and no field is printed")
	_, err = browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
	require.NoError(t, err)

	v.openJob("job/#job=" + id + "&view=order")
	assert.Contains(t, v.text(`#job [data-part="order"]`), "enough 19 times in 20")
	for name, size := range map[string][2]float64{"A4": {8.27, 11.69}, "Letter": {8.5, 11}} {
		_, sheets := v.paper(size[0], size[1])
		assert.Equal(t, 1, sheets, "the order is one sheet of %s", name)
	}
	assert.Empty(t, v.tab.Faults())
}

// A job on a small screen and a large one: nothing scrolls sideways, and each thing to press fits a glove.
func TestAJobFitsEveryScreen(t *testing.T) {
	v := begin(t, browser.Phone)
	id := v.demoJob()
	for _, at := range []string{"jobs/", "job/#job=" + id, "job/#job=" + id + "&view=hand-over", "job/#job=" + id + "&view=order", "bed/?job=" + id} {
		v.open("about/") // another part of the same address would load nothing anew
		v.open(at)
		v.wait(`(document.querySelector("#job, #jobs")?.dataset.shown) || document.querySelector("#job-strip:not([hidden])")`)
		eval[string](v, unfold)
		for _, size := range []browser.Size{browser.Narrow, browser.Phone, browser.Tablet} {
			require.NoError(t, v.tab.Resize(size))
			assert.Equal(t, size.Width, eval[int64](v, `Math.max(document.documentElement.scrollWidth, innerWidth)`), "%s at %d px: %v", at, size.Width, eval[[]string](v, wide))
			assert.Empty(t, eval[[]string](v, `{ const focusing = true; `+smallTargets+` }`), "%s at %d px", at, size.Width)
		}
		require.NoError(t, v.tab.Resize(browser.Phone))
	}
}

// TestAxeOnAJob looks at the pages of a job that has something in it, in light and dark; a job that is not kept, too.
func TestAxeOnAJob(t *testing.T) {
	path, err := npm.Axe.File("axe.min.js")
	require.NoError(t, err)
	axe, err := os.ReadFile(path)
	require.NoError(t, err)
	v := begin(t, browser.Phone)
	id := v.demoJob()
	clean := func(at string) {
		t.Helper()
		eval[string](v, unfold)
		v.do(chromedp.Evaluate[chromedp.Void](string(axe)))
		for _, theme := range []string{"light", "dark"} {
			eval[string](v, `(document.documentElement.dataset.theme = "`+theme+`", "")`)
			eval[string](v, settled)
			assert.Empty(t, eval[[]string](v, axeRuns), "%s, %s", at, theme)
		}
	}
	for _, at := range []string{"jobs/", "job/#job=" + id, "job/#job=" + id + "&view=hand-over", "job/#job=" + id + "&view=order", "bed/?job=" + id} {
		v.open("about/") // another part of the same address would load nothing anew
		v.open(at)
		v.wait(`(document.querySelector("#job, #jobs")?.dataset.shown) || document.querySelector("#job-strip:not([hidden])")`)
		clean(at)
	}
	v.open("about/")
	v.openJob("job/#job=" + id)
	eval[bool](v, inStore(`(() => { const t = db.transaction(["jobs", "jobheads"], "readwrite"); t.objectStore("jobs").clear(); t.objectStore("jobheads").clear(); return new Promise(ok => t.oncomplete = () => ok(true)) })()`))
	v.fill("mix-amount", "much")
	v.jobDo("mix")
	v.fill("note-text", "x")
	v.jobDo("note")
	v.unsaved()
	clean("not kept, and a field that is wrong")
	v.jobDo("again") // a page with something that is not kept asks before it is left
	v.saved()
	v.openJob("jobs/")
	v.choose("job.json", `{"setbook": "job", "version": 1}`)
	clean("a file that is no job")
}

// erase deletes a job for good, from the list.
func (v *visit) erase() {
	v.Helper()
	v.jobDo("erase")
	v.jobDo("erase-sure")
	v.wait(`!document.querySelector('[data-job-do="erase-sure"]')`)
}
