package bed

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// sectionSays tells how each notch's section is found.
var sectionSays = map[string]struct {
	says words.Msg
	expr string
}{
	"square":  {"Section of one square notch: width by depth.", "w * d"},
	"slanted": {"Section of one slanted notch: a parallelogram, width by depth.", "w * d"},
	"vee":     {"Section of one vee notch: half of width by depth.", "w * d / 2"},
	"round":   {"Section of one round-bottomed notch: a slot with half a circle under it.", "w * (d - w / 2) + pi * w * w / 8"},
}

func steps(s *calc.Sheet, e calc.Entry, p parts) {
	w, d, θ := width.Sym(e), depth.Sym(e), hold.Sym(e)
	section := calc.Sym("S", p.section, unit.InchArea)
	pitch := calc.Sym("p", p.pitch, unit.InchMM)
	combed := calc.Sym("c", p.combed, unit.InchMM)
	bed := calc.Sym("t", p.thick, unit.InchMM)
	filled := calc.Sym("f", p.filled, unit.InchMM)
	mortar := calc.Sym("V", p.mortar, unit.CubicFootL)
	bags := calc.Sym("n", p.bags, unit.Bare)

	s.Step(words.Say("Height of the ridge: the notch's depth, foreshortened by the angle of the trowel."),
		calc.Sym("r", p.ridge, unit.InchMM), "d * sin(θ)", source.NotchGeometry, d, θ)
	how := sectionSays[p.shape]
	s.Step(words.Say(how.says), section, how.expr, source.ByDefinition, w, d)
	s.Step(words.Say("Pitch: one notch and one land."), pitch, "w + g", source.ByDefinition, w, calc.Sym("g", p.land, unit.InchMM))
	s.Step(words.Say("Combed mortar after the ridges fall in: the foreshortened section spread over the pitch."),
		combed, "S * sin(θ) / p", source.NotchGeometry, section, θ, pitch)
	s.Step(words.Say("Bed: the combed mortar and the skim on the paver's back."), bed, "c + s", source.ByDefinition, combed, skim.Sym(e))
	s.Step(words.Say("Mortar to take up: the bed and the mean hollow."), filled, "t + h", source.ByDefinition, bed, hollow.Sym(e))
	s.StepUS(words.Say("Area that one bag covers, before waste."), calc.Sym("A_bag", p.perBag, unit.FootArea),
		"Y / f", "Y / f * 12", source.ByDefinition, bagWets.Sym(e), filled)
	s.StepUS(words.Say("Wet mortar: area by thickness, and the waste on top."), mortar,
		"A * f * (1 + k / 100)", "A * f / 12 * (1 + k / 100)", source.ByDefinition, area.Sym(e), filled, waste.Sym(e))
	s.Step(words.Say("Bags: wet mortar over what one bag gives."), bags, "V / Y", source.Yield, mortar, bagWets.Sym(e))
	s.Step(words.Say("Bags are bought whole."), calc.Sym("N", unit.Whole(float64(p.bags)), unit.Whole1), "ceil(n)", source.ByDefinition, bags)
}

func cautions(s *calc.Sheet, bed, hollow unit.Length, hold unit.Angle) {
	thick := bed + hollow
	switch {
	case bed < thinnest:
		s.Warn(calc.Stop, source.BedLimits, "The bed of {bed} is thinner than {least}, the least after embedding. Take a larger notch, hold the trowel steeper or skim the back.",
			words.Is("bed", bed, unit.InchMM), words.Both("least", thinnest, unit.InchMM))
	case thick > thickBedMost:
		s.Warn(calc.Stop, source.BedLimits, "{bed} is thicker than {most}, the most for a large and heavy tile mortar. Patch the slab first.",
			words.Is("bed", thick, unit.InchMM), words.Both("most", thickBedMost, unit.InchMM))
	case thick > thinBedMost:
		s.Warn(calc.Care, source.BedLimits, "{bed} is past {most}, the most for a thin-bed mortar. Only a mortar whose bag says it is for large and heavy tile may go this thick.",
			words.Is("bed", thick, unit.InchMM), words.Both("most", thinBedMost, unit.InchMM))
	}
	if hollow > 0 {
		s.Warn(calc.Care, source.BedLimits, "Mortar is not for truing a slab: grind the high spots and patch the hollows first, and count here only what is left.")
	} else {
		s.Warn(calc.Note, source.BedLimits, "Mortar is not for truing a slab: grind the high spots and patch the hollows first.")
	}
	if hold < 45 {
		s.Warn(calc.Care, source.HoldAngle, "Held flatter than 45° a trowel leaves a thinner bed and the hand strays more. Hold it at 45° or steeper.")
	}
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves and kneepads, wash splashes off at once, and follow the bag.")
	s.Warn(calc.Note, source.Contact, "Outdoors at least 95 % of the back must be bedded, every edge and corner with it. Lift a paver now and then to see.")
	s.Warn(calc.Note, source.CommonPractice, "The first bag tells more than any sum: note the area that it really covered and enter what it teaches.")
}
