package slope

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// tape shows a drop as it is read off a tape.
var tape = &unit.Pair{US: unit.Form{Unit: unit.Inches, Fraction: 16}, Metric: unit.Form{Unit: unit.Millimetres}}

// drawing shows the slab in section, its heights drawn larger so that the fall can be seen, and below
// it in plan with the way that water runs.
func drawing(drop, run unit.Length, along, across unit.Ratio) calc.Drawing {
	times := stretch(steepest(along, 0))
	d := calc.Drawing{
		Title: "The fall, and the way water runs",
		Says: words.Say("Above: a section away from the building, its heights drawn {times} times as large as its lengths. The slab drops {drop} over {run}, {slope}; a dashed line is level, a chain line falls {least}. Below: a plan, with an arrow the way water runs, {total}.",
			words.Is("times", times, unit.Whole1), words.Is("drop", drop, tape), words.Is("run", run, unit.FootMetre),
			words.Is("slope", along, unit.Share), words.Is("least", least, unit.Share), words.Is("total", Total(along, across), unit.Share)),
	}
	section(&d, drop, run, unit.Length(times))
	low := min(-unit.Length(times)*drop, -unit.Length(times)*unit.Length(least)*run, 0)
	plan(&d, low-run/5, run, along, across)
	return d
}

// stretch is how many times larger heights are drawn, so that the drop comes to about a third of the run.
func stretch(slope unit.Ratio) unit.Count {
	for _, times := range []unit.Count{10, 5, 2} {
		if unit.Ratio(times)*slope <= 0.35 {
			return times
		}
	}
	return 1
}

func section(d *calc.Drawing, drop, run, times unit.Length) {
	const wall, thick = 0.06, 0.07 // of the run
	end := -times * drop
	d.Area(calc.Concrete, calc.Point{X: 0, Y: 0}, calc.Point{X: run, Y: end},
		calc.Point{X: run, Y: end - thick*run}, calc.Point{X: 0, Y: -thick * run})
	high := max(end, 0)
	d.Box(calc.Outline, -wall*run, -thick*run, wall*run, high+0.3*run)
	d.Line(calc.Hidden, calc.Point{X: 0, Y: 0}, calc.Point{X: run, Y: 0})
	d.Line(calc.Axis, calc.Point{X: 0, Y: 0}, calc.Point{X: run, Y: -times * unit.Length(least) * run})
	d.Line(calc.Strong, calc.Point{X: 0, Y: 0}, calc.Point{X: run, Y: end})
	away := 1.0
	if end > 0 {
		away = -1 // still to the right, now that the line is drawn upwards
	}
	d.Dim(calc.Point{X: 0, Y: high + 0.02*run}, calc.Point{X: run, Y: high + 0.02*run}, 0.5, unit.Fig(run, unit.FootMetre))
	d.Dim(calc.Point{X: run, Y: 0}, calc.Point{X: run, Y: end}, away, unit.Fig(drop, tape))
	d.Note(calc.Point{X: 0.03 * run, Y: high + 0.24*run}, calc.Start, words.Say("building"))
}

// plan draws the slab from above, its top edge at y, with an arrow the way water runs.
func plan(d *calc.Drawing, y, run unit.Length, along, across unit.Ratio) {
	const deep, wall = 0.42, 0.06 // of the run
	d.Box(calc.Outline, 0, y-deep*run, run, deep*run)
	d.Box(calc.Outline, -wall*run, y-deep*run, wall*run, deep*run)
	total := Total(along, across)
	if total == 0 {
		d.Note(calc.Point{X: run / 2, Y: y - deep/2*run}, calc.Middle, words.Say("level: water does not run"))
		return
	}
	ux, uy := unit.Length(along/total), -unit.Length(across/total)
	x0, y0 := run/2, y-deep*run*0.5
	long := 0.17 * run
	tip := calc.Point{X: x0 + ux*long, Y: y0 + uy*long}
	d.Line(calc.Strong, calc.Point{X: x0 - ux*long, Y: y0 - uy*long}, tip)
	for _, turn := range []float64{150, -150} {
		sin, cos := math.Sincos(turn * math.Pi / 180)
		d.Line(calc.Strong, tip, calc.Point{
			X: tip.X + 0.06*run*(ux*unit.Length(cos)-uy*unit.Length(sin)),
			Y: tip.Y + 0.06*run*(ux*unit.Length(sin)+uy*unit.Length(cos)),
		})
	}
	d.Note(calc.Point{X: run / 2, Y: y - (deep+0.07)*run}, calc.Middle, words.Say("water runs at {total}", words.Is("total", total, unit.Share)))
}
