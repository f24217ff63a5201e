package surface_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/surface"
)

// brute is the worst gap by its definition, with no hull: for every three readings in one line, the outer two no
// farther apart than the straightedge, how far the middle one lies below the straight line between the others.
func brute(g *surface.Grid, length float64) (worst float64) {
	for i := range g.Z {
		p := g.Place(i)
		for _, way := range [][2]int{{1, 0}, {0, 1}, {1, 1}, {1, -1}} {
			long := math.Hypot(float64(way[0])*g.StepX, float64(way[1])*g.StepY)
			at := func(k int) float64 {
				q := surface.Place{Col: p.Col + k*way[0], Row: p.Row + k*way[1]}
				if q.Col < 0 || q.Col >= g.Wide || q.Row < 0 || q.Row >= g.Deep {
					return math.NaN()
				}
				return g.At(q)
			}
			for n := 2; float64(n)*long <= length*(1+1e-9) && n < g.Wide+g.Deep; n++ {
				for k := 1; k < n; k++ {
					gap := at(0) + (at(n)-at(0))*float64(k)/float64(n) - at(k)
					if gap > worst {
						worst = gap
					}
				}
			}
		}
	}
	return worst
}

// random is a grid of one of several sorts of surface, some with gaps.
func random(r *rand.Rand, most int) *surface.Grid {
	w, d := 1+r.IntN(most), 1+r.IntN(most)
	g := &surface.Grid{Wide: w, Deep: d, StepX: 0.1 + r.Float64(), StepY: 0.1 + r.Float64(), Z: make([]float64, w*d)}
	sort, gaps := r.IntN(6), r.IntN(3) == 0
	for i := range g.Z {
		x, y := g.XY(g.Place(i))
		switch sort {
		case 0: // noise
			g.Z[i] = r.Float64()
		case 1: // bowl
			g.Z[i] = x*x + y*y + 0.01*r.Float64()
		case 2: // dome
			g.Z[i] = -x*x - y*y + 0.01*r.Float64()
		case 3: // whole steps, many ties
			g.Z[i] = float64(r.IntN(3))
		case 4: // waves on a slope
			g.Z[i] = math.Sin(3*x) + math.Cos(2*y) + x + 2*y
		case 5: // a straight plane with a few dents
			g.Z[i] = 0.02*x - 0.01*y
			if r.IntN(8) == 0 {
				g.Z[i] -= r.Float64()
			}
		}
		if gaps && r.IntN(6) == 0 {
			g.Z[i] = math.NaN()
		}
	}
	return g
}

// The upper hull finds the same worst gap as trying every three readings, at every length; and the gap that it
// names is there where it says.
func TestWorstAgainstEveryThree(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 400 {
		g := random(r, 22)
		lengths := []float64{0.3 + r.Float64(), 1 + 3*r.Float64(), 5 + 20*r.Float64()}
		for i, gap := range g.Worst(nil, lengths...) {
			require.InDelta(t, brute(g, lengths[i]), gap.Depth, 1e-9, "%d by %d, length %v", g.Wide, g.Deep, lengths[i])
			if gap.Depth > 0 {
				x0, y0 := g.XY(gap.From)
				x1, y1 := g.XY(gap.To)
				x, y := g.XY(gap.At)
				share := math.Hypot(x-x0, y-y0) / math.Hypot(x1-x0, y1-y0)
				require.InDelta(t, g.At(gap.From)+share*(g.At(gap.To)-g.At(gap.From))-g.At(gap.At), gap.Depth, 1e-9)
				require.InDelta(t, math.Hypot(x1-x0, y1-y0), gap.Span, 1e-9)
				require.LessOrEqual(t, gap.Span, lengths[i]*(1+2e-9))
			}
		}
	}
}

// Long lines have many blocks and many bridges.
func TestWorstOnLongLines(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 20 {
		n := 100 + r.IntN(200)
		g := &surface.Grid{Wide: n, Deep: 1, StepX: 1, StepY: 1, Z: make([]float64, n)}
		walk := 0.0
		for i := range g.Z {
			walk += r.NormFloat64()
			g.Z[i] = walk
		}
		for _, length := range []float64{2, 7, 31, 90, 500} {
			require.InDelta(t, brute(g, length), g.Worst(nil, length)[0].Depth, 1e-9, "length %v", length)
		}
	}
}

// Short lines by the thousand, domes among them, where the bridge between two hulls moves most.
func TestWorstOnManyLines(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	for range 5_000 {
		n := 6 + r.IntN(30)
		g := &surface.Grid{Wide: n, Deep: 1, StepX: 1, StepY: 1, Z: make([]float64, n)}
		dome, dent, walk := r.Float64(), r.Float64(), 0.0
		for i := range g.Z {
			walk += r.NormFloat64()
			x := float64(i) - float64(n)*r.Float64()*0.1 - float64(n)/2
			g.Z[i] = -dome*x*x + dent*walk
			if r.IntN(5) == 0 {
				g.Z[i] -= 10 * r.Float64()
			}
		}
		length := 2 + float64(r.IntN(n))
		require.InDelta(t, brute(g, length), g.Worst(nil, length)[0].Depth, 1e-9, "%v at %v", g.Z, length)
	}
}

