package cutting

import "setbook/calc/unit"

// problem is the nesting in whole steps with the kerf folded in: where the sheet and every piece is made larger by
// one kerf both ways, pieces that touch have a kerf between them and those at an edge lose nothing.
type problem struct {
	w, l    int // the sheet
	kerf    int
	pieces  []rect
	misfits []int
	scale   float64 // one over the sheet's area
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
	p.scale = 1 / float64(p.w*p.l)
	return p
}

// lying is a piece's size as it lies, as a layout counts.
func (p *problem) lying(piece int, turned, across bool) (w, l int) {
	r := &p.pieces[piece]
	if turned != across {
		return r.l, r.w
	}
	return r.w, r.l
}
