// Package paving lays rectangular pavers over an outline of straight edges with holes: which piece lies where, what is
// cut, where the movement joints run, and how much of each joint there is; and it searches for the start that leaves the
// best cuts.
//
// Every coordinate is in micrometres (as unit.Length) and every area in square micrometres (as unit.Area). There are two
// sets of axes: the site's, in which the outline is given, and the pattern's, turned about the site's origin by
// Pattern.Turn, in which pavers lie square. A Layout is in the pattern's axes; Ground.Site and Ground.Along turn points
// from one to the other.
//
// What is done where the trade leaves a choice, all common practice:
//   - A movement joint is straight: pavers are never left bridging it. The pattern starts afresh on each field, so that
//     the joints fall on the module and a stacked pattern needs no cut along them.
//   - A gap runs along every edge that restrains (wall, building, hole), measured square to it, mitred at corners.
//   - A strip narrower than Sliver is no piece: it is left to the joint beside it, and counted as such.
//   - A paver that would lose less than Trim is laid whole: the joint takes it up.
package paving

import "setbook/calc/unit"

const (
	// Sliver is the width under which a piece is not cut but left to the joint. Common practice: no saw holds it.
	Sliver = 2 * unit.Millimetre
	// Trim is what a joint takes up, rather than that a paver is cut. Common practice.
	Trim = unit.Millimetre
)

// Point is a place, or the way from one place to another, in micrometres.
type Point struct{ X, Y float64 }

// Edge says what stands at an edge of the paving.
type Edge uint8

// The edges. At a wall or building the paving is restrained: a gap is kept. At a building it also starts, and falls away.
const (
	Open Edge = iota
	Wall
	Building
)

// Outline is what is to be paved, in the site's axes.
type Outline struct {
	Corners    []Point   // in order, either way round
	Edges      []Edge    // of the edge from each corner to the next; those missing are open
	Holes      [][]Point // posts, drains: corners in order, either way round; each restrains
	Structural [][]Point // lines of joints in the slab below, carried through the paving
}

// Edge is the kind of the edge from corner i to the next.
func (o *Outline) Edge(i int) Edge {
	if i < len(o.Edges) {
		return o.Edges[i]
	}
	return Open
}

// Paver is the paver's face and the grout joint about it. L lies along the rows, W across them.
type Paver struct{ L, W, Joint unit.Length }

// Pattern is how the pavers lie to each other.
type Pattern struct {
	Offset float64    // of each row against the one before, as a share of the module: 0 stacked, at most 1/3 (ANSI A108.02)
	Turn   unit.Angle // of the rows against the site's x axis, counterclockwise
}

// Joints are the soft joints: the widths, and the longest span between movement joints, centre to centre, or from the end of
// the paving with its perimeter gap to the first centre. Longest 0: no movement joints.
type Joints struct {
	Movement   unit.Length // width of a movement joint
	Perimeter  unit.Length // gap kept at what restrains
	Structural unit.Length // width carried through over a joint in the slab
	Longest    unit.Length
}

// Axis is how the module runs along one of the pattern's axes. First is where the first paver begins, in the pattern's
// axes: at or before the outline's end, by less than a module. Fields are how many whole modules each field takes, but
// for the last, which runs on past the outline's other end; there is one more field than movement joints.
type Axis struct {
	First  float64
	Fields []int
}

// Grid is the start and the movement joints on both axes.
type Grid struct{ X, Y Axis }

// Rect is a rectangle square to the axes.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// Piece is a paver or what is left of one.
type Piece struct {
	Field, Row, Col int       // Field is an index into Layout.Fields; Row and Col count in the field
	Cell            Rect      // where the whole paver would lie
	Full            bool      // laid whole
	Rings           [][]Point // of a cut piece: its outline counterclockwise, then holes in it clockwise; nil where Full
	Area            float64   // of what of it lies on the outline
	Cut             int       // index into Layout.Cuts; -1 where Full
}

// Cut is a shape to cut, and how many are alike. Pavers have a face: a mirrored shape is another cut. A half turn gives the
// same cut, and so does a quarter turn of a square paver.
type Cut struct {
	Mark    string    // A, B … Z, AA …: the most frequent first
	Count   int       //
	L, W    float64   // of the rectangle about it, along the paver's length and width
	Square  bool      // it is that rectangle
	Shape   [][]Point // from the lower left corner of that rectangle
	Area    float64
	Example int // index into Layout.Pieces
}

// Field is a part of the paving between movement joints.
type Field struct {
	Rect            // between the joints; the outer ones run to the ends of what is paved
	X, Y, Parts int // its place in the grid, and into how many parts (no slivers) outline and structural joints part it
}

// Areas are what covers the outline; their sum is the outline's area. A crossing of joints is counted once: structural
// joints within the perimeter gap are gap, movement joints within either are that.
type Areas struct{ Pavers, Grout, Movement, Structural, Perimeter, Slivers float64 }

// Sum is all of it.
func (a Areas) Sum() float64 {
	return a.Pavers + a.Grout + a.Movement + a.Structural + a.Perimeter + a.Slivers
}

// Layout is where every paver goes, in the pattern's axes.
type Layout struct {
	Grid         Grid
	Pieces       []Piece
	Cuts         []Cut
	Fields       []Field // those with paving in them
	Full         int     // pieces laid whole
	Areas        Areas
	GroutRun     unit.Length // of hard joints, between the pieces
	MovementRun  unit.Length
	StructureRun unit.Length // of structural joints
	PerimeterRun unit.Length // of edges that restrain
	SpanX, SpanY unit.Length // the longest between movement joints
	LinesX       []float64   // centres of the movement joints across the rows, at x
	LinesY       []float64   // centres of those along the rows, at y
}

// Candidate is a grid that the search found, with what it was judged by.
type Candidate struct {
	Grid     Grid
	Why      Why
	Estimate int // pavers to buy, roughly: the cuts are not nested
}

// Why is what a grid is judged by, in this order.
type Why struct {
	BalancedX, BalancedY bool    // the first and the last course on the axis are equally wide
	Narrowest            float64 // the narrowest cut that the outline makes, as a share of the paver's length or width; 1: none
	Cuts                 int     // pieces cut
	Full                 int     // pieces whole
	Spans                int     // movement joints, both ways
}
