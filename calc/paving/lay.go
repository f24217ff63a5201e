package paving

import (
	"cmp"
	"math"
	"slices"

	"setbook/calc/unit"
)

// layer lays one grid. With tally set it counts what the search asks for, and keeps no piece that is whole.
type layer struct {
	*Ground
	Layout
	clip  clipper
	edges []flight // of what is paved, for the row in hand
	band  [][]Point
	rest  [][]Point // of the band, what is right of the last cut
	mid   []float64 // where the row's middle crosses the band's edges
	tally bool
	least float64 // the narrowest cut that the outline makes, as a share of the paver
}

// flight is the stretch of a row that an edge crosses.
type flight struct{ from, to float64 }

// Lay puts pavers on a grid.
func (g *Ground) Lay(grid Grid) Layout {
	l := layer{Ground: g, Layout: Layout{Grid: grid}}
	l.Pieces = make([]Piece, 0, int(g.area/(float64(g.paver.L+g.paver.Joint)*float64(g.paver.W+g.paver.Joint)))+64)
	l.lay()
	l.mark()
	return l.Layout
}

func (l *layer) lay() {
	x, y := l.rulers()
	xs, ys := x.spans(l.Grid.X), y.spans(l.Grid.Y)
	l.LinesX, l.LinesY = lines(xs), lines(ys)
	l.SpanX = unit.Length(longest(l.LinesX, x.from, x.to))
	l.SpanY = unit.Length(longest(l.LinesY, y.from, y.to))
	if !l.tally {
		l.soft(xs, ys)
	}
	number := make([]int, len(xs))
	for fy := range ys {
		for fx := range xs {
			number[fx] = l.field(fx, fy, xs[fx], ys[fy])
		}
		y := &ys[fy]
		last := y.from
		for r := range y.modules {
			y0 := y.at + float64(r)*float64(l.paver.W+l.paver.Joint)
			y1 := math.Min(y0+float64(l.paver.W), y.to)
			if y0 >= y1 {
				break
			}
			if !l.tally {
				l.bedJoint(xs, last, y0)
			}
			l.row(xs, r, number, math.Max(y0, y.from), y1)
			last = y1
		}
		if !l.tally {
			l.bedJoint(xs, last, y.to)
		}
	}
	for i := range l.Pieces {
		l.Areas.Pavers += l.Pieces[i].Area
	}
	a := &l.Areas
	a.Perimeter, a.Structural = areas(l.parts[gap]), areas(l.parts[structure])
	l.GroutRun = unit.Length(a.Grout / float64(l.paver.Joint))
	if l.joints.Movement > 0 {
		l.MovementRun = unit.Length(a.Movement / float64(l.joints.Movement))
	}
	if l.joints.Structural > 0 {
		l.StructureRun = unit.Length(a.Structural / float64(l.joints.Structural))
	}
	l.PerimeterRun = unit.Length(l.run)
}

// soft counts the movement joints: those across the rows in full, those along the rows between them.
func (l *layer) soft(xs, ys []span) {
	for i := 1; i < len(xs); i++ {
		l.Areas.Movement += covered(l.parts[paving], Rect{xs[i-1].to, l.reach.Y0, xs[i].from, l.reach.Y1})
	}
	for i := 1; i < len(ys); i++ {
		for _, x := range xs {
			l.Areas.Movement += covered(l.parts[paving], Rect{x.from, ys[i-1].to, x.to, ys[i].from})
		}
	}
}

// bedJoint counts the hard joint between two rows, from field to field.
func (l *layer) bedJoint(xs []span, y0, y1 float64) {
	if y1 <= y0 {
		return
	}
	for _, x := range xs {
		l.Areas.Grout += covered(l.parts[paving], Rect{x.from, y0, x.to, y1})
	}
}

// field enters a field, if there is paving in it, and gives its number.
func (l *layer) field(fx, fy int, x, y span) int {
	e := l.reach
	f := Field{Rect: Rect{math.Max(x.from, e.X0), math.Max(y.from, e.Y0), math.Min(x.to, e.X1), math.Min(y.to, e.Y1)}, X: fx, Y: fy}
	if !l.tally {
		paved := false
		for _, r := range l.clip.to(l.parts[paving], f.Rect) {
			if area(r) > 0 {
				paved = true
				f.Parts += b2i(thick(plain(r, micron)))
			}
		}
		if !paved {
			return -1
		}
	}
	l.Fields = append(l.Fields, f)
	return len(l.Fields) - 1
}

// row lays the pavers of one row in every field.
func (l *layer) row(xs []span, r int, number []int, y0, y1 float64) {
	l.band = l.clip.band(l.parts[paving], y0, y1)
	l.scan(y0, y1)
	l.rest = l.band
	module, long := float64(l.paver.L+l.paver.Joint), float64(l.paver.L)
	shift := l.shift(float64(r))
	for fx, x := range xs {
		first := 0
		if shift > near {
			first = -1
		}
		last := x.from
		for c := first; ; c++ {
			at := x.at + shift + float64(c)*module
			if at >= x.to {
				break
			}
			x0, x1 := math.Max(at, x.from), math.Min(at+long, x.to)
			if x1 <= x0 {
				continue
			}
			l.headJoint(Rect{last, y0, x0, y1})
			l.cell(Piece{Field: number[fx], Row: r, Col: c, Cell: Rect{at, y0, at + long, y0 + float64(l.paver.W)}}, Rect{x0, y0, x1, y1})
			last = x1
		}
		l.headJoint(Rect{last, y0, x.to, y1})
	}
}

