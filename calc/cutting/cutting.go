// Package cutting nests rectangular pieces into sheets of one size, with cuts that each run straight across the part
// that lies on the saw (guillotine cuts), in three stages: the sheet into strips, a strip into stacks, a stack into
// pieces. A piece narrower than its stack is trimmed last.
package cutting

import (
	"math"

	"setbook/calc/unit"
)

// Size is a rectangle: W along x, L along y.
type Size struct{ W, L unit.Length }

// Piece is a rectangle wanted once. Turn allows it to be turned a quarter.
type Piece struct {
	Size
	Turn bool
}

// Edges are sides of a placed piece, as it lies in the sheet.
type Edges uint8

// The sides: Left and Right are at the ends of x, Bottom and Top at the ends of y.
const (
	Left Edges = 1 << iota
	Right
	Bottom
	Top
)

// Count is how many sides there are.
func (e Edges) Count() int { return int(e&1 + e>>1&1 + e>>2&1 + e>>3&1) }

// Placed is a piece in a sheet.
type Placed struct {
	Piece   int         // which of the pieces
	X, Y    unit.Length // its lower left corner, from the sheet's
	Turned  bool        // its W lies along y
	Factory Edges       // the sides that are the sheet's own, left as they came
}

// Cut is one straight cut across a part of a sheet.
type Cut struct {
	Part     [3]int      // what lies on the saw, counted from 1 as the parts lie: which strip, which stack of it, which piece of that; 0: none yet
	Stage    int         // 1 a strip off the sheet, 2 a stack off a strip, 3 a piece off a stack, 4 trimming a piece
	Upright  bool        // the line runs along y, at x = At; else along x, at y = At
	At       unit.Length // the edge that the cut leaves on the kept piece
	Beyond   bool        // the kept piece lies on the far side of At: the blade runs before the line, not past it
	From, To unit.Length // the part's ends along the line
	Wide     unit.Length // what it cuts off is so wide, from the edge of the part that is nearest on the kept side
}

// Plan is how the pieces are cut.
type Plan struct {
	Sheets [][]Placed
	Cuts   [][]Cut // of each sheet, in an order in which they can be made
	Bound  int     // no plan of any kind, guillotine or not, needs fewer sheets

	// What the bound is the larger of: how many pieces can be named of which no two fit on one sheet, and the most that weighing
	// them gives, by area or otherwise.
	Alone, Weighed int
}

// Nest places every piece once. Kerf is what a cut takes away between two parts; a sheet's own edge loses nothing, and
// a piece as large as what is left needs no cut. Going, which may be nil, is told how far it has come and reports false
// to have it end with the best so far. The result is the same on every machine. Where pieces fit no sheet, their
// indexes are returned and nothing is placed.
// Lengths count to an eighth of a micrometre: a piece is rounded up and a sheet down.
func Nest(sheet Size, kerf unit.Length, pieces []Piece, going func(done, of int) bool) (Plan, []int) {
	p := pose(sheet, kerf, pieces)
	if len(p.misfits) > 0 {
		return Plan{}, p.misfits
	}
	plan := p.bound()
	p.emit(&plan, p.search().run(plan.Bound, going))
	return plan, nil
}

// Rough is Nest in a small part of the time: what setting the pieces one after another gives.
func Rough(sheet Size, kerf unit.Length, pieces []Piece) (Plan, []int) {
	p := pose(sheet, kerf, pieces)
	if len(p.misfits) > 0 {
		return Plan{}, p.misfits
	}
	plan := p.bound()
	p.emit(&plan, p.search().rough())
	return plan, nil
}

// grain is how many steps a micrometre has here: eight hold a 64th of an inch exactly.
const grain = 8

// hair is what a length may be off by, in steps, and still count as whole ones: rounding of sums.
const hair = 1e-2

// upward and downward round to whole steps, but for a trace of rounding.
func upward(x unit.Length) int {
	steps := float64(x) * grain
	n := math.Floor(steps)
	if steps-n > hair {
		n++
	}
	return int(n)
}

func downward(x unit.Length) int { return -upward(-x) }

func length(steps int) unit.Length { return unit.Length(steps) / grain }
