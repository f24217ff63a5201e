package surface

import "math"

// Gap is the worst gap under a straightedge: how deep, at which reading, and the two readings that carry it.
type Gap struct {
	Depth        float64
	At, From, To Place
	Span         float64 // from one support to the other
}

// Worst is the worst gap under straightedges of these lengths, each laid on the readings at every place
// along every row, column and diagonal. It rests on the highest readings under it, which is the upper hull of those. Where
// the readings stand too far apart for a straightedge to reach three of them, its Span is 0: nothing is known.
//
// A line of n readings takes n log n steps, whatever the length. Going may end it early by reporting false.
func (g *Grid) Worst(going func(done, of int) bool, lengths ...float64) []Gap {
	worst := make([]Gap, len(lengths))
	var s scan
	done, of := 0, 3*(g.Wide+g.Deep)
	g.lines(func(l *line) bool {
		for i, length := range lengths {
			reach := length / l.long * (1 + 1e-9)
			if reach < 2 {
				continue
			}
			s.line = l
			s.best = worst[i].Depth
			from, to, at := s.worst(reach)
			if at >= 0 {
				worst[i] = Gap{s.best, g.Place(l.index(at)), g.Place(l.index(from)), g.Place(l.index(to)), (l.x[to] - l.x[from]) * l.long}
			}
			if worst[i].Span == 0 && s.three(reach) {
				worst[i].Span = l.long * 2 // seen, and no gap
			}
		}
		done++
		return done&63 != 0 || going == nil || going(done, of)
	})
	return worst
}

// three reports whether a straightedge reaches three readings of the line.
func (s *scan) three(reach float64) bool {
	for k := 2; k < len(s.x); k++ {
		if s.x[k]-s.x[k-2] <= reach {
			return true
		}
	}
	return false
}

// scan finds the worst gap in one line. Every place at which the straightedge can lie is a window of
// readings. The windows are taken in blocks: those that start in [a, b] where b is the last reading that the first
// of them reaches, so that b lies in all of them. The upper hull of a window is then some of the hull on its left of b, one
// edge that bridges b, and some of the hull on its right.
//
// As the window slides, the left hull loses readings and the right one gains them, and the bridge only grows steeper: its left
// end moves left, but for readings that come new to the hull, so all of a block's bridges are found in as many
// steps as it has readings. The deepest reading under a bridge is a search in a lower hull.
type scan struct {
	*line
	best         float64
	from, to, at int // of the best; at is -1 where nothing was better

	next        []int // of each reading: the next on the upper hull from it to b
	left, right []int // hulls as stacks: left from b to the window's first reading, right from b+1 to its last
	lower       []int
	bridges     []bridge
	head, tail  []int // of each reading: the last bridge that starts there, and the one that ends there, plus 1
}

// bridge is an edge from left of b to right of it, and the bridge noted before it that starts at the same reading, plus 1.
type bridge struct{ from, to, next int }

// worst looks for a gap deeper than the best so far.
func (s *scan) worst(reach float64) (from, to, at int) {
	s.at = -1
	n := len(s.x)
	last := func(k, from int) int { // the last reading that a window from k holds, looked for from another on
		for from < n-1 && s.x[from+1]-s.x[k] <= reach {
			from++
		}
		return from
	}
	for a := 0; a < n; {
		b := last(a, a)
		e := last(b, b)
		if e-a >= 2 && s.hollow(a, e) > s.best && !s.roof(a, e, reach) {
			s.block(a, b, e, reach)
		}
		if e == n-1 {
			break
		}
		a = b + 1
	}
	return s.from, s.to, s.at
}

// hollow is more than any gap between two readings can be: how far readings stray from a straight line, in all.
func (s *scan) hollow(a, e int) float64 {
	x := s.x[a : e+1]
	z := s.z[a : e+1][:len(x)]
	m := (z[len(z)-1] - z[0]) / (x[len(x)-1] - x[0])
	low, high := z[0]-m*x[0], z[0]-m*x[0]
	for k, at := range x {
		v := z[k] - m*at
		if v < low {
			low = v
		} else if v > high {
			high = v
		}
	}
	return high - low
}

