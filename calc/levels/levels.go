// Package levels answers whether a slab is fit to lay on, and what must be filled, from heights read on a grid: its best
// plane and fall, gaps under a straightedge, where water stands, and the patch that makes it good.
package levels

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const farthest = 1000 * unit.Metre // of a height, either way: a site datum may be anywhere

var (
	cell = calc.Ask("height", "", "Reading", unit.InchMM, -farthest, farthest, "0 mm")
	grid = calc.Gridded("grid", "Readings, row by row", exampleGrid, cell.Input).
		Helped("Start at one corner. A row of readings, then the next row the same way. Leave a cell empty where there is nothing to read: a post, a drain.")
	reading = calc.Choose("reading", "What was read", "heights",
		calc.Option{Name: "heights", Label: "heights: larger is higher"}, calc.Option{Name: "rod", Label: "a rod or a tape below a level: larger is lower"}).
		Helped("A laser or a level and a rod read downwards.")
	stepX = calc.Ask("step_x", "x", "From one reading to the next", unit.FootMetre, 10*unit.Millimetre, 100*unit.Metre, "1 ft").Usually("1 ft", "2 ft", "300 mm", "1 m").
		Helped("Along a row. A gap is seen only where the straightedge reaches three readings: 1 ft shows both rules.")
	stepY = calc.Ask("step_y", "y", "From one row to the next", unit.FootMetre, 10*unit.Millimetre, 100*unit.Metre, "1 ft").Usually("1 ft", "2 ft", "300 mm", "1 m")
	edge  = calc.Ask("edge", "", "Longest edge of the pavers", unit.InchMM, 50*unit.Millimetre, 3*unit.Metre, "595 mm").
		Usually("595 mm", "895 mm", "295 mm").Helped("From 15 in on the slab must be flatter.")
	straight = calc.Ask("straightedge", "L", "Your straightedge", unit.FootMetre, unit.Metre/10, 20*unit.Metre, "2 m").Usually("2 m", "4 ft", "6 ft", "3 m")
	building = calc.Choose("building", "Where the building stands", "none",
		calc.Option{Name: "none", Label: "not beside the slab, or not known"}, calc.Option{Name: "top", Label: "beside the first row"}, calc.Option{Name: "bottom", Label: "beside the last row"},
		calc.Option{Name: "left", Label: "beside the first reading of each row"}, calc.Option{Name: "right", Label: "beside the last reading of each row"}).
		Helped("In the drawing the first row is at the top.")
	access = calc.Choose("access", "Must the slab be accessible?", "no",
		calc.Option{Name: "no", Label: "no, or not known"}, calc.Option{Name: "yes", Label: "yes: 1:48 is the ceiling"})
	target = calc.Choose("target", "Fill to", "plane",
		calc.Option{Name: "plane", Label: "the best plane, and grind what stands above it"}, calc.Option{Name: "flat", Label: "flat enough, and grind nothing"},
		calc.Option{Name: "chosen", Label: "a level or a fall of your own"})
	level = calc.Ask("level", "H", "Level of your own", unit.InchMM, -farthest, farthest, "0 mm").
		Helped("For a level or a fall of your own alone: what you would read there, everywhere, or along the building where one is named.")
	fall = calc.Ask("fall", "f", "Fall of your own, away from the building", unit.Share, unit.Ratio(0), 20*unit.Percent, "2 %").
		Helped("For a fall of your own alone, where a building is named.")
	bagYield = calc.Ask("bag_yield", "Y", "Wet patch from a bag", unit.CubicFootL, unit.Litre, 100*unit.Litre, "0.5 ft3").
			Helped("From the bag.")
)

// exampleGrid is an invented slab of 11 ft by 5 ft that falls a little more than 2 % from its first row to its last.
const exampleGrid = "41 mm,41,41,41.5,40.5,40.5,40,39,39,38.5,39,39.5;34,34.5,34.5,34,34,33.5,33,33,33,33,33,33.5;27.5,27.5,27.5,28,28,27.5,27.5,27,27,27,27,27.5;21.5,21.5,22,22,22,22,21,21,20.5,21,21,20.5;16,16.5,16,16,15.5,14.5,14.5,14,14.5,14.5,14,15;10,9.5,9.5,9,8.5,8,7.5,7.5,7.5,8,8.5,9"

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "levels", Stage: calc.Slab, Title: "Levels of the slab",
	Asks: "Is this slab flat and sloped enough to lay on, where will water stand, and what must be filled?",
	Inputs: []*calc.Input{grid.Input, reading.Input, stepX.Input, stepY.Input, edge.Input, straight.Input,
		building.Input, access.Input, target.Input, level.Input, fall.Input, bagYield.Input},
	Work:   work,
	Long:   true,
	Origin: "The best plane is the one from which the readings stray least, squared and summed: its two rises follow from sums over the readings, measured from their middle. A straightedge rests on the highest readings under it, so the gap at a reading is how far it lies below the straight line between the two that carry it.",
	Memory: []words.Msg{
		"Snap a grid first, and read at its crossings. A reading that is off its mark by an inch is off in height too.",
		"Set the level up once. Where it must move, read one point from both places.",
		"Read the first point again at the end: the difference is what all your readings are worth.",
		"Mark high spots to grind and hollows to fill on the slab itself, with the amount.",
		"Grind first, then fill: what is ground off need not be filled to.",
		"Flood the slab with a hose once it is patched. Water tells what a grid missed.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	v, ok := look(e, s)
	if !ok {
		s.Refuse("grid", "Readings: a slope needs two of them at the least, and a plane three that are not in one line.")
		return
	}
	v.answers(e, s)
	v.steps(e, s)
	v.tables(e, s)
	v.cautions(e, s)
	s.Drawing = v.plan(e)
	v.profile(s)
}
