//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/job"
)

// askPicture opens the phone's camera, or its pictures, for a check. It must do so within the press, or the browser would not.
func (d *desk) askPicture(do, of string) {
	c := &d.clerk
	c.pictureOf = of
	if input, ok := find(c.root.Underlying(), `[data-job-picture="`+do+`"]`); ok {
		input.Call("click")
	}
}

// openPicture makes a picture that the person took or chose small and puts it to its check. Drawn anew it brings nothing along that a phone writes
// into a file of its own, and it stands upright as the file says.
func (d *desk) openPicture(input *dom.BasicHTMLElement) {
	c := &d.clerk
	files, view := input.Get("files"), c.view
	if files.Length() == 0 || view == nil {
		return
	}
	file, of := files.Index(0), c.pictureOf
	input.Set("value", "") // the same file can be chosen again
	shoot := view.BeginPicture(of)
	take := func(text string) {
		if view.TakePicture(shoot, text) {
			if c.view == view {
				c.pressed = "picture-" + of
			}
			d.saveView(view) // also where another job is on the page by now
		}
		d.refreshJob("")
	}
	d.refreshJob("")
	if !try(func() {
		d.then(js.Global().Call("createImageBitmap", file), func(image js.Value) { take(small(image)) }, func() { take("") })
	}) {
		take("")
	}
}

// small is an image as a data URL that a record takes, "" where the browser cannot make one.
func small(image js.Value) (text string) {
	defer image.Call("close")
	canvas := create("canvas").Underlying()
	for _, s := range job.Shots(image.Get("width").Int(), image.Get("height").Int()) {
		canvas.Set("width", s.Width)
		canvas.Set("height", s.Height)
		context := canvas.Call("getContext", "2d")
		context.Set("fillStyle", "white") // what can be seen through in the file
		context.Call("fillRect", 0, 0, s.Width, s.Height)
		context.Set("imageSmoothingQuality", "high")
		context.Call("drawImage", image, 0, 0, s.Width, s.Height)
		if text = canvas.Call("toDataURL", "image/jpeg", s.Quality).String(); job.Small(text) {
			break
		}
	}
	return text
}

// drawPictures draws each picture of the page that is unfolded and not drawn yet.
func (d *desk) drawPictures() {
	view := d.clerk.view
	if view == nil {
		return
	}
	for _, canvas := range every(d.clerk.root.Underlying(), "canvas.job-shot:not([data-drawn])") {
		if canvas.Call("closest", "details:not([open])").Truthy() {
			continue
		}
		mark(canvas, "data-drawn", true)
		d.drawPicture(canvas.Underlying(), view.Picture(canvas.GetAttribute("data-picture-of")))
	}
}

func (d *desk) drawPicture(canvas js.Value, text string) {
	media, image := pictureBytes(text)
	try(func() {
		blob := js.Global().Get("Blob").New([]any{image}, map[string]any{"type": media})
		d.then(js.Global().Call("createImageBitmap", blob), func(image js.Value) {
			canvas.Set("width", image.Get("width"))
			canvas.Set("height", image.Get("height"))
			canvas.Call("getContext", "2d").Call("drawImage", image, 0, 0)
			image.Call("close")
		}, nil) // what no browser can show stays an empty frame with its words
	})
}

func pictureBytes(text string) (media string, bytes js.Value) {
	media, image := job.PictureBytes(text)
	bytes = js.Global().Get("Uint8Array").New(len(image))
	js.CopyBytesToJS(bytes, image)
	return media, bytes
}

// savePicture gives a picture to the person as a file of its own.
func (d *desk) savePicture(of string) {
	view := d.clerk.view
	media, bytes := pictureBytes(view.Picture(of))
	d.downloadAs(view.PictureName(of), media, bytes)
}