// roof looks under the upper hull of a whole block, which lies over those of all its windows. It reports true where that is all that
// there is to know: it finds no gap worse than the best so far, or finds one between supports that one straightedge reaches.
func (s *scan) roof(a, e int, reach float64) bool {
	s.hull(a, e)
	x, z := s.x, s.z
	worst, from, to, at := s.best, 0, 0, -1
	l := s.right[0]
	for _, r := range s.right[1:] {
		rise := (z[r] - z[l]) / (x[r] - x[l])
		level := z[l] - rise*x[l]
		for k := l + 1; k < r; k++ {
			if gap := level + rise*x[k] - z[k]; gap > worst {
				worst, from, to, at = gap, l, r, k
			}
		}
		l = r
	}
	if at >= 0 && x[to]-x[from] > reach {
		return false
	}
	if at >= 0 {
		s.try(from, to, at)
	}
	return true
}

// hull is the upper hull of the readings from a to e, in right.
func (s *scan) hull(a, e int) {
	s.grow(len(s.x))
	x, z, hull := s.x, s.z, s.right[:cap(s.right)]
	hull[0] = a
	n := 1
	for k := a + 1; k <= e; k++ {
		zk, xk := z[k], x[k]
		for ; n >= 2; n-- {
			i, j := hull[n-2], hull[n-1]
			if (z[j]-z[i])*(xk-x[i]) > (zk-z[i])*(x[j]-x[i]) {
				break
			}
		}
		hull[n] = k
		n++
	}
	s.right = hull[:n]
}

// block looks through the windows that start in [a, b] and end by e.
func (s *scan) block(a, b, e int, reach float64) {
	s.grow(len(s.x))
	s.left = s.left[:0]
	for k := b; k >= a; k-- {
		j := k + 1
		for k < b && j < b && !s.over(k, j, s.next[j]) {
			j = s.next[j]
		}
		s.next[k] = j
	}
	for k := a; k < b; k = s.next[k] {
		s.under(k, s.next[k])
	}
	for k := a; ; k = s.next[k] {
		s.left = append(s.left, k)
		if k == b {
			break
		}
	}
	turn(s.left)
	s.slide(a, b, reach)
	for k := 1; k < len(s.right); k++ {
		s.under(s.right[k-1], s.right[k])
	}
	s.sound(a, b, e)
}

// grow makes room for a line of n readings.
func (s *scan) grow(n int) {
	if len(s.next) < n {
		s.next, s.head, s.tail, s.right = make([]int, n), make([]int, n), make([]int, n), make([]int, n)
	}
}

// slide moves the window over the block and notes its bridges. Only a reading that comes in above the bridge makes a new one worth
// noting: where the window only loses readings, its hull sinks, and so do its gaps.
func (s *scan) slide(a, b int, reach float64) {
	s.right, s.bridges = s.right[:0], s.bridges[:0]
	l, r, end := 0, -1, b // places in left and right
	for i := a; ; i++ {
		for end < len(s.x)-1 && s.x[end+1]-s.x[i] <= reach {
			end++
			l, r = s.add(end, l, r)
		}
		if i == b {
			return
		}
		gone := l == len(s.left)-1 // the bridge starts at the reading that the window leaves
		s.drop(i)
		if gone {
			l = len(s.left) - 1
			if r >= 0 {
				l = s.lean(l, s.right[r])
			}
		}
	}
}

// add puts a reading on the right hull. Where it stands above the bridge, the bridge ends at it from then on.
func (s *scan) add(k, l, r int) (int, int) {
	high := r < 0 || s.above(s.left[l], s.right[r], k)
	n := len(s.right)
	for n >= 2 && !s.over(s.right[n-2], s.right[n-1], k) {
		n--
	}
	s.right = append(s.right[:n], k)
	if !high {
		return l, min(r, n)
	}
	l = s.lean(l, k)
	s.bridges = append(s.bridges, bridge{s.left[l], k, s.head[s.left[l]]})
	s.head[s.left[l]], s.tail[k] = len(s.bridges), len(s.bridges)
	return l, n
}

