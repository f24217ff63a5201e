package movement

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const thick = 20 * unit.Millimetre // the pavers that Setbook is for

// drawing shows one span of pavers from above, not to scale, and three cuts through the joint at one
// scale: in summer, as it is sealed, and in winter.
func drawing(p parts) calc.Drawing {
	narrow, broad := p.width-p.closing, p.width+p.opening
	wide := 2*max(32*unit.Millimetre, broad) + broad
	gap := max(15*unit.Millimetre, wide/6)
	d := calc.Drawing{
		Title: "One span from above, and the joint through the year",
		Says: words.Say("From above, not to scale: {pavers} pavers from one movement joint to the next, {spacing}. Below, three cuts to scale: the joint is {sealed} wide when it is sealed, {summer} in summer and {winter} in winter, between pavers {thick} thick.",
			words.Is("pavers", p.pavers, unit.Whole1), words.Is("spacing", p.spacing, unit.FootMetre), words.Is("sealed", p.width, unit.InchMM),
			words.Is("summer", narrow, unit.InchMM), words.Is("winter", broad, unit.InchMM), words.Is("thick", unit.Length(thick), unit.InchMM)),
	}
	deep := min(p.width/2, unit.Inch/2)
	for i, cut := range []struct {
		open unit.Length
		says words.Line
	}{{broad, words.Say("winter")}, {p.width, words.Say("sealed")}, {narrow, words.Say("summer")}} {
		section(&d, unit.Length(i)*(thick+gap), wide, cut.open, deep, cut.says, gap)
	}
	strip(&d, 3*(thick+gap)+gap/4, wide, p)
	return d
}

// section is one cut: two pavers and the sealant between them.
func section(d *calc.Drawing, y, wide, open, deep unit.Length, says words.Line, gap unit.Length) {
	side := (wide - open) / 2
	d.Box(calc.Paver, 0, y, side, thick)
	d.Box(calc.Paver, side+open, y, side, thick)
	d.Box(calc.Sealant, side, y+thick-deep, open, deep)
	d.Dim(calc.Point{X: side, Y: y + thick}, calc.Point{X: side + open, Y: y + thick}, 1, unit.Fig(open, unit.InchMM))
	d.Note(calc.Point{X: 0, Y: y + thick + gap/4}, calc.Start, says)
}

// crowded is how many pavers are too many to be drawn one by one.
const crowded = 40

// strip is one span from above: its pavers in a row, with a movement joint at both ends.
func strip(d *calc.Drawing, y, wide unit.Length, p parts) {
	high := wide / 12
	if p.pavers > crowded {
		d.Box(calc.Outline, 0, y, wide, high)
	} else {
		each := wide / unit.Length(p.pavers)
		for i := range int(p.pavers) {
			d.Box(calc.Outline, unit.Length(i)*each, y, each, high)
		}
	}
	for _, x := range []unit.Length{0, wide} {
		d.Line(calc.Strong, calc.Point{X: x, Y: y - high/3}, calc.Point{X: x, Y: y + high + high/3})
	}
	d.Dim(calc.Point{X: 0, Y: y + high}, calc.Point{X: wide, Y: y + high}, 1.2, unit.Fig(p.spacing, unit.FootMetre))
}
