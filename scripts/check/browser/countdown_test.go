package browser

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

const (
	// shifted is a clock that a test can put forward or back: window.shift is so many milliseconds.
	shifted = `{ const real = Date.now; window.shift = Number(sessionStorage.getItem("shift")); Date.now = () => real() + window.shift }`
	rows    = `[...document.querySelectorAll("#countdowns li")]`
)

// countdown starts one from the page on waiting: a rapid binder at its bag's temperature waits the bag's time.
func (v *visit) countdown(name, wait string) {
	v.Helper()
	if name != "" {
		require.True(v, eval[bool](v, `(() => { const f = document.querySelector('#wait [data-names="time"]'); f.focus(); f.select(); return true })()`))
		v.do(chromedp.KeyEvent(name))
	}
	v.enter("wait", "bag_time", wait)
	v.press(`#wait [data-start="time"]`)
}

// waiting opens the page on waiting, for a rapid binder at its bag's temperature.
func (v *visit) waiting() {
	v.Helper()
	v.open("wait/#binder=rapid&bag_time=4+h&bag_temp=70+F&temp=70+F")
}

// panel is what a person reads in each row.
func (v *visit) panel() []string {
	v.Helper()
	return eval[[]string](v, rows+`.map(li => li.querySelector("summary, p").innerText.replace(/\s+/g, " ").trim())`)
}

func (v *visit) pass(d time.Duration) {
	v.Helper()
	// As after a sleep: the clock is ahead, and the page comes in sight.
	eval[bool](v, fmt.Sprintf(`(sessionStorage.setItem("shift", window.shift += %d), document.dispatchEvent(new Event("visibilitychange")), true)`, d.Milliseconds()))
}

func (v *visit) said(part string) string {
	v.Helper()
	return eval[string](v, `document.querySelector('#countdowns [data-part="`+part+`"]').textContent`)
}

// act opens a row and presses one of its buttons.
func (v *visit) act(row int, do string) {
	v.Helper()
	require.True(v, eval[bool](v, fmt.Sprintf(`(() => { const li = %s[%d], d = li.querySelector("details"); if (d) d.open = true; return true })()`, rows, row)))
	v.press(fmt.Sprintf(`#countdowns li:nth-child(%d) [data-count-do="%s"]`, row+1, do))
}

func TestACountdownStandsOnEveryPage(t *testing.T) {
	v := begin(t, browser.Phone)
	v.waiting()
	assert.True(t, eval[bool](v, `document.querySelector("#countdowns").hidden`), "nothing runs, nothing shows")
	assert.Regexp(t, `^If you start it now, it ends (tomorrow )?\d\d:\d\d\.$`, v.text(`#wait [data-ends="time"]`))
	v.countdown("Wheels, gate", "24 h")
	v.countdown("", "4 h")
	assert.Equal(t, "Wheels, gate", eval[string](v, `document.querySelector('#wait [data-names="time"]').value`), "the typed name is kept")
	v.countdown("Foot traffic", "90 min")
	assert.Contains(t, v.text(`#wait [data-part="started"]`), "Started: Foot traffic, ends ")
	for _, page := range []string{"", "about/", "bed/", "nowhere/", "wait/"} {
		if page != "" {
			v.do(chromedp.Navigate(v.site.URL + page))
			v.live()
		}
		v.wait(rows + `.length === 3`)
		list := v.panel()
		assert.Regexp(t, `^Foot traffic 1 h (29|30) min ends (tomorrow )?\d\d:\d\d$`, list[0], page)
		assert.Regexp(t, `^Wheels, gate 2 (3 h 59|4 h 00) min ends`, list[1], page)
		assert.Regexp(t, `^Wheels, gate (1 d 0 h 00|23 h 59) min ends (tomorrow|\w{3} \d+ \w+,) \d\d:\d\d$`, list[2], page)
	}
	v.tab.Forget() // the page for a missing page comes with a 404, which the console tells
	v.reload()
	v.wait(rows + `.length === 3`)
	assert.Contains(t, v.text("#countdowns"), "A closed page cannot ring")

	v.open("")
	v.wait(rows + `.length === 3`)
	eval[bool](v, rows+`[0].querySelector("details").open = true`)
	require.Equal(t, "./wait/", eval[string](v, rows+`[0].querySelector("a").getAttribute("href").split("#")[0]`))
	v.press(`#countdowns li:first-child a`)
	v.wait(`document.querySelector('#wait [data-key="bag_time"]') && document.documentElement.dataset.live`)
	assert.Equal(t, "90 min", v.field("wait", "bag_time"), "it leads back to its sum")
}

