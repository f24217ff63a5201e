// Package ripen answers how far a Portland mix has ripened through the temperatures
// it met: its equivalent age and its degree-hours.
package ripen

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	hours  = calc.Ask("hours", "", "Hours", unit.HourSpan, unit.Minute, 60*unit.Day, "12 h")
	degree = calc.Ask("temperature", "", "Temperature", unit.Warmth, unit.Temperature(-20), 60, "5 C")
	temps  = calc.Tabulate("temps", "Hours, and the temperature of the bed through them", "12 h,5 C;6 h,15 C;12 h,7 C", hours.Input, degree.Input).
		Helped("One row a spell, in order: how long, how warm. A spell's mean temperature will do where it was steady.")
	reference = calc.Ask("reference", "T_r", "Reference temperature", unit.Warmth, unit.Temperature(5), 40, "20 C").
			Usually("20 C", "23 C", "70 F").Helped("The temperature that the bag's times are for.")
	activation = calc.Ask("q", "Q", "Activation energy over the gas constant", kelvins, unit.Difference(1000), 8000, "5000 K").
			Usually("4000 K", "5000 K").Helped("5,000 K is common for ordinary Portland cement, 4,000 K is in EN 1992. The lower says less of cold and of heat.")
	datum = calc.Ask("datum", "T_0", "Datum temperature for degree-hours", unit.Warmth, unit.Temperature(-15), 10, "0 C").
		Usually("0 C", "-10 C", "-11 C").Helped("Below it nothing counts. 0 °C is the cautious one in the cold.")
)

var (
	kelvins     = unit.Both(unit.Kelvins)
	degreeHours = unit.In(unit.FahrenheitHours, unit.CelsiusHours)
)

const (
	absolute = 273.15
	freezing = unit.Temperature(0)
	warmest  = unit.Temperature(40) // of the common range for these constants: source.ActivationC1074
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "ripen", Stage: calc.Waiting, Title: "How far it has ripened",
	Asks:   "How many hours at the bag's temperature are these hours worth to a Portland mix?",
	Inputs: []*calc.Input{temps.Input, reference.Input, activation.Input, datum.Input},
	Work:   work,
	Origin: "The sum of time by the speed of hardening at each temperature is the age that would have hardened as much at the reference. Arrhenius' law gives that speed; the degree-hours of the older rule take it to rise in a straight line from a datum.",
	Memory: []words.Msg{
		"Measure the bed, not the air: a probe in a joint, or a thermometer laid on the slab under a board.",
		"The night counts. Read the lowest, and when it began and ended.",
		"Compare the equivalent age with the bag's time, and wait for whichever comes later.",
		"A rapid-setting mortar does not ripen by this sum: its bag alone tells.",
		"A mix that froze before it set has not ripened, whatever the sum says.",
	},
}

// Factor is how fast a Portland mix ripens at a temperature, against the reference: Arrhenius, q being the
// activation energy over the gas constant, in kelvins. Published energies contradict each other.
// Source: source.EquivalentAge.
func Factor(at, reference unit.Temperature, q unit.Difference) unit.Number {
	return unit.Number(math.Exp(float64(q) * (1/(absolute+float64(reference)) - 1/(absolute+float64(at)))))
}

// DegreeHours is what a spell counts above the datum, and never below nought.
// Source: source.NurseSaul.
func DegreeHours(long unit.Span, at, datum unit.Temperature) unit.DegreeTime {
	return unit.DegreeTime(float64(long) * max(float64(at-datum), 0))
}

// spell is one row, and what it counts.
type spell struct {
	long   unit.Span
	at     unit.Temperature
	age    unit.Span
	degree unit.DegreeTime
}

// sum is what several spells come to.
type sum struct {
	long, age unit.Span
	degree    unit.DegreeTime
}

func work(e calc.Entry, s *calc.Sheet) {
	var spells []spell
	for _, row := range temps.Of(e) {
		sp := spell{long: hours.At(row, 0), at: degree.At(row, 1)}
		sp.age = sp.long * unit.Span(Factor(sp.at, reference.Of(e), activation.Of(e)))
		sp.degree = DegreeHours(sp.long, sp.at, datum.Of(e))
		spells = append(spells, sp)
	}
	all := total(spells)
	calc.Gives(s, "equivalent_age", "Equivalent age", all.age, unit.HourSpan).First()
	calc.Gives(s, "degree_hours", "Degree-hours", all.degree, degreeHours).First()
	steps(s, e, spells, all)
	cautions(s, spells)
	s.Drawing = drawing(spells, all, reference.Of(e))
}

func total(spells []spell) sum {
	var all sum
	for _, sp := range spells {
		all.long, all.age, all.degree = all.long+sp.long, all.age+sp.age, all.degree+sp.degree
	}
	return all
}
