package surface

import (
	"math"
	"slices"
)

// Spot is a point in the plan of a grid.
type Spot struct{ X, Y float64 }

// Contour calls each with the two ends of every piece of the contour lines at heights from low on, a step apart. Each
// cell between four readings gives its own pieces (marching squares), straight between points on its sides. Where two opposite corners
// are high and two low, the mean of the four tells which of them join. Cells with a gap give none. Source: source.MarchingSquares.
func (g *Grid) Contour(low, step float64, each func(level float64, a, b Spot)) {
	for row := 1; row < g.Deep; row++ {
		for col := 1; col < g.Wide; col++ {
			i := row*g.Wide + col
			c := cell{g.Z[i-g.Wide-1], g.Z[i-g.Wide], g.Z[i], g.Z[i-1]}
			if sum := c[0] + c[1] + c[2] + c[3]; sum != sum {
				continue
			}
			least, most := c[0], c[0] // by hand: min and max of floats are slow in WebAssembly
			for _, z := range c[1:] {
				if z < least {
					least = z
				} else if z > most {
					most = z
				}
			}
			for k := math.Floor((least-low)/step) + 1; low+k*step <= most; k++ { // from above the lowest corner on
				level := low + k*step
				c.cut(level, func(a, b Spot) {
					x, y := float64(col-1), float64(row-1)
					each(level, Spot{(x + a.X) * g.StepX, (y + a.Y) * g.StepY}, Spot{(x + b.X) * g.StepX, (y + b.Y) * g.StepY})
				})
			}
		}
	}
}

// cell is the heights at the corners of a cell, in order round it from the first reading of the first row.
type cell [4]float64

// corners of a cell of side 1, in the same order.
var corners = [4]Spot{{0, 0}, {1, 0}, {1, 1}, {0, 1}}

// cut gives the pieces of one contour in the cell.
func (c *cell) cut(level float64, each func(a, b Spot)) {
	var crossings [4]Spot
	n := 0
	for side := range 4 {
		a, b := c[side], c[(side+1)&3]
		if (a < level) == (b < level) {
			continue
		}
		p, q := corners[side], corners[(side+1)&3]
		if side > 1 { // from the same end as the cell beyond this side takes it, so that both find the very same point
			a, b, p, q = b, a, q, p
		}
		t := (level - a) / (b - a)
		crossings[n] = Spot{p.X + t*(q.X-p.X), p.Y + t*(q.Y-p.Y)}
		n++
	}
	switch {
	case n == 2:
		each(crossings[0], crossings[1])
	case n == 4:
		// Crossing 0 is on the side from corner 0 to corner 1. Where the middle is as corner 0, corners 1 and 3 are cut off.
		middle := (c[0] + c[1] + c[2] + c[3]) / 4
		if (middle < level) == (c[0] < level) {
			each(crossings[0], crossings[1])
			each(crossings[2], crossings[3])
			return
		}
		each(crossings[3], crossings[0])
		each(crossings[1], crossings[2])
	}
}

// Join strings pieces of contours together where they meet end to end.
func Join(pieces [][2]Spot) (lines [][]Spot) {
	for len(pieces) > 0 {
		last := pieces[len(pieces)-1]
		pieces = pieces[:len(pieces)-1]
		line := []Spot{last[0], last[1]}
		for range 2 { // on from one end, then from the other
			for more := true; more; {
				more = false
				end := line[len(line)-1]
				for i, p := range pieces {
					if p[0] != end && p[1] != end {
						continue
					}
					next := p[0]
					if next == end {
						next = p[1]
					}
					line = append(line, next)
					pieces[i] = pieces[len(pieces)-1]
					pieces = pieces[:len(pieces)-1]
					more = true
					break
				}
			}
			slices.Reverse(line)
		}
		lines = append(lines, line)
	}
	return lines
}

// Fall is the rise along x and along y of the cell whose last corner is at a place, a length by a length: of the plane that fits
// its four corners best. It reports false where one is missing.
func (g *Grid) Fall(p Place) (b, c float64, ok bool) {
	i := p.Row*g.Wide + p.Col
	z00, z10, z01, z11 := g.Z[i-g.Wide-1], g.Z[i-g.Wide], g.Z[i-1], g.Z[i]
	b = (z10 - z00 + z11 - z01) / 2 / g.StepX
	c = (z01 - z00 + z11 - z10) / 2 / g.StepY
	return b, c, b == b
}
