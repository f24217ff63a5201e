package cutting

// item is a piece in a sheet: which, how it lies and in which stack.
type item struct {
	piece  int
	turned bool
	stack  int
}

// stack is pieces one above the other: as wide as the widest.
type stack struct{ w, l, strip int }

// strip is stacks side by side: as long as the longest.
type strip struct{ w, l int }

// layout is one sheet: strips one above the other, from the sheet's lower edge. Where across is true all of that lies
// along the other axis: the first cuts run upright.
type layout struct {
	across bool
	l      int // of the strips together
	area   int // of the pieces
	strips []strip
	stacks []stack
	items  []item
}

func (s *layout) copyFrom(o *layout) {
	s.across, s.l, s.area = o.across, o.l, o.area
	s.strips = append(s.strips[:0], o.strips...)
	s.stacks = append(s.stacks[:0], o.stacks...)
	s.items = append(s.items[:0], o.items...)
}

func (s *layout) clear(across bool) {
	s.across, s.l, s.area = across, 0, 0
	s.strips, s.stacks, s.items = s.strips[:0], s.stacks[:0], s.items[:0]
}

// place is where a piece can go: into a stack, else beside the stacks of a strip, else (both below nought) as a new strip.
type place struct{ strip, stack int }

// put adds a piece that lies w by l as the layout counts.
func (s *layout) put(at place, piece int, turned bool, w, l int) {
	s.area += w * l
	if at.strip < 0 {
		at.strip = len(s.strips)
		s.strips = append(s.strips, strip{})
	}
	t := &s.strips[at.strip]
	if at.stack < 0 {
		at.stack = len(s.stacks)
		s.stacks = append(s.stacks, stack{strip: at.strip})
	}
	c := &s.stacks[at.stack]
	c.l += l
	if w > c.w {
		t.w += w - c.w
		c.w = w
	}
	if c.l > t.l {
		s.l += c.l - t.l
		t.l = c.l
	}
	s.items = append(s.items, item{piece, turned, at.stack})
}
