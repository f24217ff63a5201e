package filmed_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/filmed"
	"setbook/calc/unit"
)

// Sixty turns a second seen by 61 flashes a second seem to turn backwards once a second, by 59 forwards
// once a second, and by 60 to stand still (Science on Stage, stroboscopic effect, 2022). The last row is a thousand
// turns a minute seen 1,005 times a minute: five backwards, by the same rule.
func TestSpeedsThatLookTheSame(t *testing.T) {
	assert.InDelta(t, 3600, float64(filmed.Backwards(61, 60)), 1e-9)
	assert.InDelta(t, 3600, float64(filmed.Forwards(59, 60)), 1e-9)
	assert.InDelta(t, 3600, float64(filmed.Forwards(60, 0)), 1e-9)
	assert.InDelta(t, 1000, float64(filmed.Backwards(1005.0/60, 5)), 1e-9)
}

// The place of a mark in each frame is the same, give or take whole turns, for a speed and for those that look
// the same, the one seen backwards taken with its sign.
func TestMarkStandsWhereItStood(t *testing.T) {
	const fps, speed = unit.PerSecond(60), unit.PerMinute(270)
	for frame := range 200 {
		turns := func(n unit.PerMinute) float64 { return float64(n) / 60 * float64(frame) / float64(fps) }
		assert.InDelta(t, float64(frame), turns(filmed.Forwards(fps, speed))-turns(speed), 1e-9)
		assert.InDelta(t, float64(frame), turns(filmed.Backwards(fps, speed))+turns(speed), 1e-9)
	}
}
