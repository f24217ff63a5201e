// Package wait answers how long to keep off, from the time on the bag and the cold
// on the job.
package wait

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	bagTime = calc.Ask("bag_time", "t_bag", "Time on the bag for this stage", unit.HourSpan, 5*unit.Minute, 60*unit.Day, "24 h").
		Usually("90 min", "3 h", "4 h", "24 h").
		Helped("Each stage has its own: feet, grout, wheels, a membrane before it is covered. The keys are trade figures; the bag in hand says.")
	bagTemp = calc.Ask("bag_temp", "T_bag", "Temperature that the bag's time is for", unit.Warmth, unit.Temperature(5), 40, "70 F").
		Usually("70 F", "73 F", "23 C").Helped("Beside the time on the bag. Mortars are tested at about 70 to 77 °F (21 to 25 °C).")
	temp = calc.Ask("temp", "T", "Coldest of air, slab and pavers while you wait", unit.Warmth, unit.Temperature(-20), 60, "50 F").
		Helped("Through the whole wait, the night with it.")
	binder = calc.Choose("binder", "Binder", "portland",
		calc.Option{Name: "rapid", Label: "Rapid-setting"}, calc.Option{Name: "portland", Label: "Portland cement, ordinary set"}).
		Helped("If the bag does not tell, take rapid where it promises feet within a few hours.")
)

const (
	doubling   = unit.Difference(10) // 18 °F: source.ColdDoubling
	activation = unit.Difference(5000)
	kelvin     = 273.15
	testSpread = unit.Difference(2) // either way of the test temperature: source.TestClimate
	freezing   = unit.Temperature(0)
	coldest    = unit.Temperature(40.0-32) * 5 / 9 // 40 °F: source.SettingWindow
	cool       = unit.Temperature(50.0-32) * 5 / 9 // 50 °F: source.BestWindow
	hottest    = unit.Temperature(90.0-32) * 5 / 9 // 90 °F: source.SettingWindow
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "wait", Stage: calc.Waiting, Title: "How long to wait",
	Asks:   "How long must this stage wait, in the cold that it meets?",
	Inputs: []*calc.Input{binder.Input, bagTime.Input, bagTemp.Input, temp.Input},
	Work:   work,
	Origin: "Hardening is a reaction, and near room temperature its speed falls to about half for each 10 °C down, which the factor carries from the bag's temperature to today's. It is used one way only: the cold makes the wait longer and the heat never makes it shorter, because the bag has the last word.",
	Memory: []words.Msg{
		"Feet, grout and wheels are three waits, each with its own time on the bag. Start one countdown for each.",
		"Figures of the trade for rapid mortars: on foot after 3 to 4 h, heavy traffic after 24 h. A membrane may be ready in 90 minutes. Other bags say otherwise.",
		"Kneeling boards spread the weight where somebody must go on early.",
		"A full load on wheels comes last. A trolley of pavers is a wheel load.",
		"Shade a new bed from hot sun and cover it against rain and frost, without touching it.",
		"Set a test paver beside the job at the same hour: what it does tells more than the sum.",
	},
}

// Doubled is how many times the bag's time to wait in the cold: twice as long for each 10 K (18 °F)
// below the bag's temperature, and never under once. From 20 °C down to freezing it says 4 times,
// where Arrhenius says 3.5: it errs long, by less the milder the cold.
// Source: source.ColdDoubling.
func Doubled(bag, now unit.Temperature) unit.Number {
	return unit.Number(max(1, math.Exp2(float64(bag-now)/float64(doubling))))
}

// Arrhenius is the same from the rate of a Portland cement: Q = 5,000 K, and never under once.
// Source: source.EquivalentAge for the form, source.ActivationC1074 (from memory) for Q.
func Arrhenius(bag, now unit.Temperature) unit.Number {
	return unit.Number(max(1, math.Exp(float64(activation)*(1/(kelvin+float64(now))-1/(kelvin+float64(bag))))))
}

// Waited is the bag's time so many times over.
func Waited(bag unit.Span, factor unit.Number) unit.Span { return bag * unit.Span(factor) }

func work(e calc.Entry, s *calc.Sheet) {
	t, bag, now := bagTime.Of(e), bagTemp.Of(e), temp.Of(e)
	if now < freezing {
		s.Refuse("temp", "Coldest while you wait: read {temp}. A bed that freezes gains nothing and may be lost, so no time can be given. Keep it above {freezing}, or do not lay.",
			temp.Is("temp", now), words.Both("freezing", freezing, unit.Warmth))
		return
	}
	if binder.Of(e) == "rapid" {
		rapid(s, e, t, bag, now)
	} else {
		portland(s, e, t, bag, now)
	}
	cautions(s, bag, now)
}

// portland lengthens the bag's time by the trade's rule, and gives the milder sum as the low end.
func portland(s *calc.Sheet, e calc.Entry, t unit.Span, bag, now unit.Temperature) {
	factor, mild := Doubled(bag, now), Arrhenius(bag, now)
	time := Waited(t, factor)
	from := words.Say("High: the trade's doubling for each {step}. Low: the rate of a Portland cement with Q = {q}. Take the high.",
		words.Is("step", doubling, unit.Warmer), words.Is("q", activation, unit.Both(unit.Kelvins)))
	calc.Gives(s, "time", "Wait at least", time, unit.HourSpan).Between(float64(Waited(t, mild)), float64(time), from).First().Wait()
	calc.Gives(s, "factor", "Times the bag's time", factor, unit.Bare).Between(float64(mild), float64(factor), from).First()
	steps(s, e, factor, mild)
	s.Drawing = drawing(t, time, bag, now, false)
}

// rapid gives the bag's time and works no factor. In the cold that is only a floor, so no countdown is offered for it:
// the bag's own time for the cold is to be entered, with its temperature.
func rapid(s *calc.Sheet, e calc.Entry, t unit.Span, bag, now unit.Temperature) {
	time := calc.Gives(s, "time", "Wait at least", t, unit.HourSpan).First()
	if colder(bag, now) {
		time.Says(words.Say("more than {time}: ask the bag", bagTime.Is("time", t)))
	} else {
		time.Wait()
	}
	calc.Gives(s, "factor", "Times the bag's time", unit.Number(1), unit.Bare)
	rapidSteps(s, e)
	rapidCautions(s, t, bag, now)
	s.Drawing = drawing(t, t, bag, now, colder(bag, now))
}

// colder reports whether it is colder than the tests that a bag's time comes from may have been.
func colder(bag, now unit.Temperature) bool { return now < bag-unit.Temperature(testSpread) }
