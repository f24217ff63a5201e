package nest

import (
	"strconv"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawn is how many kinds of sheet are drawn.
const drawn = 6

func (j *job) draw(s *calc.Sheet) {
	for i, k := range j.kinds[:min(len(j.kinds), drawn)] {
		d := &s.Drawing
		if i == 0 {
			d.Title = "How a paver is cut, the commonest kind"
		} else {
			d = s.Draw("How a paver is cut, a further kind")
		}
		j.kind(d, k)
	}
}

// kind draws one kind of sheet to scale, each piece with the number of its row, and the first cuts in thick lines.
func (j *job) kind(d *calc.Drawing, k kind) {
	told := []*words.Arg{words.Text("mark", k.mark), words.Is("count", unit.Count(k.count), unit.Whole1), words.Text("list", j.list(k)),
		words.Is("w", j.sheet.W, sawn), words.Is("l", j.sheet.L, sawn), words.Is("cuts", unit.Count(len(k.cuts)), unit.Whole1)}
	d.Says = words.Say("Paver {mark}, {w} wide and {l} long, to scale, seen from above; cut alike: {count}. Its pieces by their rows in the list: {list}. Cuts: {cuts}, the first of them in thick lines. Blank is what is left over.", told...)
	w, l := j.sheet.W, j.sheet.L
	d.Box(calc.Outline, 0, 0, w, l)
	for _, q := range k.placed {
		p := j.pieces[q.Piece]
		if q.Turned {
			p.W, p.L = p.L, p.W
		}
		d.Box(calc.Paver, q.X, q.Y, p.W, p.L)
		d.Mark(calc.Point{X: q.X + p.W/2, Y: q.Y + p.L/2}, min(p.W, p.L), words.Say("{mark}", words.Text("mark", strconv.Itoa(j.of[q.Piece]+1))))
	}
	for _, c := range k.cuts {
		if c.Stage > 1 {
			continue
		}
		a, b := calc.Point{X: c.From, Y: c.At}, calc.Point{X: c.To, Y: c.At}
		if c.Upright {
			a, b = calc.Point{X: c.At, Y: c.From}, calc.Point{X: c.At, Y: c.To}
		}
		d.Line(calc.Strong, a, b)
	}
	d.Dim(calc.Point{X: 0, Y: l}, calc.Point{X: w, Y: l}, 1, unit.Fig(w, sawn))
	d.Dim(calc.Point{X: w, Y: l}, calc.Point{X: w, Y: 0}, 1, unit.Fig(l, sawn))
	d.Note(calc.Point{X: 0, Y: -0.06 * l}, calc.Start, words.Say("paver {mark}: {count} alike", told[:2]...))
}
