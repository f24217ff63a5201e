package browser

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

// noBuckets is a browser without storage buckets.
const noBuckets = `Object.defineProperty(navigator, "storageBuckets", {value: undefined})`

// spare asks the second copy of entries and countdowns, with a script that has its database as db and gives a promise of a text; "none" where there
// is no copy yet.
func (v *visit) spare(script string) string {
	v.Helper()
	return eval[string](v, `(async () => {
		const factory = (await navigator.storageBuckets.open("entries-copy")).indexedDB;
		if (!(await factory.databases()).length) return "none"; // asking for it would make it
		const got = r => new Promise((ok, no) => { r.onsuccess = () => ok(r.result); r.onerror = () => no(r.error) });
		const db = await got(factory.open("setbook"));
		try { return String(await (`+script+`) ?? "") } finally { db.close() } })()`)
}

// spares waits until the second copy holds so many countdowns, and the entry of a calculator with a piece of text in it; "" for none.
func (v *visit) spares(countdowns int, calculator, piece string) {
	v.Helper()
	number, entry := "", ""
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(tick) {
		number = v.spare(`got(db.transaction("countdowns").objectStore("countdowns").count())`)
		entry = v.spare(`got(db.transaction("entries").objectStore("entries").get(` + quote(calculator) + `))`)
		if number == fmt.Sprint(countdowns) && (entry == "") == (piece == "") && strings.Contains(entry, piece) {
			return
		}
	}
	require.Fail(v, "the second copy does not come in step", "countdowns %s, entry %q", number, entry)
}

