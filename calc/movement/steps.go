package movement

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func widthSteps(s *calc.Sheet, e calc.Entry, p parts) {
	calc.Let(s, "w_table", p.least, fine)
	s.Step(words.Say("Least width at this spacing: {short} up to {near}, {long} beyond. The rule names {near} and {far} only; what lies between takes the wider.",
		words.Both("short", unit.Length(shortWidth), unit.InchMM), words.Both("near", unit.Length(shortSpan), unit.FootMetre),
		words.Both("long", unit.Length(longWidth), unit.InchMM), words.Both("far", unit.Length(most), unit.FootMetre)),
		calc.Sym("w_0", p.least, fine), "w_table", source.MovementMethod)
	calc.WorksUS(s, "Range of the surface from winter to summer, in the rule's degrees.",
		"ΔT", p.surface, fahrenheit, "(T_s - T_w) * 1.8", "T_s - T_w", source.MovementMethod)
	calc.Works(s, "Steps of 15 degrees begun above 100. A step that has begun counts whole: our own convention, on the wide side.",
		"n", p.increments, unit.Whole1, "ceil(max(ΔT - 100, 0) / 15)", source.MovementWidth)
	calc.WorksUS(s, "Width by the rule: a sixteenth of an inch more for each step.",
		"w_rule", p.rule, fine, "w_0 + n * 1.5875", "w_0 + n / 16", source.MovementWidth)

	calc.WorksUS(s, "It closes: heat from sealing to summer, growth that stays, and other movement.",
		"m_c", p.closing, unit.InchMM, "α * ℓ * (T_s - T_f) / 1000 + g * ℓ * 10 + m", "α * ℓ * 12 * (T_s - T_f) / 1000000 + g / 100 * ℓ * 12 + m", source.TwoWayMovement)
	calc.WorksUS(s, "It opens: cold from sealing to winter, and other movement.",
		"m_o", p.opening, unit.InchMM, "α * ℓ * (T_f - T_w) / 1000 + m", "α * ℓ * 12 * (T_f - T_w) / 1000000 + m", source.TwoWayMovement)
	calc.Works(s, "Width by the sum: the larger movement over what the sealant takes, and the tolerance.",
		"w_calc", p.calculated, unit.InchMM, "max(m_c, m_o) * 100 / X + t", source.JointWidth)

	calc.Let(s, "w_s", structural.Of(e), fine)
	calc.Works(s, "The largest of the rule, the sum and the joint in the slab below.",
		"w_max", p.larger, fine, "max(max(w_rule, w_calc), w_s)", source.MovementMethod)
	calc.WorksUS(s, "Up to the next sixteenth of an inch, 1.5875 mm, in which the rule counts: our own convention.",
		"w", p.width, fine, "ceil(w_max / 1.5875) * 1.5875", "ceil(w_max * 16) / 16", source.ByDefinition)
}

func spacingSteps(s *calc.Sheet, e calc.Entry, p parts) {
	calc.Works(s, "Module: one paver and one grout joint. The movement joint stands in the place of a grout joint.",
		"M", p.module, fine, "p + j", source.ByDefinition)
	calc.Let(s, "ℓ_most", unit.Length(most), far)
	s.StepUS(words.Say("Whole pavers in the spacing wanted, and never in more than {most}.", words.Both("most", unit.Length(most), unit.FootMetre)),
		calc.Sym("n_p", p.pavers, unit.Whole1), "floor(min(ℓ, ℓ_most) * 1000 / M)", "floor(min(ℓ, ℓ_most) * 12 / M)", source.MovementMethod)
	calc.WorksUS(s, "Spacing on the pavers.",
		"S", p.spacing, far, "n_p * M / 1000", "n_p * M / 12", source.ByDefinition)
	calc.Let(s, "w", p.width, fine)
	calc.WorksUS(s, "Centres of the movement joints: each is wider than the grout joint in whose place it stands, which adds to the layout.",
		"C", p.centres, far, "S + (w - j) / 1000", "S + (w - j) / 12", source.ByDefinition)
	calc.WorksUS(s, "Spans in the length, joint to joint on their centres; the last may be short. Behind the last stands the edge joint, which is not in the length, so a movement joint is added to it.",
		"N", p.spans, unit.Whole1, "ceil((F + w / 1000) / C)", "ceil((F + w / 12) / C)", source.ByDefinition)
}
