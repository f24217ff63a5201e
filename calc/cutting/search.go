package cutting

import "slices"

// search holds what the search for a plan works with.
type search struct {
	*problem
	sheets []layout
	pool   []int // pieces that lie nowhere
	value  int   // area of the pool
	random random
	work   int // places tried so far
}

// find gives the best place for a piece lying w by l in a sheet: the one that leaves the most room in large pieces, counted as the
// sum of the squares of the areas left over. It reports false where there is none.
func (f *search) find(s *layout, w, l int) (at place, gain float64, ok bool) {
	wide, long := f.w, f.l
	if s.across {
		wide, long = long, wide
	}
	f.work += len(s.strips) + len(s.stacks) + 1
	gain = -1e300
	free := long - s.l
	rest := float64(wide*free) * f.scale
	restSq := float64(rest * rest)
	if l <= free && w <= wide {
		a, b := float64(wide*(free-l))*f.scale, float64((wide-w)*l)*f.scale
		at, gain, ok = place{-1, -1}, float64(a*a)+float64(b*b)-restSq, true
	}
	for i := range s.strips {
		t := &s.strips[i]
		side := wide - t.w
		if w > side {
			continue
		}
		grow := l - t.l
		if grow > free {
			continue
		}
		was := float64(side*t.l) * f.scale
		g := -float64(was * was)
		tall, top := t.l, -grow
		if grow > 0 {
			tall, top = l, 0
			a := float64(wide*(free-grow)) * f.scale
			g += float64(a*a) - restSq
		}
		a, b := float64((side-w)*tall)*f.scale, float64(w*top)*f.scale
		if g += float64(a*a) + float64(b*b); g > gain {
			at, gain, ok = place{i, -1}, g, true
		}
	}
	for i := range s.stacks {
		c := &s.stacks[i]
		t := &s.strips[c.strip]
		grow := c.l + l - t.l
		if grow > free {
			continue
		}
		widen, broad := w-c.w, w
		if widen < 0 {
			widen, broad = 0, c.w
		}
		side := wide - t.w
		if widen > side {
			continue
		}
		above := float64(c.w*(t.l-c.l)) * f.scale
		g := -float64(above * above)
		tall, top := t.l, -grow
		if grow > 0 {
			tall, top = c.l+l, 0
			a := float64(wide*(free-grow)) * f.scale
			g += float64(a*a) - restSq
		}
		if grow > 0 || widen > 0 {
			was, now := float64(side*t.l)*f.scale, float64((side-widen)*tall)*f.scale
			g += float64(now*now) - float64(was*was)
		}
		a := float64(broad*top) * f.scale
		if g += float64(a * a); g > gain {
			at, gain, ok = place{c.strip, i}, g, true
		}
	}
	return at, gain, ok
}

// settle puts a piece into the best place of some sheets, and reports false where it fits none.
func (f *search) settle(sheets []*layout, piece int) bool {
	r := &f.pieces[piece]
	var to *layout
	var best place
	bestGain, bestTurned := -1e300, false
	for _, s := range sheets {
		for _, turned := range [2]bool{false, true} {
			if turned && !r.quarter || !turned && !r.flat {
				continue
			}
			w, l := f.lying(piece, turned, s.across)
			if at, gain, ok := f.find(s, w, l); ok && gain > bestGain {
				to, best, bestGain, bestTurned = s, at, gain, turned
			}
		}
	}
	if to == nil {
		return false
	}
	w, l := f.lying(piece, bestTurned, to.across)
	to.put(best, piece, bestTurned, w, l)
	return true
}

// random is a small generator of its own (xorshift64*), so that a plan is the same on every machine.
type random uint64

func (r *random) next() uint64 {
	x := uint64(*r)
	x ^= x >> 12
	x ^= x << 25
	x ^= x >> 27
	*r = random(x)
	return x * 0x2545F4914F6CDD1D
}

// below gives a number from nought to under n.
func (r *random) below(n int) int { return int(r.next() >> 33 % uint64(n)) }

// ordered sorts pieces by one of several measures, the largest first, each measure off by up to a share of noise.
func (f *search) ordered(pieces []int, measure int, noise float64) {
	keys := make([]float64, len(f.pieces))
	for _, i := range pieces {
		r := &f.pieces[i]
		var k float64
		switch measure {
		case 0:
			k = float64(r.w*r.l) * f.scale
		case 1:
			k = float64(max(r.w, r.l))
		case 2:
			k = float64(min(r.w, r.l))
		case 3:
			k = float64(r.w + r.l)
		}
		if noise > 0 {
			k *= 1 + noise*float64(f.random.below(1000))/1000
		}
		keys[i] = k
	}
	slices.SortStableFunc(pieces, func(a, b int) int {
		switch {
		case keys[a] > keys[b]:
			return -1
		case keys[a] < keys[b]:
			return 1
		}
		return a - b
	})
}
