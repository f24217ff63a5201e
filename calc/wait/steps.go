package wait

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var kelvins = unit.Both(unit.Kelvins)

func steps(s *calc.Sheet, e calc.Entry, factor, mild unit.Number) {
	calc.Let(s, "D", doubling, unit.Warmer)
	s.Step(words.Say("Times the bag's time: twice for each {step} of cold, and never under once, because heat does not shorten a wait.", words.Is("step", doubling, unit.Warmer)),
		calc.Sym("f", factor, unit.Bare), "max(1, pow(2, (T_bag - T) / D))", source.ColdDoubling)
	calc.Works(s, "Wait: the bag's time so many times over.",
		"t", Waited(bagTime.Of(e), factor), unit.HourSpan, "t_bag * f", source.ByDefinition)
	calc.Let(s, "Q", activation, kelvins)
	calc.WorksUS(s, "The same from the rate of a Portland cement, from absolute temperatures.",
		"f_low", mild, unit.Bare, "max(1, exp(Q * (1 / (T + 273.15) - 1 / (T_bag + 273.15))))", "max(1, exp(Q * 1.8 * (1 / (T + 459.67) - 1 / (T_bag + 459.67))))", source.ActivationC1074)
	calc.Works(s, "The low end of the wait.",
		"t_low", Waited(bagTime.Of(e), mild), unit.HourSpan, "t_bag * f_low", source.ByDefinition)
}

func rapidSteps(s *calc.Sheet, e calc.Entry) {
	calc.Works(s, "A rapid-setting binder has no one rate in the cold or the heat: no factor is worked, and the bag's time stands once.",
		"f", unit.Number(1), unit.Bare, "1", source.RapidKinetics)
	calc.Works(s, "Wait: the bag's time.",
		"t", bagTime.Of(e), unit.HourSpan, "t_bag * f", source.ByDefinition)
}

func rapidCautions(s *calc.Sheet, t unit.Span, bag, now unit.Temperature) {
	switch {
	case colder(bag, now):
		s.Warn(calc.Stop, source.RapidMixes, "{temp} is colder than the {bag} of the bag's time. {time} is only a floor here: find the bag's own time for the cold, and enter it with its temperature.",
			temp.Is("temp", now), bagTemp.Is("bag", bag), bagTime.Is("time", t))
	case now > bag+unit.Temperature(testSpread):
		s.Warn(calc.Care, source.RapidKinetics, "Heat may slow a rapid binder as well as speed it: some set slower as they warm towards {warm}. Test with a thumb and a test paver.",
			words.Is("warm", unit.Temperature(30), unit.Warmth))
	}
	s.Warn(calc.Note, source.RapidCSA, "Nothing is worked here for the temperature: what cold and heat do to calcium aluminate, sulfoaluminate and mixed binders is in their recipe, and only the bag knows it.")
}

func cautions(s *calc.Sheet, bag, now unit.Temperature) {
	switch {
	case now < coldest-1e-9:
		s.Warn(calc.Stop, source.SettingWindow, "{temp} is under {cold}, below which setting materials are commonly not to be used. Warm and cover the work, or wait for the weather; the bag may say other limits.",
			temp.Is("temp", now), words.Both("cold", coldest, unit.Warmth))
	case now < cool-1e-9:
		s.Warn(calc.Care, source.BestWindow, "Tile sets best from {cool} upwards, before and for 48 h after. At {temp} cover the work through the night.",
			words.Both("cool", cool, unit.Warmth), temp.Is("temp", now))
	case now > hottest+1e-9:
		s.Warn(calc.Care, source.HeatSkins, "{temp} is hot: mortar skins over and dries before it has hardened. Shade and cover the work. The wait is not shortened.", temp.Is("temp", now))
	case now > bag:
		s.Warn(calc.Note, source.ColdDoubling, "Warmer than the bag's temperature: the wait is not shortened. The doubling rule overstates what heat gains.")
	}
	s.Warn(calc.Care, source.EarlyFrost, "Frost in the first hours can cost half of the strength. If the forecast has frost within the wait, do not lay, or keep the bed warm.")
	s.Warn(calc.Care, source.CommonPractice, "The bag's time is the floor, whatever is worked here. A thick bed, damp, and dense pavers lengthen it further: a bed under porcelain dries at its joints alone.")
	s.Warn(calc.Note, source.ColdDoublingSlower, "Other prints of the trade double for each 20 °F, which waits a little less. The longer rule is taken.")
	s.Warn(calc.Note, source.CommonPractice, "Keep others off: tape, a board and a word. A paver moved before its time is a loose paver, and a fall.")
}
