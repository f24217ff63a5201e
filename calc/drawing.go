package calc

import (
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Drawing is a figure to scale, in the lengths of the job: x to the right and y
// up, from any origin. A drawing with no shapes is not shown.
type Drawing struct {
	Title  words.Msg
	Says   words.Line // the same in words, for those who cannot see it
	Shapes []Shape
	Plan   bool // to be built from: printed at a stated scale, on more than one sheet where it must
}

// Point is a place in a drawing.
type Point struct{ X, Y unit.Length }

// Stuff is what a shape is made of: it sets the hatch.
type Stuff uint8

// The materials. Outline is a bare line, Hidden a dashed one, Axis a chain line.
const (
	Outline Stuff = iota
	Hidden
	Axis
	Concrete
	Mortar
	Paver
	Water
	Steel
	Sealant
	Foam
	Membrane
	Air    // a void
	Strong // a thick line: the answer
)

// Shape is one of: an area or line through Points (Closed: an area), a dimension line from the first to the
// second point (Dim), or a label at the first point (Label).
type Shape struct {
	Points []Point
	Closed bool
	Of     Stuff
	Dim    *unit.Figure // measured figure printed on a dimension line
	Away   float64      // how far the dimension line stands off, in text heights; negative: the other side
	Label  words.Line
	Anchor Anchor
	Rings  [][]Point   // an area or line in many pieces, written as one path, in place of Points
	Room   unit.Length // of a label: left out where it would be longer than this as drawn; 0: always written
}

// Anchor is which end of a label stands at its point.
type Anchor uint8

// The anchors.
const (
	Middle Anchor = iota
	Start
	End
)

// Area draws a closed outline filled with a material.
func (d *Drawing) Area(of Stuff, points ...Point) {
	d.Shapes = append(d.Shapes, Shape{Points: points, Closed: true, Of: of})
}

// Box draws a rectangle from its lower left corner.
func (d *Drawing) Box(of Stuff, x, y, width, height unit.Length) {
	d.Area(of, Point{x, y}, Point{x + width, y}, Point{x + width, y + height}, Point{x, y + height})
}

// Line draws an open line.
func (d *Drawing) Line(of Stuff, points ...Point) {
	d.Shapes = append(d.Shapes, Shape{Points: points, Of: of})
}

// Areas draws many closed outlines of one material as one path: thousands of pavers stay light.
func (d *Drawing) Areas(of Stuff, rings [][]Point) {
	if len(rings) > 0 {
		d.Shapes = append(d.Shapes, Shape{Rings: rings, Closed: true, Of: of})
	}
}

// Lines draws many open lines as one path.
func (d *Drawing) Lines(of Stuff, lines [][]Point) {
	if len(lines) > 0 {
		d.Shapes = append(d.Shapes, Shape{Rings: lines, Of: of})
	}
}

// Dim draws a dimension line between two points, standing off to the left of the way
// from the first to the second by so many text heights.
func (d *Drawing) Dim(from, to Point, away float64, is unit.Figure) {
	d.Shapes = append(d.Shapes, Shape{Points: []Point{from, to}, Dim: &is, Away: away})
}

// Mark writes a label in the middle of a place so wide, where it fits as drawn.
func (d *Drawing) Mark(at Point, room unit.Length, l words.Line) {
	d.Shapes = append(d.Shapes, Shape{Points: []Point{at}, Label: l, Room: room})
}

// Note writes a label at a point.
func (d *Drawing) Note(at Point, anchor Anchor, l words.Line) {
	d.Shapes = append(d.Shapes, Shape{Points: []Point{at}, Label: l, Anchor: anchor})
}
