package levels

import (
	"math"

	"setbook/calc"
	"setbook/calc/surface"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// rough shows a height as it is told on site.
var rough = &unit.Pair{US: unit.Form{Unit: unit.Inches, Fraction: 16}, Metric: unit.Form{Unit: unit.Millimetres}}

// Most readings each way in the drawing, and arrows: a larger grid is thinned, since a phone shows no more.
const (
	drawn  = 40
	arrows = 6
)

// spot is a place in the drawing: the first row is at the top.
func spot(x, y float64) calc.Point { return calc.Point{X: unit.Length(x), Y: unit.Length(-y)} }

// plan draws the slab from above: contours, arrows of fall, ponds, the worst 10 ft straightedge.
func (v *survey) plan(e calc.Entry) calc.Drawing {
	g := v.grid
	wide, deep := float64(g.Wide-1)*g.StepX, float64(g.Deep-1)*g.StepY
	low, high := g.Range()
	step := nice((high - low) / 7)
	d := calc.Drawing{
		Title: "Contours, the way water runs, ponds and the worst gap",
		Says: words.Say("The slab from above, its first row at the top. Thin lines join equal heights, {step} apart; arrows point the way water runs. Water stands at {wet} of {all} readings, hatched. The thick line is where the worst gap under 10 ft was found.",
			words.Is("step", unit.Length(step), rough), words.Is("wet", unit.Count(v.ponds.Wet), unit.Whole1), words.Is("all", unit.Count(v.plane.Count), unit.Whole1)),
	}
	size := math.Max(wide, deep)
	thin, jump := v.thinned()
	v.water(&d, jump)
	if wide > 0 && deep > 0 {
		d.Box(calc.Outline, 0, unit.Length(-deep), unit.Length(wide), unit.Length(deep))
	} else {
		d.Line(calc.Outline, spot(0, 0), spot(wide, deep))
	}
	if step > 0 {
		var pieces [][2]surface.Spot
		thin.Contour(math.Floor(low/step)*step, step, func(_ float64, a, b surface.Spot) { pieces = append(pieces, [2]surface.Spot{a, b}) })
		for _, line := range surface.Join(pieces) {
			points := make([]calc.Point, len(line))
			for i, p := range line {
				points[i] = spot(p.X, p.Y)
			}
			d.Line(calc.Hidden, points...)
		}
	}
	fallArrows(&d, thin)
	if gap := v.gaps[underTen]; gap.Depth > 0 {
		x0, y0 := g.XY(gap.From)
		x1, y1 := g.XY(gap.To)
		d.Line(calc.Strong, spot(x0, y0), spot(x1, y1))
	}
	side := building.Of(e)
	house(&d, side, wide, deep, size)
	if wide > 0 { // on the side where the building is not
		y, away := deep, -1.5
		if side == "bottom" {
			y, away = 0, 1.5
		}
		d.Dim(spot(0, y), spot(wide, y), away, unit.Fig(unit.Length(wide), unit.FootMetre))
	}
	if deep > 0 {
		x, away := 0.0, -1.5
		if side == "left" {
			x, away = wide, 1.5
		}
		d.Dim(spot(x, 0), spot(x, deep), away, unit.Fig(unit.Length(deep), unit.FootMetre))
	}
	return d
}

// thinned is the grid with no more readings than can be drawn, and how many of them make one.
func (v *survey) thinned() (*surface.Grid, int) {
	g := v.grid
	jump := 1 + (max(g.Wide, g.Deep)-1)/drawn
	if jump == 1 {
		return g, 1
	}
	t := &surface.Grid{Wide: (g.Wide-1)/jump + 1, Deep: (g.Deep-1)/jump + 1, StepX: g.StepX * float64(jump), StepY: g.StepY * float64(jump)}
	for row := 0; row < g.Deep; row += jump {
		for col := 0; col < g.Wide; col += jump {
			t.Z = append(t.Z, g.At(surface.Place{Col: col, Row: row}))
		}
	}
	return t, jump
}

// water hatches what each wet reading stands for; in a thinned grid any wet reading makes its square wet.
func (v *survey) water(d *calc.Drawing, jump int) {
	g := v.grid
	wet := func(col, row int) bool {
		for r := row; r < min(row+jump, g.Deep); r++ {
			for c := col; c < min(col+jump, g.Wide); c++ {
				if v.ponds.Depths[r*g.Wide+c] > 0 {
					return true
				}
			}
		}
		return false
	}
	for row := 0; row < g.Deep; row += jump {
		for col := 0; col < g.Wide; col += jump {
			from := col
			for col < g.Wide && wet(col, row) {
				col += jump
			}
			if col > from {
				x0, x1, y := (float64(from)-0.5)*g.StepX, (float64(col)-0.5)*g.StepX, (float64(row)-0.5)*g.StepY
				d.Area(calc.Water, spot(x0, y), spot(x1, y), spot(x1, y+float64(jump)*g.StepY), spot(x0, y+float64(jump)*g.StepY))
			}
		}
	}
}

// fallArrows draws the way water runs at places spread over the slab.
func fallArrows(d *calc.Drawing, g *surface.Grid) {
	acrossEach, downEach := 1+(g.Wide-2)/arrows, 1+(g.Deep-2)/arrows
	long := 0.35 * math.Min(g.StepX*float64(acrossEach), g.StepY*float64(downEach))
	for row := 1 + (downEach-1)/2; row < g.Deep; row += downEach {
		for col := 1 + (acrossEach-1)/2; col < g.Wide; col += acrossEach {
			b, c, ok := g.Fall(surface.Place{Col: col, Row: row})
			m := math.Hypot(b, c)
			if !ok || m < float64(isLevel) {
				continue
			}
			ux, uy := -b/m*long, -c/m*long
			x, y := (float64(col)-0.5)*g.StepX, (float64(row)-0.5)*g.StepY
			tipX, tipY := x+ux, y+uy
			d.Line(calc.Outline, spot(x-ux, y-uy), spot(tipX, tipY))
			d.Line(calc.Outline, spot(tipX-0.6*ux+0.3*uy, tipY-0.6*uy-0.3*ux), spot(tipX, tipY), spot(tipX-0.6*ux-0.3*uy, tipY-0.6*uy+0.3*ux))
		}
	}
}

// house draws the wall of the building along its side.
func house(d *calc.Drawing, side string, wide, deep, size float64) {
	thick := 0.06 * size
	x0, y0, x1, y1 := 0.0, 0.0, wide, deep
	switch side {
	case "top":
		y0, y1 = -thick, 0
	case "bottom":
		y0, y1 = deep, deep+thick
	case "left":
		x0, x1 = -thick, 0
	case "right":
		x0, x1 = wide, wide+thick
	default:
		return
	}
	d.Area(calc.Concrete, spot(x0, y0), spot(x1, y0), spot(x1, y1), spot(x0, y1))
	if side == "bottom" {
		d.Note(spot(wide/2, deep+2.2*thick), calc.Middle, words.Say("The hatched strip is the building."))
		return
	}
	d.Note(spot(wide/2, -2.2*thick), calc.Middle, words.Say("The hatched strip is the building."))
}

// nice is the smallest of 1, 2 or 5 by a power of ten that is no less than this, in the same unit.
func nice(least float64) float64 {
	if !(least > 0) {
		return 0
	}
	ten := math.Pow(10, math.Floor(math.Log10(least)))
	for _, by := range []float64{1, 2, 5} {
		if by*ten >= least {
			return by * ten
		}
	}
	return 10 * ten
}