// What one page starts or removes, another page of the same phone shows when it comes in sight.
func TestTwoPagesOfOnePhone(t *testing.T) {
	v := begin(t, browser.Phone)
	v.waiting()
	other := look(t, shared, v.site, browser.Phone)
	other.open("bed/")
	inSight := `(document.dispatchEvent(new Event("visibilitychange")), true)`
	v.countdown("Foot traffic", "4 h")
	v.countdown("Wheels", "24 h")
	eval[bool](other, inSight)
	other.wait(rows + `.length === 2`)
	other.act(0, "remove")
	eval[bool](v, inSight)
	v.wait(rows + `.length === 1`)
	assert.Regexp(t, "^Wheels", v.panel()[0])
	eval[bool](other, inSight)
	time.Sleep(300 * time.Millisecond)
	assert.Equal(t, "Removed: Foot traffic", other.panel()[0], "it can still be brought back where it was removed")
}

// keptCountdowns asks the browser's database how many countdowns it holds; -1 while it has no such store.
const keptCountdowns = `(async () => {
	if (!(await indexedDB.databases()).some(d => d.name === "setbook" && d.version >= 2)) return -1; // asking for it would make it
	const db = await new Promise(ok => { const r = indexedDB.open("setbook"); r.onsuccess = () => ok(r.result) });
	const n = await new Promise(ok => { const r = db.transaction("countdowns").objectStore("countdowns").count(); r.onsuccess = () => ok(r.result) });
	db.close(); return n })()`

// A press that comes before the program runs counts.
func TestACountdownStartedEarly(t *testing.T) {
	v := begin(t, browser.Phone, `addEventListener("DOMContentLoaded", () => { const f = document.querySelector('#wait [data-names="time"]');
		if (!f || sessionStorage.getItem("pressed")) return;
		sessionStorage.setItem("pressed", "yes"); f.value = "Typed early"; document.querySelector('#wait [data-start="time"]').click() })`)
	v.open("wait/")
	v.wait(rows + `.length === 1`)
	assert.Regexp(t, "^Typed early ", v.panel()[0])
	// It is kept once the store is open, which on a busy machine may be after the row is shown.
	require.Eventually(t, func() bool { return eval[float64](v, keptCountdowns) == 1 }, 15*time.Second, 50*time.Millisecond)
	v.reload()
	v.wait(rows + `.length === 1`)
}

// Each second only texts change: no element is made anew, and the focus stays where it is.
func TestACountdownTicks(t *testing.T) {
	v := begin(t, browser.Phone, shifted)
	v.waiting()
	v.countdown("Foot traffic", "10 min")
	v.wait(rows + `.length === 1`)
	require.True(t, eval[bool](v, `(() => { window.seen = `+rows+`[0]; const b = seen.querySelector('[data-count-do="remove"]');
		seen.querySelector("details").open = true; b.focus(); window.changes = []; new MutationObserver(l => changes.push(...l.map(m => m.target.dataset?.says ?? m.type)))
		.observe(document.querySelector("#countdowns"), {childList: true, subtree: true}); return document.activeElement === b })()`))
	before := v.panel()[0]
	v.wait(fmt.Sprintf(`window.changes.length >= 2 && !%s[0].innerText.includes(%s)`, rows, quote(before)))
	assert.Equal(t, []string{"left"}, eval[[]string](v, `[...new Set(window.changes)]`), "only what is left changes")
	assert.True(t, eval[bool](v, rows+`[0] === window.seen && document.activeElement.dataset.countDo === "remove"`))
	assert.Empty(t, v.said("done"), "nothing is announced while it runs")
	// Out of sight it is still.
	eval[bool](v, `(() => { Object.defineProperty(document, "visibilityState", {configurable: true, get: () => "hidden"}); document.dispatchEvent(new Event("visibilitychange")); window.changes = []; return true })()`)
	time.Sleep(1500 * time.Millisecond)
	assert.Empty(t, eval[[]string](v, `window.changes`))
	eval[bool](v, `(delete document.visibilityState, document.dispatchEvent(new Event("visibilitychange")), true)`)
	v.wait(`window.changes.length`)
}

