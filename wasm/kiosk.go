//go:build js && wasm

package main

import (
	"context"
	"strconv"
	"syscall/js"

	"github.com/hack-pad/go-indexeddb/idb"
	"honnef.co/go/js/dom/v2"
	"setbook/calc/page"
	"setbook/calc/words"
)

const (
	clearsSoon words.Msg = "Is anybody there?"
	keepThem   words.Msg = "Keep them"
)

// clearKey is where the manners of a counter are kept: the seconds until an idle tablet is cleared.
const clearKey = "setbook.clear"

// counter is a tablet for everybody.
type counter struct {
	page.Idle
	tick  js.Func
	timer js.Value
}

// atCounter reports whether this is a tablet for everybody: nothing that is typed is kept on it.
func (d *desk) atCounter() bool { return d.counter.After > 0 }

// openCounter reads whether this device, or the page around a frame, asks for the manners of a counter.
func (d *desk) openCounter() {
	if !whole {
		return // the head script gives a device with these manners the whole program
	}
	if d.frame != nil && d.frame.Clear > 0 {
		d.document.SetAttribute("data-clear", strconv.Itoa(d.frame.Clear))
	}
	seconds, err := strconv.ParseInt(d.document.GetAttribute("data-clear"), 10, 32)
	if err != nil || seconds <= 0 {
		d.document.RemoveAttribute("data-clear")
		return
	}
	d.counter.After = seconds * 1000
	d.counter.tick = d.callback(nil, func(js.Value) { d.idle() })
	document := js.Global().Get("document")
	for _, event := range []string{"pointerdown", "keydown", "input", "wheel"} {
		d.onCapture(document, event, func(*dom.BasicEvent) {
			d.counter.Touched = now()
			d.idle()
		})
	}
	d.shut(document)
	for _, event := range []string{"click", "auxclick"} {
		d.onCapture(document, event, func(e *dom.BasicEvent) {
			if a, ok := around(e, "href"); ok && abroad(a) {
				e.PreventDefault() // one that was put there later than shut was called
			}
		})
	}
	d.on(document, "visibilitychange", nil, func(*dom.BasicEvent) { d.idle() })
}

// abroad reports whether a link leads to another site.
func abroad(link *dom.BasicHTMLElement) bool {
	return link.Get("origin").String() != js.Global().Get("location").Get("origin").String()
}

// shut makes every link to another site under root plain text, on a tablet for everybody.
func (d *desk) shut(root js.Value) {
	if !whole || !d.atCounter() {
		return
	}
	for _, link := range every(root, `a[href*="://"]`) {
		if abroad(link) {
			link.RemoveAttribute("href")
		}
	}
}

// onCapture listens to an event before anything on the page does.
func (d *desk) onCapture(target js.Value, event string, do func(*dom.BasicEvent)) {
	target.Call("addEventListener", event, d.callback(nil, func(v js.Value) { do(&dom.BasicEvent{Value: v}) }), true)
}

// idle looks at the clock of a tablet: it counts down, or clears.
func (d *desk) idle() {
	c := &d.counter
	clear, left, again := c.Look(now())
	if c.timer.Truthy() {
		js.Global().Call("clearTimeout", c.timer)
	}
	if clear {
		d.wipe()
		return
	}
	d.countIdle(left)
	if again > 0 {
		c.timer = js.Global().Call("setTimeout", c.tick, again)
	}
}

// countIdle shows the seconds that are left, or nothing.
func (d *desk) countIdle(left int) {
	document := js.Global().Get("document")
	box, shown := find(document, ".idle")
	if left == 0 {
		if shown {
			box.Call("remove")
		}
		return
	}
	if !shown {
		box = create("div")
		box.SetAttribute("class", "idle")
		box.SetAttribute("role", "alertdialog")
		box.SetAttribute("aria-label", say(clearsSoon))
		count := create("p")
		count.SetAttribute("role", "timer")
		box.Call("append", count.Underlying())
		button(box, keepThem)
		document.Get("body").Call("append", box.Underlying())
	}
	if count, ok := find(box.Underlying(), "p"); ok {
		write(count, page.Clearing(served, left))
	}
}

// stays are the choices for the device itself, which a customer does not make.
var stays = []string{"setbook.units", "setbook.theme", "setbook.language", clearKey, sheetKey}

