package takeoff

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows what the lines weigh, as bars: the widest is the heaviest.
func (o *order) drawing() calc.Drawing {
	const wide, high, gap = 300 * unit.Millimetre, 16 * unit.Millimetre, 30 * unit.Millimetre
	var heaviest unit.Mass
	var known []*line
	for _, l := range o.lines {
		if l.each > 0 {
			known = append(known, l)
			heaviest = max(heaviest, l.each*unit.Mass(l.buy))
		}
	}
	d := calc.Drawing{
		Title: "What the load is made of",
		Says: words.Say("A bar for each line whose weight is known, as long as it is heavy. All together {weight} on {pallets} pallets.",
			words.Is("weight", o.weight, unit.PoundKg), words.Is("pallets", o.pallets(), unit.Whole1)),
	}
	for i, l := range known {
		y := -unit.Length(i) * (high + gap)
		mass := l.each * unit.Mass(l.buy)
		d.Box(calc.Mortar, 0, y, wide*unit.Length(mass/heaviest), high)
		d.Note(calc.Point{X: 0, Y: y + high + gap/3}, calc.Start, words.Say("{material} {mass}", words.Named("material", l.label), words.Is("mass", mass, unit.PoundKg)))
	}
	return d
}
