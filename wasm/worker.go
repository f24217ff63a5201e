//go:build js && wasm

package main

import (
	"strconv"
	"syscall/js"
	"time"

	"setbook/calc/all"
	"setbook/calc/page"
	"setbook/calc/words"
)

// breath is how long a work goes on before it lets the worker hear whether it is to be stopped.
const breath = 40 * time.Millisecond

// helper is the program where it runs as a worker beside a page. It does one work at a time.
type helper struct {
	guard
	page.Aside
	stop, drop bool
	breathed   time.Time
}

// besidePage reports whether this is a worker and no page.
func besidePage() bool { return !js.Global().Get("document").Truthy() }

// serve does what the page asks for. Each message, either way, is a list of texts, the first of which says what it is.
func serve() {
	h := &helper{Aside: page.Aside{Language: words.English, Find: all.ByID}}
	if text := js.Global().Get("setbookWords"); text.Type() == js.TypeString {
		h.Language = words.Read(js.Global().Get("setbookLanguage").String(), text.String())
	}
	h.tell = func() { post(js.Global(), "fault") }
	js.Global().Call("addEventListener", "message", h.callback(nil, func(e js.Value) {
		message := texts(e.Get("data"))
		if len(message) == 0 {
			return
		}
		switch message[0] {
		case "work":
			h.stop, h.drop, h.breathed = false, false, time.Now()
			go h.run(nil, func() { h.work(message[1:]) })
		case "drop":
			h.stop, h.drop = true, true
		case "stop":
			h.stop = true
		}
	}))
	post(js.Global(), "ready")
}

// work answers one question. It runs beside the messages, which are heard whenever it breathes.
func (h *helper) work(ask []string) {
	answer := h.Answer(ask, func(done, of int) bool {
		if now := time.Now(); now.Sub(h.breathed) > breath {
			post(js.Global(), "going", strconv.Itoa(done), strconv.Itoa(of))
			time.Sleep(time.Millisecond)
			h.breathed = time.Now()
		}
		return !h.stop
	})
	if h.drop {
		h.Forget(ask[1])
	}
	post(js.Global(), append([]string{"done"}, answer...)...)
}

// texts reads a message.
func texts(list js.Value) []string {
	if list.Type() != js.TypeObject {
		return nil
	}
	all := make([]string, list.Length())
	for i := range all {
		all[i] = list.Index(i).String()
	}
	return all
}

// post sends a message.
func post(to js.Value, message ...string) {
	list := make([]any, len(message))
	for i, text := range message {
		list[i] = text
	}
	to.Call("postMessage", list)
}
