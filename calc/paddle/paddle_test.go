package paddle_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/paddle"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// CTEF and NTCA give about 300 rpm: 290 is within it, 310 above it. The side is told in words, because a
// speed below nought can be neither typed nor read.
func TestSideOfTheLimit(t *testing.T) {
	for speed, want := range map[string]struct {
		over  float64
		reads string
		cares bool
	}{
		"290 rpm": {-10, "10 rpm under", false},
		"300 rpm": {0, "just at the limit", false},
		"310 rpm": {10, "10 rpm over", true},
		"900 rpm": {600, "600 rpm over", true},
	} {
		e, problems := paddle.Calculator.Read(calc.Texts{"speed": speed, "limit": "300 rpm"}, calc.Habit{})
		require.Empty(t, problems)
		s := paddle.Calculator.Solve(e)
		a, ok := s.Answer("over")
		require.True(t, ok)
		assert.InDelta(t, want.over, a.Is.Base, 1e-9, speed)
		r := words.Reader{Language: words.English, Style: unit.Style{Decimal: '.'}}
		assert.Equal(t, want.reads, r.Line(a.Reads), speed)
		cares := 0
		for _, c := range s.Cautions {
			if c.Severity == calc.Care {
				cares++
			}
		}
		// Four cares stand for every entry: wrist, current, dust and cement.
		assert.Equal(t, want.cares, cares > 4, speed)
	}
}
