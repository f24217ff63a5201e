package weather

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The steps look the inputs up by their symbols: T air, R humidity, T_s surface, V wind.

// plain is a pair for numbers that a step hands on: more digits than are read on site.
var plain = &unit.Pair{US: unit.Form{Unit: unit.One, Digits: 6}, Metric: unit.Form{Unit: unit.One, Digits: 6}}

var vapour = &unit.Pair{US: unit.Form{Unit: unit.PSI, Digits: 6}, Metric: unit.Form{Unit: unit.Hectopascal, Digits: 6}}

// DewSteps writes the working of the dew point and of what a surface stands over it.
func DewSteps(s *calc.Sheet, air unit.Temperature, humidity unit.Ratio, surface unit.Temperature) (dew unit.Temperature, margin unit.Difference) {
	dew = DewPoint(air, humidity)
	margin = unit.Difference(surface - dew)
	calc.WorksUS(s, "Air in degrees Celsius, in which the formula is written.", "t", unit.Number(air), plain, "T", "(T - 32) / 1.8", source.ByDefinition)
	calc.Works(s, "Vapour in the air: the logarithm of its share of saturation, and that of saturation.",
		"g", unit.Number(dewExponent(air, humidity)), plain, "ln(R / 100) + 17.625 * t / (243.04 + t)", source.SaturationVapour)
	calc.Works(s, "The same formula turned round gives the dew point in degrees Celsius.", "t_d", unit.Number(dew), plain, "243.04 * g / (17.625 - g)", source.SaturationVapour)
	calc.WorksUS(s, "Dew point.", "T_d", dew, unit.Warmth, "t_d", "t_d * 1.8 + 32", source.ByDefinition)
	calc.Works(s, "What the surface stands over it.", "D", margin, unit.Warmer, "T_s - T_d", source.ByDefinition)
	return dew, margin
}

// DryingSteps writes the working of the evaporation.
func DryingSteps(s *calc.Sheet, air unit.Temperature, humidity unit.Ratio, surface unit.Temperature, wind unit.Speed) unit.Evaporation {
	rate := Evaporation(air, humidity, surface, wind)
	calc.WorksUS(s, "Surface in degrees Celsius.", "t_s", unit.Number(surface), plain, "T_s", "(T_s - 32) / 1.8", source.ByDefinition)
	calc.WorksUS(s, "Vapour pressure at the wet surface: saturated.", "e_0", Saturation(surface), vapour,
		"6.1094 * exp(17.625 * t_s / (243.04 + t_s))", "0.0886093555 * exp(17.625 * t_s / (243.04 + t_s))", source.SaturationVapour)
	calc.WorksUS(s, "Air in degrees Celsius.", "t", unit.Number(air), plain, "T", "(T - 32) / 1.8", source.ByDefinition)
	calc.WorksUS(s, "Vapour pressure of the air if it were saturated.", "e_s", Saturation(air), vapour,
		"6.1094 * exp(17.625 * t / (243.04 + t))", "0.0886093555 * exp(17.625 * t / (243.04 + t))", source.SaturationVapour)
	calc.Works(s, "Vapour pressure of the air as it is.", "e_a", unit.Pressure(humidity)*Saturation(air), vapour, "e_s * R / 100", source.ByDefinition)
	calc.WorksUS(s, "Evaporation: the pull between the two, by what the wind carries off. The constants are Menzel's, in pounds, feet and miles; in metric units they are the same ones turned over.",
		"W", rate, Drying, "max(0, 0.031157995 * (e_0 - e_a) * (0.253 + 0.059651634 * V))", "max(0, 0.44 * (e_0 - e_a) * (0.253 + 0.096 * V))", source.EvaporationRate)
	return rate
}

// fahrenheitStep writes the air as the plain number that a formula in °F takes.
func fahrenheitStep(s *calc.Sheet, n unit.Number) {
	calc.WorksUS(s, "Air in degrees Fahrenheit, in which the formula is written.", "F", n, plain, "T * 1.8 + 32", "T", source.ByDefinition)
}

