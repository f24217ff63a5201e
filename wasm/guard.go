//go:build js && wasm

package main

import (
	"syscall/js"

	"honnef.co/go/js/dom/v2"
)

// guard stands between the browser and every function that it calls. A panic that
// leaves such a function ends the Go program, and with it every answer until the
// page is loaded again; so the guard recovers it, and tell says on the page that
// something failed.
type guard struct{ tell func() }

// run does one thing. Where it panics, spoil (which may be nil) marks what can no
// longer be relied on, and the person is told. Both are guarded in their turn.
func (g guard) run(spoil, do func()) {
	defer func() {
		fault := recover()
		if fault == nil {
			return
		}
		switch f := fault.(type) {
		case error:
			report(f.Error())
		case string:
			report(f)
		default:
			report("panic with neither an error nor a string")
		}
		quietly(spoil)
		quietly(g.tell)
	}()
	do()
}

// quietly does one more thing after a fault, which must not raise a second one.
func quietly(do func()) {
	defer func() {
		if recover() != nil {
			report("a second fault, while the first was told")
		}
	}()
	if do != nil {
		do()
	}
}

// report leaves a trace for whoever looks into the console.
func report(text string) { js.Global().Get("console").Call("error", "setbook: "+text) }

// callback makes a function that the browser may call. The signature is that of
// syscall/js; this is the only place that meets it.
func (g guard) callback(spoil func(), do func(js.Value)) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any {
		var first js.Value
		if len(args) > 0 {
			first = args[0]
		}
		g.run(spoil, func() { do(first) })
		return nil
	})
}

// on listens to an event for as long as the page lives. The binding's own
// AddEventListener compares each event with some fifty constructors to give it a
// type; at one event a key that is time in the way of the answer.
func (g guard) on(target js.Value, event string, spoil func(), do func(*dom.BasicEvent)) {
	target.Call("addEventListener", event, g.callback(spoil, func(v js.Value) { do(&dom.BasicEvent{Value: v}) }))
}

// then waits for a promise. Either function may be nil; a refusal is never left
// unhandled.
func (g guard) then(promise js.Value, ok func(js.Value), refused func()) {
	var kept, broken js.Func
	release := func() { kept.Release(); broken.Release() }
	kept = g.callback(nil, func(v js.Value) {
		defer release()
		if ok != nil {
			ok(v)
		}
	})
	broken = g.callback(nil, func(js.Value) {
		defer release()
		if refused != nil {
			refused()
		}
	})
	promise.Call("then", kept, broken)
}

// later does something when the browser has had time for its own work.
func (g guard) later(milliseconds int, do func()) {
	var once js.Func
	once = g.callback(nil, func(js.Value) {
		defer once.Release()
		do()
	})
	js.Global().Call("setTimeout", once, milliseconds)
}

// try reports whether a call into the browser went through. Where storage is forbidden it
// throws, which is a state of the browser and no fault. A fault of our own goes on its way.
func try(do func()) (ok bool) {
	defer func() {
		fault := recover()
		if _, thrown := fault.(js.Error); fault != nil && !thrown {
			panic(fault)
		}
		ok = fault == nil
	}()
	do()
	return
}

// global reads a property of the browser's global object that may throw instead of
// being read, as localStorage and indexedDB do where they are forbidden. js.Value.Get lets
// such an exception through, which ends the Go program; a call turns it into a panic.
func global(name string) js.Value {
	return js.Global().Get("Reflect").Call("get", js.Global(), name)
}
