package glossary

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const mm = unit.Millimetre

// at is a place in millimetres.
func at(x, y float64) calc.Point {
	return calc.Point{X: unit.Length(x) * mm, Y: unit.Length(y) * mm}
}

// scene draws in millimetres.
type scene struct{ *calc.Drawing }

func (s scene) box(of calc.Stuff, x, y, width, height float64) {
	s.Box(of, unit.Length(x)*mm, unit.Length(y)*mm, unit.Length(width)*mm, unit.Length(height)*mm)
}

func (s scene) line(of calc.Stuff, xy ...float64) { s.Line(of, points(xy)...) }

func (s scene) area(of calc.Stuff, xy ...float64) { s.Area(of, points(xy)...) }

func points(xy []float64) []calc.Point {
	list := make([]calc.Point, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		list = append(list, at(xy[i], xy[i+1]))
	}
	return list
}

func (s scene) note(x, y float64, m words.Msg) {
	s.Note(at(x, y), calc.Middle, words.Line{Msg: m})
}

// millimetres show every dimension: a paver of 20 mm is sold as such to everybody.
var millimetres = unit.Both(unit.Millimetres)

// dim draws a dimension of a length in millimetres.
func (s scene) dim(x1, y1, x2, y2, away, length float64) {
	s.Dim(at(x1, y1), at(x2, y2), away, unit.Fig(unit.Length(length)*mm, millimetres))
}

// part draws a dimension that is a number of equal parts.
func (s scene) part(x1, y1, x2, y2, away float64, parts unit.Number) {
	s.Dim(at(x1, y1), at(x2, y2), away, unit.Fig(parts, unit.Bare))
}

// section draws slab, bed and pavers cut through, to a width.
func (s scene) section(width, bed float64, joints ...float64) {
	s.box(calc.Concrete, 0, -60, width, 60)
	s.box(calc.Mortar, 0, 0, width, bed)
	from := 0.0
	for _, joint := range append(joints, width) {
		to := joint
		if joint != width {
			to = joint - 2.5
		}
		s.box(calc.Paver, from, bed, to-from, 20)
		from = joint + 2.5
	}
}

// grid draws pavers in plan, with their rows offset by a share of their length.
func (s scene) grid(columns, rows int, length, width, joint, offset float64) {
	for row := range rows {
		shift := offset * length * float64(row%2)
		for column := range columns {
			s.box(calc.Paver, shift+float64(column)*(length+joint), float64(row)*(width+joint), length, width)
		}
	}
}