// lose deletes the first database, as Chromium does with one that it takes for corrupt.
func (v *visit) lose() {
	v.Helper()
	v.nowhere()
	require.True(v, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.deleteDatabase("setbook"); r.onsuccess = () => ok(true); r.onerror = no })`))
}

// nowhere goes to a page of the site that runs nothing.
func (v *visit) nowhere() {
	v.Helper()
	v.site.Add("blank/", blank)
	v.do(chromedp.Navigate(v.site.URL + "blank/"))
}

// stepped waits until the first copy has its mark: all is brought back that there was.
func (v *visit) stepped() {
	v.Helper()
	v.comesTrue(`indexedDB.databases().then(all => all.some(d => d.version >= 3) && ` + // asking for it would make it
		inStore(`got(db.transaction("entries").objectStore("entries").get("in step")).then(mark => mark > "1")`) + `)`)
}

// withPrograms does a test with each of the two programs: a device that keeps jobs has the whole one on every page.
func withPrograms(t *testing.T, test func(t *testing.T, script string)) {
	t.Run("small", func(t *testing.T) { test(t, ``) })
	t.Run("whole", func(t *testing.T) { test(t, `localStorage.setItem("setbook.job", "x")`) })
}

const broughtBack = "Countdowns brought back from the second copy: "

// The browser has deleted the first database: the countdowns and the entries come back from the second copy, and that is said. A page that was
// closed before they were back, and left an empty database, changes nothing of that.
func TestCountdownsAndEntriesComeBack(t *testing.T) {
	withPrograms(t, func(t *testing.T, script string) {
		v := begin(t, browser.Phone, script)
		v.waiting()
		v.stepped()
		v.countdown("Foot traffic", "4 h")
		v.countdown("Wheels", "24 h")
		v.spares(2, "wait", "bag_time=24+h")
		v.open("bed/")
		v.enter("bed", "width", "3/8 in")
		v.spares(2, "bed", "width=3/8+in")
		v.stepped()
		assert.Empty(t, v.said("back"))

		for _, left := range []string{`0`, `new Promise((ok, no) => { const r = indexedDB.open("setbook", 3); r.onerror = no; r.onsuccess = () => (r.result.close(), ok(1));
			r.onupgradeneeded = () => ["entries", "countdowns", "jobs", "jobheads"].forEach(n => r.result.createObjectStore(n)) })`} {
			v.lose()
			eval[int](v, left)
			v.open("bed/")
			v.wait(rows + `.length === 2`)
			assert.Regexp(t, `^Foot traffic (4 h 00|3 h 59) min`, v.panel()[0])
			assert.Regexp(t, `^Wheels`, v.panel()[1])
			assert.Contains(t, v.said("back"), broughtBack+"2.")
			assert.Contains(t, v.text("#countdowns"), broughtBack+"2.", "it can be seen")
			v.wait(`document.querySelector('#bed [data-key="width"]').value === "3/8 in"`)
			v.open("about/")
			v.wait(rows + `.length === 2`)
			v.spares(2, "bed", "width=3/8+in")
			assert.Empty(t, v.said("back"), "it is said once")
		}
	})
}

// The browser has set the first copy back to before a countdown, as it does where it takes the middle of a torn log for its end: the countdown comes back.
func TestAFirstCopyThatWasSetBack(t *testing.T) {
	withPrograms(t, func(t *testing.T, script string) {
		v := begin(t, browser.Phone, script)
		v.waiting()
		v.stepped()
		before := eval[string](v, inStore(`got(db.transaction("entries").objectStore("entries").get("in step"))`))
		v.countdown("Foot traffic", "5 h")
		v.spares(1, "wait", "bag_time=5+h")
		v.nowhere()
		eval[bool](v, inStore(`(() => { const t = db.transaction(["entries", "countdowns"], "readwrite"); t.objectStore("countdowns").clear(); t.objectStore("entries").put(`+quote(before)+`, "in step");
			return new Promise((ok, no) => { t.oncomplete = () => ok(true); t.onabort = no }) })()`))
		v.open("about/")
		v.wait(rows + `.length === 1`)
		assert.Regexp(t, `^Foot traffic`, v.panel()[0])
		assert.Contains(t, v.said("back"), broughtBack+"1.")
		v.spares(1, "wait", "bag_time=5+h")
	})
}

// What a person removed stays removed, whatever the second copy still holds: it follows the first.
func TestARemovedCountdownDoesNotComeBack(t *testing.T) {
	withPrograms(t, func(t *testing.T, script string) {
		v := begin(t, browser.Phone, script)
		v.waiting()
		v.stepped()
		v.countdown("Foot traffic", "4 h")
		v.countdown("Wheels", "24 h")
		v.spares(2, "wait", "bag_time=24+h")
		v.act(0, "remove")
		v.spares(1, "wait", "bag_time=24+h")
		v.lose()
		v.open("about/")
		v.wait(rows + `.length === 1`)
		assert.Regexp(t, `^Wheels`, v.panel()[0])
		assert.Contains(t, v.said("back"), broughtBack+"1.")
		v.spares(1, "wait", "bag_time=24+h")

		// Removed, and the page closed before the second copy had followed: as it was before is put into it by hand.
		id := eval[string](v, rows+`[0].dataset.count`)
		kept := v.spare(`got(db.transaction("countdowns").objectStore("countdowns").get(` + quote(id) + `))`)
		v.act(0, "remove")
		v.spares(0, "wait", "bag_time=24+h")
		v.nowhere()
		v.spare(`got(db.transaction("countdowns", "readwrite").objectStore("countdowns").put(` + quote(kept) + `, ` + quote(id) + `))`)
		v.spares(1, "wait", "bag_time=24+h")
		v.open("about/")
		v.spares(0, "wait", "bag_time=24+h")
		assert.True(t, eval[bool](v, `document.querySelector("#countdowns").hidden`))
		assert.Empty(t, v.said("back"))
		v.reload()
		v.stepped()
		assert.True(t, eval[bool](v, `document.querySelector("#countdowns").hidden`))

		// Brought back by the person, it is in both again.
		v.waiting()
		v.stepped()
		v.countdown("Grout", "5 h")
		v.spares(1, "wait", "bag_time=5+h")
		v.act(0, "remove")
		v.spares(0, "wait", "bag_time=5+h")
		v.act(0, "undo")
		v.spares(1, "wait", "bag_time=5+h")
	})
}

// What a phone held before there was a second copy is copied; nothing is said of it.
func TestADeviceWithoutASecondCopyGetsOne(t *testing.T) {
	v := begin(t, browser.Phone)
	v.nowhere()
	require.True(t, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.open("setbook", 3); r.onerror = no; r.onupgradeneeded = () => {
		r.result.createObjectStore("entries").put("v=1&binder=rapid&bag_time=7+h&bag_temp=70+F&temp=70+F", "wait");
		r.result.createObjectStore("countdowns").put("countdown=1&name=Foot+traffic&of=wait&from=1781252000123&until=1781257400123&entry=v%3D1%26bag_time%3D24%2Bh", "a-1");
		["jobs", "jobheads"].forEach(n => r.result.createObjectStore(n)) };
		r.onsuccess = () => (r.result.close(), ok(true)) })`))
	v.open("about/")
	v.wait(rows + `.length === 1`)
	v.spares(1, "wait", "bag_time=7+h")
	assert.Empty(t, v.said("back"))
}

