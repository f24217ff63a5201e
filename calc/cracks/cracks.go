// Package cracks answers which cracks of a slab may be bridged with a membrane, and how much of it that takes.
package cracks

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	width  = calc.Ask("width", "", "Width", unit.InchMM, 0, 50*unit.Millimetre, "0.5 mm")
	offset = calc.Ask("offset", "", "Offset", unit.InchMM, 0, 50*unit.Millimetre, "0 mm")
	moves  = calc.Ask("movement", "", "Movement", unit.InchMM, 0, 50*unit.Millimetre, "0 mm")
	length = calc.Ask("length", "", "Length", unit.FootMetre, 0, 100*unit.Metre, "3 m")
	cracks = calc.Tabulate("cracks", "Cracks", "0.3 mm,0 mm,0 mm,3 m;0.2 mm,0 mm,0 mm,1.5 m", width.Input, offset.Input, moves.Input, length.Input).
		Helped("One row a crack: its width; how much higher one side stands, felt with a fingernail or a coin; how much its width has changed between seasons; its length. 0 where there is none.")
	watched = calc.Choose("watched", "How is the movement known?", "yes",
		calc.Option{Name: "yes", Label: "measured in two seasons"}, calc.Option{Name: "no", Label: "not known"})
	tile  = calc.Ask("paver", "t", "Paver, across the crack", unit.InchMM, 150*unit.Millimetre, 2*unit.Metre, "595 mm").Usually("595 mm", "895 mm", "295 mm")
	waste = calc.Ask("waste", "k", "Overlaps and waste", unit.Share, unit.Ratio(0), 50*unit.Percent, "10 %")
	place = calc.Choose("place", "The slab stands in", "moist",
		calc.Option{Name: "dry", Label: "dry air"}, calc.Option{Name: "moist", Label: "moist air or soil"}, calc.Option{Name: "deicing", Label: "de-icing salt"},
		calc.Option{Name: "sea", Label: "sea water or spray"})
)

const (
	tiles       = 3   // source.CrackStrip
	tilesNarrow = 1.5 // source.CrackStripNarrow
	leastNarrow = 12 * unit.Inch
	moveHigh    = unit.Inch / 8 // source.CrackLimits
	moveLow     = unit.Inch / 16
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "cracks", Stage: calc.Slab, Title: "Cracks in the slab",
	Asks:   "May these cracks be bridged, and how much crack-isolation membrane does that take?",
	Inputs: []*calc.Input{cracks.Input, watched.Input, tile.Input, waste.Input, place.Input},
	Work:   work,
	Origin: "A strip of membrane lies over the crack, as wide as three pavers, so that the paver which bridges it is bonded to membrane alone. Its area is that width by the length of the cracks, with the overlaps on top.",
	Memory: []words.Msg{
		"Mark both ends of every crack with a date. One that has grown by the next visit is alive.",
		"Glue a glass slide or a gauge across it: a slide that breaks tells that it moves.",
		"Lay a straightedge across the crack: light under one side alone is an offset.",
		"A crack that follows a sawn or built joint is that joint. Carry it through the pavers as a soft joint.",
		"Vacuum the crack and fill it flush before the membrane, as its maker says.",
		"A crack that runs from a corner, or round a column, wants a reason before it wants a membrane.",
	},
}

// Guide is the width of crack that a textbook's table gives as a guide, by what reinforced concrete stands in. It is no limit of
// acceptance. Source: source.CrackWidths, source.CrackGuide.
func Guide(place string) unit.Length {
	switch place {
	case "dry":
		return 0.016 * unit.Inch
	case "deicing":
		return 0.007 * unit.Inch
	case "sea":
		return 0.006 * unit.Inch
	}
	return 0.012 * unit.Inch
}

// Strip is how wide the membrane over a crack is: by three pavers, and by the narrower reading, one and a half and at least 12 in. Source:
// source.CrackStrip, source.CrackStripNarrow.
func Strip(paver unit.Length) (wide, narrow unit.Length) {
	return tiles * paver, max(tilesNarrow*paver, leastNarrow)
}

// Stops reports whether a crack is past bridging: one side stands higher, or it moves. Source: source.CrackMembrane, source.CrackOffset.
func Stops(offset, moves unit.Length) bool { return offset > 0 || moves > 0 }

