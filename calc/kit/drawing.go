package kit

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the two parts of a full kit as bars, as long as they are heavy, each filled
// as far as the last kit is used. Both are filled to the same share: that is the ratio kept.
func drawing(a, b unit.Mass, p split) calc.Drawing {
	long := unit.Length(max(a, b))
	high := long / 8
	d := calc.Drawing{
		Title: "The kit, and what is taken out of it",
		Says: words.Say("Two bars, as long as the parts are heavy: part A of {a} above part B of {b}. Filled: what is taken of the last kit, {a_now} of A and {b_now} of B, the same share of each.",
			words.Is("a", a, unit.PoundKg), words.Is("b", b, unit.PoundKg), words.Is("a_now", p.a, unit.PoundKg), words.Is("b_now", p.b, unit.PoundKg)),
	}
	bar(&d, calc.Mortar, 3.2*high, high, a, p.a)
	d.Note(calc.Point{X: 0, Y: 4.2*high + high/2}, calc.Start, words.Say("part A of a kit: {part}", words.Is("part", a, unit.PoundKg)))
	bar(&d, calc.Sealant, 0, high, b, p.b)
	d.Note(calc.Point{X: 0, Y: high + high/2}, calc.Start, words.Say("part B of a kit: {part}", words.Is("part", b, unit.PoundKg)))
	return d
}

// bar draws one part and what is taken of it.
func bar(d *calc.Drawing, of calc.Stuff, y, high unit.Length, part, taken unit.Mass) {
	d.Box(of, 0, y, unit.Length(taken), high)
	d.Box(calc.Outline, 0, y, unit.Length(part), high)
	d.Line(calc.Strong, calc.Point{X: unit.Length(taken), Y: y}, calc.Point{X: unit.Length(taken), Y: y + high})
	d.Dim(calc.Point{X: 0, Y: y}, calc.Point{X: unit.Length(taken), Y: y}, -0.8, unit.Fig(taken, unit.PoundKg))
}
