package kit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/kit"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// A scale with the coarsest step that is named puts the ratio out by just the slack at the worst: each
// part may be read half a step high or low, and the ratio may be taken as A to B or as B to A.
func TestCoarsestIsTheWorstOfAllReadings(t *testing.T) {
	for _, parts := range [][2]unit.Mass{{2 * unit.Pound, unit.Pound / 2}, {50 * unit.Gram, 50 * unit.Gram}, {unit.Kilogram, 30 * unit.Gram}, {9 * unit.Gram, 400 * unit.Gram}} {
		for _, slack := range []unit.Ratio{0.005, 0.02, 0.1} {
			a, b := parts[0], parts[1]
			half := kit.Coarsest(a, b, slack) / 2
			worst := 0.0
			for _, da := range []unit.Mass{-half, half} {
				for _, db := range []unit.Mass{-half, half} {
					read := float64((a+da)/(b+db)) * float64(b/a)
					worst = math.Max(worst, math.Max(math.Abs(read-1), math.Abs(1/read-1)))
				}
			}
			assert.InDelta(t, float64(slack), worst, 1e-12, "%v and %v", a, b)
			assert.InDelta(t, worst, float64(kit.Out(a, b, 2*half)), 1e-12, "%v and %v", a, b)
		}
	}
}

// Each split is told of the finest of the usual scales that breaks its ratio. Parts of x and x take steps of
// 0.04 x / 2.02: 1 g at 50.5 g each, 5 g at 252.5 g, 0.1 lb at 5.05 lb.
func TestTheScaleThatBreaks(t *testing.T) {
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	for need, want := range map[string]string{
		"90 g":    "even a scale in 1 g steps",
		"110 g":   "A kitchen scale in 5 g steps",
		"520 g":   "A platform scale in 0.1 lb steps",
		"10.2 lb": "A platform scale in 50 g steps",
		"5.1 kg":  "Any scale in steps of 50 g or finer",
		"20 kg":   "This is a whole number of kits, 2",
	} {
		e, problems := kit.Calculator.Read(calc.Texts{"part_a": "5 kg", "part_b": "5 kg", "need": need}, calc.Habit{})
		require.Empty(t, problems)
		s := kit.Calculator.Solve(e)
		require.NotEmpty(t, s.Cautions)
		assert.Contains(t, r.Line(s.Cautions[0].Says), want, need)
	}
}
