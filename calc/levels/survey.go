package levels

import (
	"math"

	"setbook/calc"
	"setbook/calc/surface"
	"setbook/calc/unit"
)

// The lengths of the published rules.
const (
	tenFeet   = 10 * unit.Foot
	twoFeet   = 2 * unit.Foot
	twoMetres = 2 * unit.Metre
)

// The straightedges that are tried, by their place in survey.gaps.
const (
	underTen = iota
	underTwo
	underOwn
	underMetric
)

// survey is what the readings tell.
type survey struct {
	grid    *surface.Grid
	missing int
	plane   *surface.Plane
	over    []float64 // of each reading, above the plane
	gaps    []surface.Gap
	ponds   surface.Pond
	deepest surface.Place
	flat    []flatLine

	below      []float64 // of each reading, under what it is filled to
	fill       surface.Volumes
	less, more surface.Volumes // the hollows a reading's error shallower and deeper
}

// look works out what the readings tell. It reports false where there are not two.
func look(e calc.Entry, s *calc.Sheet) (*survey, bool) {
	v := &survey{grid: surface.New(grid.Of(e), float64(stepX.Of(e)), float64(stepY.Of(e)))}
	g := v.grid
	if reading.Of(e) == "rod" {
		for i := range g.Z {
			g.Z[i] = -g.Z[i]
		}
	}
	for _, z := range g.Z {
		if z != z {
			v.missing++
		}
	}
	var ok bool
	if v.plane, ok = g.Fit(); !ok {
		return nil, false
	}
	v.over = g.Over(v.plane)
	v.gaps = g.Worst(s.Going, float64(tenFeet), float64(twoFeet), float64(straight.Of(e)), float64(twoMetres))
	v.ponds = g.Ponds()
	for i, d := range v.ponds.Depths {
		if d == v.ponds.Deepest {
			v.deepest = g.Place(i)
			break
		}
	}
	v.flat = flatLines(g)
	v.below = v.target(e, s)
	v.fill = g.To(v.below)
	v.less, v.more = g.To(deeper(v.below, -finest)), g.To(deeper(v.below, finest))
	return v, true
}

// finest is how closely a height is read with a builder's level. Common practice.
const finest = unit.Millimetre

// deeper is the hollows deeper by so much.
func deeper(below []float64, by unit.Length) []float64 {
	moved := make([]float64, len(below))
	for i, d := range below {
		moved[i] = d
		if d > 0 {
			moved[i] = math.Max(d+float64(by), 0)
		}
	}
	return moved
}

// target is how far each reading lies under what it is filled to.
func (v *survey) target(e calc.Entry, s *calc.Sheet) []float64 {
	switch target.Of(e) {
	case "flat":
		ten, two, both := limits(edge.Of(e))
		lengths, most := []float64{float64(tenFeet)}, []float64{float64(ten)}
		if both {
			lengths, most = append(lengths, float64(twoFeet)), append(most, float64(two))
		}
		return v.grid.Flatten(lengths, most, s.Going)
	case "chosen":
		return v.toChosen(e)
	}
	below := make([]float64, len(v.over))
	for i, over := range v.over {
		below[i] = -over
	}
	return below
}

// toChosen is how far each reading lies under the level or the fall that was asked for.
func (v *survey) toChosen(e calc.Entry) []float64 {
	h := float64(level.Of(e))
	if reading.Of(e) == "rod" {
		h = -h
	}
	g := v.grid
	below := make([]float64, len(g.Z))
	for i, z := range g.Z {
		p := g.Place(i)
		steps := 0.0 // away from the building
		switch building.Of(e) {
		case "top":
			steps = float64(p.Row) * g.StepY
		case "bottom":
			steps = float64(g.Deep-1-p.Row) * g.StepY
		case "left":
			steps = float64(p.Col) * g.StepX
		case "right":
			steps = float64(g.Wide-1-p.Col) * g.StepX
		}
		below[i] = h - float64(fall.Of(e))*steps - z
	}
	return below
}

// slope is how steeply the best plane falls where it falls most.
func (v *survey) slope() unit.Ratio { return unit.Ratio(v.plane.Slope()) }

// away is how steeply the best plane falls away from the building, where one is named.
func (v *survey) away(e calc.Entry) (fall unit.Ratio, expr string, ok bool) {
	switch building.Of(e) {
	case "top":
		return unit.Ratio(-v.plane.C), "-c", true
	case "bottom":
		return unit.Ratio(v.plane.C), "c", true
	case "left":
		return unit.Ratio(-v.plane.B), "-b", true
	case "right":
		return unit.Ratio(v.plane.B), "b", true
	}
	return 0, "", false
}

// isLevel is a slope below which no way can be told: a millimetre in a kilometre.
const isLevel = unit.Ratio(1e-6)

// Direction is the way that water runs on a plane that rises by b along the rows and by c from row to row: from 0 up to 360
// degrees, from the way of the rows towards the rows that follow, which is clockwise where the first row is drawn at the top.
// The expression finds it from b and c with the smaller over the larger of the two. By definition.
func Direction(b, c float64) (way unit.Angle, expr string) {
	switch {
	case math.Abs(b) >= math.Abs(c) && b <= 0 && c <= 0:
		expr = "atan(c / b)"
	case math.Abs(b) >= math.Abs(c) && b <= 0:
		expr = "360 + atan(c / b)"
	case math.Abs(b) >= math.Abs(c):
		expr = "180 + atan(c / b)"
	case c < 0:
		expr = "90 - atan(b / c)"
	default:
		expr = "270 - atan(b / c)"
	}
	way = unit.Angle(math.Atan2(-c, -b) * 180 / math.Pi)
	if way < 0 {
		way += 360
	}
	return way + 0, expr // and −0 is 0
}