func work(e calc.Entry, s *calc.Sheet) {
	var bridged unit.Length
	stopped := unit.Count(0)
	for _, row := range cracks.Of(e) {
		if Stops(offset.At(row, 1), moves.At(row, 2)) {
			stopped++
			continue
		}
		bridged += length.At(row, 3)
	}
	wide, narrow := Strip(tile.Of(e))
	more := 1 + waste.Of(e)
	area, areaNarrow := wide.Times(bridged), narrow.Times(bridged)
	buy := area * unit.Area(more)

	verdict := calc.Gives(s, "verdict", "The cracks", stopped, unit.Whole1).First()
	switch {
	case stopped > 0:
		verdict.Says(words.Say("stop at {stopped}: ask an engineer", words.Is("stopped", stopped, unit.Whole1)))
	case watched.Of(e) == "no":
		verdict.Says(words.Say("wait: find out whether they move"))
	default:
		verdict.Says(words.Say("bridge them with a membrane"))
	}
	calc.Gives(s, "strip", "Width of the strip", wide, unit.InchMM).First()
	calc.Gives(s, "strip_narrow", "Width by the narrower reading", narrow, unit.InchMM)
	calc.Gives(s, "length", "Length to bridge", bridged, unit.FootMetre)
	calc.Gives(s, "membrane", "Membrane to buy", buy, unit.FootArea).
		Between(float64(areaNarrow), float64(buy), words.Say("The least is the narrower reading with nothing for overlaps.")).Buy().First()
	calc.Gives(s, "soft_run", "Soft joint beside the bridging pavers", 2*bridged, unit.FootMetre)

	calc.Let(s, "n", stopped, unit.Whole1)
	calc.Works(s, "Cracks that stop the work: those with one side higher and those that move, counted.", "N", stopped, unit.Whole1, "n", source.CrackMembrane)
	calc.Works(s, "Width of the strip: three pavers.", "W", wide, unit.InchMM, "3 * t", source.CrackStrip)
	calc.Let(s, "W_least", leastNarrow, unit.InchMM)
	calc.Works(s, "The narrower reading: one and a half pavers, and at least 12 in.", "W_n", narrow, unit.InchMM, "max(1.5 * t, W_least)", source.CrackStripNarrow)
	expr, terms := lengths(e)
	s.Step(words.Say("Length to bridge: the other cracks, added up."), calc.Sym("L_b", bridged, unit.FootMetre), expr, source.ByDefinition, terms...)
	calc.WorksUS(s, "Membrane: width by length, and overlaps and waste on top.", "A", buy, unit.FootArea, "W / 1000 * L_b * (1 + k / 100)", "W / 12 * L_b * (1 + k / 100)", source.CrackStrip)
	calc.Works(s, "Soft joints: the grout joints either side of the pavers that bridge the crack are filled with sealant.", "L_s", 2*bridged, unit.FootMetre, "2 * L_b", source.CrackStrip)

	table(e, s)
	cautions(e, s)
	s.Drawing = drawing(tile.Of(e), wide)
}

// shown is how many lengths the working writes out. The rest are one term.
const shown = 5

// lengths is the sum of the lengths to bridge as an expression and its terms.
func lengths(e calc.Entry) (string, []calc.Term) {
	parts := []string{"0"}
	var terms []calc.Term
	var rest unit.Length
	for i, row := range cracks.Of(e) {
		switch {
		case Stops(offset.At(row, 1), moves.At(row, 2)):
		case len(terms) == shown:
			rest += length.At(row, 3)
		default:
			symbol := "L_" + strconv.Itoa(i+1)
			parts = append(parts, symbol)
			terms = append(terms, calc.Sym(symbol, length.At(row, 3), unit.FootMetre))
		}
	}
	if rest > 0 {
		parts = append(parts, "L_rest")
		terms = append(terms, calc.Sym("L_rest", rest, unit.FootMetre))
	}
	if len(parts) > 1 {
		parts = parts[1:]
	}
	return strings.Join(parts, " + "), terms
}

// table tells of each crack what it means.
func table(e calc.Entry, s *calc.Sheet) {
	t := s.Table("cracks", "Crack by crack", "Crack", "Width", "Guide", "So")
	guide := Guide(place.Of(e))
	for i, row := range cracks.Of(e) {
		so := calc.Worded("bridge it with a membrane")
		switch {
		case offset.At(row, 1) > 0 && moves.At(row, 2) > 0:
			so = calc.Worded("stop: one side is higher, and it moves")
		case offset.At(row, 1) > 0:
			so = calc.Worded("stop: one side is higher by {offset}", offset.Is("offset", offset.At(row, 1)))
		case moves.At(row, 2) > 0:
			so = calc.Worded("stop: it moves by {movement}", moves.Is("movement", moves.At(row, 2)))
		case width.At(row, 0) > guide:
			so = calc.Worded("wider than the guide: ask why, then bridge it")
		}
		t.Row(calc.Amount(unit.Count(i+1), unit.Whole1), calc.Amount(width.At(row, 0), unit.InchMM), calc.Amount(guide, unit.InchMM), so)
	}
}

