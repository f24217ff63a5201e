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
			mark := p.laid.Cuts[piece.Cut].Mark
			at, room := p.label(piece, mark)
			d.Mark(p.at(at), room, words.Say("{mark}", words.Text("mark", mark)))
		}
	}
	p.dimensions(d)
}

// high is the room that a height leaves a text, as a width: letters are six tenths as wide as they are high.
func high(height unit.Length, text string) unit.Length { return height * 0.6 * unit.Length(len(text)) }

// label is where a mark on a piece stands, and how wide the piece is there: less where it is too low for the letters.
func (p *plan) label(piece *paving.Piece, mark string) (paving.Point, unit.Length) {
	if piece.Full {
		c := piece.Cell
		return paving.Point{X: (c.X0 + c.X1) / 2, Y: (c.Y0 + c.Y1) / 2}, min(p.paver.L, high(p.paver.W, mark))
	}
	var x, y, twice float64
	r := piece.Rings[0]
	for i := 1; i+1 < len(r); i++ {
		a := (r[i].X-r[0].X)*(r[i+1].Y-r[0].Y) - (r[i+1].X-r[0].X)*(r[i].Y-r[0].Y)
		x, y, twice = x+a*(r[0].X+r[i].X+r[i+1].X)/3, y+a*(r[0].Y+r[i].Y+r[i+1].Y)/3, twice+a
	}
	at := paving.Point{X: x / twice, Y: y / twice}
	return at, min(through(piece.Rings, at, paving.Point{X: 1}), high(through(piece.Rings, at, paving.Point{Y: 1}), mark))
}

// through is how far rings reach through a point, along d of length 1. Where the point lies outside them it is next to nothing: a
// mark is written nowhere rather than on another piece.
func through(rings [][]paving.Point, at, d paving.Point) unit.Length {
	for _, part := range clipped(rings, at, d) {
		if part[0] <= 0 && 0 <= part[1] {
			return unit.Length(part[1] - part[0])
		}
	}
	return unit.Micrometre
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

// snapped draws the chalk lines, run on past the edges, with how far they lie from a corner where there is room to say so.
func (p *plan) snapped(d *calc.Drawing) {
	var lines [][]calc.Point
	over := unit.Length(p.margin() / 2)
	told := map[[2]int]bool{} // from which corner along which edge: one length, the others are listed
	for _, c := range p.chalks() {
		a, b := c.first.at, c.last.at
		dx, dy := b.X-a.X, b.Y-a.Y
		more := over / unit.Length(math.Hypot(float64(dx), float64(dy)))
		lines = append(lines, []calc.Point{{X: a.X - dx*more, Y: a.Y - dy*more}, {X: b.X + dx*more, Y: b.Y + dy*more}})
		from := [2]int{c.first.corner, c.first.towards}
		if c.soft && !told[from] && float64(c.first.far) > 3*p.margin() && len(p.corners) <= crowded {
			told[from] = true
			p.offset(d, c.first)
		}
	}
	d.Lines(calc.Axis, lines)
}

// offset dimensions where a chalk line meets an edge, on the side away from the paving.
func (p *plan) offset(d *calc.Drawing, m mark) {
	from := calc.Point{X: unit.Length(p.corners[m.corner][0]), Y: unit.Length(p.corners[m.corner][1])}
	away := 1.3
	if (m.towards == (m.corner+1)%len(p.corners)) != p.clockwise {
		away = -away
	}
	d.Dim(from, m.at, away, unit.Fig(m.far, far))
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
	away := -2.8 // beyond the offsets of the chalk lines
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
		switch {
		case p.turnsIn(i) || p.turnsIn((i+1)%n):
			off /= 2 // beside an inside corner two lengths stand close
		case p.outline.Edge(i) == paving.Building:
			off *= 1.4
		}
		d.Dim(point(c), point(e), off, unit.Fig(unit.Length(math.Hypot(e[0]-c[0], e[1]-c[1])), far))
	}
}

// turnsIn reports whether the edge turns in at a corner, so that the paving goes round it.
func (p *plan) turnsIn(i int) bool {
	n := len(p.corners)
	x0, y0 := p.normal((i + n - 1) % n)
	x1, y1 := p.normal(i)
	return (x0*y1-x1*y0 < 0) != p.clockwise
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
