//go:build js && wasm

package main

import (
	"honnef.co/go/js/dom/v2"
	"setbook/calc/all"
	"setbook/calc/page"
)

// section is one calculator on the page.
type section struct {
	root   *dom.BasicHTMLElement
	live   *page.Live
	shown  map[string]string // the HTML that each part was last given
	linked bool              // it came from the address bar, which outranks what is remembered
	unkept bool              // it changed since it was last kept
	desk   *desk
	ask    []string // to be worked out beside the page, and not sent yet
}

// mount brings one section to life. It starts from the first of these that there is: the
// link in the address bar, what was typed before the program ran, what is remembered
// (taken later, when the store is open), the example as served.
func (d *desk) mount(root *dom.BasicHTMLElement) {
	c, ok := all.ByID(root.GetAttribute("data-calculator"))
	if !ok {
		return // a page of another version: it stays as it was served
	}
	mounted := page.NewLive
	if c.Long && hasAside() {
		mounted = page.MountAside
	}
	s := &section{root: root, live: mounted(c, root.ID(), served), shown: map[string]string{}, desk: d}
	d.sections = append(d.sections, s)
	s.earlyNames()
	d.run(s.spoil, func() { d.begin(s) })
	d.run(s.spoil, func() { d.outfit(s) })
	d.listen(s)
}

func (d *desk) begin(s *section) {
	early := s.early()
	own := d.from(fragment(), s)
	if own == "" {
		// It was typed into the page as served, so it is read as such before anything is rewritten.
		for _, f := range early {
			s.live.Type(f.key, f.text)
		}
	}
	if d.reader != served {
		s.live.Address(d.reader)
	}
	switch {
	case own != "":
		s.linked = true
		s.load(own)
	case d.reader != served:
		s.rewrite()
	case len(early) > 0:
		s.refresh()
	}
	if own == "" && len(early) > 0 {
		d.changed(s)
	}
}

// typed is what a field held before the program ran.
type typed struct{ key, text string }

// early finds the fields that no longer hold what they were served with.
func (s *section) early() []typed {
	var out []typed
	for _, f := range every(s.root.Underlying(), "[data-key]") {
		text := f.Get("value").String()
		switch {
		case f.Get("type").String() == "radio":
			if f.Get("checked").Bool() && !f.Get("defaultChecked").Bool() {
				out = append(out, typed{f.GetAttribute("data-key"), text})
			}
		case text != f.Get("defaultValue").String():
			out = append(out, typed{f.GetAttribute("data-key"), text})
		}
	}
	return out
}

// load takes a link and writes the section anew, its fields with it.
func (s *section) load(text string) {
	s.live.Load(text)
	s.rewrite()
}

// address writes the section for another reader.
func (s *section) address(d *desk) {
	s.live.Address(d.reader)
	s.rewrite()
}

// refresh writes every part that differs from what it was last given, and marks
// what is wrong.
func (s *section) refresh() {
	focus := s.focused()
	for _, p := range s.live.Parts() {
		if html, ok := s.shown[p.Name]; ok && html == p.HTML {
			continue
		}
		if part, ok := find(s.root.Underlying(), `[data-part="`+p.Name+`"]`); ok {
			part.SetInnerHTML(p.HTML)
		}
		s.shown[p.Name] = p.HTML
	}
	if focus != "" && s.focused() == "" {
		s.focus(focus)
	}
	s.flag()
}

// refill writes into each field what it now holds.
func (s *section) refill() {
	for _, f := range every(s.root.Underlying(), "[data-key]") {
		key := f.GetAttribute("data-key")
		if f.Get("type").String() == "radio" {
			f.Set("checked", s.live.Checks(key, f.Get("value").String()))
		} else if text := s.live.Field(key); f.Get("value").String() != text {
			f.Set("value", text)
		}
	}
	s.refillCells()
}

// refillCells writes into the field of a cell what it holds.
func (s *section) refillCells() {
	for _, f := range every(s.root.Underlying(), "[data-padded]") {
		if text := s.live.Draft(f.GetAttribute("data-padded")); f.Get("value").String() != text {
			f.Set("value", text)
		}
	}
}

// rewrite writes everything inside the section, its fields with it. What the person has unfolded stays open,
// and the button that was pressed keeps the focus.
func (s *section) rewrite() {
	focus := s.focused()
	var open []bool
	for _, fold := range every(s.root.Underlying(), "details") {
		open = append(open, fold.HasAttribute("open"))
	}
	if form, ok := find(s.root.Underlying(), "form.asks"); ok && s.live.Aside() {
		form.SetInnerHTML(s.live.Fields()) // its sheet is worked out beside the page, and stays until then
		defer s.refresh()
	} else {
		s.root.SetInnerHTML(s.live.HTML())
	}
	s.shown = map[string]string{}
	for i, fold := range every(s.root.Underlying(), "details") {
		if i < len(open) && open[i] {
			fold.SetAttribute("open", "")
		}
	}
	if focus != "" {
		s.focus(focus)
	}
	s.flag()
}

// focus gives back the focus to what had it before it was written anew. The page stays where it is: a layout is dragged
// while its button is rewritten.
func (s *section) focus(selector string) {
	if e, ok := find(s.root.Underlying(), selector); ok {
		e.Call("focus", map[string]any{"preventScroll": true})
	}
}

// focused is a selector of the element in the section that has the focus, or "".
func (s *section) focused() string {
	active := s.root.Get("ownerDocument").Get("activeElement")
	if !active.Truthy() || !s.root.Call("contains", active).Bool() {
		return ""
	}
	e := wrap(active)
	for _, attribute := range []string{"id", "data-do", "data-use", "data-puts"} {
		if e.HasAttribute(attribute) {
			return "[" + attribute + `="` + e.GetAttribute(attribute) + `"]`
		}
	}
	return ""
}

// flag marks each field that cannot be worked, and the section while its answers belong to
// an earlier entry.
func (s *section) flag() {
	for _, f := range every(s.root.Underlying(), "[data-key]") {
		mark(f, "aria-invalid", s.live.Invalid(f.GetAttribute("data-key")))
	}
	mark(s.root, "data-stale", s.live.Stale())
	s.ends()
	s.desk.work(s)
	s.desk.tellAnswers(s)
	s.desk.shut(s.root.Underlying())
}

// spoil marks the answers as old after a fault.
func (s *section) spoil() { mark(s.root, "data-stale", true) }

// prime writes every part once without a change.
func (s *section) prime() {
	if len(s.shown) > 0 {
		return
	}
	for _, p := range s.live.Parts() {
		s.shown[p.Name] = p.HTML
	}
}
