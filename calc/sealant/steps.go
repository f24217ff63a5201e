package sealant

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func steps(s *calc.Sheet, e calc.Entry, p parts) {
	w, h, f := width.Sym(e), dome.Sym(e), sag.Sym(e)
	d := calc.Sym("d", p.depth, unit.InchMM)
	if depth.Of(e) == 0 {
		calc.Let(s, "d_least", unit.Length(leastDepth), unit.InchMM)
		calc.Let(s, "d_most", unit.Length(mostDepth), unit.InchMM)
		calc.Works(s, "Depth by the rule: half the width, within the least and the most.",
			"d", p.depth, unit.InchMM, "min(max(W / 2, d_least), d_most)", source.SealantDepth)
	} else {
		calc.Works(s, "Depth as entered.",
			"d", p.depth, unit.InchMM, "d_e", source.ByDefinition)
	}
	calc.Works(s, "Rod: wider than the joint by the ratio, so that it stays where it is pushed.",
		"D", p.rod, unit.InchMM, "q * W", source.RodSize)
	calc.Works(s, "Room under the sealant: paver and open bed, less the hollow and the depth.",
		"R", p.room, unit.InchMM, "T + b - s - d", source.ByDefinition)
	calc.Works(s, "Depth left under the rod, its height taken as its diameter. Below nought it does not fit.",
		"R_spare", p.spare, unit.InchMM, "R - D", source.ByDefinition)
	if p.spare < 0 {
		calc.Works(s, "No rod fits: tape or a flat strip stands under the sealant, and the sum counts no crown, whatever was entered.",
			"h_used", p.crown, unit.InchMM, "0", source.BackingStrips)
	}
	section(s, e, p, w, h, f, d)

	calc.Let(s, "S", p.section, unit.InchArea)
	calc.WorksUS(s, "Sealant in the joints: section by length. A US gallon is 231 in³, or 128 fl oz.",
		"V", p.volume, tube, "S * ℓ", "S * ℓ * 12 * 128 / 231", source.GallonInches)
	calc.Works(s, "Cartridges: that and the waste, over what one holds.",
		"n", p.cartridges, unit.Bare, "V * (1 + k / 100) / V_c", source.ByDefinition)
	calc.Works(s, "Cartridges are bought whole.",
		"N", unit.Whole(float64(p.cartridges)), unit.Whole1, "ceil(n)", source.ByDefinition)

	calc.Works(s, "Rod, or tape where none fits, along every joint.",
		"ℓ_back", run.Of(e), unit.FootMetre, "ℓ", source.ByDefinition)
	calc.Works(s, "Masking tape along both edges.",
		"ℓ_tape", p.tape, unit.FootMetre, "2 * ℓ", source.ByDefinition)
}

// section writes how the section is found: the rectangle, and what stands beside the crown of the rod and the hollow of the face.
func section(s *calc.Sheet, e calc.Entry, p parts, w, h, f, d calc.Term) {
	if p.crown > 0 {
		r, θ := arc(width.Of(e), p.crown, "r_h", "θ_h")
		s.Step(words.Say("Radius of the rod's crown, an arc over the width."),
			r, "(W * W / 4 + h * h) / (2 * h)", source.Segment, w, h)
		s.Step(words.Say("Angle that the crown takes up at its centre."),
			θ, "4 * atan(2 * h / W)", source.Segment, w, h)
		s.Step(words.Say("Sealant beside the crown: the rectangle round it, less the segment."),
			calc.Sym("a_h", p.underRod, unit.InchArea), "W * h - r_h * r_h / 2 * (θ_h * pi / 180 - sin(θ_h))", source.Segment, w, h, r, θ)
	}
	if sag.Of(e) > 0 {
		r, θ := arc(width.Of(e), sag.Of(e), "r_s", "θ_s")
		s.Step(words.Say("Radius of the tooled hollow."),
			r, "(W * W / 4 + s * s) / (2 * s)", source.Segment, w, f)
		s.Step(words.Say("Angle that the hollow takes up at its centre."),
			θ, "4 * atan(2 * s / W)", source.Segment, w, f)
		s.Step(words.Say("Sealant beside the hollow: the rectangle round it, less the segment."),
			calc.Sym("a_s", p.overFace, unit.InchArea), "W * s - r_s * r_s / 2 * (θ_s * pi / 180 - sin(θ_s))", source.Segment, w, f, r, θ)
	}
	switch {
	case p.crown > 0 && sag.Of(e) > 0:
		s.Step(words.Say("Section: width by depth at the middle, and what stands beside the crown and the hollow."),
			calc.Sym("S", p.section, unit.InchArea), "W * d + a_h + a_s", source.SealantTooling, w, d)
	case p.crown > 0:
		s.Step(words.Say("Section: width by depth at the middle, and what stands beside the crown."),
			calc.Sym("S", p.section, unit.InchArea), "W * d + a_h", source.SealantTooling, w, d)
	case sag.Of(e) > 0:
		s.Step(words.Say("Section: width by depth at the middle, and what stands beside the hollow."),
			calc.Sym("S", p.section, unit.InchArea), "W * d + a_s", source.SealantTooling, w, d)
	default:
		s.Step(words.Say("Section: width by depth, flat above and below."),
			calc.Sym("S", p.section, unit.InchArea), "W * d", source.ByDefinition, w, d)
	}
}

// fine prints radius and angle to more digits: their segment is a small difference.
var (
	fine    = &unit.Pair{US: unit.Form{Unit: unit.Inches, Digits: 7}, Metric: unit.Form{Unit: unit.Millimetres, Digits: 7}}
	fineArc = &unit.Pair{US: unit.Form{Unit: unit.Degrees, Digits: 7}, Metric: unit.Form{Unit: unit.Degrees, Digits: 7}}
)

func arc(chord, rise unit.Length, radius, angle string) (r, θ calc.Term) {
	return calc.Sym(radius, Radius(chord, rise), fine), calc.Sym(angle, Opens(chord, rise), fineArc)
}
