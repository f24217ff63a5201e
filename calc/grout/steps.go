package grout

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
)

func steps(s *calc.Sheet, e calc.Entry, p parts) {
	calc.Works(s, "Module: one paver with half a joint all round.",
		"m", p.module, unit.InchArea, "(L + w) * (B + w)", source.ModuleGeometry)
	calc.WorksUS(s, "Length of all joints, movement joints too: each module brings its length, its width and the crossing, counted once.",
		"J", p.run, unit.FootMetre, "A * (L + B + w) / m * 1000", "A * (L + B + w) / m * 12", source.ModuleGeometry)
	calc.WorksUS(s, "Grout in the joints: length by width by depth.",
		"V", p.volume, unit.CubicFootL, "J * w * d / 1000", "J * w * d / 144", source.ModuleGeometry)
	calc.Works(s, "Powder: what that volume takes, and the waste on top.",
		"P", p.powder, unit.PoundKg, "V * ρ * (1 + k / 100)", source.ByDefinition)
	calc.Works(s, "Bags: the powder over what one bag holds.",
		"n", p.bags, unit.Bare, "P / M", source.ByDefinition)
	calc.Works(s, "Bags are bought whole.",
		"N", unit.Whole(float64(p.bags)), unit.Whole1, "ceil(n)", source.ByDefinition)
}