// wipe clears whatever the last customer left, and begins anew: everything in memory goes with the page.
func (d *desk) wipe() {
	d.counter.Touched = 0
	try(func() {
		storage := global("localStorage")
		kept := map[string]js.Value{}
		for _, key := range stays {
			kept[key] = storage.Call("getItem", key)
		}
		storage.Call("clear")
		for key, v := range kept {
			if v.Type() == js.TypeString {
				storage.Call("setItem", key, v)
			}
		}
	})
	try(func() { global("sessionStorage").Call("clear") })
	go d.run(nil, func() {
		if d.store == nil { // it may not be open yet
			ctx, cancel := context.WithTimeout(context.Background(), patience)
			defer cancel()
			d.store, _ = openStore(ctx)
		}
		if d.store != nil {
			d.store.empty()
		}
		d.dropCopies()
		d.begone()
	})
}

// begone leaves for the contents page, with nothing of this one behind it.
func (d *desk) begone() {
	location := js.Global().Get("location")
	if d.frame != nil {
		location.Call("reload")
		return
	}
	home := "./"
	if script, ok := find(js.Global().Get("document"), "script[data-home]"); ok {
		home = script.GetAttribute("data-home")
	}
	if here := location.Get("pathname").String(); js.Global().Get("URL").New(home, location).Get("pathname").String() == here {
		js.Global().Get("history").Call("replaceState", nil, "", here)
		location.Call("reload")
		return
	}
	location.Call("replace", home)
}

// empty takes everything out of every store of the database. It is ordered at once, so that it is done though the page goes.
func (s *store) empty() {
	names, err := s.db.ObjectStoreNames()
	if err != nil {
		report(err.Error())
	}
	for _, name := range names {
		objects, err := s.of(name).objects(idb.TransactionReadWrite)
		if err == nil {
			_, err = objects.Clear()
		}
		if err != nil {
			report(err.Error())
			continue
		}
		if t, err := objects.Transaction(); err == nil {
			t.Commit()
		}
	}
}

// outfit gives a section what stands around it: what the page around has settled, and the keys of a counter.
func (d *desk) outfit(s *section) {
	if !whole || d.frame == nil && !d.atCounter() {
		return
	}
	if d.atCounter() {
		s.live.AtCounter()
	}
	if f := d.frame; f != nil {
		s.live.Settle(f.Fixed, f.Start, f.Hidden)
	}
	s.rewrite()
	d.on(s.root.Underlying(), "click", nil, func(e *dom.BasicEvent) {
		b, ok := around(e, "data-do")
		switch {
		case !ok:
		case b.GetAttribute("data-do") == "slip":
			d.carry(s)
			d.slip()
		case b.GetAttribute("data-do") == "carry":
			d.carry(s)
		}
	})
}

// slip prints the figures, the answers and the cautions on a narrow strip, with the code that carries them away.
func (d *desk) slip() {
	d.document.SetAttribute("data-slip", "yes")
	js.Global().Call("print") // it returns when the person is done with it
	d.later(0, func() { d.document.RemoveAttribute("data-slip") })
}

// offerManners is the control of these manners, on the page that has it.
func (d *desk) offerManners() {
	root, ok := find(js.Global().Get("document"), ".manners")
	if !whole || !ok {
		return
	}
	seconds := int(d.counter.After / 1000)
	choice, _ := find(root.Underlying(), "select")
	if seconds > 0 {
		choice.Set("value", strconv.Itoa(seconds))
		root.SetAttribute("data-manners", "on")
	}
	if said, ok := find(root.Underlying(), `[data-part="manners"]`); ok {
		said.SetTextContent(page.Manner(d.reader, seconds))
	}
	settle := func(change func(storage js.Value)) {
		if !try(func() { change(global("localStorage")) }) {
			d.forgetful()
			return
		}
		js.Global().Get("location").Call("reload")
	}
	begin := func() {
		settle(func(storage js.Value) { storage.Call("setItem", clearKey, choice.Get("value")) })
	}
	told := false // that there are jobs, which the manners will erase
	d.on(root.Underlying(), "click", nil, func(e *dom.BasicEvent) {
		b, ok := around(e, "data-manners-do")
		switch {
		case !ok:
		case b.GetAttribute("data-manners-do") == "end":
			settle(func(storage js.Value) { storage.Call("removeItem", clearKey) })
		case told:
			begin()
		default:
			go d.run(nil, func() {
				jobs := d.jobsHeld()
				if jobs == 0 {
					begin()
					return
				}
				told = true
				if said, ok := find(root.Underlying(), `[data-part="manners"]`); ok {
					said.SetTextContent(page.HoldsJobs(d.reader, jobs))
				}
			})
		}
	})
}

// jobsHeld is how many jobs the device holds, deleted ones that can still be brought back among them. It blocks.
func (d *desk) jobsHeld() int {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	held := d.store
	if held == nil { // it may not be open yet
		var err error
		if held, err = openStore(ctx); err != nil {
			return 0
		}
	}
	keys, err := held.of(headStore).keys(ctx)
	if err != nil {
		report(err.Error())
	}
	return len(keys)
}
