package paving

import (
	"math"

	"setbook/calc/unit"
)

// Problem is what is wrong with what is to be laid.
type Problem uint8

// The problems.
const (
	FewCorners     Problem = iota // a ring with fewer than three corners
	NotANumber                    // a corner that is nowhere
	Repeated                      // a corner that repeats another of its ring
	Crossing                      // two edges of a ring cross or touch
	NoArea                        // a ring without area
	HoleOutside                   // a hole outside the outline
	HoleTouches                   // a hole that crosses or touches the outline or another hole: it belongs to the outline
	BadPaver                      // a side that is not more than Sliver, or a joint that is not more than nought
	BadOffset                     // an offset under nought or over a third
	BadJoint                      // a soft joint of negative width, or a movement joint without width
	SpanTooShort                  // the longest span holds no paver with the joints on both sides of it
	NothingLeft                   // the gaps take all of it
	TooMany                       // more than MostPavers
	TooFine                       // edges or gaps so near each other that they cannot be told apart
	TooManyCorners                // more than MostCorners
)

// Fault is a problem and where it is.
type Fault struct {
	Problem Problem
	Hole    int // which ring: 0 the outline, 1 the first hole
	Corner  int // the edge from this corner on, or the corner
	Other   int // of Repeated, Crossing: the other corner
}

// What may be asked for: so many places of whole pavers in the rectangle about the paving, and so many corners with those of
// the holes. The work grows with the square of the corners.
const (
	MostPavers  = 200_000
	MostCorners = 500
)

// closest is how near edges that do not meet may come, in micrometres.
const closest = 100

// Check says what is wrong with an outline; nothing where it can be paved.
func (o *Outline) Check() []Fault {
	var faults []Fault
	rings := append([][]Point{o.Corners}, o.Holes...)
	corners := 0
	for _, r := range rings {
		corners += len(r)
	}
	if corners > MostCorners {
		return []Fault{{Problem: TooManyCorners}}
	}
	for k, r := range rings {
		if f, bad := checkRing(r); bad {
			f.Hole = k
			faults = append(faults, f)
		}
	}
	if len(faults) > 0 {
		return faults
	}
	for k := 1; k < len(rings); k++ {
		switch {
		case touches(rings[k], rings[:k]):
			faults = append(faults, Fault{Problem: HoleTouches, Hole: k})
		case !within(rings[k][0], rings[:1]):
			faults = append(faults, Fault{Problem: HoleOutside, Hole: k})
		default:
			for i := 1; i < k; i++ {
				if within(rings[k][0], rings[i:i+1]) || within(rings[i][0], rings[k:k+1]) {
					faults = append(faults, Fault{Problem: HoleTouches, Hole: k})
					break
				}
			}
		}
	}
	return faults
}

func checkRing(r []Point) (Fault, bool) {
	if len(r) < 3 {
		return Fault{Problem: FewCorners}, true
	}
	for i, p := range r {
		if !(math.Abs(p.X) <= 1e9 && math.Abs(p.Y) <= 1e9) { // 1 km
			return Fault{Problem: NotANumber, Corner: i}, true
		}
		for j := range i {
			if length(minus(p, r[j])) < closest {
				return Fault{Problem: Repeated, Corner: j, Other: i}, true
			}
		}
	}
	n := len(r)
	for i := range r {
		a, b := r[i], r[(i+1)%n]
		for j := i + 1; j < n; j++ {
			c, d := r[j], r[(j+1)%n]
			var bad bool
			switch {
			case j == i+1: // they share b = c: d may not lie back on the first
				bad = apart(d, a, b) < closest || apart(a, c, d) < closest
			case (j+1)%n == i:
				bad = apart(c, a, b) < closest || apart(b, c, d) < closest
			default:
				bad = meets(a, b, c, d)
			}
			if bad {
				return Fault{Problem: Crossing, Corner: i, Other: j}, true
			}
		}
	}
	if math.Abs(area(r)) < closest*closest {
		return Fault{Problem: NoArea}, true
	}
	return Fault{}, false
}

// meets says whether two segments cross, or come closer than closest.
func meets(a, b, c, d Point) bool {
	if math.Max(a.X, b.X) < math.Min(c.X, d.X)-closest || math.Max(c.X, d.X) < math.Min(a.X, b.X)-closest ||
		math.Max(a.Y, b.Y) < math.Min(c.Y, d.Y)-closest || math.Max(c.Y, d.Y) < math.Min(a.Y, b.Y)-closest {
		return false
	}
	ab, cd := minus(b, a), minus(d, c)
	if (cross(ab, minus(c, a)) > 0) != (cross(ab, minus(d, a)) > 0) && (cross(cd, minus(a, c)) > 0) != (cross(cd, minus(b, c)) > 0) {
		return true
	}
	return min(apart(a, c, d), apart(b, c, d), apart(c, a, b), apart(d, a, b)) < closest
}

// apart is how far a point is from a segment.
func apart(p, a, b Point) float64 {
	way := minus(b, a)
	t := dot(minus(p, a), way) / dot(way, way)
	return length(minus(p, plus(a, way, math.Max(0, math.Min(1, t)))))
}

