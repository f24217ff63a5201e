package paving

import "math"

// area is twice-halved shoelace about the ring's first corner, so that far coordinates cost no digits: positive where the
// ring runs counterclockwise.
func area(ring []Point) float64 {
	sum := 0.0
	for i := 1; i+1 < len(ring); i++ {
		a, b := minus(ring[i], ring[0]), minus(ring[i+1], ring[0])
		sum += cross(a, b)
	}
	return sum / 2
}

func areas(rings [][]Point) float64 {
	sum := 0.0
	for _, r := range rings {
		sum += area(r)
	}
	return sum
}

func minus(a, b Point) Point               { return Point{a.X - b.X, a.Y - b.Y} }
func plus(a, b Point, times float64) Point { return Point{a.X + b.X*times, a.Y + b.Y*times} }
func cross(a, b Point) float64             { return a.X*b.Y - a.Y*b.X }
func dot(a, b Point) float64               { return a.X*b.X + a.Y*b.Y }
func length(a Point) float64               { return math.Hypot(a.X, a.Y) }

// within says whether a point lies in rings, counting a hole's ring against the one about it (even-odd).
func within(p Point, rings [][]Point) bool {
	in := false
	for _, r := range rings {
		a := r[len(r)-1]
		for _, b := range r {
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*((p.Y-a.Y)/(b.Y-a.Y)) {
				in = !in
			}
			a = b
		}
	}
	return in
}

// bounds is the rectangle about rings.
func bounds(rings ...[]Point) Rect {
	r := Rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, ring := range rings {
		for _, p := range ring {
			r.X0, r.X1 = math.Min(r.X0, p.X), math.Max(r.X1, p.X)
			r.Y0, r.Y1 = math.Min(r.Y0, p.Y), math.Max(r.Y1, p.Y)
		}
	}
	return r
}

// plain drops corners that are repeated or lie on a straight edge, within a micrometre.
func plain(ring []Point) []Point {
	const hair = 1
	kept := ring[:0:0]
	for i, p := range ring {
		next := ring[(i+1)%len(ring)]
		last := ring[(i+len(ring)-1)%len(ring)]
		if len(kept) > 0 {
			last = kept[len(kept)-1]
		}
		way := minus(next, last)
		far := length(way)
		if far < hair || length(minus(p, last)) < hair || length(minus(next, p)) < hair && i+1 < len(ring) {
			continue
		}
		if math.Abs(cross(way, minus(p, last))) < hair*far && dot(minus(p, last), minus(next, p)) > 0 {
			continue
		}
		kept = append(kept, p)
	}
	return kept
}
