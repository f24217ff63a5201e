// Package lift answers how heavy a paver one person may lift as entered, and how the
// paver compares, by the revised NIOSH lifting equation.
package lift

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	inchCM = unit.In(unit.Inches, unit.Centimetres)
	often  = unit.Both(unit.EachMinute)
)

var (
	mass = calc.Ask("mass", "m", "Mass of the paver or load", unit.PoundKg, unit.Kilogram/2, 150*unit.Kilogram, "37.7 lb").
		Usually("37.7 lb", "50 lb", "75.4 lb", "17 kg", "34 kg").Helped("A 20 mm paver weighs about 9.6 lb a square foot (47 kg a square metre).")
	reach = calc.Ask("reach", "H", "Reach, ankles to hands", inchCM, 0, 1.2*unit.Metre, "10 in").
		Usually("10 in", "15 in", "20 in").
		Helped("Level, from midway between the ankles to midway between the hands. Not measured: 8 in (20 cm) and half of the load's depth; 10 in (25 cm) and half where the hands are under 10 in high.")
	height = calc.Ask("height", "V", "Height of the hands", inchCM, 0, 2.2*unit.Metre, "30 in").
		Helped("Over the floor, where the load is gripped. Work it again where it is set down: the lower limit governs.")
	travel = calc.Ask("travel", "D", "Up or down by", inchCM, 0, 2.2*unit.Metre, "10 in").Usually("10 in", "20 in", "28 in")
	turn   = calc.Ask("turn", "A", "Turn of the body", unit.Arc, unit.Angle(0), 180, "0 deg").
		Usually("0 deg", "45 deg", "90 deg").Helped("How far the load stands to one side of straight ahead.")
	rate = calc.Ask("rate", "F", "Lifts", often, unit.PerMinute(0), 30, "0.2 /min").
		Usually("0.2 /min", "0.5 /min", "1 /min").Helped("A minute, over a quarter of an hour. Lifting 10 a minute for 8 minutes of each 15 is 5.33.")
	hours = calc.Ask("hours", "t", "Hours of lifting at a stretch", unit.HourSpan, 5*unit.Minute, 8*unit.Hour, "1 h").
		Usually("1 h", "2 h", "8 h").Helped("With too short a rest between two spells, add them.")
	grip = calc.Choose("grip", "Grip", "poor",
		calc.Option{Name: "good", Label: "Good: handles"}, calc.Option{Name: "fair", Label: "Fair: fingers bent under"}, calc.Option{Name: "poor", Label: "Poor: bare paver, gloves, sharp edges"})
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "lift", Stage: calc.Handling, Title: "Lifting a paver",
	Asks:   "How heavy a load may one person lift like this, and how does this paver compare?",
	Inputs: []*calc.Input{mass.Input, reach.Input, height.Input, travel.Input, turn.Input, rate.Input, hours.Input, grip.Input},
	Work:   work,
	Origin: "A load of 23 kg is the most that the equation grants, in the best place and seldom lifted. Each thing that makes a lift worse multiplies it by a share below one, found from measurements of strength, of strain on the spine and of what people judged they could keep up.",
	Memory: []words.Msg{
		"Stack the pallet where the work is, at knuckle height, so that nobody lifts from the ground.",
		"Stand a paver on its edge and walk it against the body. Flat, it is an arm's length away.",
		"Suction lifters for two, or a vacuum lifter: test the seal on a dry, clean face and keep feet from under.",
		"Turn with the feet, not with the back.",
		"One gives the word when two lift. The one at the low end of a slope or step carries most.",
		"Change jobs through the day: setting, cutting, mixing, carrying.",
	},
}