// A browser killed at once, the server gone: the countdown runs on.
func TestACountdownOutlivesTheBrowser(t *testing.T) {
	site := serving(t)
	profile := t.TempDir()
	first, err := browser.Start(context.Background(), profile)
	require.NoError(t, err)
	t.Cleanup(first.Kill)
	v := look(t, first, site, browser.Phone)
	v.waiting()
	v.wait(`navigator.serviceWorker.controller`)
	v.countdown("Foot traffic", "4 h")
	v.countdown("Wheels", "24 h")
	v.wait(rows + `.length === 2`)
	ends := eval[[]string](v, rows+`.map(li => li.querySelector('[data-says="ends"]').textContent)`)
	require.NoError(t, site.Stop())
	v.act(1, "remove")
	v.act(1, "undo")
	assert.Empty(t, v.tab.Faults())
	time.Sleep(200 * time.Millisecond) // no hand closes an app sooner after the last press
	first.Kill()

	second, err := browser.Start(context.Background(), profile)
	require.NoError(t, err)
	t.Cleanup(second.Kill)
	v = look(t, second, site, browser.Phone)
	v.open("about/") // a page that was never visited
	v.wait(rows + `.length === 2`)
	assert.Equal(t, ends, eval[[]string](v, rows+`.map(li => li.querySelector('[data-says="ends"]').textContent)`))
	assert.Regexp(t, `^Foot traffic 3 h 59 min`, v.panel()[0])
}

// The end is one instant: carried into another zone or over the night in which the clocks go back, only the clock
// on the wall differs. By hand: New York goes back on 1 November 2026 at 02:00.
func TestACountdownInAnotherZone(t *testing.T) {
	start := time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)
	v := begin(t, browser.Phone, fmt.Sprintf(`{ const real = Date.now, begun = real(), shift = Number(sessionStorage.getItem("shift")), now = () => %d + real() - begun + shift;
		window.Date = class extends Date { constructor(...given) { super(...(given.length ? given : [now()])) } static now() { return now() } } }`, start.UnixMilli()))
	zone := func(name string) {
		t.Helper()
		_, err := browser.Call(v.tab, emulation.SetTimezoneOverride, emulation.SetTimezoneOverrideParams{TimezoneID: name})
		require.NoError(t, err)
	}
	zone("America/New_York")
	v.waiting()
	v.countdown("Wheels", "24 h")
	v.wait(rows + `.length === 1`)
	assert.Regexp(t, `^Wheels (1 d 0 h 00|23 h 59) min ends tomorrow 19:0[01]$`, v.panel()[0], "at 20:00 in summer time it is 19:00 in winter time a day later")
	for name, clock := range map[string]string{"America/Los_Angeles": "tomorrow 16:0", "Asia/Kolkata": "tomorrow 05:3", "UTC": "tomorrow 00:0"} {
		zone(name)
		v.wait(rows + `[0].innerText.includes("` + clock + `")`)
		assert.Regexp(t, `^Wheels (1 d 0 h 00|23 h 59) min`, v.panel()[0], name)
	}
	zone("America/New_York")
	eval[bool](v, `(sessionStorage.setItem("shift", 23 * 3600e3), true)`)
	v.reload()
	v.wait(rows + `.length === 1`)
	assert.Regexp(t, `^Wheels (1 h 00 min|59 min \d\d s) ends 19:0[01]$`, v.panel()[0])
}

