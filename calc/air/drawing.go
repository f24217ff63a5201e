package air

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the cup in section with grains, liquid and air parted, each as high as its
// share of the room. The cup is drawn as wide as it is high.
func drawing(e calc.Entry, air unit.Ratio) calc.Drawing {
	wide := unit.Length(math.Cbrt(float64(cup.Of(e)) * 1e6 * 4 / math.Pi))
	grains, water := powder.Of(e).Fills(powderHeavy.Of(e)), liquid.Of(e).Fills(liquidHeavy.Of(e))
	solid := (1 - air) * unit.Ratio(grains/(grains+water))
	wet := 1 - air - solid
	d := calc.Drawing{
		Title: "What fills the cup",
		Says: words.Say("A section of a cup of {cup}, its mix parted into what it is made of, by volume: {grains} grains at the bottom, {liquid} liquid over them, {air} air on top.",
			cup.Is("cup", cup.Of(e)), words.Is("grains", solid, unit.Share), words.Is("liquid", wet, unit.Share), words.Is("air", air, unit.Share)),
	}
	layers := []layer{
		{calc.Mortar, solid, words.Say("grains {share}", words.Is("share", solid, unit.Share))},
		{calc.Water, wet, words.Say("liquid {share}", words.Is("share", wet, unit.Share))},
		{calc.Air, air, words.Say("air {share}", words.Is("share", air, unit.Share))},
	}
	y, least := unit.Length(0), unit.Length(0)
	for i, l := range layers {
		high := wide * unit.Length(l.share)
		d.Box(l.of, 0, y, wide, high)
		// A label stands beside its layer, but no nearer than a line to the one under it, and leaves room for those above.
		at := min(max(y+high/2, least), wide*(1-unit.Length(len(layers)-1-i)*line))
		d.Line(calc.Outline, calc.Point{X: wide, Y: y + high/2}, calc.Point{X: 1.2 * wide, Y: at})
		d.Note(calc.Point{X: 1.25 * wide, Y: at}, calc.Start, l.says)
		y, least = y+high, at+wide*line
	}
	d.Line(calc.Strong, calc.Point{X: 0, Y: 1.02 * wide}, calc.Point{X: 0, Y: 0}, calc.Point{X: wide, Y: 0}, calc.Point{X: wide, Y: 1.02 * wide})
	d.Line(calc.Outline, calc.Point{X: -0.3 * wide, Y: 0}, calc.Point{X: 2.1 * wide, Y: 0})
	return d
}

// line is how far apart labels stand, in heights of the cup.
const line = 0.15

// layer is one thing in the cup.
type layer struct {
	of    calc.Stuff
	share unit.Ratio
	says  words.Line
}
