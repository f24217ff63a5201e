package paving

import "math"

// A ruler measures one axis of the ground.
type ruler struct {
	size, joint, wide float64 // the paver, the hard and the movement joint along the axis
	lo, hi            float64 // ends of what is paved
	from, to          float64 // the same with the perimeter gap: spans are measured from here
	limit             float64 // the longest span; 0: none
	inner             []float64
	stops             []stop
}

// stop is where what is paved ends square to the axis; low where the paving lies after it.
type stop struct {
	at  float64
	low bool
}

func (r *ruler) module() float64 { return r.size + r.joint }

// rulers measure the ground along the rows and across them.
func (g *Ground) rulers() (x, y ruler) {
	joint, wide, limit := float64(g.paver.Joint), float64(g.joints.Movement), float64(g.joints.Longest)
	gap, in, out := float64(g.joints.Perimeter), &g.reach, &g.extent
	x = ruler{float64(g.paver.L), joint, wide, in.X0, in.X1, math.Max(out.X0, in.X0-gap), math.Min(out.X1, in.X1+gap), limit, nil, nil}
	y = ruler{float64(g.paver.W), joint, wide, in.Y0, in.Y1, math.Max(out.Y0, in.Y0-gap), math.Min(out.Y1, in.Y1+gap), limit, nil, nil}
	for _, p := range g.inner {
		x.inner, y.inner = append(x.inner, p.X), append(y.inner, p.Y)
	}
	for _, ring := range g.parts[paving] {
		a := ring[len(ring)-1]
		for _, b := range ring {
			switch way := minus(b, a); {
			case math.Abs(way.X) < near && math.Abs(way.Y) > float64(Sliver):
				x.stops = append(x.stops, stop{b.X, way.Y < 0})
			case math.Abs(way.Y) < near && math.Abs(way.X) > float64(Sliver):
				y.stops = append(y.stops, stop{b.Y, way.X > 0})
			}
			a = b
		}
	}
	return x, y
}

// span is a field's place on one axis. Pavers begin at at plus whole modules; the field runs from from to to.
type span struct {
	at, from, to float64
	modules      int
}

// spans are the fields of an axis. The outer fields run past the ends of what is paved, by a module, so that it is the
// outline that cuts there and not the field's end.
func (r *ruler) spans(a Axis) []span {
	out := make([]span, 0, len(a.Fields))
	gone := 0
	for f, n := range a.Fields {
		at := a.First + float64(gone)*r.module() + float64(f)*(r.wide-r.joint)
		s := span{at, at, at + float64(n)*r.module() - r.joint, n}
		if f == 0 {
			s.from = math.Min(r.lo, at) - r.module()
		}
		if f == len(a.Fields)-1 {
			s.to = math.Max(r.hi, at) + r.module()
			s.modules = int(math.Floor((r.hi-at)/r.module())) + 1
		}
		out = append(out, s)
		gone += n
	}
	return out
}

// lines are the centres of the movement joints between spans.
func lines(spans []span) []float64 {
	var out []float64
	for i := 1; i < len(spans); i++ {
		out = append(out, (spans[i-1].to+spans[i].from)/2)
	}
	return out
}

// longest is the longest way between neighbouring lines, or between one and an end.
func longest(lines []float64, lo, hi float64) float64 {
	most, last := 0.0, lo
	for _, l := range lines {
		most, last = math.Max(most, l-last), l
	}
	return math.Max(most, hi-last)
}

// choose places the fewest movement joints on the modules of an axis that begins at first, so that no span is over the
// limit; and among those grids the one that meets most inside corners, and then has the evenest spans.
func (r *ruler) choose(first float64) Axis {
	if r.limit <= 0 || r.to-r.from <= r.limit {
		return Axis{first, []int{1}}
	}
	for k := max(1, int(math.Floor((r.to-r.from)/r.limit))); float64(k)*r.size <= 2*(r.to-r.from); k++ {
		if a, ok := r.place(k, first); ok {
			return a
		}
	}
	return Axis{first, []int{1}} // no span can hold a paver: Prepare has refused it
}

// state is the best way to a joint after a column: its cost, and after which column the joint before stands.
type state struct {
	cost float64
	from int
}

