// Package filmed answers how fast a paddle turns from a film of it: so many frames for
// so many turns.
package filmed

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	turning = unit.Both(unit.RPM)
	rate    = unit.Both(unit.FramesRate)
)

var (
	fps = calc.Ask("fps", "f", "Frames a second", rate, unit.PerSecond(5), 2000, "60 fps").
		Usually("30 fps", "60 fps", "120 fps", "240 fps").Helped("The rate at which the phone records, not the one at which it plays a slow film back.")
	frames = calc.Ask("frames", "F", "Frames from mark to mark", unit.Whole1, unit.Count(2), 100_000, "80").
		Helped("Step through the film and count from the frame where the mark passes a fixed point to the frame where it passes there again.")
	turns = calc.Ask("turns", "R", "Turns in those frames", unit.Bare, unit.Number(0.25), 1000, "6").Usually("1", "5", "10")
)

// ceiling is the trade's figure for mortar (source.MixingSpeed).
const ceiling = unit.PerMinute(300)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "filmed", Stage: calc.Mixing, Title: "Film the paddle",
	Asks:   "How fast does the paddle turn, counted from a film of it?",
	Inputs: []*calc.Input{fps.Input, frames.Input, turns.Input},
	Work:   work,
	Origin: "A camera takes its frames at even spaces of time, so frames over the frame rate is the time that passed. Turns over that time is the speed; one frame more or less is the doubt that is shown.",
	Memory: []words.Msg{
		"Wrap one strip of bright tape on the shaft or one blade: a paddle of two like blades looks the same every half turn.",
		"Film from above in good light, so that the mark does not smear, with a fixed edge in the picture to count against.",
		"Film the paddle in the mix, not in the air: a drill slows under load.",
		"Count ten turns rather than one: the error of a frame is then shared by ten.",
		"Mark the trigger or set the dial where the speed is right, so that you need not film it again.",
	},
}

// Speed is the turns a minute from a film. By definition.
func Speed(fps unit.PerSecond, frames unit.Count, turns unit.Number) unit.PerMinute {
	return unit.PerMinute(60 * float64(fps) * float64(turns) / float64(frames))
}

// Backwards is the slowest other speed at which one mark stands in the same places on the
// film, seen to turn backwards: it falls short of a whole turn a frame by as much as it
// seems to turn. Source: source.Stroboscope.
func Backwards(fps unit.PerSecond, speed unit.PerMinute) unit.PerMinute {
	return unit.PerMinute(60*fps) - speed
}

// Forwards is the next such speed, seen to turn the right way: a whole turn a frame more
// than it seems to turn. Source: source.Stroboscope.
func Forwards(fps unit.PerSecond, speed unit.PerMinute) unit.PerMinute {
	return unit.PerMinute(60*fps) + speed
}

// Marks is how many like marks or blades a paddle may have before the film can no longer
// tell them apart: more than two frames must fall between one and the next. Source: source.Stroboscope;
// the factor two is the sampling theorem.
func Marks(frames unit.Count, turns unit.Number) unit.Number {
	return unit.Number(float64(frames) / float64(turns) / 2)
}

func work(e calc.Entry, s *calc.Sheet) {
	f, F, R := fps.Of(e), frames.Of(e), turns.Of(e)
	if Marks(F, R) <= 1 {
		s.Refuse("frames", "Frames from mark to mark: read {frames} for {turns} turns. Fewer than two frames a turn cannot tell how often, or which way, the mark went round. Film at more frames a second.",
			frames.Is("frames", F), turns.Is("turns", R))
		return
	}
	at := found{speed: Speed(f, F, R), low: Speed(f, F+1, R), high: Speed(f, F-1, R)}
	calc.Gives(s, "speed", "The paddle turns at", at.speed, turning).
		Between(float64(at.low), float64(at.high), words.Say("One frame more or less in the count.")).First()
	steps(s, e, at)
	cautions(s, e, at)
	s.Drawing = drawing(at, unit.Number(float64(F)/float64(R)))
}

// found is the speed, and what one frame more or less in the count makes of it.
type found struct{ speed, low, high unit.PerMinute }
