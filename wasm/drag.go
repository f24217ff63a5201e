//go:build js && wasm

package main

import (
	"honnef.co/go/js/dom/v2"
	"setbook/calc/page"
)

// followDrag forwards what a finger or a mouse does to a drawing that is dragged, and the arrow keys.
func (d *desk) followDrag(s *section) {
	if s.live.Calculator.Drag == nil {
		return
	}
	root := s.root.Underlying()
	on := func(event string, do func(e *dom.BasicEvent, pull *dom.BasicHTMLElement)) {
		d.on(root, event, s.spoil, func(e *dom.BasicEvent) {
			if pull, ok := around(e, "data-pull"); ok && s.live.Drags() {
				do(e, pull)
			}
		})
	}
	on("pointerdown", func(e *dom.BasicEvent, pull *dom.BasicHTMLElement) {
		try(func() { pull.Call("setPointerCapture", e.Get("pointerId")) })
		s.live.Grab(e.Get("clientX").Float(), e.Get("clientY").Float())
	})
	on("pointermove", func(e *dom.BasicEvent, pull *dom.BasicHTMLElement) {
		if view, ok := viewed(pull); ok {
			s.live.Drag(view, e.Get("clientX").Float(), e.Get("clientY").Float())
			s.refresh()
		}
	})
	on("pointerup", func(*dom.BasicEvent, *dom.BasicHTMLElement) { d.write(s, s.live.Drop) })
	on("pointercancel", func(*dom.BasicEvent, *dom.BasicHTMLElement) { d.write(s, s.live.LetGo) })
	arrows := map[string][2]int{"ArrowLeft": {-1, 0}, "ArrowRight": {1, 0}, "ArrowUp": {0, 1}, "ArrowDown": {0, -1}}
	on("keydown", func(e *dom.BasicEvent, _ *dom.BasicHTMLElement) {
		if way, ok := arrows[e.Get("key").String()]; ok {
			e.PreventDefault()
			d.write(s, func() { s.live.Nudge(way[0], way[1], e.Get("shiftKey").Bool()) })
		}
	})
}

// viewed is how the drawing stands on the screen.
func viewed(pull *dom.BasicHTMLElement) (page.View, bool) {
	scaled, ok := find(pull.Underlying(), "[data-scale]")
	if !ok {
		return page.View{}, false
	}
	drawing, ok := find(scaled.Underlying(), "svg[viewBox]")
	if !ok {
		return page.View{}, false
	}
	box := drawing.Call("getBoundingClientRect")
	return page.View{Scale: scaled.GetAttribute("data-scale"), Box: drawing.GetAttribute("viewBox"),
		Wide: box.Get("width").Float(), High: box.Get("height").Float()}, true
}

// toggleDrag has the drawing dragged, or no longer. While it is, a finger on it does not scroll the page.
func (s *section) toggleDrag() {
	s.live.Dragging(!s.live.Drags())
	mark(s.root, "data-dragging", s.live.Drags())
	if pull, ok := find(s.root.Underlying(), "[data-pull]"); ok {
		if s.live.Drags() {
			pull.SetAttribute("tabindex", "0")
		} else {
			pull.RemoveAttribute("tabindex")
		}
	}
	s.refresh()
}
