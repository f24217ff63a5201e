package grout

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The rules of the joint's width. Published figures name their source at their use.
const (
	variations    = 3                  // source.LeastJoint: times the facial variation
	floorJoint    = unit.Inch / 16     // source.LeastJoint: never under
	longEdge      = 15 * unit.Inch     // source.RunningBond: an edge over this
	groundJoint   = unit.Inch / 8      // source.RunningBond: rectified
	sortedJoint   = 3 * unit.Inch / 16 // source.RunningBond: calibrated
	outdoorJoint  = 3 * unit.Inch / 16 // common practice for 20 mm pavers outdoors
	wideJoint     = unit.Inch / 4      // source.Lippage: from here on the larger lippage
	lippageNarrow = unit.Inch / 32     // source.Lippage
	lippageWide   = unit.Inch / 16     // source.Lippage
	britishLeast  = 3 * unit.Millimetre
	britishWide   = 6 * unit.Millimetre
	paver         = 20 * unit.Millimetre // the pavers that Setbook is for
	clearShare    = 2.0 / 3              // of the depth clear of mortar: from memory
	apart         = 12 * unit.Foot       // source.MovementMethod: movement joints at most
)

// rule is what the rules say of one joint.
type rule struct {
	byVariation, bond, least, lippage unit.Length
	long                              bool // running bond with a long edge
}

func rules(e calc.Entry) rule {
	r := rule{byVariation: ByVariation(variation.Of(e)), lippage: LippageAllowed(joint.Of(e), warp.Of(e))}
	r.long = pattern.Of(e) == "running" && max(paverL.Of(e), paverW.Of(e)) > longEdge
	r.least = r.byVariation
	if r.long {
		r.bond = ByBond(edges.Of(e), warp.Of(e))
		r.least = max(r.least, r.bond)
	}
	return r
}

// ByVariation is the least joint for pavers whose faces vary in size: three times
// the variation, and never under a sixteenth of an inch. Source: source.LeastJoint.
func ByVariation(variation unit.Length) unit.Length {
	return max(variations*variation, floorJoint)
}

// ByBond is the least joint of a running bond with an edge over 15 in: by how the
// edges are finished, and the bow of the longest edge on top.
// Sources: source.RunningBond, source.WarpJoint.
func ByBond(finish string, warp unit.Length) unit.Length {
	if finish == "rectified" {
		return groundJoint + warp
	}
	return sortedJoint + warp
}

// LippageAllowed is how far one edge may stand above the next: by the joint's width, and the bow that
// was measured on top. A joint of exactly a quarter of an inch takes the larger figure, as in
// source.Lippage; one consultant reads it the other way.
func LippageAllowed(joint, warp unit.Length) unit.Length {
	if joint < wideJoint {
		return lippageNarrow + warp
	}
	return lippageWide + warp
}

// BritishLippage is the same by the British house-building rule, 1 mm for joints up
// to 6 mm and 2 mm above, with nothing for bow. Source: source.HouseTiling.
func BritishLippage(joint unit.Length) unit.Length {
	if joint <= britishWide {
		return unit.Millimetre
	}
	return 2 * unit.Millimetre
}

// exact prints lengths that are steps of a sixteenth of an inch in full.
var exact = &unit.Pair{US: unit.Form{Unit: unit.Inches, Digits: 7}, Metric: unit.Form{Unit: unit.Millimetres, Digits: 7}}

func ruleSteps(s *calc.Sheet, e calc.Entry, r rule) {
	calc.Let(s, "w_0", unit.Length(floorJoint), exact)
	calc.Works(s, "Least joint by the pavers: three times the spread of their face sizes, and never under the floor.",
		"w_v", r.byVariation, exact, "max(3 * v, w_0)", source.LeastJoint)
	if r.long {
		calc.Let(s, "w_table", r.bond-warp.Of(e), exact)
		s.Step(words.Say("Running bond with an edge over {edge}: the least joint for edges finished like these.", words.Both("edge", longEdge, unit.InchMM)),
			calc.Sym("w_edge", r.bond-warp.Of(e), exact), "w_table", source.RunningBond)
		calc.Works(s, "The bow of the longest edge is added to it.",
			"w_b", r.bond, exact, "w_edge + u", source.WarpJoint)
		calc.Works(s, "Narrowest joint that the rules allow: the larger of the two.",
			"w_least", r.least, exact, "max(w_v, w_b)", source.RunningBond)
	} else {
		calc.Works(s, "Narrowest joint that the rules allow. The rule for running bond asks for no more here.",
			"w_least", r.least, exact, "w_v", source.LeastJoint)
	}
	allowed := r.lippage - warp.Of(e)
	calc.Let(s, "h_table", allowed, exact)
	calc.Works(s, "Most that one edge may stand above the next: the figure for a joint of this width, and the bow that was measured.",
		"h", r.lippage, exact, "h_table + u", source.Lippage)
}

