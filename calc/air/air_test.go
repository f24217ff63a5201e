package air_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/air"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Each way of measuring wrongly is refused in its own words, so that the setter knows what to check.
func TestRefusals(t *testing.T) {
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	for full, want := range map[string]string{
		"500 g":  "no more than the empty cup, 500 g",
		"400 g":  "no more than the empty cup, 500 g",
		"600 g":  "that would be 95 % of air",
		"2510 g": "heavier than the mix could be with no air at all, 2 kg/L",
	} {
		e, problems := air.Calculator.Read(calc.Texts{"cup": "1 L", "empty": "500 g", "full": full,
			"powder": "2 kg", "powder_density": "2.5 kg/L", "liquid": "0.4 kg", "liquid_density": "1 kg/L"}, calc.Habit{})
		require.Empty(t, problems)
		s := air.Calculator.Solve(e)
		require.Len(t, s.Problems, 1, full)
		assert.Equal(t, "full", s.Problems[0].Key)
		assert.Contains(t, r.Line(s.Problems[0].Says), want, full)
	}
}
