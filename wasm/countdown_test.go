//go:build js && wasm

package main

import (
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"setbook/calc/countdown"
)

// inZone carries the phone into a zone of the IANA data for the length of a test.
func inZone(t *testing.T, name string) {
	env := js.Global().Get("process").Get("env")
	old := env.Get("TZ")
	env.Set("TZ", name)
	t.Cleanup(func() {
		if old.IsUndefined() {
			js.Global().Get("Reflect").Call("deleteProperty", env, "TZ")
			return
		}
		env.Set("TZ", old)
	})
}

// The offset is the one in force at the instant that is asked about, not the one of today. The offsets are those of
// the zones' own laws: New York four hours behind in July and five in January, Kathmandu 5 h 45 min ahead.
func TestTheOffsetIsThatOfTheInstant(t *testing.T) {
	const january, july countdown.Instant = 1_768_478_400_000, 1_784_116_800_000 // the 15th at noon UTC, 2026
	inZone(t, "America/New_York")
	assert.Equal(t, 300.0, west(january))
	assert.Equal(t, 240.0, west(july))
	inZone(t, "Asia/Kathmandu")
	assert.Equal(t, -345.0, west(july))
}

func TestAnIDIsFitToBeKeptAndComesOnce(t *testing.T) {
	seen := map[string]bool{}
	for range 1000 {
		id := fresh(now())
		_, ok := countdown.Begin(id, "x", "wait", "", now(), 1)
		require.True(t, ok, id)
		require.False(t, seen[id])
		seen[id] = true
	}
}

func TestNowIsTheBrowsersClock(t *testing.T) {
	date := js.Global().Get("Date")
	old := date.Get("now")
	t.Cleanup(func() { date.Set("now", old) })
	date.Set("now", js.Global().Get("Function").New("return 1781252000123"))
	assert.EqualValues(t, 1_781_252_000_123, now())
}
