package grout

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func steps(s *calc.Sheet, e calc.Entry, p parts) {
	l, b, w := paverL.Sym(e), paverW.Sym(e), joint.Sym(e)
	module := calc.Sym("m", p.module, unit.InchArea)
	run := calc.Sym("J", p.run, unit.FootMetre)
	volume := calc.Sym("V", p.volume, unit.CubicFootL)
	powder := calc.Sym("P", p.powder, unit.PoundKg)
	bags := calc.Sym("n", p.bags, unit.Bare)

	s.Step(words.Say("Module: one paver with half a joint all round."), module, "(L + w) * (B + w)", source.ModuleGeometry, l, b, w)
	s.StepUS(words.Say("Length of joint: each module brings its length, its width and the crossing, counted once."), run,
		"A * (L + B + w) / m * 1000", "A * (L + B + w) / m * 12", source.ModuleGeometry, area.Sym(e), l, b, w, module)
	s.StepUS(words.Say("Grout in the joints: length by width by depth."), volume,
		"J * w * d / 1000", "J * w * d / 144", source.ModuleGeometry, run, w, depth.Sym(e))
	s.Step(words.Say("Powder: what that volume takes, and the waste on top."), powder,
		"V * ρ * (1 + k / 100)", source.ByDefinition, volume, rate.Sym(e), waste.Sym(e))
	s.Step(words.Say("Bags: the powder over what one bag holds."), bags, "P / M", source.ByDefinition, powder, bag.Sym(e))
	s.Step(words.Say("Bags are bought whole."), calc.Sym("N", unit.Whole(float64(p.bags)), unit.Whole1), "ceil(n)", source.ByDefinition, bags)
}
