//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/all"
	"setbook/calc/classroom"
)

// class is the page for a trade class, where the page is one.
type class struct {
	root *dom.BasicHTMLElement
	*classroom.Room
}

const classKey = "setbook.class" // in the browser's own small storage: a score, no more

// openClass brings the class to life: from the teacher's link, or from its first set.
func (d *desk) openClass() {
	root, ok := find(js.Global().Get("document"), "#class")
	if !ok {
		return
	}
	c := &d.class
	c.root, c.Room = root, classroom.New(all.Calculators(), d.reader)
	try(func() {
		if kept := global("localStorage").Call("getItem", classKey); kept.Type() == js.TypeString {
			c.Recall(kept.String())
		}
	})
	if text := fragment(); text != "" {
		c.Load(text)
	}
	c.rewrite()
	under := root.Underlying()
	d.on(under, "change", nil, func(e *dom.BasicEvent) {
		if f, ok := around(e, "data-class-set"); ok && c.Choose(f.GetAttribute("data-class-set"), f.Get("value").String()) {
			c.turn(d)
		} else {
			c.say(c.Said())
		}
	})
	d.on(under, "submit", nil, func(e *dom.BasicEvent) {
		e.PreventDefault()
		if f, ok := find(under, "#class-answer"); ok {
			c.Answer(f.Get("value").String())
			c.round()
			c.focus("#class-answer")
		}
	})
	d.on(under, "click", nil, func(e *dom.BasicEvent) { c.press(d, e) })
	d.on(js.Global(), "hashchange", nil, func(*dom.BasicEvent) {
		if text := fragment(); text != "" && text != c.Link() {
			c.Load(text)
			c.rewrite()
		}
	})
}

// press does what a button asks for.
func (c *class) press(d *desk, e *dom.BasicEvent) {
	if b, ok := around(e, "data-class-view"); ok {
		c.Choose("view", b.GetAttribute("data-class-view"))
		c.turn(d)
		return
	}
	b, ok := around(e, "data-class-do")
	if !ok {
		return
	}
	switch b.GetAttribute("data-class-do") {
	case "next":
		c.Next()
		try(func() { global("localStorage").Call("setItem", classKey, c.Kept()) })
		c.round()
		c.focus("#class-answer")
	case "again":
		c.Again()
		c.turn(d)
	case "copy":
		d.copyLink(c.Link(), c.say)
	}
}

// turn writes the page anew after a choice, and the address bar with it.
func (c *class) turn(d *desk) {
	focus := ""
	if active := c.root.Get("ownerDocument").Get("activeElement"); active.Truthy() && active.Get("id").String() != "" {
		focus = "#" + active.Get("id").String()
	}
	c.rewrite()
	if focus != "" {
		c.focus(focus)
	}
	here := dom.GetWindow().Location()
	try(func() {
		js.Global().Get("history").Call("replaceState", nil, "", here.Pathname()+here.Search()+"#"+c.Link())
	})
}

// address writes the page for another reader: other units.
func (c *class) address(d *desk) {
	if c.Room != nil {
		c.Address(d.reader)
		c.rewrite()
	}
}

func (c *class) rewrite() { c.root.SetInnerHTML(c.HTML()) }

func (c *class) round() {
	if p, ok := find(c.root.Underlying(), `[data-part="round"]`); ok {
		p.SetInnerHTML(c.Round())
	}
}

func (c *class) focus(selector string) {
	if f, ok := find(c.root.Underlying(), selector); ok {
		f.Focus()
	}
}

func (c *class) say(text string) {
	if p, ok := find(c.root.Underlying(), `[data-part="said"]`); ok {
		write(p, text)
	}
}
