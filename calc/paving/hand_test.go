package paving

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

const (
	mmU = unit.Millimetre
	m2  = 1e12 // µm²
)

func laid(t *testing.T, o *Outline, p Paver, pattern Pattern, j Joints, at Point) (*Ground, Layout) {
	t.Helper()
	g, faults := Prepare(o, p, pattern, j)
	require.Empty(t, faults)
	l := g.Lay(g.Start(at))
	holds(t, &job{*o, p, pattern, j}, g, &l)
	return g, l
}

// Published: Builder (NAVEDTRA 14045), table 4-5: an 8 by 2 1/4 in unit with a 1/2 in joint takes 6.16 a square foot, 690 on
// 8 by 14 ft. Masonry and Concrete (Beall), p. 140: a module of 4 by 8 in takes 4.5 a square foot.
func TestCountsOfPublishedModules(t *testing.T) {
	foot := float64(unit.Foot)
	whole := func(p Paver, columns, rows float64) float64 {
		wide, high := columns*float64(p.L+p.Joint), rows*float64(p.W+p.Joint)
		_, l := laid(t, &Outline{Corners: []Point{{0, 0}, {wide, 0}, {wide, high}, {0, high}}}, p, Pattern{}, Joints{}, Point{})
		require.Equal(t, l.Full, len(l.Pieces), "whole modules need no cut")
		return float64(l.Full) / (wide * high / foot / foot)
	}
	assert.InDelta(t, 6.16, whole(Paver{8 * unit.Inch, 2.25 * unit.Inch, 0.5 * unit.Inch}, 20, 60), 0.005)
	assert.InDelta(t, 4.5, whole(Paver{7.5 * unit.Inch, 3.5 * unit.Inch, 0.5 * unit.Inch}, 30, 50), 1e-9)

	// Paver for paver with its joint, as the table counts: the paved area of 8 by 14 ft in units.
	p := Paver{8 * unit.Inch, 2.25 * unit.Inch, 0.5 * unit.Inch}
	_, l := laid(t, &Outline{Corners: []Point{{0, 0}, {8 * foot, 0}, {8 * foot, 14 * foot}, {0, 14 * foot}}}, p, Pattern{}, Joints{}, Point{})
	units := (l.Areas.Pavers + l.Areas.Grout) / (8.5 * 2.75 * float64(unit.SquareInch))
	assert.InDelta(t, 690, units, 0.5)
}

// Independent: worked by hand. 3 by 2 m between walls with 10 mm gaps leaves 2,980 by 1,980 mm. Pavers 600 by 400 with a 5 mm
// joint from the corner: 4 of 605 and 560 left, 4 of 405 and 360 left.
func TestRoomByHand(t *testing.T) {
	o := &Outline{Corners: rectangle(0, 0, 3000, 2000), Edges: []Edge{Wall, Wall, Building, Wall}}
	g, l := laid(t, o, Paver{600 * mmU, 400 * mmU, 5 * mmU}, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{10 * mm, 10 * mm})
	assert.Equal(t, 16, l.Full)
	require.Len(t, l.Cuts, 3)
	for i, want := range []struct {
		mark  string
		count int
		l, w  float64
	}{{"A", 4, 560, 400}, {"B", 4, 600, 360}, {"C", 1, 560, 360}} {
		c := l.Cuts[i]
		assert.Equal(t, want.mark, c.Mark)
		assert.Equal(t, want.count, c.Count)
		assert.InDelta(t, want.l, c.L/mm, 1e-6)
		assert.InDelta(t, want.w, c.W/mm, 1e-6)
		assert.True(t, c.Square)
	}
	assert.InDelta(t, 5.8016, l.Areas.Pavers/m2, 1e-9)
	assert.InDelta(t, 6-2.98*1.98, l.Areas.Perimeter/m2, 1e-9)
	assert.InDelta(t, 4*1.980+4*2.980-16*0.005, float64(l.GroutRun/unit.Metre), 1e-9) // crossings once
	assert.InDelta(t, 10, float64(l.PerimeterRun/unit.Metre), 1e-9)
	assert.Zero(t, l.Areas.Slivers)
	assert.Len(t, l.Fields, 1)
	assert.InDelta(t, 3, float64(l.SpanX/unit.Metre), 1e-9)
	assert.InDelta(t, 6, float64(g.Area()/unit.SquareMetre), 1e-9)
	assert.InDelta(t, 3, float64(o.Run(Building)/unit.Metre), 1e-9)
	assert.InDelta(t, 7, float64(o.Run(Wall)/unit.Metre), 1e-9)
}

