package lift

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func steps(s *calc.Sheet, e calc.Entry, m multipliers, f lookup, limit unit.Mass) {
	h, v, d := calc.Sym("HM", m.h, unit.Bare), calc.Sym("VM", m.v, unit.Bare), calc.Sym("DM", m.d, unit.Bare)
	a, often := calc.Sym("AM", m.a, unit.Bare), calc.Sym("FM", m.f, unit.Bare)

	if m.h == 0 {
		nought(s, "Reach: past {most} the multiplier is nought.", h, words.Both("most", farthest, inchCM))
	} else {
		calc.Let(s, "H_0", nearest, inchCM)
		s.Step(words.Say("Reach: nearer than {least} counts as {least}.", words.Both("least", nearest, inchCM)),
			calc.Sym("HM", m.h, unit.Bare), "H_0 / max(H, H_0)", source.LiftingEquation)
	}
	if m.v == 0 {
		nought(s, "Height of the hands: past {most} the multiplier is nought.", v, words.Both("most", highest, inchCM))
	} else {
		calc.Let(s, "V_0", knuckle, inchCM)
		s.StepUS(words.Say("Height of the hands: best at {best}.", words.Both("best", knuckle, inchCM)),
			calc.Sym("VM", m.v, unit.Bare), "1 - 0.0075 * abs(V - V_0) / 2.54", "1 - 0.0075 * abs(V - V_0)", source.LiftingEquation)
	}
	if m.d == 0 {
		nought(s, "Travel: past {most} the multiplier is nought.", d, words.Both("most", highest, inchCM))
	} else {
		calc.Let(s, "D_0", nearest, inchCM)
		s.StepUS(words.Say("Travel: less than {least} counts as {least}.", words.Both("least", nearest, inchCM)),
			calc.Sym("DM", m.d, unit.Bare), "0.82 + 1.8 * 2.54 / max(D, D_0)", "0.82 + 1.8 / max(D, D_0)", source.LiftingEquation)
	}
	if m.a == 0 {
		nought(s, "Turn: past {most} the multiplier is nought.", a, words.Is("most", widest, unit.Arc))
	} else {
		calc.Works(s, "Turn of the body.",
			"AM", m.a, unit.Bare, "1 - 0.0032 * A", source.LiftingEquation)
	}
	frequencyStep(s, e, f, often)
	calc.Let(s, "C_table", m.c, unit.Bare)
	calc.Works(s, "Grip: from the table, for the grip and the height of the hands.",
		"CM", m.c, unit.Bare, "C_table", source.LiftingTables)
	calc.Let(s, "LC", loadConstant, unit.PoundKg)
	calc.Let(s, "FM", m.f, unit.Bare)
	calc.Works(s, "Limit: the load constant cut by every multiplier.",
		"R", limit, unit.PoundKg, "LC * HM * VM * DM * AM * FM * CM", source.LiftingEquation)
	if limit > 0 {
		calc.Works(s, "Lifting index: the load over its limit.",
			"LI", unit.Number(mass.Of(e)/limit), unit.Bare, "m / R", source.LiftingIndex)
		calc.Works(s, "Two people, by rule of thumb: two thirds of the sum of both limits, taking the other's to be the same.",
			"R_two", Pair(limit, limit), unit.PoundKg, "(R + R) * 2 / 3", source.TeamLift)
	}
	if worked := hours.Of(e); worked <= unit.Hour {
		calc.Works(s, "Light work to follow before lifting again: as long as was lifted.",
			"t_rest", Recovery(worked), unit.HourSpan, "t", source.LiftingRecovery)
	} else if worked <= 2*unit.Hour {
		calc.Works(s, "Light work to follow before lifting again: 0.3 times as long as was lifted.",
			"t_rest", Recovery(worked), unit.HourSpan, "0.3 * t", source.LiftingRecovery)
	}
}

// nought writes a step whose multiplier has been cut to nought.
func nought(s *calc.Sheet, says words.Msg, gives calc.Term, most *words.Arg) {
	s.Step(words.Say(says, most),
		gives, "0", source.LiftingEquation)
}

func frequencyStep(s *calc.Sheet, e calc.Entry, f lookup, gives calc.Term) {
	switch {
	case rate.Of(e) > mostOften:
		s.Step(words.Say("Lifts: past {most} the multiplier is nought.", words.Is("most", mostOften, often)),
			gives, "0", source.LiftingTables)
	case f.below == f.above:
		calc.Let(s, "F_table", f.multiplier, unit.Bare)
		s.Step(words.Say("Lifts: from the table, for {rate} over {hours}; fewer than {least} count as that.", words.Is("rate", f.below, often), hours.Is("hours", hours.Of(e)), words.Is("least", seldom, often)),
			gives, "F_table", source.LiftingTables)
	default:
		calc.Let(s, "f_1", f.below, often)
		calc.Let(s, "F_1", f.at, unit.Bare)
		calc.Let(s, "f_2", f.above, often)
		calc.Let(s, "F_2", f.next, unit.Bare)
		s.Step(words.Say("Lifts: straight between two rows of the table, over {hours}.", hours.Is("hours", hours.Of(e))),
			gives, "F_1 + (F_2 - F_1) * (F - f_1) / (f_2 - f_1)", source.LiftingTables)
	}
}
