package cutting

import "slices"

// search is what the search for a plan works with.
type search struct {
	*problem
	sided          bool // it matters which way the first cuts run: the sheet is no square, or some piece may not turn
	sheets         []layout
	pool           []int // pieces that lie nowhere
	loose          int   // their area
	work           int   // spent so far
	random         random
	keys           []float64 // by piece, for sorting
	strips, stacks []int     // for ruin
}

func (p *problem) search() *search {
	f := &search{problem: p, random: 1, keys: make([]float64, len(p.pieces)), sided: p.w != p.l}
	for _, r := range p.pieces {
		f.sided = f.sided || r.w != r.l && !(r.flat && r.quarter)
	}
	return f
}

// nowhere is less than any gain.
const nowhere = -1e300

// find gives the best place for a piece lying w by l in a sheet: the one that leaves the most room in large pieces, counted as the
// sum of the squares of the areas left over. Its gain is nowhere where there is none.
func (f *search) find(s *layout, w, l int) (at place, gain float64) {
	wide, long := f.w, f.l
	if s.across {
		wide, long = long, wide
	}
	f.work += len(s.strips) + len(s.stacks) + 4
	gain = nowhere
	free := long - s.l
	rest := float64(wide*free) * f.scale
	restSq := float64(rest * rest)
	if l <= free && w <= wide {
		a, b := float64(wide*(free-l))*f.scale, float64((wide-w)*l)*f.scale
		at, gain = place{-1, -1}, float64(a*a)+float64(b*b)-restSq
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
			at, gain = place{i, -1}, g
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
			at, gain = place{c.strip, i}, g
		}
	}
	return at, gain
}

// settle puts a piece into the best place of some sheets, and reports false where it fits none.
func (f *search) settle(sheets []*layout, piece int) bool {
	r := &f.pieces[piece]
	most := f.w*f.l - r.w*r.l // no more may lie on a sheet that it goes into
	var to *layout
	var best place
	bestGain, bestTurned := float64(nowhere), false
	for _, s := range sheets {
		f.work += 2
		if s.area > most {
			continue
		}
		w, l := r.w, r.l
		if s.across {
			w, l = l, w
		}
		if r.flat {
			if at, gain := f.find(s, w, l); gain > bestGain {
				to, best, bestGain, bestTurned = s, at, gain, false
			}
		}
		if r.quarter {
			if at, gain := f.find(s, l, w); gain > bestGain {
				to, best, bestGain, bestTurned = s, at, gain, true
			}
		}
	}
	if to == nil {
		return false
	}
	w, l := f.lying(piece, bestTurned, to.across)
	to.put(best, piece, bestTurned, w, l)
	f.work += 10
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

// measures is how many ways there are to say which piece is larger.
const measures = 4

// ordered sorts pieces by one of several measures, the largest first, each measure off by up to a share of noise.
func (f *search) ordered(pieces []int, measure int, noise float64) {
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
			k *= 1 + noise*float64(f.random.below(1024))/1024
		}
		f.keys[i] = k
	}
	keys := f.keys
	if len(pieces) > 60 {
		slices.SortStableFunc(pieces, func(a, b int) int {
			switch {
			case keys[a] > keys[b]:
				return -1
			case keys[a] < keys[b]:
				return 1
			}
			return 0
		})
		return
	}
	for i := 1; i < len(pieces); i++ {
		piece := pieces[i]
		key, j := keys[piece], i
		for ; j > 0 && keys[pieces[j-1]] < key; j-- {
			pieces[j] = pieces[j-1]
		}
		pieces[j] = piece
	}
}