func touches(ring []Point, others [][]Point) bool {
	a := ring[len(ring)-1]
	for _, b := range ring {
		for _, o := range others {
			c := o[len(o)-1]
			for _, d := range o {
				if meets(a, b, c, d) {
					return true
				}
				c = d
			}
		}
		a = b
	}
	return false
}

func check(p Paver, pattern Pattern, j Joints) []Fault {
	var faults []Fault
	if !(p.L > Sliver && p.W > Sliver && p.Joint > 0) {
		faults = append(faults, Fault{Problem: BadPaver})
	}
	if !(pattern.Offset >= 0 && pattern.Offset <= 1.0/3+1e-9) || math.IsNaN(float64(pattern.Turn)) || math.IsInf(float64(pattern.Turn), 0) {
		faults = append(faults, Fault{Problem: BadOffset})
	}
	if !(j.Perimeter >= 0 && j.Structural >= 0 && j.Movement >= 0) || j.Longest > 0 && j.Movement <= 0 {
		faults = append(faults, Fault{Problem: BadJoint})
	}
	if j.Longest > 0 && j.Longest < max(p.L, p.W)+j.Movement+j.Perimeter {
		faults = append(faults, Fault{Problem: SpanTooShort})
	}
	return faults
}

// Area is the outline's, less its holes.
func (o *Outline) Area() unit.Area {
	sum := math.Abs(area(o.Corners))
	for _, h := range o.Holes {
		sum -= math.Abs(area(h))
	}
	return unit.Area(sum)
}

// Run is the length of the edges of one kind. Holes are not among them.
func (o *Outline) Run(kind Edge) unit.Length {
	sum := 0.0
	for i := range o.Corners {
		if o.Edge(i) == kind {
			sum += length(o.side(i))
		}
	}
	return unit.Length(sum)
}

// side is the way from corner i to the next.
func (o *Outline) side(i int) Point {
	return minus(o.Corners[(i+1)%len(o.Corners)], o.Corners[i])
}

// Along is the turn at which the rows run along edge i: over -45 up to 45 degrees, so that rows or columns do.
func (o *Outline) Along(i int) unit.Angle {
	s := o.side(i)
	turn := math.Atan2(s.Y, s.X) * 180 / math.Pi
	return unit.Angle(turn - 90*math.Round(turn/90))
}

// Walk goes along sides, turning at the end of each by what the angle inside the outline leaves of a half turn: so sides
// and inside angles, counterclockwise, give the corners. The walk starts at the origin along x. The gap is where it ends,
// from where it began: nought where the outline closes. The angle after the last side is not needed.
func Walk(sides []unit.Length, angles []unit.Angle) (corners []Point, gap Point) {
	var at Point
	way := 0.0 // degrees
	for i, s := range sides {
		corners = append(corners, at)
		sin, cos := sincos(unit.Angle(way))
		at = plus(at, Point{cos, sin}, float64(s))
		if i < len(angles) {
			way += 180 - float64(angles[i])
		}
	}
	return corners, at
}

// Diagonal is the way between two corners that are not neighbours.
type Diagonal struct {
	From, To int
	Length   unit.Length
}

// Diagonals part the outline into triangles, so that with the sides they fix it: those to measure on site. A rectangle
// has both, since they are to be equal. Ears are cut off, the one with the shortest diagonal first.
func (o *Outline) Diagonals() []Diagonal {
	r := o.Corners
	between := func(i, j int) Diagonal {
		return Diagonal{min(i, j), max(i, j), unit.Length(length(minus(r[i], r[j])))}
	}
	if len(r) == 4 && convex(r) {
		return []Diagonal{between(0, 2), between(1, 3)}
	}
	left := make([]int, len(r))
	for i := range left {
		left[i] = i
	}
	ccw := area(r) > 0
	var out []Diagonal
	for len(left) > 3 {
		best, at := Diagonal{}, -1
		for i := range left {
			a, b, c := left[(i+len(left)-1)%len(left)], left[i], left[(i+1)%len(left)]
			if d := between(a, c); (at < 0 || d.Length < best.Length) && ear(r, left, a, b, c, ccw) {
				best, at = d, i
			}
		}
		if at < 0 {
			break // what is left lies on one line
		}
		out = append(out, best)
		left = append(left[:at], left[at+1:]...)
	}
	return out
}

// convex says whether a ring turns one way only.
func convex(r []Point) bool {
	way := 0
	for i := range r {
		switch c := cross(minus(r[(i+1)%len(r)], r[i]), minus(r[(i+2)%len(r)], r[(i+1)%len(r)])); {
		case c > 0:
			way |= 1
		case c < 0:
			way |= 2
		}
	}
	return way != 3
}

// ear says whether the triangle at corner b lies in the ring, free of other corners.
func ear(r []Point, left []int, a, b, c int, ccw bool) bool {
	p, q, s := r[a], r[b], r[c]
	if !ccw {
		p, s = s, p
	}
	if cross(minus(q, p), minus(s, q)) <= 0 {
		return false
	}
	for _, i := range left {
		if i == a || i == b || i == c {
			continue
		}
		if t := r[i]; cross(minus(q, p), minus(t, p)) >= 0 && cross(minus(s, q), minus(t, q)) >= 0 && cross(minus(p, s), minus(t, s)) >= 0 {
			return false
		}
	}
	return true
}
