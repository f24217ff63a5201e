package drill

import (
	"math"
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/unit"
)

// Significant figures of a number that an exercise gives. A table keeps one more: its pieces must still fit their sheet.
const (
	figures      = 2
	tableFigures = 3
)

var point = calc.Habit{Decimal: '.'}

// text draws what a field of an exercise holds, as in a link.
func (r *random) text(in *calc.Input, example calc.Reading, system unit.System) string {
	switch {
	case in.Each || len(in.Columns) > 0 || in.Reads != nil:
		return fair(in, example, system) // an outline or a list of temperatures changed at random would be no job's
	case len(in.Options) > 0:
		return in.Options[r.below(len(in.Options))].Name
	case in.Kind == unit.KindDate || in.Kind == unit.KindClock:
		return in.Example
	}
	if usual := common(in, system); len(usual) > 0 && r.below(2) == 0 {
		return usual[r.below(len(usual))]
	}
	base := example.Base
	u := in.As.For(system).Unit
	low, high := max(base/2, in.Min), min(base*2, in.Max)
	if in.Kind == unit.KindTemperature || in.Kind == unit.KindAngle || base < 0 {
		low, high = max(base-10, in.Min), min(base+10, in.Max)
	}
	if base == 0 || low >= high {
		return fair(in, example, system)
	}
	for range 20 {
		drawn, text := round(low+(high-low)*r.share(), u, figures)
		if low <= drawn && drawn <= high {
			return text
		}
	}
	return fair(in, example, system)
}

// common lists the values often entered that are in units of the system.
func common(in *calc.Input, system unit.System) (list []string) {
	for _, text := range in.Usual {
		if inSystem(in, text, system) {
			list = append(list, text)
		}
	}
	return list
}

// inSystem reports whether what is written has no unit of the other system: a text, or each cell of a table's.
func inSystem(in *calc.Input, text string, system unit.System) bool {
	columns := in.Columns
	if len(columns) == 0 {
		columns = []*calc.Input{in}
	}
	for _, row := range strings.Split(text, ";") {
		for i, cell := range strings.Split(row, ",") {
			u := unit.Ends(columns[min(i, len(columns)-1)].Kind, cell)
			if u != nil && u.System != unit.Either && u.System != system {
				return false
			}
		}
	}
	return true
}

// fair is an example as an exercise of a system gives it: as it stands where it is in units of that system, else in a
// round number of them.
func fair(in *calc.Input, example calc.Reading, system unit.System) string {
	switch {
	case len(in.Options) > 0 || in.Reads != nil:
		return example.Text
	case len(in.Columns) == 0 && inSystem(in, example.Text, system):
		return example.Text
	case len(in.Columns) == 0:
		if text, ok := converted(in, example.Base, system, figures); ok {
			return text
		}
		return example.Text
	}
	asItStands := example.Text
	if !strings.Contains(asItStands, ", ") { // so that a page can break the line
		asItStands = strings.ReplaceAll(strings.ReplaceAll(asItStands, ",", ", "), ";", "; ")
	}
	if inSystem(in, example.Text, system) {
		return asItStands
	}
	var rows []string
	for _, row := range example.Rows {
		var cells []string
		for i, base := range row {
			text, ok := "", math.IsNaN(base) // a reading that is missing
			if !ok {
				text, ok = converted(in.Columns[min(i, len(in.Columns)-1)], base, system, tableFigures)
			}
			if !ok {
				return asItStands
			}
			cells = append(cells, text)
		}
		rows = append(rows, strings.Join(cells, ", "))
	}
	return strings.Join(rows, "; ")
}

// converted is a value in a round number of the system's unit. It reports false for a metric size that does not come out
// short in the US one: a paver is sold as 20 mm to everybody.
func converted(in *calc.Input, base float64, system unit.System, figures int) (text string, ok bool) {
	if system == unit.US {
		text, _ = in.Offered(in.Written(base, unit.Style{System: unit.Metric}), unit.Style{System: system})
		return text, inSystem(in, text, system)
	}
	// Past a limit it is rounded back: 12 ft at most are 3.6 m, not 3.7 m.
	for _, share := range []float64{1, 0.99, 0.95, 1.01, 1.05} {
		rounded, text := round(base*share, in.As.For(system).Unit, figures)
		if in.Min <= rounded && rounded <= in.Max {
			return text, true
		}
	}
	return "", false
}

// round makes a value one that is read off a tape, a scale or a bag, and writes it. The value is what the text reads as.
func round(base float64, u *unit.Unit, figures int) (rounded float64, text string) {
	n := u.Of(base)
	step := 1.0
	switch a := math.Abs(n); {
	case u == unit.Inches && a < 1:
		step = 1.0 / 16
	case u == unit.Inches && a < 12:
		step = 1.0 / 4
	case u == unit.Millimetres && 0.1 <= a && a < 1:
		step = 1.0 / 10
	case u == unit.Millimetres && 1 <= a && a < 10:
		step = 1.0 / 2
	case u == unit.Millimetres && 10 <= a && a < 100:
	case u == unit.Celsius || u == unit.Fahrenheit || u == unit.Piece || u == unit.Degrees || a == 0:
	default:
		step = math.Pow(10, math.Floor(math.Log10(a))+1-float64(figures))
	}
	// Written out and read again: in a float64, 28 tenths are 2.8000000000000003.
	text = strconv.FormatFloat(math.Round(n/step)*step, 'f', 10, 64) + " " + u.Symbol
	rounded, _ = unit.Read(u.Kind, text, unit.Habit{Decimal: '.', Bare: u})
	return rounded, unit.Style{Decimal: '.'}.Exact(rounded, u)
}
