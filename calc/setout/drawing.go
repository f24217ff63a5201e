package setout

import (
	"math"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// at is a place of the pattern in the site's axes, as drawn.
func (p *plan) at(q paving.Point) calc.Point {
	s := p.ground.Site(q)
	return calc.Point{X: unit.Length(s.X), Y: unit.Length(s.Y)}
}

func (p *plan) ring(r []paving.Point) []calc.Point {
	points := make([]calc.Point, len(r))
	for i, q := range r {
		points[i] = p.at(q)
	}
	return points
}

// face is the outlines of a piece as laid.
func (p *plan) face(piece *paving.Piece) (rings [][]calc.Point) {
	if piece.Full {
		c := piece.Cell
		return [][]calc.Point{p.ring([]paving.Point{{X: c.X0, Y: c.Y0}, {X: c.X1, Y: c.Y0}, {X: c.X1, Y: c.Y1}, {X: c.X0, Y: c.Y1}})}
	}
	for _, r := range piece.Rings {
		rings = append(rings, p.ring(r))
	}
	return rings
}

// edgeRings are the outlines of the paving and of its holes.
func (p *plan) edgeRings() (rings [][]calc.Point) {
	for _, r := range p.rings {
		rings = append(rings, p.ring(r))
	}
	return rings
}

// margin is the room that is kept about the paving for what stands beside it.
func (p *plan) margin() float64 { return 0.045 * math.Max(p.box.X1-p.box.X0, p.box.Y1-p.box.Y0) }

// pitch is how far one row lies from the next along the way of the work.
func (p *plan) pitch() unit.Length {
	if p.way.across {
		return p.paver.L + p.paver.Joint
	}
	return p.paver.W + p.paver.Joint
}

// planDrawing is the plan to build from.
func (p *plan) planDrawing(d *calc.Drawing) {
	var whole, cut [][]calc.Point
	for i := range p.laid.Pieces {
		piece := &p.laid.Pieces[i]
		if piece.Full {
			whole = append(whole, p.face(piece)...)
		} else {
			cut = append(cut, p.face(piece)...)
		}
	}
	p.walls(d)
	d.Areas(calc.Outline, whole)
	d.Areas(calc.Mortar, cut)
	d.Areas(calc.Outline, p.edgeRings())
	d.Lines(calc.Strong, p.soft())
	p.snapped(d)
	for i := range p.laid.Pieces {
		if piece := &p.laid.Pieces[i]; !piece.Full {
			at, room := p.label(piece)
			d.Mark(p.at(at), room, words.Say("{mark}", words.Text("mark", p.laid.Cuts[piece.Cut].Mark)))
		}
	}
	p.dimensions(d)
}

// label is where the mark of a cut piece stands, and how wide it is there.
func (p *plan) label(piece *paving.Piece) (paving.Point, unit.Length) {
	var x, y, twice float64
	r := piece.Rings[0]
	for i := 1; i+1 < len(r); i++ {
		a := (r[i].X-r[0].X)*(r[i+1].Y-r[0].Y) - (r[i+1].X-r[0].X)*(r[i].Y-r[0].Y)
		x, y, twice = x+a*(r[0].X+r[i].X+r[i+1].X)/3, y+a*(r[0].Y+r[i].Y+r[i+1].Y)/3, twice+a
	}
	at := paving.Point{X: x / twice, Y: y / twice}
	a, d := level(at.Y)
	for _, part := range clipped(piece.Rings, a, d) {
		if x0, x1 := a.X+d.X*part[0], a.X+d.X*part[1]; x0 <= at.X && at.X <= x1 {
			return at, unit.Length(x1 - x0)
		}
	}
	return at, unit.Length(1) // its middle lies outside it: the mark is written nowhere rather than on another piece
}

// soft is every line of soft joint: between fields, over joints in the slab, and along what restrains.
func (p *plan) soft() (lines [][]calc.Point) {
	for _, x := range p.laid.LinesX {
		a, d := upright(x)
		lines = append(lines, p.within(a, d)...)
	}
	for _, y := range p.laid.LinesY {
		a, d := level(y)
		lines = append(lines, p.within(a, d)...)
	}
	for _, s := range p.outline.Structural {
		a, b := p.ground.Along(s[0]), p.ground.Along(s[1])
		d := paving.Point{X: b.X - a.X, Y: b.Y - a.Y}
		for _, part := range clipped(p.rings, a, d) {
			if low, high := max(part[0], 0), min(part[1], 1); low < high {
				lines = append(lines, []calc.Point{p.at(paving.Point{X: a.X + d.X*low, Y: a.Y + d.Y*low}), p.at(paving.Point{X: a.X + d.X*high, Y: a.Y + d.Y*high})})
			}
		}
	}
	if p.joints.Perimeter == 0 {
		return lines
	}
	n := len(p.corners)
	for i, c := range p.corners {
		if p.outline.Edge(i) != paving.Open {
			e := p.corners[(i+1)%n]
			lines = append(lines, []calc.Point{{X: unit.Length(c[0]), Y: unit.Length(c[1])}, {X: unit.Length(e[0]), Y: unit.Length(e[1])}})
		}
	}
	for _, h := range p.outline.Holes {
		ring := append([]paving.Point{}, h...)
		for i := range ring {
			ring[i] = p.ground.Along(ring[i])
		}
		lines = append(lines, p.ring(append(ring, ring[0])))
	}
	return lines
}

// snapped draws the chalk lines, each with how far its ends lie from the corners.
func (p *plan) snapped(d *calc.Drawing) {
	var lines [][]calc.Point
	for _, c := range p.chalks() {
		lines = append(lines, []calc.Point{c.first.at, c.last.at})
	}
	d.Lines(calc.Axis, lines)
}

// deep is how far what stands at an edge is drawn.
func (p *plan) deep(kind paving.Edge) float64 {
	if kind == paving.Building {
		return p.margin() * 0.8
	}
	return p.margin() * 0.3
}

// walls draws what stands at the edges: a building and a wall as strips, mitred where one edge of a kind meets the next.
func (p *plan) walls(d *calc.Drawing) {
	n := len(p.corners)
	for i := range n {
		kind := p.outline.Edge(i)
		if kind == paving.Open {
			continue
		}
		a, b := p.corners[i], p.corners[(i+1)%n]
		deep := p.deep(kind)
		far := func(corner, other int) calc.Point { // the outer corner, where another edge meets this one
			nx, ny := p.normal(i)
			q := p.corners[corner]
			if p.outline.Edge(other) == kind {
				mx, my := p.normal(other)
				if c := 1 + nx*mx + ny*my; c > 0.2 {
					return calc.Point{X: unit.Length(q[0] + (nx+mx)*deep/c), Y: unit.Length(q[1] + (ny+my)*deep/c)}
				}
			}
			return calc.Point{X: unit.Length(q[0] + nx*deep), Y: unit.Length(q[1] + ny*deep)}
		}
		of := calc.Steel
		if kind == paving.Building {
			of = calc.Concrete
		}
		d.Area(of, calc.Point{X: unit.Length(a[0]), Y: unit.Length(a[1])}, calc.Point{X: unit.Length(b[0]), Y: unit.Length(b[1])},
			far((i+1)%n, (i+1)%n), far(i, (i+n-1)%n))
	}
}

// normal is the way out of the paving at an edge.
func (p *plan) normal(i int) (x, y float64) {
	a, b := p.corners[i], p.corners[(i+1)%len(p.corners)]
	x, y = b[1]-a[1], a[0]-b[0]
	long := math.Hypot(x, y)
	if p.clockwise {
		long = -long
	}
	return x / long, y / long
}

// crowded is how many edges are too many to write a length at each.
const crowded = 16

// dimensions writes the length of each edge, or of the whole where edges are many.
func (p *plan) dimensions(d *calc.Drawing) {
	n := len(p.corners)
	away := -1.4
	if p.clockwise {
		away = -away
	}
	point := func(c []float64) calc.Point { return calc.Point{X: unit.Length(c[0]), Y: unit.Length(c[1])} }
	if n > crowded {
		low, high := p.extent()
		d.Dim(low, calc.Point{X: high.X, Y: low.Y}, -1.4, unit.Fig(high.X-low.X, far))
		d.Dim(calc.Point{X: high.X, Y: low.Y}, high, -1.4, unit.Fig(high.Y-low.Y, far))
		return
	}
	for i, c := range p.corners {
		e := p.corners[(i+1)%n]
		off := away
		if p.outline.Edge(i) == paving.Building {
			off *= 2
		}
		d.Dim(point(c), point(e), off, unit.Fig(unit.Length(math.Hypot(e[0]-c[0], e[1]-c[1])), far))
	}
}

// extent is the box about the paving in the site's axes.
func (p *plan) extent() (low, high calc.Point) {
	low, high = calc.Point{X: unit.Length(math.Inf(1)), Y: unit.Length(math.Inf(1))}, calc.Point{X: unit.Length(math.Inf(-1)), Y: unit.Length(math.Inf(-1))}
	for _, c := range p.corners {
		low.X, high.X = min(low.X, unit.Length(c[0])), max(high.X, unit.Length(c[0]))
		low.Y, high.Y = min(low.Y, unit.Length(c[1])), max(high.Y, unit.Length(c[1]))
	}
	return low, high
}
