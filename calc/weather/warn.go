package weather

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Pairs for lines of a rule and for figures in a sentence or a drawing: in few digits, as they are said.
var (
	BriefWarmth = &unit.Pair{US: unit.Form{Unit: unit.Fahrenheit, Digits: 3}, Metric: unit.Form{Unit: unit.Celsius, Digits: 3}}
	BriefWarmer = &unit.Pair{US: unit.Form{Unit: unit.FahrenheitDifference, Digits: 3}, Metric: unit.Form{Unit: unit.CelsiusDifference, Digits: 3}}
	BriefDrying = &unit.Pair{US: unit.Form{Unit: unit.PoundsPerSquareFootHour, Digits: 2}, Metric: unit.Form{Unit: unit.KilogramsPerSquareMetreHour, Digits: 2}}
	BriefHours  = &unit.Pair{US: unit.Form{Unit: unit.Hours, Digits: 3}, Metric: unit.Form{Unit: unit.Hours, Digits: 3}}

	RoundWarmer = &unit.Pair{US: unit.Form{Unit: unit.FahrenheitDifference, Digits: 1}, Metric: unit.Form{Unit: unit.CelsiusDifference, Digits: 1}}
	RoundWarmth = &unit.Pair{US: unit.Form{Unit: unit.Fahrenheit, Digits: 2}, Metric: unit.Form{Unit: unit.Celsius, Digits: 2}}
	Drying      = unit.In(unit.PoundsPerSquareFootHour, unit.KilogramsPerSquareMetreHour)
	RoundDrying = &unit.Pair{US: unit.Form{Unit: unit.PoundsPerSquareFootHour, Digits: 1}, Metric: unit.Form{Unit: unit.KilogramsPerSquareMetreHour, Digits: 2}}
	RoundWind   = &unit.Pair{US: unit.Form{Unit: unit.MilesPerHour, Digits: 1}, Metric: unit.Form{Unit: unit.KilometresPerHour, Digits: 2}}
	RoundShare  = &unit.Pair{US: unit.Form{Unit: unit.PerCent, Digits: 2}, Metric: unit.Form{Unit: unit.PerCent, Digits: 2}}
)

// WarnDew gives the verdict on dew with its reason.
func WarnDew(s *calc.Sheet, margin unit.Difference) Verdict {
	v := JudgeDew(margin)
	least := words.Both("least", DewLeast, RoundWarmer)
	over := words.Is("margin", margin, BriefWarmer)
	switch {
	case margin <= 0:
		s.Warn(calc.Stop, source.OverDewPoint, "Dew: the surface is no warmer than the dew point, so water is settling on it, seen or not. Do not prime, seal or bond until it stands {least} over it and is rising.", least)
	case v == Hold:
		s.Warn(calc.Stop, source.OverDewPoint, "Dew: the surface is only {margin} over the dew point. Do not prime, seal or bond under {least}.", over, least)
	case v == WithCare:
		s.Warn(calc.Care, source.CommonPractice, "Dew: {margin} over the dew point is near the line of {least}. Go only while the surface is getting warmer, and measure before each mix.", over, least)
	}
	return v
}

// WarnDrying gives the verdict on drying with its reason.
func WarnDrying(s *calc.Sheet, rate unit.Evaporation) Verdict {
	v := JudgeDrying(rate)
	is := words.Is("rate", rate, BriefDrying)
	switch {
	case rate >= DryingCracks*(1-slack):
		s.Warn(calc.Stop, source.EvaporationBands, "Drying: about {rate} leaves a fresh surface. From {cracks} cracks are almost certain, and combed mortar is dead before the paver is down. Wait for a cooler, calmer hour.",
			is, words.Both("cracks", DryingCracks, RoundDrying))
	case v == Hold:
		s.Warn(calc.Stop, source.EvaporationLine, "Drying: about {rate} leaves a fresh surface. From {hold} even concrete must be protected. Hold until shade, a wind break or a cooler hour brings it down.",
			is, words.Both("hold", DryingHold, RoundDrying))
	case v == WithCare:
		s.Warn(calc.Care, source.EvaporationLatex, "Drying: about {rate} leaves a fresh surface. From {care} a mix that hardly bleeds can skin over. Comb less ahead, keep shade on it, and touch the ridges before each paver: dry fingers mean scrape it off.",
			is, words.Both("care", DryingCare, RoundDrying))
	}
	return v
}

