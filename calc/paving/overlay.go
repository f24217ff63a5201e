package paving

import (
	"cmp"
	"math"
	"slices"
)

// Parts of the outline, as overlay tells them apart.
type part uint8

const (
	outside   part = iota
	paving         // what pavers and the joints of the pattern cover
	gap            // perimeter gap
	structure      // joints over those in the slab
	parts
)

const (
	// near is how close two points are one, in micrometres: above the rounding of any paving's coordinates (1e-8 at
	// ten metres), below anything that can be built.
	near = 1e-6
	// beside is how far off a border what lies beside it is looked at: well over near, so that what was moved by that
	// stays on its side.
	beside = 20 * near
)

// overlay parts the outline's rings by strips: gaps first, then structural joints. All segments are split where they meet;
// each bit is kept as a border of the part on its left where its two sides differ; and the borders are joined to rings.
// It is for some hundred segments: every pair is looked at. Where lines all but coincide it can fail to tell sides apart:
// then borders do not join up, and it says so.
func overlay(rings, gaps, structures [][]Point) (out [parts][][]Point, ok bool) {
	a := arrangement{}
	for _, set := range [][][]Point{rings, gaps, structures} {
		for _, r := range set {
			a.add(r)
		}
	}
	a.split()
	where := func(p Point) part {
		switch {
		case !within(p, rings):
			return outside
		case amid(p, gaps):
			return gap
		case amid(p, structures):
			return structure
		}
		return paving
	}
	var borders [parts][]border
	for _, b := range a.bits() {
		p, q := a.nodes[b[0]], a.nodes[b[1]]
		way := minus(q, p)
		off := beside / length(way)
		mid := Point{(p.X + q.X) / 2, (p.Y + q.Y) / 2}
		l := where(Point{mid.X - way.Y*off, mid.Y + way.X*off})
		r := where(Point{mid.X + way.Y*off, mid.Y - way.X*off})
		if l != r {
			borders[l] = append(borders[l], border{b[0], b[1], false})
			borders[r] = append(borders[r], border{b[1], b[0], false})
		}
	}
	for p := paving; p < parts; p++ {
		if out[p], ok = a.rings(borders[p]); !ok {
			return out, false
		}
	}
	return out, true
}

// amid says whether a point is in any of some convex rings.
func amid(p Point, convex [][]Point) bool {
	for _, r := range convex {
		a, in := r[len(r)-1], true
		for _, b := range r {
			if in = cross(minus(b, a), minus(p, a)) > 0; !in {
				break
			}
			a = b
		}
		if in {
			return true
		}
	}
	return false
}

type border struct {
	from, to int
	taken    bool
}

type segment struct {
	a, b   Point
	box    Rect
	splits []Point
}

type arrangement struct {
	segments []segment
	nodes    []Point
}

func (a *arrangement) add(r []Point) {
	p := r[len(r)-1]
	for _, q := range r {
		a.segments = append(a.segments, segment{a: p, b: q, box: bounds([]Point{p, q}), splits: []Point{p, q}})
		p = q
	}
}

// split finds where every two segments meet.
func (a *arrangement) split() {
	for i := range a.segments {
		s := &a.segments[i]
		for j := i + 1; j < len(a.segments); j++ {
			t := &a.segments[j]
			if s.box.X0 > t.box.X1+near || t.box.X0 > s.box.X1+near || s.box.Y0 > t.box.Y1+near || t.box.Y0 > s.box.Y1+near {
				continue
			}
			for _, p := range [...]Point{t.a, t.b} {
				if on(p, s.a, s.b) {
					s.splits = append(s.splits, p)
				}
			}
			for _, p := range [...]Point{s.a, s.b} {
				if on(p, t.a, t.b) {
					t.splits = append(t.splits, p)
				}
			}
			d, e, f := minus(s.b, s.a), minus(t.b, t.a), minus(t.a, s.a)
			if turn := cross(d, e); turn != 0 {
				if u, v := cross(f, e)/turn, cross(f, d)/turn; u > 0 && u < 1 && v > 0 && v < 1 {
					p := plus(s.a, d, u)
					s.splits, t.splits = append(s.splits, p), append(t.splits, p)
				}
			}
		}
	}
}

// on says whether a point lies on a segment.
func on(p, a, b Point) bool {
	way, off := minus(b, a), minus(p, a)
	far := length(way)
	along := dot(way, off)
	return math.Abs(cross(way, off)) <= near*far && along >= -near*far && along <= far*(far+near)
}

// node is the number of the node at a point.
func (a *arrangement) node(p Point) int {
	for i, q := range a.nodes {
		if math.Abs(p.X-q.X) <= near && math.Abs(p.Y-q.Y) <= near {
			return i
		}
	}
	a.nodes = append(a.nodes, p)
	return len(a.nodes) - 1
}

// bits are the segments between neighbouring splits, each once.
func (a *arrangement) bits() [][2]int {
	var bits [][2]int
	for i := range a.segments {
		s := &a.segments[i]
		way := minus(s.b, s.a)
		slices.SortFunc(s.splits, func(p, q Point) int {
			return cmp.Compare(dot(way, minus(p, s.a)), dot(way, minus(q, s.a)))
		})
		last := a.node(s.splits[0])
		for _, p := range s.splits[1:] {
			if n := a.node(p); n != last {
				bits = append(bits, [2]int{min(last, n), max(last, n)})
				last = n
			}
		}
	}
	slices.SortFunc(bits, func(a, b [2]int) int { return cmp.Or(a[0]-b[0], a[1]-b[1]) })
	return slices.Compact(bits)
}

// rings joins borders with their part on the left. Where several go on from a node the leftmost is taken, so that what
// touches in a point stays apart.
func (a *arrangement) rings(borders []border) (rings [][]Point, ok bool) {
	from := make([][]int, len(a.nodes))
	ends := make([]int, len(a.nodes))
	for i, b := range borders {
		from[b.from] = append(from[b.from], i)
		ends[b.from]++
		ends[b.to]--
	}
	for _, n := range ends {
		if n != 0 {
			return nil, false
		}
	}
	for i := range borders {
		var ring []Point
		for at := i; !borders[at].taken; {
			b := &borders[at]
			b.taken = true
			ring = append(ring, a.nodes[b.from])
			way := minus(a.nodes[b.to], a.nodes[b.from])
			most := math.Inf(-1)
			for _, n := range from[b.to] {
				on := minus(a.nodes[borders[n].to], a.nodes[b.to])
				if turn := math.Atan2(cross(way, on), dot(way, on)); turn > most && (!borders[n].taken || n == i) {
					at, most = n, turn
				}
			}
		}
		if ring = plain(ring, near); len(ring) > 2 && math.Abs(area(ring)) > speck {
			rings = append(rings, ring)
		}
	}
	return rings, true
}
