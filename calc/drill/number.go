package drill

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
)

// text draws what a field of an exercise holds, as in a link.
func (r *random) text(in *calc.Input, system unit.System) string {
	switch {
	case in.Each || len(in.Columns) > 0:
		return in.Example // an outline or a list of temperatures changed at random would be no job's
	case len(in.Options) > 0:
		return in.Options[r.below(len(in.Options))].Name
	case in.Kind == unit.KindDate || in.Kind == unit.KindClock:
		return in.Example
	}
	if usual := common(in, system); len(usual) > 0 && r.below(2) == 0 {
		return usual[r.below(len(usual))]
	}
	base, _ := in.Value(in.Example, calc.Habit{Decimal: '.'})
	u := in.As.For(system).Unit
	low, high := max(base/2, in.Min), min(base*2, in.Max)
	if in.Kind == unit.KindTemperature || in.Kind == unit.KindAngle || base < 0 {
		low, high = max(base-10, in.Min), min(base+10, in.Max)
	}
	if base == 0 || low >= high {
		return in.Example
	}
	for range 20 {
		n := round((low+(high-low)*r.share()-u.Zero)/u.Size, u)
		if drawn := n*u.Size + u.Zero; low <= drawn && drawn <= high {
			return unit.Style{System: system}.Exact(drawn, u)
		}
	}
	return in.Example
}

// common lists the values often entered that are in units of the system.
func common(in *calc.Input, system unit.System) (list []string) {
	for _, text := range in.Usual {
		if u := unit.Ends(in.Kind, text); u == nil || u.System == system || u.System == unit.Either {
			list = append(list, text)
		}
	}
	return list
}

// round makes a number one that is read off a tape, a scale or a bag.
func round(n float64, u *unit.Unit) float64 {
	switch {
	case u == unit.Inches && n < 1:
		return math.Round(n*16) / 16
	case u == unit.Inches && n < 12:
		return math.Round(n*4) / 4
	case u == unit.Celsius || u == unit.Fahrenheit || u == unit.Piece || u == unit.Degrees:
		return math.Round(n)
	case n == 0:
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(n)))-1)
	return math.Round(n/step) * step
}
