// Package paddle answers how far a drill is over or under the mixing speed, how far
// its trigger may be pulled, and how fast the paddle's tip goes.
package paddle

import (
	"math"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	turning = unit.Both(unit.RPM)
	running = unit.In(unit.FeetPerSecond, unit.MetresPerSecond)
)

var (
	speed = calc.Ask("speed", "n", "Speed of the drill, trigger full", turning, unit.PerMinute(20), 3000, "450 rpm").
		Usually("280 rpm", "450 rpm", "600 rpm").Helped("From the drill's plate, in the gear that you use, or film it: see Film the paddle.")
	diameter = calc.Ask("diameter", "D", "Diameter of the paddle", unit.InchMM, 30*unit.Millimetre, 400*unit.Millimetre, "4 3/4 in").
			Usually("4 in", "4 3/4 in", "5 1/2 in", "120 mm", "140 mm")
	limit = calc.Ask("limit", "n_max", "Fastest that the mix allows", turning, unit.PerMinute(50), 1500, "300 rpm").
		Usually("150 rpm", "300 rpm").Helped("On the bag. About 300 rpm is the trade's figure for mortar.")
)

// slipping is the share of the trigger's travel below which few hands hold a speed: common practice.
const slipping = 50 * unit.Percent

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "paddle", Stage: calc.Mixing, Title: "Speed of the paddle",
	Asks:   "Is this drill too fast for the mix, by how much, and how far may the trigger be pulled?",
	Inputs: []*calc.Input{speed.Input, diameter.Input, limit.Input},
	Work:   work,
	Origin: "In one turn the tip of the paddle goes once round its circle, which is pi times the diameter. Speed is that way times the turns in each second.",
	Memory: []words.Msg{
		"Low gear for mortar. Many drills start at 450 rpm, and a hammer drill in its fast gear at 1,000 and more.",
		"A spiral that lifts from the bottom entrains less air than one that pulls down. Turned the wrong way round it does the opposite.",
		"Keep the paddle under the surface while it turns: a vortex drags air in. Stop before lifting it out.",
		"Scrape the walls and the bottom, let the mix slake as the bag says, and mix again for a short while.",
		"Mix about as long as the bag says. Too short leaves lumps, too long and too fast leaves foam.",
	},
}

// Tip is the speed of the outer edge of the paddle. Source: source.TipSpeed.
func Tip(diameter unit.Length, turns unit.PerMinute) unit.Speed {
	return unit.Speed(math.Pi * float64(diameter) / 1e6 * float64(turns) / 60)
}

// Over is how far a speed lies above the limit, below nought where it lies under it. By definition.
func Over(speed, limit unit.PerMinute) unit.PerMinute { return speed - limit }

// Trigger is the share of its full speed at which a drill turns at the limit, all of
// it where the drill is no faster. By definition; a trigger's travel follows its
// speed only roughly.
func Trigger(speed, limit unit.PerMinute) unit.Ratio { return min(unit.Ratio(limit/speed), 1) }

func work(e calc.Entry, s *calc.Sheet) {
	n, top := speed.Of(e), limit.Of(e)
	tip, over, trigger := Tip(diameter.Of(e), n), Over(n, top), Trigger(n, top)

	calc.Gives(s, "over", "Against the limit", over, turning).Says(stands(over)).First()
	calc.Gives(s, "trigger", "Trigger, of full speed", trigger, unit.Share).First()
	calc.Gives(s, "tip_speed", "Speed of the paddle's tip", tip, running)

	calc.Works(s, "Speed above the limit; a figure below nought is under it.",
		"o", over, turning, "n - n_max", source.ByDefinition)
	calc.Works(s, "Share of full speed at which the drill turns at the limit, at the most all of it.",
		"q", trigger, unit.Share, "min(n_max / n, 1) * 100", source.ByDefinition)
	calc.WorksUS(s, "Speed of the tip: the way once round, by the turns a second.",
		"v", tip, running, "pi * D / 1000 * n / 60", "pi * D / 12 * n / 60", source.TipSpeed)
	cautions(s, e, over, trigger)
	s.Drawing = drawing(n, top, diameter.Of(e), over)
}

// stands says on which side of the limit a speed lies.
func stands(over unit.PerMinute) words.Line {
	switch {
	case over > 0:
		return words.Say("{by} over", words.Is("by", over, turning))
	case over < 0:
		return words.Say("{by} under", words.Is("by", -over, turning))
	}
	return words.Say("just at the limit")
}

func cautions(s *calc.Sheet, e calc.Entry, over unit.PerMinute, trigger unit.Ratio) {
	full, top := speed.Is("speed", speed.Of(e)), limit.Is("limit", limit.Of(e))
	switch {
	case trigger < slipping:
		s.Warn(calc.Care, source.MixingSpeed, "At full trigger {speed} is more than twice {limit}. Few hands hold so small a share of the trigger: take a lower gear or a slower drill.", full, top)
	case over > 0:
		s.Warn(calc.Care, source.MixingSpeed, "At full trigger {speed} is above {limit}: the mix takes in air and loses strength. Hold the trigger at {share} of full speed, or take a lower gear.",
			full, top, words.Is("share", trigger, unit.Share))
	}
	if limit.Of(e) > ceiling {
		s.Warn(calc.Care, source.MixingDrills, "{limit} is above {ceiling}, the trade's figure for mortar. Some products and levellers are mixed faster: only the bag can allow it.", top, words.Is("ceiling", ceiling, turning))
	}
	s.Warn(calc.Note, source.TipSpeed, "The tip's speed is told, not judged: no limit for mortar has been found in print.")
	s.Warn(calc.Note, source.MixingSpeed, "Too slow is a fault too: it leaves lumps and dry powder. If in doubt weigh a cup of the mix: see Air in the mix.")
	s.Warn(calc.Care, source.CommonPractice, "Hold the drill with both hands and feet apart: a paddle that bites wrenches the wrist. Loose sleeves, cords and hair stay away from it.")
	s.Warn(calc.Care, source.CommonPractice, "Outdoors feed the drill through a residual-current breaker (GFCI), and keep plug and lead out of the wet.")
	s.Warn(calc.Care, source.Silica, "Pouring powder raises dust that may hold silica. Keep upwind, pour low, and wear the respirator that your exposure plan and the bag call for.")
	s.Warn(calc.Care, source.WetCement, "A fast paddle splashes, and wet cement burns eyes and skin. Wear eye protection and gloves, and wash splashes off at once.")
}

// ceiling is the trade's figure for mortar (source.MixingSpeed).
const ceiling = unit.PerMinute(300)
