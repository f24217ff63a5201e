package movement_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/movement"
)

// Six modules of 24 in are 12 ft, and the movement joint is wider than a grout joint, so its centres stand more than
// 12 ft apart (hand calculation). The sheet says so there, and not where five modules are asked for.
func TestCentresNote(t *testing.T) {
	for entry, told := range map[string]bool{"span=12 ft": true, "span=10 ft": false, "span=12 ft&joint=2 in": false} {
		e, problems := link.Read(&movement.Calculator, entry, calc.Habit{})
		require.Empty(t, problems)
		found := false
		for _, c := range movement.Calculator.Solve(e).Cautions {
			for _, a := range c.Says.With {
				found = found || a.Name == "centres"
			}
		}
		assert.Equal(t, told, found, entry)
	}
}
