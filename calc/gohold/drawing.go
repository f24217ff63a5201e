package gohold

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// Sizes of the board, a millimetre for each CSS px of the page.
const (
	boardWide = 300 * unit.Millimetre
	row       = 40 * unit.Millimetre
	signAt    = 22 * unit.Millimetre // middle of the signs
	textAt    = 46 * unit.Millimetre
	sign      = 12 * unit.Millimetre // half the size of a sign
)

// drawing shows the seven looks on a board. A verdict is told by its word and by the shape of
// its sign: a ring for go, a triangle for care, a square with a cross for hold.
func drawing(looks []look, worst weather.Verdict) calc.Drawing {
	var hold, care unit.Count
	for _, l := range looks {
		switch l.verdict {
		case weather.Hold:
			hold++
		case weather.WithCare:
			care++
		}
	}
	d := calc.Drawing{
		Title: "The board: seven looks at the weather",
		Says: words.Say("A board of seven rows, each with a sign: a ring for go, a triangle for go with care, a crossed square for hold. {hold} hold, {care} ask for care. All together: {verdict}.",
			words.Is("hold", hold, unit.Whole1), words.Is("care", care, unit.Whole1), words.Named("verdict", worst.Says())),
	}
	high := row * unit.Length(len(looks))
	d.Box(calc.Outline, 0, 0, boardWide, high)
	for i, l := range looks {
		middle := high - row*(unit.Length(i)+0.5)
		if i > 0 {
			d.Line(calc.Outline, calc.Point{X: 0, Y: middle + row/2}, calc.Point{X: boardWide, Y: middle + row/2})
		}
		mark(&d, l.verdict, calc.Point{X: signAt, Y: middle})
		d.Note(calc.Point{X: textAt, Y: middle + row/5}, calc.Start, words.Say("{name}: {verdict}", words.Named("name", l.name), words.Named("verdict", l.verdict.Says())))
		d.Note(calc.Point{X: textAt, Y: middle - row/5}, calc.Start, l.reason)
	}
	return d
}

// mark draws the sign of a verdict.
func mark(d *calc.Drawing, v weather.Verdict, at calc.Point) {
	off := func(x, y float64) calc.Point {
		return calc.Point{X: at.X + sign*unit.Length(x), Y: at.Y + sign*unit.Length(y)}
	}
	switch v {
	case weather.Go:
		var ring []calc.Point
		for i := range 24 {
			a := math.Pi * float64(i) / 12
			ring = append(ring, off(math.Cos(a), math.Sin(a)))
		}
		d.Area(calc.Outline, ring...)
	case weather.WithCare:
		d.Area(calc.Strong, off(-1, -0.9), off(1, -0.9), off(0, 0.9))
		d.Line(calc.Strong, off(0, 0.35), off(0, -0.2))
		d.Line(calc.Strong, off(0, -0.5), off(0, -0.6))
	default:
		d.Area(calc.Strong, off(-1, -1), off(1, -1), off(1, 1), off(-1, 1))
		d.Line(calc.Strong, off(-1, -1), off(1, 1))
		d.Line(calc.Strong, off(-1, 1), off(1, -1))
	}
}
