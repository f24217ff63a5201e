package ripen

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// shown is how many spells the working writes out. The rest are one term.
const shown = 4

func steps(s *calc.Sheet, e calc.Entry, spells []spell, all sum) {
	var ages, degrees []calc.Term
	for i, sp := range spells[:min(len(spells), shown)] {
		n := strconv.Itoa(i + 1)
		number := words.Is("row", unit.Count(i+1), unit.Whole1)

		age, degree := calc.Sym("e_"+n, sp.age, unit.HourSpan), calc.Sym("m_"+n, sp.degree, degreeHours)
		calc.Let(s, "h_"+n, sp.long, unit.HourSpan)
		calc.Let(s, "T_"+n, sp.at, unit.Warmth)
		s.StepUS(words.Say("Row {row}: its hours, as hours at the reference temperature.", number),
			calc.Sym("e_"+n, sp.age, unit.HourSpan), "h_"+n+" * exp(Q * (1 / (T_r + 273.15) - 1 / (T_"+n+" + 273.15)))", "h_"+n+" * exp(Q * 1.8 * (1 / (T_r + 459.67) - 1 / (T_"+n+" + 459.67)))", source.EquivalentAge)
		s.Step(words.Say("Row {row}: its degree-hours over the datum, never under nought.", number),
			calc.Sym("m_"+n, sp.degree, degreeHours), "h_"+n+" * max(T_"+n+" - T_0, 0)", source.NurseSaul)
		ages, degrees = append(ages, age), append(degrees, degree)
	}
	says, saysDegrees := words.Say("Equivalent age: all rows together."), words.Say("Degree-hours: all rows together.")
	if more := len(spells) - shown; more > 0 {
		rest := total(spells[shown:])
		ages, degrees = append(ages, calc.Sym("e_rest", rest.age, unit.HourSpan)), append(degrees, calc.Sym("m_rest", rest.degree, degreeHours))
		left := words.Is("more", unit.Count(more), unit.Whole1)
		says = words.Say("Equivalent age: all rows together. The other {more} are worked as these were, and are one term.", left)
		saysDegrees = words.Say("Degree-hours: all rows together. The other {more} are worked as these were, and are one term.", left)
	}
	s.Step(says, calc.Sym("t_e", all.age, unit.HourSpan), plus(ages), source.EquivalentAge, ages...)
	s.Step(saysDegrees, calc.Sym("M", all.degree, degreeHours), plus(degrees), source.NurseSaul, degrees...)
}

// plus is the sum of terms, as an expression.
func plus(terms []calc.Term) string {
	var symbols []string
	for _, t := range terms {
		symbols = append(symbols, t.Symbol)
	}
	return strings.Join(symbols, " + ")
}

func cautions(s *calc.Sheet, spells []spell) {
	frozen, hot := 0, false
	for i, sp := range spells {
		if sp.at <= freezing && frozen == 0 {
			frozen = i + 1
		}
		hot = hot || sp.at > warmest
	}
	if frozen > 0 {
		s.Warn(calc.Stop, source.EarlyFrost, "Row {row} is at or below {freezing}. A mix that froze young has lost strength that no later warmth gives back: look at it and test it before anybody goes on.",
			words.Is("row", unit.Count(frozen), unit.Whole1), words.Both("freezing", freezing, unit.Warmth))
	}
	if hot {
		s.Warn(calc.Care, source.ActivationC1074, "Above {warmest} these constants are not for it, and a bed may have dried instead of ripening.", words.Both("warmest", warmest, unit.Warmth))
	}
	s.Warn(calc.Care, source.RapidKinetics, "For Portland cement only. Rapid-setting mortars can behave otherwise, and some even slow down as they warm towards {warm}: for those follow the time on the bag.",
		words.Is("warm", unit.Temperature(30), unit.Warmth))
	s.Warn(calc.Care, source.ActivationSpread, "A rough guide: the sum is made for concrete, and published activation energies contradict each other. Never go on sooner than the bag says.")
	s.Warn(calc.Note, source.ActivationFits, "Datum temperatures do not agree either: 0, −10, −11 and −11.7 °C are all in use. A lower one makes cold look less harmful.")
	s.Warn(calc.Note, source.CommonPractice, "It counts nothing of damp, wind and sun. A bed that dried out has stopped ripening.")
}
