package surface_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/surface"
)

// testdem1 is the grid of richdem, tests/depressions/testdem1.dem.
var testdem1 = [][]float64{
	{0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
	{0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
	{0, 2, 2, 2, 2, 0, 0, 0, 0, 0},
	{0, 2, 0, 0, 2, 2, 2, 2, 0, 0},
	{0, 2, 2, 2, 2, 0, 0, 2, 0, 0},
	{0, 0, 2, 0, 2, 0, 0, 2, 0, 0},
	{0, 0, 2, 2, 2, 0, 0, 2, 0, 0},
	{0, 0, 0, 0, 2, 2, 2, 2, 0, 0},
	{0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
	{0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
}

// The residuals of a least-squares plane sum to nought, alone and by x and by y (the normal equations); an exact plane leaves none.
func TestFitResiduals(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 300 {
		g := random(r, 12)
		p, ok := g.Fit()
		if !ok {
			continue
		}
		var sum, byX, byY float64
		for i, over := range g.Over(p) {
			if over == over {
				x, y := g.XY(g.Place(i))
				sum, byX, byY = sum+over, byX+over*(x-p.X), byY+over*(y-p.Y)
			}
		}
		require.InDelta(t, 0, sum, 1e-7)
		if !p.InLine {
			require.InDelta(t, 0, byX, 1e-6)
			require.InDelta(t, 0, byY, 1e-6)
		}
		exact := *g
		exact.Z = make([]float64, len(g.Z))
		for i, z := range g.Z {
			x, y := g.XY(g.Place(i))
			exact.Z[i] = 7 + 0.3*x - 0.2*y + 0*z // a gap stays one
		}
		q, _ := exact.Fit()
		if !q.InLine {
			require.InDelta(t, 0.3, q.B, 1e-9)
			require.InDelta(t, -0.2, q.C, 1e-9)
		}
		for _, over := range exact.Over(q) {
			require.False(t, math.Abs(over) > 1e-9)
		}
	}
}

// Readings in one line fix no plane, and that is told: along a row, a column, a diagonal.
func TestFitInLine(t *testing.T) {
	nan := math.NaN()
	for _, rows := range [][][]float64{
		{{0, 1, 2}}, {{0}, {1}, {2}},
		{{0, nan, nan}, {nan, 1, nan}, {nan, nan, 2}}, {{nan, nan, 2}, {nan, 1, nan}, {0, nan, nan}}, {{4, nan}, {nan, 2}},
	} {
		p, ok := surface.New(rows, 2, 3).Fit()
		require.True(t, ok)
		assert.True(t, p.InLine)
		for _, over := range surface.New(rows, 2, 3).Over(p) {
			assert.False(t, math.Abs(over) > 1e-12, "the best line through points in one straight line holds them all")
		}
	}
	for _, step := range []float64{0.1, 0.3, 0.7, 304.8e3, 1234.567} { // where the sums do not come out even
		g := &surface.Grid{Wide: 15, Deep: 8, StepX: step, StepY: 1.1 * step, Z: make([]float64, 15*8)}
		for i := range g.Z {
			g.Z[i] = nan
			if p := g.Place(i); p.Col == 2*p.Row {
				g.Z[i] = float64(p.Row * p.Row)
			}
		}
		p, ok := g.Fit()
		assert.True(t, ok)
		assert.True(t, p.InLine, step)
	}
	p, ok := surface.New([][]float64{{0, 1}, {0, nan}}, 1, 1).Fit()
	assert.True(t, ok)
	assert.False(t, p.InLine)
	_, ok = surface.New([][]float64{{0, nan}}, 1, 1).Fit()
	assert.False(t, ok)
	for _, over := range surface.New([][]float64{{0, 1}, {2, 3}, {0, 5}, {2, 3}}, 1, 1e5).Over(p) {
		assert.False(t, math.IsNaN(over))
	}
}

// The worked grids, each to a level. Depths are the target less the heights.
func TestVolumes(t *testing.T) {
	to := func(rows [][]float64, x, y, target float64) surface.Volumes {
		g := surface.New(rows, x, y)
		for i := range g.Z {
			g.Z[i] = target - g.Z[i]
		}
		return g.To(g.Z)
	}
	// 50 ft by 50 ft, mean 87.85, fill 2.15 ft: 5,375 ft3 (https://expertsmind.com/topic/civil-engineering/calculation-of-earth-work-from-spot-levels-91967.aspx).
	v := to([][]float64{{87.6, 87.6}, {87.6, 88.6}}, 50, 50, 90)
	assert.InDelta(t, 5375, v.Fill, 1e-6)
	assert.InDelta(t, 5375, v.NetFill, 1e-6)
	assert.Zero(t, v.Cut)
	// 10 m by 10 m: cut 37.5 m3, fill 22.5 m3, each sort of corner for itself (a question bank, askfilo); either way the net is 15.
	v = to([][]float64{{101, 100.5}, {99.8, 99.3}}, 10, 10, 100)
	assert.InDelta(t, 37.5, v.Cut, 1e-9)
	assert.InDelta(t, 22.5, v.Fill, 1e-9)
	assert.InDelta(t, 15, v.NetCut-v.NetFill, 1e-9)
	assert.InDelta(t, 22.5*22.5/60, v.NetFill, 1e-9, "hand calculation: A/4 · 0.9² ÷ 2.4")
	// 20 m by 20 m, depths published (question bank), total by the weights of the borrow-pit rule by hand: 16,065 m3.
	v = to([][]float64{{2.76, 7.14, 8.72, 10.10}, {5.21, 6.77, 7.82, 8.07}, {3.98, 4.31, 5.55, 7.45}}, 20, 20, 0)
	assert.InDelta(t, 16065, v.Cut, 0.5)
	assert.InDelta(t, 400.0/4*(24.29+78.0+58.36), v.Cut, 1e-6)
	assert.Equal(t, 2400.0, v.Area)
	// 10 m by 5 m cells to level 50: 443.75 m3, by hand.
	v = to([][]float64{{51, 53, 54}, {53, 51, 52}, {52, 53, 52.5}}, 10, 5, 50)
	assert.InDelta(t, 443.75, v.Cut, 1e-9)
	// A corner missing: the triangle of the other three, its area by their mean. Two missing: nothing.
	v = to([][]float64{{1, 2}, {3, math.NaN()}}, 2, 3, 0)
	assert.InDelta(t, 6.0/2*2, v.Cut, 1e-12)
	assert.InDelta(t, 3, v.Area, 1e-12)
	assert.Zero(t, to([][]float64{{1, 2}, {math.NaN(), math.NaN()}}, 2, 3, 0).Area)
	// At the target: nothing either way.
	v = to([][]float64{{4, 4}, {4, 4}}, 1, 1, 4)
	assert.Equal(t, surface.Volumes{Area: 1}, v)
}

// On any grid both conventions leave the same net, and the first is never less than the second.
func TestVolumesNet(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for range 200 {
		g := random(r, 9)
		for i := range g.Z {
			g.Z[i] -= 0.5
		}
		v := g.To(g.Z)
		require.InDelta(t, v.Fill-v.Cut, v.NetFill-v.NetCut, 1e-9)
		require.LessOrEqual(t, v.NetFill, v.Fill+1e-12)
		require.InDelta(t, v.FillSum*g.StepX*g.StepY, v.Fill, 1e-12)
	}
}

// Every end of a piece of contour lies on a side of the grid's cells, at the level by straight interpolation; on a plane
// the pieces of one level join into one straight line across the grid.
func TestContour(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	for range 100 {
		g := random(r, 9)
		low, high := g.Range()
		if !(high > low) {
			continue
		}
		between := func(a, b surface.Spot, level float64) {
			for _, s := range []surface.Spot{a, b} {
				x, y := s.X/g.StepX, s.Y/g.StepY
				col, row := math.Floor(x+1e-9), math.Floor(y+1e-9)
				z := g.At(surface.Place{Col: int(col), Row: int(row)})
				next := surface.Place{Col: int(math.Ceil(x - 1e-9)), Row: int(math.Ceil(y - 1e-9))}
				share := math.Max(x-col, y-row)
				require.InDelta(t, 0, math.Min(math.Abs(x-col), math.Abs(y-row)), 1e-6, "on a side")
				require.InDelta(t, level, z+share*(g.At(next)-z), 1e-6*(high-low+1))
			}
		}
		g.Contour(low, (high-low)/3.7, func(level float64, a, b surface.Spot) { between(a, b, level) })
	}
	plane := surface.New([][]float64{{0, 1, 2, 3}, {0, 1, 2, 3}, {0, 1, 2, 3}}, 1, 1)
	long := map[float64]float64{}
	plane.Contour(0.5, 1, func(level float64, a, b surface.Spot) {
		assert.Equal(t, level, a.X)
		assert.Equal(t, level, b.X)
		long[level] += math.Abs(a.Y - b.Y)
	})
	assert.Equal(t, map[float64]float64{0.5: 2, 1.5: 2, 2.5: 2}, long)
}

// Pieces that meet are strung into one line: a hill's contours are closed, a slope's run from side to side, and no length is lost.
func TestJoin(t *testing.T) {
	pieces := func(g *surface.Grid, low, step float64) (all [][2]surface.Spot, long float64) {
		g.Contour(low, step, func(_ float64, a, b surface.Spot) {
			all = append(all, [2]surface.Spot{a, b})
			long += math.Hypot(a.X-b.X, a.Y-b.Y)
		})
		return all, long
	}
	hill, _ := pieces(surface.New([][]float64{{0, 0, 0, 0}, {0, 3, 4, 0}, {0, 4, 3, 0}, {0, 0, 0, 0}}, 0.3, 0.7), 0, 0.9)
	lines := surface.Join(hill)
	assert.Len(t, lines, 5, "0.9, 1.8, 2.7, and 3.6 round each of the two tops, which 3.5 lies between")
	for _, line := range lines {
		assert.Equal(t, line[0], line[len(line)-1], "closed")
	}
	r := rand.New(rand.NewPCG(23, 24))
	for range 50 {
		g := random(r, 12)
		low, high := g.Range()
		if !(high > low) {
			continue
		}
		all, want := pieces(g, low, (high-low)/2.7)
		got := 0.0
		for _, line := range surface.Join(all) {
			for k := 1; k < len(line); k++ {
				got += math.Hypot(line[k].X-line[k-1].X, line[k].Y-line[k-1].Y)
			}
		}
		assert.InDelta(t, want, got, 1e-9*(want+1))
	}
	slope, _ := pieces(surface.New([][]float64{{0, 1, 2.1}, {0.2, 1.1, 2.3}, {0, 1, 2}, {0.3, 1, 2}}, 0.1, 0.1), 0.55, 1)
	assert.Len(t, surface.Join(slope), 2)
}

// A saddle joins the corners that its middle is nearer to.
func TestContourSaddle(t *testing.T) {
	for _, c := range []struct {
		z     [][]float64
		joins bool // the high corners (first and last) to each other
	}{{[][]float64{{4, 0}, {1, 4}}, true}, {[][]float64{{3, 0}, {0, 3}}, false}} {
		g := surface.New(c.z, 1, 1)
		pieces := 0
		g.Contour(2, 10, func(_ float64, a, b surface.Spot) {
			pieces++
			x, y := (a.X+b.X)/2, (a.Y+b.Y)/2 // near the corner that is cut off
			high := (x < 0.5) == (y < 0.5)
			assert.Equal(t, c.joins, !high)
		})
		assert.Equal(t, 2, pieces)
	}
}

func TestFall(t *testing.T) {
	g := surface.New([][]float64{{0, 2}, {5, 7}}, 2, 5)
	b, c, ok := g.Fall(surface.Place{Col: 1, Row: 1})
	assert.True(t, ok)
	assert.Equal(t, 1.0, b)
	assert.Equal(t, 1.0, c)
	_, _, ok = surface.New([][]float64{{0, 2}, {5, math.NaN()}}, 2, 5).Fall(surface.Place{Col: 1, Row: 1})
	assert.False(t, ok)
}