func cautions(e calc.Entry, s *calc.Sheet) {
	both := func(name string, l unit.Length) *words.Arg { return words.Both(name, l, unit.InchMM) }
	raised, moving, widest := false, unit.Length(0), unit.Length(0)
	for _, row := range cracks.Of(e) {
		raised = raised || offset.At(row, 1) > 0
		moving, widest = max(moving, moves.At(row, 2)), max(widest, width.At(row, 0))
	}
	if raised {
		s.Warn(calc.Stop, source.CrackOffset, "One side of a crack stands higher. The slab has moved up and down, which no membrane bridges: ask an engineer before anything is laid.")
	}
	if moving > 0 {
		s.Warn(calc.Stop, source.CrackMembrane, "A crack moves, by up to {moving}. Ask an engineer what moves it and which way, before anything is laid.", both("moving", moving))
	}
	if watched.Of(e) == "no" {
		s.Warn(calc.Care, source.CommonPractice, "Whether the cracks move is not known. Measure them hot and cold, or have an engineer look, before a membrane is chosen.")
	}
	if guide := Guide(place.Of(e)); widest > guide {
		s.Warn(calc.Care, source.CrackWidths, "The widest crack, {widest}, is past {guide}, a guide for reinforced concrete where this slab stands. It is no limit of acceptance, but asks for a reason.", both("widest", widest), both("guide", guide))
	}
	s.Warn(calc.Note, source.CrackGuide, "Guide widths are not limits of acceptance. Width alone does not tell whether a crack will move.")
	s.Warn(calc.Note, source.CrackLimits, "A membrane lets the sides of a crack part in its own plane: by {high} where it is of high performance, by {low} where it is standard. Its sheet tells.", both("high", moveHigh), both("low", moveLow))
	s.Warn(calc.Note, source.CrackStripNarrow, "Two widths are in print for the strip: three pavers, taken here, and one and a half, at least 12 in. The membrane's maker comes first.")
	s.Warn(calc.Care, source.CrackStrip, "The paver that bridges the crack is bonded wholly to membrane, and the joints either side of it are sealant, not grout. A membrane does not replace movement joints.")
	s.Warn(calc.Care, source.Silica, "Chasing or grinding a crack makes silica dust: a shroud with a vacuum, or water, and a respirator where the rule asks for one.")
}

// drawing shows the strip over a crack in plan: three pavers, the middle one bridging it, and the soft joints either side.
func drawing(paver, strip unit.Length) calc.Drawing {
	d := calc.Drawing{
		Title: "Membrane over a crack, from above",
		Says: words.Say("A strip of membrane {strip} wide lies along the crack, the thick line. Pavers {paver} wide are set over it, dashed; the joints either side of the ones that bridge the crack are soft.",
			words.Is("strip", strip, unit.InchMM), words.Is("paver", paver, unit.InchMM)),
	}
	long := 2 * paver
	d.Box(calc.Membrane, -strip/2, 0, strip, long)
	for i := -1; i <= 1; i++ {
		for j := range 2 {
			x, y := (unit.Length(i)-0.5)*paver, unit.Length(j)*paver
			d.Line(calc.Hidden, calc.Point{X: x, Y: y}, calc.Point{X: x + paver, Y: y}, calc.Point{X: x + paver, Y: y + paver}, calc.Point{X: x, Y: y + paver}, calc.Point{X: x, Y: y})
		}
	}
	soft := 0.04 * paver
	for _, x := range []unit.Length{-paver / 2, paver / 2} {
		d.Box(calc.Sealant, x-soft/2, 0, soft, long)
	}
	var crack []calc.Point
	for i, shift := range [...]unit.Length{0, 0.1, -0.05, 0.08, -0.1, 0.04, 0} {
		crack = append(crack, calc.Point{X: shift * paver, Y: long * unit.Length(i) / 6})
	}
	d.Line(calc.Strong, crack...)
	d.Dim(calc.Point{X: -strip / 2, Y: long}, calc.Point{X: strip / 2, Y: long}, 1.5, unit.Fig(strip, unit.InchMM))
	d.Dim(calc.Point{X: -paver / 2, Y: 0}, calc.Point{X: paver / 2, Y: 0}, -1.5, unit.Fig(paver, unit.InchMM))
	return d
}
