package contact

import (
	"sort"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// patch is a bare patch as it lies in the drawing: its lower left corner and its size.
type patch struct{ x, y, w, h unit.Length }

// drawing shows the paver's back with its bare patches to scale. Where they lay was not
// measured, so they stand in rows.
func drawing(l, w unit.Length, rows [][]float64, bare unit.Area, bareCorners int, contact unit.Ratio) calc.Drawing {
	figures := []*words.Arg{words.Is("l", l, unit.InchMM), words.Is("w", w, unit.InchMM), words.Is("contact", contact, unit.Share),
		words.Is("corners", unit.Count(bareCorners), unit.Whole1)}
	d := calc.Drawing{
		Title: "The paver's back: bedded, and bare",
		Says:  words.Say("The back of a paver {l} by {w}, to scale: {contact} of it bedded. Its bare patches are drawn at their size, in rows, because where they lay was not measured. Bare corners are cut off by a thick line: {corners}.", figures...),
	}
	d.Box(calc.Mortar, 0, 0, l, w)
	corner := min(l, w) / 9
	patches, ok := layOut(l, w, rows, corner)
	if !ok {
		d.Says = words.Say("The back of a paver {l} by {w}, to scale: {contact} of it bedded. Its bare patches do not fit beside one another in rows, so they are drawn as one strip of their area. Bare corners are cut off by a thick line: {corners}.", figures...)
		patches = []patch{{0, 0, unit.Length(bare / unit.Area(w)), w}}
	}
	for _, p := range patches {
		d.Box(calc.Paver, p.x, p.y, p.w, p.h)
	}
	for i := range bareCorners {
		cutCorner(&d, l, w, corner, i)
	}
	d.Dim(calc.Point{X: 0, Y: w}, calc.Point{X: l, Y: w}, 1, unit.Fig(l, unit.InchMM))
	d.Dim(calc.Point{X: l, Y: w}, calc.Point{X: l, Y: 0}, 1, unit.Fig(w, unit.InchMM))
	d.Note(calc.Point{X: l / 2, Y: -0.1 * w}, calc.Middle, words.Say("dotted: bedded; hatched: bare"))
	return d
}

// cutCorner draws one bare corner of the four.
func cutCorner(d *calc.Drawing, l, w, size unit.Length, which int) {
	at := [...]calc.Point{{X: 0, Y: w}, {X: l, Y: w}, {X: l, Y: 0}, {X: 0, Y: 0}}[which]
	inX, inY := size, size
	if at.X > 0 {
		inX = -size
	}
	if at.Y > 0 {
		inY = -size
	}
	a, b := calc.Point{X: at.X + inX, Y: at.Y}, calc.Point{X: at.X, Y: at.Y + inY}
	d.Area(calc.Paver, at, a, b)
	d.Line(calc.Strong, a, b)
}

// layOut stands the patches in rows, clear of the corners if that goes, and tells whether they fit.
func layOut(l, w unit.Length, rows [][]float64, corner unit.Length) ([]patch, bool) {
	var patches []patch
	for _, row := range rows {
		p := patch{w: voidLong.At(row, 0), h: voidWide.At(row, 1)}
		if p.w > l || p.h > w {
			p.w, p.h = p.h, p.w
		}
		if p.w > 0 && p.h > 0 {
			patches = append(patches, p)
		}
	}
	sort.SliceStable(patches, func(i, j int) bool { return patches[i].h > patches[j].h })
	return patches, shelve(patches, l, w, 1.3*corner, corner/3) || shelve(patches, l, w, 0, 0)
}

// shelve sets each patch beside the last, or under it where the row is full, leaving a rim all round and a gap between.
func shelve(patches []patch, l, w, rim, gap unit.Length) bool {
	x, top, high := rim, w-rim, unit.Length(0)
	for i := range patches {
		p := &patches[i]
		if x+p.w > l-rim {
			x, top, high = rim, top-high-gap, 0
		}
		if p.w > l-2*rim || top-p.h < rim {
			return false
		}
		p.x, p.y = x, top-p.h
		x, high = x+p.w+gap, max(high, p.h)
	}
	return true
}
