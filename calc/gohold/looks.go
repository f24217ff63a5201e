package gohold

import (
	"math"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// The lines of this page's own looks. All are common practice.
var (
	bagSpare = unit.Difference(unit.FahrenheitDifference.Base(5)) // nearer to a limit than this asks for care: a slab moves that much in an hour
	workday  = 8 * unit.Hour                                      // the last paver of a day is set so much later than now
	dusk     = 2 * unit.Hour                                      // the least daylight for setting, cleaning and covering
)

const slack = 1e-9

// mild is where the source's rule leaves the regression: a heat index below it says nothing.
var mild = unit.Temperature(unit.Fahrenheit.Base(80))

func dew(e calc.Entry, s *calc.Sheet) look {
	_, margin := weather.DewSteps(s, air.Of(e), humidity.Of(e), surface.Of(e))
	v := weather.WarnDew(s, margin)
	reason := words.Say("{margin} over the dew point", words.Is("margin", margin, weather.BriefWarmer))
	if margin < 0 {
		reason = words.Say("{under} under the dew point", words.Is("under", -margin, weather.BriefWarmer))
	}
	return tell(s, "dew", "Dew", margin, unit.Warmer, v, reason)
}

func drying(e calc.Entry, s *calc.Sheet) look {
	rate := weather.DryingSteps(s, air.Of(e), humidity.Of(e), surface.Of(e), wind.Of(e))
	v := weather.WarnDrying(s, rate)
	return tell(s, "drying", "Drying", rate, weather.Drying, v, words.Say("about {rate}", words.Is("rate", rate, weather.BriefDrying)))
}

func heat(e calc.Entry, s *calc.Sheet) look {
	index := weather.HeatSteps(s, air.Of(e), humidity.Of(e))
	v := weather.WarnHeat(s, index)
	reason := words.Say("heat index {index}", words.Is("index", index, weather.BriefWarmth))
	if index < mild {
		reason = words.Say("no heat to speak of")
	}
	return tell(s, "heat", "Heat", index, unit.Warmth, v, reason)
}

func chill(e calc.Entry, s *calc.Sheet) look {
	c := weather.ChillSteps(s, air.Of(e), wind.Of(e))
	coldest := min(air.Of(e), lowest.Of(e))
	calc.Works(s, "The coldest air that the work will meet within a day.", "T_cold", coldest, unit.Warmth, "min(T, T_low)", source.FreezeAhead)
	v := weather.WarnCold(s, coldest, c.Index)
	low := words.Is("coldest", coldest, weather.BriefWarmth)
	reason := words.Say("air down to {coldest}", low)
	if c.Defined() {
		reason = words.Say("feels {chill}; air down to {coldest}", words.Is("chill", c.Index, weather.BriefWarmth), low)
	}
	return tell(s, "chill", "Cold", c.Index, unit.Warmth, v, reason)
}

// JudgeBag judges a surface by a bag's limits: on a limit is within it. Air that is outside them now, or
// will be within a day, asks for care.
func JudgeBag(surface, air, coldest, low, high unit.Temperature) weather.Verdict {
	spare := min(surface-low, high-surface)
	switch {
	case spare < -slack:
		return weather.Hold
	case float64(spare) < float64(bagSpare)-slack || coldest < low-slack || air > high+slack:
		return weather.WithCare
	}
	return weather.Go
}

func bag(e calc.Entry, s *calc.Sheet) look {
	at, low, high := surface.Of(e), bagLow.Of(e), bagHigh.Of(e)
	coldest := min(air.Of(e), lowest.Of(e))
	v := JudgeBag(at, air.Of(e), coldest, low, high)
	spare := unit.Difference(min(at-low, high-at))
	calc.Works(s, "How far the surface is inside the bag's limits: to the nearer of the two, below nought outside.", "N", spare, unit.Warmer,
		"min(T_s - B_low, B_high - T_s)", source.CommonPractice)
	switch {
	case v == weather.Hold && at < low:
		s.Warn(calc.Stop, source.CommonPractice, "Bag: the surface at {T_s} is colder than the bag allows, {B_low}. Warm the slab or wait.")
	case v == weather.Hold:
		s.Warn(calc.Stop, source.CommonPractice, "Bag: the surface at {T_s} is hotter than the bag allows, {B_high}. Shade it and let it cool, or come back in the evening.")
	default:
		bagCare(s, spare, air.Of(e), coldest, low, high)
	}
	reason := words.Say("{spare} inside its limits", words.Is("spare", spare, weather.BriefWarmer))
	if spare < 0 {
		reason = words.Say("{out} outside its limits", words.Is("out", -spare, weather.BriefWarmer))
	}
	return tell(s, "bag", "Bag", spare, unit.Warmer, v, reason)
}

// bagCare gives each reason for care.
func bagCare(s *calc.Sheet, spare unit.Difference, air, coldest, low, high unit.Temperature) {
	if float64(spare) < float64(bagSpare)-slack {
		s.Warn(calc.Care, source.CommonPractice, "Bag: the surface at {T_s} is only {N} inside the bag's limits, {B_low} to {B_high}. Measure before each mix.")
	}
	if coldest < low-slack {
		s.Warn(calc.Care, source.CommonPractice, "Bag: the air is, or within a day will be, at {T_cold}, under the bag's {B_low}. Cover the work and keep it warm for as long as the bag asks.")
	}
	if air > high+slack {
		s.Warn(calc.Care, source.CommonPractice, "Bag: the air at {T} is over the bag's {B_high}. Shade the slab, and keep powder, liquid and pavers cool.")
	}
}

// JudgeRain judges the hours until rain by those that the work must stay dry. On the hour is dry, but rain now never is.
func JudgeRain(rain, stage unit.Span) weather.Verdict {
	switch {
	case rain <= 0 || rain < stage-slack:
		return weather.Hold
	case rain-stage < workday-slack:
		return weather.WithCare
	}
	return weather.Go
}

func wet(e calc.Entry, s *calc.Sheet) look {
	spare := rain.Of(e) - stage.Of(e)
	v := JudgeRain(rain.Of(e), stage.Of(e))
	calc.Works(s, "Dry hours to spare: until the rain, less those that the work needs.", "N_dry", spare, unit.HourSpan, "P - G", source.CommonPractice)
	switch {
	case rain.Of(e) <= 0:
		s.Warn(calc.Stop, source.CommonPractice, "Rain: it is raining, or about to. Cover what is down and hold.")
	case v == weather.Hold:
		s.Warn(calc.Stop, source.CommonPractice, "Rain is forecast in {P}, but the work must stay dry for {G}. Hold, or put a roof over it that stays.")
	case v == weather.WithCare:
		s.Warn(calc.Care, source.CommonPractice, "Rain is forecast in {P}, and the work must stay dry for {G}. What is set within {N_dry} from now still gets its hours, what is set later does not. Have covers at hand.")
	}
	reason := words.Say("{spare} dry to spare", words.Is("spare", spare, weather.BriefHours))
	if spare < 0 {
		reason = words.Say("{short} too soon", words.Is("short", -spare, weather.BriefHours))
	}
	return tell(s, "rain", "Rain", spare, unit.HourSpan, v, reason)
}

// JudgeLight judges the daylight that is left.
func JudgeLight(left unit.Span) weather.Verdict {
	switch {
	case left <= 0:
		return weather.Hold
	case left < dusk-slack:
		return weather.WithCare
	}
	return weather.Go
}

func light(e calc.Entry, s *calc.Sheet) look {
	p, now := weather.PlaceOf(e), weather.Clock.Of(e)
	day := p.Day(weather.Date.Of(e))
	weather.DaySteps(s, day)
	left := day.Left(now)
	leftStep(s, day, now, left)
	v := JudgeLight(left)
	switch {
	case v == weather.Hold && day.Set.Stay == weather.StaysDown:
		s.Warn(calc.Stop, source.Sunrise, "Light: the sun does not rise today. Hold, unless the work is lit so that lips, joints and haze can be seen.")
	case v == weather.Hold:
		s.Warn(calc.Stop, source.Sunrise, "Light: the sun is down at {c}. It rises at {c_rise} and sets at {c_set}. Hold, unless the work is lit so that lips, joints and haze can be seen.")
	case v == weather.WithCare:
		s.Warn(calc.Care, source.CommonPractice, "Light: {left} of daylight is left, to {c_set}. Mix only what can be set, cleaned and covered by then.",
			words.Is("left", left, weather.BriefHours))
	}
	if weather.Astray(p) {
		weather.WarnAstray(s, p)
		v = max(v, weather.WithCare)
	}
	return tell(s, "light", "Daylight", left, unit.HourSpan, v, words.Say("{left} of daylight left", words.Is("left", left, weather.BriefHours)))
}

// leftStep writes the working of the daylight left.
func leftStep(s *calc.Sheet, day weather.Day, now unit.Clock, left unit.Span) {
	says, expr := words.Msg("Daylight left: from now to sunset."), "(c_set - c) / 3600"
	switch {
	case left == 0:
		says, expr = "There is no daylight now.", "0"
	case day.Set.Stay == weather.StaysUp:
		says, expr = "The sun does not set: a whole day of light.", "24"
	default:
		if days := math.Round(float64(left-unit.Span(day.Set.Clock-now)) / float64(unit.Day)); days != 0 {
			calc.Let(s, "k", unit.Count(days), unit.Whole1)
			says, expr = "Daylight left: from now to sunset, k midnights on.", "(c_set - c) / 3600 + 24 * k"
		}
	}
	calc.Works(s, says, "N_light", left, unit.HourSpan, expr, source.ByDefinition)
}