func TestACountdownIsDone(t *testing.T) {
	v := begin(t, browser.Phone, shifted, `{ window.notices = []; window.permission = sessionStorage.getItem("permission") || "default";
		window.Notification = class { static get permission() { return permission } static requestPermission() { return (sessionStorage.setItem("permission", "granted"), Promise.resolve(permission = "granted")) } };
		ServiceWorkerRegistration.prototype.showNotification = (title, o) => (notices.push(title + " " + typeof o.tag), Promise.resolve()) }`)
	v.waiting()
	v.wait(`navigator.serviceWorker.controller`)
	v.countdown("Foot traffic", "4 h")
	v.countdown("Grout", "4 h")
	v.countdown("Wheels", "24 h")
	v.wait(rows + `.length === 3`)
	eval[bool](v, `document.querySelector(".count-more").open = true`)
	v.press(`[data-count-do="notify"]`)
	v.wait(`document.querySelector('[data-count-do="notify"]').getAttribute("aria-pressed") === "true"`)
	assert.Contains(t, v.said("asked"), "only the calendar file rings")
	require.True(t, eval[bool](v, `(() => { window.spoken = []; new MutationObserver(() => spoken.push(document.querySelector('#countdowns [data-part="done"]').textContent))
		.observe(document.querySelector('#countdowns [data-part="done"]'), {childList: true, characterData: true, subtree: true}); return true })()`))
	v.pass(3 * time.Hour)
	assert.Empty(t, v.said("done"))
	v.pass(65 * time.Minute)
	v.wait(`window.spoken.length`)
	assert.Equal(t, "Done: Foot traffic. Done: Grout", v.said("done"))
	assert.Regexp(t, `^Foot traffic Done [45] min ago ended`, v.panel()[0])
	assert.Equal(t, "true,true,", eval[string](v, rows+`.map(li => li.dataset.done ?? "").join()`))
	v.wait(`window.notices.length === 2`)
	v.pass(time.Minute)
	v.pass(time.Minute)
	assert.Equal(t, []string{"Done: Foot traffic. Done: Grout"}, eval[[]string](v, `window.spoken`), "it is said once")
	assert.Equal(t, []string{"Done: Foot traffic string", "Done: Grout string"}, eval[[]string](v, `window.notices`))
	v.reload()
	v.wait(rows + `.length === 3`)
	assert.Regexp(t, `^Foot traffic Done [67] min ago ended`, v.panel()[0])
	assert.Empty(t, v.said("done"), "what was over before the page was opened is shown, not announced")
	assert.Equal(t, "true", eval[string](v, `document.querySelector('[data-count-do="notify"]').getAttribute("aria-pressed") + ""`), "notices are remembered")
	v.pass(-5 * time.Hour)
	assert.Regexp(t, `^Foot traffic 4 h`, v.panel()[0], "a clock that is set back")
	assert.Contains(t, eval[string](v, rows+`[0].querySelector('[data-says="note"]').textContent`), "behind the start")
}

// While the page is in sight it notices the end by itself, in time.
func TestTheEndIsNoticedInTime(t *testing.T) {
	v := begin(t, browser.Phone, shifted)
	v.waiting()
	v.countdown("Foot traffic", "4 h")
	v.wait(rows + `.length === 1`)
	v.pass(4*time.Hour - 1500*time.Millisecond)
	assert.Empty(t, v.said("done"))
	v.wait(`document.querySelector('#countdowns [data-part="done"]').textContent === "Done: Foot traffic"`)
	assert.Contains(t, v.panel()[0], "Done just now")
}

