//go:build js && wasm

package main

import (
	"strconv"
	"syscall/js"

	"setbook/calc/countdown"
	"setbook/calc/words"
)

const (
	awakeOn      words.Msg = "The screen stays on while this page is in sight and a countdown runs. It costs battery."
	awakeAbsent  words.Msg = "This browser cannot keep the screen on."
	awakeRefused words.Msg = "The browser would not keep the screen on. A low battery is often the reason."
	notifyOn     words.Msg = "A notice will show when a countdown ends, while a page of this book is open. Once it is closed, only the calendar file rings."
	notifyAbsent words.Msg = "This browser cannot show a notice from this page. The calendar file rings."
	notifyNo     words.Msg = "Notices are not allowed here. They can be allowed in the browser’s settings for this site. The calendar file rings without."
)

// asked is what the person asked of the phone for the countdowns.
type asked struct {
	awake, notify bool
	asking        bool     // for the screen, and not answered yet
	lock          js.Value // what holds the screen
}

// Choices are remembered: the screen until the browser's tab is closed, notices for good.
const (
	awakeKey  = "setbook.awake"
	notifyKey = "setbook.notify"
)

// recall takes up what was asked on the page before.
func (d *desk) recall() {
	a := &d.board.ask
	yes := js.ValueOf("true")
	try(func() { a.awake = global("sessionStorage").Call("getItem", awakeKey).Equal(yes) })
	try(func() { a.notify = global("localStorage").Call("getItem", notifyKey).Equal(yes) && allowed() })
	d.showAsked("")
}

// showAsked shows which choices hold, remembers them, and says something about the last one.
func (d *desk) showAsked(m words.Msg) {
	b := &d.board
	b.choose("awake", "sessionStorage", awakeKey, b.ask.awake)
	b.choose("notify", "localStorage", notifyKey, b.ask.notify)
	b.say("asked", say(m))
}

func (b *board) choose(do, storage, key string, on bool) {
	value := strconv.FormatBool(on)
	if button, ok := find(b.root.Underlying(), `[data-count-do="`+do+`"]`); ok {
		button.SetAttribute("aria-pressed", value)
	}
	try(func() { global(storage).Call("setItem", key, value) }) // where nothing can be kept, it holds for this page
}

func (d *desk) toggleAwake() {
	a := &d.board.ask
	a.awake = !a.awake
	if a.awake {
		d.showAsked(awakeOn)
	} else {
		d.showAsked("")
	}
	d.keepAwake()
}

// keepAwake holds the screen on while that is asked for and a countdown runs, and lets it go where not. The browser lets go by
// itself whenever the page leaves sight, so it is asked again (Screen Wake Lock, W3C).
func (d *desk) keepAwake() {
	a := &d.board.ask
	held := a.lock.Truthy() && !a.lock.Get("released").Bool()
	wanted := a.awake && len(d.board.Running()) > 0
	switch {
	case wanted == held || a.asking:
	case held:
		d.then(a.lock.Call("release"), nil, nil)
		a.lock = js.Undefined()
	case !js.Global().Get("navigator").Get("wakeLock").Truthy():
		a.awake = false
		d.showAsked(awakeAbsent)
	default:
		a.asking = true
		d.then(js.Global().Get("navigator").Get("wakeLock").Call("request", "screen"), func(lock js.Value) {
			a.asking, a.lock = false, lock
			d.keepAwake() // it may not be wanted any more
		}, func() {
			a.asking = false
			if visible() { // a page that left sight meanwhile asks again when it is back
				a.awake = false
				d.showAsked(awakeRefused)
			}
		})
	}
}

// worker is the browser's side that shows notices; a page from a plain http address has none.
func worker() js.Value { return js.Global().Get("navigator").Get("serviceWorker") }

// allowed reports whether the phone's owner lets this site show notices.
func allowed() bool {
	n := js.Global().Get("Notification")
	return n.Truthy() && n.Get("permission").String() == "granted"
}

// toggleNotify asks for notices, which a browser takes only from a press.
func (d *desk) toggleNotify() {
	a, n := &d.board.ask, js.Global().Get("Notification")
	switch {
	case a.notify:
		a.notify = false
		d.showAsked("")
	case !n.Truthy() || !worker().Truthy():
		d.showAsked(notifyAbsent)
	default:
		d.then(n.Call("requestPermission"), func(js.Value) {
			a.notify = allowed()
			if a.notify {
				d.showAsked(notifyOn)
			} else {
				d.showAsked(notifyNo)
			}
		}, func() { d.showAsked(notifyNo) })
	}
}

// notify shows the phone's own notice that a countdown is done. Every open page tries: the tag makes one notice of them.
func (d *desk) notify(c *countdown.Countdown) {
	a := &d.board.ask
	if !a.notify || !worker().Truthy() {
		return
	}
	if !allowed() {
		a.notify = false
		d.showAsked(notifyNo)
		return
	}
	title := d.board.Over(c)
	d.then(worker().Get("ready"), func(registration js.Value) {
		d.then(registration.Call("showNotification", title, map[string]any{"tag": c.ID, "requireInteraction": true}), nil, nil)
	}, nil)
}
