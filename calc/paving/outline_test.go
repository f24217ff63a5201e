package paving

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

func TestProblemsAreNamed(t *testing.T) {
	sound := rectangle(0, 0, 3000, 2000)
	p := Paver{600 * mmU, 600 * mmU, 5 * mmU}
	for _, c := range []struct {
		name    string
		outline Outline
		paver   Paver
		pattern Pattern
		joints  Joints
		want    Fault
	}{
		{"two corners", Outline{Corners: sound[:2]}, p, Pattern{}, Joints{}, Fault{Problem: FewCorners}},
		{"nowhere", Outline{Corners: []Point{{0, 0}, {1e6, 0}, {math.NaN(), 1}}}, p, Pattern{}, Joints{}, Fault{Problem: NotANumber, Corner: 2}},
		{"repeated", Outline{Corners: append(rectangle(0, 0, 3000, 2000), Point{0, 50})}, p, Pattern{}, Joints{}, Fault{Problem: Repeated, Corner: 0, Other: 4}},
		{"bow tie", Outline{Corners: []Point{{0, 0}, {3e6, 2e6}, {3e6, 0}, {0, 2e6}}}, p, Pattern{}, Joints{}, Fault{Problem: Crossing, Corner: 0, Other: 2}},
		{"there and back", Outline{Corners: []Point{{0, 0}, {3e6, 0}, {1e6, 0}, {1e6, 1e6}}}, p, Pattern{}, Joints{}, Fault{Problem: Crossing, Corner: 0, Other: 1}},
		{"touching itself", Outline{Corners: []Point{{0, 0}, {3e6, 0}, {3e6, 1e6}, {1e6, 0}, {0, 1e6}}}, p, Pattern{}, Joints{}, Fault{Problem: Crossing, Corner: 0, Other: 2}},
		{"hole outside", Outline{Corners: sound, Holes: [][]Point{rectangle(4000, 0, 100, 100)}}, p, Pattern{}, Joints{}, Fault{Problem: HoleOutside, Hole: 1}},
		{"hole about the outline", Outline{Corners: sound, Holes: [][]Point{rectangle(-100, -100, 9000, 9000)}}, p, Pattern{}, Joints{}, Fault{Problem: HoleOutside, Hole: 1}},
		{"hole across", Outline{Corners: sound, Holes: [][]Point{rectangle(-50, 100, 100, 100)}}, p, Pattern{}, Joints{}, Fault{Problem: HoleTouches, Hole: 1}},
		{"hole at the edge", Outline{Corners: sound, Holes: [][]Point{rectangle(0, 100, 100, 100)}}, p, Pattern{}, Joints{}, Fault{Problem: HoleTouches, Hole: 1}},
		{"hole in a hole", Outline{Corners: sound, Holes: [][]Point{rectangle(500, 500, 500, 500), rectangle(600, 600, 100, 100)}}, p, Pattern{}, Joints{}, Fault{Problem: HoleTouches, Hole: 2}},
		{"no joint", Outline{Corners: sound}, Paver{p.L, p.W, 0}, Pattern{}, Joints{}, Fault{Problem: BadPaver}},
		{"no paver", Outline{Corners: sound}, Paver{p.L, 1000, p.Joint}, Pattern{}, Joints{}, Fault{Problem: BadPaver}},
		{"half offset", Outline{Corners: sound}, p, Pattern{Offset: 0.5}, Joints{}, Fault{Problem: BadOffset}},
		{"over a third", Outline{Corners: sound}, p, Pattern{Offset: 0.34}, Joints{}, Fault{Problem: BadOffset}},
		{"no width", Outline{Corners: sound}, p, Pattern{}, Joints{Longest: 3 * unit.Metre}, Fault{Problem: BadJoint}},
		{"short span", Outline{Corners: sound}, p, Pattern{}, Joints{Movement: 12 * mmU, Longest: 600 * mmU}, Fault{Problem: SpanTooShort}},
		{"all gap", Outline{Corners: rectangle(0, 0, 3000, 18), Edges: []Edge{Wall, Wall, Wall, Wall}}, p, Pattern{}, Joints{Perimeter: 10 * mmU}, Fault{Problem: NothingLeft}},
		{"too many", Outline{Corners: rectangle(0, 0, 9e5, 9e5)}, p, Pattern{}, Joints{}, Fault{Problem: TooMany}},
		{"too many corners", Outline{Corners: make([]Point, MostCorners+1)}, p, Pattern{}, Joints{}, Fault{Problem: TooManyCorners}},
	} {
		g, faults := Prepare(&c.outline, c.paver, c.pattern, c.joints)
		assert.Nil(t, g, c.name)
		assert.Equal(t, []Fault{c.want}, faults, c.name)
	}
	_, faults := Prepare(&Outline{Corners: sound}, p, Pattern{Offset: 1.0 / 3}, Joints{})
	assert.Empty(t, faults, "a third is allowed")
}

