//go:build js && wasm

package main

import (
	"strconv"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/words"
)

const (
	listCopied words.Msg = "List copied."
	copied     words.Msg = "Link copied."
	tooLong    words.Msg = "This entry is too long for a link. Save it as a file to hand it on."
	notCopied  words.Msg = "The browser would not copy. Copy the link from the address bar."
)

// listen follows a section through the few events that reach its root, so that
// fields written anew need no listener of their own.
func (d *desk) listen(s *section) {
	root := s.root.Underlying()
	field := func(e *dom.BasicEvent) {
		if f, ok := around(e, "data-key"); ok {
			d.take(s, f)
		} else if f, ok := around(e, "data-names"); ok {
			s.live.CallCountdown(f.GetAttribute("data-names"), f.Get("value").String())
		} else if f, ok := around(e, "data-each"); ok {
			d.write(s, func() { s.live.PickEach(f.GetAttribute("data-each"), number(f, "data-at"), f.Get("value").String()) })
		} else if f, ok := around(e, "data-padded"); whole && ok {
			d.padded(s, f)
		} else if f, ok := around(e, "data-load"); whole && ok {
			d.load(s, f)
		}
	}
	d.on(root, "input", s.spoil, field)
	d.on(root, "change", s.spoil, field)
	d.on(root, "click", s.spoil, func(e *dom.BasicEvent) { d.press(s, e) })
	d.on(root, "pointerdown", s.spoil, func(e *dom.BasicEvent) {
		_, inserts := around(e, "data-insert")
		_, pad := around(e, "data-pad")
		if inserts || pad {
			e.PreventDefault() // the field keeps the focus, and the phone its keyboard
		}
	})
	if whole { // grids, drawings to drag and long work are those of the large calculators
		d.on(root, "keydown", s.spoil, func(e *dom.BasicEvent) { d.padKey(s, e) })
		d.followDrag(s)
		if s.live.Aside() {
			d.on(root, "focusin", nil, func(*dom.BasicEvent) { d.hire() }) // ready before the first change
		}
	}
	d.on(root, "submit", s.spoil, func(e *dom.BasicEvent) {
		e.PreventDefault()
		if f := s.root.Get("ownerDocument").Get("activeElement"); f.Truthy() {
			f.Call("blur") // the phone's keyboard makes room for the answer
		}
	})
}

// take works out what a field now holds, within the event: the answer is painted with the key.
func (d *desk) take(s *section, f *dom.BasicHTMLElement) {
	key, text := f.GetAttribute("data-key"), f.Get("value").String()
	if s.live.Field(key) == text {
		return // an input event and the change event that follows it say the same
	}
	s.live.Type(key, text)
	s.refillCells()
	s.refresh()
	d.changed(s)
}

// write has the fields written by something else than the keyboard: a button, a tool, a choice one by one.
func (d *desk) write(s *section, by func()) {
	by()
	s.refill()
	s.refresh()
	d.changed(s)
}

// number reads a whole number that package page has written into an attribute.
func number(e *dom.BasicHTMLElement, attribute string) int {
	n, err := strconv.Atoi(e.GetAttribute(attribute))
	if err != nil {
		panic(err)
	}
	return n
}

// changed has kept what the section now holds, where it can be worked: after the event, since the
// answer comes first.
func (d *desk) changed(s *section) {
	if s.live.Stale() {
		return
	}
	s.unkept = true
	if !d.flushing {
		d.flushing = true
		d.later(0, d.flush)
	}
}

// flush keeps what has changed and brings the address bar in step.
func (d *desk) flush() {
	d.flushing = false
	for _, s := range d.sections {
		if s.unkept {
			s.unkept = false
			d.keep(s)
			d.address.changed(d)
		}
	}
}

