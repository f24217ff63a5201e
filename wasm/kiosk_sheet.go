//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/all"
	"setbook/calc/datasheet"
	"setbook/calc/page"
	"setbook/calc/words"
)

// sheetKey is where a device keeps its data sheet.
const sheetKey = "setbook.sheet"

const (
	sheetKept      words.Msg = "Kept on this device. Every page that it can fill offers its products."
	sheetForgotten words.Msg = "This device keeps no data sheet."
	sheetFaulty    words.Msg = "It is not kept: put its faults right first."
	sheetTooLong   words.Msg = "This browser would not keep it."
	sheetUnread    words.Msg = "The data sheet of this page has faults, or could not be read. Products with a fault are left out."
)

// shelve offers the products of the sheet that this device keeps.
func (d *desk) shelve() {
	if !whole || d.frame != nil || len(d.sections) == 0 {
		return
	}
	try(func() {
		if text := global("localStorage").Call("getItem", sheetKey); text.Type() == js.TypeString {
			d.takeSheet(text.String())
		}
	})
}

// takeSheet offers the products of a sheet wherever they fill anything.
func (d *desk) takeSheet(text string) {
	clock := js.Global().Get("performance")
	from := clock.Call("now")
	defer func() { clock.Call("measure", "setbook:sheet", map[string]any{"start": from}) }()
	sheet, problems := datasheet.Read(text)
	if len(problems) > 0 {
		notice("sheet", sheetUnread)
	}
	for _, s := range d.sections {
		if !s.live.Shelve(sheet) {
			continue
		}
		d.run(s.spoil, s.rewrite)
		d.on(s.root.Underlying(), "change", s.spoil, func(e *dom.BasicEvent) {
			if choice, ok := around(e, "data-product"); ok {
				s.live.Product(choice.Get("selectedIndex").Int())
				s.rewrite()
				d.changed(s)
			}
		})
	}
}

// fetchSheet fetches a sheet that stands in the site.
func (d *desk) fetchSheet(name string) {
	script, ok := find(js.Global().Get("document"), "script[data-root]")
	if !ok {
		return
	}
	failed := func() { notice("sheet", sheetUnread) }
	d.then(js.Global().Call("fetch", script.GetAttribute("data-root")+"sheets/"+name), func(answer js.Value) {
		if !answer.Get("ok").Bool() {
			failed()
			return
		}
		d.then(answer.Call("text"), func(text js.Value) { d.takeSheet(text.String()) }, failed)
	}, failed)
}

// openChecker is the page that checks a sheet.
func (d *desk) openChecker() {
	root, ok := find(js.Global().Get("document"), ".checker")
	if !whole || !ok {
		return
	}
	under := root.Underlying()
	text, _ := find(under, "textarea")
	says := func(said string) {
		if p, ok := find(under, `[data-part="sheet-said"]`); ok {
			p.SetTextContent(said)
		}
	}
	check := func() (good bool) {
		sheet, problems := datasheet.Read(text.Get("value").String())
		says(page.Verdict(d.reader, sheet, problems))
		if p, ok := find(under, `[data-part="checked"]`); ok {
			p.SetInnerHTML(page.Checked(d.reader, sheet, problems, all.Calculators()))
		}
		return len(problems) == 0
	}
	try(func() {
		if kept := global("localStorage").Call("getItem", sheetKey); kept.Type() == js.TypeString && text.Get("value").String() == "" {
			text.Set("value", kept)
			check()
		}
	})
	d.on(under, "change", nil, func(e *dom.BasicEvent) {
		files := e.Get("target").Get("files")
		if !files.Truthy() || files.Length() == 0 {
			return
		}
		d.then(files.Index(0).Call("text"), func(read js.Value) {
			text.Set("value", read)
			check()
		}, func() { says(say(sheetUnread)) })
	})
	d.on(under, "click", nil, func(e *dom.BasicEvent) {
		b, ok := around(e, "data-check-do")
		if !ok {
			return
		}
		switch b.GetAttribute("data-check-do") {
		case "check":
			check()
		case "forget":
			try(func() { global("localStorage").Call("removeItem", sheetKey) })
			says(say(sheetForgotten))
		case "keep":
			switch {
			case !check():
				says(say(sheetFaulty))
			case try(func() { global("localStorage").Call("setItem", sheetKey, text.Get("value")) }):
				says(say(sheetKept))
			default:
				says(say(sheetTooLong))
			}
		}
	})
}
