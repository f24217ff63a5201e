package cutting

// rough sets the pieces one after another, the largest first, by each of the measures of large, and keeps the plan of the
// fewest sheets.
func (f *search) rough() []layout {
	var best []layout
	for measure := range measures {
		for _, across := range [2]bool{false, true} {
			if across && !f.sided {
				continue
			}
			if s := f.construct(measure, across); best == nil || len(s) < len(best) {
				best = s
			}
		}
	}
	return best
}

// construct sets every piece into the best place of all sheets, or on a new sheet.
func (f *search) construct(measure int, across bool) []layout {
	order := make([]int, len(f.pieces))
	for i := range order {
		order[i] = i
	}
	f.ordered(order, measure, 0)
	var sheets []*layout
	full := 0 // a piece equal to the last one fits none of the sheets before this one
	for i, piece := range order {
		if i == 0 || f.pieces[piece] != f.pieces[order[i-1]] {
			full = 0
		}
		if !f.settle(sheets[full:], piece) {
			full = len(sheets)
			sheets = append(sheets, &layout{across: across})
			f.settle(sheets[full:], piece)
		}
	}
	made := make([]layout, len(sheets))
	for i, s := range sheets {
		made[i] = *s
	}
	return made
}
