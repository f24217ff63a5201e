package wait_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/wait"
)

func sheet(t *testing.T, entry string) *calc.Sheet {
	t.Helper()
	e, problems := link.Read(&wait.Calculator, entry, calc.Habit{})
	require.Empty(t, problems, entry)
	s := wait.Calculator.Solve(e)
	require.Empty(t, s.Problems, entry)
	return s
}

// A countdown can be started from a waiting time, but not from one that is only a floor: a rapid binder colder
// than its bag's temperature (design.md, Judgements: rapid binders take the bag's own times).
func TestCountdown(t *testing.T) {
	for entry, want := range map[string]bool{
		"": true,
		"binder=portland&bag_temp=70 F&temp=40 F":              true,
		"binder=rapid&bag_time=4 h&bag_temp=70 F&temp=70 F":    true,
		"binder=rapid&bag_time=4 h&bag_temp=70 F&temp=90 F":    true,
		"binder=rapid&bag_time=4 h&bag_temp=70 F&temp=50 F":    false,
		"binder=rapid&bag_time=9 h&bag_temp=50 F&temp=50 F":    true,
		"binder=rapid&bag_time=9 h&bag_temp=50 F&temp=46.5 F":  true,
		"binder=rapid&bag_time=9 h&bag_temp=50 F&temp=46.39 F": false,
	} {
		a, _ := sheet(t, entry).Answer("time")
		assert.Equal(t, want, a.Waits, entry)
		assert.Equal(t, !want, a.Reads.Msg != "", "a floor is told in words: %s", entry)
	}
}

// Warmer than the bag says that nothing is gained, and colder does not.
func TestWarmer(t *testing.T) {
	warmer := func(entry string) bool {
		return slices.ContainsFunc(sheet(t, entry).Cautions, func(w calc.Caution) bool {
			return strings.HasPrefix(string(w.Says.Msg), "Warmer than the bag")
		})
	}
	assert.True(t, warmer("bag_temp=70 F&temp=75 F"))
	assert.False(t, warmer("bag_temp=70 F&temp=65 F"))
}
