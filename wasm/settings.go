//go:build js && wasm

package main

import (
	"strings"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// served is the reader for whom the build wrote the page: in the page's own language, which the program takes before
// anything else.
var served = words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}

// language is the page's own: English, or the one whose messages the head script has fetched.
func language(document *dom.BasicHTMLElement) *words.Language {
	text := js.Global().Get("setbookWords")
	if text.Type() != js.TypeString {
		return words.English
	}
	return words.Read(document.GetAttribute("lang"), text.String())
}

// settings reads for whom the page is to be written: the attributes that the head
// script has set from what was remembered, and the decimal mark of the browser.
func (d *desk) settings() words.Reader {
	r := served
	r.Style.Decimal = decimal()
	if d.document.GetAttribute("data-units") == "metric" {
		r.Style.System = unit.Metric
	}
	return r
}

// say gives a message to the person before the page.
func say(m words.Msg) string { return served.Word(m) }

// decimal is the decimal mark of the browser's own locale, as far as it is one
// that the reader of numbers knows.
func decimal() byte {
	if strings.Contains(js.Global().Get("Number").New(1.1).Call("toLocaleString").String(), ",") {
		return ','
	}
	return '.'
}

// offerSettings makes the switches of units and theme work.
func (d *desk) offerSettings() {
	body := js.Global().Get("document").Get("body")
	d.choice(body, "units", func() {
		d.reader = d.settings()
		if whole {
			d.run(nil, func() { d.class.address(d) })
		}
		for _, s := range d.sections {
			d.run(s.spoil, func() {
				s.address(d)
				d.changed(s)
			})
		}
		d.addressJobs()
	})
	d.choice(body, "theme", func() {})
}

// choice follows one switch: the buttons carry data-NAME-choice, the document carries
// data-NAME, and the choice is remembered under setbook.NAME.
func (d *desk) choice(body js.Value, name string, changed func()) {
	attribute := "data-" + name + "-choice"
	press := func() {
		for _, b := range every(body, "["+attribute+"]") {
			pressed := "false"
			if b.GetAttribute(attribute) == d.document.GetAttribute("data-"+name) {
				pressed = "true"
			}
			b.SetAttribute("aria-pressed", pressed)
		}
	}
	press()
	d.on(body, "click", nil, func(e *dom.BasicEvent) {
		b, ok := around(e, attribute)
		if !ok {
			return
		}
		value := b.GetAttribute(attribute)
		d.document.SetAttribute("data-"+name, value)
		press()
		// Where nothing can be kept, the choice holds for this page; the store says so once for both.
		try(func() { global("localStorage").Call("setItem", "setbook."+name, value) })
		changed()
	})
}
