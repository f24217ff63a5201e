package weather

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Minutes is a pair for the equation of time.
var Minutes = &unit.Pair{US: unit.Form{Unit: unit.Minutes, Digits: 8}, Metric: unit.Form{Unit: unit.Minutes, Digits: 8}}

// DaySteps writes the working of sunrise and sunset. Of the inputs it takes the place and the zone.
func DaySteps(s *calc.Sheet, d Day) {
	edgeStep(s, d.Rise, "Hour angle of sunrise, with the sun's declination at that time: its upper edge shows on a level horizon.",
		"acos((cos(90.833) - sin(φ) * sin(δ_e)) / (cos(φ) * cos(δ_e)))")
	clockStep(s, d.Rise, "Sunrise on the clock, in seconds from midnight: noon, less the longitude and the equation of time, and the hour angle before it.",
		"c_rise", "43200 - 240 * λ - 60 * E_e + 3600 * z - 240 * H_e", "43200 - 240 * λ - 60 * E_e + 3600 * z - 240 * H_e + 86400 * k")
	edgeStep(s, d.Set, "Hour angle of sunset, with the sun's declination at that time.",
		"acos((cos(90.833) - sin(φ) * sin(δ_e)) / (cos(φ) * cos(δ_e)))")
	clockStep(s, d.Set, "Sunset on the clock, in seconds from midnight: the same, with the hour angle after noon.",
		"c_set", "43200 - 240 * λ - 60 * E_e + 3600 * z + 240 * H_e", "43200 - 240 * λ - 60 * E_e + 3600 * z + 240 * H_e + 86400 * k")
}

// edgeStep writes the hour angle of a rise or a set.
func edgeStep(s *calc.Sheet, e Edge, says words.Msg, expr string) {
	calc.Let(s, "δ_e", e.Sun.Declination, FineArc)
	switch e.Stay {
	case StaysUp:
		says, expr = "The sun does not reach the horizon: it stays up, half a turn either way.", "180"
	case StaysDown:
		says, expr = "The sun does not reach the horizon: it stays down, even at noon.", "0"
	}
	calc.Works(s, says, "H_e", e.Half, FineArc, expr, source.Sunrise)
}

// clockStep writes the time of a rise or a set; k is whole days, where clock and place are far apart.
func clockStep(s *calc.Sheet, e Edge, says words.Msg, symbol, expr, wrapped string) {
	calc.Let(s, "E_e", e.Sun.Equation, Minutes)
	if e.Days != 0 {
		calc.Let(s, "k", e.Days, unit.Whole1)
		expr = wrapped
	}
	calc.Works(s, says, symbol, e.Clock, TimePair, expr, source.Sunrise)
}
