package setout

import (
	"math"
	"slices"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
)

// clipped is the parts of the endless line from a along d that lie within rings (even-odd), each from its start to its
// end, as shares of d.
func clipped(rings [][]paving.Point, a, d paving.Point) (parts [][2]float64) {
	var at []float64
	side := func(p paving.Point) float64 { return d.X*(p.Y-a.Y) - d.Y*(p.X-a.X) }
	for _, ring := range rings {
		p := ring[len(ring)-1]
		for _, q := range ring {
			if sp, sq := side(p), side(q); (sp > 0) != (sq > 0) {
				t := sp / (sp - sq)
				x, y := p.X+t*(q.X-p.X)-a.X, p.Y+t*(q.Y-p.Y)-a.Y
				at = append(at, (x*d.X+y*d.Y)/(d.X*d.X+d.Y*d.Y))
			}
			p = q
		}
	}
	slices.Sort(at)
	for i := 0; i+1 < len(at); i += 2 {
		parts = append(parts, [2]float64{at[i], at[i+1]})
	}
	return parts
}

// within are the parts of an endless line of the pattern that lie on the paving, in the site's axes.
func (p *plan) within(a, d paving.Point) (lines [][]calc.Point) {
	for _, part := range clipped(p.rings, a, d) {
		lines = append(lines, []calc.Point{
			p.at(paving.Point{X: a.X + d.X*part[0], Y: a.Y + d.Y*part[0]}),
			p.at(paving.Point{X: a.X + d.X*part[1], Y: a.Y + d.Y*part[1]}),
		})
	}
	return lines
}

// upright is the line of the pattern at x, and level the one at y.
func upright(x float64) (a, d paving.Point) {
	return paving.Point{X: x}, paving.Point{Y: float64(unit.Metre)}
}

func level(y float64) (a, d paving.Point) {
	return paving.Point{Y: y}, paving.Point{X: float64(unit.Metre)}
}

// mark is where a chalk line meets an edge: so far from the edge's nearer corner, towards its other.
type mark struct {
	corner, towards int
	far             unit.Length
	at              calc.Point
}

// marks are where an endless line in the site's axes meets the outline's edges, the two that lie furthest apart: a line
// is snapped between them.
func (p *plan) marks(line []calc.Point) (first, last mark, ok bool) {
	a, b := line[0], line[1]
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	side := func(q []float64) float64 { return dx*(q[1]-float64(a.Y)) - dy*(q[0]-float64(a.X)) }
	low, high := math.Inf(1), math.Inf(-1)
	for i, q := range p.corners {
		r := p.corners[(i+1)%len(p.corners)]
		sq, sr := side(q), side(r)
		if (sq > 0) == (sr > 0) {
			continue
		}
		t := sq / (sq - sr)
		x, y := q[0]+t*(r[0]-q[0]), q[1]+t*(r[1]-q[1])
		side := unit.Length(math.Hypot(r[0]-q[0], r[1]-q[1]))
		m := mark{i, (i + 1) % len(p.corners), unit.Length(t) * side, calc.Point{X: unit.Length(x), Y: unit.Length(y)}}
		if t > 0.5 {
			m.corner, m.towards, m.far = m.towards, m.corner, side-m.far
		}
		along := (x-float64(a.X))*dx + (y-float64(a.Y))*dy
		if along < low {
			low, first = along, m
		}
		if along > high {
			high, last = along, m
		}
	}
	return first, last, high > low
}

// chalk is one line to snap.
type chalk struct {
	soft        bool // the middle of a movement joint; else the side of a row of pavers to start from
	rows        bool // it runs along the rows
	first, last mark
}

// chalks are the lines to snap: one to start from each way, and the middle of each movement joint.
func (p *plan) chalks() (lines []chalk) {
	add := func(soft, rows bool, a, d paving.Point) {
		line := []calc.Point{p.at(a), p.at(paving.Point{X: a.X + d.X, Y: a.Y + d.Y})}
		if first, last, ok := p.marks(line); ok {
			lines = append(lines, chalk{soft, rows, first, last})
		}
	}
	if s, ok := p.starts(); ok {
		a, d := level(s.Y)
		add(false, true, a, d)
		a, d = upright(s.X)
		add(false, false, a, d)
	}
	for _, y := range p.laid.LinesY {
		a, d := level(y)
		add(true, true, a, d)
	}
	for _, x := range p.laid.LinesX {
		a, d := upright(x)
		add(true, false, a, d)
	}
	return lines
}

// starts is the lower left corner of the whole paver to start from: of the first row with whole pavers in the order of
// setting, the one that leaves the most room to square the two lines up.
func (p *plan) starts() (paving.Point, bool) {
	best, found := paving.Point{}, false
	var row float64
	var most unit.Length
	for _, s := range p.steps {
		piece := &p.laid.Pieces[s.piece]
		switch {
		case !piece.Full:
			continue
		case !found:
			row = p.rank(piece)
		case p.rank(piece) > row+500e3:
			return best, true
		}
		at := paving.Point{X: piece.Cell.X0, Y: piece.Cell.Y0}
		if room := p.triangle(at).room; !found || room > most {
			best, most = at, room
		}
		found = true
	}
	return best, found
}
