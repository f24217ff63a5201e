package paddle

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the paddle in its bucket, to scale, over a scale of speed from standstill
// on which the limit and the drill's full speed are marked. The bucket is a common one, made
// wider where the paddle would not turn freely in it.
func drawing(n, top unit.PerMinute, diameter unit.Length, over unit.PerMinute) calc.Drawing {
	wide := max(285*unit.Millimetre, 1.7*diameter)
	d := calc.Drawing{
		Title: "The paddle in its bucket, and the scale of its speed",
		Says: words.Say("A section to scale: a paddle {diameter} across in a bucket {wide} wide. Under it a scale of speed from standstill: the limit at {limit}, the drill at full trigger at {speed}, {side}.",
			words.Is("diameter", diameter, unit.InchMM), words.Is("wide", wide, unit.InchMM), words.Is("limit", top, turning), words.Is("speed", n, turning), words.Also("side", stands(over))),
	}
	bucket(&d, wide, diameter)
	scale(&d, wide, n, top)
	return d
}

// bucket draws the pail in section, its mix and the paddle with its spiral.
func bucket(d *calc.Drawing, wide, diameter unit.Length) {
	high := 1.1 * wide
	left, shaft := -wide/2, wide/25
	d.Area(calc.Mortar, calc.Point{X: left, Y: 0}, calc.Point{X: -left, Y: 0}, calc.Point{X: -left, Y: 0.6 * high}, calc.Point{X: left, Y: 0.6 * high})
	d.Line(calc.Outline, calc.Point{X: left, Y: high}, calc.Point{X: left, Y: 0}, calc.Point{X: -left, Y: 0}, calc.Point{X: -left, Y: high})
	low, tall := 0.05*high, min(1.1*diameter, 0.5*high)
	d.Box(calc.Steel, -shaft/2, low, shaft, 1.12*high-low)
	var spiral []calc.Point
	const bends, turns = 48, 1.5
	for i := range bends + 1 {
		share := float64(i) / bends
		spiral = append(spiral, calc.Point{X: diameter / 2 * unit.Length(math.Cos(2*math.Pi*turns*share)), Y: low + tall*unit.Length(share)})
	}
	d.Line(calc.Strong, spiral...)
	d.Line(calc.Strong, calc.Point{X: -diameter / 2, Y: low + tall}, calc.Point{X: diameter / 2, Y: low + tall})
	d.Line(calc.Strong, calc.Point{X: -diameter / 2, Y: low}, calc.Point{X: diameter / 2, Y: low})
	d.Dim(calc.Point{X: -diameter / 2, Y: low}, calc.Point{X: diameter / 2, Y: low}, -1.8, unit.Fig(diameter, unit.InchMM))
}

// scale draws the speeds as ways along a line.
func scale(d *calc.Drawing, bucket unit.Length, n, top unit.PerMinute) {
	long, y := 1.6*bucket, -0.48*bucket
	tick := bucket / 30
	at := func(v unit.PerMinute) unit.Length { return -long/2 + long*unit.Length(v/(1.1*max(n, top))) }
	d.Line(calc.Outline, calc.Point{X: at(0), Y: y}, calc.Point{X: long / 2, Y: y})
	d.Line(calc.Outline, calc.Point{X: at(0), Y: y - tick}, calc.Point{X: at(0), Y: y + tick})
	d.Line(calc.Strong, calc.Point{X: at(top), Y: y}, calc.Point{X: at(top), Y: y + 2*tick})
	d.Box(calc.Steel, at(0), y-tick, at(n)-at(0), tick)
	d.Line(calc.Strong, calc.Point{X: at(n), Y: y}, calc.Point{X: at(n), Y: y - 2*tick})
	d.Note(calc.Point{X: at(top), Y: y + 4.5*tick}, anchor(at(top)/long), words.Say("limit {limit}", words.Is("limit", top, turning)))
	d.Note(calc.Point{X: at(n), Y: y - 4.5*tick}, anchor(at(n)/long), words.Say("full trigger {speed}", words.Is("speed", n, turning)))
}

// anchor keeps a label inside the drawing: at the ends of the line it stands inwards.
func anchor(share unit.Length) calc.Anchor {
	switch {
	case share < -0.25:
		return calc.Start
	case share > 0.25:
		return calc.End
	}
	return calc.Middle
}
