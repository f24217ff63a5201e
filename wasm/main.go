//go:build js && wasm

// Command wasm brings the calculators of a page to life in the browser: it mounts
// their forms, keeps the address bar in step, remembers entries and offers a new
// version. It does no arithmetic and writes no HTML: package page does.
package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/words"
)

// desk is one page with everything mounted on it.
type desk struct {
	guard
	document *dom.BasicHTMLElement // the html element: it carries the settings
	reader   words.Reader
	sections []*section
	store    *store // nil until it is open, and where it cannot be
	address  address
	board    board
	clerk    clerk
	class    class
	aside    aside
	frame    *framed // nil: the page stands by itself
	counter  counter
	flushing bool // what has changed will be kept when the event is over
	leaving  bool // a new version was accepted: the page is being loaded again
}

const faulted words.Msg = "Something went wrong inside the page. The last good answer stays and is marked; what you type next may not be worked out. Load the page again to go on."

func main() {
	if whole && besidePage() { // only long work is done beside the page, and only the whole program has any
		serve()
		select {}
	}
	d := &desk{document: wrap(js.Global().Get("document").Get("documentElement"))}
	d.guard = guard{tell: func() { notice("fault", faulted) }}
	d.later(0, d.open) // the start of Go's own runtime has blocked the page long enough
	select {}
}

// open does one thing at a time and lets the browser paint, scroll and take keys in between:
// the phone is busy enough while it loads. What can be seen comes first.
func (d *desk) open() {
	served.Language = language(d.document)
	d.openFrame()
	d.openCounter()
	d.reader = d.settings()
	var steps []func()
	for _, root := range every(js.Global().Get("document"), "section.calculator[data-calculator]") {
		steps = append(steps, func() { d.mount(root) })
	}
	steps = append(steps, d.offerSettings, d.followAddress, d.offerCountdowns, d.offerJobs, d.openLarge, d.offerManners, d.live, d.followParent, d.remember, d.shelve, d.prime, d.offerUpdates)
	d.next(steps)
}

// openLarge opens what only the whole program has.
func (d *desk) openLarge() {
	if whole {
		d.openClass()
		d.openChecker()
	}
}

// next does the first of the steps now and the rest after a pause each.
func (d *desk) next(steps []func()) {
	if len(steps) == 0 {
		return
	}
	d.run(nil, steps[0])
	d.later(0, func() { d.next(steps[1:]) })
}

// live tells the boot script that clicks made too early can be handed over.
func (d *desk) live() {
	d.document.SetAttribute("data-live", "yes")
	js.Global().Call("dispatchEvent", js.Global().Get("Event").New("setbook:live"))
}

// prime writes every part once while nobody waits, so that the first key does not
// pay for code that the browser compiles when it first runs.
func (d *desk) prime() {
	for _, s := range d.sections {
		d.run(s.spoil, s.prime)
	}
}
