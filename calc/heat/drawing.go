package heat

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// drawing shows the index on the bands.
func drawing(e calc.Entry, index, inSun unit.Temperature) calc.Drawing {
	is := func(name string, t unit.Temperature) *words.Arg { return words.Is(name, t, weather.BriefWarmth) }
	line := func(name string, t unit.Temperature) *words.Arg { return words.Is(name, t, weather.RoundWarmth) }
	d := calc.Drawing{
		Title: "The heat index on its bands",
		Says: words.Say("A thermometer, drawn a degree to a length and filled to the heat index of {index}. In full sun it can be {sun}. From {moderate} the band is moderate, from {high} high, from {extreme} very high to extreme.",
			is("index", index), is("sun", inSun), line("moderate", weather.HeatModerate), line("high", weather.HeatHigh), line("extreme", weather.HeatExtreme)),
	}
	g := weather.Gauge{
		Least: float64(unit.Fahrenheit.Base(70)), Most: float64(unit.Fahrenheit.Base(125)),
		Reading: weather.Mark{At: float64(index), Says: words.Say("heat index {index}", is("index", index))},
		Marks: []weather.Mark{
			{At: float64(inSun), Says: words.Say("in full sun up to {sun}", is("sun", inSun))},
			{At: float64(air.Of(e)), Says: words.Say("air {air}", is("air", air.Of(e)))},
			{At: float64(weather.HeatModerate), Says: words.Say("moderate from {moderate}: with care", line("moderate", weather.HeatModerate))},
			{At: float64(weather.HeatHigh), Says: words.Say("high from {high}: hold", line("high", weather.HeatHigh))},
			{At: float64(weather.HeatExtreme), Says: words.Say("extreme from {extreme}: hold", line("extreme", weather.HeatExtreme))},
		},
	}
	g.Draw(&d)
	return d
}
