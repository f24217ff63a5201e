package slope

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// fine shows a slope to the digits that its margins need.
var fine = &unit.Pair{US: unit.Form{Unit: unit.PerCent, Digits: 6}, Metric: unit.Form{Unit: unit.PerCent, Digits: 6}}

func steps(s *calc.Sheet, e calc.Entry, along, across, total unit.Ratio) {
	calc.WorksUS(s, "Slope away from the building: drop over run.",
		"a", along, fine, "h / (L * 1000) * 100", "h / (L * 12) * 100", source.ByDefinition)
	calc.WorksUS(s, "Slope across: the drop that way, over the same run.",
		"b", across, fine, "h_x / (L * 1000) * 100", "h_x / (L * 12) * 100", source.ByDefinition)
	calc.Works(s, "Slope the way water runs: both together, at right angles.",
		"a_all", total, fine, "sqrt(a * a + b * b)", source.Resultant)
	calc.Let(s, "a_least", least, fine)
	calc.Works(s, "Margin over the least fall beside a building.",
		"m", along-least, fine, "a - a_least", source.FallFromBuilding)
	calc.Let(s, "a_most", most, fine)
	calc.Works(s, "Room under 1:48, the ceiling across an accessible walk, for the steeper of the two.",
		"m_most", most-steepest(along, across), fine, "a_most - max(abs(a), abs(b))", source.AccessibleSlope)
}

func cautions(s *calc.Sheet, along, across, total unit.Ratio) {
	is := func(name string, r unit.Ratio) *words.Arg { return words.Is(name, r, unit.Share) }
	switch {
	case along < 0:
		s.Warn(calc.Stop, source.FallFromBuilding, "The slab falls {slope} towards the building. Water must be led away before anything is laid: ask who designed it.", is("slope", -along))
	case along < least-hair:
		s.Warn(calc.Stop, source.FallFromBuilding, "{slope} is {short} short of {least}, the least for a hard surface within {beside} of a building. Put the fall right first.",
			is("slope", along), is("short", least-along), is("least", least), words.Both("beside", beside, unit.FootMetre))
	}
	switch steep := steepest(along, across); {
	case steep > ramp+hair:
		s.Warn(calc.Care, source.RampSlope, "{steep} is steeper than 1:12, the most that even a ramp may have where the way is to be accessible.", is("steep", steep))
	case steep > walk+hair:
		s.Warn(calc.Care, source.AccessibleSlope, "{steep} is steeper than 1:20. Where the way is to be accessible, a walk this steep counts as a ramp, with its landings and handrails.", is("steep", steep))
	case steep > most+hair:
		s.Warn(calc.Care, source.AccessibleSlope, "{steep} is {over} over 1:48, the ceiling across an accessible walk and on its landings. Along the walk up to 1:20 is allowed.", is("steep", steep), is("over", steep-most))
	case along >= least-hair:
		s.Warn(calc.Note, source.AccessibleSlope, "Within both: {over} over the least of {least}, and {room} under 1:48 ({most}), the ceiling across an accessible walk.",
			is("over", along-least), is("least", least), is("room", most-steep), is("most", most))
	}
	if total < ponding-hair {
		s.Warn(calc.Care, source.Resultant, "Below {ponding} the way water runs, every hollow of the slab ponds.", is("ponding", ponding))
	}
	s.Warn(calc.Note, source.FallFromBuilding, "Between {least} and 1:48 lie only {window}: {foot} in a foot. Measure to that, or aim for the middle.",
		is("least", least), is("window", window), words.Both("foot", aFoot, unit.InchMM))
	s.Warn(calc.Note, source.PatioFall, "1/4 in a foot, the fall often asked for, is 1:48 to the hair. 20 mm a metre is {least}.", is("least", least))
	s.Warn(calc.Note, source.FallFromBuilding, "Bare ground beside a building wants more: {ground}, 6 in in the first {beside}.", is("ground", ground), words.Both("beside", beside, unit.FootMetre))
	s.Warn(calc.Note, source.Birdbaths, "No slab is free of shallow ponds. The fall keeps them few; the levels of the slab tell where they are.")
	s.Warn(calc.Care, source.LevelChange, "A step in the finished face trips: over {trip} it wants a bevel, over {bevel} a ramp.",
		words.Both("trip", trip, unit.InchMM), words.Both("bevel", bevel, unit.InchMM))
	s.Warn(calc.Care, source.CommonPractice, "Wet or frosted, a sloped face is slippery. Choose pavers rated for wet outdoor use. The local code and who designed the job come first.")
}