// A plane added to the heights changes no gap, a mirrored grid has the same gap mirrored.
func TestWorstKeeps(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 100 {
		g := random(r, 15)
		tilted, mirrored := *g, *g
		tilted.Z, mirrored.Z = make([]float64, len(g.Z)), make([]float64, len(g.Z))
		b, c := r.NormFloat64(), r.NormFloat64()
		for i, z := range g.Z {
			x, y := g.XY(g.Place(i))
			p := g.Place(i)
			tilted.Z[i] = z + 3 + b*x + c*y
			mirrored.Z[p.Row*g.Wide+g.Wide-1-p.Col] = z
		}
		length := 0.3 + 5*r.Float64()
		want := g.Worst(nil, length)[0].Depth
		assert.InDelta(t, want, tilted.Worst(nil, length)[0].Depth, 1e-9)
		assert.InDelta(t, want, mirrored.Worst(nil, length)[0].Depth, 1e-9)
	}
}

// A straightedge that reaches no third reading tells nothing; one that lies on a straight line tells that there is no gap.
func TestWorstUnseen(t *testing.T) {
	g := surface.New([][]float64{{0, 1, 2}, {0, 1, 2}, {0, 1, 2}}, 1, 1)
	gaps := g.Worst(nil, 1.9, 2)
	assert.Zero(t, gaps[0].Span)
	assert.Equal(t, 2.0, gaps[1].Span)
	assert.Zero(t, gaps[1].Depth)
}

// slac is a concrete test pad's survey, lines j0, j2 and j4, mm at 300 mm: Stanford Linear Accelerator Center, SPEAR3, ASTM E1155M
// spreadsheet, https://ar.scribd.com/document/307378825/Astm-Results.
var slac = map[string][]float64{
	"j0": {418.617, 419.938, 421.894, 423.748, 425.221, 424.739, 423.799, 424.307, 425.425, 424.688, 423.164, 422.758, 420.472, 416.738},
	"j2": {418.338, 419.659, 419.227, 419.227, 418.668, 418.186, 418.973, 419.379, 420.141, 419.532, 418.643, 418.719, 416.763, 414.782},
	"j4": {418.846, 418.135, 418.998, 419.405, 420.294, 420.370, 421.640, 421.259, 422.910, 423.926, 424.053, 423.164, 422.732, 422.834, 421.513},
}

// The heights are published; the gaps are read off them by hand, as the middle less the mean of its neighbours (600 mm), and by
// the hull of each window in a short script (3.0 m).
func TestWorstSLAC(t *testing.T) {
	for name, want := range map[string][2]float64{"j0": {0.724, 1.524}, "j2": {0.635, 1.748}, "j4": {1.016, 1.538}} {
		g := surface.New([][]float64{slac[name]}, 300, 300)
		gaps := g.Worst(nil, 600, 3000)
		assert.InDelta(t, want[0], gaps[0].Depth, 0.0005, name)
		assert.InDelta(t, want[1], gaps[1].Depth, 0.002, name)
	}
}

// FF from the published heights by the published definitions. The constant 4.57 in = 116.078 mm is from memory, so the figures are a hand
// calculation; the curvatures are printed in the spreadsheet.
func TestBendSLAC(t *testing.T) {
	printed := []float64{0.635, -0.102, -0.381, -1.956, -0.457, 1.448, 0.610, -1.854, -0.787, 1.118, -1.880, -1.448} // j0
	sum := 0.0
	for _, q := range printed {
		sum += q
	}
	assert.InDelta(t, sum/12, surface.Bend(slac["j0"]).Mean, 0.001)
	assert.Equal(t, 12, surface.Bend(slac["j0"]).Bends)
	for k, q := range printed[:len(printed)-1] { // pairs, since one curvature has no spread
		got := surface.Bend(slac["j0"][k : k+4])
		assert.InDelta(t, (q+printed[k+1])/2, got.Mean, 0.002)
	}
	for name, want := range map[string]float64{"j0": 28.84, "j2": 34.63, "j4": 32.49} {
		assert.InDelta(t, want, 116.078/surface.Bend(slac[name]).Rough(), 0.01, name)
	}
	assert.Zero(t, surface.Bend([]float64{0, 2, 4, 6, 8}).Rough(), "a straight slope is flat")
	assert.Zero(t, surface.Bend([]float64{1, 5, 9}).Bends-1)
}

// Once flattened no straightedge lies over more than its limit, nothing is lowered, and flattening again raises nothing.
func TestFlatten(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 60 {
		g := random(r, 12)
		lengths, limits := []float64{2, 0.5}, []float64{0.1, 0.05}
		raised := g.Flatten(lengths, limits, nil)
		flat := &surface.Grid{Wide: g.Wide, Deep: g.Deep, StepX: g.StepX, StepY: g.StepY, Z: make([]float64, len(g.Z))}
		for i, up := range raised {
			flat.Z[i] = g.Z[i] + up
			assert.False(t, up < 0)
		}
		for i, length := range lengths {
			assert.LessOrEqual(t, brute(flat, length), limits[i]+0.001)
		}
		for _, up := range flat.Flatten(lengths, limits, nil) {
			assert.False(t, up > 0.001)
		}
	}
	// The least: one hollow of 1 between level ends, on a limit of a quarter, rises by three quarters.
	g := surface.New([][]float64{{0, -1, 0}}, 1, 1)
	assert.Equal(t, []float64{0, 0.75, 0}, g.Flatten([]float64{2}, []float64{0.25}, nil))
}
