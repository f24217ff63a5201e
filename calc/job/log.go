package job

import (
	"strings"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The quantities of the log and of the weather, with the limits within which they are taken. The forms of the page are made of them.
var (
	Air      = calc.Ask("air", "", "Air temperature", unit.Warmth, unit.Temperature(-46), 60, "70 F")
	Humidity = calc.Ask("humidity", "", "Relative humidity", unit.Share, unit.Percent, 1, "50 %")
	Surface  = calc.Ask("surface", "", "Surface temperature", unit.Warmth, unit.Temperature(-46), 95, "72 F")
	Wind     = calc.Ask("wind", "", "Wind", unit.Wind, 0, unit.Speed(45), "4 mph")
	Powder   = calc.Ask("amount", "", "Powder mixed", unit.PoundKg, unit.Gram, 10_000*unit.Kilogram, "25 kg")
	Contact  = calc.Ask("contact", "", "Contact found", unit.Share, unit.Ratio(0), 1, "96 %")
)

// mostBags is the most that one line of the log takes.
const mostBags = 1000

// Taken reads what was typed into a field of the log by somebody of that habit, and gives the text to keep, which reads the same
// for everybody. Nothing typed is nothing kept.
func Taken(in *calc.Input, text string, h calc.Habit) (string, *calc.Problem) {
	if text = strings.TrimSpace(text); text == "" {
		return "", nil
	}
	r, l := reading(in, text, h)
	if l.Msg != "" {
		return "", &calc.Problem{Key: in.Key, Says: l}
	}
	return in.Plain(r, h.System), nil
}

// TakenAmount is Taken for the amount of a mix: a mass ("25 kg") or bags ("2 bags", "1/2 bag"). Own are the reader's words for one bag and
// for more; what is kept says it in English, which every reader of the record knows.
func TakenAmount(text string, h calc.Habit, own [2]string) (string, *calc.Problem) {
	if count, ok := bags(text, h.Decimal, own); ok {
		text := unit.Style{Decimal: '.'}.Exact(count, unit.One) + " bag"
		if count != 1 {
			text += "s"
		}
		return text, nil
	}
	return Taken(Powder.Input, text, h)
}

func reading(in *calc.Input, text string, h calc.Habit) (calc.Reading, words.Line) {
	e, problems := (&calc.Calculator{Inputs: []*calc.Input{in}}).Read(calc.Texts{in.Key: text}, h)
	if len(problems) > 0 {
		return calc.Reading{}, problems[0].Says
	}
	return e.Reading(in.Key), words.Line{}
}

// Mass is the mass of a mix, where it was weighed.
func (m *Mix) Mass() (unit.Mass, bool) {
	base, ok := Powder.Value(m.Amount, calc.Habit{})
	return unit.Mass(base), ok
}

// Bags is the number of bags of a mix, where they were counted.
func (m *Mix) Bags() (unit.Number, bool) {
	count, ok := bags(m.Amount, '.', english)
	return unit.Number(count), ok
}

// english are the words for bags that stand in a record, and that every reader may write.
var english = [2]string{"bag", "bags"}

// bags reads "2 bags", and "2 sacos" where these are the reader's own words.
func bags(text string, decimal byte, own [2]string) (count float64, ok bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	for _, word := range [...]string{own[1], own[0], english[1], english[0]} {
		number, ok := strings.CutSuffix(text, word)
		if word == "" || !ok {
			continue
		}
		count, fault := unit.Read(unit.KindNumber, number, unit.Habit{Decimal: decimal, Bare: unit.One})
		return count, fault == nil && 0 < count && count <= mostBags
	}
	return 0, false
}