// No page waits for the second copy; a browser without storage buckets, or one that gives none, does as before.
func TestThePageDoesNotWaitForTheSecondCopy(t *testing.T) {
	for name, script := range map[string]string{
		"no answer":  `navigator.storageBuckets.open = () => (window.asked = true, new Promise(() => {}))`,
		"refused":    `navigator.storageBuckets.open = () => (window.asked = true, Promise.reject(new DOMException("no", "SecurityError")))`,
		"throws":     `navigator.storageBuckets.open = () => { window.asked = true; throw new DOMException("no", "SecurityError") }`,
		"no buckets": noBuckets + `; setTimeout(() => window.asked = true, 1500)`,
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, script)
			v.waiting()
			v.countdown("Foot traffic", "4 h")
			v.wait(rows + `.length === 1`)
			v.comesTrue(keptCountdowns + `.then(count => count === 1)`)
			v.open("bed/")
			v.enter("bed", "width", "3/8 in")
			v.wait(`location.hash.includes("width=3/8+in")`)
			v.open("about/") // the same address again would load nothing
			v.open("bed/")
			v.wait(`document.querySelector('#bed [data-key="width"]').value === "3/8 in" && ` + rows + `.length === 1`)
			v.wait(`window.asked`)
			v.act(0, "remove")
			v.wait(rows + `[0].innerText.includes("Removed")`)
			v.reload()
			v.wait(`window.asked && document.querySelector("#countdowns").hidden`)
			assert.Zero(t, eval[int](v, `document.querySelectorAll("#notices [data-notice]").length`))
			assert.Empty(t, v.said("kept"))
		})
	}
}

// A countdown is on the disk before it is copied: the second copy follows the first, also in what a flat battery took from it.
func TestACountdownIsKeptStrictly(t *testing.T) {
	v := begin(t, browser.Phone, noBuckets, `{ window.asked = []; const real = IDBDatabase.prototype.transaction;
		IDBDatabase.prototype.transaction = function (stores, mode, options) { if (mode === "readwrite" && [stores].flat().includes("countdowns")) asked.push(options?.durability ?? "none"); return real.apply(this, arguments) } }`)
	v.waiting()
	v.countdown("Foot traffic", "4 h")
	v.wait(rows + `.length === 1 && window.asked.length`)
	assert.Equal(t, []string{"strict"}, eval[[]string](v, `[...new Set(window.asked)]`))
}

// A tablet for everybody holds no second copy of anything, and what it held before is cleared from it.
func TestACounterHasNoSecondCopy(t *testing.T) {
	v := begin(t, browser.Tablet)
	v.waiting()
	v.stepped()
	v.countdown("Foot traffic", "5 h")
	v.spares(1, "wait", "bag_time=5+h")
	eval[bool](v, `(localStorage.setItem("setbook.clear", "60"), true)`)
	v.open("about/")
	v.spares(0, "wait", "")
	v.waiting()
	require.True(t, eval[bool](v, `(document.querySelector('#wait [data-start="time"]').click(), true)`))
	v.wait(rows + `.length === 2`)
	v.comesTrue(keptCountdowns + `.then(count => count === 2)`)
	time.Sleep(2 * time.Second) // it would be copied by then
	v.spares(0, "wait", "")
}