// Independent: worked by hand. 6 by 3 m, a joint each 12 ft (3,657.6 mm) at most, 12 mm wide. After c pavers its centre is at
// 605 c - 5 + 6: 3,026 after five, nearest the middle. The second field begins at 3,032; four more pavers end at 5,447, and
// 548 mm are left after the joint.
func TestMovementJointByHand(t *testing.T) {
	_, l := laid(t, &Outline{Corners: rectangle(0, 0, 6000, 3000)}, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{},
		Joints{Movement: 12 * mmU, Longest: 12 * unit.Foot}, Point{})
	require.Len(t, l.LinesX, 1)
	assert.Empty(t, l.LinesY)
	assert.InDelta(t, 3026, l.LinesX[0]/mm, 1e-6)
	assert.InDelta(t, 3026, float64(l.SpanX)/mm, 1e-6)
	assert.InDelta(t, 3, float64(l.MovementRun/unit.Metre), 1e-9)
	assert.Len(t, l.Fields, 2)
	assert.Equal(t, 9*4, l.Full)
	require.Len(t, l.Cuts, 3)
	assert.InDelta(t, 600, l.Cuts[1].L/mm, 1e-6) // the last row: 3,000 - 4 x 605
	assert.InDelta(t, 580, l.Cuts[0].W/mm, 1e-6)
	assert.InDelta(t, 548, l.Cuts[2].W/mm+l.Cuts[2].L/mm-580, 1e-6)
}

// Independent: worked by hand. On 6.6 m with spans of 3.7 m at most the joint stands after five pavers (3,026) or six (3,631).
// Five is evener; but where the inside corner of an L is at 3,631, six meets it and costs no more joints.
func TestMovementJointMeetsAnInsideCorner(t *testing.T) {
	p, j := Paver{600 * mmU, 600 * mmU, 5 * mmU}, Joints{Movement: 12 * mmU, Longest: 3700 * mmU}
	_, l := laid(t, &Outline{Corners: rectangle(0, 0, 6600, 3000)}, p, Pattern{}, j, Point{})
	assert.InDelta(t, 3026, l.LinesX[0]/mm, 1e-6)
	l6 := &Outline{Corners: []Point{{0, 0}, {6600 * mm, 0}, {6600 * mm, 1800 * mm}, {3631 * mm, 1800 * mm}, {3631 * mm, 3000 * mm}, {0, 3000 * mm}}}
	_, l = laid(t, l6, p, Pattern{}, j, Point{})
	require.Len(t, l.LinesX, 1)
	assert.InDelta(t, 3631, l.LinesX[0]/mm, 1e-6)
}

// Independent: by hand. Rows offset by a third begin afresh at each movement joint: of a row of 605 mm modules a third
// leaves 605/3 - 5 = 196.67 mm at one end and 398.33 at the other, and they come to a paver less one more joint.
func TestOffsetPatternStartsAfreshAtEachField(t *testing.T) {
	_, l := laid(t, &Outline{Corners: rectangle(0, 0, 6047, 1815)}, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{Offset: 1.0 / 3},
		Joints{Movement: 12 * mmU, Longest: 3200 * mmU}, Point{})
	require.Len(t, l.Fields, 2)
	require.InDelta(t, 3026, l.LinesX[0]/mm, 1e-6)
	ends := map[int][]float64{}
	for i := range l.Pieces {
		p := &l.Pieces[i]
		if b := p.Cell; !p.Full {
			b = bounds(p.Rings[0])
			if p.Field == 1 && math.Abs(b.X0-3032*mm) < 1 {
				ends[p.Row] = append(ends[p.Row], (b.X1-b.X0)/mm)
			}
			require.False(t, b.X0 < 3026*mm && b.X1 > 3026*mm, "nothing bridges the joint")
		}
	}
	require.Len(t, ends[1], 1)
	require.Len(t, ends[2], 1)
	assert.Empty(t, ends[0])
	assert.InDelta(t, 605.0/3-5, ends[1][0], 1e-6)
	assert.InDelta(t, 2*605.0/3-5, ends[2][0], 1e-6)
}