// HeatSteps writes the working of the heat index.
func HeatSteps(s *calc.Sheet, air unit.Temperature, humidity unit.Ratio) unit.Temperature {
	h := HeatIndex(air, humidity)
	fahrenheitStep(s, h.Air)
	calc.Works(s, "The simple sum, in degrees Fahrenheit.", "s", h.Simple, plain, "0.5 * (F + 61 + (F - 68) * 1.2 + R * 0.094)", source.HeatIndex)
	if !h.Regressed() {
		calc.Works(s, "Its mean with the air is below 80, so by the source's rule it is the index.", "q", h.Mean, plain, "(s + F) / 2", source.HeatIndex)
	} else {
		calc.Works(s, "Its mean with the air is 80 or more, so by the source's rule the regression is taken.", "m", h.Mean, plain, "(s + F) / 2", source.HeatIndex)
		calc.Works(s, "The regression, in degrees Fahrenheit.", "q", h.Regression, plain,
			"-42.379 + 2.04901523 * F + 10.14333127 * R - 0.22475541 * F * R - 0.00683783 * F * F - 0.05481717 * R * R + 0.00122874 * F * F * R + 0.00085282 * F * R * R - 0.00000199 * F * F * R * R",
			source.HeatIndex)
	}
	switch {
	case h.Dry > 0:
		calc.Works(s, "Taken off in dry air, under 13 % at 80 to 112 °F.", "a", h.Dry, plain, "(13 - R) / 4 * sqrt((17 - abs(F - 95)) / 17)", source.HeatIndex)
		calc.WorksUS(s, "Heat index.", "H", h.Index, unit.Warmth, "(q - a - 32) / 1.8", "q - a", source.HeatIndex)
	case h.Humid > 0:
		calc.Works(s, "Put on in moist air, over 85 % at 80 to 87 °F.", "a", h.Humid, plain, "(R - 85) / 10 * (87 - F) / 5", source.HeatIndex)
		calc.WorksUS(s, "Heat index.", "H", h.Index, unit.Warmth, "(q + a - 32) / 1.8", "q + a", source.HeatIndex)
	default:
		calc.WorksUS(s, "Heat index.", "H", h.Index, unit.Warmth, "(q - 32) / 1.8", "q", source.ByDefinition)
	}
	return h.Index
}

// ChillSteps writes the working of the wind chill; outside the range of the index that is the air.
func ChillSteps(s *calc.Sheet, air unit.Temperature, wind unit.Speed) Chill {
	c := WindChill(air, wind)
	felt := calc.Sym("T_w", c.Index, unit.Warmth)
	switch {
	case c.Warm:
		s.Step(words.Say("Over {most} there is no wind chill: the air stands for it.", words.Both("most", ChillWarmest, RoundWarmth)), felt, "T", source.WindChill)
		return c
	case c.Calm:
		s.Step(words.Say("In a wind under {least} there is no wind chill: the air stands for it.", words.Both("least", ChillCalmest, RoundWind)), felt, "T", source.WindChill)
		return c
	}
	fahrenheitStep(s, c.Air)
	calc.WorksUS(s, "Wind in miles an hour, in which the formula is written.", "M", c.Wind, plain, "V / 1.609344", "V", source.ByDefinition)
	calc.Works(s, "What the wind carries off grows with this power of it.", "p", c.Power, plain, "pow(M, 0.16)", source.WindChill)
	calc.Works(s, "The index, in degrees Fahrenheit.", "w", c.Felt, plain, "35.74 + 0.6215 * F - 35.75 * p + 0.4275 * F * p", source.WindChill)
	calc.WorksUS(s, "Wind chill.", "T_w", c.Index, unit.Warmth, "(w - 32) / 1.8", "w", source.ByDefinition)
	return c
}
