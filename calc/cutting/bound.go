package cutting

import "slices"

// bound begins a plan with a number of sheets that none goes under: the area's, or a stronger one from dual feasible functions.
//
// A dual feasible function f of a length never lets lengths that fit into C come to more than f(C). Weighing each piece by
// f(w)·g(l) then bounds the sheets from below by the weights over f(W)·g(L), however the pieces lie (A general framework for
// bounds for higher-dimensional orthogonal packing problems, 2004). A piece that may turn counts the lesser of its two
// weights. On a square sheet each packing turned a quarter is a packing too, of f and g changed about: a piece may then
// count the mean of both (A new lower bound for the non-oriented two-dimensional bin-packing problem, 2007).
func (p *problem) bound() (plan Plan) {
	kinds := p.kinds()
	if len(kinds) == 0 {
		return plan
	}
	lengths := make([]int, 0, 2*len(kinds))
	for _, k := range kinds {
		lengths = append(lengths, k.w, k.l)
	}
	slices.Sort(lengths)
	lengths = slices.Compact(lengths)
	for i := range kinds {
		k := &kinds[i]
		k.atW, _ = slices.BinarySearch(lengths, k.w)
		k.atL, _ = slices.BinarySearch(lengths, k.l)
	}
	// So many pairs of functions are tried as keep the work within bounds.
	most := 4
	for most < 48 && (most+1)*(most+1)*len(kinds) <= boundWork {
		most++
	}
	across := weighings(lengths, p.w, most)
	along := across
	if p.l != p.w {
		along = weighings(lengths, p.l, most)
	}
	plan.Alone = p.crowd(kinds)
	for i, f := range across {
		for j, g := range along {
			if p.w == p.l && j < i {
				continue // the same pair the other way about
			}
			plan.Weighed = max(plan.Weighed, p.weigh(kinds, f, g))
		}
	}
	plan.Bound = max(plan.Alone, plan.Weighed)
	return plan
}

const boundWork = 200_000

// kind is equal pieces.
type kind struct {
	rect
	count    int
	atW, atL int // where its sides stand among the lengths
}

func (p *problem) kinds() []kind {
	sorted := slices.Clone(p.pieces)
	for i := range sorted {
		if r := &sorted[i]; r.flat && r.quarter && r.w < r.l {
			r.w, r.l = r.l, r.w // it lies either way
		}
	}
	slices.SortFunc(sorted, func(a, b rect) int {
		switch {
		case a.w != b.w:
			return a.w - b.w
		case a.l != b.l:
			return a.l - b.l
		case a.quarter != b.quarter && a.quarter:
			return 1
		case a.quarter != b.quarter:
			return -1
		}
		return 0
	})
	var kinds []kind
	for _, r := range sorted {
		if n := len(kinds); n > 0 && kinds[n-1].rect == r {
			kinds[n-1].count++
			continue
		}
		kinds = append(kinds, kind{rect: r, count: 1})
	}
	return kinds
}

// crowd is how many pieces can be named of which no two fit on one sheet: each needs its own. They are taken greedily,
// the largest first.
func (p *problem) crowd(kinds []kind) int {
	order := make([]*kind, len(kinds))
	for i := range kinds {
		order[i] = &kinds[i]
	}
	slices.SortStableFunc(order, func(a, b *kind) int { return b.w*b.l - a.w*a.l })
	n := 0
	var in []*kind
	for _, k := range order {
		if slices.ContainsFunc(in, func(o *kind) bool { return p.share(k, o) }) {
			continue
		}
		if in = append(in, k); len(in) > crowdWork {
			break
		}
		if n++; !p.share(k, k) {
			n += k.count - 1
		}
	}
	return n
}

const crowdWork = 2000

// share reports whether two pieces fit on one sheet: side by side one way or the other, since a straight line parts any two
// rectangles.
func (p *problem) share(a, b *kind) bool {
	for _, x := range a.ways() {
		for _, y := range b.ways() {
			if x[0]+y[0] <= p.w && max(x[1], y[1]) <= p.l || x[1]+y[1] <= p.l && max(x[0], y[0]) <= p.w {
				return true
			}
		}
	}
	return false
}

// ways are the sizes of a piece as it may lie, twice the same where there is one way.
func (r *rect) ways() [2][2]int {
	given, turned := [2]int{r.w, r.l}, [2]int{r.l, r.w}
	switch {
	case !r.quarter:
		return [2][2]int{given, given}
	case !r.flat:
		return [2][2]int{turned, turned}
	}
	return [2][2]int{given, turned}
}

// weighing is a dual feasible function at each of some lengths and at the whole. A length past the whole weighs nothing that matters.
type weighing struct {
	at    []float64
	whole float64
}

// weigh is the bound of one pair of functions.
func (p *problem) weigh(kinds []kind, f, g weighing) int {
	lesser, mean := 0.0, 0.0
	for i := range kinds {
		k := &kinds[i]
		n := float64(k.count)
		flat, quarter := f.at[k.atW]*g.at[k.atL], f.at[k.atL]*g.at[k.atW]
		mean += n * (flat + quarter) / 2
		switch {
		case !k.flat:
			lesser += n * quarter
		case !k.quarter:
			lesser += n * flat
		default:
			lesser += n * min(flat, quarter)
		}
	}
	if p.w == p.l {
		lesser = max(lesser, mean)
	}
	return least(lesser, f.whole*g.whole)
}

// least is the whole sheets that a weight needs at least, a trace of rounding let off.
func least(weight, sheet float64) int {
	n := int(weight / sheet)
	if weight/sheet-float64(n) > 1e-9*(1+float64(n)) {
		n++
	}
	return n
}

// weighings are dual feasible functions for a whole: the length itself; with a threshold k below which a length counts nothing and
// past whose complement it counts as the whole (New classes of fast lower bounds for bin packing problems, 2001); and counted
// in steps of k, up to the half rounded down and past it up (New reduction procedures and lower bounds for the two-dimensional bin
// packing problem with fixed orientation, 2007).
func weighings(lengths []int, whole, most int) []weighing {
	list := []weighing{weighed(lengths, whole, func(x int) int { return x })}
	var steps []int
	for _, x := range lengths {
		if x <= whole {
			steps = append(steps, min(x, whole-x)) // where a threshold changes what it does
			if 2*x > whole {
				steps = append(steps, whole-x+1)
			}
		}
	}
	for n := 2; n <= 8; n++ {
		steps = append(steps, whole/n, whole/n+1)
	}
	slices.Sort(steps)
	steps = slices.Compact(steps)
	steps = slices.DeleteFunc(steps, func(k int) bool { return k < 1 || 2*k > whole })
	picks := min(len(steps), most/2)
	for i := range picks {
		k := steps[i*len(steps)/picks]
		list = append(list, weighed(lengths, whole, func(x int) int {
			switch {
			case x < k:
				return 0
			case x > whole-k:
				return whole
			}
			return x
		}), weighed(lengths, whole, func(x int) int {
			switch {
			case 2*x < whole:
				return 2 * (x / k)
			case 2*x == whole:
				return whole / k
			}
			return 2 * (whole/k - (whole-x)/k)
		}))
	}
	return list
}

func weighed(lengths []int, whole int, f func(int) int) weighing {
	w := weighing{make([]float64, len(lengths)), float64(f(whole))}
	for i, x := range lengths {
		if x <= whole {
			w.at[i] = float64(f(x))
		}
	}
	return w
}
