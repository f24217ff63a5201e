package setout

import (
	"math"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// share is how narrow a cut is, against the paver's own side the same way, and how wide it is there.
func (p *plan) share(c *paving.Cut) (share float64, width unit.Length) {
	l, w := c.L/float64(p.paver.L), c.W/float64(p.paver.W)
	if l < w {
		return l, unit.Length(c.L)
	}
	return w, unit.Length(c.W)
}

// breaks is how many of the cut pieces break under the saw: common practice, and only in the cautious figure.
const breaks = 0.05

// count takes the figures of the answers from the layout.
func (p *plan) count(e calc.Entry) {
	k := &p.counts
	k.whole, k.cut = unit.Count(p.laid.Full), unit.Count(len(p.laid.Pieces)-p.laid.Full)
	for _, f := range p.laid.Fields {
		k.fields += unit.Count(f.Parts)
	}
	k.narrowest = min(p.paver.L, p.paver.W)
	least := math.Inf(1)
	for i := range p.laid.Cuts {
		if share, width := p.share(&p.laid.Cuts[i]); share < least {
			least, k.narrowest, k.narrowAt = share, width, p.laid.Cuts[i].Mark
		}
	}
	k.sheets, k.least = unit.Count(len(p.sawn.Sheets)), unit.Count(p.sawn.Bound)
	one := p.paver.L.Times(p.paver.W)
	k.covered = unit.Area(p.laid.Areas.Pavers)
	k.areaBound = unit.Whole(float64(k.covered / one))
	k.waste = 1 - unit.Ratio(float64(k.covered)/(float64(k.whole+k.sheets)*float64(one)))
	more := 1 + float64(spares.Of(e))
	k.likely, k.cautious = unit.Whole(float64(k.whole+k.sheets)*more), unit.Whole((float64(k.whole)+float64(k.cut)*(1+breaks))*more)
	k.run, k.softRun, k.edge = p.laid.GroutRun, p.laid.MovementRun+p.laid.StructureRun, p.laid.PerimeterRun
}

func answers(s *calc.Sheet, p *plan) {
	k := &p.counts
	calc.Gives(s, "pavers", "Pavers to buy", k.likely, unit.Whole1).
		Between(float64(k.whole+k.sheets), float64(k.cautious), words.Say("with no spares; with spares, no offcut used again and one cut in twenty broken")).Buy().First().
		Of(&calc.Supply{Of: calc.BuyPavers, In: "pieces", Pack: unit.Fig(p.paver.L.Times(p.paver.W), unit.FootArea), // an order adds its own spares
			Likely: float64(k.whole + k.sheets), Low: float64(k.whole + k.sheets), High: float64(k.whole) + float64(k.cut)*(1+breaks)})
	calc.Gives(s, "full", "Whole pavers", k.whole, unit.Whole1).First()
	calc.Gives(s, "cut", "Cut pieces", k.cut, unit.Whole1).First()
	calc.Gives(s, "narrowest", "Narrowest cut", k.narrowest, size)
	calc.Gives(s, "fields", "Fields between soft joints", k.fields, unit.Whole1)
	calc.Gives(s, "grout_run", "Grout joint", k.run, unit.FootMetre)
	calc.Gives(s, "soft_run", "Movement joint", k.softRun, unit.FootMetre)
	calc.Gives(s, "perimeter_run", "Joint at walls and holes", k.edge, unit.FootMetre)
	calc.Gives(s, "waste", "Waste", k.waste, unit.Share)
}

func (p *plan) working(s *calc.Sheet, e calc.Entry) {
	k := &p.counts
	calc.Let(s, "l", p.paver.L, fine)
	calc.Let(s, "b", p.paver.W, fine)
	calc.Let(s, "j", p.paver.Joint, fine)
	calc.Let(s, "w", p.joints.Movement, fine)
	calc.Works(s, "Module along the rows: one paver and one joint.", "M_l", p.paver.L+p.paver.Joint, fine, "l + j", source.ModuleGeometry)
	calc.Works(s, "Module across the rows.", "M_b", p.paver.W+p.paver.Joint, fine, "b + j", source.ModuleGeometry)
	p.across(s)
	p.areas(s)
	p.spans(s)

	calc.Let(s, "n_all", unit.Count(len(p.laid.Pieces)), unit.Whole1)
	p.cuts(s)
	calc.Works(s, "Whole pavers: every place on the plan that is not cut.", "n_f", k.whole, unit.Whole1, "n_all - n_c", source.ByDefinition)
	p.narrow(s)

	calc.Let(s, "n_nest", k.sheets, unit.Whole1)
	calc.Works(s, "Pavers that the cut pieces are sawn out of, with the saw cut between them: counted on the drawing of the cuts.",
		"n_s", k.sheets, unit.Whole1, "n_nest", source.CommonPractice)
	calc.Works(s, "Pavers laid or cut up.", "n", k.whole+k.sheets, unit.Whole1, "n_f + n_s", source.ByDefinition)
	calc.Works(s, "Pavers to buy, with spares.", "N", k.likely, unit.Whole1, "ceil(n * (1 + s / 100))", source.CommonPractice)
	calc.Works(s, "Pavers to buy where every cut piece takes a paver of its own and one in twenty breaks.", "N_c", k.cautious, unit.Whole1,
		"ceil((n_f + n_c * 1.05) * (1 + s / 100))", source.CommonPractice)

	calc.WorksUS(s, "Fewest pavers that hold the area, whatever the cuts: the area bound.", "n_A", k.areaBound, unit.Whole1,
		"ceil(A_p * 1000000 / (l * b))", "ceil(A_p * 144 / (l * b))", source.ByDefinition)
	calc.Let(s, "n_b", k.least, unit.Whole1)
	calc.Works(s, "Fewest that the whole ones and any way of cutting the rest come to: no plan does with fewer for the cut pieces than n_b.",
		"n_B", k.whole+k.least, unit.Whole1, "n_f + n_b", source.ByDefinition)
	calc.WorksUS(s, "Waste: what of the pavers laid or cut up does not lie on the slab.", "W", k.waste, unit.Share,
		"100 * (1 - A_p * 1000000 / (n * l * b))", "100 * (1 - A_p * 144 / (n * l * b))", source.ByDefinition)

	calc.WorksUS(s, "Grout joint: its area over its width.", "r_g", k.run, long, "A_g * 1000 / j", "A_g * 12 / j", source.ByDefinition)
	p.softRuns(s)
}

// across works one row out by hand, where the paving is a box square to the pavers and its end cuts are equal.
func (p *plan) across(s *calc.Sheet) {
	if len(p.corners) != 4 || len(p.outline.Holes)+len(p.outline.Structural) > 0 || p.pattern.Offset != 0 || !p.boxed() {
		return
	}
	p.course(s, true)
	p.course(s, false)
}

// boxed reports whether the outline lies square to the pavers.
func (p *plan) boxed() bool {
	for _, q := range p.rings[0] {
		const hair = 1
		if math.Min(q.X-p.box.X0, p.box.X1-q.X) > hair || math.Min(q.Y-p.box.Y0, p.box.Y1-q.Y) > hair {
			return false
		}
	}
	return true
}

// course is the half-tile rule on one row: source.HalfTile, with the joints counted too.
func (p *plan) course(s *calc.Sheet, rows bool) {
	first, last, whole := unit.Length(0), unit.Length(0), 0
	ends := [2]float64{math.Inf(1), math.Inf(-1)}
	paver, softs, span := p.paver.L, len(p.laid.LinesX), p.box.X1-p.box.X0
	if !rows {
		paver, softs, span = p.paver.W, len(p.laid.LinesY), p.box.Y1-p.box.Y0
	}
	stretch := func(piece *paving.Piece) (lo, hi float64) {
		lo, hi = piece.Cell.X0, piece.Cell.X1
		if !rows {
			lo, hi = piece.Cell.Y0, piece.Cell.Y1
		}
		if piece.Full {
			return lo, hi
		}
		lo, hi = math.Inf(1), math.Inf(-1)
		for _, q := range piece.Rings[0] {
			v := q.X
			if !rows {
				v = q.Y
			}
			lo, hi = min(lo, v), max(hi, v)
		}
		return lo, hi
	}
	seen := &p.laid.Pieces[0]
	for i := range p.laid.Pieces {
		piece := &p.laid.Pieces[i]
		if rows && piece.Cell.Y0 != seen.Cell.Y0 || !rows && piece.Cell.X0 != seen.Cell.X0 {
			continue
		}
		lo, hi := stretch(piece)
		if lo < ends[0] {
			ends[0], first = lo, unit.Length(hi-lo)
		}
		if hi > ends[1] {
			ends[1], last = hi, unit.Length(hi-lo)
		}
		if hi-lo > float64(paver)-1 {
			whole++
		}
	}
	if math.Abs(float64(first-last)) > 1 || first > paver-unit.Millimetre || whole == 0 {
		return
	}
	gaps := unit.Length(0)
	for i := range p.corners {
		a, b := p.rings[0][i], p.rings[0][(i+1)%4]
		upright := math.Abs(a.X-b.X) < math.Abs(a.Y-b.Y)
		if upright == rows && p.outline.Edge(i) != paving.Open {
			gaps += p.joints.Perimeter
		}
	}
	calc.Let(s, "X", unit.Length(span)-gaps, long)
	calc.Let(s, "m", unit.Count(whole), unit.Whole1)
	calc.Let(s, "f", unit.Count(softs), unit.Whole1)
	if rows {
		calc.WorksUS(s, "A row by the half-tile rule: the room less the whole pavers and every joint, halved. Of the joints between m + 2 pavers, f are movement joints.",
			"c_l", first, fine, "(X * 1000 - m * l - (m + 1 - f) * j - f * w) / 2", "(X * 12 - m * l - (m + 1 - f) * j - f * w) / 2", source.HalfTile)
		return
	}
	calc.WorksUS(s, "Across the rows by the same rule.",
		"c_b", first, fine, "(X * 1000 - m * b - (m + 1 - f) * j - f * w) / 2", "(X * 12 - m * b - (m + 1 - f) * j - f * w) / 2", source.HalfTile)
}

// areas accounts for the whole of the paving.
func (p *plan) areas(s *calc.Sheet) {
	a := &p.laid.Areas
	calc.Let(s, "A_p", unit.Area(a.Pavers), wide)
	calc.Let(s, "A_g", unit.Area(a.Grout), wide)
	calc.Let(s, "A_m", unit.Area(a.Movement+a.Structural), wide)
	calc.Let(s, "A_e", unit.Area(a.Perimeter+a.Slivers), wide)
	calc.Works(s, "The paving: faces of pavers, grout joints, movement joints, and joints at the edges. Their sum is the area by the corners, less the holes.",
		"A", p.ground.Area(), wide, "A_p + A_g + A_m + A_e", source.ByDefinition)
}

// spans says how many modules a field may take, and what the longest is.
func (p *plan) spans(s *calc.Sheet) {
	calc.Let(s, "ℓ", p.joints.Longest, long)
	calc.WorksUS(s, "Whole modules between movement joints, along the rows, at most.", "m_l",
		unit.Count(math.Floor(float64(p.joints.Longest/(p.paver.L+p.paver.Joint))+1e-9)), unit.Whole1, "floor(ℓ * 1000 / M_l)", "floor(ℓ * 12 / M_l)", source.MovementMethod)
	calc.Let(s, "X", unit.Length(p.box.X1-p.box.X0), long)
	calc.Let(s, "Y", unit.Length(p.box.Y1-p.box.Y0), long)
	calc.Works(s, "Fewest fields along the rows over the whole width of the paving.", "n_x", unit.Whole((p.box.X1-p.box.X0)/float64(p.joints.Longest)), unit.Whole1,
		"ceil(X / ℓ)", source.MovementMethod)
	calc.Works(s, "Fewest fields across the rows.", "n_y", unit.Whole((p.box.Y1-p.box.Y0)/float64(p.joints.Longest)), unit.Whole1,
		"ceil(Y / ℓ)", source.MovementMethod)
	if len(p.corners) == 4 && p.boxed() {
		calc.Works(s, "Both diagonals of the outline, if it is square.", "D", unit.Length(math.Hypot(p.box.X1-p.box.X0, p.box.Y1-p.box.Y0)), long,
			"sqrt(pow(X, 2) + pow(Y, 2))", source.SquareUp)
	}
	calc.Let(s, "S_l", p.laid.SpanX, long)
	calc.Let(s, "S_b", p.laid.SpanY, long)
	calc.Works(s, "The longest span on the plan, along the rows and across them. It is never more than the most allowed.", "S", max(p.laid.SpanX, p.laid.SpanY), long,
		"max(S_l, S_b)", source.MovementMethod)
	calc.Let(s, "n_plan", p.fields, unit.Whole1)
	calc.Works(s, "Fields, counted on the plan.", "n_F", p.fields, unit.Whole1, "n_plan", source.MovementMethod)
}

// few is how many kinds of cut are written out one by one in the working.
const few = 8

var letters = [few]string{"n_1", "n_2", "n_3", "n_4", "n_5", "n_6", "n_7", "n_8"}

// cuts adds the cut pieces up.
func (p *plan) cuts(s *calc.Sheet) {
	n := len(p.laid.Cuts)
	expr := "n_cut"
	if n == 0 || n > few {
		calc.Let(s, "n_cut", p.cut, unit.Whole1)
	} else {
		expr = ""
		for i, c := range p.laid.Cuts {
			calc.Let(s, letters[i], unit.Count(c.Count), unit.Whole1)
			if i > 0 {
				expr += " + "
			}
			expr += letters[i]
		}
	}
	calc.Works(s, "Cut pieces, from the list of cuts.", "n_c", p.cut, unit.Whole1, expr, source.ByDefinition)
}

// narrow finds the narrowest cut.
func (p *plan) narrow(s *calc.Sheet) {
	says := words.Say("Nothing is cut: the narrowest is the paver itself.")
	if len(p.laid.Cuts) > 0 {
		says = words.Say("The narrowest cut, {mark} in the list of cuts: the smallest share of a paver’s side.", words.Text("mark", p.narrowAt))
	}
	calc.Let(s, "c_plan", p.narrowest, fine)
	s.Step(says, calc.Sym("c", p.narrowest, fine), "c_plan", source.BalancedCuts)
}

func (p *plan) softRuns(s *calc.Sheet) {
	calc.Let(s, "r_m", p.laid.MovementRun, long)
	calc.Let(s, "r_s", p.laid.StructureRun, long)
	calc.Works(s, "Movement joint: on the plan, and over joints in the slab.", "r_soft", p.softRun, long, "r_m + r_s", source.MovementMethod)
	calc.Let(s, "r_e", p.edge, long)
	calc.Works(s, "Joint at walls and round holes: the length of those edges.", "r_p", p.edge, long, "r_e", source.EdgeJoint)
}