func TestStartIsKeptInTheFieldItLiesIn(t *testing.T) {
	o := &Outline{Corners: rectangle(0, 0, 15_000, 9000)}
	j := Joints{Movement: 12 * mmU, Longest: 3600 * mmU}
	for _, at := range []Point{{0, 0}, {14_400 * mm, 8400 * mm}, {7200 * mm, 4000 * mm}, {14_990 * mm, 10 * mm}} {
		_, l := laid(t, o, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{}, j, at)
		found := false
		for i := range l.Pieces {
			c := l.Pieces[i].Cell
			found = found || math.Abs(c.X0-at.X) < 1 && math.Abs(c.Y0-at.Y) < 1
		}
		assert.True(t, found, "a paver begins at %v", at)
	}
}

// A gap goes round corners: inside an L with walls it is mitred, and at the end of a wall it ends with it. By hand.
func TestPerimeterByHand(t *testing.T) {
	wall := []Edge{Wall, Wall, Wall, Wall, Wall, Wall}
	l := &Outline{Corners: []Point{{0, 0}, {3000 * mm, 0}, {3000 * mm, 1000 * mm}, {1000 * mm, 1000 * mm}, {1000 * mm, 3000 * mm}, {0, 3000 * mm}}, Edges: wall}
	p := Paver{300 * mmU, 300 * mmU, 3 * mmU}
	_, a := laid(t, l, p, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{})
	// Around the inside an L of 2,980 by 980 and 980 by 2,000 is left.
	assert.InDelta(t, 5-(2.98*0.98+0.98*2.0), a.Areas.Perimeter/m2, 1e-9)
	post := &Outline{Corners: rectangle(0, 0, 3000, 3000), Holes: [][]Point{rectangle(1000, 1000, 100, 150)}}
	_, a = laid(t, post, p, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{})
	assert.InDelta(t, 0.12*0.17-0.1*0.15, a.Areas.Perimeter/m2, 1e-9)
	assert.InDelta(t, 0.5, float64(a.PerimeterRun/unit.Metre), 1e-9)
	one := &Outline{Corners: rectangle(0, 0, 3000, 3000), Edges: []Edge{Wall}}
	_, a = laid(t, one, p, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{})
	assert.InDelta(t, 0.03, a.Areas.Perimeter/m2, 1e-9)
	// An open edge that leaves at 135 degrees: the gap runs on to it, 3,000 mm wide below and 3,010 above.
	askew := &Outline{Corners: []Point{{0, 0}, {3000 * mm, 0}, {4000 * mm, 1000 * mm}, {0, 1000 * mm}}, Edges: []Edge{Wall}}
	_, a = laid(t, askew, p, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{})
	assert.InDelta(t, 3.005*0.01, a.Areas.Perimeter/m2, 1e-9)
}

// Two fins whose gaps meet in a point, at (1,110, 1,020), part the paving: what meets in a point is not one.
func TestPavingThatMeetsInAPoint(t *testing.T) {
	o := &Outline{Corners: []Point{{0, 0}, {1120 * mm, 0}, {1120 * mm, 1010 * mm}, {1220 * mm, 1010 * mm}, {1220 * mm, 0}, {2400 * mm, 0},
		{2400 * mm, 2000 * mm}, {1100 * mm, 2000 * mm}, {1100 * mm, 1030 * mm}, {1000 * mm, 1030 * mm}, {1000 * mm, 2000 * mm}, {0, 2000 * mm}}}
	o.Edges = []Edge{Open, Wall, Wall, Wall, Open, Open, Open, Wall, Wall, Wall, Open, Open}
	_, l := laid(t, o, Paver{300 * mmU, 300 * mmU, 5 * mmU}, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{1000 * mm, 900 * mm})
	assert.Equal(t, 2, l.Fields[0].Parts)
	here := 0
	for i := range l.Pieces {
		if p := &l.Pieces[i]; p.Cell.X0 < 1110*mm && p.Cell.X1 > 1110*mm && p.Cell.Y0 < 1020*mm && p.Cell.Y1 > 1020*mm {
			here++
		}
	}
	assert.Equal(t, 2, here)
}

