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

// plain drops corners that are repeated or lie on a straight edge, within a hair.
func plain(ring []Point, hair float64) []Point {
	apart := make([]Point, 0, len(ring))
	for _, p := range ring {
		if n := len(apart); n == 0 || length(minus(p, apart[n-1])) >= hair {
			apart = append(apart, p)
		}
	}
	for len(apart) > 1 && length(minus(apart[0], apart[len(apart)-1])) < hair {
		apart = apart[:len(apart)-1]
	}
	kept := apart[:0]
	var last Point
	if len(apart) > 0 {
		last = apart[len(apart)-1]
	}
	for i, p := range apart {
		next := apart[0] // by now the first corner that was kept
		if i+1 < len(apart) {
			next = apart[i+1]
		}
		way := minus(next, last)
		if math.Abs(cross(way, minus(p, last))) <= hair*length(way) && dot(minus(p, last), minus(next, p)) > 0 {
			continue
		}
		kept = append(kept, p)
		last = p
	}
	return kept
}
