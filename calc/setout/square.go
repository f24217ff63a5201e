package setout

import (
	"math"
	"slices"
	"strconv"

	"setbook/calc"
	"setbook/calc/cutting"
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
			a, b := point(i), point(i+2)
			d.Line(calc.Hidden, a, b)
			d.Note(calc.Point{X: a.X + (b.X-a.X)*0.75, Y: a.Y + (b.Y-a.Y)*0.75}, calc.Middle, words.Say("{length}", words.Is("length", p.between(i, i+2), far)))
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
	m := p.margin() * 0.55
	part := func(x, y float64, n string) {
		d.Note(p.at(paving.Point{X: x, Y: y}), calc.Middle, words.Say("{n}", words.Text("n", n)))
	}
	part(at.X+right*m, (at.Y+b.Y)/2, "3")
	part((at.X+a.X)/2, at.Y+up*m, "4")
	part((a.X+b.X)/2+right*m, (a.Y+b.Y)/2+up*m, "5")
	d.Says = words.Say("The triangle stands where the two lines to start from cross: {three} along one, {four} along the other, and {five} between the marks; or {m3}, {m4} and {m5}. The larger the triangle, the better the proof. Corners are numbered as given; the diagonals are listed.",
		words.Is("three", unit.Length(3*feet)*unit.Foot, inFeet), words.Is("four", unit.Length(4*feet)*unit.Foot, inFeet), words.Is("five", unit.Length(5*feet)*unit.Foot, inFeet),
		words.Is("m3", unit.Length(3*metres)*unit.Metre/2, inMetres), words.Is("m4", unit.Length(4*metres)*unit.Metre/2, inMetres), words.Is("m5", unit.Length(5*metres)*unit.Metre/2, inMetres))
}

// The triangle is measured in whole feet or half metres, whatever else the reader measures in.
var inFeet, inMetres = unit.Both(unit.Feet), unit.Both(unit.Metres)

// sawing is one way of cutting a paver up, and how many are cut so.
type sawing struct {
	placed []cutting.Placed
	count  int
}

// sawings are the ways of cutting, the most frequent first.
func (p *plan) sawings() (ways []sawing) {
	at := map[string]int{}
	for _, sheet := range p.sawn.Sheets {
		key := ""
		for _, q := range sheet {
			key += strconv.Itoa(p.sawnCut[q.Piece]) + "@" + strconv.Itoa(int(q.X)) + "," + strconv.Itoa(int(q.Y)) + ";"
		}
		i, seen := at[key]
		if !seen {
			i = len(ways)
			at[key] = i
			ways = append(ways, sawing{placed: sheet})
		}
		ways[i].count++
	}
	slices.SortStableFunc(ways, func(a, b sawing) int { return b.count - a.count })
	return ways
}

// sawnAtOnce is how many ways of cutting are drawn; of more, the most frequent.
const sawnAtOnce = 20

// sawDrawing shows the pavers that are cut up: the pieces with their marks, and what is left over hatched.
func (p *plan) sawDrawing(d *calc.Drawing) {
	ways := p.sawings()
	n := min(len(ways), sawnAtOnce)
	columns := int(math.Round(math.Sqrt(float64(n) * float64(p.paver.W/p.paver.L))))
	columns = max(1, min(columns, 4, n))
	gap := max(p.paver.L, p.paver.W) / 3
	var pieces [][]calc.Point
	for i := range n {
		x, y := unit.Length(i%columns)*(p.paver.L+gap), -unit.Length(i/columns)*(p.paver.W+gap)
		d.Box(calc.Paver, x, y, p.paver.L, p.paver.W)
		if count := unit.Count(ways[i].count); count > 1 {
			d.Mark(calc.Point{X: x + p.paver.L/2, Y: y - gap/2}, p.paver.L, words.Say("× {n}", words.Is("n", count, unit.Whole1)))
		}
		for _, q := range ways[i].placed {
			c := p.laid.Cuts[p.sawnCut[q.Piece]]
			l, w := unit.Length(c.L), unit.Length(c.W)
			if q.Turned {
				l, w = w, l
			}
			left, low := x+q.X, y+q.Y
			pieces = append(pieces, []calc.Point{{X: left, Y: low}, {X: left + l, Y: low}, {X: left + l, Y: low + w}, {X: left, Y: low + w}})
			d.Mark(calc.Point{X: left + l/2, Y: low + w/2}, min(l, high(w, c.Mark)), words.Say("{mark}", words.Text("mark", c.Mark)))
		}
	}
	d.Areas(calc.Mortar, pieces) // over the hatch of the pavers that they are sawn out of
	all := words.Is("all", unit.Count(len(p.sawn.Sheets)), unit.Whole1)
	least := words.Is("least", p.least, unit.Whole1)
	if len(ways) > n {
		d.Says = words.Say("{all} pavers are cut up, with straight cuts from side to side; no way of cutting does with fewer than {least}. The {n} ways that come most often are drawn. What is left over is hatched.",
			all, least, words.Is("n", unit.Count(n), unit.Whole1))
		return
	}
	d.Says = words.Say("{all} pavers are cut up, with straight cuts from side to side; no way of cutting does with fewer than {least}. What is left over is hatched.", all, least)
}

// between is how far one corner is from another.
func (p *plan) between(i, j int) unit.Length {
	return unit.Length(math.Hypot(p.corners[i][0]-p.corners[j][0], p.corners[i][1]-p.corners[j][1]))
}
