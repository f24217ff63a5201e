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
		s.Step(words.Say("Depth by the rule: half the width, within the least and the most."), d, "min(max(W / 2, d_least), d_most)", source.SealantDepth,
			w, calc.Sym("d_least", unit.Length(leastDepth), unit.InchMM), calc.Sym("d_most", unit.Length(mostDepth), unit.InchMM))
	} else {
		s.Step(words.Say("Depth as entered."), d, "d_e", source.ByDefinition, depth.Sym(e))
	}
	section(s, e, p, w, h, f, d)
	volume := calc.Sym("V", p.volume, tube)
	count := calc.Sym("n", p.cartridges, unit.Bare)
	area := calc.Sym("S", p.section, unit.InchArea)
	s.StepUS(words.Say("Sealant in the joints: section by length. A US gallon is 231 in³, or 128 fl oz."), volume,
		"S * ℓ", "S * ℓ * 12 * 128 / 231", source.GallonInches, area, run.Sym(e))
	s.Step(words.Say("Cartridges: that and the waste, over what one holds."), count, "V * (1 + k / 100) / V_c", source.ByDefinition, volume, waste.Sym(e), cartridge.Sym(e))
	s.Step(words.Say("Cartridges are bought whole."), calc.Sym("N", unit.Whole(float64(p.cartridges)), unit.Whole1), "ceil(n)", source.ByDefinition, count)

	rod, room := calc.Sym("D", p.rod, unit.InchMM), calc.Sym("R", p.room, unit.InchMM)
	s.Step(words.Say("Rod: wider than the joint by the ratio, so that it stays where it is pushed."), rod, "q * W", source.RodSize, rodRatio.Sym(e), w)
	s.Step(words.Say("Room under the sealant: paver and open bed, less the hollow and the depth."), room, "T + b - s - d", source.ByDefinition, paver.Sym(e), bed.Sym(e), f, d)
	s.Step(words.Say("Depth left under the rod, its height taken as its diameter. Below nought it does not fit."), calc.Sym("R_spare", p.spare, unit.InchMM), "R - D", source.ByDefinition, room, rod)
	s.Step(words.Say("Masking tape along both edges."), calc.Sym("ℓ_tape", p.tape, unit.FootMetre), "2 * ℓ", source.ByDefinition, run.Sym(e))
}

// section writes how the section is found: the rectangle, and what stands beside the crown of the rod and the hollow of the face.
func section(s *calc.Sheet, e calc.Entry, p parts, w, h, f, d calc.Term) {
	area := calc.Sym("S", p.section, unit.InchArea)
	under, over := calc.Sym("a_h", p.underRod, unit.InchArea), calc.Sym("a_s", p.overFace, unit.InchArea)
	if dome.Of(e) > 0 {
		r, θ := arc(width.Of(e), dome.Of(e), "r_h", "θ_h")
		s.Step(words.Say("Radius of the rod's crown, an arc over the width."), r, "(W * W / 4 + h * h) / (2 * h)", source.Segment, w, h)
		s.Step(words.Say("Angle that the crown takes up at its centre."), θ, "4 * atan(2 * h / W)", source.Segment, w, h)
		s.Step(words.Say("Sealant beside the crown: the rectangle round it, less the segment."), under, "W * h - r_h * r_h / 2 * (θ_h * pi / 180 - sin(θ_h))", source.Segment, w, h, r, θ)
	}
	if sag.Of(e) > 0 {
		r, θ := arc(width.Of(e), sag.Of(e), "r_s", "θ_s")
		s.Step(words.Say("Radius of the tooled hollow."), r, "(W * W / 4 + s * s) / (2 * s)", source.Segment, w, f)
		s.Step(words.Say("Angle that the hollow takes up at its centre."), θ, "4 * atan(2 * s / W)", source.Segment, w, f)
		s.Step(words.Say("Sealant beside the hollow: the rectangle round it, less the segment."), over, "W * s - r_s * r_s / 2 * (θ_s * pi / 180 - sin(θ_s))", source.Segment, w, f, r, θ)
	}
	switch {
	case dome.Of(e) > 0 && sag.Of(e) > 0:
		s.Step(words.Say("Section: width by depth at the middle, and what stands beside the crown and the hollow."), area, "W * d + a_h + a_s", source.SealantTooling, w, d, under, over)
	case dome.Of(e) > 0:
		s.Step(words.Say("Section: width by depth at the middle, and what stands beside the crown."), area, "W * d + a_h", source.SealantTooling, w, d, under)
	case sag.Of(e) > 0:
		s.Step(words.Say("Section: width by depth at the middle, and what stands beside the hollow."), area, "W * d + a_s", source.SealantTooling, w, d, over)
	default:
		s.Step(words.Say("Section: width by depth, flat above and below."), area, "W * d", source.ByDefinition, w, d)
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
