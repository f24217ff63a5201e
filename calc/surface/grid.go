// Package surface works on heights read on a grid: the plane that fits them best, the gap under
// a straightedge laid anywhere, where water stands, what fills a hollow, and contours. A grid may
// have gaps (NaN), where nothing was or could be read: a post, a drain, a planter.
//
// Heights and steps are in one unit of length. Areas and volumes are in that unit squared and cubed.
package surface

import "math"

// Grid is heights in rows, the first reading of the first row at the corner where x and y are nought.
// X runs along a row, y from each row to the next.
type Grid struct {
	Wide, Deep   int     // readings in a row, rows
	StepX, StepY float64 // from one reading to the next, from one row to the next
	Z            []float64
}

// New makes a grid of rows of one length.
func New(rows [][]float64, stepX, stepY float64) *Grid {
	g := &Grid{Deep: len(rows), StepX: stepX, StepY: stepY}
	if g.Deep > 0 {
		g.Wide = len(rows[0])
	}
	g.Z = make([]float64, 0, g.Wide*g.Deep)
	for _, row := range rows {
		g.Z = append(g.Z, row...)
	}
	return g
}

// Place is a reading by its place in its row and its row, both counted from nought.
type Place struct{ Col, Row int }

// Place is where the reading at an index stands.
func (g *Grid) Place(index int) Place { return Place{index % g.Wide, index / g.Wide} }

// At is the height at a place, NaN in a gap.
func (g *Grid) At(p Place) float64 { return g.Z[p.Row*g.Wide+p.Col] }

// XY is how far along x and y a place stands.
func (g *Grid) XY(p Place) (x, y float64) {
	return float64(p.Col) * g.StepX, float64(p.Row) * g.StepY
}

// Range is the lowest and the highest reading.
func (g *Grid) Range() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, z := range g.Z {
		if z < low {
			low = z
		}
		if z > high {
			high = z
		}
	}
	return low, high
}

// with is the same grid with other heights.
func (g *Grid) with(z []float64) *Grid {
	return &Grid{g.Wide, g.Deep, g.StepX, g.StepY, z}
}
