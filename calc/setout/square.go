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

// corner345 is where the triangle of 3, 4 and 5 stands, and which way and how far its legs may run: so many times 4 along
// the rows and 3 across them.
type corner345 struct {
	at        paving.Point
	right, up float64
	room      unit.Length
}

// triangle finds the most room for the legs from a place.
func (p *plan) triangle(at paving.Point) (best corner345) {
	best = corner345{at: at, right: 1, up: 1}
	for _, right := range []float64{1, -1} {
		for _, up := range []float64{1, -1} {
			// From just within, so that an edge along a leg does not count as left.
			q := paving.Point{X: best.at.X + right*float64(paving.Sliver), Y: best.at.Y + up*float64(paving.Sliver)}
			along, across := ahead(p.rings, q, paving.Point{X: right}), ahead(p.rings, q, paving.Point{Y: up})
			if room := min(along/4, across/3); room > best.room {
				best.right, best.up, best.room = right, up, room
			}
		}
	}
	return best
}

// ahead is how far rings reach from a point along d of length 1.
func ahead(rings [][]paving.Point, at, d paving.Point) unit.Length {
	for _, part := range clipped(rings, at, d) {
		if part[0] <= 0 && 0 <= part[1] {
			return unit.Length(part[1])
		}
	}
	return 0
}

// longest is the most that a triangle is laid out with: a tape of 6 m or 20 ft across it.
const longest = 6 * unit.Metre

// times is how many steps of a size the triangle is made of: three of them the short leg.
func (c corner345) times(step unit.Length) unit.Count {
	return unit.Count(max(1, math.Floor(float64(min(c.room, longest/5)/step)+1e-9)))
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
		}
	}
	start, ok := p.starts()
	if !ok {
		start = paving.Point{X: p.box.X0, Y: p.box.Y0}
	}
	c := p.triangle(start)
	feet, metres := c.times(unit.Foot), c.times(unit.Metre/4)
	k := float64(feet) * float64(unit.Foot)
	at, right, up := c.at, c.right, c.up
	a, b := paving.Point{X: at.X + right*4*k, Y: at.Y}, paving.Point{X: at.X, Y: at.Y + up*3*k}
	d.Line(calc.Strong, p.at(at), p.at(a), p.at(b), p.at(at))
	l := labelled(d)
	if n <= crowded {
		for i := range n {
			x1, y1 := p.normal(i)
			x0, y0 := p.normal((i + n - 1) % n)
			m := unit.Length(p.margin() * 0.9)
			l.write(calc.Point{X: point(i).X + unit.Length(x0+x1)*m, Y: point(i).Y + unit.Length(y0+y1)*m}, strconv.Itoa(i+1))
		}
	}
	m := p.margin() * 0.55
	l.write(p.at(paving.Point{X: at.X + right*m, Y: (at.Y + b.Y) / 2}), "3")
	l.write(p.at(paving.Point{X: (at.X + a.X) / 2, Y: at.Y + up*m}), "4")
	l.write(p.at(paving.Point{X: (a.X+b.X)/2 + right*m, Y: (a.Y+b.Y)/2 + up*m}), "5")
	l.along(p.at(at), p.at(a))
	l.along(p.at(a), p.at(b))
	l.along(p.at(b), p.at(at))
	if n == 4 {
		for i := range 2 {
			a, b := point(i), point(i+2)
			var places []calc.Point
			for _, t := range [...]unit.Length{0.75, 0.8, 0.7, 0.25, 0.2, 0.3, 0.65, 0.35, 0.6, 0.4} {
				places = append(places, calc.Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t})
			}
			// Where there is room nowhere, the length stands in the list all the same.
			l.place(words.Say("{length}", words.Is("length", p.between(i, i+2), far)), lengthLetters, places...)
		}
	}
	d.Says = words.Say("The triangle stands where the two lines to start from cross: {three} along one, {four} along the other, and {five} between the marks; or {m3}, {m4} and {m5}. The larger the triangle, the better the proof. Corners are numbered as given; the diagonals are listed.",
		words.Is("three", unit.Length(3*feet)*unit.Foot, inFeet), words.Is("four", unit.Length(4*feet)*unit.Foot, inFeet), words.Is("five", unit.Length(5*feet)*unit.Foot, inFeet),
		words.Is("m3", unit.Length(3*metres)*unit.Metre/4, inMetres), words.Is("m4", unit.Length(4*metres)*unit.Metre/4, inMetres), words.Is("m5", unit.Length(5*metres)*unit.Metre/4, inMetres))
}

// lengthLetters is the most letters that a diagonal is written with, as in 98.4252 ft or 12,345 6 m.
const lengthLetters = 10

// The triangle is measured in whole feet or quarters of a metre, whatever else the reader measures in.
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