// place puts k movement joints, by dynamic programming over the column after which each stands.
func (r *ruler) place(k int, first float64) (Axis, bool) {
	even := (r.to - r.from) / float64(k+1)
	uneven := func(span float64) float64 { return (span - even) / r.limit * (span - even) / r.limit }
	// centre is where joint i (from 1) stands when it comes after so many columns.
	centre := func(i, column int) float64 {
		return first + float64(column)*r.module() - r.joint + r.wide/2 + float64(i-1)*(r.wide-r.joint)
	}
	// column is the first after which joint i stands at or past a place.
	column := func(i int, at float64) int {
		c := int(math.Floor((at-centre(i, 0))/r.module())) + 1
		if c > 0 && centre(i, c-1) >= at-near {
			c--
		}
		return max(c, i)
	}
	table := make([][]state, k+1)
	starts := make([]int, k+1) // the first column of each row of the table
	for i := 1; i <= k; i++ {
		// Later joints could not reach the end from before, and earlier ones not get past.
		starts[i] = column(i, math.Max(r.from+near, r.to-float64(k+1-i)*r.limit))
		for c := starts[i]; ; c++ {
			at := centre(i, c)
			if at > r.from+float64(i)*r.limit+near || at >= r.to-near {
				break
			}
			s := state{math.Inf(1), -1}
			if i == 1 {
				s = state{uneven(at - r.from), 0}
			}
			for d, before := range table[i-1] {
				b := starts[i-1] + d
				if span := at - centre(i-1, b); b < c && span <= r.limit+near {
					if cost := before.cost + uneven(span); cost < s.cost {
						s = state{cost, b}
					}
				}
			}
			if r.meets(at) {
				s.cost -= float64(k + 2) // more than any unevenness: k+1 squares of shares of the limit
			}
			table[i] = append(table[i], s)
		}
	}
	best, at := math.Inf(1), -1
	for d, s := range table[k] {
		if last := r.to - centre(k, starts[k]+d); last <= r.limit+near {
			if cost := s.cost + uneven(last); cost < best {
				best, at = cost, starts[k]+d
			}
		}
	}
	if at < 0 {
		return Axis{}, false
	}
	fields := make([]int, k+1)
	fields[k] = 1
	for i := k; i >= 1; i-- {
		from := table[i][at-starts[i]].from
		fields[i-1] = at - from
		at = from
	}
	return Axis{first, fields}, true
}

// meets says whether a movement joint centred at a place meets an inside corner.
func (r *ruler) meets(at float64) bool {
	for _, p := range r.inner {
		if math.Abs(at-p) <= r.wide {
			return true
		}
	}
	return false
}

// axis is the axis with a paver beginning at a place, in whichever field that place comes to lie, of a row that is shifted
// so far. A movement joint that moves when the first paver does can move the field: then the next try settles it.
func (r *ruler) axis(at, shift float64) Axis {
	a := r.choose(r.phase(at - shift))
	for range 4 {
		off := at - shift - r.field(a, at).at
		off -= r.module() * math.Round(off/r.module())
		if math.Abs(off) <= near/10 {
			break
		}
		a = r.choose(r.phase(a.First + off))
	}
	return a
}

// field is the one that a place comes to lie in.
func (r *ruler) field(a Axis, at float64) span {
	spans := r.spans(a)
	f := 0
	for f < len(spans)-1 && at > spans[f].to {
		f++
	}
	return spans[f]
}

// phase brings a paver's beginning to the last at or before the paving's, or as good as there.
func (r *ruler) phase(at float64) float64 {
	return at + r.module()*math.Floor((r.lo-at+near)/r.module())
}

// Start is the grid with a paver's lower left corner at a point, in the pattern's axes, whichever row that lies in. Its
// movement joints are the fewest that hold, at inside corners where that costs none, else as even as the module lets them be.
func (g *Ground) Start(p Point) Grid {
	x, y := g.rulers()
	rows := y.axis(p.Y, 0)
	row := math.Round((p.Y - y.field(rows, p.Y).at) / y.module())
	return Grid{x.axis(p.X, g.shift(row)), rows}
}

// shift is how far a row of a field is moved along, 0 for its first.
func (g *Ground) shift(row float64) float64 {
	share := row * g.pattern.Offset
	return (share - math.Floor(share+1e-9)) * float64(g.paver.L+g.paver.Joint)
}
