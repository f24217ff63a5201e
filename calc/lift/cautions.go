package lift

import (
	"math"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func cautions(s *calc.Sheet, e calc.Entry, m multipliers, limit unit.Mass, index unit.Number) {
	refusals(s, e, m)
	switch {
	case limit == 0:
	case index > 1+1e-9:
		s.Warn(calc.Stop, source.LiftingIndex, "{mass} is {index} times the limit for one person. Do not lift it like this: bring it nearer and higher, use a lifter or a trolley, or take a second person.",
			mass.Is("mass", mass.Of(e)), words.Is("index", index, unit.Bare))
	case math.Abs(float64(index)-1) <= 1e-9:
		s.Warn(calc.Care, source.LiftingIndex, "The load is at its limit to the hair. The manual is of two minds about that: its goal is 1.0 or less, and its glossary calls 1.0 a hazard.")
	}
	if index > 3 {
		s.Warn(calc.Care, source.LiftingIndex, "Past 3 some experts expect many people to be hurt. That is their view, not a limit of NIOSH.")
	}
	if limit > 0 {
		s.Warn(calc.Care, source.TeamLift, "Two people lift about two thirds of the sum, not twice as much: {two} here, if the other's limit is the same. A rule of thumb from other guidance: shares are never equal, steps and slopes make it worse, and the limit itself is not made for teams.",
			words.Is("two", Pair(limit, limit), unit.PoundKg))
	}
	s.Warn(calc.Care, source.LiftingLimits, "The method is for standing, two-handed lifts of up to 8 h a day. It is not for kneeling or sitting, nor for one hand.")
	s.Warn(calc.Care, source.LiftingLimitsMore, "Nor is it for hot or cold work, cramped places, loads that shift, slippery ground, carrying, pushing and pulling, or teams. On a summer patio its limit is too high.")
	s.Warn(calc.Care, source.GroundWork, "A paver is set kneeling or stooping, where a person can lift less than this says. Use a lifter with a long handle, or two people.")
	s.Warn(calc.Note, source.LiftingTables, "A bare paver is a poor grip: wide, sharp-edged, and held in gloves. In doubt take the worse.")
	s.Warn(calc.Note, source.LiftingTables, "A paver is placed with care, so the lift counts at both ends: work it again with reach and height where it is set down. The lower limit governs.")
	s.Warn(calc.Note, source.LiftingRecovery, "Up to 1 h of lifting wants as long of light work after it, up to 2 h 0.3 times as long. Without that, add the spells and enter the sum.")
	s.Warn(calc.Note, source.LiftingEquation, "Worked by the manual's form in inches and pounds. Its metric form rounds the constants and gives up to about 4 % less.")
	s.Warn(calc.Care, source.CommonPractice, "An index of 1 or less is a goal for most healthy people, not a promise for anybody. Heat, dust and a tired crew come on top. Mind fingers, toes and edges.")
}

// refusals warn of each multiplier that is nought, for which the method accepts no load at all.
func refusals(s *calc.Sheet, e calc.Entry, m multipliers) {
	if m.h == 0 {
		s.Warn(calc.Stop, source.LiftingEquation, "A reach of {reach} is past {most}. No load is acceptable by this method: bring it nearer.", reach.Is("reach", reach.Of(e)), words.Both("most", farthest, inchCM))
	}
	if m.v == 0 {
		s.Warn(calc.Stop, source.LiftingEquation, "Hands at {height} are past {most}. No load is acceptable by this method: lower it.", height.Is("height", height.Of(e)), words.Both("most", highest, inchCM))
	}
	if m.d == 0 {
		s.Warn(calc.Stop, source.LiftingEquation, "A travel of {travel} is past {most}. No load is acceptable by this method: lift in two stages.", travel.Is("travel", travel.Of(e)), words.Both("most", highest, inchCM))
	}
	if m.a == 0 {
		s.Warn(calc.Stop, source.LiftingEquation, "A turn of {turn} is past {most}. No load is acceptable by this method: turn with the feet.", turn.Is("turn", turn.Of(e)), words.Is("most", widest, unit.Arc))
	}
	if m.f == 0 {
		s.Warn(calc.Stop, source.LiftingTables, "{rate} over {hours} is too often. No load is acceptable by this method: lift slower, or change over.", rate.Is("rate", rate.Of(e)), hours.Is("hours", hours.Of(e)))
	}
}
