//go:build js && wasm

package main

import "syscall/js"

// draftKey is where the draft of a job is kept, with the job's ID behind it: in the storage of this tab alone, which outlives the page.
const draftKey = "setbook.draft."

// keepDraft keeps what stands in the fields of the job and is in no record yet.
func (c *clerk) keepDraft() {
	id, text := c.view.Job.ID, c.view.Draft()
	if c.draft == id+text {
		return
	}
	c.draft = id + text
	try(func() {
		if text == "" {
			forgetDraft(id)
		} else {
			global("sessionStorage").Call("setItem", draftKey+id, text)
		}
	})
}

func forgetDraft(id string) {
	try(func() { global("sessionStorage").Call("removeItem", draftKey+id) })
}

func draftOf(id string) (text string) {
	try(func() {
		if kept := global("sessionStorage").Call("getItem", draftKey+id); kept.Type() == js.TypeString {
			text = kept.String()
		}
	})
	return text
}