func TestStructuralJointIsCarriedThrough(t *testing.T) {
	o := &Outline{Corners: rectangle(0, 0, 4000, 3000), Structural: [][]Point{{{1000 * mm, 0}, {3000 * mm, 3000 * mm}}}}
	_, l := laid(t, o, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{}, Joints{Structural: 12 * mmU}, Point{})
	run := math.Hypot(2, 3) // the strip runs out square to itself past both edges, so its area is its width times this
	assert.InDelta(t, run*0.012, l.Areas.Structural/m2, 1e-9)
	assert.InDelta(t, run, float64(l.StructureRun/unit.Metre), 1e-6)
	assert.Equal(t, 2, l.Fields[0].Parts)
	for i := range l.Pieces {
		p := &l.Pieces[i]
		for _, ring := range p.Rings {
			for _, c := range ring {
				off := math.Abs(cross(Point{2, 3}, Point{c.X - 1000*mm, c.Y})) / run
				assert.GreaterOrEqual(t, off, 6*mm-1, "no paver nearer than half the width")
			}
		}
	}
}

func TestWhatLiesOnTheModule(t *testing.T) {
	p := Paver{600 * mmU, 600 * mmU, 5 * mmU}
	lay := func(wide float64) Layout {
		_, l := laid(t, &Outline{Corners: rectangle(0, 0, wide, 1205)}, p, Pattern{}, Joints{}, Point{})
		return l
	}
	l := lay(3020) // five pavers and four joints
	assert.Equal(t, 10, l.Full)
	assert.Len(t, l.Pieces, 10)
	assert.Zero(t, l.Areas.Slivers)
	l = lay(3022) // the edge stands in the joint
	assert.Equal(t, 10, l.Full)
	assert.Len(t, l.Pieces, 10)
	l = lay(3026.5) // 1.5 mm of a sixth paver
	assert.Len(t, l.Pieces, 10)
	assert.InDelta(t, 1.5*1200, l.Areas.Slivers/mm/mm, 1e-6)
	l = lay(3028) // 3 mm of it
	assert.Len(t, l.Pieces, 12)
	l = lay(3019.5) // half a millimetre less than five: laid whole
	assert.Equal(t, 10, l.Full)
	assert.Empty(t, l.Cuts)
	l = lay(3018) // two millimetres less: cut
	assert.Equal(t, 8, l.Full)
	assert.Len(t, l.Cuts, 1)
}

func TestCellInSeveralPieces(t *testing.T) {
	// A comb: two teeth, each within one paver of the last row.
	o := &Outline{Corners: []Point{{0, 0}, {600 * mm, 0}, {600 * mm, 500 * mm}, {400 * mm, 500 * mm}, {400 * mm, 50 * mm}, {200 * mm, 50 * mm}, {200 * mm, 500 * mm}, {0, 500 * mm}}}
	_, l := laid(t, o, Paver{600 * mmU, 400 * mmU, 5 * mmU}, Pattern{}, Joints{}, Point{0, 80 * mm})
	in := map[[2]int]int{}
	for i := range l.Pieces {
		in[[2]int{l.Pieces[i].Row, l.Pieces[i].Col}]++
	}
	assert.Equal(t, 2, in[[2]int{1, 0}])
	// A post in the middle of a paver: one piece with a hole in it.
	o = &Outline{Corners: rectangle(0, 0, 600, 600), Holes: [][]Point{rectangle(250, 250, 100, 100)}}
	_, l = laid(t, o, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{}, Joints{Perimeter: 10 * mmU}, Point{})
	require.Len(t, l.Pieces, 1)
	require.Len(t, l.Pieces[0].Rings, 2)
	assert.InDelta(t, 0.36-0.12*0.12, l.Pieces[0].Area/m2, 1e-9)
	assert.False(t, l.Cuts[0].Square)
}

// A mirrored cut is another cut, a cut turned by half is not: two opposite corners of a rectangle cut off alike, and two
// neighbouring ones.
func TestMirroredCutsAreToldApart(t *testing.T) {
	p := Paver{600 * mmU, 400 * mmU, 5 * mmU}
	corner := func(corners ...Point) int {
		_, l := laid(t, &Outline{Corners: corners}, p, Pattern{}, Joints{}, Point{})
		require.Len(t, l.Pieces, 4)
		return len(l.Cuts)
	}
	w, h := 1205*mm, 805*mm
	a, b := 200*mm, 100*mm
	assert.Equal(t, 1, corner(Point{a, 0}, Point{w, 0}, Point{w, h - b}, Point{w - a, h}, Point{0, h}, Point{0, b}))
	assert.Equal(t, 2, corner(Point{a, 0}, Point{w - a, 0}, Point{w, b}, Point{w, h}, Point{0, h}, Point{0, b}))
}

