package film

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the coats in section on the slab, wet on the left and dry on the right, to one scale.
func drawing(e calc.Entry, p parts) calc.Drawing {
	count := max(int(unit.Whole(float64(coats.Of(e)))), 1)
	w, c := wet.Of(e), unit.Length(coats.Of(e))
	whole := w * c
	wide := 2 * whole // of one of the two stacks
	d := calc.Drawing{
		Title: "The coats, wet and dry",
		Says: words.Say("A section to scale, much enlarged. Left: {wet} of wet film on the slab, all coats. Right: the {dry} that is left of it when dry.",
			words.Is("wet", whole, thin), words.Is("dry", p.dry, thin)),
	}
	d.Box(calc.Concrete, 0, -0.5*whole, 2.4*wide, 0.5*whole)
	stack(&d, calc.Water, 0, wide, whole, w, count)
	stack(&d, calc.Membrane, 1.4*wide, wide, p.dry, p.one, count)
	d.Dim(calc.Point{X: 0, Y: 0}, calc.Point{X: 0, Y: whole}, 1.4, unit.Fig(whole, thin))
	d.Dim(calc.Point{X: 2.4 * wide, Y: p.dry}, calc.Point{X: 2.4 * wide, Y: 0}, 1.4, unit.Fig(p.dry, thin))
	d.Note(calc.Point{X: wide / 2, Y: 1.15 * whole}, calc.Middle, words.Say("wet"))
	d.Note(calc.Point{X: 1.9 * wide, Y: 1.15 * whole}, calc.Middle, words.Say("dry"))
	return d
}

// stack draws coats on each other; a part of a coat is drawn as such.
func stack(d *calc.Drawing, of calc.Stuff, x, wide, high, each unit.Length, count int) {
	for i := range count {
		y := each * unit.Length(i)
		d.Box(of, x, y, wide, min(each, high-y))
	}
}
