package cutting

import "slices"

// What the search may spend, in places tried and the like: a number of its own and not a time, so that the plan is the
// same on every machine. A hundred pieces take up to 7 ms as native code and 25 ms in a browser.
const (
	workAtLeast = 2_000_000
	workEach    = 5_000 // for each piece past the first hundred
	workAtMost  = 20_000_000
)

// noise is how far a round strays from setting the largest piece first.
const noise = 0.3

// run searches for a plan of few sheets, down to the bound: it dissolves the emptiest sheet and moves pieces about among
// the others until all lie, and so on (ruin and recreate).
func (f *search) run(bound int, going func(done, of int) bool) []layout {
	best := f.rough()
	budget := f.work + min(workAtLeast+workEach*max(len(f.pieces)-100, 0), workAtMost)
	for len(best) > bound && f.work < budget {
		f.dissolve(best)
		if !f.empty(budget, going) {
			break
		}
		best = best[:len(f.sheets)]
		for i := range f.sheets {
			best[i].copyFrom(&f.sheets[i])
		}
	}
	return best
}

// dissolve takes a plan over with one sheet fewer, the one with the least on it: its pieces lie nowhere.
func (f *search) dissolve(sheets []layout) {
	least := 0
	for i := range sheets {
		if sheets[i].area < sheets[least].area {
			least = i
		}
	}
	f.sheets, f.pool, f.loose = make([]layout, 0, len(sheets)), nil, sheets[least].area
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

// few is how many sheets one round works on, at most.
const few = 3

// empty takes parts of a few sheets off and sets their pieces anew along with those that lie nowhere, over and over. What
// leaves no more lying nowhere than before stays. It reports false where the work ran out before all lay.
func (f *search) empty(budget int, going func(done, of int) bool) bool {
	var made [few]layout
	var pieces, left []int
	start := f.work
	if len(f.sheets) == 0 {
		return false
	}
	for round := 0; f.work < budget; round++ {
		if round%64 == 0 && going != nil && !going(f.work-start, budget-start) {
			return false
		}
		var which [few]int
		var to []*layout
		pieces = append(pieces[:0], f.pool...)
		loose := f.loose
		n := min(1+f.random.below(few), len(f.sheets))
		for i := range n {
			which[i] = f.random.below(len(f.sheets))
			for slices.Contains(which[:i], which[i]) {
				which[i] = f.random.below(len(f.sheets))
			}
			s := &f.sheets[which[i]]
			pieces = f.ruin(s, &made[i], pieces)
			loose += s.area - made[i].area
			to = append(to, &made[i])
		}
		f.work += 6*len(pieces) + 20
		f.ordered(pieces, f.random.below(measures), noise)
		left = left[:0]
		for _, piece := range pieces {
			if f.settle(to, piece) {
				loose -= f.pieces[piece].w * f.pieces[piece].l
			} else {
				left = append(left, piece)
			}
		}
		if loose > f.loose {
			continue
		}
		for i := range n {
			f.sheets[which[i]], made[i] = made[i], f.sheets[which[i]]
		}
		f.pool, f.loose = append(f.pool[:0], left...), loose
		if len(left) == 0 {
			return true
		}
	}
	return false
}

// ruin copies a sheet without some of its parts: all of it, half of its strips or stacks, or a third of its pieces. The
// pieces taken off are added to those given.
func (f *search) ruin(s, kept *layout, pieces []int) []int {
	f.work += 2 * len(s.items)
	kept.clear(s.across)
	how := f.random.below(4)
	if how == 0 {
		if f.sided {
			kept.across = f.random.below(2) == 0
		}
		for _, it := range s.items {
			pieces = append(pieces, it.piece)
		}
		return pieces
	}
	// Where each part stands in the copy, plus 1; nought while it is not there yet, below nought where it goes.
	f.strips, f.stacks = drop(f.strips[:0], len(s.strips), how == 1, &f.random), drop(f.stacks[:0], len(s.stacks), how == 2, &f.random)
	for _, it := range s.items {
		in := s.stacks[it.stack].strip
		if f.stacks[it.stack] < 0 || f.strips[in] < 0 || how == 3 && f.random.below(3) == 0 {
			pieces = append(pieces, it.piece)
			continue
		}
		w, l := f.lying(it.piece, it.turned, s.across)
		kept.put(place{f.strips[in] - 1, f.stacks[it.stack] - 1}, it.piece, it.turned, w, l)
		stack := kept.items[len(kept.items)-1].stack
		f.stacks[it.stack], f.strips[in] = stack+1, kept.stacks[stack].strip+1
	}
	return pieces
}

// drop marks half of n parts as gone, or none.
func drop(marks []int, n int, some bool, r *random) []int {
	for range n {
		mark := 0
		if some {
			mark = -r.below(2)
		}
		marks = append(marks, mark)
	}
	return marks
}
