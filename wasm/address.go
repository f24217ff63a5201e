//go:build js && wasm

package main

import (
	"strings"
	"syscall/js"
	"time"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/link"
)

// Some browsers refuse more than a hundred changes of the address in half a minute. So
// many are written at once in each such span, the rest after a pause, which adds fifteen at most.
const (
	span   = 30 * time.Second
	atOnce = 80
	pause  = 2000 // milliseconds
)

// address keeps the fragment of the address bar in step with what is entered.
type address struct {
	waiting bool      // a change is not written yet
	since   time.Time // when the span began
	written int       // changes in this span
}

// fragment is what stands behind # now, or "" where it is no entry but the name of
// a place on the page.
func fragment() string {
	text := strings.TrimPrefix(dom.GetWindow().Location().Hash(), "#")
	if !strings.Contains(text, "=") {
		return ""
	}
	return text
}

// entries is the fragment for what is mounted. Alone on its page a calculator
// stands in it once it differs from its example or is asked for (asked may be nil); several stand
// in it all together, each under its name.
func (d *desk) entries(asked *section) string {
	wanted := false
	var named []link.Named
	for _, s := range d.sections {
		if !s.live.Linkable() {
			continue // the page says so
		}
		wanted = wanted || s == asked || s.live.Touched()
		named = append(named, link.Named{Name: s.live.Name, Text: s.live.Link()})
	}
	if !wanted || len(named) == 0 {
		return ""
	}
	return link.Gather(named)
}

// from is the part of the fragment that belongs to a section.
func (d *desk) from(text string, s *section) string {
	if d.frame != nil {
		return "" // whoever frames a page can change what stands behind its #
	}
	return link.Pick(text, s.live.Name, d.alone())
}

// alone reports whether the page has one calculator: its link then needs no name.
func (d *desk) alone() bool {
	return len(every(js.Global().Get("document"), "section.calculator[data-calculator]")) == 1
}

// changed writes the address bar: at once, or, where it has been written too often of late, after a
// pause, once for all that changes in between.
func (a *address) changed(d *desk) {
	if a.waiting || d.frame != nil { // a frame has no address bar, and its parent may not read it
		return
	}
	a.waiting = true
	if now := time.Now(); now.Sub(a.since) > span {
		a.since, a.written = now, 0
	}
	if a.written < atOnce {
		a.written++
		a.write(d)
		return
	}
	d.later(pause, func() { a.write(d) })
}

// write brings the address bar in step now, without a new step in the history.
func (a *address) write(d *desk) {
	if !a.waiting {
		return
	}
	a.waiting = false
	here := dom.GetWindow().Location()
	url := here.Pathname() + here.Search()
	if text := d.entries(nil); text != "" {
		url += "#" + text
	}
	// A refusal is made good by the next change.
	try(func() { js.Global().Get("history").Call("replaceState", nil, "", url) })
}

// followAddress takes a link that is put into the address bar of the open page, and
// brings the bar in step before the page is left.
func (d *desk) followAddress() {
	d.on(js.Global(), "hashchange", nil, func(*dom.BasicEvent) {
		text := fragment()
		for _, s := range d.sections {
			if own := d.from(text, s); own != "" && own != s.live.Link() && !d.heldByJob() {
				d.run(s.spoil, func() { s.load(own) })
			}
		}
	})
	for _, event := range []string{"pagehide", "visibilitychange"} {
		d.on(js.Global(), event, nil, func(*dom.BasicEvent) {
			d.flush()
			d.address.write(d)
		})
	}
}