// press does what a button of the section asks for.
func (d *desk) press(s *section, e *dom.BasicEvent) {
	if b, ok := around(e, "data-fill"); ok {
		if f, ok := s.field(b.GetAttribute("data-for")); ok {
			f.Set("value", b.GetAttribute("data-fill"))
			d.take(s, f)
		}
		return
	}
	if b, ok := around(e, "data-insert"); ok {
		if f, ok := s.field(b.GetAttribute("data-for")); ok {
			f.Call("setRangeText", b.GetAttribute("data-insert"), f.Get("selectionStart"), f.Get("selectionEnd"), "end")
			d.take(s, f)
		}
		return
	}
	if b, ok := around(e, "data-carry"); ok {
		d.carryList(s, b)
		return
	}
	if b, ok := around(e, "data-pad"); whole && ok {
		d.padPress(s, b)
		return
	}
	if b, ok := around(e, "data-save"); whole && ok {
		d.download(b.GetAttribute("data-save")+".csv", "text/csv;charset=utf-8", s.live.File(b.GetAttribute("data-save")))
		return
	}
	if b, ok := around(e, "data-start"); ok {
		d.start(s, b.GetAttribute("data-start"))
		return
	}
	if b, ok := around(e, "data-puts"); ok {
		d.write(s, func() { s.live.Put(b.GetAttribute("data-puts")) })
		return
	}
	if b, ok := around(e, "data-use"); ok {
		d.write(s, func() { s.live.Use(b.GetAttribute("data-use")) })
		return
	}
	if b, ok := around(e, "data-many"); ok {
		d.write(s, func() { s.live.CountEach(b.GetAttribute("data-many"), number(b, "data-to")) })
		return
	}
	b, ok := around(e, "data-do")
	switch {
	case !ok:
	case b.GetAttribute("data-do") == "example":
		s.live.Example()
		s.rewrite()
		d.changed(s)
	case b.GetAttribute("data-do") == "copy":
		d.copy(s)
	case whole && b.GetAttribute("data-do") == "drag":
		s.toggleDrag()
	case b.GetAttribute("data-do") == "stop":
		d.end("stop")
	case b.GetAttribute("data-do") == "again":
		s.live.Again()
		s.refresh()
	}
}

func (s *section) field(key string) (*dom.BasicHTMLElement, bool) {
	return find(s.root.Underlying(), `[data-key="`+key+`"]`)
}

// carryList takes a list of the sheet away, as text or as a file.
func (d *desk) carryList(s *section, b *dom.BasicHTMLElement) {
	text := b.GetAttribute("data-carry")
	if name := b.GetAttribute("data-file"); name != "" {
		d.download(name, "text/csv;charset=utf-8", text)
		return
	}
	d.copyText(text, say(listCopied), func(text string) {
		if p, ok := find(s.root.Underlying(), `[data-part="said"]`); ok {
			p.SetTextContent(text)
		}
	})
}

// copy puts a link to this entry on the clipboard and says whether it could.
func (d *desk) copy(s *section) {
	said := func(text string) {
		if p, ok := find(s.root.Underlying(), `[data-part="said"]`); ok {
			p.SetTextContent(text)
		}
	}
	if !s.live.Linkable() {
		said(say(tooLong))
		return
	}
	d.copyLink(d.entries(s), said)
}

// copyLink puts the address of this page with a fragment on the clipboard and says whether it could.
func (d *desk) copyLink(fragment string, said func(text string)) {
	here := dom.GetWindow().Location()
	d.copyText(here.Origin()+here.Pathname()+"#"+fragment, say(copied), said)
}

// copyText puts a text on the clipboard and says that it is done, or that it could not be.
func (d *desk) copyText(text, done string, said func(text string)) {
	clipboard := js.Global().Get("navigator").Get("clipboard")
	if !clipboard.Truthy() {
		said(say(notCopied)) // a page from a plain http address has none
		return
	}
	d.then(clipboard.Call("writeText", text), func(js.Value) { said(done) }, func() { said(say(notCopied)) })
}
