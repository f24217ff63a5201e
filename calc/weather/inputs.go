package weather

import (
	"setbook/calc"
	"setbook/calc/unit"
)

// Pairs of the place and the time.
var (
	FineArc  = &unit.Pair{US: unit.Form{Unit: unit.Degrees, Digits: 8}, Metric: unit.Form{Unit: unit.Degrees, Digits: 8}}
	DatePair = unit.Both(unit.CalendarDay)
	TimePair = unit.Both(unit.TimeOfDay)
)

// AskAir asks for the air temperature.
func AskAir(low, high unit.Temperature, example string) calc.In[unit.Temperature] {
	return calc.Ask("air", "T", "Air temperature", unit.Warmth, low, high, example).
		Helped("In the shade, at about chest height, out of the wind.")
}

// AskHumidity asks for the relative humidity.
func AskHumidity(example string) calc.In[unit.Ratio] {
	return calc.Ask("humidity", "R", "Relative humidity", unit.Share, unit.Percent, 1, example).
		Helped("From a meter in the shade beside the work, or the nearest weather station.")
}

// AskSurface asks for the temperature of the slab.
func AskSurface(example string) calc.In[unit.Temperature] {
	return calc.Ask("surface", "T_s", "Surface temperature", unit.Warmth, unit.Temperature(-30), 80, example).
		Helped("Measure it on the slab with a contact or infrared thermometer, the coldest spot and the hottest. The air does not tell it.")
}

// AskWind asks for the wind.
func AskWind(example string) calc.In[unit.Speed] {
	return calc.Ask("wind", "V", "Wind", unit.Wind, 0, unit.Speed(45), example)
}

// The place and the time.
var (
	Latitude = calc.Ask("latitude", "φ", "Latitude", FineArc, unit.Angle(-90), 90, "40 deg").
			Helped("North of the equator is positive, south negative.")
	Longitude = calc.Ask("longitude", "λ", "Longitude", FineArc, unit.Angle(-180), 180, "-105 deg").
			Helped("East of Greenwich is positive, west negative: all of the Americas are negative.")
	Zone = calc.Ask("zone", "z", "Clock against universal time", unit.HourSpan, -12*unit.Hour, 14*unit.Hour, "-6 h").
		Helped("Hours ahead of UTC, summer time included; negative west of it.")
	Date = calc.Ask("date", "d", "Date", DatePair, unit.DayNumber(1990, 1, 1), unit.DayNumber(2099, 12, 31), "2026-06-21").
		Helped("Year, month, day.")
	Clock = calc.Ask("clock", "c", "Time of day", TimePair, unit.Clock(0), 86_399, "08:00")
)

// PlaceOf is the place that an entry holds.
func PlaceOf(e calc.Entry) Place { return Place{Latitude.Of(e), Longitude.Of(e), Zone.Of(e)} }
