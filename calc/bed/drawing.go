package bed

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// paver is the thickness of the pavers that Setbook is for. It is sold as 20 mm everywhere, and 20 mm is
// not 3/4 in, so it is shown in millimetres to everybody.
const paver = 20 * unit.Millimetre

var asSold = unit.Both(unit.Millimetres)

// drawing shows the comb to scale, above with its ridges standing and the paver held
// over them, below with the ridges fallen in under the paver.
func drawing(shape string, w, g, ridge, bed unit.Length) calc.Drawing {
	const slab, gap = 10 * unit.Millimetre, 14 * unit.Millimetre
	pitch := w + g
	count := min(max(int(unit.Whole(float64(75*unit.Millimetre/pitch))), 3), 20)
	wide := unit.Length(count)*pitch + g
	d := calc.Drawing{
		Title: "The comb, before and after the paver goes down",
		Says: words.Say("A section to scale. Above: combed ridges {ridge} high on the slab, with a paver held over them. Below: the ridges have fallen in to a bed {bed} thick under the paver, {paver} thick.",
			words.Is("ridge", ridge, unit.InchMM), words.Is("bed", bed, unit.InchMM), words.Is("paver", paver, asSold)),
	}
	lift := max(ridge, bed) + gap/2
	base := slab + bed + paver + gap
	d.Box(calc.Concrete, 0, base, wide, slab)
	top := base + slab
	for i := range count {
		ridgeAt(&d, shape, g+unit.Length(i)*pitch, top, w, ridge)
	}
	d.Box(calc.Paver, 0, top+lift, wide, paver)
	d.Dim(calc.Point{X: 0, Y: top}, calc.Point{X: 0, Y: top + ridge}, 1.2, unit.Fig(ridge, unit.InchMM))

	d.Box(calc.Concrete, 0, 0, wide, slab)
	d.Box(calc.Mortar, 0, slab, wide, bed)
	d.Box(calc.Paver, 0, slab+bed, wide, paver)
	d.Dim(calc.Point{X: 0, Y: slab}, calc.Point{X: 0, Y: slab + bed}, 1.2, unit.Fig(bed, unit.InchMM))
	d.Dim(calc.Point{X: wide, Y: slab + bed + paver}, calc.Point{X: wide, Y: slab + bed}, 1.2, unit.Fig(paver, asSold))
	return d
}

// ridgeAt draws one ridge as the notch leaves it.
func ridgeAt(d *calc.Drawing, shape string, x, y, w, high unit.Length) {
	switch shape {
	case "vee":
		d.Area(calc.Mortar, calc.Point{X: x, Y: y}, calc.Point{X: x + w, Y: y}, calc.Point{X: x + w/2, Y: y + high})
	case "slanted":
		lean := high / 2
		d.Area(calc.Mortar, calc.Point{X: x, Y: y}, calc.Point{X: x + w, Y: y}, calc.Point{X: x + w + lean, Y: y + high}, calc.Point{X: x + lean, Y: y + high})
	case "round":
		round := min(w/2, high)
		points := []calc.Point{{X: x, Y: y}, {X: x + w, Y: y}}
		for i := 0; i <= 12; i++ {
			a := math.Pi * float64(i) / 12
			points = append(points, calc.Point{
				X: x + w/2 + unit.Length(math.Cos(a))*w/2,
				Y: y + high - round + unit.Length(math.Sin(a))*round,
			})
		}
		d.Area(calc.Mortar, points...)
	default:
		d.Box(calc.Mortar, x, y, w, high)
	}
}
