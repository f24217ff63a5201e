//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/job"
	"setbook/calc/jobpage"
	"setbook/calc/words"
)

const (
	jobCopied   words.Msg = "Copied. It holds the whole job."
	jobNoCopy   words.Msg = "The browser would not copy. Save the file instead."
	jobTooLarge words.Msg = "This job is too large for a link or a code. Hand it on as a file."
	jobNoShare  words.Msg = "This browser cannot share a file. Save it, and send it as you send any other."
	jobUnshared words.Msg = "The browser did not share it. Save the file, and send it as you send any other."
	jobCode     words.Msg = "Scan this with the other phone’s camera. It holds the whole job."
	jobLinked   words.Msg = "Link copied. It holds the whole job: whoever opens it sees it before anything is kept."
)

// record is the job's file: as it stands on the page, or as it is kept where this program must not write it.
func (d *desk) record() (name, text string) {
	c := &d.clerk
	switch {
	case c.strip != nil:
		live := d.sections[0].live
		j := c.strip.With(live.Calculator.ID, live.Link(), now())
		return jobpage.FileName(j), job.Write(j)
	case c.view == nil:
		return "setbook-" + c.rawID + ".json", c.raw
	case c.view.Job.Newer != 0:
		return jobpage.FileName(c.view.Job), c.view.Raw
	}
	return jobpage.FileName(c.view.Job), job.Write(c.view.Job)
}

// handOn gives the job to the person in one of the ways.
func (d *desk) handOn(do string) {
	c := &d.clerk
	name, text := d.record()
	switch do {
	case "file":
		d.download(name, "application/json", text)
	case "copy":
		d.clip(text, jobCopied)
	case "share":
		d.share(name, text)
	default:
		packed, ok := "", false
		if c.view != nil && c.view.Job.Newer == 0 {
			packed, ok = job.Pack(c.view.Job)
		}
		if !ok {
			d.handed(jobTooLarge)
			return
		}
		top := js.Global().Get("URL").New(c.book.Root+"jobs/#"+packed, dom.GetWindow().Location().Href()).Get("href").String()
		if do == "link" {
			d.clip(top, jobLinked)
			return
		}
		made, drawn := c.book.Code(top)
		if place, ok := find(c.root.Underlying(), "[data-code]"); !drawn || !ok {
			d.handed(jobTooLarge)
		} else {
			place.SetInnerHTML(made)
			d.handed(jobCode)
		}
	}
}

// handed says how it went.
func (d *desk) handed(m words.Msg) {
	if p, ok := find(d.clerk.root.Underlying(), `[data-said="hand-on"]`); ok {
		p.SetTextContent(say(m))
	}
}

// clip puts a text on the clipboard.
func (d *desk) clip(text string, done words.Msg) {
	clipboard := js.Global().Get("navigator").Get("clipboard")
	if !clipboard.Truthy() {
		d.handed(jobNoCopy) // a page from a plain http address has none
		return
	}
	d.then(clipboard.Call("writeText", text), func(js.Value) { d.handed(done) }, func() { d.handed(jobNoCopy) })
}

// share opens the phone's share sheet with the file. Some browsers share no JSON, but the same text as a text file.
func (d *desk) share(name, text string) {
	navigator := js.Global().Get("navigator")
	for _, kind := range []struct{ suffix, mime string }{{"", "application/json"}, {".txt", "text/plain"}} {
		shared := false
		ok := try(func() {
			file := js.Global().Get("File").New([]any{text}, name+kind.suffix, map[string]any{"type": kind.mime})
			with := map[string]any{"files": []any{file}}
			if shared = !navigator.Get("canShare").IsUndefined() && navigator.Call("canShare", with).Bool(); shared {
				d.whereRefused(navigator.Call("share", with))
			}
		})
		if ok && shared {
			return
		}
	}
	d.handed(jobNoShare)
}

// whereRefused says that the browser did not share. A person who closes the share sheet has refused nothing.
func (d *desk) whereRefused(promise js.Value) {
	var refused js.Func
	refused = d.callback(nil, func(why js.Value) {
		defer refused.Release()
		if !why.Truthy() || why.Get("name").String() != "AbortError" {
			d.handed(jobUnshared)
		}
	})
	promise.Call("catch", refused)
}
