// Command grid times the kernels of calc/surface on a slab of 1,000 by 1,000 readings. It is built for this machine and for
// WebAssembly by scripts/bench, and prints one line a kernel: its name, milliseconds of processor time, and a figure of its result,
// by which versions of it are compared.
package main

import (
	"fmt"
	"math"
	"os"
	"strconv"

	"setbook/calc/surface"
)

// slab is a slab that falls 2 % along x, with long waves, hollows a foot or two across and the trowel's noise; lengths in mm. The noise is
// a generator that any language works out alike (Park and Miller 1988).
func slab(n int) *surface.Grid {
	g := &surface.Grid{Wide: n, Deep: n, StepX: 25, StepY: 25, Z: make([]float64, n*n)}
	seed := 1.0
	for row := range n {
		for col := range n {
			seed = math.Mod(seed*16807, 2147483647)
			x, y := float64(col)*25, float64(row)*25
			g.Z[row*n+col] = -0.02*x + 3*math.Sin(x/700)*math.Cos(y/900) + 1.2*math.Sin(x/130+y/170) + seed/2147483647
		}
	}
	return g
}

func main() {
	n, runs := 1000, 7
	if len(os.Args) > 2 {
		n, _ = strconv.Atoi(os.Args[1])
		runs, _ = strconv.Atoi(os.Args[2])
	}
	g := slab(n)
	for range runs {
		var plane *surface.Plane
		var over []float64
		timed("plane", func() float64 {
			plane, _ = g.Fit()
			over = g.Over(plane)
			return plane.Slope()
		})
		timed("straightedges", func() float64 {
			gaps := g.Worst(nil, 3048, 609.6)
			return gaps[0].Depth + gaps[1].Depth
		})
		timed("ponds", func() float64 { return g.Ponds().Sum })
		timed("volume", func() float64 {
			for i, z := range over {
				over[i] = -z
			}
			return g.To(over).Fill
		})
		timed("contours", func() (long float64) {
			g.Contour(-500, 50, func(_ float64, a, b surface.Spot) { long += math.Hypot(a.X-b.X, a.Y-b.Y) })
			return long
		})
		timed("falls", func() (sum float64) {
			for row := 1; row < g.Deep; row++ {
				for col := 1; col < g.Wide; col++ {
					b, c, _ := g.Fall(surface.Place{Col: col, Row: row})
					sum += math.Sqrt(b*b + c*c)
				}
			}
			return sum
		})
	}
}

func timed(name string, work func() float64) {
	start := clock()
	got := work()
	fmt.Println(name, float64((clock()-start).Microseconds())/1000, got)
}
