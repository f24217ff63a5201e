package setout

import (
	"cmp"
	"math"
	"slices"

	"setbook/calc/cutting"
	"setbook/calc/paving"
	"setbook/calc/unit"
)

// flushMost is how many starts flush with an edge are looked at, beside those of the search.
const flushMost = 8

// straight is how far an edge may run off the pattern's axes, end to end, and still be laid along.
const straight = float64(unit.Millimetre)

// layout is one of the best few: a grid with what it was judged by.
type layout struct {
	paving.Candidate
	slim   int        // pieces under half a paver
	price  float64    // see weighed
	pavers unit.Count // whole ones, and those that the cut pieces come out of, set one after another
}

// weighed is what a piece that is so much of a paver counts for, where pieces under half a paver cannot be helped: a cut
// piece one, one under half three, and up to eleven the narrower it is. Our own weighing of what source.BalancedCuts
// wants: few cuts, none under half, and else as wide as can be had.
func weighed(share float64) float64 {
	if share >= half {
		return 1
	}
	return 3 + 8*(1-2*share)
}

// half is half a paver, but for a trace of rounding.
const half = 0.5 - 1e-9

// upright reports whether every edge runs along the pattern's axes, so that opposite cuts and the narrowest tell all there is
// to tell of a layout. On a wedge or a curve some sliver is always narrowest, wherever the layout starts.
func (p *plan) upright() bool {
	for _, ring := range p.ground.Paved() {
		a := ring[len(ring)-1]
		for _, b := range ring {
			if math.Abs(b.X-a.X) > straight && math.Abs(b.Y-a.Y) > straight {
				return false
			}
			a = b
		}
	}
	return true
}

// choose gives the best few starts. Those with no piece under half a paver come first, in the search's own order: equal cuts at opposite
// edges, then the fewest pavers. Where some must be under half and every edge runs along the pattern, that order goes on: equal cuts, the
// widest narrowest cut, the fewest pavers. Elsewhere starts flush with an edge are looked at too, so that a wedge or a curve gets no
// course of slivers along its one straight side, and the least price comes first.
func (p *plan) choose(found []paving.Candidate, kerf unit.Length) {
	best := found[0].Grid
	p.inOrder = p.upright()
	at := func(x, y float64) {
		grid := p.ground.Start(paving.Point{X: x, Y: y})
		for _, c := range found {
			if math.Abs(c.Grid.X.First-grid.X.First) < 1 && math.Abs(c.Grid.Y.First-grid.Y.First) < 1 {
				return
			}
		}
		found = append(found, paving.Candidate{Grid: grid})
	}
	offered := len(found)
	for _, ring := range p.ground.Paved() {
		a := ring[len(ring)-1]
		for _, b := range ring {
			if p.inOrder {
				break
			}
			dx, dy := b.X-a.X, b.Y-a.Y
			switch { // the paving lies on the left of its rings
			case len(found) == offered+flushMost:
			case math.Abs(dy) < straight && math.Abs(dx) > float64(p.paver.L):
				at(best.X.First, flush(b.Y, dx > 0, p.paver.W))
			case math.Abs(dx) < straight && math.Abs(dy) > float64(p.paver.W):
				at(flush(b.X, dy < 0, p.paver.L), best.Y.First)
			}
			a = b
		}
	}
	for i, c := range found {
		l := layout{Candidate: c}
		laid := p.ground.Lay(c.Grid)
		for j := range laid.Cuts {
			share, _ := p.share(&laid.Cuts[j])
			if share < half {
				l.slim += laid.Cuts[j].Count
			}
			l.price += weighed(share) * float64(laid.Cuts[j].Count)
		}
		switch {
		case l.slim == 0:
			l.price = 0 // none under half: all such are as good, but for the search's own order
		case p.inOrder:
			l.price = 1
		}
		if i >= offered {
			l.Why = paving.Why{Narrowest: p.thinnest(&laid), Cuts: len(laid.Pieces) - laid.Full, Full: laid.Full,
				Spans: len(laid.LinesX) + len(laid.LinesY)}
		}
		p.best = append(p.best, l)
	}
	slices.SortStableFunc(p.best, func(a, b layout) int { return cmp.Compare(a.price, b.price) })
	p.best = p.best[:min(shown, len(p.best))]
	for i := range p.best {
		laid := p.ground.Lay(p.best[i].Grid)
		plan, _ := cutting.Rough(p.paverSize(), kerf, p.pieces(&laid))
		p.best[i].pavers = unit.Count(laid.Full + len(plan.Sheets))
	}
}

// flush is where a paver begins that lies against an edge, below or above which the paving is.
func flush(edge float64, low bool, paver unit.Length) float64 {
	if low {
		return edge
	}
	return edge - float64(paver)
}

// thinnest is the narrowest cut of a layout as a share of the paver; 1 where nothing is cut.
func (p *plan) thinnest(laid *paving.Layout) float64 {
	least := 1.0
	for i := range laid.Cuts {
		share, _ := p.share(&laid.Cuts[i])
		least = min(least, share)
	}
	return least
}
