package slope_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/slope"
	"setbook/calc/source"
)

func sheet(t *testing.T, entry string) *calc.Sheet {
	t.Helper()
	e, problems := link.Read(&slope.Calculator, entry, calc.Habit{})
	assert.Empty(t, problems, entry)
	return slope.Calculator.Solve(e)
}

// Steeper than 1:12 is warned of as a ramp that is too steep, and not before: 2010 ADA Standards, 405.2.
func TestRamp(t *testing.T) {
	ramp := func(entry string) bool {
		return slices.ContainsFunc(sheet(t, entry).Cautions, func(w calc.Caution) bool { return w.Cite == source.RampSlope })
	}
	assert.False(t, ramp("drop=1 in&run=1 ft"), "exactly 1:12 is a ramp that is allowed")
	assert.True(t, ramp("drop=1.001 in&run=1 ft"))
	assert.True(t, ramp("drop=1/4 in&run=1 ft&cross=-1.001 in"), "either way")
}

// A fall towards the building is told as such, not as one that is too small: what "away" means (IBC 1804.3).
func TestTowards(t *testing.T) {
	first := sheet(t, "drop=-1 mm&run=1 m").Cautions[0]
	assert.Equal(t, calc.Stop, first.Severity)
	assert.True(t, strings.Contains(string(first.Says.Msg), "towards the building"), first.Says.Msg)
	first = sheet(t, "drop=1 mm&run=1 m").Cautions[0]
	assert.Equal(t, calc.Stop, first.Severity)
	assert.False(t, strings.Contains(string(first.Says.Msg), "towards the building"), first.Says.Msg)
}
