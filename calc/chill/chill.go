// Package chill answers how cold the wind makes it for the crew.
package chill

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

var (
	air  = weather.AskAir(-46, 30, "45 F")
	wind = weather.AskWind("8 mph").Helped("As a forecast gives it, at 10 m (33 ft).")
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "chill", Stage: calc.Weather, Title: "Wind chill on the crew",
	Asks:   "How cold does this wind make it for people at work?",
	Inputs: []*calc.Input{air.Input, wind.Input},
	Work:   work,
	Origin: "Wind carries the warm air off the skin, and volunteers' faces in a wind tunnel gave the rate. The formula turns that loss into the still air that would cool a face as fast.",
	Memory: []words.Msg{
		"Wet gloves are colder than none. Carry two pairs, and dry one while the other works.",
		"Keep powder, liquid and pavers indoors overnight: a cold bag makes a slow mix.",
		"Blow out hoses and drain pails before the night.",
		"Cover fresh work against the wind as well as against the frost, and leave the cover on in the morning until the air is warm.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	if air.Of(e) > weather.ChillWarmest+1e-9 {
		s.Refuse("air", "Air temperature: read {T}. There is no wind chill over {most}: the index is not made for it.", words.Both("most", weather.ChillWarmest, weather.RoundWarmth))
		return
	}
	c := weather.ChillSteps(s, air.Of(e), wind.Of(e))
	calc.Gives(s, "wind_chill", "Wind chill", c.Index, unit.Warmth).First()
	weather.WarnCold(s, air.Of(e), c.Index)
	if c.Calm {
		s.Warn(calc.Note, source.WindChill, "Under {least} of wind there is no wind chill: what is shown is the air.", words.Both("least", weather.ChillCalmest, weather.RoundWind))
	}
	s.Warn(calc.Note, source.CommonPractice, "Wind chill is for bare skin. It does not make a slab, a bag or a mortar colder than the air; it only gets them there sooner.")
	s.Warn(calc.Note, source.CommonPractice, "Wet clothes, wet cement and kneeling on a cold slab chill faster than the figure says.")
	s.Warn(calc.Note, source.ColdWork, "For the mortar the air counts, not the wind chill: cold weather begins at {cold}, now or expected while the work must be protected. The bag's least comes first.",
		words.Both("cold", weather.ColdAir, weather.RoundWarmth))
	s.Drawing = drawing(e, c.Index)
}

// drawing shows air and wind chill on a scale.
func drawing(e calc.Entry, index unit.Temperature) calc.Drawing {
	is := func(name string, t unit.Temperature) *words.Arg { return words.Is(name, t, weather.BriefWarmth) }
	line := func(name string, t unit.Temperature) *words.Arg { return words.Is(name, t, weather.RoundWarmth) }
	d := calc.Drawing{
		Title: "Air and wind chill",
		Says: words.Say("A thermometer, drawn a degree to a length and filled to the wind chill of {index}. The air is at {air}. At {frostbite} bare skin can freeze in 30 minutes; cement is in cold weather below {cold} and nothing is set at {freezing}.",
			is("index", index), is("air", air.Of(e)), line("frostbite", weather.ChillFrostbite), line("cold", weather.ColdAir), line("freezing", weather.Freezing)),
	}
	g := weather.Gauge{
		Least: float64(unit.Fahrenheit.Base(-25)), Most: float64(weather.ChillWarmest),
		Reading: weather.Mark{At: float64(index), Says: words.Say("wind chill {index}", is("index", index))},
		Marks: []weather.Mark{
			{At: float64(air.Of(e)), Says: words.Say("air {air}", is("air", air.Of(e)))},
			{At: float64(weather.ColdAir), Says: words.Say("cold for cement below {cold}", line("cold", weather.ColdAir))},
			{At: float64(weather.Freezing), Says: words.Say("water freezes at {freezing}", line("freezing", weather.Freezing))},
			{At: float64(weather.ChillFrostbite), Says: words.Say("{frostbite}: skin freezes in 30 min", line("frostbite", weather.ChillFrostbite))},
		},
	}
	g.Draw(&d)
	return d
}
