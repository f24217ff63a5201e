// Package sun answers where the sun stands, when it rises and sets, and the most that it
// can give a level surface.
package sun

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "sun", Stage: calc.Weather, Title: "Sun on the work",
	Asks:   "Where is the sun, when does it rise and set, and how strong can it be?",
	Inputs: []*calc.Input{weather.Latitude.Input, weather.Longitude.Input, weather.Zone.Input, weather.Date.Input, weather.Clock.Input},
	Work:   work,
	Origin: "The sun's place follows from the day of the year and the time, by the earth's tilt and turning. The shadow of an upright stick, as drawn, is its height over the tangent of the sun's elevation.",
	Memory: []words.Msg{
		"Set the side that is in the shade. In the morning that is the west side of the house, after noon the east side.",
		"Walk the site an hour before the mortar goes down and mark where the shade will run.",
		"A light from low down shows every lip: look along the joints early or late, before the mortar takes.",
		"Leave time before dark to clean joints and faces. Haze on porcelain is not seen by a lamp.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	p, now := weather.PlaceOf(e), unit.Span(weather.Clock.Of(e))
	sun := weather.SunAt(weather.Date.Of(e), now, p.Zone)
	sky := p.Sky(sun, now)
	day := p.Day(weather.Date.Of(e))
	sunSteps(s, sun)
	skySteps(s, sky)
	weather.DaySteps(s, day)
	strength := clearSteps(s, sky.Elevation)

	calc.Gives(s, "elevation", "Elevation of the sun", sky.Elevation, unit.Arc).First()
	calc.Gives(s, "azimuth", "Direction of the sun, clockwise from true north", sky.Azimuth, unit.Arc)
	edge(calc.Gives(s, "rise", "Sunrise", day.Rise.Clock, weather.TimePair).First(), day.Rise)
	edge(calc.Gives(s, "set", "Sunset", day.Set.Clock, weather.TimePair).First(), day.Set)
	calc.Gives(s, "clear_sky", "Clear sky on a level surface, at the most", strength, irradiance)
	cautions(s, p, day)
	s.Drawing = drawing(p, e, sky, day)
}

// edge has a sunrise or sunset that does not come read as words.
func edge(a *calc.Answer, of weather.Edge) {
	switch of.Stay {
	case weather.StaysUp:
		a.Says(words.Say("The sun stays up"))
	case weather.StaysDown:
		a.Says(words.Say("The sun stays down"))
	}
}

func cautions(s *calc.Sheet, p weather.Place, day weather.Day) {
	switch {
	case day.Set.Stay == weather.StaysUp || day.Rise.Stay == weather.StaysUp:
		s.Warn(calc.Care, source.Sunrise, "So near the pole at this season the sun does not set. Where a time of day is asked for, half a turn from noon is taken.")
	case day.Set.Stay == weather.StaysDown || day.Rise.Stay == weather.StaysDown:
		s.Warn(calc.Care, source.Sunrise, "So near the pole at this season the sun does not rise. Where a time of day is asked for, noon is taken.")
	}
	if weather.Astray(p) {
		weather.WarnAstray(s, p)
	}
	s.Warn(calc.Care, source.CommonPractice, "Measure the slab and the pavers in the sun with an infrared or contact thermometer: no sum tells it. A dark paver gets far hotter than the air, and too hot for the mortar on its bag.")
	s.Warn(calc.Note, source.ClearSky, "The strength is an upper bound: a clear sky, nothing in the way. Haze, cloud and shade take from it.")
	s.Warn(calc.Note, source.Sunrise, "Sunrise and sunset are for a level horizon at sea level. Hills, houses and trees bring shade earlier and keep it longer.")
	s.Warn(calc.Care, source.CommonPractice, "Hat, sleeves and sun cream: pale pavers throw the light back from below.")
}
