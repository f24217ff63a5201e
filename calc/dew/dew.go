// Package dew answers whether water is settling on a surface out of the air.
package dew

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

var (
	air      = weather.AskAir(-46, 55, "72 F")
	humidity = weather.AskHumidity("50 %")
	surface  = weather.AskSurface("75 F")
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "dew", Stage: calc.Weather, Title: "Dew on the slab",
	Asks:   "Is the slab warm enough over the dew point to prime, seal or bond on?",
	Inputs: []*calc.Input{air.Input, humidity.Input, surface.Input},
	Work:   work,
	Origin: "Warm air holds more water than cold, by the curve that Magnus fitted to measurements. The dew point is where that curve, followed down from the air's own humidity, says full: a surface colder than that is wet.",
	Memory: []words.Msg{
		"Measure the slab where it is coldest: in the shade, by the wall, over a cellar.",
		"Wipe a square of the slab dry and look again in ten minutes. What darkens or beads is dew.",
		"Early morning is worst: the slab is still as cold as the night and the air is already moist.",
		"Pavers from a cold van sweat. Let them come to the air before their backs are skimmed.",
		"A joint near freezing can hold ice that is not seen. Warm it and dry it before primer or sealant.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	if weather.Impossible(s, air.Of(e), humidity.Of(e)) {
		return
	}
	point, margin := weather.DewSteps(s, air.Of(e), humidity.Of(e), surface.Of(e))
	calc.Gives(s, "margin", "Surface over the dew point", margin, unit.Warmer).First()
	calc.Gives(s, "dew_point", "Dew point", point, unit.Warmth).First()

	touching := weather.Humidity(surface.Of(e), point)
	if touching < 1 {
		calc.WorksUS(s, "Surface in degrees Celsius.", "t_s", unit.Number(surface.Of(e)), unit.Bare, "T_s", "(T_s - 32) / 1.8", source.ByDefinition)
		calc.Works(s, "Humidity of the air where it touches the surface: its dew point stays, its warmth is the surface's.", "R_s", touching, unit.Share,
			"100 * exp(g - 17.625 * t_s / (243.04 + t_s))", source.SaturationVapour)
	}
	weather.WarnDew(s, margin)
	cautions(s, margin, point)
	s.Drawing = drawing(e, point)
}

func cautions(s *calc.Sheet, margin unit.Difference, point unit.Temperature) {
	if point < weather.Freezing {
		s.Warn(calc.Note, source.CommonPractice, "Below freezing what settles is frost, and it settles a little above this dew point.")
	}
	if margin < weather.DewLeast {
		s.Warn(calc.Care, source.CommonPractice, "A slab or a paver wet with dew or frost is slippery. Mind your step, above all with a load.")
	}
	s.Warn(calc.Note, source.OverDewPoint, "The rule was made for coatings. No rule for membranes, mortar or sealant was found; the bag's own comes first. Measure at the work, about every 4 h.")
	s.Warn(calc.Note, source.HumidityRule, "A meter that is out by 5 % of humidity puts the dew point out by about {slip}.",
		words.Both("slip", unit.Difference(1), weather.RoundWarmer))
	s.Warn(calc.Note, source.OverDewPoint, "A surface can be colder than the air. Measure it close to the work: the air does not tell it.")
}
