package drying

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// drawing shows the rate on its bands.
func drawing(rate, least, most unit.Evaporation) calc.Drawing {
	is := words.Is("rate", rate, weather.BriefDrying)
	d := calc.Drawing{
		Title: "The drying on its three bands",
		Says: words.Say("An upright scale of evaporation, drawn a rate to a length and filled to {rate}; it can be from {least} to {most}. From {care} go with care, from {hold} hold.",
			is, words.Is("least", least, weather.BriefDrying), words.Is("most", most, weather.BriefDrying),
			words.Is("care", weather.DryingCare, weather.RoundDrying), words.Is("hold", weather.DryingHold, weather.RoundDrying)),
	}
	g := weather.Gauge{
		Least: 0, Most: 1.5 * float64(weather.DryingHold),
		Reading: weather.Mark{At: float64(rate), Says: words.Say("now {rate}", is)},
		Marks: []weather.Mark{
			{At: float64(most), Says: words.Say("can be up to {most}", words.Is("most", most, weather.BriefDrying))},
			{At: float64(weather.DryingCare), Says: words.Say("with care from {care}", words.Is("care", weather.DryingCare, weather.RoundDrying))},
			{At: float64(weather.DryingHold), Says: words.Say("hold from {hold}", words.Is("hold", weather.DryingHold, weather.RoundDrying))},
		},
	}
	g.Draw(&d)
	return d
}
