package mixtemp

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the heat balance as a beam: its length is the scale of temperature from the powder to
// the liquid, the weights at its ends are the heat that each holds, by area, and it balances
// at the temperature of the mix.
func drawing(e calc.Entry, holds unit.Mass, mix unit.Temperature) calc.Drawing {
	const long, most = 100 * unit.Millimetre, 32 * unit.Millimetre
	water := liquid.Of(e)
	side := func(m unit.Mass) unit.Length {
		return most * unit.Length(math.Sqrt(float64(m/max(holds, water))))
	}
	p, l := side(holds), side(water)
	pivot := long * unit.Length(water/(holds+water))
	const beam, stand, line = 2 * unit.Millimetre, 10 * unit.Millimetre, 6 * unit.Millimetre
	d := calc.Drawing{
		Title: "The heat of the mix in balance",
		Says: words.Say("A beam that balances. At its left end the powder at {powder_temp}, at its right the liquid at {liquid_temp}; each weight is as large as the heat that it holds. The beam is a scale of temperature from one to the other, and the point where it balances is the mix, {mix}.",
			powderTemp.Is("powder_temp", powderTemp.Of(e)), liquidTemp.Is("liquid_temp", liquidTemp.Of(e)), words.Is("mix", mix, unit.Warmth)),
	}
	d.Box(calc.Steel, 0, 0, long, beam)
	d.Box(calc.Mortar, -p/2, beam, p, p)
	d.Box(calc.Water, long-l/2, beam, l, l)
	d.Area(calc.Strong, calc.Point{X: pivot, Y: 0}, calc.Point{X: pivot - stand/2, Y: -stand}, calc.Point{X: pivot + stand/2, Y: -stand})
	d.Line(calc.Outline, calc.Point{X: -most / 2, Y: -stand}, calc.Point{X: long + most/2, Y: -stand})
	d.Note(calc.Point{X: -most / 2, Y: beam + most + line}, calc.Start, words.Say("powder {at}", powderTemp.Is("at", powderTemp.Of(e))))
	d.Note(calc.Point{X: long + most/2, Y: beam + most + line}, calc.End, words.Say("liquid {at}", liquidTemp.Is("at", liquidTemp.Of(e))))
	d.Note(calc.Point{X: pivot, Y: -stand - line}, calc.Middle, words.Say("mix {at}", words.Is("at", mix, unit.Warmth)))
	return d
}