// scan notes where edges cross a row, and where they cross its middle.
func (l *layer) scan(y0, y1 float64) {
	l.edges, l.mid = l.edges[:0], l.mid[:0]
	half := (y0 + y1) / 2
	for _, ring := range l.band {
		a := ring[len(ring)-1]
		for _, b := range ring {
			if !(a.Y == y0 && b.Y == y0 || a.Y == y1 && b.Y == y1) {
				l.edges = append(l.edges, flight{math.Min(a.X, b.X), math.Max(a.X, b.X)})
			}
			if (a.Y > half) != (b.Y > half) {
				l.mid = append(l.mid, a.X+(b.X-a.X)*((half-a.Y)/(b.Y-a.Y)))
			}
			a = b
		}
	}
	slices.SortFunc(l.edges, func(a, b flight) int { return cmp.Compare(a.from, b.from) })
	slices.Sort(l.mid)
	kept := l.edges[:0]
	for _, e := range l.edges {
		if n := len(kept); n > 0 && e.from <= kept[n-1].to {
			kept[n-1].to = math.Max(kept[n-1].to, e.to)
			continue
		}
		kept = append(kept, e)
	}
	l.edges = kept
}

// crossed says whether an edge crosses the stretch of the row from x0 to x1. Stretches are asked for from left to right.
func (l *layer) crossed(x0, x1 float64) bool {
	for len(l.edges) > 0 && l.edges[0].to <= x0 {
		l.edges = l.edges[1:]
	}
	return len(l.edges) > 0 && l.edges[0].from < x1
}

// inside says whether a stretch that no edge crosses is paved.
func (l *layer) inside(x0, x1 float64) bool {
	n, _ := slices.BinarySearch(l.mid, (x0+x1)/2)
	return n&1 == 1
}

// headJoint counts the hard joint between two pavers of a row.
func (l *layer) headJoint(r Rect) {
	switch {
	case l.tally || r.X1 <= r.X0:
	case l.crossed(r.X0, r.X1):
		l.Areas.Grout += covered(l.parts[paving], r)
	case l.inside(r.X0, r.X1):
		l.Areas.Grout += (r.X1 - r.X0) * (r.Y1 - r.Y0)
	}
}

// cell lays one paver, whose place is what of its cell the field has room for.
func (l *layer) cell(p Piece, place Rect) {
	if !l.crossed(place.X0, place.X1) {
		if l.inside(place.X0, place.X1) {
			l.whole(p, place)
		}
		return
	}
	l.rest = l.clip.cut(l.rest, right, place.X0)
	rings := l.clip.cut(l.rest, left, place.X1)
	for i, r := range rings {
		if a := area(r); a > 0 {
			l.piece(p, r, a, rings, i)
		}
	}
}

// whole lays a place that lies on the paving in full: a whole paver, unless the field's end cuts it.
func (l *layer) whole(p Piece, r Rect) {
	p.Area = (r.X1 - r.X0) * (r.Y1 - r.Y0)
	if math.Max(r.X0-p.Cell.X0, p.Cell.X1-r.X1) < float64(Trim) && p.Cell.Y1-r.Y1 < float64(Trim) {
		p.Full, p.Cut = true, -1
		l.Full++
		l.keep(p)
		return
	}
	l.piece(p, []Point{{r.X0, r.Y0}, {r.X1, r.Y0}, {r.X1, r.Y1}, {r.X0, r.Y1}}, p.Area, nil, 0)
}

// piece lays what is left of a paver: a ring, with those holes of the cell that lie in it.
func (l *layer) piece(p Piece, r []Point, a float64, all [][]Point, own int) {
	p.Area = a
	p.Rings = [][]Point{plain(r, micron)}
	for i, h := range all {
		if i != own && area(h) < 0 && within(h[0], p.Rings[:1]) {
			p.Area += area(h)
			p.Rings = append(p.Rings, plain(h, micron))
		}
	}
	switch {
	case !thick(p.Rings[0]):
		l.Areas.Slivers += p.Area
		return
	case len(p.Rings) == 1 && fills(p.Rings[0], p.Cell):
		p.Full, p.Rings, p.Cut = true, nil, -1
		l.Full++
	}
	if l.tally && !p.Full && all != nil {
		b := bounds(p.Rings[0])
		l.least = math.Min(l.least, math.Min((b.X1-b.X0)/float64(l.paver.L), (b.Y1-b.Y0)/float64(l.paver.W)))
	}
	l.keep(p)
}

func (l *layer) keep(p Piece) {
	if !l.tally || !p.Full {
		l.Pieces = append(l.Pieces, p)
	}
}

// thick says whether a ring is more than a sliver.
func thick(r []Point) bool { return len(r) > 2 && narrowest(r) >= float64(Sliver) }

// narrowest is the least width of a ring square to one of its sides.
func narrowest(r []Point) float64 {
	least := math.Inf(1)
	a := r[len(r)-1]
	for _, b := range r {
		way := minus(b, a)
		far := length(way)
		lo, hi := 0.0, 0.0
		for _, p := range r {
			off := cross(way, minus(p, a)) / far
			lo, hi = math.Min(lo, off), math.Max(hi, off)
		}
		least = math.Min(least, hi-lo)
		a = b
	}
	return least
}

// fills says whether a piece lacks no more of its cell than Trim, anywhere.
func fills(r []Point, cell Rect) bool {
	const trim = float64(Trim)
	long, wide := cell.X1-cell.X0, cell.Y1-cell.Y0
	if area(r) < (long-2*trim)*(wide-2*trim) {
		return false
	}
	corners := 0
	for _, p := range r {
		x := math.Min(p.X-cell.X0, cell.X1-p.X) < trim
		y := math.Min(p.Y-cell.Y0, cell.Y1-p.Y) < trim
		if !x && !y {
			return false
		}
		if x && y {
			corners |= 1 << (b2i(p.X-cell.X0 < trim) + 2*b2i(p.Y-cell.Y0 < trim))
		}
	}
	return corners == 15
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
