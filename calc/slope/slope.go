// Package slope answers whether a slab falls enough to drain, and not too much to
// walk and roll across.
package slope

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	drop = calc.Ask("drop", "h", "Drop away from the building", unit.InchMM, -2*unit.Metre, 5*unit.Metre, "2 7/16 in").
		Helped("Over the run. Below nought where the slab falls towards the building.")
	run = calc.Ask("run", "L", "Run, held level", unit.FootMetre, unit.Metre/10, 100*unit.Metre, "10 ft").
		Usually("2 ft", "4 ft", "10 ft", "2 m")
	cross = calc.Ask("cross", "h_x", "Drop across, over the same run", unit.InchMM, -2*unit.Metre, 5*unit.Metre, "0 in").
		Helped("Square to the first, along the building. 0 where the slab is level that way.")
)

const (
	least   = 2 * unit.Percent   // source.FallFromBuilding
	most    = unit.Ratio(1) / 48 // across an accessible walk: source.AccessibleSlope
	walk    = unit.Ratio(1) / 20 // along an accessible walk: source.AccessibleSlope
	ramp    = unit.Ratio(1) / 12 // a ramp: source.RampSlope
	hair    = unit.Ratio(1e-9)   // a trace of rounding, so that a slope exactly at a limit is within it
	ponding = 1 * unit.Percent   // source.Resultant
	trip    = unit.Inch / 4      // source.LevelChange
	bevel   = unit.Inch / 2      // source.LevelChange
	ground  = 5 * unit.Percent   // source.FallFromBuilding
	beside  = 10 * unit.Foot     // how far from the building: source.FallFromBuilding
	window  = most - least       // between the two limits
	aFoot   = unit.Length(window) * unit.Foot
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "slope", Stage: calc.Slab, Title: "Fall of the slab",
	Asks:   "Does the slab fall enough to drain away from the building, and how close is it to its limits?",
	Inputs: []*calc.Input{drop.Input, run.Input, cross.Input},
	Work:   work,
	Origin: "Slope is drop over run, as the drawing's triangle shows: its upright side over its level one. Two falls at right angles add as the sides of a right triangle do, by Pythagoras, because water runs down the steepest line.",
	Memory: []words.Msg{
		"Measure the drop under a level that is itself checked: turn it end for end, and take the mean.",
		"Measure at several places. The least fall is the one that ponds.",
		"The pavers follow the slab. Put the fall in the slab or in a screed, not in the mortar bed.",
		"Degrees are not percent: 2° is 3.49 %.",
		"Look at the slab after rain, or flood it with a hose: chalk round what still stands after an hour of drying.",
		"Keep the finished face below the sill and the vents by what the local code asks.",
	},
}

// Slope is the drop over the run. By definition.
func Slope(drop, run unit.Length) unit.Ratio { return unit.Ratio(drop / run) }

// Total is the steepest slope of a plane that falls by one slope one way and by another
// square to it: the way that water runs. Source: source.Resultant, and Pythagoras.
func Total(along, across unit.Ratio) unit.Ratio {
	return unit.Ratio(math.Hypot(float64(along), float64(across)))
}

// steepest is the steeper of the two slopes, whichever way it falls.
func steepest(along, across unit.Ratio) unit.Ratio {
	return unit.Ratio(max(math.Abs(float64(along)), math.Abs(float64(across))))
}

func work(e calc.Entry, s *calc.Sheet) {
	along, across := Slope(drop.Of(e), run.Of(e)), Slope(cross.Of(e), run.Of(e))
	total := Total(along, across)

	calc.Gives(s, "slope", "Slope away from the building", along, unit.Share).First()
	calc.Gives(s, "margin", "Margin over 2 %", along-least, unit.Share).First()
	calc.Gives(s, "total", "Slope the way water runs", total, unit.Share)

	steps(s, e, along, across, total)
	cautions(s, along, across, total)
	s.Drawing = drawing(drop.Of(e), run.Of(e), along, across)
}
