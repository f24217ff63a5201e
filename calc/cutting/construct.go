package cutting

import "slices"

// construct places the pieces one after another, the longest first, each where it first fits.
func (p *problem) construct() []layout {
	order := make([]item, len(p.pieces))
	for i, r := range p.pieces {
		order[i] = item{i, !r.flat || r.quarter && r.w < r.l}
		if r.quarter && r.flat && r.w < r.l {
			order[i].turned = false
		}
	}
	slices.SortStableFunc(order, func(a, b item) int {
		aw, al := p.lying(a)
		bw, bl := p.lying(b)
		if al != bl {
			return bl - al
		}
		return bw - aw
	})
	var sheets []layout
	for _, it := range order {
		placed := false
		for i := range sheets {
			if placed = p.put(&sheets[i], it); placed {
				break
			}
		}
		if !placed {
			sheets = append(sheets, layout{})
			p.put(&sheets[len(sheets)-1], it)
		}
	}
	return sheets
}

// put places a piece into a sheet, if it fits beside those that are there.
func (p *problem) put(s *layout, it item) bool {
	w, l := p.lying(it)
	for i := range s.strips {
		t := &s.strips[i]
		for j := range t.stacks {
			if k := &t.stacks[j]; w <= k.w && k.l+l <= t.l {
				k.items, k.l = append(k.items, it), k.l+l
				return true
			}
		}
		if t.w+w <= p.w && l <= t.l {
			t.stacks, t.w = append(t.stacks, stack{w, l, []item{it}}), t.w+w
			return true
		}
	}
	if s.l+l > p.l {
		return false
	}
	s.strips, s.l = append(s.strips, strip{w, l, []stack{{w, l, []item{it}}}}), s.l+l
	return true
}
