// Package drying answers how fast the weather dries a fresh mortar.
package drying

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
	wind     = weather.AskWind("4 mph").Helped("At knee height over the slab. A forecast's wind is that of 10 m: take a little over half of it.")
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "drying", Stage: calc.Weather, Title: "Drying of fresh mortar",
	Asks:   "How fast does this weather take water out of a fresh mortar?",
	Inputs: []*calc.Input{air.Input, humidity.Input, surface.Input, wind.Input},
	Work:   work,
	Origin: "Water leaves a fresh surface by the difference between the vapour pressure at the surface and in the air, and faster in wind. The factors come from Menzel's measurements over water pans, which is why the figure is a warning and no measurement.",
	Memory: []words.Msg{
		"Touch the ridges before each paver. If they do not wet the finger, scrape the mortar off and comb anew.",
		"Comb no more than you can cover before the skin comes; in sun and wind that is one paver's worth.",
		"Follow the shade round the house, or bring your own: a tarpaulin on poles, clear of the work.",
		"Damp a hot, thirsty slab and let the water go in until the shine is gone, where the bag allows it.",
		"Keep powder, liquid and pavers out of the sun, and use cool liquid.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	if weather.Impossible(s, air.Of(e), humidity.Of(e)) {
		return
	}
	rate := weather.DryingSteps(s, air.Of(e), humidity.Of(e), surface.Of(e), wind.Of(e))
	least, most := rate*unit.Evaporation(1-weather.EvaporationSpread), rate*unit.Evaporation(1+weather.EvaporationSpread)
	calc.Gives(s, "evaporation", "Evaporation", rate, weather.Drying).First().
		Between(float64(least), float64(most), words.Say("The estimate can be out by {spread} either way.", words.Is("spread", weather.EvaporationSpread, unit.Share)))
	v := weather.WarnDrying(s, rate)
	cautions(s, rate, most, v)
	s.Drawing = drawing(rate, least, most)
}

func cautions(s *calc.Sheet, rate, most unit.Evaporation, v weather.Verdict) {
	switch {
	case rate == 0:
		s.Warn(calc.Care, source.ByDefinition, "The air is wetter than this surface: water settles on it instead of leaving it. Look under Dew on the slab before anything is bonded.")
	case v == weather.Go && weather.JudgeDrying(most) != weather.Go:
		s.Warn(calc.Note, source.EvaporationSpread, "The figure is under the first line, but the high end of it, {most}, is not. Watch the ridges.", words.Is("most", most, weather.BriefDrying))
	}
	s.Warn(calc.Note, source.EvaporationSpread, "This is a warning in three bands, not a measurement: the true rate can differ from it by {spread}. The equation itself is given from memory; the one worked example of its chart that was found in print agrees within 6 %.",
		words.Is("spread", weather.EvaporationSpread, unit.Share))
	s.Warn(calc.Note, source.EvaporationLatex, "The first line, {care}, is that of latex-modified concrete, which hardly bleeds. That tile mortar is like it is our judgement.",
		words.Both("care", weather.DryingCare, weather.RoundDrying))
	s.Warn(calc.Note, source.EvaporationBands, "Measure the wind at 0.5 m (20 in) over the surface, air and humidity at chest height in the shade.")
	s.Warn(calc.Note, source.WindProfile, "Over open ground a forecast's wind, at 10 m, comes to about {share} of itself at that height.",
		words.Is("share", weather.WindShare(unit.Metre/2), weather.RoundShare))
	s.Warn(calc.Care, source.SkinsOver, "Heat and wind skin a combed mortar over, and a skin does not bond. Take the temperature of the slab in the sun, not that of the air.")
	s.Warn(calc.Note, source.WorkInShade, "In the heat: shade the slab and the work, follow the shade, and cool the mixing liquid.")
}
