package weather

import (
	"sort"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Gauge is an upright scale with lines across it, drawn as a glass filled to its reading.
type Gauge struct {
	Least, Most float64 // what the scale spans at least
	Reading     Mark
	Marks       []Mark
}

// Mark is a line on a scale.
type Mark struct {
	At   float64
	Says words.Line

	strong bool // the reading
}

// Sizes of a gauge, a millimetre for each CSS px of the page.
const (
	gaugeHigh  = 280 * unit.Millimetre
	gaugeWide  = 34 * unit.Millimetre
	gaugeLabel = 62 * unit.Millimetre // where labels begin
	gaugeApart = 19 * unit.Millimetre // from one label to the next
)

// Draw draws the gauge: each mark a line across the glass with its label beside it,
// spread so that none lies on another; the reading a thick one.
func (g Gauge) Draw(d *calc.Drawing) {
	g.Reading.strong = true
	marks := append([]Mark{g.Reading}, g.Marks...)
	least, most := g.Least, g.Most
	for _, m := range marks {
		least, most = min(least, m.At), max(most, m.At)
	}
	spare := (most - least) / 20
	least, most = least-spare, most+spare
	up := func(at float64) unit.Length { return gaugeHigh * unit.Length((at-least)/(most-least)) }

	d.Box(calc.Water, 0, 0, gaugeWide, up(g.Reading.At))
	d.Box(calc.Outline, 0, 0, gaugeWide, gaugeHigh)
	sort.SliceStable(marks, func(i, j int) bool { return marks[i].At < marks[j].At })
	labels := make([]unit.Length, len(marks))
	for i, m := range marks {
		labels[i] = up(m.At)
	}
	spread(labels)
	for i, m := range marks {
		of := calc.Outline
		if m.strong {
			of = calc.Strong
		}
		y := up(m.At)
		d.Line(of, calc.Point{X: 0, Y: y}, calc.Point{X: gaugeWide, Y: y}, calc.Point{X: gaugeLabel - 6*unit.Millimetre, Y: labels[i]})
		d.Note(calc.Point{X: gaugeLabel, Y: labels[i]}, calc.Start, m.Says)
	}
}

// spread moves heights that rise apart, up first and then back down from the top.
func spread(y []unit.Length) {
	for i := 1; i < len(y); i++ {
		y[i] = max(y[i], y[i-1]+gaugeApart)
	}
	most := gaugeHigh
	for i := len(y) - 1; i >= 0 && y[i] > most; i-- {
		y[i] = most
		most -= gaugeApart
	}
}
