package levels

import (
	"math"

	"setbook/calc"
	"setbook/calc/surface"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// profile draws the slab under the worst 10 ft straightedge, turned so that the straightedge lies level, its heights drawn larger.
func (v *survey) profile(s *calc.Sheet) {
	gap := v.gaps[underTen]
	if gap.Depth <= 0 {
		return
	}
	g := v.grid
	steps := max(abs(gap.To.Col-gap.From.Col), abs(gap.To.Row-gap.From.Row))
	goCol, goRow := (gap.To.Col-gap.From.Col)/steps, (gap.To.Row-gap.From.Row)/steps
	z0 := g.At(gap.From)
	rise := (g.At(gap.To) - z0) / float64(steps)
	each := gap.Span / float64(steps)
	height := func(k int) (h float64, ok bool) { // over the straightedge, k steps from where it rests first
		p := surface.Place{Col: gap.From.Col + k*goCol, Row: gap.From.Row + k*goRow}
		if p.Col < 0 || p.Row < 0 || p.Col >= g.Wide || p.Row >= g.Deep || math.IsNaN(g.At(p)) {
			return 0, false
		}
		return g.At(p) - z0 - rise*float64(k), true
	}
	from, to := 0, steps // as far past its supports as it reaches, and as nothing lifts it off them
	grow := func(k int) bool {
		h, ok := height(k)
		return ok && h <= hair*gap.Span && float64(to-from+1)*each <= float64(tenFeet)*(1+hair)
	}
	for grow(from - 1) {
		from--
	}
	for grow(to + 1) {
		to++
	}
	var at, under []float64
	lowest := 0.0
	for k := from; k <= to; k++ {
		if h, ok := height(k); ok {
			at, under = append(at, float64(k)*each), append(under, h)
			lowest = math.Min(lowest, h)
		}
	}
	first, last := at[0], at[len(at)-1]
	long := last - first
	times := nice(0.5 * 0.12 * long / -lowest)

	d := s.Draw("The slab under the worst gap")
	d.Says = words.Say("Along the thick line of the drawing above, turned so that the straightedge lies level. Heights are drawn {times} times as large as lengths. The gap is {gap}, under a straightedge of {long} that rests on two readings {span} apart.",
		words.Is("times", unit.Number(times), unit.Bare), words.Is("gap", unit.Length(gap.Depth), unit.InchMM), words.Is("long", tenFeet, unit.FootMetre), words.Is("span", unit.Length(gap.Span), unit.FootMetre))
	var slab []calc.Point
	for i, x := range at {
		slab = append(slab, spot(x, -times*under[i]))
	}
	bottom := -times*lowest + 0.08*long
	d.Area(calc.Concrete, append(slab, spot(last, bottom), spot(first, bottom))...)
	d.Box(calc.Steel, unit.Length(first), 0, unit.Length(long), unit.Length(0.025*long))
	x := float64(v.apart(gap.From, gap.At))
	d.Line(calc.Strong, spot(x, times*gap.Depth), spot(x, 0))
	d.Note(spot(x, bottom+0.05*long), calc.Middle, words.Say("gap {gap}", words.Is("gap", unit.Length(gap.Depth), short)))
	d.Dim(spot(0, -0.025*long), spot(gap.Span, -0.025*long), 1, unit.Fig(unit.Length(gap.Span), unit.FootMetre))
}

// short shows a gap to as many digits as a feeler gauge does.
var short = &unit.Pair{US: unit.Form{Unit: unit.Inches, Digits: 3}, Metric: unit.Form{Unit: unit.Millimetres, Digits: 3}}

func abs(n int) int { return max(n, -n) }
