// Package heat answers how hot moist air is for the crew.
package heat

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

var (
	air      = weather.AskAir(0, 55, "78 F")
	humidity = weather.AskHumidity("50 %")
)

// offChart is where the printed chart ends (source.HeatChart).
var offChart = unit.Temperature(unit.Fahrenheit.Base(137))

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "heat", Stage: calc.Weather, Title: "Heat on the crew",
	Asks:   "How hot is this air for people at work, and what does it ask for?",
	Inputs: []*calc.Input{air.Input, humidity.Input},
	Work:   work,
	Origin: "The heat index is a polynomial fitted to a model of how a clothed body sheds heat in the shade. Humid air takes up less sweat, so the same thermometer reads as a hotter day.",
	Memory: []words.Msg{
		"Start at first light and stop when the slab is hot. The mortar asks for the same.",
		"Water within reach of every hand, and shade that somebody sits in.",
		"A new hand, or one back from a week away, takes a light share for the first days of heat.",
		"Somebody who is confused, faint or falls in the heat is in danger of life: call for help at once, and cool the body while it comes.",
		"A dark paver in the sun burns a bare knee. Kneepads, gloves, long sleeves.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	if weather.Impossible(s, air.Of(e), humidity.Of(e)) {
		return
	}
	index := weather.HeatSteps(s, air.Of(e), humidity.Of(e))
	inSun := index + unit.Temperature(weather.HeatSun)
	calc.Gives(s, "heat_index", "Heat index", index, unit.Warmth).First().
		Between(float64(index), float64(inSun), words.Say("From shade to full sun, which can add up to {sun}.", words.Is("sun", weather.HeatSun, unit.Warmer)))
	weather.WarnHeat(s, index)
	cautions(s, index)
	s.Drawing = drawing(e, index, inSun)
}

func cautions(s *calc.Sheet, index unit.Temperature) {
	switch {
	case index > offChart:
		s.Warn(calc.Note, source.HeatChart, "The printed chart ends at {end}: past it the figure is stretched, and only says far too hot.", words.Both("end", offChart, unit.Warmth))
	case index < unit.Temperature(unit.Fahrenheit.Base(80)):
		s.Warn(calc.Note, source.HeatIndex, "Below {least} a heat index says little more than the air does.", words.Both("least", unit.Temperature(unit.Fahrenheit.Base(80)), unit.Warmth))
	}
	s.Warn(calc.Care, source.HeatInSun, "The index is for shade. Full sun can add up to {sun}.", words.Both("sun", weather.HeatSun, weather.RoundWarmer))
	s.Warn(calc.Care, source.HeatBands, "In direct sun, at hard work or in heavy clothing take the measures of the next band up. Water, rest, shade, and time to get used to it, in every band.")
	s.Warn(calc.Note, source.HeatBands, "The bands are for planning. Local heat rules, and the people themselves, come first.")
}
