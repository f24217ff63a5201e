//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
)

// padPress forwards a key of a pad, or a cell that was touched.
func (d *desk) padPress(s *section, b *dom.BasicHTMLElement) {
	key, press := b.GetAttribute("data-pad"), b.GetAttribute("data-press")
	if b.HasAttribute("data-row") {
		d.write(s, func() { s.live.PadAt(key, number(b, "data-row"), number(b, "data-col")) })
	} else {
		d.write(s, func() { s.live.PadPress(key, press) })
	}
	if press == "empty" {
		s.rewrite() // its text field may come back
	}
	s.showCell(key)
}

// padded forwards what is typed into the field of a cell.
func (d *desk) padded(s *section, f *dom.BasicHTMLElement) {
	key := f.GetAttribute("data-padded")
	if text := f.Get("value").String(); text != s.live.Draft(key) {
		d.write(s, func() { s.live.PadType(key, text) })
	}
}

// padKeys are the keys of a keyboard that move from cell to cell.
var padKeys = map[string]string{"Enter": "next", "ArrowUp": "up", "ArrowDown": "down"}

func (d *desk) padKey(s *section, e *dom.BasicEvent) {
	f, ok := around(e, "data-padded")
	if !ok {
		return
	}
	press, ok := padKeys[e.Get("key").String()]
	if !ok {
		return
	}
	e.PreventDefault()
	key := f.GetAttribute("data-padded")
	d.write(s, func() { s.live.PadPress(key, press) })
	f.Call("select")
	s.showCell(key)
}

// showCell brings the cell that is written into sight.
func (s *section) showCell(key string) {
	if cell, ok := find(s.root.Underlying(), `[data-pad="`+key+`"][aria-current]`); ok {
		cell.Call("scrollIntoView", map[string]any{"block": "nearest", "inline": "nearest"})
	}
}

// load reads a file that was chosen and puts it in the place of a table.
func (d *desk) load(s *section, f *dom.BasicHTMLElement) {
	file := f.Get("files").Index(0)
	if !file.Truthy() {
		return
	}
	key, name := f.GetAttribute("data-load"), file.Get("name").String()
	take := func(text string) {
		if s.live.LoadFile(key, name, text) {
			s.rewrite()
			d.changed(s)
		} else {
			s.refresh()
		}
	}
	d.then(file.Call("text"), func(text js.Value) { take(text.String()) }, func() { take("") })
	f.Set("value", "") // the same file may be chosen again, once it is put right
}
