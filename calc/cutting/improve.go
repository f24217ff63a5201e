package cutting

import "slices"

// run searches for a plan of few sheets, down to the bound.
func (f *search) run(bound int, going func(done, of int) bool) []layout {
	var best []layout
	for measure := range 4 {
		if s := f.construct(measure, false); best == nil || len(s) < len(best) {
			best = s
		}
	}
	budget := f.work + f.allowance()
	for len(best) > bound && f.work < budget {
		f.dissolve(best)
		if !f.empty(budget, going) {
			break
		}
		best = best[:0]
		for i := range f.sheets {
			best = append(best, layout{})
			best[i].copyFrom(&f.sheets[i])
		}
	}
	return best
}

const allow = 3_000_000

func (f *search) allowance() int { return allow }

// dissolve takes a plan over with one sheet fewer, the one with the least on it: its pieces lie nowhere.
func (f *search) dissolve(sheets []layout) {
	least := 0
	for i := range sheets {
		if sheets[i].area < sheets[least].area {
			least = i
		}
	}
	f.sheets, f.pool, f.value = nil, nil, sheets[least].area
	for i := range sheets {
		if i == least {
			for _, it := range sheets[i].items {
				f.pool = append(f.pool, it.piece)
			}
			continue
		}
		var s layout
		s.copyFrom(&sheets[i])
		f.sheets = append(f.sheets, s)
	}
}

// empty takes parts of a few sheets off and sets them anew with the pieces that lie nowhere, over and over, until none
// is left or the work is done.
func (f *search) empty(budget int, going func(done, of int) bool) bool {
	var made [3]layout
	var loose, left []int
	start := f.work
	for round := 0; f.work < budget; round++ {
		if round%64 == 0 && going != nil && !going(f.work-start, budget-start) {
			return false
		}
		n := min(1+f.random.below(3), len(f.sheets))
		if n == 0 {
			return false
		}
		var which [3]int
		var to []*layout
		loose = append(loose[:0], f.pool...)
		area := f.value
		for i := range n {
			for again := true; again; {
				which[i] = f.random.below(len(f.sheets))
				again = slices.Contains(which[:i], which[i])
			}
			s := &f.sheets[which[i]]
			loose = f.ruin(s, &made[i], loose)
			area += s.area - made[i].area
			to = append(to, &made[i])
		}
		f.ordered(loose, f.random.below(4), 0.4)
		left = left[:0]
		for _, piece := range loose {
			if f.settle(to, piece) {
				r := &f.pieces[piece]
				area -= r.w * r.l
			} else {
				left = append(left, piece)
			}
		}
		if area > f.value {
			continue
		}
		for i := range n {
			f.sheets[which[i]], made[i] = made[i], f.sheets[which[i]]
		}
		f.pool, f.value = append(f.pool[:0], left...), area
		if len(left) == 0 {
			return true
		}
	}
	return false
}

// ruin copies a sheet without some of its parts: all of it, some strips, some stacks or some pieces. The pieces taken
// off are added to loose.
func (f *search) ruin(s, kept *layout, loose []int) []int {
	kept.clear(s.across)
	how := f.random.below(4)
	if how == 0 {
		for _, it := range s.items {
			loose = append(loose, it.piece)
		}
		return loose
	}
	strips, stacks := make([]int, len(s.strips)), make([]int, len(s.stacks)) // where each is kept, plus 1; below nought: it goes
	if how == 1 {
		for i := range strips {
			strips[i] = -f.random.below(2)
		}
	}
	if how == 2 {
		for i := range stacks {
			stacks[i] = -f.random.below(2)
		}
	}
	for _, it := range s.items {
		c := &s.stacks[it.stack]
		if stacks[it.stack] < 0 || strips[c.strip] < 0 || how == 3 && f.random.below(3) == 0 {
			loose = append(loose, it.piece)
			continue
		}
		w, l := f.lying(it.piece, it.turned, s.across)
		at := place{strips[c.strip] - 1, stacks[it.stack] - 1}
		kept.put(at, it.piece, it.turned, w, l)
		last := &kept.items[len(kept.items)-1]
		stacks[it.stack], strips[c.strip] = last.stack+1, kept.stacks[last.stack].strip+1
	}
	return loose
}
