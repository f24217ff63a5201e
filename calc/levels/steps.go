package levels

import (
	"math"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/surface"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The forms of what the working carries on: sums, and heights that are taken from one another.
var (
	sums    = digits(unit.SquareFeet, unit.SquareMetres)
	heights = digits(unit.Inches, unit.Millimetres)
	rises   = digits(unit.PerCent, unit.PerCent)
	shares  = digits(unit.One, unit.One)
	angles  = digits(unit.Degrees, unit.Degrees)
)

func digits(us, metric *unit.Unit) *unit.Pair {
	return &unit.Pair{US: unit.Form{Unit: us, Digits: 9}, Metric: unit.Form{Unit: metric, Digits: 9}}
}

func (v *survey) steps(e calc.Entry, s *calc.Sheet) {
	v.planeSteps(e, s)
	v.gapSteps(s, "g_10", underTen, "Worst gap under 10 ft: the straight line between the two readings that carry it, less the reading under it.")
	v.gapSteps(s, "g_2", underTwo, "Worst gap under 2 ft, in the same way.")
	v.gapSteps(s, "g", underOwn, "Worst gap under your straightedge, in the same way.")
	v.pondSteps(s)
	v.fillSteps(e, s)
	v.flatSteps(s)
}

func (v *survey) planeSteps(e calc.Entry, s *calc.Sheet) {
	p := v.plane
	b, c := unit.Ratio(p.B), unit.Ratio(p.C)
	if p.InLine {
		ux, uy := p.Along()
		calc.Let(s, "S_uz", unit.Area(ux*p.XZ+uy*p.YZ), sums)
		calc.Let(s, "S_uu", unit.Area(p.XX+p.YY), sums)
		calc.Let(s, "u_x", unit.Number(ux), shares)
		calc.Let(s, "u_y", unit.Number(uy), shares)
		calc.Works(s, "The readings stand in one line. Its rise, by least squares: the sum of places by heights over the sum of places squared, both from their means.",
			"m_u", unit.Ratio((ux*p.XZ+uy*p.YZ)/(p.XX+p.YY)), rises, "S_uz / S_uu * 100", source.LeastSquares)
		calc.Works(s, "Its part along the rows.", "b", b, rises, "m_u * u_x", source.ByDefinition)
		calc.Works(s, "Its part from row to row.", "c", c, rises, "m_u * u_y", source.ByDefinition)
	} else {
		calc.Let(s, "S_xx", unit.Area(p.XX), sums)
		calc.Let(s, "S_yy", unit.Area(p.YY), sums)
		calc.Let(s, "S_xy", unit.Area(p.XY), sums)
		calc.Let(s, "S_xz", unit.Area(p.XZ), sums)
		calc.Let(s, "S_yz", unit.Area(p.YZ), sums)
		calc.Works(s, "Rise along the rows, by least squares. Each S is a sum over the readings of two of: place along the row x, place from row to row y, height z, each from its mean.",
			"b", b, rises, "(S_xz * S_yy - S_yz * S_xy) / (S_xx * S_yy - S_xy * S_xy) * 100", source.LeastSquares)
		calc.Works(s, "Rise from row to row, in the same way.",
			"c", c, rises, "(S_yz * S_xx - S_xz * S_xy) / (S_xx * S_yy - S_xy * S_xy) * 100", source.LeastSquares)
	}
	calc.Works(s, "Slope of the best plane: both rises together, at right angles.", "m", v.slope(), rises, "sqrt(b * b + c * c)", source.Resultant)
	if v.slope() >= isLevel {
		way, expr := Direction(p.B, p.C)
		calc.Works(s, "The way down it: 0° along the rows, 90° towards the rows that follow, clockwise as drawn.", "θ", way, angles, expr, source.ByDefinition)
	}
	calc.Let(s, "a_least", least, rises)
	calc.Let(s, "a_most", most, rises)
	if away, expr, ok := v.away(e); ok {
		calc.Works(s, "Fall away from the building: the rise on that side, turned round where it must be.", "a", away, rises, expr, source.ByDefinition)
		calc.Works(s, "Margin over the least fall beside a building.", "m_a", away-least, rises, "a - a_least", source.FallFromBuilding)
	}
	calc.Works(s, "Room under 1:48, the ceiling of an accessible floor.", "m_most", most-v.slope(), rises, "a_most - m", source.AccessibleSlope)
}

// gapSteps works one gap out from the three readings that make it.
func (v *survey) gapSteps(s *calc.Sheet, symbol string, which int, says words.Msg) {
	gap := v.gaps[which]
	gives := calc.Sym(symbol, unit.Length(gap.Depth), unit.InchMM)
	if gap.Depth == 0 {
		if gap.Span > 0 {
			s.Step(words.Say("No gap: the straightedge touches every reading, at every place."), gives, "0", source.SubstrateFlatness)
		}
		return
	}
	at := func(p surface.Place) unit.Length { return unit.Length(v.grid.At(p)) }
	s.Step(words.Line{Msg: says}, gives, "z_1 + (z_2 - z_1) * s_k / s - z_k", source.SubstrateFlatness,
		calc.Sym("z_1", at(gap.From), heights), calc.Sym("z_2", at(gap.To), heights), calc.Sym("z_k", at(gap.At), heights),
		calc.Sym("s_k", v.apart(gap.From, gap.At), heights), calc.Sym("s", unit.Length(gap.Span), heights))
}

// apart is how far two places are from each other.
func (v *survey) apart(a, b surface.Place) unit.Length {
	x0, y0 := v.grid.XY(a)
	x1, y1 := v.grid.XY(b)
	return unit.Length(math.Hypot(x1-x0, y1-y0))
}

func (v *survey) pondSteps(s *calc.Sheet) {
	calc.Let(s, "D", unit.Length(v.ponds.Sum), heights)
	calc.WorksUS(s, "Water that stands: the depths at all readings, added up, each over one step by one step. Each hollow is flooded to where it spills.",
		"V_w", v.pondVolume(), unit.CubicFootL, "D * x * y", "D * x * y / 12", source.PriorityFlood)
	deep, z := unit.Length(v.ponds.Deepest), unit.Length(v.grid.At(v.deepest))
	if deep == 0 {
		calc.Works(s, "Nothing stands: every reading drains.", "d", deep, unit.InchMM, "D", source.PriorityFlood)
		return
	}
	calc.Let(s, "w_k", z+deep, heights)
	calc.Let(s, "z_k", z, heights)
	calc.Works(s, "Deepest water: the level at which that hollow spills, less its lowest reading.", "d", deep, unit.InchMM, "w_k - z_k", source.PriorityFlood)
}

func (v *survey) fillSteps(e calc.Entry, s *calc.Sheet) {
	calc.Let(s, "F", unit.Length(v.fill.FillSum), heights)
	fill := litres(v.fill.Fill)
	calc.WorksUS(s, "Patch, by the grid method: F is the depths to fill added up, a quarter of each for every cell that its reading is a corner of (a sixth where one corner is missing), over one cell. Readings above count as nought.",
		"V", fill, unit.CubicFootL, "F * x * y", "F * x * y / 12", source.GridMethod)
	n := unit.Number(fill / bagYield.Of(e))
	calc.Works(s, "Bags: patch over what one bag gives.", "n", n, unit.Bare, "V / Y", source.Yield)
	calc.Works(s, "Bags are bought whole.", "N", unit.Whole(float64(n)), unit.Whole1, "ceil(n)", source.ByDefinition)
}

func (v *survey) flatSteps(s *calc.Sheet) {
	if len(v.flat) == 0 {
		return
	}
	worst := v.flat[0].Flatness
	calc.Let(s, "K", flatScale, heights)
	calc.Let(s, "s_q", unit.Length(worst.Spread), heights)
	calc.Let(s, "q", unit.Length(worst.Mean), heights)
	if F(worst) < flatMost {
		calc.Works(s, "Flatness number of the roughest line: from each three readings in a row, the first less twice the middle one and the last, their standard deviation and their mean.",
			"F_1", F(worst), unit.Bare, "K / (3 * s_q + abs(q))", source.FNumbers)
	}
	f, bends, share := Together(v.bends())
	if f >= flatMost {
		return
	}
	calc.Let(s, "R", bends, unit.Bare)
	calc.Let(s, "U", share, shares)
	calc.Works(s, "All lines together: R is how many such threes there are, U their sum, each over the square of its line's number.",
		"F_all", f, unit.Bare, "sqrt(R / U)", source.FNumbers)
}
