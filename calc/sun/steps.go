package sun

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// Pairs with the digits that a sum over 36,525 days needs.
var (
	fine       = &unit.Pair{US: unit.Form{Unit: unit.One, Digits: 9}, Metric: unit.Form{Unit: unit.One, Digits: 9}}
	brief      = &unit.Pair{US: unit.Form{Unit: unit.Degrees, Digits: 3}, Metric: unit.Form{Unit: unit.Degrees, Digits: 3}}
	irradiance = unit.Both(unit.WattsPerSquareMetre)
)

// sunSteps writes the working of where the sun stands, seen from the centre of the earth.
func sunSteps(s *calc.Sheet, sun weather.Sun) {
	calc.Works(s, "Days since noon of 1 January 2000, universal time. Here d counts days from 1 January 1970 and c seconds from midnight.",
		"D", sun.Days, fine, "d - 10957.5 + (c - 3600 * z) / 86400", source.SunPosition)
	calc.Works(s, "The same in centuries.", "t", sun.Century, fine, "D / 36525", source.SunPosition)
	calc.Let(s, "k", sun.Turns, unit.Whole1)
	calc.Works(s, "Mean longitude of the sun, less k whole turns.", "L", sun.Longitude, weather.FineArc, "280.46646 + 36000.76983 * t + 0.0003032 * t * t - 360 * k", source.SunPosition)
	calc.Let(s, "k", sun.AnomalyTurns, unit.Whole1)
	calc.Works(s, "Mean anomaly, less k whole turns.", "M", sun.Anomaly, weather.FineArc, "357.52911 + 35999.05029 * t - 0.0001537 * t * t - 360 * k", source.SunPosition)
	calc.Works(s, "Eccentricity of the earth's path.", "e", sun.Eccentricity, fine, "0.016708634 - t * (0.000042037 + 0.0000001267 * t)", source.SunPosition)
	calc.Works(s, "Equation of the centre: how far the sun runs ahead of its mean.", "C", sun.Centre, weather.FineArc,
		"sin(M) * (1.914602 - t * (0.004817 + 0.000014 * t)) + sin(2 * M) * (0.019993 - 0.000101 * t) + sin(3 * M) * 0.000289", source.SunPosition)
	calc.Works(s, "Apparent longitude.", "Λ", sun.Apparent, weather.FineArc, "L + C - 0.00569 - 0.00478 * sin(125.04 - 1934.136 * t)", source.SunPosition)
	calc.Works(s, "Tilt of the earth's axis.", "ε", sun.Obliquity, weather.FineArc,
		"23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - t * 0.001813))) / 60) / 60 + 0.00256 * cos(125.04 - 1934.136 * t)", source.SunPosition)
	calc.Works(s, "Declination: how far north of the equator the sun stands.", "δ", sun.Declination, weather.FineArc, "asin(sin(ε) * sin(Λ))", source.SunPosition)
	calc.Works(s, "Square of the tangent of half the tilt.", "y", sun.Half(), fine, "pow(tan(ε / 2), 2)", source.SunPosition)
	calc.Works(s, "Equation of time, in minutes: how far a sundial runs ahead of the clock.", "E", sun.Equation, weather.Minutes,
		"720 / pi * (y * sin(2 * L) - 2 * e * sin(M) + 4 * e * y * sin(M) * cos(2 * L) - 0.5 * y * y * sin(4 * L) - 1.25 * e * e * sin(2 * M))", source.SunPosition)
}

// skySteps writes the working of where it stands over the place.
func skySteps(s *calc.Sheet, sky weather.Sky) {
	hour := "c / 240 + E / 4 - 15 * z + λ - 180"
	if sky.Turns != 0 {
		calc.Let(s, "k", sky.Turns, unit.Whole1)
		hour = "c / 240 + E / 4 - 15 * z + λ - 180 + 360 * k"
	}
	calc.Works(s, "Hour angle: how far west of south or north the sun has turned since it stood highest.", "H", sky.HourAngle, weather.FineArc, hour, source.SunPosition)
	calc.Works(s, "Of a line of length 1 to the sun, the part that goes up.", "s_up", sky.Up, fine, "sin(φ) * sin(δ) + cos(φ) * cos(δ) * cos(H)", source.SunPosition)
	calc.Works(s, "The part that goes north.", "s_north", sky.North, fine, "cos(φ) * sin(δ) - sin(φ) * cos(δ) * cos(H)", source.SunPosition)
	calc.Works(s, "The part that goes east.", "s_east", sky.East, fine, "-cos(δ) * sin(H)", source.SunPosition)
	calc.Works(s, "Elevation if there were no air.", "h_0", sky.Geometric, weather.FineArc, "atan(s_up / sqrt(s_north * s_north + s_east * s_east))", source.SunPosition)
	says, expr := refraction(sky.Geometric)
	calc.Works(s, says, "r", sky.Refraction, weather.FineArc, expr, source.SunPosition)
	calc.Works(s, "Elevation as it is seen.", "h", sky.Elevation, unit.Arc, "h_0 + r", source.SunPosition)
	calc.Works(s, "Direction, clockwise from true north, in the quarter that the two parts lie in.", "A", sky.Azimuth, unit.Arc, azimuth(sky), source.SunPosition)
}

// refraction is the form of the refraction that was taken.
func refraction(h unit.Angle) (says words.Msg, expr string) {
	switch weather.RefractionBand(h) {
	case weather.RefractionNone:
		return "Air lifts it by nothing over 85°.", "0"
	case weather.RefractionHigh:
		return "Air lifts it: the form for over 5°.", "(58.1 / tan(h_0) - 0.07 / pow(tan(h_0), 3) + 0.000086 / pow(tan(h_0), 5)) / 3600"
	case weather.RefractionLow:
		return "Air lifts it: the form for near the horizon.", "(1735 + h_0 * (-518.2 + h_0 * (103.4 + h_0 * (-12.79 + h_0 * 0.711)))) / 3600"
	}
	return "Air lifts it: the form for under the horizon.", "-20.774 / tan(h_0) / 3600"
}

// azimuth is the direction as an arc tangent that no quarter makes divide by nought.
func azimuth(sky weather.Sky) string {
	north, east := sky.North, sky.East
	switch {
	case north == 0 && east == 0:
		return "0"
	case north >= max(east, -east) && east >= 0:
		return "atan(s_east / s_north)"
	case north >= max(east, -east):
		return "360 + atan(s_east / s_north)"
	case -north >= max(east, -east):
		return "180 + atan(s_east / s_north)"
	case east > 0:
		return "90 - atan(s_north / s_east)"
	}
	return "270 - atan(s_north / s_east)"
}

// clearSteps writes the working of the clear sky.
func clearSteps(s *calc.Sheet, elevation unit.Angle) unit.Irradiance {
	most := weather.ClearSky(elevation)
	if elevation.Sin() <= 0 {
		calc.Works(s, "The sun is down and gives nothing.", "G", most, irradiance, "0", source.ClearSky)
		return most
	}
	calc.Works(s, "What a clear sky lets through onto a level surface.", "G", most, irradiance, "1098 * sin(h) * exp(-0.059 / sin(h))", source.ClearSky)
	return most
}
