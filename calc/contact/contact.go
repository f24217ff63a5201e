// Package contact answers how much of a lifted paver's back was bedded, and whether
// that is enough outdoors.
package contact

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	long = calc.Ask("paver_l", "l", "Paver length", unit.InchMM, 50*unit.Millimetre, 2*unit.Metre, "23 7/16 in").
		Usually("23 7/16 in", "595 mm", "895 mm")
	wide = calc.Ask("paver_w", "w", "Paver width", unit.InchMM, 50*unit.Millimetre, 2*unit.Metre, "23 7/16 in").
		Usually("23 7/16 in", "595 mm", "295 mm")
	voidLong = calc.Ask("length", "", "Length of a bare patch", unit.InchMM, 0, unit.Metre, "3 in")
	voidWide = calc.Ask("width", "", "Width of a bare patch", unit.InchMM, 0, unit.Metre, "2 in")
	voids    = calc.Tabulate("voids", "Bare patches of the back", "3 in,2 in;2 in,1 1/2 in", voidLong.Input, voidWide.Input).
			Helped("One row a patch that no mortar wetted: its length, its width. One row of noughts where there is none.")
	corners = calc.Ask("corners", "n", "Bare corners", unit.Whole1, unit.Count(0), 4, "0").Usually("0", "1", "2").
		Helped("Corners of the paver with no mortar under them, of four. Give their patches above too.")
)

const (
	least = 95 * unit.Percent   // outdoors: source.Contact
	hair  = unit.Ratio(1e-9)    // a trace of rounding, so that exactly 95 % passes
	spill = unit.Area(1 + 1e-9) // the same for patches that come to the whole back
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "contact", Stage: calc.Setting, Title: "Contact under a paver",
	Asks:   "How much of this lifted paver's back was bedded, and does that do outdoors?",
	Inputs: []*calc.Input{long.Input, wide.Input, voids.Input, corners.Input},
	Work:   work,
	Origin: "Contact is the part of the paver's back that touches mortar: its whole area less the bare patches, over the whole. The drawing shows why corners are counted apart, since the mean may be high while a corner hangs free.",
	Memory: []words.Msg{
		"Lift one of the first pavers of the day, one after each change of trowel, mortar or setter, and one now and then.",
		"Lift it while the mortar is wet, straight up, and look at both faces: back and bed tell the same tale.",
		"Lines still standing in the bed mean that the paver was not worked in: push and pull it across the lines.",
		"Bare mortar with a dry skin means that it stood open too long: comb less ahead.",
		"A bare corner breaks under a chair leg. Back-butter the edges and corners.",
		"Scrape both clean and comb fresh mortar before the paver goes back.",
	},
}

// Bare is the area of all patches together. By definition, where no two overlap.
func Bare(rows [][]float64) unit.Area {
	var bare unit.Area
	for _, row := range rows {
		bare += voidLong.At(row, 0).Times(voidWide.At(row, 1))
	}
	return bare
}

// Ratio is the share of the back that is bedded. By definition.
func Ratio(bare, back unit.Area) unit.Ratio { return unit.Ratio(max(1-bare/back, 0)) }

// Passes reports whether a paver outdoors is bedded well enough: 95 % of its back or more,
// and every corner of it. Source: source.Contact.
func Passes(contact unit.Ratio, bareCorners unit.Count) bool {
	return contact >= least-hair && bareCorners == 0
}

func work(e calc.Entry, s *calc.Sheet) {
	l, w, rows, bareCorners := long.Of(e), wide.Of(e), voids.Of(e), corners.Of(e)
	if unit.Whole(float64(bareCorners)) != bareCorners {
		s.Refuse("corners", "{field}: read {read}. It takes a whole number from {low} to {high}.", words.Named("field", corners.Label),
			corners.Is("read", bareCorners), corners.Is("low", unit.Count(corners.Min)), corners.Is("high", unit.Count(corners.Max)))
		return
	}
	for i, row := range rows {
		if a, b := voidLong.At(row, 0), voidWide.At(row, 1); max(a, b) > max(l, w) || min(a, b) > min(l, w) {
			s.Refuse("voids", "Bare patches, row {row}: read {a} by {b}. That does not fit on a paver {l} by {w}.",
				words.Is("row", unit.Count(i+1), unit.Whole1), voidLong.Is("a", a), voidWide.Is("b", b), long.Is("l", l), wide.Is("w", w))
			return
		}
	}
	back, bare := l.Times(w), Bare(rows)
	if bare > back*spill {
		s.Refuse("voids", "Bare patches: they come to {bare}, more than the whole back, {back}. Count no patch twice.",
			words.Is("bare", bare, unit.InchArea), words.Is("back", back, unit.InchArea))
		return
	}
	contact := Ratio(bare, back)

	calc.Gives(s, "contact", "Contact", contact, unit.Share).First()
	pass := calc.Gives(s, "pass", "Outdoors", verdict(contact, bareCorners), unit.Bare).First()
	switch {
	case contact < least-hair && bareCorners > 0:
		pass.Says(words.Say("fails: too little contact, and a bare corner"))
	case contact < least-hair:
		pass.Says(words.Say("fails: too little contact"))
	case bareCorners > 0:
		pass.Says(words.Say("fails: a bare corner"))
	default:
		pass.Says(words.Say("passes, this paver"))
	}
	steps(s, e, back, bare, contact)
	cautions(s, contact, bareCorners)
	s.Drawing = drawing(l, w, rows, bare, int(bareCorners), contact)
}

// verdict is 1 where the paver passes, else 0.
func verdict(contact unit.Ratio, bareCorners unit.Count) unit.Number {
	if Passes(contact, bareCorners) {
		return 1
	}
	return 0
}
