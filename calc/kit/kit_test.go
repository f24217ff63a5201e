package kit_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/kit"
	"setbook/calc/unit"
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
