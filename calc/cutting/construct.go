package cutting

// construct places every piece, the largest first by some measure.
func (f *search) construct(measure int, across bool) []layout {
	order := make([]int, len(f.pieces))
	for i := range order {
		order[i] = i
	}
	f.ordered(order, measure, 0)
	var sheets []*layout
	for _, piece := range order {
		if !f.settle(sheets, piece) {
			s := &layout{across: across}
			sheets = append(sheets, s)
			f.settle(sheets[len(sheets)-1:], piece)
		}
	}
	made := make([]layout, len(sheets))
	for i, s := range sheets {
		made[i] = *s
	}
	return made
}
