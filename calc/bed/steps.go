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

func steps(s *calc.Sheet, p parts) {
	calc.Let(s, "g", p.land, unit.InchMM)
	calc.Works(s, "Height of the ridge: the notch's depth, foreshortened by the angle of the trowel.", "r", p.ridge, unit.InchMM, "d * sin(θ)", source.NotchGeometry)
	how := sectionSays[p.shape]
	calc.Works(s, how.says, "S", p.section, unit.InchArea, how.expr, source.ByDefinition)
	calc.Works(s, "Pitch: one notch and one land.", "p", p.pitch, unit.InchMM, "w + g", source.ByDefinition)
	calc.Works(s, "Combed mortar after the ridges fall in: the foreshortened section spread over the pitch.",
		"c", p.combed, unit.InchMM, "S * sin(θ) / p", source.NotchGeometry)
	calc.Works(s, "Bed: the combed mortar and the skim on the paver's back.", "t", p.thick, unit.InchMM, "c + s", source.ByDefinition)
	calc.Works(s, "Mortar to take up: the bed and the mean hollow.", "f", p.filled, unit.InchMM, "t + h", source.ByDefinition)
	calc.WorksUS(s, "Area that one bag covers, before waste.", "A_bag", p.perBag, unit.FootArea, "Y / f", "Y / f * 12", source.ByDefinition)
	calc.WorksUS(s, "Wet mortar: area by thickness, and the waste on top.", "V", p.mortar, unit.CubicFootL,
		"A * f * (1 + k / 100)", "A * f / 12 * (1 + k / 100)", source.ByDefinition)
	calc.Works(s, "Bags: wet mortar over what one bag gives.", "n", p.bags, unit.Bare, "V / Y", source.Yield)
	calc.Works(s, "Bags are bought whole.", "N", unit.Whole(float64(p.bags)), unit.Whole1, "ceil(n)", source.ByDefinition)
}

func cautions(s *calc.Sheet, bed, thick, hollow unit.Length, hold unit.Angle) {
	switch {
	case bed < thinnest:
		s.Warn(calc.Stop, source.BedLimits, "The bed of {t} is thinner than {least}, the least after embedding. Take a larger notch, hold the trowel steeper or skim the back.",
			words.Both("least", thinnest, unit.InchMM))
	case thick > thickBedMost:
		s.Warn(calc.Stop, source.BedLimits, "{f} is thicker than {most}, the most for a large and heavy tile mortar. Patch the slab first.",
			words.Both("most", thickBedMost, unit.InchMM))
	case thick > thinBedMost:
		s.Warn(calc.Care, source.BedLimits, "{f} is past {most}, the most for a thin-bed mortar. Only a mortar whose bag says it is for large and heavy tile may go this thick.",
			words.Both("most", thinBedMost, unit.InchMM))
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
