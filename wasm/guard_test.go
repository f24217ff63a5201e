//go:build js && wasm

package main

import (
	"errors"
	"strings"
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// console catches what is reported while a test runs.
func console(t *testing.T) *[]string {
	var lines []string
	catch := js.FuncOf(func(_ js.Value, args []js.Value) any {
		lines = append(lines, args[0].String())
		return nil
	})
	old := js.Global().Get("console").Get("error")
	js.Global().Get("console").Set("error", catch)
	t.Cleanup(func() {
		js.Global().Get("console").Set("error", old)
		catch.Release()
	})
	return &lines
}

func TestAHandlerThatPanicsIsToldAndTheNextOneRuns(t *testing.T) {
	var none map[string]int
	faults := map[string]func(){
		"an error":        func() { panic(errors.New("planted")) },
		"a string":        func() { panic("planted") },
		"something else":  func() { panic(7) },
		"the runtime":     func() { none["x"] = 1 },
		"past an end":     func() { _ = []int{}[len(none)] },
		"a wrong js type": func() { js.ValueOf("text").Call("nothing") },
	}
	for name, fault := range faults {
		t.Run(name, func(t *testing.T) {
			lines := console(t)
			told, spoiled, worked := 0, 0, 0
			g := guard{tell: func() { told++ }}
			bad := g.callback(func() { spoiled++ }, func(js.Value) { fault() })
			defer bad.Release()
			good := g.callback(nil, func(v js.Value) { worked += v.Int() })
			defer good.Release()

			bad.Invoke() // called as the browser calls it: through JavaScript
			good.Invoke(2)
			bad.Invoke()
			good.Invoke(3)

			assert.Equal(t, 2, told, "each fault is told")
			assert.Equal(t, 2, spoiled, "each fault marks the answers")
			assert.Equal(t, 5, worked, "handlers go on working between and after faults")
			require.Len(t, *lines, 2)
			assert.True(t, strings.HasPrefix((*lines)[0], "setbook: "), (*lines)[0])
		})
	}
}

func TestAFaultWhileAFaultIsToldEndsNothing(t *testing.T) {
	lines := console(t)
	told := false
	g := guard{tell: func() { told = true; panic("telling") }}
	assert.NotPanics(t, func() { g.run(func() { panic("marking") }, func() { panic("first") }) })
	assert.True(t, told, "a fault in marking does not keep the person from being told")
	assert.Len(t, *lines, 3)
}

func TestWhatRunsWellTellsNothing(t *testing.T) {
	g := guard{tell: func() { t.Error("told of a fault that was none") }}
	ran := false
	g.run(func() { t.Error("marked") }, func() { ran = true })
	assert.True(t, ran)
}

func TestPromisesThatAreKeptAndRefused(t *testing.T) {
	g := guard{tell: func() { t.Error("a refusal is no fault") }}
	promise := js.Global().Get("Promise")
	heard := make(chan string, 3)
	g.then(promise.Call("resolve", "kept"), func(v js.Value) { heard <- v.String() }, func() { heard <- "wrong" })
	assert.Equal(t, "kept", <-heard)
	g.then(promise.Call("reject", "no"), func(js.Value) { heard <- "wrong" }, func() { heard <- "refused" })
	assert.Equal(t, "refused", <-heard)
	g.then(promise.Call("reject", "no"), nil, nil) // node ends the process where a refusal is left unhandled
	done := make(chan bool)
	g.later(1, func() { done <- true })
	<-done
}

func TestTryTellsWhetherTheBrowserThrew(t *testing.T) {
	assert.True(t, try(func() { js.Global().Get("Object").New() }))
	assert.False(t, try(func() { js.Global().Get("JSON").Call("parse", "{") }))
	assert.Panics(t, func() { try(func() { panic("planted") }) }, "a fault of our own is not hidden")
}
