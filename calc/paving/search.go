package paving

import (
	"cmp"
	"math"
	"slices"
)

// The search looks at so many starts along each axis at most, and gives so many. It tries all pairs while those come to no
// more pavers than thorough, about a second's work on a phone; else only those of the best few of each axis.
const (
	steps    = 12 // of a module
	starts   = 48
	thorough = 400_000
	few      = 6
	given    = 5
)

// Search looks for the start that leaves the best cuts: flush with each edge, the joint or the paver in the middle, a
// movement joint at each inside corner, and steps between: all pairs on small paving; on large first along the rows, then
// across them, then the best of both together. Better is what is balanced on more axes; then has no cut under half a paver, or else the widest narrowest one;
// then takes fewest pavers, by the Estimate; then has fewest cuts. The best comes first. Among the others are the best with
// the narrowest cut, the pavers or the number of cuts put first, if those are others. Of those that are as good in every way
// one is given.
//
// Going, which may be nil, is told how far it has come and reports false to have it end with the best so far. The result is
// the same on every machine.
func (g *Ground) Search(going func(done, of int) bool) []Candidate {
	x, y := g.rulers()
	xs, ys := x.starts(), y.starts()
	s := seeker{Ground: g, going: going, x: x, y: y}
	if pairs := len(xs) * len(ys); float64(pairs)*g.places() <= thorough {
		s.of = pairs
		s.try(xs, ys)
	} else {
		s.of = len(xs) + len(ys) + few*few
		s.try(xs, ys[:1])
		bestX := s.best(func(c *Candidate) Axis { return c.Grid.X })
		s.try(bestX[:1], ys)
		bestY := s.best(func(c *Candidate) Axis { return c.Grid.Y })
		s.try(bestX, bestY)
	}
	slices.SortStableFunc(s.found, compare)
	s.found = slices.CompactFunc(s.found, func(a, b Candidate) bool { return compare(a, b) == 0 })
	return s.pick()
}

// pick gives the best few of what was found and sorted.
func (s *seeker) pick() []Candidate {
	picked := map[int]bool{0: true}
	for _, first := range [...]func(a, b Candidate) int{narrower, dearer, busier} {
		best := 0
		for i := range s.found {
			if first(s.found[i], s.found[best]) < 0 {
				best = i
			}
		}
		picked[best] = true
	}
	for i := 0; i < len(s.found) && len(picked) < given; i++ {
		picked[i] = true
	}
	var out []Candidate
	for i, c := range s.found {
		if picked[i] {
			out = append(out, c)
		}
	}
	return out
}

// seeker has what the search found so far.
type seeker struct {
	*Ground
	x, y     ruler
	going    func(done, of int) bool
	done, of int
	ended    bool
	found    []Candidate
}

// try judges every pair of two axes that was not judged before.
func (s *seeker) try(xs, ys []Axis) {
	for _, x := range xs {
		for _, y := range ys {
			if s.ended {
				return
			}
			if slices.ContainsFunc(s.found, func(c Candidate) bool { return c.Grid.X.First == x.First && c.Grid.Y.First == y.First }) {
				continue
			}
			s.found = append(s.found, s.judge(Grid{x, y}))
			s.done++
			if s.going != nil && !s.going(min(s.done, s.of), s.of) {
				s.ended = true
			}
		}
	}
}

// best are the axes of the best found, each once.
func (s *seeker) best(axis func(*Candidate) Axis) []Axis {
	slices.SortStableFunc(s.found, compare)
	var out []Axis
	for i := range s.found {
		a := axis(&s.found[i])
		if !slices.ContainsFunc(out, func(b Axis) bool { return a.First == b.First }) {
			if out = append(out, a); len(out) == few {
				break
			}
		}
	}
	return out
}

// compare puts the better candidate first.
func compare(a, b Candidate) int {
	return cmp.Or(balanced(b.Why)-balanced(a.Why), narrower(a, b), dearer(a, b), busier(a, b), a.Why.Spans-b.Why.Spans)
}

// narrower, dearer and busier put first what has the wider narrowest cut, up to half a paver; takes fewer pavers; has fewer cuts.
func narrower(a, b Candidate) int {
	half := func(share float64) float64 { return math.Round(math.Min(share, 0.5) * 1000) }
	return cmp.Compare(half(b.Why.Narrowest), half(a.Why.Narrowest))
}

func dearer(a, b Candidate) int { return a.Estimate - b.Estimate }

