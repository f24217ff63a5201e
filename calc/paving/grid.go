package paving

import "math"

// span is a field's place on one axis. Pavers begin at at plus whole modules; the field runs from from to to.
type span struct {
	at, from, to float64
	modules      int
}

// spans are the fields of an axis, over what is paved from lo to hi. The outer fields run to its ends.
func (a Axis) spans(module, joint, wide, lo, hi float64) []span {
	out := make([]span, 0, len(a.Fields))
	gone := 0
	for f, n := range a.Fields {
		at := a.First + float64(gone)*module + float64(f)*(wide-joint)
		s := span{at, at, at + float64(n)*module - joint, n}
		if f == 0 {
			s.from = math.Min(lo, at)
		}
		if f == len(a.Fields)-1 {
			s.to = math.Max(hi, at)
			s.modules = int(math.Floor((hi-at)/module)) + 1
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
// limit; and among those grids the one that meets most of the wanted places, and then has the evenest spans.
func choose(first, module, joint, wide, lo, hi, limit float64, wanted []float64) Axis {
	if limit <= 0 || hi-lo <= limit {
		return Axis{first, []int{1}}
	}
	for k := 1; ; k++ {
		if a, ok := place(k, first, module, joint, wide, lo, hi, limit, wanted); ok {
			return a
		}
		if float64(k)*(module-joint) > hi-lo {
			return Axis{first, []int{1}} // no span can hold: Prepare has refused it
		}
	}
}

// place puts k movement joints, by dynamic programming over the column after which each stands.
func place(k int, first, module, joint, wide, lo, hi, limit float64, wanted []float64) (Axis, bool) {
	columns := int(math.Floor((hi-first)/module)) + 1
	even := (hi - lo) / float64(k+1)
	// centre is where joint i (from 1) stands when it comes after so many columns.
	centre := func(i, column int) float64 {
		return first + float64(column)*module - joint + wide/2 + float64(i-1)*(wide-joint)
	}
	meets := func(at float64) float64 {
		for _, w := range wanted {
			if math.Abs(at-w) <= wide {
				return 1
			}
		}
		return 0
	}
	type state struct {
		cost float64
		from int
	}
	table := make([][]state, k+1)
	for i := 1; i <= k; i++ {
		table[i] = make([]state, columns+1)
		for c := range table[i] {
			table[i][c] = state{math.Inf(1), -1}
			at := centre(i, c)
			if c < i || at <= lo || at >= hi {
				continue
			}
			// A wanted place met outweighs any unevenness: the squares of k+1 shares of the limit are under k+1.
			own := -meets(at) * float64(k+2)
			if i == 1 {
				if s := at - lo; s <= limit+near {
					table[i][c] = state{own + square((s-even)/limit), 0}
				}
				continue
			}
			for b := c - 1; b >= i-1; b-- {
				s := at - centre(i-1, b)
				if s > limit+near {
					break
				}
				if cost := table[i-1][b].cost + own + square((s-even)/limit); cost < table[i][c].cost {
					table[i][c] = state{cost, b}
				}
			}
		}
	}
	best, at := math.Inf(1), -1
	for c, s := range table[k] {
		last := hi - centre(k, c)
		if last > limit+near {
			continue
		}
		if cost := s.cost + square((last-even)/limit); cost < best {
			best, at = cost, c
		}
	}
	if at < 0 {
		return Axis{}, false
	}
	fields := make([]int, k+1)
	fields[k] = 1
	for i := k; i >= 1; i-- {
		from := table[i][at].from
		fields[i-1] = at - from
		at = from
	}
	return Axis{first, fields}, true
}

func square(x float64) float64 { return x * x }

// phase brings a paver's beginning to the first at or before lo.
func phase(at, module, lo float64) float64 {
	first := at - module*math.Floor((at-lo)/module)
	if first > lo {
		first -= module
	}
	return first
}

// Start is the grid with a paver's lower left corner at a point, in the pattern's axes, in the first field: the movement
// joints are the fewest that hold, at inside corners where that costs none, else evenly.
func (g *Ground) Start(start Point) Grid {
	return Grid{g.axisX(start.X), g.axisY(start.Y)}
}

func (g *Ground) axisX(at float64) Axis {
	var wanted []float64
	for _, p := range g.inner {
		wanted = append(wanted, p.X)
	}
	j, m := float64(g.paver.Joint), float64(g.paver.L+g.paver.Joint)
	return choose(phase(at, m, g.reach.X0), m, j, float64(g.joints.Movement), g.extent.X0, g.extent.X1, float64(g.joints.Longest), wanted)
}

func (g *Ground) axisY(at float64) Axis {
	var wanted []float64
	for _, p := range g.inner {
		wanted = append(wanted, p.Y)
	}
	j, m := float64(g.paver.Joint), float64(g.paver.W+g.paver.Joint)
	return choose(phase(at, m, g.reach.Y0), m, j, float64(g.joints.Movement), g.extent.Y0, g.extent.Y1, float64(g.joints.Longest), wanted)
}
