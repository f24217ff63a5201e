package ripen

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The panels of the drawing. Hours and degrees are not lengths: both panels share one scale of
// hours along the foot, and each has its own upwards.
const (
	across   = 100 * unit.Millimetre
	tall     = 60 * unit.Millimetre
	low      = 26 * unit.Millimetre // the panel of temperatures
	between  = 12 * unit.Millimetre
	mostDots = 240 // a longer table is drawn through every so many of its rows
)

// drawing shows the equivalent age against the clock, and under it the temperatures.
func drawing(spells []spell, all sum, reference unit.Temperature) calc.Drawing {
	d := calc.Drawing{
		Title: "Equivalent age against the clock, and the temperatures",
		Says: words.Say("Above: a curve of the equivalent age, which comes to {age} after {long} by the clock; the dashed line is a bed kept at {reference}. Below: the temperatures, with a dashed line at {reference}. Hours run to the right on one scale for both.",
			words.Is("age", all.age, unit.HourSpan), words.Is("long", all.long, unit.HourSpan), words.Is("reference", reference, unit.Warmth)),
	}
	x := func(t unit.Span) unit.Length { return across * unit.Length(t/all.long) }
	top := max(all.age, all.long)
	y := func(t unit.Span) unit.Length { return tall * unit.Length(t/top) }
	origin := calc.Point{}
	d.Line(calc.Outline, calc.Point{Y: tall}, origin, calc.Point{X: across})
	d.Line(calc.Hidden, origin, calc.Point{X: across, Y: y(all.long)})
	d.Line(calc.Strong, curve(spells, x, y)...)
	d.Dim(calc.Point{X: across}, calc.Point{X: across, Y: y(all.age)}, -1.2, unit.Fig(all.age, unit.HourSpan))

	warm(&d, spells, reference, x)
	return d
}

// curve is the running equivalent age against the running clock.
func curve(spells []spell, x, y func(unit.Span) unit.Length) []calc.Point {
	points := []calc.Point{{}}
	var clock, age unit.Span
	each := len(spells)/mostDots + 1
	for i, sp := range spells {
		clock, age = clock+sp.long, age+sp.age
		if (i+1)%each == 0 || i == len(spells)-1 {
			points = append(points, calc.Point{X: x(clock), Y: y(age)})
		}
	}
	return points
}

// warm draws the panel of temperatures.
func warm(d *calc.Drawing, spells []spell, reference unit.Temperature, x func(unit.Span) unit.Length) {
	coldest, hottest := reference, reference
	for _, sp := range spells {
		coldest, hottest = min(coldest, sp.at), max(hottest, sp.at)
	}
	floor := -between - low
	y := func(t unit.Temperature) unit.Length {
		if hottest == coldest {
			return floor + low/2
		}
		return floor + low*unit.Length((t-coldest)/(hottest-coldest))
	}
	var points []calc.Point
	var clock unit.Span
	each := len(spells)/mostDots + 1
	for i, sp := range spells {
		if i%each == 0 {
			points = append(points, calc.Point{X: x(clock), Y: y(sp.at)}, calc.Point{X: x(clock + sp.long), Y: y(sp.at)})
		}
		clock += sp.long
	}
	d.Line(calc.Outline, points...)
	d.Line(calc.Hidden, calc.Point{Y: y(reference)}, calc.Point{X: across, Y: y(reference)})
	d.Note(calc.Point{X: across + 2*unit.Millimetre, Y: y(reference)}, calc.Start, words.Say("{reference}", words.Is("reference", reference, unit.Warmth)))
	d.Dim(calc.Point{Y: floor}, calc.Point{X: across, Y: floor}, -1.2, unit.Fig(clock, unit.HourSpan))
}
