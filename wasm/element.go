//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/words"
)

// wrap gives an element its methods. The binding's own wrapper compares an element with some
// seventy constructors to give it a type, which nothing here needs.
func wrap(v js.Value) *dom.BasicHTMLElement {
	return &dom.BasicHTMLElement{BasicElement: &dom.BasicElement{BasicNode: &dom.BasicNode{Value: v}}}
}

// find gives the first element under root that matches, and whether there is one.
func find(root js.Value, selector string) (*dom.BasicHTMLElement, bool) {
	v := root.Call("querySelector", selector)
	return wrap(v), v.Truthy()
}

// every gives every element under root that matches.
func every(root js.Value, selector string) []*dom.BasicHTMLElement {
	list := root.Call("querySelectorAll", selector)
	out := make([]*dom.BasicHTMLElement, list.Length())
	for i := range out {
		out[i] = wrap(list.Index(i))
	}
	return out
}

// around gives the element itself or the nearest one around it that carries an attribute.
func around(e *dom.BasicEvent, attribute string) (*dom.BasicHTMLElement, bool) {
	target := e.Get("target")
	if target.Get("closest").IsUndefined() {
		return nil, false // an event on the document itself
	}
	v := target.Call("closest", "["+attribute+"]")
	return wrap(v), v.Truthy()
}

// mark sets an attribute to "true" or takes it away.
func mark(e *dom.BasicHTMLElement, attribute string, on bool) {
	switch {
	case on:
		e.SetAttribute(attribute, "true")
	case e.HasAttribute(attribute):
		e.RemoveAttribute(attribute)
	}
}

// notice says something in the region that is read out, once for each name, and
// gives the element that says it.
func notice(name string, m words.Msg) *dom.BasicHTMLElement {
	place := js.Global().Get("document").Call("getElementById", "notices")
	if said, ok := find(place, `[data-notice="`+name+`"]`); ok {
		return said
	}
	box := create("div")
	box.SetAttribute("data-notice", name)
	text := create("p")
	text.SetTextContent(say(m))
	box.Call("append", text.Underlying())
	place.Call("append", box.Underlying())
	return box
}

// button adds a button to a notice.
func button(box *dom.BasicHTMLElement, m words.Msg) *dom.BasicHTMLElement {
	b := create("button")
	b.SetAttribute("type", "button")
	b.SetTextContent(say(m))
	box.Call("append", b.Underlying())
	return b
}

func create(tag string) *dom.BasicHTMLElement {
	return wrap(js.Global().Get("document").Call("createElement", tag))
}
