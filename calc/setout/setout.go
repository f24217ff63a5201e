// Package setout answers where every paver goes: the layout over an outline, its cuts and how they are sawn, the soft
// joints, the chalk lines, and the order in which the rows are set.
package setout

import (
	"setbook/calc"
	"setbook/calc/cutting"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "setout", Stage: calc.SettingOut, Title: "Where every paver goes",
	Asks: "Where does every paver go, which are cut, and where do the soft joints run?",
	Inputs: []*calc.Input{outline.Input, holes.Input, edges.Input, paverL.Input, paverW.Input, joint.Input, pattern.Input, offset.Input, turn.Input,
		most.Input, soft.Input, perimeter.Input, structural.Input, start.Input, startX.Input, startY.Input, kerf.Input, spares.Input, mix.Input},
	Origin: "The room along a row is so many whole pavers, the joints between them and two equal cuts, which is the half-tile rule with the joints counted. " +
		"Every other figure is counted or measured on the plan, and the areas of pavers and joints add up to the area of the outline.",
	Work:  work,
	Tools: tools(),
	Drag:  drag,
	Long:  true,
	Memory: []words.Msg{
		"Measure the slab before the pavers come: every edge, and both diagonals. No slab is as square as its drawing.",
		"Snap the two lines to start from, prove them square, and lay one row of pavers dry each way with the spacers in.",
		"Measure ten pavers of the delivery, both ways: set out by the size that came.",
		"Keep whole pavers at the door and along the edge that is seen most; put the cuts where pots and benches stand.",
		"Cut at the edge and not in the field. A notch in a paver cracks from its inner corner: drill that corner first.",
		"Mark each cut paver on its back with its mark, and stack the cuts row by row in the order of setting.",
	},
}

// plan is what the work has found.
type plan struct {
	asked
	ground    *paving.Ground
	laid      paving.Layout
	rings     [][]paving.Point // of the outline and its holes, in the pattern's axes
	box       paving.Rect      // about the outline, in the pattern's axes
	clockwise bool
	way       way
	steps     []set
	best      []layout
	inOrder   bool // the best few stand in the search's own order
	stopped   bool // the search was ended early
	sawn      cutting.Plan
	sawnCut   []int // which cut each nested piece is
	counts
}

// counts are the figures of the answers.
type counts struct {
	whole, cut, fields unit.Count
	sheets             unit.Count // pavers that the cut pieces are sawn out of
	least              unit.Count // the fewest that they can be, proven
	narrowest          unit.Length
	narrowAt           string
	likely, cautious   unit.Count
	waste              unit.Ratio
	covered            unit.Area // faces of all pavers laid
	areaBound          unit.Count
	run, softRun, edge unit.Length
}

func work(e calc.Entry, s *calc.Sheet) {
	p := laid(e, s, s.Going)
	if p == nil {
		return
	}
	p.saw(e, s.Going)
	p.count(e)
	answers(s, p)
	p.working(s, e)
	p.tables(s)
	p.cautions(s, e)
	p.draw(s)
}

// laid reads an entry and lays it: where it is given, or at the best start that the search finds. What cannot be laid is
// refused on the sheet, and nothing is given.
func laid(e calc.Entry, s *calc.Sheet, going func(done, of int) bool) *plan {
	a, named := read(e)
	if refused(s, e, &a, named) {
		return nil
	}
	if float64(a.outline.Area())/float64((a.paver.L+a.paver.Joint).Times(a.paver.W+a.paver.Joint)) > mostPavers {
		tooMany(s)
		return nil
	}
	ground, found := paving.Prepare(&a.outline, a.paver, a.pattern, a.joints)
	if len(found) > 0 {
		faults(s, found)
		return nil
	}
	p := &plan{asked: a, ground: ground}
	var grid paving.Grid
	if start.Of(e) == "fixed" {
		grid = ground.Start(ground.Along(paving.Point{X: float64(startX.Of(e)), Y: float64(startY.Of(e))}))
	} else {
		p.choose(ground.Search(func(done, of int) bool {
			p.stopped = p.stopped || !going(done, of)
			return !p.stopped
		}), kerf.Of(e))
		grid = p.best[0].Grid
	}
	p.laid = ground.Lay(grid)
	p.frame()
	p.way = p.towards()
	p.steps = p.order()
	return p
}

// shown is how many layouts of the search are offered.
const shown = 4

// frame turns the outline to the pattern's axes.
func (p *plan) frame() {
	twice := 0.0
	for i, c := range p.corners {
		d := p.corners[(i+1)%len(p.corners)]
		twice += c[0]*d[1] - d[0]*c[1]
	}
	p.clockwise = twice < 0
	for _, ring := range append([][]paving.Point{p.outline.Corners}, p.outline.Holes...) {
		turned := make([]paving.Point, len(ring))
		for i, q := range ring {
			turned[i] = p.ground.Along(q)
		}
		p.rings = append(p.rings, turned)
	}
	p.box = paving.Rect{X0: p.rings[0][0].X, X1: p.rings[0][0].X, Y0: p.rings[0][0].Y, Y1: p.rings[0][0].Y}
	for _, q := range p.rings[0] {
		p.box = paving.Rect{X0: min(p.box.X0, q.X), X1: max(p.box.X1, q.X), Y0: min(p.box.Y0, q.Y), Y1: max(p.box.Y1, q.Y)}
	}
}

// saw nests the cut pieces into pavers, each by the rectangle about it.
func (p *plan) saw(e calc.Entry, going func(done, of int) bool) {
	for i, c := range p.laid.Cuts {
		for range c.Count {
			p.sawnCut = append(p.sawnCut, i)
		}
	}
	if pieces := p.pieces(&p.laid); len(pieces) > 0 {
		// A piece is at most as large as its paver, so that none is left over.
		p.sawn, _ = cutting.Nest(p.paverSize(), kerf.Of(e), pieces, going)
	}
}

func (p *plan) paverSize() cutting.Size { return cutting.Size{W: p.paver.L, L: p.paver.W} }

// pieces are the rectangles about the cut pieces of a layout, kind by kind.
func (p *plan) pieces(laid *paving.Layout) (pieces []cutting.Piece) {
	for _, c := range laid.Cuts {
		size := cutting.Size{W: min(unit.Length(c.L), p.paver.L), L: min(unit.Length(c.W), p.paver.W)}
		for range c.Count {
			pieces = append(pieces, cutting.Piece{Size: size, Turn: true})
		}
	}
	return pieces
}

// drag moves the pavers by a vector: from where they lie now, found or given.
func drag(now calc.Entry, by calc.Point) calc.Texts {
	s := &calc.Sheet{}
	p := laid(now, s, func(int, int) bool { return true })
	if p == nil {
		return nil
	}
	at := p.at(paving.Point{X: p.laid.Grid.X.First, Y: p.laid.Grid.Y.First})
	return from(at.X+by.X, at.Y+by.Y)
}

// from is the texts of a given start.
func from(x, y unit.Length) calc.Texts {
	return calc.Texts{"start": "fixed", "start_x": startX.Written(float64(x), metric), "start_y": startY.Written(float64(y), metric)}
}
