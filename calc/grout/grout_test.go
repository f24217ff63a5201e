package grout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/grout"
	"setbook/calc/unit"
)

// The British rule is a sentence of a note, not an answer, so the rows of testdata cannot reach it.
// NHBC Standards, January 2025, 9.1.7: 1 mm for joints up to 6 mm, 2 mm above.
func TestBritishLippage(t *testing.T) {
	for joint, want := range map[unit.Length]unit.Length{5: 1, 6: 1, 7: 2} {
		assert.Equal(t, want*unit.Millimetre, grout.BritishLippage(joint*unit.Millimetre), "joint of %v mm", float64(joint))
	}
}