// WarnHeat gives the verdict on heat with its reason.
func WarnHeat(s *calc.Sheet, index unit.Temperature) Verdict {
	v := JudgeHeat(index)
	is := words.Is("index", index, BriefWarmth)
	switch {
	case index >= HeatExtreme-slack:
		s.Warn(calc.Stop, source.HeatBands, "Heat: a heat index of {index} is in the top band, very high to extreme. Put off what is not essential to a cooler day or hour.", is)
	case v == Hold:
		s.Warn(calc.Stop, source.HeatBands, "Heat: a heat index of {index} is in the high band. Move the work to a cooler hour; what cannot be moved needs short turns, shade, and someone who watches the crew.", is)
	case v == WithCare:
		s.Warn(calc.Care, source.HeatBands, "Heat: a heat index of {index} is in the moderate band. Drink about 4 cups an hour in small amounts, rest often in the shade, and watch each other.", is)
	}
	return v
}

// WarnCold gives the verdict on cold with its reason. Coldest is the coldest air now or within a day.
func WarnCold(s *calc.Sheet, coldest, chill unit.Temperature) Verdict {
	v := JudgeCold(coldest, chill)
	air := words.Is("coldest", coldest, BriefWarmth)
	felt := words.Is("chill", chill, BriefWarmth)
	switch {
	case coldest <= Freezing+slack:
		s.Warn(calc.Stop, source.NoSettingInFrost, "Cold: the air is, or within a day will be, at {coldest}. Nothing is set where frost is near.", air)
		s.Warn(calc.Note, source.FrozenEarly, "Fresh cement that freezes in its first hours can lose up to half of its strength.")
	case coldest < ColdAir-slack:
		s.Warn(calc.Care, source.FreezeAhead, "Cold: the air is, or within a day will be, at {coldest}, which is cold weather for cement (below {cold}). Cover the work and keep it at {keep} or more, and read the bag for its least.",
			air, words.Both("cold", ColdAir, RoundWarmth), words.Both("keep", unit.Temperature(unit.Fahrenheit.Base(50)), RoundWarmth))
	}
	switch {
	case chill <= ChillFrostbite+slack:
		s.Warn(calc.Stop, source.Frostbite, "Cold: at a wind chill of {chill} bare skin can freeze in 30 minutes or less.", felt)
	case chill <= Freezing+slack:
		s.Warn(calc.Care, source.CommonPractice, "Cold: at a wind chill of {chill} wet hands go numb and a grip fails before it is noticed. Keep dry gloves to change into and somewhere warm to go.", felt)
	}
	return v
}

// WarnAstray tells that zone and longitude do not fit.
func WarnAstray(s *calc.Sheet, p Place) {
	s.Warn(calc.Care, source.ByDefinition, "The clock is {off} away from the sun's own time at this longitude. Check the zone, and the sign of the longitude: west is negative.",
		words.Is("off", max(p.Strayed(), -p.Strayed()), BriefHours))
}

// Impossible refuses air that is warmer and wetter than weather gets, and reports whether it did.
func Impossible(s *calc.Sheet, air unit.Temperature, humidity unit.Ratio) bool {
	if Possible(air, humidity) {
		return false
	}
	s.Refuse("humidity", "Humidity: read {humidity} at {air}. That much water in the air is not weather: its dew point would be {dew}, and about {most} is the highest ever met. Read both again.",
		words.Is("humidity", humidity, unit.Share), words.Is("air", air, unit.Warmth),
		words.Is("dew", DewPoint(air, humidity), BriefWarmth), words.Is("most", wettest, RoundWarmth))
	return true
}
