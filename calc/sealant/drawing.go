package sealant

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const slab = 10 * unit.Millimetre

// drawing is a cut through the joint to scale: pavers on their bed, the sealant with its tooled face,
// and the rod under it. A rod that does not fit is dashed, and runs into the slab.
func drawing(e calc.Entry, p parts) calc.Drawing {
	w, t, b := width.Of(e), paver.Of(e), bed.Of(e)
	side := max(w, 20*unit.Millimetre)
	wide := 2*side + w
	top := slab + b + t
	d := calc.Drawing{
		Title: "A cut through the joint",
		Says: words.Say("A section to scale: a joint {width} wide between pavers {paver} thick on a bed of {bed}. Sealant {depth} deep at the middle, over a rod of {rod}. {fits}",
			words.Is("width", w, unit.InchMM), words.Is("paver", t, unit.InchMM), words.Is("bed", b, unit.InchMM),
			words.Is("depth", p.depth, unit.InchMM), words.Is("rod", p.rod, unit.InchMM), words.Also("fits", fits(p))),
	}
	d.Box(calc.Concrete, 0, 0, wide, slab)
	for _, x := range []unit.Length{0, side + w} {
		if b > 0 {
			d.Box(calc.Mortar, x, slab, side, b)
		}
		d.Box(calc.Paver, x, slab+b, side, t)
	}
	face := top - sag.Of(e) // of the sealant at the middle
	crown := face - p.depth
	rod(&d, side, w, crown, dome.Of(e), p)
	sealed := append(arch(side, w, top, -sag.Of(e)), reversed(arch(side, w, crown-p.crown, p.crown))...)
	d.Area(calc.Sealant, sealed...)
	measures(&d, side, w, top, face, crown, p)
	return d
}

func fits(p parts) words.Line {
	if p.spare < 0 {
		return words.Say("The rod does not fit: it would stand {short} into the slab.", words.Is("short", -p.spare, unit.InchMM))
	}
	return words.Say("The rod fits, with {spare} under it.", words.Is("spare", p.spare, unit.InchMM))
}

// rod draws the rod as wide as the joint and as high as its diameter, its crown and its foot rounded alike.
func rod(d *calc.Drawing, x, w, crown, rise unit.Length, p parts) {
	foot := crown - p.rod
	outline := append(arch(x, w, crown-rise, rise), reversed(arch(x, w, foot+rise, -rise))...)
	if p.spare < 0 {
		d.Line(calc.Hidden, append(outline, outline[0])...)
		return
	}
	d.Area(calc.Foam, outline...)
}

// arch is the points of an arc over the width from left to right, from its ends at one height to its middle
// so much higher, or lower where the rise is below nought.
func arch(x, w, ends, rise unit.Length) []calc.Point {
	if rise == 0 {
		return []calc.Point{{X: x, Y: ends}, {X: x + w, Y: ends}}
	}
	const parts = 16
	high := max(rise, -rise)
	r, half := Radius(w, high), Opens(w, high)/2
	points := make([]calc.Point, 0, parts+1)
	for i := 0; i <= parts; i++ {
		φ := half * (2*unit.Angle(i)/parts - 1)
		up := high - r*unit.Length(1-φ.Cos())
		if rise < 0 {
			up = -up
		}
		points = append(points, calc.Point{X: x + w/2 + r*unit.Length(φ.Sin()), Y: ends + up})
	}
	return points
}

func reversed(points []calc.Point) []calc.Point {
	back := make([]calc.Point, 0, len(points))
	for i := len(points) - 1; i >= 0; i-- {
		back = append(back, points[i])
	}
	return back
}

// measures are the dimensions: width above, depth of the sealant and room under it to the right, paver to the left.
func measures(d *calc.Drawing, side, w, top, face, crown unit.Length, p parts) {
	wide := 2*side + w
	d.Dim(calc.Point{X: side, Y: top}, calc.Point{X: side + w, Y: top}, 1.2, unit.Fig(w, unit.InchMM))
	for _, y := range []unit.Length{face, crown} {
		d.Line(calc.Hidden, calc.Point{X: side + w/2, Y: y}, calc.Point{X: wide, Y: y})
	}
	d.Dim(calc.Point{X: wide, Y: face}, calc.Point{X: wide, Y: crown}, 3, unit.Fig(p.depth, unit.InchMM))
	d.Dim(calc.Point{X: wide, Y: crown}, calc.Point{X: wide, Y: slab}, 1.2, unit.Fig(p.room, unit.InchMM))
	d.Dim(calc.Point{X: 0, Y: crown}, calc.Point{X: 0, Y: crown - p.rod}, -1.2, unit.Fig(p.rod, unit.InchMM))
}
