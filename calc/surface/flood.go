package surface

import "math"

// Fill is the grid with every hollow filled to the height at which it spills, by flooding inward from where
// water leaves: the edge of the grid, and any reading beside a gap. Water passes between all eight neighbours.
// Refilling a filled grid changes nothing. Source: source.PriorityFlood.
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
	wait   heap    // readings whose neighbours are still to be looked at
	pool   []int32 // readings at the level at hand
}

func newFlood(g *Grid) *flood {
	f := &flood{wide: g.Wide + 2}
	cells := f.wide * (g.Deep + 2)
	f.z, f.seen = make([]float64, cells), make([]bool, cells)
	for i := range f.z {
		f.z[i] = math.NaN()
	}
	for row := range g.Deep {
		copy(f.z[(row+1)*f.wide+1:], g.Z[row*g.Wide:(row+1)*g.Wide])
	}
	w := f.wide
	f.around = [8]int{-w - 1, -w, -w + 1, -1, 1, w - 1, w, w + 1}
	return f
}

func (f *flood) run() {
	for i, z := range f.z {
		if z == z {
			continue
		}
		f.seen[i] = true
		for _, step := range f.around {
			if n := i + step; 0 <= n && n < len(f.z) && !f.seen[n] && f.z[n] == f.z[n] {
				f.seen[n] = true
				f.wait.push(f.z, int32(n))
			}
		}
	}
	for len(f.wait) > 0 {
		f.spread(f.wait.pop(f.z))
	}
}

// spread visits what lies beside a reading: lower neighbours are filled to its level and spread in their
// turn, higher ones wait.
func (f *flood) spread(from int32) {
	z, seen, pool := f.z, f.seen, append(f.pool[:0], from)
	level := z[from]
	for len(pool) > 0 {
		i := int(pool[len(pool)-1])
		pool = pool[:len(pool)-1]
		for _, step := range f.around {
			n := i + step
			if seen[n] {
				continue
			}
			seen[n] = true
			if z[n] > level {
				f.wait.push(z, int32(n))
				continue
			}
			z[n] = level
			pool = append(pool, int32(n))
		}
	}
	f.pool = pool
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