// lean moves the bridge's left end until all of the left hull lies below the straight line from it to a reading on the right.
func (s *scan) lean(l, to int) int {
	for l > 0 && s.before(s.left[l], to, s.left[l-1]) {
		l--
	}
	for l+1 < len(s.left) && s.before(s.left[l], to, s.left[l+1]) {
		l++
	}
	return l
}

// drop takes the window's first reading off the left hull, which bares those that it hid.
func (s *scan) drop(i int) {
	n := len(s.left) - 1
	stop := s.left[n-1]
	s.left = s.left[:n]
	for k := i + 1; k != stop; k = s.next[k] {
		s.left = append(s.left, k)
	}
	turn(s.left[n:])
}

// over reports whether b stands above the straight line from a to c, which lie either side of it.
func (s *scan) over(a, b, c int) bool {
	return (s.z[b]-s.z[a])*(s.x[c]-s.x[a]) > (s.z[c]-s.z[a])*(s.x[b]-s.x[a])
}

// above reports whether k, right of a, stands above the straight line through a and b.
func (s *scan) above(a, b, k int) bool {
	return (s.z[k]-s.z[a])*(s.x[b]-s.x[a]) > (s.z[b]-s.z[a])*(s.x[k]-s.x[a])
}

// before reports whether k, left of b, stands above the straight line through a and b.
func (s *scan) before(a, b, k int) bool {
	return (s.z[b]-s.z[k])*(s.x[b]-s.x[a]) < (s.z[b]-s.z[a])*(s.x[b]-s.x[k])
}

// under looks at every reading between two supports.
func (s *scan) under(l, r int) {
	for k := l + 1; k < r; k++ {
		s.try(l, r, k)
	}
}

// try takes a reading under two supports where its gap is the worst so far.
func (s *scan) try(l, r, k int) {
	if gap := s.z[l] + (s.z[r]-s.z[l])*(s.x[k]-s.x[l])/(s.x[r]-s.x[l]) - s.z[k]; gap > s.best {
		s.best, s.from, s.to, s.at = gap, l, r, k
	}
}

// sound finds the deepest reading under each bridge: on its left of b and on its right, each in a lower hull that is built
// outward from b.
func (s *scan) sound(a, b, e int) {
	s.lower = s.lower[:0]
	for k := b; k >= a; k-- {
		s.sink(k)
		for q := s.head[k]; q != 0; q = s.bridges[q-1].next {
			s.deepest(s.bridges[q-1])
		}
		s.head[k] = 0
	}
	s.lower = s.lower[:0]
	for k := b + 1; k <= e; k++ {
		s.sink(k)
		if q := s.tail[k]; q != 0 {
			s.deepest(s.bridges[q-1])
			s.tail[k] = 0
		}
	}
}

// sink puts a reading on the lower hull, on either side of all that are there.
func (s *scan) sink(k int) {
	n := len(s.lower)
	for n >= 2 && s.hides(k, s.lower[n-1], s.lower[n-2]) {
		n--
	}
	s.lower = append(s.lower[:n], k)
}

// hides reports whether b, between a and c, is not below the straight line through them.
func (s *scan) hides(a, b, c int) bool {
	return !((s.z[b]-s.z[a])*math.Abs(s.x[c]-s.x[a]) < (s.z[c]-s.z[a])*math.Abs(s.x[b]-s.x[a]))
}

// deepest searches the lower hull for the reading farthest below a bridge.
func (s *scan) deepest(q bridge) {
	rise, run := s.z[q.to]-s.z[q.from], s.x[q.to]-s.x[q.from]
	depth := func(t int) float64 { return (s.x[s.lower[t]]-s.x[q.from])*rise - (s.z[s.lower[t]]-s.z[q.from])*run }
	low, high := 0, len(s.lower)-1
	for low < high {
		mid := (low + high) / 2
		if depth(mid) < depth(mid+1) {
			low = mid + 1
		} else {
			high = mid
		}
	}
	s.try(q.from, q.to, s.lower[low])
}

func turn(s []int) {
	for i, j := 0, len(s)-1; i < j; i, j = i+1, j-1 {
		s[i], s[j] = s[j], s[i]
	}
}
