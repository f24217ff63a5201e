package grout

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the joint twice at one scale: from above, where pavers meet, with the crossing
// that is counted once, and cut through.
func drawing(w, d unit.Length, pattern string) calc.Drawing {
	const slab = 8 * unit.Millimetre
	bed := max(5*unit.Millimetre, d-paver)
	side := max(2*w, 38*unit.Millimetre)
	wide := 2*side + w
	out := calc.Drawing{
		Title: "The joint from above, and cut through",
		Says: words.Say("Two views at one scale. From above, the corner where pavers meet: the crossing, {joint} square, belongs to one joint only. Below, a cut through the joint: {joint} wide and filled {depth} deep, between pavers {paver} thick.",
			words.Is("joint", w, unit.InchMM), words.Is("depth", d, unit.InchMM), words.Is("paver", unit.Length(paver), unit.InchMM)),
	}
	section(&out, side, w, d, bed, slab)
	top := slab + bed + paver
	label := wide / 20
	out.Note(calc.Point{X: 0, Y: top + label}, calc.Start, words.Say("cut through"))
	corner(&out, top+wide/6, side, w, max(w, 11*unit.Millimetre), pattern)
	return out
}

// section is the cut: pavers on their bed, and the joint filled from the top.
func section(out *calc.Drawing, side, w, d, bed, slab unit.Length) {
	top := slab + bed + paver
	wide := 2*side + w
	out.Box(calc.Concrete, 0, 0, wide, slab)
	out.Box(calc.Mortar, 0, slab, wide, bed)
	if d < paver {
		out.Box(calc.Mortar, side, slab+bed, w, paver-d)
	}
	out.Box(calc.Paver, 0, slab+bed, side, paver)
	out.Box(calc.Paver, side+w, slab+bed, side, paver)
	filled(out, side, top-d, w, d)
	out.Dim(calc.Point{X: wide, Y: top}, calc.Point{X: wide, Y: top - d}, 1.2, unit.Fig(d, unit.InchMM))
	out.Line(calc.Hidden, calc.Point{X: side + w, Y: top - d}, calc.Point{X: wide, Y: top - d})
}

// filled is grout, with the thick outline of the answer.
func filled(out *calc.Drawing, x, y, wide, high unit.Length) {
	out.Box(calc.Mortar, x, y, wide, high)
	out.Box(calc.Strong, x, y, wide, high)
}

// corner is the view from above of the place where four pavers meet, or three in a running bond.
func corner(out *calc.Drawing, base, side, w, part unit.Length, pattern string) {
	wide := 2*side + w
	if pattern == "running" {
		out.Box(calc.Paver, 0, base, wide, part)
	} else {
		out.Box(calc.Paver, 0, base, side, part)
		out.Box(calc.Paver, side+w, base, side, part)
	}
	across := base + part
	top := across + w
	out.Box(calc.Paver, 0, top, side, part)
	out.Box(calc.Paver, side+w, top, side, part)
	filled(out, side, across, w, w)
	out.Dim(calc.Point{X: side, Y: top + part}, calc.Point{X: side + w, Y: top + part}, 1, unit.Fig(w, unit.InchMM))
	out.Note(calc.Point{X: 0, Y: top + part + wide/20}, calc.Start, words.Say("from above"))
}
