package drill

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Tolerance is how far from the key an answer may be, of the key's own size: rounding on the way costs so much. A count
// must be exact.
const Tolerance = 0.01

// Verdict is what is said to an answer.
type Verdict struct {
	Right bool
	Read  bool       // the answer could be read at all
	Says  words.Line // what went wrong, where it can be told; or how to write it
	Step  int        // the step of the key to look at, counted from nought; -1 where none can be told
}

// Judge reads an answer, as typed by somebody of that habit, and compares it with the key.
func (x *Exercise) Judge(text string, h calc.Habit) Verdict {
	form := x.Asked.Is.As.For(x.System)
	base, fault := unit.Read(x.Asked.Is.Kind, text, unit.Habit{Decimal: h.Decimal, Bare: form.Unit})
	if fault != nil {
		return Verdict{Step: -1, Says: words.Say("“{read}” cannot be read as an answer here. Write a number with its unit, as in {example}.",
			words.Text("read", calc.Cut(text)), words.Text("example", unit.Style{System: x.System, Decimal: '.'}.Print(unit.Figure{Kind: x.Asked.Is.Kind, Base: form.Unit.Size * 12.5, As: x.Asked.Is.As})))}
	}
	if x.near(base, x.Asked.Is.Base) {
		return Verdict{Right: true, Read: true, Step: -1, Says: words.Say("Right.")}
	}
	v := Verdict{Read: true, Step: x.last()}
	for _, find := range []func(float64) (words.Line, int, bool){x.stopped, x.left, x.doubled, x.slipped} {
		if says, step, ok := find(base); ok {
			v.Says, v.Step = says, step
			return v
		}
	}
	v.Says = words.Say("Not yet. Go through the steps of the key and find the first one where your figure differs.")
	v.Step = -1
	return v
}

// near reports whether a figure is the other within the tolerance, or as near as the page prints it.
func (x *Exercise) near(got, want float64) bool {
	if x.Asked.Is.Kind == unit.KindCount {
		return got == want
	}
	_, half := unit.Style{System: x.System, Decimal: '.'}.Number(want, x.Asked.Is.As.For(x.System))
	off := Tolerance * math.Abs(want)
	if x.Asked.Is.Kind == unit.KindTemperature {
		off = 0.3 // of a degree: its nought is no size
	}
	return math.Abs(got-want) <= max(off, 1.01*half*x.Asked.Is.As.For(x.System).Unit.Size)
}

// last is the step that gives the figure asked for.
func (x *Exercise) last() int {
	for i := len(x.Sheet.Steps) - 1; i >= 0; i-- {
		if g := x.Sheet.Steps[i].Gives.Is; g.Kind == x.Asked.Is.Kind && g.Base == x.Asked.Is.Base {
			return i
		}
	}
	return -1
}

// stopped finds an answer that is a result on the way to the one asked for.
func (x *Exercise) stopped(got float64) (words.Line, int, bool) {
	for i := range x.Sheet.Steps {
		st := &x.Sheet.Steps[i]
		if st.Gives.Is.Kind == x.Asked.Is.Kind && i != x.last() && x.near(got, st.Gives.Is.Base) {
			if x.Asked.Is.Kind == unit.KindCount {
				return words.Say("That is a step on the way. A part of one is a whole one to buy."), x.last(), true
			}
			return words.Say("That is the result of this step. Go on from there."), i, true
		}
	}
	if x.Asked.Is.Kind == unit.KindCount && got == math.Floor(x.Asked.Is.Base)-1 {
		return words.Say("Rounded down: a part of one is a whole one to buy."), x.last(), true
	}
	return words.Line{}, 0, false
}

// left finds an input that was forgotten: the answer is right without it.
func (x *Exercise) left(got float64) (words.Line, int, bool) {
	for _, in := range x.Calculator.Inputs {
		r := x.Entry.Reading(in.Key)
		if len(in.Options) > 0 || len(in.Columns) > 0 || r.Base == 0 || in.Min > 0 || in.Max < 0 {
			continue
		}
		if base, ok := x.with(in, 0); ok && x.near(got, base) && !x.near(base, x.Asked.Is.Base) {
			return words.Say("That is what comes out without “{field}”.", words.Named("field", in.Label)), x.using(in), true
		}
	}
	return words.Line{}, 0, false
}

