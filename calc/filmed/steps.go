package filmed

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// toOne is how many frames hold the speed within one in a hundred: counted one short they are still 100.
const toOne = 101

// turnsToOne is how many turns to count so that a frame either way is no more than one in a hundred.
func turnsToOne(e calc.Entry) unit.Count {
	return unit.Whole(toOne * float64(turns.Of(e)) / float64(frames.Of(e)))
}

func steps(s *calc.Sheet, e calc.Entry, at found) {
	calc.Works(s, "Turns a minute: turns over the seconds that the frames took.",
		"n", at.speed, turning, "60 * f * R / F", source.ByDefinition)
	calc.Works(s, "With one frame more in the count.",
		"n_low", at.low, turning, "60 * f * R / (F + 1)", source.ByDefinition)
	calc.Works(s, "With one frame fewer in the count.",
		"n_high", at.high, turning, "60 * f * R / (F - 1)", source.ByDefinition)
	calc.Works(s, "Turns to count so that one frame is worth no more than one in a hundred.",
		"R_1", turnsToOne(e), unit.Whole1, "ceil(101 * R / F)", source.ByDefinition)
	calc.Works(s, "Like marks or blades that the film can tell apart: fewer than this. More than two frames must fall between one and the next.",
		"m", Marks(frames.Of(e), turns.Of(e)), unit.Bare, "F / R / 2", source.Stroboscope)
	calc.Works(s, "The slowest other speed at which one mark would look the same, seen to turn backwards.",
		"n_back", Backwards(fps.Of(e), at.speed), turning, "60 * f - n", source.Stroboscope)
	calc.Works(s, "The next, seen to turn the right way.",
		"n_on", Forwards(fps.Of(e), at.speed), turning, "60 * f + n", source.Stroboscope)
}

func cautions(s *calc.Sheet, e calc.Entry, at found) {
	top := words.Is("ceiling", ceiling, turning)
	share := words.Is("share", unit.Ratio(ceiling/at.speed), unit.Share)
	switch {
	case at.low > ceiling:
		s.Warn(calc.Care, source.MixingSpeed, "{over} over {ceiling}, the trade's figure for mortar: the mix takes in air. Ease the trigger to {share} of this speed, or take a lower gear.",
			words.Is("over", at.speed-ceiling, turning), top, share)
	case at.high >= ceiling:
		s.Warn(calc.Note, source.MixingSpeed, "One frame decides whether this is over {ceiling}, the trade's figure for mortar. Count more turns.", top)
	default:
		s.Warn(calc.Note, source.MixingSpeed, "{under} under {ceiling}, the trade's figure for mortar. Far too slow leaves lumps.", words.Is("under", ceiling-at.speed, turning), top)
	}
	if more := turnsToOne(e); unit.Number(more) > turns.Of(e) {
		s.Warn(calc.Note, source.ByDefinition, "Count {turns} turns, and one frame is worth no more than one in a hundred.", words.Is("turns", more, unit.Whole1))
	}
	marks := Marks(frames.Of(e), turns.Of(e))
	if marks <= 2 {
		s.Warn(calc.Care, source.Stroboscope, "So few frames a turn hold for a single mark only. Two like blades could be taken for each other, and the speed for another one: film at more frames a second.")
	}
	s.Warn(calc.Note, source.Stroboscope, "A film can lie: it must take more than two frames for each mark that goes by. One that seems to stand still or to turn backwards may be going much faster. With one mark this film could also be of {back}, turning backwards, or of {on}.",
		words.Is("back", Backwards(fps.Of(e), at.speed), turning), words.Is("on", Forwards(fps.Of(e), at.speed), turning))
	s.Warn(calc.Note, source.CommonPractice, "Many phones let the frame rate drift in poor light. Film a clock with a second hand once to see what yours does.")
	s.Warn(calc.Care, source.CommonPractice, "Do not film with one hand and mix with the other: a paddle that bites wrenches the wrist. Have somebody hold the phone, out of the splashes.")
	s.Warn(calc.Care, source.WetCement, "A turning paddle splashes, and wet cement burns eyes and skin. Wear eye protection and gloves, and wash splashes off at once.")
}
