package cutting

import "slices"

// emit writes the layouts into a plan, the fullest sheet first.
func (p *problem) emit(plan *Plan, sheets []layout) {
	slices.SortStableFunc(sheets, func(a, b layout) int { return b.area - a.area })
	for i := range sheets {
		e := emitter{problem: p, across: sheets[i].across, w: p.w - p.kerf, l: p.l - p.kerf}
		if e.across {
			e.w, e.l = e.l, e.w
		}
		e.sheet(&sheets[i])
		plan.Sheets, plan.Cuts = append(plan.Sheets, e.placed), append(plan.Cuts, e.cuts)
	}
}

// emitter writes one sheet, w by l as its layout counts. Parts lie from low to high, both without the kerf.
type emitter struct {
	*problem
	across bool
	w, l   int
	at     [3]int // the part on the saw
	placed []Placed
	cuts   []Cut
}

// part cuts a part into lanes of these lengths (a kerf in each) and gives where each begins. The first lies at the low
// end and the last at the high end, so that both keep the sheet's own edge and what is left over lies between; one alone
// lies at the high end where hang says so.
func (e *emitter) part(stage int, upright bool, low, high, from, to int, lengths []int, hang bool) []int {
	at, next := make([]int, len(lengths)), low
	last := len(lengths) - 1
	for i, l := range lengths {
		at[i] = next
		if i == last && (i > 0 || hang) {
			at[i] = high + e.kerf - l
			if at[i] > next {
				e.cut(stage, upright, true, at[i], from, to, l)
			}
		} else if end := at[i] + l - e.kerf; end < high {
			e.cut(stage, upright, false, end, from, to, l)
		}
		next = at[i] + l
	}
	return at
}

func (e *emitter) cut(stage int, upright, beyond bool, at, from, to, wide int) {
	e.cuts = append(e.cuts, Cut{Part: e.at, Stage: stage, Upright: upright != e.across, At: length(at), Beyond: beyond,
		From: length(from), To: length(to), Wide: length(wide - e.kerf)})
}

// outward sorts parts, the largest first, and then has the second largest last: the first and the last keep the sheet's
// own edges, and like sheets come out alike.
func outward[T int | item](parts []T, larger func(a, b T) int) {
	slices.SortStableFunc(parts, larger)
	if n := len(parts); n > 2 {
		second := parts[1]
		copy(parts[1:], parts[2:])
		parts[n-1] = second
	}
}

func (e *emitter) sheet(s *layout) {
	stacks := make([][]int, len(s.strips)) // of each strip
	for j, c := range s.stacks {
		stacks[c.strip] = append(stacks[c.strip], j)
	}
	on := make([][]item, len(s.stacks)) // the pieces of each stack
	for _, it := range s.items {
		on[it.stack] = append(on[it.stack], it)
	}
	strips := make([]int, len(s.strips))
	for i := range strips {
		strips[i] = i
	}
	outward(strips, func(a, b int) int {
		if s.strips[a].l != s.strips[b].l {
			return s.strips[b].l - s.strips[a].l
		}
		return s.strips[b].w - s.strips[a].w
	})
	lengths := make([]int, len(strips))
	for i, t := range strips {
		lengths[i] = s.strips[t].l
	}
	for i, y := range e.part(1, false, 0, e.l, 0, e.w, lengths, false) {
		e.at = [3]int{i + 1}
		in, top := stacks[strips[i]], y+lengths[i]-e.kerf
		outward(in, func(a, b int) int {
			if s.stacks[a].w != s.stacks[b].w {
				return s.stacks[b].w - s.stacks[a].w
			}
			return s.stacks[b].l - s.stacks[a].l
		})
		widths := make([]int, len(in))
		for j, c := range in {
			widths[j] = s.stacks[c].w
		}
		for j, x := range e.part(2, true, 0, e.w, y, top, widths, false) {
			e.at = [3]int{i + 1, j + 1}
			e.stack(on[in[j]], x, y, x+widths[j]-e.kerf, top)
		}
	}
}

// stack cuts pieces off a stack as wide as the widest.
func (e *emitter) stack(items []item, left, bottom, right, top int) {
	outward(items, func(a, b item) int {
		aw, al := e.lying(a.piece, a.turned, e.across)
		bw, bl := e.lying(b.piece, b.turned, e.across)
		if al != bl {
			return bl - al
		}
		return bw - aw
	})
	lengths := make([]int, len(items))
	for i, it := range items {
		_, lengths[i] = e.lying(it.piece, it.turned, e.across)
	}
	hang := top == e.l && bottom > 0
	for i, y := range e.part(3, false, bottom, top, left, right, lengths, hang) {
		e.at[2] = i + 1
		w, _ := e.lying(items[i].piece, items[i].turned, e.across)
		end := y + lengths[i] - e.kerf
		x := e.part(4, true, left, right, y, end, []int{w}, right == e.w && left > 0)[0]
		e.place(items[i], x, y, x+w-e.kerf, end)
	}
}

func (e *emitter) place(it item, left, bottom, right, top int) {
	q := Placed{Piece: it.piece, Turned: it.turned, X: length(left), Y: length(bottom)}
	sides := [4]struct {
		own  bool
		edge Edges
	}{{left == 0, Left}, {bottom == 0, Bottom}, {right == e.w, Right}, {top == e.l, Top}}
	if e.across {
		q.X, q.Y = q.Y, q.X
		sides[0].edge, sides[1].edge, sides[2].edge, sides[3].edge = Bottom, Left, Top, Right
	}
	for _, side := range sides {
		if side.own {
			q.Factory |= side.edge
		}
	}
	e.placed = append(e.placed, q)
}