func busier(a, b Candidate) int { return a.Why.Cuts - b.Why.Cuts }

func balanced(w Why) int { return b2i(w.BalancedX) + b2i(w.BalancedY) }

// judge lays a grid, without what only a drawing needs.
func (s *seeker) judge(grid Grid) Candidate {
	l := layer{Ground: s.Ground, Layout: Layout{Grid: grid}, tally: true, least: 1}
	l.lay()
	w := Why{
		BalancedX: s.x.balanced(grid.X), BalancedY: s.y.balanced(grid.Y),
		Narrowest: l.least, Cuts: len(l.Pieces), Full: l.Full, Spans: len(grid.X.Fields) + len(grid.Y.Fields) - 2,
	}
	var stock stock
	for i := range l.Pieces {
		p := &l.Pieces[i]
		b := bounds(p.Rings[0])
		long, wide := (b.X1-b.X0)/float64(s.paver.L), (b.Y1-b.Y0)/float64(s.paver.W)
		stock.take(long, wide)
	}
	return Candidate{Grid: grid, Why: w, Estimate: l.Full + stock.pavers()}
}

// stock estimates how many pavers some cuts take: one for each that is over half a paver both ways; those over half one way
// share a paver side by side; the others share half pavers.
type stock struct {
	whole               int
	long, wide, smaller []float64
}

// take adds a cut whose sides are these shares of the paver's.
func (s *stock) take(long, wide float64) {
	switch {
	case long > 0.5 && wide > 0.5:
		s.whole++
	case wide > 0.5:
		s.long = append(s.long, long)
	case long > 0.5:
		s.wide = append(s.wide, wide)
	default:
		s.smaller = append(s.smaller, long)
	}
}

func (s *stock) pavers() int {
	return s.whole + bins(s.long) + bins(s.wide) + (bins(s.smaller)+1)/2
}

// bins is how many bins of 1 hold the sizes, the largest with as many of the smallest as fit.
func bins(sizes []float64) int {
	slices.Sort(sizes)
	n := 0
	for lo, hi := 0, len(sizes)-1; lo <= hi; hi-- {
		n++
		for room := 1 - sizes[hi]; lo < hi && sizes[lo] <= room; lo++ {
			room -= sizes[lo]
		}
	}
	return n
}

// ends are the widths of the first and the last course on an axis, of the row that is not offset.
func (r *ruler) ends(a Axis) (first, last float64) {
	spans := r.spans(a)
	first = a.First + r.size - r.lo
	if first < float64(Sliver) {
		first = r.size
	}
	s := spans[len(spans)-1]
	last = r.hi - s.at - float64(s.modules-1)*r.module()
	if last < float64(Sliver) {
		last = r.size // what is left is a joint
	}
	return math.Min(first, r.size), math.Min(last, r.size)
}

// balanced says whether the first and the last course are equally wide. Where the paving ends in points, and not in edges
// square to the axis, there are no courses to compare.
func (r *ruler) balanced(a Axis) bool {
	first, last := r.ends(a)
	return math.Abs(first-last) < float64(Trim) && r.ending(r.lo) && r.ending(r.hi)
}

// ending says whether an edge square to the axis stands at a place.
func (r *ruler) ending(at float64) bool {
	return slices.ContainsFunc(r.stops, func(s stop) bool { return math.Abs(s.at-at) < near })
}

// starts are axes worth a look, the most likely first. Seen in a mirror they are the same.
func (r *ruler) starts() []Axis {
	var out []Axis
	add := func(a Axis) {
		if len(out) < starts && !slices.ContainsFunc(out, func(b Axis) bool { return math.Abs(a.First-b.First) < near }) {
			out = append(out, a)
		}
	}
	// In the middle, by halving what the end courses differ by; and half a module on.
	middle := (r.lo + r.hi) / 2
	for _, at := range [...]float64{middle + r.joint/2, middle - r.size/2} {
		a := r.choose(r.phase(at))
		for range 4 {
			first, last := r.ends(a)
			a = r.choose(r.phase(a.First + (last-first)/2))
		}
		add(a)
	}
	for _, s := range r.stops {
		at := s.at
		if !s.low {
			at -= r.size
		}
		add(r.axis(at, 0))
	}
	for _, p := range r.inner {
		add(r.axis(p+r.wide/2, 0))
	}
	centre := out[0].First
	for i := 1; i < steps; i++ {
		add(r.choose(r.phase(centre + float64(i)*r.module()/steps)))
	}
	return out
}