// doubled finds a length taken twice or by half, as a radius for a diameter is.
func (x *Exercise) doubled(got float64) (words.Line, int, bool) {
	for _, in := range x.Calculator.Inputs {
		if in.Kind != unit.KindLength || len(in.Options) > 0 || len(in.Columns) > 0 {
			continue
		}
		for _, factor := range []float64{2, 0.5} {
			base, ok := x.with(in, factor*x.Entry.Reading(in.Key).Base)
			switch {
			case !ok || !x.near(got, base) || x.near(base, x.Asked.Is.Base):
			case factor == 2:
				return words.Say("That is what comes out when “{field}” is taken twice: as a diameter where a radius belongs, perhaps.", words.Named("field", in.Label)), x.using(in), true
			default:
				return words.Say("That is what comes out with half of “{field}”: a radius where a diameter belongs, perhaps.", words.Named("field", in.Label)), x.using(in), true
			}
		}
	}
	return words.Line{}, 0, false
}

// with works the exercise with another value in one input.
func (x *Exercise) with(in *calc.Input, base float64) (float64, bool) {
	s, ok := x.worked(in, in.Written(base, unit.Style{System: x.System}))
	if !ok {
		return 0, false
	}
	a, ok := s.Answer(x.Asked.Key)
	return a.Is.Base, ok
}

// using is the first step whose expression has the symbol of an input.
func (x *Exercise) using(in *calc.Input) int {
	for i := range x.Sheet.Steps {
		for _, t := range x.Sheet.Steps[i].Terms {
			if t.Symbol == in.Symbol && in.Symbol != "" {
				return i
			}
		}
	}
	return -1
}

// slip is a factor by which an answer is off when one unit is taken for another.
type slip struct {
	factor float64
	says   words.Msg
}

// slips are the commonest, by the kind of what is asked for. Each holds both ways.
var slips = []slip{
	{100, "It is a hundred times off: per cent for a plain ratio, or centimetres for metres."},
	{12, "It is twelve times off: inches and feet."},
	{144, "It is 144 times off: square inches and square feet."},
	{1728, "It is 1,728 times off: cubic inches and cubic feet."},
	{27, "It is 27 times off: cubic feet and cubic yards."},
	{25.4, "It is 25.4 times off: millimetres and inches."},
	{10, "It is ten times off: millimetres and centimetres, or a slip of the decimal mark."},
	{1000, "It is a thousand times off: grams and kilograms, or millimetres and metres."},
	{1 / 0.3048, "It is 3.28 times off: feet and metres."},
	{1 / 0.09290304, "It is 10.76 times off: square feet and square metres."},
	{1 / 0.028316846592, "It is 35.3 times off: cubic feet and cubic metres."},
	{1 / 0.45359237, "It is 2.205 times off: pounds and kilograms."},
	{3.785411784, "It is 3.785 times off: litres and gallons."},
	{7.48051948, "It is 7.48 times off: gallons and cubic feet."},
	{60, "It is sixty times off: minutes and hours, or seconds and minutes."},
	{24, "It is 24 times off: hours and days."},
	{1.8, "It is 1.8 times off: degrees Fahrenheit and Celsius."},
}

// slipped finds a unit that was taken for another.
func (x *Exercise) slipped(got float64) (words.Line, int, bool) {
	if x.Asked.Is.Kind == unit.KindTemperature {
		// The other scale's number under this scale's sign.
		n := x.Asked.Is.Base
		if x.near(got, n*1.8+32) || x.near(got*1.8+32, n) {
			return words.Say("Degrees of the other scale: Fahrenheit and Celsius."), x.last(), true
		}
		return words.Line{}, 0, false
	}
	for _, s := range slips {
		if x.near(got, x.Asked.Is.Base*s.factor) || x.near(got, x.Asked.Is.Base/s.factor) {
			return words.Line{Msg: s.says}, x.last(), true
		}
	}
	if x.near(got, -x.Asked.Is.Base) {
		return words.Say("The size is right and the sign is not: which is taken from which?"), x.last(), true
	}
	return words.Line{}, 0, false
}
