package all_test

import (
	"math/rand/v2"
	"testing"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/calctest"
)

// Every calculator passes the suite of the design.
func TestConform(t *testing.T) {
	for _, c := range all.Calculators() {
		t.Run(c.ID, func(t *testing.T) { t.Parallel(); calctest.Conform(t, c) })
	}
}

// The pages stand in the order of the work, and no id is used twice.
func TestOrder(t *testing.T) {
	var stage calc.Stage
	seen := map[string]bool{}
	for _, c := range all.Calculators() {
		if c.Stage < stage {
			t.Errorf("%s stands after a later stage", c.ID)
		}
		stage = c.Stage
		if seen[c.ID] {
			t.Errorf("%s is listed twice", c.ID)
		}
		seen[c.ID] = true
	}
}

// Any entry within the limits is refused in words or gives a sheet that is finite and holds its arithmetic.
func FuzzWork(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	calculators := all.Calculators()
	f.Fuzz(func(t *testing.T, which, seed uint64) {
		c := calculators[which%uint64(len(calculators))]
		calctest.Entry(t, c, rand.New(rand.NewPCG(seed, which)))
	})
}
