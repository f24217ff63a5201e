package mixtemp

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func steps(s *calc.Sheet, e calc.Entry, holds unit.Mass, mix, want unit.Temperature) {
	share := unit.Ratio(liquid.Of(e) / (holds + liquid.Of(e)))
	calc.Works(s, "Mass of water that holds as much heat as the powder.",
		"W", holds, unit.PoundKg, "h * P", source.HeatBalance)
	calc.Works(s, "The mix: each part weighs in with the heat that it holds.",
		"T", mix, unit.Warmth, "(W * T_P + L * T_L) / (W + L)", source.HeatBalance)
	calc.Works(s, "The liquid that brings the mix to the temperature wanted: the same balance, turned round.",
		"T_want", want, unit.Warmth, "(T_t * (W + L) - W * T_P) / L", source.HeatBalance)
	calc.Works(s, "How much of each degree in the liquid reaches the mix. The rest goes into the powder.",
		"q", share, unit.Share, "L / (W + L) * 100", source.HeatBalance)
}

const (
	flash = unit.Temperature(340.0 / 9) // 100 °F (source.HotWater)
	hot   = unit.Temperature(290.0 / 9) // 90 °F (source.HotPlacing)
	cold  = unit.Temperature(40.0 / 9)  // 40 °F: common practice
)

func cautions(s *calc.Sheet, e calc.Entry, mix, want unit.Temperature) {
	goal := target.Is("target", target.Of(e))
	switch {
	case want < freezes-trace:
		s.Warn(calc.Stop, source.HeatBalance, "No liquid brings this mix down to {target}: it would have to be colder than freezing. Cool the powder, or mix in a cooler hour.", goal)
	case want > boils+trace:
		s.Warn(calc.Stop, source.HeatBalance, "No liquid brings this mix up to {target}: it would have to be hotter than boiling. Warm the powder, or mix in a warmer hour.", goal)
	case want > flash+trace:
		s.Warn(calc.Care, source.HotWater, "The liquid for {target} is hotter than {flash}. Liquid so hot that meets cement may set it in a flash: warm the powder instead.",
			goal, words.Both("flash", flash, unit.Warmth))
	}
	if t := liquidTemp.Of(e); t > flash+trace {
		s.Warn(calc.Care, source.HotWater, "The liquid is hotter than {flash}. Liquid so hot that meets cement may set it in a flash, and it scalds.", words.Both("flash", flash, unit.Warmth))
	}
	switch {
	case mix > hot+trace:
		s.Warn(calc.Care, source.HotPlacing, "The mix comes out above {hot}, the most at which concrete is placed in hot weather. Its pot life and open time will be short: look at the bag's own limit.",
			words.Both("hot", hot, unit.Warmth))
	case mix < cold-trace:
		s.Warn(calc.Care, source.CommonPractice, "The mix comes out below {cold}. Cement hardly sets so cold, and a frozen bed is lost: look at the bag's own limit.", words.Both("cold", cold, unit.Warmth))
	}
	s.Warn(calc.Note, source.Melting, "Ice is outside this sum. A pound of it takes up 143.5 Btu as it melts (334 kJ a kilogram), so chill the liquid with it first and measure what has melted.")
	s.Warn(calc.Note, source.SolidsHeat, "The sum leaves out pail, paddle, air and sun, and holds the powder's heat to be that of plain solids. Put a probe in the first pail.")
	s.Warn(calc.Care, source.Silica, "Pouring powder raises dust that may hold silica. Keep upwind, pour low, and wear the respirator that your exposure plan and the bag call for.")
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves and eye protection, and wash splashes off at once.")
}
