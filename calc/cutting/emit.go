package cutting

import "setbook/calc/unit"

// emit writes the layouts as a plan.
func (p *problem) emit(sheets []layout) Plan {
	plan := Plan{Bound: p.area()}
	for _, s := range sheets {
		e := emitter{p: p}
		e.sheet(s)
		plan.Sheets, plan.Cuts = append(plan.Sheets, e.placed), append(plan.Cuts, e.cuts)
	}
	return plan
}

// area is the least number of sheets that hold the area of the pieces.
func (p *problem) area() int {
	total := 0
	for _, r := range p.pieces {
		total += r.w * r.l
	}
	sheet := p.w * p.l
	return (total + sheet - 1) / sheet
}

// emitter writes one sheet. Parts lie from low to high, both in real micrometres.
type emitter struct {
	p      *problem
	placed []Placed
	cuts   []Cut
}

// lanes is where things of these lengths (a kerf in each) lie in a part: the first at its low end, the last at its high
// end so that both keep the sheet's own edge, and what is left over lies between the last two.
func (e *emitter) lanes(low, high int, lengths []int) []int {
	at, total := make([]int, len(lengths)), 0
	for i, l := range lengths {
		at[i] = low + total
		total += l
	}
	if n := len(lengths); n > 1 {
		at[n-1] = high + e.p.kerf - lengths[n-1]
	}
	return at
}

// part cuts a part into lanes.
func (e *emitter) part(stage int, upright bool, low, high, from, to int, lengths []int, hang bool) []int {
	k := e.p.kerf
	at := e.lanes(low, high, lengths)
	n := len(lengths)
	if n == 1 && hang {
		at[0] = high + k - lengths[0]
	}
	cut := func(x int, beyond bool) {
		e.cuts = append(e.cuts, Cut{Stage: stage, Upright: upright, At: unit.Length(x), Beyond: beyond, From: unit.Length(from), To: unit.Length(to)})
	}
	for i, x := range at[:n-1] {
		cut(x+lengths[i]-k, false)
	}
	switch last := at[n-1]; {
	case n == 1 && hang:
		if last > low {
			cut(last, true)
		}
	case n == 1:
		if last+lengths[0]-k < high {
			cut(last+lengths[0]-k, false)
		}
	case last > at[n-2]+lengths[n-2]:
		cut(last, true)
	}
	return at
}

func (e *emitter) sheet(s layout) {
	w, l, k := e.p.w-e.p.kerf, e.p.l-e.p.kerf, e.p.kerf
	lengths := make([]int, len(s.strips))
	for i, t := range s.strips {
		lengths[i] = t.l
	}
	for i, y := range e.part(1, false, 0, l, 0, w, lengths, false) {
		t := s.strips[i]
		top := y + t.l - k
		hang := i > 0 && top == l
		widths := make([]int, len(t.stacks))
		for j, c := range t.stacks {
			widths[j] = c.w
		}
		for j, x := range e.part(2, true, 0, w, y, top, widths, false) {
			e.stack(t.stacks[j], x, y, x+t.stacks[j].w-k, top, hang)
		}
	}
}

// stack cuts a stack that fills its part in width. Hang has its pieces at the top of the part.
func (e *emitter) stack(c stack, left, bottom, right, top int, hang bool) {
	p, k := e.p, e.p.kerf
	items := c.items
	lengths := make([]int, len(items))
	for i, it := range items {
		_, lengths[i] = p.lying(it)
	}
	for i, y := range e.part(3, false, bottom, top, left, right, lengths, hang) {
		w, l := p.lying(items[i])
		x := left
		if right == p.w-k && left > 0 {
			x = right + k - w
			if x > left {
				e.cuts = append(e.cuts, Cut{4, true, unit.Length(x), true, unit.Length(y), unit.Length(y + l - k)})
			}
		} else if x+w-k < right {
			e.cuts = append(e.cuts, Cut{4, true, unit.Length(x + w - k), false, unit.Length(y), unit.Length(y + l - k)})
		}
		e.placed = append(e.placed, Placed{Piece: items[i].piece, X: unit.Length(x), Y: unit.Length(y), Turned: items[i].turned,
			Factory: p.factory(x, y, x+w-k, y+l-k)})
	}
}

// factory is which sides of a rectangle lie on the sheet's own edges.
func (p *problem) factory(left, bottom, right, top int) (e Edges) {
	if left == 0 {
		e |= Left
	}
	if bottom == 0 {
		e |= Bottom
	}
	if right == p.w-p.kerf {
		e |= Right
	}
	if top == p.l-p.kerf {
		e |= Top
	}
	return e
}
