package setout

import (
	"slices"
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func (p *plan) tables(s *calc.Sheet) {
	p.layouts(s)
	p.cutList(s)
	p.chalkList(s)
	p.diagonals(s)
	p.mixList(s)
}

// layouts is the best few that the search found.
func (p *plan) layouts(s *calc.Sheet) {
	if len(p.best) == 0 {
		return
	}
	t := s.Table("layouts", "The best few layouts", "Layout", "Pieces under half", "Narrowest cut, of a paver", "Opposite cuts equal", "Cut pieces", "Pavers")
	t.Says = words.Say("First those with no piece under half a paver, equal cuts at opposite edges before others. Where some must be under half, the fewest cut pieces, each of those counted three times and up to eleven, the narrower the more. Pavers are before spares, with the cut pieces nested roughly.")
	if p.inOrder {
		t.Says = words.Say("First those with no piece under half a paver. Then, as among them: equal cuts at opposite edges, the widest narrowest cut, the fewest pavers. Pavers are before spares, with the cut pieces nested roughly.")
	}
	if p.stopped {
		t.Says = words.Say("The search was ended early: these are the best so far.")
	}
	for i, c := range p.best {
		at := p.at(paving.Point{X: c.Grid.X.First, Y: c.Grid.Y.First})
		t.Row(calc.Marked(strconv.Itoa(i+1)), calc.Amount(unit.Count(c.slim), unit.Whole1), calc.Amount(unit.Ratio(c.Why.Narrowest), unit.Share),
			balanced(c.Why), calc.Amount(unit.Count(c.Why.Cuts), unit.Whole1), calc.Amount(c.pavers, unit.Whole1)).Offer("Use this", from(at.X, at.Y))
	}
}

func balanced(w paving.Why) calc.Cell {
	switch {
	case w.BalancedX && w.BalancedY:
		return calc.Worded("both ways")
	case w.BalancedX:
		return calc.Worded("along the rows")
	case w.BalancedY:
		return calc.Worded("across the rows")
	}
	return calc.Worded("no")
}

// listed is how many kinds of cut are listed: a page of hundreds helps nobody, and the plan marks them all.
const listed = 60

func (p *plan) cutList(s *calc.Sheet) {
	if len(p.laid.Cuts) == 0 {
		return
	}
	t := s.Table("cuts", "Cuts", "Mark", "Length", "Width", "How many", "Shape", "Fields")
	t.Says = words.Say("Length is along the paver’s length. A shaped piece is given by the box about it: take its shape from the plan, and lay it on the paver face up.")
	if len(p.laid.Cuts) > listed {
		t.Says = words.Say("The {listed} most frequent of {all} kinds. Where so many differ, mark each paver in its place.",
			words.Is("listed", unit.Count(listed), unit.Whole1), words.Is("all", unit.Count(len(p.laid.Cuts)), unit.Whole1))
	}
	fields := make([][]int, len(p.laid.Cuts))
	for i := range p.laid.Pieces {
		if piece := &p.laid.Pieces[i]; !piece.Full && !slices.Contains(fields[piece.Cut], piece.Field+1) {
			fields[piece.Cut] = append(fields[piece.Cut], piece.Field+1)
		}
	}
	for i, c := range p.laid.Cuts[:min(listed, len(p.laid.Cuts))] {
		shape := calc.Worded("shaped")
		if c.Square {
			shape = calc.Worded("straight")
		}
		t.Row(calc.Marked(c.Mark), calc.Amount(unit.Length(c.L), size), calc.Amount(unit.Length(c.W), size),
			calc.Amount(unit.Count(c.Count), unit.Whole1), shape, calc.Marked(list(fields[i])))
	}
}

// list writes numbers with commas between them, the first dozen.
func list(numbers []int) string {
	slices.Sort(numbers)
	var parts []string
	for i, n := range numbers {
		if i == 12 {
			parts = append(parts, "…")
			break
		}
		parts = append(parts, strconv.Itoa(n))
	}
	return strings.Join(parts, ", ")
}

func (p *plan) chalkList(s *calc.Sheet) {
	lines := p.chalks()
	if len(lines) == 0 {
		return
	}
	t := s.Table("chalk", "Chalk lines", "Line", "First mark", "Second mark")
	t.Says = words.Say("Each is snapped between two marks on the edges. Corners are numbered as they are given.")
	for _, l := range lines {
		name := calc.Worded("side of a row of pavers")
		switch {
		case l.soft && l.rows:
			name = calc.Worded("middle of a movement joint, along the rows")
		case l.soft:
			name = calc.Worded("middle of a movement joint, across the rows")
		case !l.rows:
			name = calc.Worded("side of pavers, across the rows")
		}
		t.Row(name, l.first.cell(), l.last.cell())
	}
}

func (m mark) cell() calc.Cell {
	return calc.Worded("{far} from corner {corner} towards {towards}", words.Is("far", m.far, far),
		words.Is("corner", unit.Count(m.corner+1), unit.Whole1), words.Is("towards", unit.Count(m.towards+1), unit.Whole1))
}

func (p *plan) corner(i int) calc.Cell { return calc.Marked(strconv.Itoa(i + 1)) }

// diagonals part the outline into triangles: with the sides they fix its shape.
func (p *plan) diagonals(s *calc.Sheet) {
	found := p.outline.Diagonals()
	if len(found) == 0 {
		return
	}
	t := s.Table("diagonals", "Diagonals to check", "From corner", "To corner", "Length")
	t.Says = words.Say("With the sides, they prove the outline before anything is cut.")
	for _, d := range found {
		t.Row(p.corner(d.From), p.corner(d.To), calc.Amount(d.Length, far))
	}
}
