//go:build js && wasm

package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAFragmentIsAnEntryOnlyWhereItHoldsAPair(t *testing.T) {
	cases := map[string]string{
		"":                     "",
		"#":                    "",
		"#page":                "", // the skip link
		"#width=1/2+in":        "width=1/2+in",
		"#v=1&width=1/2+in":    "v=1&width=1/2+in",
		"#nothing=%3Cimg%20x>": "nothing=%3Cimg%20x>",
	}
	for hash, want := range cases {
		t.Run(hash, func(t *testing.T) {
			property(t, "location", "{value: {hash: "+quote(hash)+"}}")
			assert.Equal(t, want, fragment())
		})
	}
}

func quote(text string) string { return "'" + text + "'" }
