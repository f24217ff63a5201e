//go:build js && wasm

package main

import (
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/assert"
	"setbook/calc/unit"
)

func TestTheDecimalMarkIsThatOfTheBrowser(t *testing.T) {
	number := js.Global().Get("Number").Get("prototype")
	old := number.Get("toLocaleString")
	t.Cleanup(func() { number.Set("toLocaleString", old) })
	for shown, want := range map[string]byte{"1.1": '.', "1,1": ',', "١٫١": '.'} {
		number.Set("toLocaleString", js.Global().Get("Function").New("return '"+shown+"'"))
		assert.Equal(t, want, decimal(), shown)
	}
}

func TestThePageIsServedForTheReaderThatTheProgramExpects(t *testing.T) {
	assert.Equal(t, unit.US, served.Style.System)
	assert.EqualValues(t, '.', served.Style.Decimal)
	assert.Equal(t, "en", served.Language.Tag)
}

func TestAForbiddenPropertyIsAPanicThatCanBeRecovered(t *testing.T) {
	property(t, "localStorage", "{get() { throw new Error('SecurityError') }}")
	assert.False(t, try(func() { global("localStorage").Call("setItem", "a", "b") }))
}