func TestACountdownIsRemovedAndBroughtBack(t *testing.T) {
	v := begin(t, browser.Phone)
	v.waiting()
	v.countdown("Foot traffic", "4 h")
	v.countdown("Wheels", "24 h")
	v.wait(rows + `.length === 2`)
	v.act(0, "remove")
	assert.Equal(t, "Removed: Foot traffic", v.panel()[0])
	assert.Equal(t, "undo", eval[string](v, `document.activeElement.dataset.countDo || ""`), "the focus stands on what undoes it")
	v.act(0, "undo")
	assert.Regexp(t, `^Foot traffic \d`, v.panel()[0])
	assert.Equal(t, "SUMMARY", eval[string](v, `document.activeElement.tagName`))
	v.act(1, "remove")
	v.reload()
	v.wait(rows + `.length === 1`)
	assert.Regexp(t, `^Foot traffic \d`, v.panel()[0])
	v.act(0, "remove")
	v.reload()
	time.Sleep(300 * time.Millisecond)
	assert.True(t, eval[bool](v, `document.querySelector("#countdowns").hidden`))
}

func TestManyCountdownsAtOnce(t *testing.T) {
	for _, size := range []browser.Size{browser.Narrow, browser.Phone, browser.Tablet} {
		v := begin(t, size)
		v.waiting()
		v.countdown("The long terrace behind the house, upper half, twice over", "26 h")
		for i := range 11 {
			v.countdown("", fmt.Sprintf("%d h", 30-i))
		}
		v.comesTrue(keptCountdowns + `.then(count => count === 12)`) // of many that are started in the instant of leaving one can be lost
		v.reload()
		v.wait(rows + `.length === 12`)
		names := eval[[]string](v, rows+`.map(li => li.querySelector("b").textContent)`)
		unique := map[string]bool{}
		for _, n := range names {
			unique[n] = true
		}
		assert.Len(t, unique, 12, "each has its name")
		ends := eval[[]float64](v, `(async () => { const db = await new Promise(ok => { const r = indexedDB.open("setbook"); r.onsuccess = () => ok(r.result) });
			const out = []; for (const li of `+rows+`) out.push(await new Promise(ok => { const r = db.transaction("countdowns").objectStore("countdowns").get(li.dataset.count);
			r.onsuccess = () => ok(Number(r.result.match(/until=(\d+)/)[1])) })); db.close(); return out })()`)
		assert.IsNonDecreasing(t, ends, "in the order of ending")
		eval[bool](v, `(document.querySelectorAll("#countdowns details").forEach(d => d.open = true), true)`)
		assert.LessOrEqual(t, eval[int](v, `document.documentElement.scrollWidth`), int(size.Width), "no sideways scroll")
		small := eval[[]string](v, `[...document.querySelectorAll("#countdowns button, #countdowns summary, #countdowns a, .start-one button, .start-one input")]
			.filter(e => e.getBoundingClientRect().height < 56 || e.getBoundingClientRect().width < 56).map(e => e.outerHTML)`)
		assert.Empty(t, small, "large enough for a glove")
	}
}

// The calendar file is made with no network and read by a reader that has nothing to do with this project.
func TestTheCalendarFile(t *testing.T) {
	v := begin(t, browser.Phone, shifted, `{ window.files = []; const make = URL.createObjectURL;
		URL.createObjectURL = blob => (files.push(blob), make(blob)); HTMLAnchorElement.prototype.click = function () { window.saved = [this.download, this.href] } }`)
	v.waiting()
	v.wait(`navigator.serviceWorker.controller`)
	v.countdown("Wheels; gate, größer ✓", "24 h")
	v.wait(rows + `.length === 1`)
	require.NoError(t, v.site.Stop())
	v.act(0, "calendar")
	v.wait(`window.saved`)
	assert.Regexp(t, `^setbook-wait-\d{8}T\d{6}Z\.ics$`, eval[string](v, `window.saved[0]`))
	assert.Regexp(t, `^blob:`, eval[string](v, `window.saved[1]`))
	assert.Equal(t, "text/calendar;charset=utf-8", eval[string](v, `window.files[0].type`))
	text := eval[string](v, `window.files[0].text()`)
	calendar, err := ical.NewDecoder(strings.NewReader(text)).Decode()
	require.NoError(t, err, text)
	require.Len(t, calendar.Events(), 1)
	event := calendar.Events()[0]
	summary, err := event.Props.Text(ical.PropSummary)
	require.NoError(t, err)
	assert.Equal(t, "Wheels; gate, größer ✓", summary)
	at, err := event.DateTimeStart(time.UTC)
	require.NoError(t, err)
	assert.WithinDuration(t, time.Now().Add(24*time.Hour), at, time.Minute)
	require.Len(t, event.Children, 1)
	assert.Equal(t, "DISPLAY", event.Children[0].Props.Get(ical.PropAction).Value)
	assert.NotContains(t, strings.ReplaceAll(text, "\r\n", ""), "\n")
	require.NoError(t, v.site.Start())
}

