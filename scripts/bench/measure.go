package main

import (
	"fmt"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/heapprofiler"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"

	"setbook/scripts/internal/browser"
)

// bench is a browser, a built site and what to do with them.
type bench struct {
	browser       *browser.Browser
	dist, netlify string
	path          string
	runs          int
}

// watch gathers what the page itself can tell, from before its first script on.
const watch = `window.seen = {block: 0, largest: 0}
new PerformanceObserver(l => l.getEntries().forEach(e => seen.block = Math.max(seen.block, e.duration))).observe({type: "longtask", buffered: true})
new PerformanceObserver(l => l.getEntries().forEach(e => seen.largest = e.startTime)).observe({type: "largest-contentful-paint", buffered: true})
addEventListener("setbook:live", () => seen.live = performance.now())
const instantiate = WebAssembly.instantiate
WebAssembly.instantiate = async (...all) => { const made = await instantiate.apply(WebAssembly, all); seen.memory = made.exports.mem; return made }`

// visit is what one visit shows, in milliseconds from its start.
type visit struct {
	First   float64 `json:"first"`
	Largest float64 `json:"largest"`
	Live    float64 `json:"live"`
	Block   float64 `json:"block"`
}

const seen = `({first: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0, largest: seen.largest, live: seen.live, block: seen.block})`

// slow4G is the link that Lighthouse calls so.
var slow4G = network.Conditions{Latency: 150, DownloadThroughput: 1638.4 * 1000 / 8, UploadThroughput: 750 * 1000 / 8}

// unthrottled is a link without a limit.
var unthrottled = network.Conditions{DownloadThroughput: -1, UploadThroughput: -1}

func (m *bench) measure() error {
	var first, warm, warmSlow []visit
	var heap, memory sample
	keys := map[float64]*keyTimes{1: {}, 4: {}}
	for range m.runs {
		site, err := browser.Serve(m.dist, m.netlify)
		if err != nil {
			return err
		}
		tab, err := m.browser.Open(browser.Phone, watch)
		if err != nil {
			return err
		}
		v, err := m.visit(tab, site, 4, slow4G)
		if err != nil {
			return err
		}
		first = append(first, v)
		if err := throttle(tab, 1, unthrottled); err != nil {
			return err
		}
		if err := tab.Wait(`navigator.serviceWorker.controller`); err != nil {
			return err
		}
		if err := site.Stop(); err != nil {
			return err
		}
		for slowness, list := range map[float64]*[]visit{1: &warm, 4: &warmSlow} {
			v, err := m.visit(tab, site, slowness, unthrottled)
			if err != nil {
				return err
			}
			*list = append(*list, v)
			if err := keys[slowness].measure(tab); err != nil {
				return err
			}
		}
		h, w, err := sizes(tab)
		if err != nil {
			return err
		}
		heap, memory = append(heap, h), append(memory, w)
		tab.Close()
	}
	pick := func(list []visit, of func(visit) float64) (s sample) {
		for _, v := range list {
			s = append(s, of(v))
		}
		return s
	}
	fp, lp := func(v visit) float64 { return v.First }, func(v visit) float64 { return v.Largest }
	live, block := func(v visit) float64 { return v.Live }, func(v visit) float64 { return v.Block }
	fmt.Println("First visit, Slow 4G, 4x")
	fmt.Println(pick(first, fp).row("first paint", "ms", "1000 ms"))
	fmt.Println(pick(first, lp).row("largest paint", "ms", ""))
	fmt.Println(pick(first, live).row("live", "ms", ""))
	fmt.Println(pick(first, block).row("longest block", "ms", "150 ms"))
	fmt.Println("Warm start with the server stopped")
	fmt.Println(pick(warm, fp).row("first paint, 1x", "ms", ""))
	fmt.Println(pick(warm, live).row("live, 1x", "ms", "300 ms"))
	fmt.Println(pick(warm, block).row("longest block, 1x", "ms", ""))
	fmt.Println(pick(warmSlow, fp).row("first paint, 4x", "ms", ""))
	fmt.Println(pick(warmSlow, live).row("live, 4x", "ms", "1000 ms"))
	fmt.Println(pick(warmSlow, block).row("longest block, 4x", "ms", "150 ms"))
	fmt.Println("Key to answer, 95th percentile of", keysTyped, "keys")
	for _, slowness := range []float64{1, 4} {
		fmt.Println(keys[slowness].work.row(fmt.Sprintf("work, %gx", slowness), "ms", "16.7 ms"))
		fmt.Println(keys[slowness].frame.row(fmt.Sprintf("frame, %gx", slowness), "ms", ""))
	}
	fmt.Println("Memory after typing")
	fmt.Println(heap.row("JavaScript heap", "MB", ""))
	fmt.Println(memory.row("program's memory", "MB", ""))
	return nil
}

// throttle slows the page's main thread and its link.
func throttle(tab *browser.Tab, slowness float64, link network.Conditions) error {
	if _, err := browser.Call(tab, network.Enable, network.EnableParams{}); err != nil {
		return err
	}
	if _, err := browser.Call(tab, network.EmulateNetworkConditionsByRule,
		network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{&link}}); err != nil {
		return err
	}
	_, err := browser.Call(tab, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: slowness})
	return err
}

// visit goes to the page and tells what it took.
func (m *bench) visit(tab *browser.Tab, site *browser.Site, slowness float64, link network.Conditions) (visit, error) {
	if err := tab.Do(chromedp.Navigate("about:blank")); err != nil {
		return visit{}, err
	}
	if err := throttle(tab, slowness, link); err != nil {
		return visit{}, err
	}
	if err := tab.Do(chromedp.Navigate(site.URL + m.path)); err != nil {
		return visit{}, err
	}
	if err := tab.Wait(`seen.live`); err != nil {
		return visit{}, err
	}
	time.Sleep(500 * time.Millisecond) // what starts after the first answer blocks too
	return browser.Eval[visit](tab, seen)
}

// sizes gives the JavaScript heap in use and the program's memory, in MB, with what can be collected gone.
func sizes(tab *browser.Tab) (heap, memory float64, err error) {
	if _, err := browser.Call(tab, heapprofiler.CollectGarbage, cdp.Empty{}); err != nil {
		return 0, 0, err
	}
	if _, err := browser.Call(tab, performance.Enable, performance.EnableParams{}); err != nil {
		return 0, 0, err
	}
	metrics, err := browser.Call(tab, performance.GetMetrics, cdp.Empty{})
	if err != nil {
		return 0, 0, err
	}
	for _, m := range metrics.Metrics {
		if m.Name == "JSHeapUsedSize" {
			heap = m.Value / 1e6
		}
	}
	bytes, err := browser.Eval[float64](tab, `seen.memory.buffer.byteLength`)
	return heap, bytes / 1e6, err
}
