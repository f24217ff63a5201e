package levels

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func (v *survey) cautions(e calc.Entry, s *calc.Sheet) {
	if v.plane.InLine {
		s.Warn(calc.Care, source.LeastSquares, "All readings stand in one line. No plane can be fitted: the slope is that along the line, and nothing is known of the slope across it.")
	}
	v.warnFall(e, s)
	v.warnFlat(e, s)
	v.warnWater(s)
	v.warnFill(e, s)
	s.Warn(calc.Care, source.SubstrateFlatness, "Thin-bed mortar is not for flattening a slab. Grind the high spots and patch the hollows, and let the patch harden, before the first paver.")
	s.Warn(calc.Care, source.Silica, "Grinding concrete makes silica dust that scars lungs: a shroud with a vacuum or water at the wheel, and a respirator where the rule asks for one. Patch powder is cement: gloves and eye protection.")
	if v.missing > 0 {
		s.Warn(calc.Note, source.CommonPractice, "Readings missing: {missing}. A straightedge lies across such a gap, and water is taken to leave there, as at a drain.", words.Is("missing", unit.Count(v.missing), unit.Whole1))
	}
	s.Warn(calc.Note, source.CommonPractice, "Between the readings nothing is known. A hollow smaller than a step goes unseen: slide the straightedge over the slab as well.")
	s.Warn(calc.Note, source.FLevelness, "The levelness number FL does not suit a slab laid to falls and is not given. FF wants lines away from edges and joints by 2 ft or more; leave out rows that are not.")
}

// is shows a slope as it is worth telling apart.
func is(name string, r unit.Ratio) *words.Arg { return words.Is(name, r, unit.Share) }

func (v *survey) warnFall(e calc.Entry, s *calc.Sheet) {
	beside := words.Both("beside", 10*unit.Foot, unit.FootMetre)
	away, _, named := v.away(e)
	switch {
	case named && away < 0:
		s.Warn(calc.Stop, source.FallFromBuilding, "The slab falls {slope} towards the building. Water must be led away before anything is laid: ask who designed it.", is("slope", -away))
	case named && away < least*(1-hair):
		s.Warn(calc.Stop, source.FallFromBuilding, "It falls {slope} away from the building, {short} short of {least}, the least for a hard surface within {beside} of one. Put the fall right first.",
			is("slope", away), is("short", least-away), is("least", least), beside)
	case named:
		s.Warn(calc.Note, source.FallFromBuilding, "It falls {slope} away from the building, {over} over the least of {least}.", is("slope", away), is("over", away-least), is("least", least))
	case v.plane.InLine:
	case v.slope() < least*(1-hair):
		s.Warn(calc.Stop, source.FallFromBuilding, "At its steepest it falls {slope}, {short} short of {least}, the least for a hard surface within {beside} of a building. Beside one, put the fall right first; elsewhere ask who designed it how it is to drain.",
			is("slope", v.slope()), is("short", least-v.slope()), is("least", least), beside)
	default:
		s.Warn(calc.Note, source.FallFromBuilding, "It falls {slope} at its steepest, {over} over {least}. Beside a building that must be away from it: say where the building stands.",
			is("slope", v.slope()), is("over", v.slope()-least), is("least", least))
	}
	if access.Of(e) == "no" {
		return
	}
	if v.slope() > most*(1+hair) {
		s.Warn(calc.Stop, source.AccessibleSlope, "{slope} is {over} over 1:48, the ceiling across an accessible walk and on its landings. Along a walk up to 1:20 is allowed: ask who designed it which this is.", is("slope", v.slope()), is("over", v.slope()-most))
		return
	}
	s.Warn(calc.Note, source.AccessibleSlope, "Under 1:48, the accessible ceiling, by {room}.", is("room", most-v.slope()))
}

func (v *survey) warnFlat(e calc.Entry, s *calc.Sheet) {
	ten, two, both := limits(edge.Of(e))
	cite := source.SubstrateFlatness
	if !both {
		cite = source.SmallTileFlatness
	}
	length := func(name string, l unit.Length) *words.Arg { return words.Both(name, l, unit.InchMM) }
	gap := func(which int) unit.Length { return unit.Length(v.gaps[which].Depth) }
	if over(v.gaps[underTen].Depth, ten) {
		s.Warn(calc.Stop, cite, "The worst gap under 10 ft is {gap}; with pavers of this size it may be {most}. Grind and patch before anything is laid.", length("gap", gap(underTen)), length("most", ten))
	}
	switch {
	case !both:
		s.Warn(calc.Note, cite, "Every edge is under 15 in: {most} in 10 ft is the rule, and none is published for 2 ft.", length("most", ten))
	case v.gaps[underTwo].Span == 0:
		s.Warn(calc.Care, cite, "The rule has a second half, {most} in 2 ft, and these readings cannot show it: take them 1 ft apart, or slide a 2 ft straightedge over the slab.", length("most", two))
	case over(v.gaps[underTwo].Depth, two):
		s.Warn(calc.Stop, cite, "The worst gap under 2 ft is {gap}; with pavers of this size it may be {most}. Grind and patch before anything is laid.", length("gap", gap(underTwo)), length("most", two))
	}
	if both && edge.Of(e) <= large {
		s.Warn(calc.Note, source.LargeFormat, "A newer definition calls a paver large only past {large}. The tighter rule is kept here.", length("large", large))
	}
	low, high := 0.0, 0.0
	for _, over := range v.over {
		low, high = min(low, nought(over)), max(high, nought(over))
	}
	s.Warn(calc.Note, source.LeastSquares, "Against the best plane, which is another test than the straightedge, readings stand up to {high} above and {low} below.", length("high", unit.Length(high)), length("low", unit.Length(-low)))
}

// nought is what a gap counts for where it counts for nothing.
func nought(z float64) float64 {
	if z != z {
		return 0
	}
	return z
}

func (v *survey) warnWater(s *calc.Sheet) {
	if v.ponds.Wet > 0 {
		s.Warn(calc.Care, source.Birdbaths, "Water will stand up to {d} deep, at the readings hatched in the drawing: row {row}, reading {column} is the deepest. Fill it, or cut it a way out.",
			words.Is("row", unit.Count(v.deepest.Row+1), unit.Whole1), words.Is("column", unit.Count(v.deepest.Col+1), unit.Whole1))
		return
	}
	s.Warn(calc.Note, source.Birdbaths, "By these readings nothing ponds. No slab is free of shallow ponds: flood it with a hose and look.")
}

func (v *survey) warnFill(e calc.Entry, s *calc.Sheet) {
	cut, fill := litres(v.fill.Cut), litres(v.fill.NetFill)
	if target.Of(e) != "flat" && cut > 0 {
		s.Warn(calc.Note, source.GridMethod, "What stands above the plane comes to {cut}. It is to be ground off, or the plane raised.", words.Is("cut", cut, unit.CubicFootL))
	}
	if v.fill.Cut > 0 && v.fill.Fill > 0 {
		s.Warn(calc.Note, source.FourPoint, "Cells that are partly high and partly low are filled here as if the high corners were level with the plane: never too little. Weighed the nearer way the patch is {fill}.", words.Is("fill", fill, unit.CubicFootL))
	}
	s.Warn(calc.Care, source.CommonPractice, "A patch is no thicker, nor thinner, than its bag allows, is made for outdoors and frost where there is any, and must not dam the fall.")
}