// A phone that holds the database of before keeps its entries, and its countdowns from now on.
func TestTheDatabaseOfBefore(t *testing.T) {
	v := begin(t, browser.Phone)
	v.site.Add("blank/", `<!doctype html><html lang="en"><title>x</title>`)
	v.do(chromedp.Navigate(v.site.URL + "blank/"))
	require.True(t, eval[bool](v, `new Promise((ok, no) => { const r = indexedDB.open("setbook", 1); r.onerror = no;
		r.onupgradeneeded = () => r.result.createObjectStore("entries").put("v=1&binder=rapid&bag_time=7+h&bag_temp=70+F&temp=70+F", "wait");
		r.onsuccess = () => (r.result.close(), ok(true)) })`))
	v.tab.Forget() // a page with no icon: the browser looks for one in vain
	v.open("wait/")
	v.wait(`document.querySelector('#wait [data-key="bag_time"]').value === "7 h"`)
	v.press(`#wait [data-start="time"]`)
	v.wait(rows + `.length === 1`)
	v.reload()
	v.wait(rows + `.length === 1`)
	v.wait(`document.querySelector('#wait [data-key="bag_time"]').value === "7 h"`)
	assert.Zero(t, eval[int](v, `document.querySelectorAll("#notices [data-notice]").length`))
}

// What a newer version has kept is left alone, and said.
func TestACountdownThatCannotBeRead(t *testing.T) {
	v := begin(t, browser.Phone)
	v.waiting()
	v.countdown("Foot traffic", "4 h")
	v.wait(rows + `.length === 1`)
	in := func(do string) string {
		return eval[string](v, `(async () => { const db = await new Promise(ok => { const r = indexedDB.open("setbook"); r.onsuccess = () => ok(r.result) });
			const s = db.transaction("countdowns", "readwrite").objectStore("countdowns");
			const r = await new Promise(ok => { const r = s.`+do+`; r.onsuccess = () => ok(String(r.result)) }); db.close(); return r })()`)
	}
	in(`put("countdown=2&name=x", "zz-1")`)
	v.reload()
	v.wait(rows + `.length === 1`)
	v.wait(`document.querySelector('#countdowns [data-part="kept"]').textContent`)
	assert.Contains(t, v.said("kept"), "cannot read")
	v.act(0, "remove")
	v.reload()
	v.wait(`document.querySelector('#countdowns [data-part="kept"]').textContent`)
	assert.False(t, eval[bool](v, `document.querySelector("#countdowns").hidden`))
	assert.Equal(t, "countdown=2&name=x", in(`get("zz-1")`))
}

func TestACountdownWhereNothingIsKept(t *testing.T) {
	for name, script := range map[string]string{
		"no IndexedDB":     `Object.defineProperty(window, "indexedDB", {value: undefined})`,
		"no writing later": `IDBDatabase.prototype.transaction = () => { throw new DOMException("full", "QuotaExceededError") }`,
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, script)
			v.waiting()
			v.countdown("Foot traffic", "4 h")
			v.wait(rows + `.length === 1`)
			v.wait(`document.querySelector('#countdowns [data-part="kept"]').textContent`)
			assert.Contains(t, v.text("#countdowns"), "ends when the page is closed")
			eval[bool](v, `document.dispatchEvent(new Event("visibilitychange"))`)
			assert.Len(t, v.panel(), 1, "it runs all the same")
		})
	}
}