func cautions(s *calc.Sheet, e calc.Entry, r rule) {
	widthCautions(s, e, r)
	depthCautions(s, depth.Of(e))
	s.Warn(calc.Care, source.MovementMethod, "Grout no movement joint. They stand at every wall, kerb, column and change of plane, over every joint in the slab, and at most {apart} apart outdoors.",
		words.Both("apart", apart, unit.FootMetre))
	s.Warn(calc.Note, source.ByDefinition, "This sum starts from an area, so its length counts every joint between pavers: movement joints too, which take sealant and no grout. “Where every paver goes” counts them apart; where a job has it for the same pavers, joint and area, the order goes by it.")
	s.Warn(calc.Care, source.Silica, "Pouring powder, and grinding or sawing hardened joints out, raise dust that may hold silica. Wet it or draw it off, keep upwind, and wear the respirator that your exposure plan and the bag call for.")
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves and kneepads, do not kneel in the wash water, wash splashes off at once, and follow the bag.")
	s.Warn(calc.Note, source.FromMemory, "Cement grouts take from 1.5 to 1.8 kg of powder a litre of joint, and resin grouts about as much. The bag's own figure comes first.")
	s.Warn(calc.Note, source.ActualWarp, "Lippage adds the bow that was measured on these pavers, not the bow that their standard would allow.")
	s.Warn(calc.Note, source.HouseTiling, "A British rule for houses allows {british} between two edges at this joint, bow or no bow.", words.Is("british", BritishLippage(joint.Of(e)), unit.InchMM))
}

func widthCautions(s *calc.Sheet, e calc.Entry, r rule) {
	w := joint.Of(e)
	read, least := joint.Is("joint", w), words.Both("least", r.least, unit.InchMM)
	switch {
	case w < r.byVariation:
		s.Warn(calc.Stop, source.LeastJoint, "A joint of {joint} is narrower than {least}. These pavers vary too much for it: the joint is at least three times their spread, and never under {floor}.",
			read, least, words.Both("floor", unit.Length(floorJoint), unit.InchMM))
	case w < r.least:
		s.Warn(calc.Stop, source.RunningBond, "A joint of {joint} is narrower than {least}, the least for a running bond with edges this long, finished and bowed like these.", read, least)
	case w < outdoorJoint:
		s.Warn(calc.Care, source.CommonPractice, "Outdoors, 20 mm pavers are commonly laid with joints of {common} or more. A joint of {joint} leaves little for crooked edges and for packing.",
			words.Both("common", unit.Length(outdoorJoint), unit.InchMM), read)
	}
	if w < britishLeast {
		s.Warn(calc.Care, source.HouseTiling, "In the United Kingdom joints in a floor are at least {least} wide.", words.Both("least", unit.Length(britishLeast), unit.InchMM))
	}
	if w > paver {
		s.Warn(calc.Care, source.HouseTiling, "A joint of {joint} is wider than a 20 mm paver is thick. A joint is generally no wider than that.", read)
	}
	if r.long {
		s.Warn(calc.Care, source.RunningBond, "Offset these pavers by a third of their length at most, unless their maker allows more and a trial area is accepted.")
	}
}

// depthCautions speaks of a joint that is too full of mortar, or deeper than the paver.
func depthCautions(s *calc.Sheet, d unit.Length) {
	read := depth.Is("depth", d)
	if clear := unit.Length(clearShare * float64(paver)); d < clear {
		s.Warn(calc.Care, source.FromMemory, "Only {depth} of the joint is clear. Two thirds of the paver's thickness, {clear} of 20 mm, is to be free of mortar before it is grouted: rake it out.",
			read, words.Is("clear", clear, unit.InchMM))
	}
	if d > paver {
		s.Warn(calc.Note, source.ByDefinition, "{depth} is deeper than a 20 mm paver is thick: the grout runs down into the bed.", read)
	}
}
