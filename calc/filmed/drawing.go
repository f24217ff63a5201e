package filmed

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// mostTicks is how many frames of one turn are drawn apart; more would run together.
const mostTicks = 60

// drawing shows the paddle's circle from above with the place of the mark in each frame of one
// turn, over a scale of speed on which the figure, with a frame either way, is set against
// the trade's ceiling. The circle stands for a paddle of any size.
func drawing(at found, perTurn unit.Number) calc.Drawing {
	const round = 50 * unit.Millimetre
	each := unit.Angle(360 / float64(perTurn))
	d := calc.Drawing{
		Title: "The mark, frame by frame, and the speed that it gives",
		Says: words.Say("A circle from above: between two frames the mark moves {angle}, {frames} frames to one turn. Under it a scale of speed from standstill: the paddle at {speed}, between {low} and {high} for one frame either way, and the ceiling at {ceiling}.",
			words.Is("angle", each, unit.Arc), words.Is("frames", perTurn, unit.Bare), words.Is("speed", at.speed, turning), words.Is("low", at.low, turning),
			words.Is("high", at.high, turning), words.Is("ceiling", ceiling, turning)),
	}
	on := func(angle unit.Angle, r unit.Length) calc.Point {
		return calc.Point{X: r * unit.Length(angle.Sin()), Y: r * unit.Length(angle.Cos())}
	}
	var circle []calc.Point
	for i := range 72 {
		circle = append(circle, on(unit.Angle(5*i), round))
	}
	d.Area(calc.Outline, circle...)
	step := max(math.Round(float64(perTurn)/mostTicks), 1)
	for i := 0.0; i < float64(perTurn); i += step {
		d.Line(calc.Outline, on(each*unit.Angle(i), round), on(each*unit.Angle(i), 0.88*round))
	}
	d.Line(calc.Strong, calc.Point{}, on(0, round))
	d.Line(calc.Hidden, calc.Point{}, on(each, round))
	d.Note(calc.Point{X: 0, Y: 1.14 * round}, calc.Middle, words.Say("{angle} a frame", words.Is("angle", each, unit.Arc)))
	scale(&d, round, at)
	return d
}

// scale draws the speeds as ways along a line.
func scale(d *calc.Drawing, round unit.Length, at found) {
	long, y, tick := 3*round, -1.55*round, round/16
	x := func(v unit.PerMinute) unit.Length { return -long/2 + long*unit.Length(v/(1.1*max(at.high, ceiling))) }
	d.Line(calc.Outline, calc.Point{X: x(0), Y: y}, calc.Point{X: long / 2, Y: y})
	d.Line(calc.Outline, calc.Point{X: x(0), Y: y - tick}, calc.Point{X: x(0), Y: y + tick})
	d.Line(calc.Strong, calc.Point{X: x(ceiling), Y: y}, calc.Point{X: x(ceiling), Y: y + 2*tick})
	d.Box(calc.Steel, x(at.low), y-2*tick, x(at.high)-x(at.low), 2*tick)
	d.Note(calc.Point{X: x(ceiling), Y: y + 4.5*tick}, anchor(x(ceiling)/long), words.Say("ceiling {ceiling}", words.Is("ceiling", ceiling, turning)))
	d.Note(calc.Point{X: x(at.speed), Y: y - 4.5*tick}, anchor(x(at.speed)/long), words.Say("paddle {speed}", words.Is("speed", at.speed, turning)))
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
