package setout

import (
	"math"
	"slices"
	"strconv"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// way is the direction that the work goes in, in the pattern's axes: along one of them, from the building or whatever
// shuts the crew in, towards an open edge.
type way struct {
	across bool    // rows are set one after another along x, else along y
	back   bool    // towards smaller figures
	open   float64 // length of open edge that the last rows come out at
}

// towards finds the way: the one that leaves the most of the building behind and comes out at the most open edge. Common
// practice: work away from the building, out at an open edge, so that nobody kneels on wet work.
func (p *plan) towards() way {
	var best way
	score := math.Inf(-1)
	for _, w := range []way{{}, {back: true}, {across: true}, {across: true, back: true}} {
		var behind, out, shut float64
		n := len(p.outline.Corners)
		for i := range n {
			a, b := p.ground.Along(p.outline.Corners[i]), p.ground.Along(p.outline.Corners[(i+1)%n])
			// The edge's outer normal, with the outline counterclockwise, by its length.
			nx, ny := b.Y-a.Y, a.X-b.X
			if p.clockwise {
				nx, ny = -nx, -ny
			}
			along := ny
			if w.across {
				along = nx
			}
			if w.back {
				along = -along
			}
			switch kind := p.outline.Edge(i); {
			case kind == paving.Building:
				behind -= 4 * along
			case kind == paving.Wall && along > 0:
				shut += along
			case kind == paving.Open && along > 0:
				out += along
			}
		}
		if s := behind + out - shut; s > score+1 {
			score, best = s, w
			best.open = out
		}
	}
	return best
}

// rank is where a piece stands in the order of setting: by its row, and along the row.
func (p *plan) rank(piece *paving.Piece) float64 {
	x, y := (piece.Cell.X0+piece.Cell.X1)/2, (piece.Cell.Y0+piece.Cell.Y1)/2
	if p.way.across {
		x, y = y, x
	}
	if p.way.back {
		y = -y
	}
	return math.Round(y)*1e3 + x*1e-6
}

// set is one piece in the order of setting, with its row and the mix that it comes out of.
type set struct {
	piece int
	row   int // from nought
	mix   int
}

// order is the pieces in the order of setting. Pieces of one row lie within half a paver along the way.
func (p *plan) order() []set {
	list := make([]set, len(p.laid.Pieces))
	for i := range list {
		list[i].piece = i
	}
	ranks := make([]float64, len(list))
	for i := range p.laid.Pieces {
		ranks[i] = p.rank(&p.laid.Pieces[i])
	}
	slices.SortStableFunc(list, func(a, b set) int {
		switch d := ranks[a.piece] - ranks[b.piece]; {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
	row, covered := 0, 0.0
	for i := range list {
		if i > 0 && ranks[list[i].piece]-ranks[list[i-1].piece] > 500e3 {
			row++
		}
		piece := &p.laid.Pieces[list[i].piece]
		list[i].row = row
		list[i].mix = int(covered / float64(p.mix))
		covered += piece.Area
	}
	return list
}

// orderDrawing shows the rows with their numbers in the order of setting, the way that the work goes, and which pieces
// each mix covers: every other mix is hatched, and its first piece marked.
func (p *plan) orderDrawing(d *calc.Drawing) {
	var plain, hatched [][]calc.Point
	var ends []float64 // of each row: its middle, across the way
	mixes := 0
	for i, s := range p.steps {
		piece := &p.laid.Pieces[s.piece]
		if s.mix%2 == 0 {
			plain = append(plain, p.face(piece)...)
		} else {
			hatched = append(hatched, p.face(piece)...)
		}
		if i == 0 || s.row != p.steps[i-1].row {
			middle := (piece.Cell.Y0 + piece.Cell.Y1) / 2
			if p.way.across {
				middle = (piece.Cell.X0 + piece.Cell.X1) / 2
			}
			ends = append(ends, middle)
		}
		mixes = s.mix + 1
	}
	d.Areas(calc.Outline, plain)
	d.Areas(calc.Paver, hatched)
	p.walls(d)
	d.Areas(calc.Outline, p.edgeRings())
	p.arrow(d)
	pitch := p.pitch()
	marks := make([]calc.Point, len(ends))
	for i, middle := range ends {
		q := paving.Point{X: p.box.X0 - 1.9*p.margin(), Y: middle}
		if p.way.across {
			q = paving.Point{X: middle, Y: p.box.Y0 - 1.9*p.margin()}
		}
		n := strconv.Itoa(i + 1)
		room := high(pitch, n)
		if p.way.across {
			room = min(room, pitch)
		}
		marks[i] = p.at(q)
		d.Mark(marks[i], room, words.Say("{n}", words.Text("n", n)))
	}
	l := labelled(d)
	for i := range marks {
		l.keep(marks[i], len(strconv.Itoa(i+1)))
	}
	p.mixMarks(l)
	d.Says = words.Say("{rows} rows, numbered in the order of setting; the arrow is the way that the work goes. M1, M2 and so on are {mixes} mixes, at {area} a mix; every other one is hatched. Each is marked where it begins, or a few pavers on where that is too narrow; the list has them all.",
		words.Is("rows", unit.Count(len(ends)), unit.Whole1), words.Is("mixes", unit.Count(mixes), unit.Whole1), words.Is("area", p.mix, unit.FootArea))
}

// mixMarks writes the number of each mix on its first piece that holds it, or else on its first that is as wide, or on any, where nothing is
// written yet.
func (p *plan) mixMarks(l *labels) {
	low, high := p.extent()
	for i := 0; i < len(p.steps); {
		mix := p.steps[i].mix
		n := "M" + strconv.Itoa(mix+1)
		long := l.letter * 0.6 * unit.Length(len(n))
		var holding, wide, other []calc.Point
		for ; i < len(p.steps) && p.steps[i].mix == mix; i++ {
			piece := &p.laid.Pieces[p.steps[i].piece]
			at, room := p.label(piece, n)
			place := l.within(p.at(at), len(n), low, high)
			switch {
			case room >= long:
				holding = append(holding, place)
			case piece.Full || through(piece.Rings, at, paving.Point{X: 1}) >= long:
				wide = append(wide, place)
			default:
				other = append(other, place)
			}
		}
		l.place(words.Say("{n}", words.Text("n", n)), len(n), append(append(holding, wide...), other...)...)
	}
}

// mixList is where each mix begins, since a plan of many mixes has no room to mark them all.
func (p *plan) mixList(s *calc.Sheet) {
	t := s.Table("mixes", "Where each mix begins", "Mix number", "Row", "Paver of that row")
	if last := p.steps[len(p.steps)-1].mix + 1; last > listed {
		t.Says = words.Say("The first {listed} of {all} mixes.", words.Is("listed", unit.Count(listed), unit.Whole1), words.Is("all", unit.Count(last), unit.Whole1))
	}
	along := paving.Point{X: 1}
	if p.way.across {
		along = paving.Point{Y: 1}
	}
	nought, one := p.at(paving.Point{}), p.at(along)
	nth := 0
	for i, step := range p.steps {
		nth++
		if i > 0 && step.row != p.steps[i-1].row {
			nth = 1
		}
		if i > 0 && step.mix == p.steps[i-1].mix || step.mix >= listed {
			continue
		}
		t.Row(calc.Marked("M"+strconv.Itoa(step.mix+1)), calc.Amount(unit.Count(step.row+1), unit.Whole1), counted(nth, one.X-nought.X, one.Y-nought.Y))
	}
}

// counted says which piece of a row is meant, and from which end the row is counted that runs so on the plan.
func counted(nth int, dx, dy unit.Length) calc.Cell {
	n := words.Is("n", unit.Count(nth), unit.Whole1)
	switch {
	case max(dx, -dx) < max(dy, -dy) && dy > 0:
		return calc.Worded("{n} from below", n)
	case max(dx, -dx) < max(dy, -dy):
		return calc.Worded("{n} from above", n)
	case dx < 0:
		return calc.Worded("{n} from the right", n)
	}
	return calc.Worded("{n} from the left", n)
}

func middle(r paving.Rect) paving.Point {
	return paving.Point{X: (r.X0 + r.X1) / 2, Y: (r.Y0 + r.Y1) / 2}
}

// arrow points the way of the work, beside the paving.
func (p *plan) arrow(d *calc.Drawing) {
	m := p.margin()
	b := p.box
	tail, head := paving.Point{X: b.X1 + m, Y: b.Y0}, paving.Point{X: b.X1 + m, Y: b.Y1}
	if p.way.across {
		tail, head = paving.Point{X: b.X0, Y: b.Y1 + m}, paving.Point{X: b.X1, Y: b.Y1 + m}
	}
	if p.way.back {
		tail, head = head, tail
	}
	long := math.Hypot(head.X-tail.X, head.Y-tail.Y)
	ux, uy := (head.X-tail.X)/long*m/2, (head.Y-tail.Y)/long*m/2
	d.Line(calc.Strong, p.at(tail), p.at(head))
	d.Line(calc.Strong, p.at(paving.Point{X: head.X - ux - uy/2, Y: head.Y - uy + ux/2}), p.at(head),
		p.at(paving.Point{X: head.X - ux + uy/2, Y: head.Y - uy - ux/2}))
}
