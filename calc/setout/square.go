package setout

import (
	"math"
	"strconv"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func (p *plan) draw(s *calc.Sheet) {
	s.Drawing.Title, s.Drawing.Plan = "The plan", true
	s.Drawing.Says = words.Say("Seen from above: {whole} whole pavers and {cut} cut pieces, the cut ones dotted and marked as in the list of cuts, in {fields} fields. Thick lines are soft joints, chain lines are chalk lines.",
		words.Is("whole", p.whole, unit.Whole1), words.Is("cut", p.cut, unit.Whole1), words.Is("fields", p.fields, unit.Whole1))
	p.planDrawing(&s.Drawing)
	p.squareDrawing(s.Draw("Square up"))
	p.orderDrawing(s.Draw("Order of setting"))
	if len(p.sawn.Sheets) > 0 {
		p.sawDrawing(s.Draw("How the cut pieces are sawn"))
	}
}

// legs is the largest whole multiple of a triangle of 3, 4 and 5 whose legs lie on the paving, in steps of a size.
func (p *plan) legs(step unit.Length) unit.Count {
	across, up := unit.Length(p.box.X1-p.box.X0), unit.Length(p.box.Y1-p.box.Y0)
	most := math.Floor(float64(min(across/(4*step), up/(3*step))) + 1e-9)
	return unit.Count(max(1, min(most, math.Floor(float64(6*unit.Metre/(5*step))))))
}

// squareDrawing is the outline with the triangle on the two lines to start from, and the diagonals of the corners.
func (p *plan) squareDrawing(d *calc.Drawing) {
	d.Areas(calc.Outline, p.edgeRings())
	n := len(p.corners)
	point := func(i int) calc.Point {
		return calc.Point{X: unit.Length(p.corners[i][0]), Y: unit.Length(p.corners[i][1])}
	}
	if n == 4 {
		for i := range 2 {
			d.Line(calc.Hidden, point(i), point(i+2))
			d.Dim(point(i), point(i+2), 0, unit.Fig(p.between(i, i+2), far))
		}
	}
	if n <= crowded {
		for i := range n {
			x1, y1 := p.normal(i)
			x0, y0 := p.normal((i + n - 1) % n)
			m := unit.Length(p.margin() * 0.9)
			d.Note(calc.Point{X: point(i).X + unit.Length(x0+x1)*m, Y: point(i).Y + unit.Length(y0+y1)*m}, calc.Middle, words.Say("{n}", words.Text("n", strconv.Itoa(i+1))))
		}
	}
	feet, metres := p.legs(unit.Foot), p.legs(unit.Metre/2)
	at := paving.Point{X: p.box.X0, Y: p.box.Y0}
	if s, ok := p.starts(); ok {
		at = s
	}
	k := float64(feet) * float64(unit.Foot)
	right, up := 1.0, 1.0
	if at.X+4*k > p.box.X1 {
		right = -1
	}
	if at.Y+3*k > p.box.Y1 {
		up = -1
	}
	a, b := paving.Point{X: at.X + right*4*k, Y: at.Y}, paving.Point{X: at.X, Y: at.Y + up*3*k}
	d.Line(calc.Strong, p.at(at), p.at(a), p.at(b), p.at(at))
	d.Says = words.Say("From where the two lines to start from cross: {three} along one, {four} along the other, and {five} between the marks; or {m3}, {m4} and {m5}. The larger the triangle, the better the proof. Corners are numbered as given; the diagonals are listed.",
		words.Is("three", unit.Length(3*feet)*unit.Foot, inFeet), words.Is("four", unit.Length(4*feet)*unit.Foot, inFeet), words.Is("five", unit.Length(5*feet)*unit.Foot, inFeet),
		words.Is("m3", unit.Length(3*metres)*unit.Metre/2, inMetres), words.Is("m4", unit.Length(4*metres)*unit.Metre/2, inMetres), words.Is("m5", unit.Length(5*metres)*unit.Metre/2, inMetres))
}

// The triangle is measured in whole feet or half metres, whatever else the reader measures in.
var inFeet, inMetres = unit.Both(unit.Feet), unit.Both(unit.Metres)

// sawnAtOnce is how many pavers are drawn one by one; of more, the first.
const sawnAtOnce = 24

// sawDrawing shows the pavers that are cut up: the pieces with their marks, and what is left over hatched.
func (p *plan) sawDrawing(d *calc.Drawing) {
	n := min(len(p.sawn.Sheets), sawnAtOnce)
	columns := int(math.Round(math.Sqrt(float64(n) * float64(p.paver.W/p.paver.L))))
	columns = max(1, min(columns, 4, n))
	gap := max(p.paver.L, p.paver.W) / 8
	var pieces [][]calc.Point
	for i := range n {
		x, y := unit.Length(i%columns)*(p.paver.L+gap), -unit.Length(i/columns)*(p.paver.W+gap)
		d.Box(calc.Paver, x, y, p.paver.L, p.paver.W)
		for _, q := range p.sawn.Sheets[i] {
			c := p.laid.Cuts[p.sawnCut[q.Piece]]
			l, w := unit.Length(c.L), unit.Length(c.W)
			if q.Turned {
				l, w = w, l
			}
			left, low := x+q.X, y+q.Y
			pieces = append(pieces, []calc.Point{{X: left, Y: low}, {X: left + l, Y: low}, {X: left + l, Y: low + w}, {X: left, Y: low + w}})
			d.Mark(calc.Point{X: left + l/2, Y: low + w/2}, l, words.Say("{mark}", words.Text("mark", c.Mark)))
		}
	}
	// The pieces cover the hatch of the pavers that they are sawn out of.
	d.Areas(calc.Mortar, pieces)
	if len(p.sawn.Sheets) > n {
		d.Says = words.Say("The first {n} of {all} pavers that are cut up. What is left over is hatched.",
			words.Is("n", unit.Count(n), unit.Whole1), words.Is("all", unit.Count(len(p.sawn.Sheets)), unit.Whole1))
		return
	}
	d.Says = words.Say("{all} pavers are cut up, with straight cuts from side to side. What is left over is hatched. No way of cutting does with fewer than {least}.",
		words.Is("all", unit.Count(len(p.sawn.Sheets)), unit.Whole1), words.Is("least", p.least, unit.Whole1))
}

// between is how far one corner is from another.
func (p *plan) between(i, j int) unit.Length {
	return unit.Length(math.Hypot(p.corners[i][0]-p.corners[j][0], p.corners[i][1]-p.corners[j][1]))
}