// Independent: the triangle with sides 3, 4, 5 closes; its angles are a right one, atan(3/4) and atan(4/3).
func TestWalkClosesATriangle(t *testing.T) {
	m := unit.Metre
	small := unit.Angle(math.Atan2(3, 4) * 180 / math.Pi)
	corners, gap := Walk([]unit.Length{4 * m, 3 * m, 5 * m}, []unit.Angle{90, 90 - small, small})
	require.Len(t, corners, 3)
	assert.InDelta(t, 4, corners[1].X/float64(m), 1e-9)
	assert.InDelta(t, 3, corners[2].Y/float64(m), 1e-9)
	assert.Less(t, length(gap), 1e-3)
	// A side measured 10 mm short leaves 10 mm open.
	_, gap = Walk([]unit.Length{4 * m, 3 * m, 5*m - 10*mmU}, []unit.Angle{90, 90 - small})
	assert.InDelta(t, 10, length(gap)/mm, 1e-6)
	// Right angles are exact: an L of whole millimetres closes to nothing.
	_, gap = Walk([]unit.Length{6 * m, 2 * m, 4 * m, 3 * m, 2 * m, 5 * m}, []unit.Angle{90, 90, 270, 90, 90, 90})
	assert.Equal(t, Point{}, gap)
}

func TestDiagonalsFixTheOutline(t *testing.T) {
	d := (&Outline{Corners: rectangle(0, 0, 4000, 3000)}).Diagonals()
	require.Len(t, d, 2)
	for _, one := range d {
		assert.InDelta(t, 5, float64(one.Length/unit.Metre), 1e-9) // 3, 4, 5
	}
	// A rigid frame of n pin joints in a plane has 2n-3 bars (Maxwell): n sides and n-3 diagonals.
	each(t, 7, 200, func(_ *rand.Rand, j *job, _ *Ground) {
		o := &j.outline
		if len(o.Corners) == 4 {
			return
		}
		ds := o.Diagonals()
		require.Len(t, ds, len(o.Corners)-3)
		for _, d := range ds {
			a, b := o.Corners[d.From], o.Corners[d.To]
			require.InDelta(t, length(minus(b, a)), float64(d.Length), 1)
			require.True(t, within(Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}, [][]Point{o.Corners}), "a tape lies on the outline")
		}
	})
}

func TestRowsAlongAnEdge(t *testing.T) {
	o := &Outline{Corners: []Point{{0, 0}, {4e6, 1e6}, {3e6, 5e6}, {-1e6, 4e6}}} // a square, askew
	want := math.Atan2(1, 4) * 180 / math.Pi
	for i := range 4 {
		assert.InDelta(t, want, float64(o.Along(i)), 1e-9, "edge %d", i)
	}
	g, faults := Prepare(o, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{Turn: o.Along(0)}, Joints{})
	require.Empty(t, faults)
	side := math.Sqrt(17) * 1e6
	assert.InDelta(t, side, g.reach.X1-g.reach.X0, 1)
	assert.InDelta(t, side, g.reach.Y1-g.reach.Y0, 1)
	p := Point{123, 456}
	back := g.Site(g.Along(p))
	assert.InDelta(t, p.X, back.X, 1e-9)
	assert.InDelta(t, p.Y, back.Y, 1e-9)
}
