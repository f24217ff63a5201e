package paving

import (
	"cmp"
	"slices"
)

// A clipper cuts rings by a line square to the axes. It keeps its buffers from one cut to the next.
//
// Corners on the line count as cut off, as if the line stood a hair further in. So no corner is ever on the line, every ring
// crosses it an even number of times, and way out and way in alternate along it: the first way out leads to the first way
// in, and so on. What only touches the line is joined to it or parted by it, a hole at it becomes a notch.
type clipper struct {
	outs, ins []crossing
	chains    []chain
	depths    []float64
	taken     []bool
}

type crossing struct {
	at    float64 // along the line
	chain int
}

type chain struct{ points []Point }

// A side of a line to keep.
type side uint8

const (
	above side = iota // y >= c
	below
	right // x >= c
	left
)

// depth is how far a point lies on the kept side, and at is its place along the line with the kept side on the left.
func (s side) depth(p Point, c float64) float64 {
	switch s {
	case above:
		return p.Y - c
	case below:
		return c - p.Y
	case right:
		return p.X - c
	}
	return c - p.X
}

func (s side) at(p Point) float64 {
	switch s {
	case above:
		return p.X
	case below:
		return -p.X
	case right:
		return -p.Y
	}
	return p.Y
}

// micron is a micrometre: corners as near as that to each other or to a straight edge are left out of a piece's outline.
const micron = 1

// speck is an area in µm² that is nothing: a ring of it is dropped.
const speck = 1

// cut keeps what of rings lies on one side of a line. Rings are counterclockwise, those of holes clockwise; so are the
// rings given back, and rings that the line does not cross are given back as they are.
func (k *clipper) cut(rings [][]Point, s side, c float64) [][]Point {
	var kept [][]Point
	k.outs, k.ins, k.chains = k.outs[:0], k.ins[:0], k.chains[:0]
	for _, r := range rings {
		k.depths = k.depths[:0]
		in := 0
		for _, p := range r {
			d := s.depth(p, c)
			k.depths = append(k.depths, d)
			if d > 0 {
				in++
			}
		}
		switch {
		case in == len(r):
			kept = append(kept, r)
		case in > 0:
			k.split(r, s, c)
		}
	}
	return k.join(kept)
}

// split takes the chains of a ring that lie on the kept side.
func (k *clipper) split(r []Point, s side, c float64) {
	n := len(r)
	start := 0
	for !(k.depths[start] <= 0 && k.depths[(start+1)%n] > 0) {
		start++
	}
	for i := 0; i < n; i++ {
		a, b := (start+i)%n, (start+i+1)%n
		p, q := r[a], r[b]
		switch da, db := k.depths[a], k.depths[b]; {
		case da <= 0 && db > 0:
			p, x := meet(q, p, db, da, s, c)
			x.chain = len(k.chains)
			k.ins = append(k.ins, x)
			points := make([]Point, 2, 6)
			points[0], points[1] = p, q
			k.chains = append(k.chains, chain{points})
		case da > 0:
			h := &k.chains[len(k.chains)-1]
			if db <= 0 {
				var x crossing
				q, x = meet(p, q, da, db, s, c)
				x.chain = len(k.chains) - 1
				k.outs = append(k.outs, x)
			}
			h.points = append(h.points, q)
		}
	}
}

// meet is where an edge from p on the kept side to q crosses the line.
func meet(p, q Point, dp, dq float64, s side, c float64) (Point, crossing) {
	if dq < 0 {
		t := dp / (dp - dq)
		if s >= right {
			q = Point{c, p.Y + (q.Y-p.Y)*t}
		} else {
			q = Point{p.X + (q.X-p.X)*t, c}
		}
	}
	return q, crossing{at: s.at(q)}
}

// join closes the chains along the line: from each way out to the next way in.
func (k *clipper) join(kept [][]Point) [][]Point {
	if len(k.chains) == 0 {
		return kept
	}
	if len(k.chains) > 1 {
		slices.SortStableFunc(k.outs, order)
		slices.SortStableFunc(k.ins, order)
	}
	k.taken = append(k.taken[:0], make([]bool, len(k.outs))...)
	for {
		first := slices.Index(k.taken, false)
		if first < 0 {
			return kept
		}
		ring := k.chains[k.ins[first].chain].points
		for i := first; ; {
			k.taken[i] = true
			next := slices.IndexFunc(k.outs, func(x crossing) bool { return x.chain == k.ins[i].chain })
			if next == first {
				break
			}
			i = next
			ring = append(ring, k.chains[k.ins[i].chain].points...)
		}
		if ring = unrepeated(ring); len(ring) > 2 {
			if a := area(ring); a > speck || a < -speck {
				kept = append(kept, ring)
			}
		}
	}
}

func order(a, b crossing) int { return cmp.Compare(a.at, b.at) }

// unrepeated drops corners that repeat the one before.
func unrepeated(ring []Point) []Point {
	kept := ring[:0]
	for _, p := range ring {
		if len(kept) == 0 || p != kept[len(kept)-1] {
			kept = append(kept, p)
		}
	}
	for len(kept) > 1 && kept[0] == kept[len(kept)-1] {
		kept = kept[:len(kept)-1]
	}
	return kept
}

// to is what of rings lies in a rectangle.
func (k *clipper) to(rings [][]Point, r Rect) [][]Point {
	return k.cut(k.cut(k.band(rings, r.Y0, r.Y1), right, r.X0), left, r.X1)
}

func (k *clipper) band(rings [][]Point, y0, y1 float64) [][]Point {
	return k.cut(k.cut(rings, above, y0), below, y1)
}

// covered is the area of rings within a rectangle, by trapezes under their edges: another way than by cutting them, so
// that the one checks the other.
func covered(rings [][]Point, r Rect) float64 {
	sum := 0.0
	for _, ring := range rings {
		a := ring[len(ring)-1]
		for _, b := range ring {
			sum -= under(a, b, r)
			a = b
		}
	}
	return sum
}

// under is the area between an edge and the rectangle's lower side, within the rectangle; negative for an edge that
// runs leftwards.
func under(a, b Point, r Rect) float64 {
	if a.X == b.X {
		return 0
	}
	sign := 1.0
	if a.X > b.X {
		a, b, sign = b, a, -1
	}
	if b.X <= r.X0 || a.X >= r.X1 || a.Y <= r.Y0 && b.Y <= r.Y0 {
		return 0
	}
	rise := (b.Y - a.Y) / (b.X - a.X)
	if a.X < r.X0 {
		a = Point{r.X0, a.Y + rise*(r.X0-a.X)}
	}
	if b.X > r.X1 {
		b = Point{r.X1, b.Y - rise*(b.X-r.X1)}
	}
	wide := b.X - a.X
	p, q := a.Y-r.Y0, b.Y-r.Y0
	if p > q {
		p, q = q, p
	}
	tall := r.Y1 - r.Y0
	return sign * (ramp(p, q, wide) - ramp(p-tall, q-tall, wide))
}

// ramp is the area above nought under a straight line that climbs from p to q over a width.
func ramp(p, q, wide float64) float64 {
	switch {
	case q <= 0:
		return 0
	case p >= 0:
		return wide * (p + q) / 2
	}
	return wide * q * q / (q - p) / 2
}
