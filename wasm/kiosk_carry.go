//go:build js && wasm

package main

import (
	"syscall/js"

	"setbook/calc/page"
)

// carry shows the address that holds a section's figures, for the customer's own phone.
func (d *desk) carry(s *section) {
	home := "./"
	if script, ok := find(js.Global().Get("document"), "script[data-home]"); ok {
		home = script.GetAttribute("data-home")
	}
	address := js.Global().Get("URL").New(home+s.live.Calculator.ID+"/#"+s.live.Link(), js.Global().Get("location").Get("href")).Get("href").String()
	if box, ok := find(s.root.Underlying(), ".carry"); ok {
		box.SetInnerHTML(page.Carry(d.reader, address))
		box.Call("scrollIntoView", map[string]any{"block": "nearest"})
	}
}
