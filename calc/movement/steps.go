package movement

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func widthSteps(s *calc.Sheet, e calc.Entry, p parts) {
	least := calc.Sym("w_0", p.least, fine)
	surface := calc.Sym("ΔT", p.surface, fahrenheit)
	n := calc.Sym("n", p.increments, unit.Whole1)
	rule := calc.Sym("w_rule", p.rule, fine)
	s.Step(words.Say("Least width at this spacing: {short} up to {near}, {long} beyond. The rule names {near} and {far} only; what lies between takes the wider.",
		words.Both("short", unit.Length(shortWidth), unit.InchMM), words.Both("near", unit.Length(shortSpan), unit.FootMetre),
		words.Both("long", unit.Length(longWidth), unit.InchMM), words.Both("far", unit.Length(most), unit.FootMetre)),
		least, "w_table", source.MovementMethod, calc.Sym("w_table", p.least, fine))
	s.StepUS(words.Say("Range of the surface from winter to summer, in the rule's degrees."), surface,
		"(T_s - T_w) * 1.8", "T_s - T_w", source.MovementMethod, summer.Sym(e), winter.Sym(e))
	s.Step(words.Say("Steps of 15 degrees begun above 100. A step that has begun counts whole: our own convention, on the wide side."), n,
		"ceil(max(ΔT - 100, 0) / 15)", source.MovementWidth, surface)
	s.StepUS(words.Say("Width by the rule: a sixteenth of an inch more for each step."), rule,
		"w_0 + n * 1.5875", "w_0 + n / 16", source.MovementWidth, least, n)

	l, α, m := span.Sym(e), expansion.Sym(e), other.Sym(e)
	closing, opening := calc.Sym("m_c", p.closing, unit.InchMM), calc.Sym("m_o", p.opening, unit.InchMM)
	calculated := calc.Sym("w_calc", p.calculated, unit.InchMM)
	s.StepUS(words.Say("It closes: heat from sealing to summer, growth that stays, and other movement."), closing,
		"α * ℓ * (T_s - T_f) / 1000 + g * ℓ * 10 + m", "α * ℓ * 12 * (T_s - T_f) / 1000000 + g / 100 * ℓ * 12 + m", source.TwoWayMovement,
		α, l, summer.Sym(e), fit.Sym(e), growth.Sym(e), m)
	s.StepUS(words.Say("It opens: cold from sealing to winter, and other movement."), opening,
		"α * ℓ * (T_f - T_w) / 1000 + m", "α * ℓ * 12 * (T_f - T_w) / 1000000 + m", source.TwoWayMovement,
		α, l, fit.Sym(e), winter.Sym(e), m)
	s.Step(words.Say("Width by the sum: the larger movement over what the sealant takes, and the tolerance."), calculated,
		"max(m_c, m_o) * 100 / X + t", source.JointWidth, closing, opening, capability.Sym(e), tolerance.Sym(e))

	larger := calc.Sym("w_max", p.larger, fine)
	s.Step(words.Say("The largest of the rule, the sum and the joint in the slab below."), larger,
		"max(max(w_rule, w_calc), w_s)", source.MovementMethod, rule, calc.Sym("w_calc", p.calculated, fine), calc.Sym("w_s", structural.Of(e), fine))
	s.StepUS(words.Say("Up to the next sixteenth of an inch, 1.5875 mm, in which the rule counts: our own convention."), calc.Sym("w", p.width, fine),
		"ceil(w_max / 1.5875) * 1.5875", "ceil(w_max * 16) / 16", source.ByDefinition, larger)
}

func spacingSteps(s *calc.Sheet, e calc.Entry, p parts) {
	module, spacing := calc.Sym("M", p.module, fine), calc.Sym("S", p.spacing, far)
	pavers := calc.Sym("n_p", p.pavers, unit.Whole1)
	s.Step(words.Say("Module: one paver and one grout joint. The movement joint stands in the place of a grout joint."), module, "p + j", source.ByDefinition, paver.Sym(e), joint.Sym(e))
	s.StepUS(words.Say("Whole pavers in the spacing wanted, and never in more than {most}.", words.Both("most", unit.Length(most), unit.FootMetre)), pavers,
		"floor(min(ℓ, ℓ_most) * 1000 / M)", "floor(min(ℓ, ℓ_most) * 12 / M)", source.MovementMethod,
		span.Sym(e), calc.Sym("ℓ_most", unit.Length(most), far), module)
	s.StepUS(words.Say("Spacing on the pavers."), spacing, "n_p * M / 1000", "n_p * M / 12", source.ByDefinition, pavers, module)
	s.StepUS(words.Say("Centres of the movement joints: each is wider than the grout joint in whose place it stands, which adds to the layout."), calc.Sym("C", p.centres, far),
		"S + (w - j) / 1000", "S + (w - j) / 12", source.ByDefinition, spacing, calc.Sym("w", p.width, fine), joint.Sym(e))
	s.Step(words.Say("Spans in the length; the last may be short. Movement joints stand between them, and at both ends."), calc.Sym("N", p.spans, unit.Whole1), "ceil(F / S)", source.ByDefinition, length.Sym(e), spacing)
}
