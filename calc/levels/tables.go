package levels

import (
	"math"
	"slices"

	"setbook/calc"
	"setbook/calc/surface"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// tables holds the readings against each rule in print, and lists the lines by flatness number.
func (v *survey) tables(e calc.Entry, s *calc.Sheet) {
	t := s.Table("rules", "Straightedge against the rules", "Rule", "Straightedge", "May be", "Worst gap", "So")
	row := func(rule calc.Cell, long, most unit.Length, gap surface.Gap) {
		found, so := calc.Amount(unit.Length(gap.Depth), unit.InchMM), calc.Worded("within")
		switch {
		case gap.Span == 0:
			found, so = calc.Worded("not seen"), calc.Worded("not known")
		case over(gap.Depth, most):
			so = calc.Worded("over")
		}
		t.Row(rule, calc.Amount(long, unit.FootMetre), calc.Amount(most, unit.InchMM), found, so)
	}
	ten, two, both := limits(edge.Of(e))
	row(calc.Worded("ANSI A108.02, this paver"), tenFeet, ten, v.gaps[underTen])
	if both {
		row(calc.Worded("ANSI A108.02, this paver"), twoFeet, two, v.gaps[underTwo])
	}
	own := straight.Of(e)
	for i, rule := range [...]words.Msg{
		"DIN 18202 line 1: a bare slab", "DIN 18202 line 2: to take a bed", "DIN 18202 line 3: to take tile", "DIN 18202 line 4: the same, higher demand",
	} {
		row(calc.Cell{Says: words.Say(rule)}, own, German(i+1, own), v.gaps[underOwn])
	}
	for i, most := range british {
		row(calc.Worded("BS 8204 class SR{class}", words.Is("class", unit.Count(i+1), unit.Whole1)), twoMetres, most, v.gaps[underMetric])
	}

	v.marks(s)
	if len(v.flat) == 0 {
		return
	}
	const shown = 12
	lines := s.Table("lines", "Flatness number, line by line, the roughest first", "Line", "Readings", "FF")
	for _, l := range v.flat[:min(len(v.flat), shown)] {
		number := words.Is("number", unit.Count(l.number), unit.Whole1)
		name := calc.Worded("row {number}", number)
		if !l.row {
			name = calc.Worded("place {number} in the rows", number)
		}
		found := calc.Amount(F(l.Flatness), unit.Bare)
		if F(l.Flatness) >= flatMost {
			found = calc.Worded("straight")
		}
		lines.Row(name, calc.Amount(unit.Count(l.Bends+2), unit.Whole1), found)
	}
}

// marks lists the readings that are farthest from what the slab is filled to, to be chalked on it.
func (v *survey) marks(s *calc.Sheet) {
	const shown = 8
	var worst []int // indexes of readings, the farthest first
	for i, d := range v.below {
		if !(math.Abs(d) >= float64(finest)) {
			continue
		}
		k := len(worst)
		for k > 0 && math.Abs(v.below[worst[k-1]]) < math.Abs(d) {
			k--
		}
		if k < shown {
			worst = slices.Insert(worst, k, i)[:min(len(worst)+1, shown)]
		}
	}
	if len(worst) == 0 {
		return
	}
	t := s.Table("marks", "To be marked on the slab, the farthest first", "Row", "Place in the row", "So")
	for _, i := range worst {
		p, d := v.grid.Place(i), unit.Length(v.below[i])
		so := calc.Worded("fill {depth}", words.Is("depth", d, unit.InchMM))
		if d < 0 {
			so = calc.Worded("grind {depth}", words.Is("depth", -d, unit.InchMM))
		}
		t.Row(calc.Amount(unit.Count(p.Row+1), unit.Whole1), calc.Amount(unit.Count(p.Col+1), unit.Whole1), so)
	}
}
