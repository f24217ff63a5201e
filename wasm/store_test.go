//go:build js && wasm

package main

import (
	"context"
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// property stands in for a property of the browser's global object, made from an
// expression of JavaScript that describes it.
func property(t *testing.T, name, descriptor string) {
	object := js.Global().Get("Object")
	made := js.Global().Get("Function").New("return " + descriptor).Invoke()
	made.Set("configurable", true)
	require.True(t, js.Global().Get(name).IsUndefined(), "node has no "+name+" of its own")
	object.Call("defineProperty", js.Global(), name, made)
	t.Cleanup(func() { js.Global().Get("Reflect").Call("deleteProperty", js.Global(), name) })
}

func TestABrowserThatKeepsNothingIsAStateAndNoPanic(t *testing.T) {
	cases := map[string]string{
		"missing":            "",
		"undefined":          "{value: undefined}",
		"null":               "{value: null}",
		"forbidden":          "{get() { throw new Error('SecurityError') }}",
		"open throws":        "{value: {open() { throw new Error('SecurityError') }}}",
		"open gives nothing": "{value: {open() {}}}",
	}
	for name, descriptor := range cases {
		t.Run(name, func(t *testing.T) {
			if descriptor != "" {
				property(t, "indexedDB", descriptor)
			}
			opened, err := openStore(context.Background())
			assert.Error(t, err)
			assert.Nil(t, opened)
		})
	}
}
