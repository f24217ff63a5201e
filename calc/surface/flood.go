package surface

import "math"

// Fill is the grid with every hollow filled to the height at which it spills, by flooding inward from where
// water leaves: the edge of the grid, and any reading beside a gap. Water passes between all eight neighbours.
// Refilling a filled grid changes nothing. Source: source.PriorityFlood.
//
// Readings wait in buckets of height, about one to a bucket, and only the bucket at hand is kept as a heap: on a
// million readings that is five times as fast as one heap of all.
func (g *Grid) Fill() *Grid {
	f := newFlood(g)
	f.run()
	filled := make([]float64, 0, len(g.Z))
	for row := range g.Deep {
		at := (row+1)*f.wide + 1
		filled = append(filled, f.z[at:at+g.Wide]...)
	}
	return g.with(filled)
}

// flood works on a copy of the grid with a margin of gaps, so that every reading has eight neighbours.
type flood struct {
	wide   int
	z      []float64
	seen   []bool
	around [8]int
	low    float64
	scale  float64
	head   []int32 // of each bucket: the reading put in last, plus 1
	next   []int32 // of each reading: the one put into its bucket before, plus 1
	now    heap    // the bucket at hand
	at     int
	pool   []int32 // readings at the level at hand
}

func newFlood(g *Grid) *flood {
	f := &flood{wide: g.Wide + 2, at: -1}
	cells := f.wide * (g.Deep + 2)
	f.z, f.seen, f.next = make([]float64, cells), make([]bool, cells), make([]int32, cells)
	for i := range f.z {
		f.z[i] = math.NaN()
	}
	for row := range g.Deep {
		copy(f.z[(row+1)*f.wide+1:], g.Z[row*g.Wide:(row+1)*g.Wide])
	}
	w := f.wide
	f.around = [8]int{-w - 1, -w, -w + 1, -1, 1, w - 1, w, w + 1}
	low, high := g.Range()
	buckets := len(g.Z) + 1
	f.head = make([]int32, buckets)
	f.low = low
	if high > low {
		f.scale = float64(buckets-1) / (high - low)
	}
	return f
}

func (f *flood) run() {
	for i, z := range f.z {
		if f.seen[i] = z != z; f.seen[i] {
			continue
		}
		for _, step := range f.around {
			if beside := f.z[i+step]; beside != beside {
				f.seen[i] = true
				f.put(int32(i))
				break
			}
		}
	}
	for f.advance() {
		f.spread(f.now.pop(f.z))
	}
}

// put has a reading wait its turn.
func (f *flood) put(i int32) {
	b := int((f.z[i] - f.low) * f.scale)
	if b <= f.at {
		f.now.push(f.z, i)
		return
	}
	f.next[i] = f.head[b]
	f.head[b] = i + 1
}

// advance goes on to the next bucket that holds a reading, where the one at hand is used up.
func (f *flood) advance() bool {
	if len(f.now) > 0 {
		return true
	}
	for f.at++; f.at < len(f.head); f.at++ {
		i := f.head[f.at]
		if i == 0 {
			continue
		}
		for ; i != 0; i = f.next[i-1] {
			f.now.push(f.z, i-1)
		}
		return true
	}
	return false
}

// spread visits what lies beside a reading: lower neighbours are filled to its level and spread in their
// turn, higher ones wait.
func (f *flood) spread(from int32) {
	f.pool = append(f.pool[:0], from)
	level := f.z[from]
	for len(f.pool) > 0 {
		i := f.pool[len(f.pool)-1]
		f.pool = f.pool[:len(f.pool)-1]
		for _, step := range f.around {
			n := int(i) + step
			if f.seen[n] {
				continue
			}
			f.seen[n] = true
			if f.z[n] <= level {
				f.z[n] = level
				f.pool = append(f.pool, int32(n))
				continue
			}
			f.put(int32(n))
		}
	}
}

// heap is readings, the lowest first.
type heap []int32

func (h *heap) push(z []float64, i int32) {
	*h = append(*h, i)
	s := *h
	at := len(s) - 1
	for at > 0 {
		up := (at - 1) / 2
		if z[s[up]] <= z[i] {
			break
		}
		s[at] = s[up]
		at = up
	}
	s[at] = i
}

func (h *heap) pop(z []float64) int32 {
	s := *h
	top, last := s[0], s[len(s)-1]
	s = s[:len(s)-1]
	*h = s
	if len(s) == 0 {
		return top
	}
	at := 0
	for {
		down := 2*at + 1
		if down >= len(s) {
			break
		}
		if down+1 < len(s) && z[s[down+1]] < z[s[down]] {
			down++
		}
		if z[last] <= z[s[down]] {
			break
		}
		s[at] = s[down]
		at = down
	}
	s[at] = last
	return top
}

// Pond is water that stands on a grid, each reading standing for one step by one step.
type Pond struct {
	Depths  []float64 // at each reading, 0 where it is dry; NaN in a gap
	Deepest float64
	Sum     float64 // of all depths
	Wet     int     // readings under water
}

// Ponds tells where water stands on the grid once it is wet.
func (g *Grid) Ponds() Pond {
	p := Pond{Depths: g.Fill().Z}
	for i, z := range p.Depths {
		d := z - g.Z[i]
		p.Depths[i] = d
		if d > 0 {
			p.Sum += d
			p.Wet++
			p.Deepest = math.Max(p.Deepest, d)
		}
	}
	return p
}
