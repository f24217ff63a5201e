package paving

import (
	"cmp"
	"math"
	"slices"
	"strconv"
)

// alike is how near measures are one on the cutting list: a tenth of a millimetre, in micrometres.
const alike = 100

// mark groups the cut pieces that are the same shape and gives each shape its mark.
func (l *layer) mark() {
	square := math.Abs(float64(l.paver.L-l.paver.W)) < alike
	by, boxes := map[string]int{}, map[[2]int64]int{}
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if p.Full {
			continue
		}
		b := bounds(p.Rings[0])
		if long, wide := b.X1-b.X0, b.Y1-b.Y0; boxed(p.Rings, long, wide) {
			// Most cuts are rectangles, and those need no turning about.
			if square {
				long, wide = max(long, wide), min(long, wide)
			}
			key := [2]int64{tenth(long), tenth(wide)}
			n, found := boxes[key]
			if !found {
				n = len(l.Cuts)
				boxes[key] = n
				shape := [][]Point{{{0, 0}, {long, 0}, {long, wide}, {0, wide}}}
				l.Cuts = append(l.Cuts, Cut{L: long, W: wide, Square: true, Shape: shape, Area: p.Area, Example: i})
			}
			p.Cut = n
			l.Cuts[n].Count++
			continue
		}
		shape, key := settle(p.Rings, square)
		n, found := by[key]
		if !found {
			n = len(l.Cuts)
			by[key] = n
			b := bounds(shape[0])
			l.Cuts = append(l.Cuts, Cut{L: b.X1, W: b.Y1, Shape: shape, Area: p.Area, Example: i})
		}
		p.Cut = n
		l.Cuts[n].Count++
	}
	sorted := make([]int, len(l.Cuts)) // where each cut stood before it was sorted
	for i := range sorted {
		sorted[i] = i
	}
	slices.SortStableFunc(sorted, func(a, b int) int {
		return cmp.Or(l.Cuts[b].Count-l.Cuts[a].Count, cmp.Compare(l.Cuts[b].Area, l.Cuts[a].Area))
	})
	cuts, now := make([]Cut, len(sorted)), make([]int, len(sorted))
	for i, was := range sorted {
		cuts[i], now[was] = l.Cuts[was], i
		cuts[i].Mark = letters(i)
	}
	l.Cuts = cuts
	for i := range l.Pieces {
		if p := &l.Pieces[i]; !p.Full {
			p.Cut = now[p.Cut]
		}
	}
}

// letters is A, B … Z, AA, AB …
func letters(n int) string {
	s := string(rune('A' + n%26))
	for n = n/26 - 1; n >= 0; n = n/26 - 1 {
		s = string(rune('A'+n%26)) + s
	}
	return s
}

// boxed says whether a shape is the rectangle about it.
func boxed(rings [][]Point, long, wide float64) bool {
	return len(rings) == 1 && len(rings[0]) == 4 && math.Abs(area(rings[0])-long*wide) < alike*(long+wide)/2
}

// settle turns a shape into the one of its turns that stands for all of them, from the lower left corner of the rectangle
// about it, and gives a text that is the same for shapes that are alike. It turns, and never mirrors.
func settle(rings [][]Point, square bool) (shape [][]Point, key string) {
	for turn := range 4 {
		if turn&1 == 1 && !square {
			continue
		}
		turned := make([][]Point, len(rings))
		for i, r := range rings {
			turned[i] = make([]Point, len(r))
			for j, p := range r {
				switch turn {
				case 1:
					p = Point{-p.Y, p.X}
				case 2:
					p = Point{-p.X, -p.Y}
				case 3:
					p = Point{p.Y, -p.X}
				}
				turned[i][j] = p
			}
		}
		b := bounds(turned[0])
		keys := make([]string, len(turned))
		for i, r := range turned {
			for j := range r {
				r[j].X -= b.X0
				r[j].Y -= b.Y0
			}
			turned[i], keys[i] = begin(r)
		}
		slices.Sort(keys[1:])
		k := ""
		for _, one := range keys {
			k += one + ";"
		}
		if shape == nil || k < key {
			shape, key = turned, k
		}
	}
	return shape, key
}

// begin starts a ring at its leftmost corner, the lowest of several, and writes it down.
func begin(r []Point) ([]Point, string) {
	best := 0
	for i, p := range r {
		x, y := tenth(p.X), tenth(p.Y)
		if bx, by := tenth(r[best].X), tenth(r[best].Y); x < bx || x == bx && y < by {
			best = i
		}
	}
	r = append(slices.Clone(r[best:]), r[:best]...)
	var key []byte
	for _, p := range r {
		key = strconv.AppendInt(key, tenth(p.X), 10)
		key = append(key, ' ')
		key = strconv.AppendInt(key, tenth(p.Y), 10)
		key = append(key, ',')
	}
	return r, string(key)
}

// tenth counts tenths of a millimetre. Nothing that is typed in millimetres or sixteenths of an inch comes near where it
// changes, so that rounding does not part what is alike.
func tenth(x float64) int64 { return int64(math.Floor(x/alike + 0.6137)) }
