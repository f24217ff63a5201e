//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/words"
)

const (
	newer    words.Msg = "A newer version of Setbook is ready. What you have entered is kept."
	takeOver words.Msg = "Use it now"
)

// offerUpdates watches for a newer version, which the browser fetches by itself and
// which then waits. It is offered and never forced: it takes over when the person says so.
func (d *desk) offerUpdates() {
	worker := js.Global().Get("navigator").Get("serviceWorker")
	if !worker.Truthy() {
		return // a page from a plain http address has none
	}
	d.then(worker.Get("ready"), func(registration js.Value) {
		d.offer(worker, registration.Get("waiting"))
		d.on(registration, "updatefound", nil, func(*dom.BasicEvent) {
			coming := registration.Get("installing")
			d.on(coming, "statechange", nil, func(*dom.BasicEvent) {
				d.offer(worker, registration.Get("waiting"))
			})
		})
		d.on(js.Global().Get("document"), "visibilitychange", nil, func(*dom.BasicEvent) {
			if js.Global().Get("document").Get("visibilityState").String() == "visible" {
				d.then(registration.Call("update"), nil, nil) // out of reach of the network it refuses, which is no fault
			}
		})
	}, nil)
}

// offer says that a version waits, if one does.
func (d *desk) offer(worker, waiting js.Value) {
	if !waiting.Truthy() || !worker.Get("controller").Truthy() {
		return
	}
	box := notice("update", newer)
	if _, ok := find(box.Underlying(), "button"); ok {
		return
	}
	b := button(box, takeOver)
	d.on(b.Underlying(), "click", nil, func(*dom.BasicEvent) {
		d.address.write(d)
		d.on(worker, "controllerchange", nil, func(*dom.BasicEvent) {
			if !d.leaving {
				d.leaving = true
				js.Global().Get("location").Call("reload")
			}
		})
		waiting.Call("postMessage", map[string]any{"type": "take-over"})
	})
}
