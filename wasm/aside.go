//go:build js && wasm

package main

import (
	"syscall/js"

	"setbook/calc/words"
)

// A work that is over sooner than soon is not said to go on. One that is to be dropped ends with its worker where it
// takes longer than toDrop to hear it; one that is to be stopped is given toStop, since its best so far is worth
// waiting for. All in milliseconds.
const (
	soon   = 150
	toDrop = 1500
	toStop = 15_000
)

const faultedBeside words.Msg = "Something went wrong while the answer was worked out. The last good answer stays and is marked. Change a field, and it is tried again."

// aside is the worker beside the page, the same program once more. It is started when it is first wanted and then stays.
type aside struct {
	worker js.Value
	ready  bool
	of     *section // whose work is under way
	drop   bool     // its answer is no longer wanted
	count  int      // of the works sent
}

// hasAside reports whether this browser can work beside the page.
func hasAside() bool { return js.Global().Get("setbookAside").Truthy() }

// work sends what changed in a section to be worked out.
func (d *desk) work(s *section) {
	if !whole {
		return
	}
	ask, ok := s.live.Ask()
	if !ok {
		return
	}
	s.ask = ask
	mark(s.root, "data-working", true)
	d.hire()
	if d.aside.of == s && !d.aside.drop {
		d.aside.drop = true
		d.end("drop")
	}
	d.send()
}

// hire starts the worker, where there is none. Where the browser refuses, each section is worked out on the page.
func (d *desk) hire() {
	a := &d.aside
	if !whole || a.worker.Truthy() || !hasAside() {
		return
	}
	if !try(func() { a.worker = js.Global().Call("setbookAside") }) {
		d.home()
		return
	}
	worker := a.worker
	a.worker.Call("addEventListener", "message", d.callback(nil, func(e js.Value) {
		if worker.Equal(d.aside.worker) {
			d.hear(texts(e.Get("data")))
		}
	}))
	a.worker.Call("addEventListener", "error", d.callback(nil, func(js.Value) { d.home() }))
}

// home works out on the page what no worker can.
func (d *desk) home() {
	d.dismiss()
	js.Global().Set("setbookAside", nil)
	for _, s := range d.sections {
		if s.live.Aside() {
			d.run(s.spoil, func() {
				s.live.Home()
				s.ask = nil
				mark(s.root, "data-working", false)
				s.rewrite()
				d.changed(s)
			})
		}
	}
}

// dismiss ends the worker. The next work starts another.
func (d *desk) dismiss() {
	if d.aside.worker.Truthy() {
		d.aside.worker.Call("terminate")
	}
	d.aside = aside{count: d.aside.count}
}

// send sends the next work, where none is under way.
func (d *desk) send() {
	a := &d.aside
	if !a.ready || a.of != nil {
		return
	}
	for _, s := range d.sections {
		if s.ask == nil {
			continue
		}
		ask := s.ask
		s.ask = nil
		a.of, a.drop = s, false
		a.count++
		post(a.worker, append([]string{"work"}, ask...)...)
		d.whileSent(soon, func() {
			s.live.Busy(true)
			s.refresh()
		})
		return
	}
}

// whileSent does something after a while, if the same work is still under way.
func (d *desk) whileSent(milliseconds int, do func()) {
	sent := d.aside.count
	d.later(milliseconds, func() {
		if d.aside.of != nil && d.aside.count == sent {
			do()
		}
	})
}

// end has the work under way ended with the best so far, or dropped. One that does not listen ends with its worker.
func (d *desk) end(how string) {
	if d.aside.of == nil {
		return
	}
	post(d.aside.worker, how)
	patience := toDrop
	if how == "stop" {
		patience = toStop
		d.aside.of.live.Stopping()
		d.aside.of.refresh()
	}
	d.whileSent(patience, func() {
		s, drop := d.aside.of, d.aside.drop
		d.dismiss()
		if drop {
			d.hire()
			return
		}
		s.live.Halt()
		s.rest()
	})
}

// rest shows what a work has come to.
func (s *section) rest() {
	mark(s.root, "data-working", s.ask != nil)
	s.refresh()
}

// hear takes a message of the worker.
func (d *desk) hear(message []string) {
	a := &d.aside
	if len(message) == 0 {
		return
	}
	s := a.of
	switch message[0] {
	case "ready":
		a.ready = true
	case "broken":
		report("the worker: " + message[1])
		d.home()
		return
	case "going":
		if bar, ok := find(s.root.Underlying(), "progress"); ok && message[2] != "0" {
			bar.Set("max", message[2])
			bar.Set("value", message[1])
		}
		return
	case "done":
		a.of = nil
		if !a.drop {
			if s.live.Take(message[1:]) {
				s.rewrite()
			}
			s.refill()
			s.rest()
			d.changed(s) // what was dragged, or is too long to be read on the page, is known now
		}
	case "fault":
		a.of = nil
		s.live.Halt()
		s.rest()
		notice("fault-beside", faultedBeside)
	}
	d.send()
}
