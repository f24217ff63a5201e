package main

import (
	"encoding/json"
	"fmt"
	"time"

	"github.com/chromedp/chromedp"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/scripts/internal/browser"
)

// logLines is how long the log of the long job is.
const logLines = 2000

// watchJob notes when the job is on the page: from then on it can be read and written in.
const watchJob = `new MutationObserver((list, me) => { if (document.querySelector("#job")?.dataset.shown) { seen.shown = performance.now(); me.disconnect() } })
	.observe(document, {subtree: true, childList: true, attributes: true, attributeFilter: ["data-shown"]})`

// keepJob puts a job into the browser's database as the page does.
const keepJob = `(async (id, head, record) => {
	const db = await new Promise((ok, no) => { const r = indexedDB.open("setbook"); r.onsuccess = () => ok(r.result); r.onerror = () => no(r.error) })
	const t = db.transaction(["jobs", "jobheads"], "readwrite")
	t.objectStore("jobs").put(record, id)
	t.objectStore("jobheads").put(head, id)
	await new Promise((ok, no) => { t.oncomplete = ok; t.onabort = no })
	db.close()
	return true
})(%s, %s, %s)`

// jobs measures the warm start of a job's page, with the server stopped: of an empty job, and of one with a long log.
func (m *bench) jobs() error {
	empty := &job.Job{ID: "empty", Name: "Empty", Revision: 1}
	long := &job.Job{ID: "long", Name: "Long", Revision: 1}
	for i := range logLines {
		long.Mixes = append(long.Mixes, job.Mix{ID: "x" + countdown.Pad(int64(i), 1), When: countdown.Instant(1_780_000_000_000 + i*600_000),
			Amount: "25 kg", Product: "Mortar", Lot: "M-0417", Air: "18 °C", Surface: "20 °C"})
	}
	took := map[string]map[float64]sample{empty.ID: {}, long.ID: {}}
	for range m.runs {
		site, err := browser.Serve(m.dist, m.netlify)
		if err != nil {
			return err
		}
		tab, err := m.browser.Open(browser.Phone, watch, watchJob)
		if err != nil {
			return err
		}
		if err := tab.Do(chromedp.Navigate(site.URL + "jobs/")); err != nil {
			return err
		}
		if err := tab.Wait(`document.querySelector("#jobs")?.dataset.shown && navigator.serviceWorker.controller`); err != nil {
			return err
		}
		for _, j := range []*job.Job{empty, long} {
			head := jobpage.HeadOf(j)
			if _, err := browser.Eval[bool](tab, fmt.Sprintf(keepJob, quoted(j.ID), quoted(head.Text()), quoted(job.Write(j)))); err != nil {
				return err
			}
		}
		if err := site.Stop(); err != nil {
			return err
		}
		for _, slowness := range []float64{1, 4} {
			for _, j := range []*job.Job{empty, long, long, empty} {
				shown, err := m.shown(tab, site, slowness, "job/#job="+j.ID)
				if err != nil {
					return err
				}
				took[j.ID][slowness] = append(took[j.ID][slowness], shown)
			}
		}
		tab.Close()
	}
	fmt.Println("Warm start of a job's page, with the server stopped, until the job is shown")
	for _, slowness := range []float64{1, 4} {
		fmt.Println(took[empty.ID][slowness].row(fmt.Sprintf("empty, %gx", slowness), "ms", ""))
		fmt.Println(took[long.ID][slowness].row(fmt.Sprintf("%d lines, %gx", logLines, slowness), "ms", "twice that"))
	}
	return nil
}

// shown goes to a job's page and tells when the job was on it, in milliseconds from the start.
func (m *bench) shown(tab *browser.Tab, site *browser.Site, slowness float64, path string) (float64, error) {
	if err := tab.Do(chromedp.Navigate("about:blank")); err != nil {
		return 0, err
	}
	if err := throttle(tab, slowness, unthrottled); err != nil {
		return 0, err
	}
	if err := tab.Do(chromedp.Navigate(site.URL + path)); err != nil {
		return 0, err
	}
	if err := tab.Wait(`seen.shown`); err != nil {
		return 0, err
	}
	time.Sleep(300 * time.Millisecond)
	return browser.Eval[float64](tab, `seen.shown`)
}

func quoted(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always has a JSON form
	}
	return string(b)
}