// Hard shapes: what holds of every layout holds of them.
func TestHardShapes(t *testing.T) {
	var curve []Point
	for i := range 60 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 60)
		curve = append(curve, Point{4000 * mm * cos, 2500 * mm * sin})
	}
	shapes := map[string]*Outline{
		"wedge":     {Corners: []Point{{0, 0}, {9000 * mm, 0}, {9000 * mm, 700 * mm}}, Edges: []Edge{Wall, Wall, Wall}},
		"curve":     {Corners: curve, Holes: [][]Point{rectangle(-500, 100, 120, 120)}},
		"collinear": {Corners: []Point{{0, 0}, {1000 * mm, 0}, {2000 * mm, 0}, {4000 * mm, 0}, {4000 * mm, 3000 * mm}, {4000 * mm, 3100 * mm}, {0, 3100 * mm}}, Edges: []Edge{Wall, Open, Wall, Wall, Wall, Open, Building}},
		"spike":     {Corners: []Point{{0, 0}, {4000 * mm, 0}, {4000 * mm, 3000 * mm}, {2010 * mm, 3000 * mm}, {2000 * mm, 500 * mm}, {1990 * mm, 3000 * mm}, {0, 3000 * mm}}, Edges: []Edge{Open, Open, Open, Wall, Wall, Open, Open}},
	}
	for name, o := range shapes {
		t.Run(name, func(t *testing.T) {
			for _, pattern := range []Pattern{{}, {Offset: 1.0 / 3}, {Turn: 45}, {Turn: o.Along(2), Offset: 0.25}} {
				g, l := laid(t, o, Paver{600 * mmU, 300 * mmU, 5 * mmU}, pattern, Joints{10 * mmU, 8 * mmU, 12 * mmU, 3000 * mmU}, Point{})
				assert.NotEmpty(t, l.Pieces)
				assert.NotEmpty(t, g.Search(nil))
			}
		})
	}
	// Collinear corners change nothing.
	plainly := &Outline{Corners: rectangle(0, 0, 4000, 3100)}
	dotted := &Outline{Corners: shapes["collinear"].Corners}
	_, a := laid(t, plainly, Paver{600 * mmU, 300 * mmU, 5 * mmU}, Pattern{Turn: 20}, Joints{}, Point{})
	_, b := laid(t, dotted, Paver{600 * mmU, 300 * mmU, 5 * mmU}, Pattern{Turn: 20}, Joints{}, Point{})
	assert.Equal(t, summed(&a), summed(&b))
}

// By definition of the start: a paver's lower left corner stands there, whichever course that is in, and as a plan is dragged
// the pattern goes with it. Where it lies off the paving, a whole number of modules and courses away is a course in line with it.
func TestAnOffsetCourseBeginsWhereItIsToldTo(t *testing.T) {
	o := &Outline{Corners: rectangle(0, 0, 8000, 8000)}
	p := Paver{600 * mmU, 300 * mmU, 5 * mmU}
	for _, offset := range []float64{1.0 / 3, 0.25} {
		for _, j := range []Joints{{}, {Movement: 12 * mmU, Longest: 3600 * mmU}} {
			for _, at := range []Point{{100 * mm, 100 * mm}, {500 * mm, 1200 * mm}, {3000 * mm, 2500 * mm}, {1234 * mm, 7400 * mm}, {7100 * mm, 4321 * mm}} {
				_, l := laid(t, o, p, Pattern{Offset: offset}, j, at)
				met := 0
				for _, q := range l.Pieces {
					met += b2i(math.Abs(q.Cell.X0-at.X) < near && math.Abs(q.Cell.Y0-at.Y) < near)
				}
				assert.Equal(t, 1, met, "offset %g, %v", offset, at)
			}
		}
		courses := math.Round(1 / offset) // until one is in line again
		_, in := laid(t, o, p, Pattern{Offset: offset}, Joints{}, Point{200 * mm, 200 * mm})
		_, off := laid(t, o, p, Pattern{Offset: offset}, Joints{}, Point{200 * mm, (200 - courses*305) * mm})
		assert.Equal(t, [2]int{in.Full, len(in.Pieces)}, [2]int{off.Full, len(off.Pieces)})
		assert.InDelta(t, in.Grid.X.First, off.Grid.X.First, near)
	}
}
