package sun_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/sun"
	"setbook/calc/words"
)

// The astral library's tests have the sun of 5 June 2019 at 69.6 N not set; in December, as far south, it does
// not rise there. A time of day would mislead, so words stand for it.
func TestPolarReads(t *testing.T) {
	for _, c := range []struct{ date, want string }{
		{"2019-06-05", "The sun stays up"},
		{"2019-12-21", "The sun stays down"},
		{"2019-03-21", ""}, // the equinox: it rises and sets everywhere
	} {
		e, problems := link.Read(&sun.Calculator, "latitude=69.6 deg&longitude=18.8 deg&zone=1 h&date="+c.date, calc.Habit{})
		require.Empty(t, problems)
		s := sun.Calculator.Solve(e)
		for _, key := range []string{"rise", "set"} {
			a, ok := s.Answer(key)
			require.True(t, ok)
			assert.Equal(t, c.want, words.Reader{Language: words.English}.Line(a.Reads), "%s on %s", key, c.date)
		}
	}
}