func TestTheScreenStaysOn(t *testing.T) {
	lock := `{ window.asked = 0; const wakeLock = {request: async kind => { if (kind !== "screen") throw new Error(kind); asked++; if (window.refuse) throw new DOMException("no", "NotAllowedError");
		return window.lock = {released: false, release: async () => { lock.released = true }} }};
		Object.defineProperty(navigator, "wakeLock", {value: wakeLock, configurable: true}); window.lock = null }`
	open := func(script string) *visit {
		v := begin(t, browser.Phone, shifted, script)
		v.waiting()
		v.countdown("Foot traffic", "4 h")
		v.wait(rows + `.length === 1`)
		eval[bool](v, `document.querySelector(".count-more").open = true`)
		v.press(`[data-count-do="awake"]`)
		return v
	}
	pressed := `document.querySelector('[data-count-do="awake"]').getAttribute("aria-pressed") === `

	v := open(lock)
	v.wait(`window.lock && ` + pressed + `"true"`)
	assert.Contains(t, v.said("asked"), "stays on")
	eval[bool](v, `(window.lock.released = true, document.dispatchEvent(new Event("visibilitychange")), true)`) // as the browser does when the page leaves sight
	v.wait(`window.asked === 2 && !window.lock.released`)
	v.do(chromedp.Navigate(v.site.URL + "about/"))
	v.live()
	v.wait(`window.lock && ` + pressed + `"true"`) // the next page takes it up
	eval[bool](v, `document.querySelector(".count-more").open = true`)
	v.press(`[data-count-do="awake"]`)
	v.wait(`window.lock.released && ` + pressed + `"false"`)
	v.press(`[data-count-do="awake"]`)
	v.wait(`!window.lock.released`)
	v.act(0, "remove")
	v.wait(`window.lock.released`) // nothing runs any more: the battery is spared

	v = open(lock + `; window.refuse = true`)
	v.wait(pressed + `"false" && window.asked === 1`)
	assert.Contains(t, v.said("asked"), "would not keep the screen on")
	v = open(`Object.defineProperty(navigator, "wakeLock", {value: undefined})`)
	v.wait(pressed + `"false"`)
	assert.Contains(t, v.said("asked"), "cannot keep the screen on")
}

// Nothing is asked of the phone before the button is pressed; where it refuses, that is said.
func TestNoticesThatAreNotAllowed(t *testing.T) {
	for script, want := range map[string]string{
		`{ window.requests = 0; window.Notification = class { static permission = "denied"; static requestPermission() { requests++; return Promise.resolve("denied") } } }`: "not allowed here",
		`window.requests = 0; delete window.Notification`: "cannot show a notice",
	} {
		v := begin(t, browser.Phone, shifted, script)
		v.waiting()
		v.countdown("Foot traffic", "4 h")
		v.wait(rows + `.length === 1`)
		assert.Zero(t, eval[int](v, `window.requests`))
		eval[bool](v, `document.querySelector(".count-more").open = true`)
		v.press(`[data-count-do="notify"]`)
		v.wait(`document.querySelector('#countdowns [data-part="asked"]').textContent`)
		assert.Contains(t, v.said("asked"), want)
		assert.Equal(t, "false", eval[string](v, `document.querySelector('[data-count-do="notify"]').getAttribute("aria-pressed")`))
	}
}

// On paper the running countdowns are a list with the date of their end.
func TestCountdownsOnPaper(t *testing.T) {
	v := begin(t, browser.Phone, shifted)
	v.waiting()
	v.countdown("Foot traffic", "1 h")
	v.wait(rows + `.length === 1`)
	eval[bool](v, `document.querySelector("#countdowns details").open = true`)
	_, err := browser.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	require.NoError(t, err)
	assert.Contains(t, v.text("#countdowns"), "Foot traffic")
	assert.Regexp(t, `ends (tomorrow )?\d\d:\d\d`, v.text("#countdowns"))
	assert.Contains(t, v.text("#countdowns"), time.Now().Add(time.Hour).Format("2006"))
	assert.NotContains(t, v.text("#countdowns"), "Remove")
	assert.NotContains(t, v.text("#countdowns"), "closed page")
	assert.NotContains(t, v.text("#countdowns"), " min", "what is left is old by the time it is read")
}
