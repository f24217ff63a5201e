//go:build js && wasm

package main

import (
	"slices"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/embed"
	"setbook/calc/words"
)

// parentTold stands in the place of the sentence that nothing is sent, where something is.
const parentTold words.Msg = "This is worked out on this device, without an account. The page around it is told what you enter here and what comes of it."

// framed is a page that stands in a frame of another page; nil on every other.
type framed struct {
	embed.Setup
	faults  []words.Line
	parent  js.Value
	origins []string // that may say something
	targets []string // that are told something: of these the browser serves the one that is there
	ready   bool
	told    string // the last answers, so that nothing is told twice
	height  int
}

// openFrame reads how the page around wants its calculator, and makes room for it, before anything else is done.
func (d *desk) openFrame() {
	if !whole || !d.document.HasAttribute("data-embed") { // a frame has the whole program
		return
	}
	f := &framed{parent: js.Global().Get("parent")}
	d.frame = f
	f.Setup, f.faults = embed.Read(js.Global().Get("location").Get("search").String(), all.ByID)
	f.name(d.document.GetAttribute("data-embed"))
	if f.Units != "" {
		d.document.SetAttribute("data-units", f.Units)
		d.document.SetAttribute("data-set-units", "yes")
	}
	d.dress(f.Theme)
	d.paint(f.Colours)
	for _, fault := range f.faults {
		say := create("p")
		say.SetTextContent(served.Line(fault))
		js.Global().Get("document").Call("getElementById", "notices").Call("append", say.Underlying())
	}
	if f.Calculator == nil {
		return
	}
	document := js.Global().Get("document")
	title := served.Word(f.Calculator.Title)
	document.Set("title", title)
	if h, ok := find(document, "#frame-title"); ok {
		h.SetTextContent(title)
	}
	section := create("section")
	section.SetAttribute("class", "calculator")
	section.SetAttribute("id", f.Calculator.ID)
	section.SetAttribute("data-calculator", f.Calculator.ID)
	document.Call("getElementById", "page").Call("append", section.Underlying())
}

// name says who may be told anything: the named origin that is the parent's. A browser that does not say whose the parent is
// hands a message on only where the parent is of the origin that the message is for.
func (f *framed) name(list string) {
	if f.parent.Equal(js.Global().Get("window")) {
		return
	}
	f.origins = embed.Origins(list)
	f.targets = f.origins
	if around := js.Global().Get("location").Get("ancestorOrigins"); around.Truthy() && around.Length() > 0 {
		parent := around.Index(0).String()
		f.targets = nil
		if slices.Contains(f.origins, parent) {
			f.targets = []string{parent}
		}
	}
}

// tell posts a message to the page around, where that is a named one.
func (f *framed) tell(message string) {
	for _, target := range f.targets {
		f.parent.Call("postMessage", js.Global().Get("JSON").Call("parse", message), target)
	}
}

// dress sets the look that the page around asks for; without one the device decides.
func (d *desk) dress(theme string) {
	if theme == "" {
		theme = "auto"
	}
	d.document.SetAttribute("data-theme", theme)
}

// paint takes on the colours of the page around, as far as every text can be read on them.
func (d *desk) paint(wanted map[string]string) {
	if len(wanted) == 0 {
		return
	}
	looks := js.Global().Call("getComputedStyle", d.document.Underlying())
	own := map[string]string{}
	for _, name := range []string{"paper", "ink", "chalk"} {
		own[name] = looks.Call("getPropertyValue", "--"+name).String()
	}
	p := embed.Mix(wanted, own)
	for name, colour := range p.Colours {
		d.document.Get("style").Call("setProperty", "--"+name, colour)
	}
	if p.Colours != nil {
		d.document.Get("style").Call("setProperty", "color-scheme", map[bool]string{true: "dark", false: "light"}[p.Dark])
	}
	for _, refused := range p.Refused {
		js.Global().Get("console").Call("warn", "setbook: "+served.Line(refused))
	}
}

// followParent listens to the page around and tells it how high this page is.
func (d *desk) followParent() {
	f := d.frame
	if !whole || f == nil {
		return
	}
	if len(f.targets) > 0 {
		d.on(js.Global(), "message", nil, func(e *dom.BasicEvent) {
			if e.Get("source").Equal(f.parent) && slices.Contains(f.targets, e.Get("origin").String()) {
				d.heed(e.Get("data"))
			}
		})
		body := js.Global().Get("document").Get("body")
		if local, ok := find(body, ".frame-foot .local"); ok {
			local.SetTextContent(say(parentTold))
		}
		tell := func(js.Value) {
			if height := body.Get("offsetHeight").Int(); height != f.height {
				f.height = height
				f.tell(embed.Height(height))
			}
		}
		js.Global().Get("ResizeObserver").New(d.callback(nil, tell)).Call("observe", body)
		tell(body) // a frame that is out of sight is not observed until it comes near
	}
	if f.Calculator != nil {
		f.ready = true
		f.tell(embed.Ready(f.Calculator.ID))
		for _, s := range d.sections {
			d.tellAnswers(s)
		}
	}
	if f.Sheet != "" {
		d.fetchSheet(f.Sheet)
	}
}

// heed does what the page around asks for. Whatever is not of the stated shape is let be.
func (d *desk) heed(message js.Value) {
	if message.Type() != js.TypeObject || message.Get("setbook").Type() != js.TypeNumber || message.Get("setbook").Int() != embed.Version {
		return
	}
	text := func(key string) string {
		if v := message.Get(key); v.Type() == js.TypeString {
			return v.String()
		}
		return ""
	}
	switch text("kind") {
	case "theme":
		if theme := text("theme"); theme == "light" || theme == "dark" || theme == "auto" {
			d.document.SetAttribute("data-theme", theme)
		}
	case "sheet":
		d.takeSheet(text("text"))
	case "fields":
		fields := message.Get("fields")
		if fields.Type() != js.TypeObject {
			return
		}
		names := js.Global().Get("Object").Call("keys", fields)
		texts := calc.Texts{}
		for i := range names.Length() {
			name := names.Index(i).String()
			if v := fields.Get(name); v.Type() == js.TypeString {
				texts[name] = v.String()
			}
		}
		if active := js.Global().Get("document").Get("activeElement"); active.Truthy() {
			active.Call("blur") // a field that is taken away while it is typed in would still tell of its change
		}
		for _, s := range d.sections {
			d.run(s.spoil, func() {
				s.live.Fill(texts)
				s.rewrite()
				d.changed(s)
			})
		}
	}
}

// tellAnswers tells the page around what a section answers, and has the way to the whole page carry the entry.
func (d *desk) tellAnswers(s *section) {
	f := d.frame
	if !whole || f == nil {
		return
	}
	entry := s.live.Link()
	if whole, ok := find(js.Global().Get("document"), "#frame-whole"); ok {
		if script, ok := find(js.Global().Get("document"), "script[data-home]"); ok {
			whole.SetAttribute("href", script.GetAttribute("data-home")+f.Calculator.ID+"/#"+entry)
		}
	}
	if len(f.targets) == 0 || !f.ready {
		return
	}
	message := embed.Answers(f.Calculator.ID, entry, s.live.Stale(), s.live.Sheet(), d.reader)
	if message != f.told {
		f.told = message
		f.tell(message)
	}
}

// key is the name under which a section's last entry is kept: in a frame that of its address, since another page
// may have set the same calculator up otherwise.
func (d *desk) key(s *section) string {
	if d.frame == nil {
		return s.live.Calculator.ID
	}
	return "embed " + js.Global().Get("location").Get("search").String()
}
