package jsontext_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/jsontext"
)

// A string is read as Go's own library reads it, and what is refused beyond it is half a surrogate pair or no UTF-8.
func TestStringsAgainstGo(t *testing.T) {
	for _, c := range []struct {
		text  string
		fault jsontext.Fault
		at    int
	}{
		{`"plain é 🧱"`, jsontext.None, 0},
		{`"\"\\\/\b\f\n\r\t\u00E9\ud83e\uddf1"`, jsontext.None, 0},
		{`""`, jsontext.None, 0},
		{`"ab`, jsontext.Open, 3},
		{"\"ab\n\"", jsontext.Open, 3},
		{`"ab\x"`, jsontext.Escape, 3},
		{`"ab\`, jsontext.Escape, 3},
		{`"\u12"`, jsontext.Escape, 1},
		{`"a\ud83e\n"`, jsontext.Escape, 2},
		{`"a\uddf1"`, jsontext.Escape, 2},
		{"\"a\xff\"", jsontext.Bytes, 2},
	} {
		s := jsontext.Scanner{Text: c.text}
		got, fault := s.Quoted()
		assert.Equal(t, c.fault, fault, c.text)
		var want string
		err := json.Unmarshal([]byte(c.text), &want)
		if c.fault != jsontext.None {
			assert.Equal(t, c.at, s.At, c.text)
			assert.Equal(t, strings.ContainsRune(want, '\ufffd'), err == nil, c.text)
			continue
		}
		require.NoError(t, err)
		assert.Equal(t, want, got)
		assert.Len(t, c.text, s.At)
	}
}

func TestLinesAreCounted(t *testing.T) {
	s := jsontext.Scanner{Text: " \r\n\n\t["}
	s.Space()
	assert.Equal(t, 3, s.Line())
	assert.True(t, s.Take('['))
	assert.Zero(t, s.Peek())
}
