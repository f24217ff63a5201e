// Package gohold takes the weather once and says of each of seven looks at it, and of
// all together, whether to go on or to hold.
package gohold

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

var (
	air      = weather.AskAir(-46, 55, "70 F")
	humidity = weather.AskHumidity("50 %")
	surface  = weather.AskSurface("72 F")
	wind     = weather.AskWind("4 mph").Helped("As measured on site or forecast. A forecast's wind is higher than the wind at the slab, so drying is then judged on the cautious side.")
	lowest   = calc.Ask("lowest", "T_low", "Lowest air forecast within a day", unit.Warmth, unit.Temperature(-46), 55, "58 F").
			Helped("From the forecast, for the coming 24 hours. Now counts too where it is colder.")
	bagLow = calc.Ask("bag_low", "B_low", "Least temperature on the bag", unit.Warmth, unit.Temperature(-20), 35, "50 F").
		Helped("The narrowest of all products to be used today: primer, mortar, membrane, sealant.").Usually("40 F", "50 F")
	bagHigh = calc.Ask("bag_high", "B_high", "Highest temperature on the bag", unit.Warmth, unit.Temperature(0), 60, "90 F").
		Usually("90 F", "95 F", "100 F")
	rain = calc.Ask("rain", "P", "Hours until rain is forecast", unit.HourSpan, 0, 240*unit.Hour, "240 h").
		Helped("None in the forecast: enter 240 h.").Usually("6 h", "24 h", "48 h", "240 h")
	stage = calc.Ask("stage", "G", "Hours that the work must stay dry", unit.HourSpan, 0, 168*unit.Hour, "24 h").
		Helped("From setting to when the bag allows rain on it; grout, membrane and sealant have their own.").Usually("4 h", "24 h", "48 h")
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "gohold", Stage: calc.Weather, Title: "Go or hold",
	Asks: "Does the weather let the work go on?",
	Inputs: []*calc.Input{air.Input, humidity.Input, surface.Input, wind.Input, lowest.Input, bagLow.Input, bagHigh.Input, rain.Input, stage.Input,
		weather.Latitude.Input, weather.Longitude.Input, weather.Zone.Input, weather.Date.Input, weather.Clock.Input},
	Work:   work,
	Origin: "Each limit of the bag and the weather is compared with what was measured or forecast, and the worst of them decides. It is a list and not a formula: the drawing shows each limit with the place of today's figure.",
	Memory: []words.Msg{
		"Look before each mix, not once a day: slab, sky, wind and crew all move.",
		"One hold is a hold. Good weather on six counts does not mend the seventh.",
		"Have the covers on site before the first bag is opened, and something to weigh them down.",
		"A hold is time for dry work: set out, cut, sort pavers, clean backs.",
		"Write down what you measured and when. It is worth a call-back.",
	},
}

// look is one look at the weather: its verdict, and in words what it rests on.
type look struct {
	key     string
	name    words.Msg
	verdict weather.Verdict
	reason  words.Line
}

func work(e calc.Entry, s *calc.Sheet) {
	if weather.Impossible(s, air.Of(e), humidity.Of(e)) {
		return
	}
	if bagLow.Of(e) >= bagHigh.Of(e) {
		s.Refuse("bag_low", "Least temperature on the bag: read {B_low}, which is not below the highest, {B_high}.")
		return
	}
	looks := []look{dew(e, s), drying(e, s), heat(e, s), chill(e, s), bag(e, s), wet(e, s), light(e, s)}
	// The answer wanted most stands first, but it is known last.
	each := s.Answers
	s.Answers = nil
	worst := together(s, looks)
	s.Answers = append(s.Answers, each...)
	cautions(s)
	s.Drawing = drawing(looks, worst)
}

// tell writes the answer of a look: its verdict and its reason in words, its figure behind them.
func tell[T unit.Quantity](s *calc.Sheet, key string, name words.Msg, figure T, as *unit.Pair, v weather.Verdict, reason words.Line) look {
	calc.Gives(s, key, name, figure, as).Says(words.Say("{verdict}: {reason}", words.Named("verdict", v.Says()), words.Also("reason", reason)))
	return look{key, name, v, reason}
}

// together is the worst of all the verdicts.
func together(s *calc.Sheet, looks []look) weather.Verdict {
	var worst weather.Verdict
	for _, l := range looks {
		calc.Let(s, "v_"+l.key, unit.Count(l.verdict), unit.Whole1)
		worst = max(worst, l.verdict)
	}
	calc.Works(s, "All together: 0 is go, 1 go with care, 2 hold. The worst counts.", "v", unit.Count(worst), unit.Whole1,
		"max(v_dew, max(v_drying, max(v_heat, max(v_chill, max(v_bag, max(v_rain, v_light))))))", source.CommonPractice)
	calc.Gives(s, "go", "All together", unit.Count(worst), unit.Whole1).First().Says(words.Line{Msg: worst.Says()})
	return worst
}

func cautions(s *calc.Sheet) {
	s.Warn(calc.Care, source.CommonPractice, "Measure the slab in the sun and in the shade: no sum tells a sunlit surface, and the two can be far apart.")
	s.Warn(calc.Note, source.EvaporationSpread, "Drying is a warning in three bands, good to about {spread} either way.", words.Is("spread", weather.EvaporationSpread, unit.Share))
	s.Warn(calc.Care, source.HeatInSun, "The heat index is for shade. Full sun can add up to {sun}.", words.Both("sun", weather.HeatSun, weather.RoundWarmer))
	s.Warn(calc.Note, source.OverDewPoint, "Look again about every 4 h, and whenever sun, wind or crew change.")
	s.Warn(calc.Note, source.UsualWindow, "Makers' ranges differ; many lie within 40 to 90 °F (4 to 32 °C). The narrowest bag of the day rules, and the crew may always hold.")
}
