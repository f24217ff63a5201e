package cutting

import "setbook/calc/unit"

// problem is the nesting in whole micrometres with the kerf folded in: where the sheet and every piece is made larger by
// one kerf both ways, pieces that touch have a kerf between them and those at an edge lose nothing.
type problem struct {
	w, l    int // the sheet
	kerf    int
	pieces  []rect
	misfits []int
}

// rect is a piece and the ways it may lie.
type rect struct {
	w, l    int
	flat    bool // it may lie as given
	quarter bool // it may lie turned a quarter
}

func pose(sheet Size, kerf unit.Length, pieces []Piece) *problem {
	k := max(upward(kerf), 0)
	p := &problem{w: downward(sheet.W) + k, l: downward(sheet.L) + k, kerf: k, pieces: make([]rect, len(pieces))}
	for i, piece := range pieces {
		r := rect{w: upward(piece.W) + k, l: upward(piece.L) + k}
		r.flat = r.w <= p.w && r.l <= p.l
		r.quarter = piece.Turn && r.w != r.l && r.l <= p.w && r.w <= p.l
		if !r.flat && !r.quarter || r.w <= k || r.l <= k {
			p.misfits = append(p.misfits, i)
		}
		p.pieces[i] = r
	}
	return p
}

// lying is a piece's size as it lies.
func (p *problem) lying(it item) (w, l int) {
	r := p.pieces[it.piece]
	if it.turned {
		return r.l, r.w
	}
	return r.w, r.l
}

// item is a piece as it lies.
type item struct {
	piece  int
	turned bool
}

// stack is pieces one above the other: as wide as the widest.
type stack struct {
	w, l  int
	items []item
}

// strip is stacks side by side: as long as the longest.
type strip struct {
	w, l   int
	stacks []stack
}

// layout is the strips of one sheet, one above the other.
type layout struct {
	l      int
	strips []strip
}
