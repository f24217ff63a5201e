package dew

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// drawing shows the surface on a thermometer, with the dew point and the line that it must be over.
func drawing(e calc.Entry, point unit.Temperature) calc.Drawing {
	least := point + unit.Temperature(weather.DewLeast)
	is := func(name string, t unit.Temperature) *words.Arg { return words.Is(name, t, weather.BriefWarmth) }
	d := calc.Drawing{
		Title: "The surface against the dew point",
		Says: words.Say("A thermometer, drawn a degree to a length. It is filled to the surface at {surface}. The dew point is at {dew}, the line to hold under at {least}, and the air at {air}.",
			is("surface", surface.Of(e)), is("dew", point), is("least", least), is("air", air.Of(e))),
	}
	g := weather.Gauge{
		Least: float64(point) - 5, Most: float64(least) + 10,
		Reading: weather.Mark{At: float64(surface.Of(e)), Says: words.Say("surface {surface}", is("surface", surface.Of(e)))},
		Marks: []weather.Mark{
			{At: float64(point), Says: words.Say("dew point {dew}", is("dew", point))},
			{At: float64(least), Says: words.Say("hold under {least}", is("least", least))},
			{At: float64(air.Of(e)), Says: words.Say("air {air}", is("air", air.Of(e)))},
		},
	}
	g.Draw(&d)
	return d
}