// The constants of the equation's US form. The manual's metric form rounds them: 23 kg, 25 cm, 75 cm, 0.003 a cm, 4.5 cm,
// and gives up to about 4 % less. Source: source.LiftingEquation.
const (
	loadConstant = 51 * unit.Pound
	nearest      = 10 * unit.Inch // a shorter reach or travel counts as this
	farthest     = 25 * unit.Inch
	knuckle      = 30 * unit.Inch
	highest      = 70 * unit.Inch // of the hands, and of the travel
	widest       = unit.Angle(135)
	perInch      = 0.0075
	perDegree    = 0.0032
	seldom       = unit.PerMinute(0.2)
	mostOften    = unit.PerMinute(15)
)

// Horizontal is the multiplier for the reach: 1 up to 10 in, nought past 25 in.
// Source: source.LiftingEquation.
func Horizontal(reach unit.Length) unit.Number {
	if reach > farthest {
		return 0
	}
	return unit.Number(nearest / max(reach, nearest))
}

// Vertical is the multiplier for the height of the hands: 1 at 30 in, nought past 70 in.
// Source: source.LiftingEquation.
func Vertical(height unit.Length) unit.Number {
	if height > highest {
		return 0
	}
	return unit.Number(1 - perInch*math.Abs(float64((height-knuckle)/unit.Inch)))
}

// Distance is the multiplier for the travel up or down: 1 up to 10 in, nought past 70 in.
// Source: source.LiftingEquation.
func Distance(travel unit.Length) unit.Number {
	if travel > highest {
		return 0
	}
	return unit.Number(0.82 + 1.8*unit.Inch/max(travel, nearest))
}

// Asymmetry is the multiplier for the turn of the body, nought past 135°.
// Source: source.LiftingEquation.
func Asymmetry(turn unit.Angle) unit.Number {
	if turn > widest {
		return 0
	}
	return unit.Number(1 - perDegree*turn)
}

// Coupling is the multiplier for the grip. Source: source.LiftingTables.
func Coupling(grip string, height unit.Length) unit.Number {
	switch {
	case grip == "poor":
		return 0.90
	case grip == "fair" && height < knuckle:
		return 0.95
	}
	return 1
}

// Pair is what two people lift together, as a share of the sum of what each lifts alone: two thirds.
// A rule of thumb. Source: source.TeamLift.
func Pair(one, other unit.Mass) unit.Mass { return (one + other) * 2 / 3 }

// Recovery is how long light work must follow a spell of lifting for it to count as short (up to 1 h: as long) or
// moderate (up to 2 h: 0.3 times as long). A longer spell has its usual breaks. Source: source.LiftingRecovery.
func Recovery(worked unit.Span) unit.Span {
	switch {
	case worked <= unit.Hour:
		return worked
	case worked <= 2*unit.Hour:
		return worked * 3 / 10
	}
	return 0
}

// multipliers are the six of one lift.
type multipliers struct{ h, v, d, a, f, c unit.Number }

// limit is the recommended weight limit. Source: source.LiftingEquation.
func (m multipliers) limit() unit.Mass {
	return loadConstant * unit.Mass(m.h*m.v*m.d*m.a*m.f*m.c)
}

func work(e calc.Entry, s *calc.Sheet) {
	v := height.Of(e)
	f := frequency(rate.Of(e), hours.Of(e), v)
	m := multipliers{Horizontal(reach.Of(e)), Vertical(v), Distance(travel.Of(e)), Asymmetry(turn.Of(e)), f.multiplier, Coupling(grip.Of(e), v)}
	limit := m.limit()

	// With a limit of nought there is no index. The figure then is nought too, and is never shown: words stand in for it.
	var index unit.Number
	answer := calc.Gives(s, "limit", "Limit for one person", limit, unit.PoundKg).First()
	if limit > 0 {
		index = unit.Number(mass.Of(e) / limit)
		calc.Gives(s, "index", "Lifting index: load over limit", index, unit.Bare).First()
	} else {
		answer.Says(words.Say("none: not acceptable by this method"))
		calc.Gives(s, "index", "Lifting index: load over limit", index, unit.Bare).First().Says(words.Say("no index: the limit is nought"))
	}
	steps(s, e, m, f, limit)
	cautions(s, e, m, limit, index)
	s.Drawing = drawing(reach.Of(e), v)
}
