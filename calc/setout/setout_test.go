package setout_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/link"
	"setbook/calc/setout"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func solve(t *testing.T, entry string) *calc.Sheet {
	t.Helper()
	e, problems := link.Read(&setout.Calculator, entry, calc.Habit{})
	require.Empty(t, problems, entry)
	s := setout.Calculator.Solve(e)
	require.Empty(t, s.Problems, entry)
	return s
}

func answer(t *testing.T, s *calc.Sheet, key string) float64 {
	t.Helper()
	a, ok := s.Answer(key)
	require.True(t, ok, key)
	return a.Is.Base
}

func table(t *testing.T, s *calc.Sheet, key string) *calc.Table {
	t.Helper()
	for _, table := range s.Tables {
		if table.Key == key {
			return table
		}
	}
	require.Fail(t, "no table", key)
	return nil
}

func area(ring []calc.Point) float64 {
	sum := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += float64(p.X*q.Y - q.X*p.Y)
	}
	return sum / 2
}

// curve is an outline of so many corners round an oval with a dent.
func curve(corners int, radius float64) string {
	var b []string
	for i := range corners {
		a := float64(i) * 2 * math.Pi / float64(corners)
		r := radius * (1 + 0.2*math.Cos(2*a) + 0.1*math.Sin(3*a))
		b = append(b, fmt.Sprintf("%.3f m,%.3f m", 1.2*r*math.Cos(a), r*math.Sin(a)))
	}
	return strings.Join(b, ";")
}

// The four shapes that the pictures show.
var shapes = map[string]string{
	"rectangle": "outline=0 m,0 m;6.4 m,0 m;6.4 m,4.3 m;0 m,4.3 m&edges=building,open,open,open",
	"L":         "outline=0 m,0 m;7.2 m,0 m;7.2 m,3.1 m;4.1 m,3.1 m;4.1 m,6 m;0 m,6 m&holes=5.2 m,1.4 m;5.35 m,1.55 m&edges=building,open,open,wall,open,building&paver_l=900 mm&paver_w=450 mm&pattern=third",
	"curve":     "outline=" + curve(60, 3.6),
	"wedge":     "outline=0 m,0 m;8 m,0.6 m;1.2 m,3.2 m&edges=wall,open,open&turn=4.289 deg",
}

// What is drawn is what is counted: the faces of the pavers on the plan make up the area that the waste is reckoned from,
// and there are as many outlines as pieces.
func TestThePlanIsWhatIsCounted(t *testing.T) {
	for name, entry := range shapes {
		s := solve(t, entry)
		require.True(t, s.Drawing.Plan)
		var faces float64
		outlines := 0
		for _, shape := range s.Drawing.Shapes {
			if shape.Of == calc.Mortar || shape.Of == calc.Outline && shape.Closed && len(shape.Rings) > 3 {
				for _, ring := range shape.Rings {
					faces += area(ring)
				}
				outlines += len(shape.Rings)
			}
		}
		e, _ := link.Read(&setout.Calculator, entry, calc.Habit{})
		one := e.Reading("paver_l").Base * e.Reading("paver_w").Base
		low, ok := s.Answer("pavers")
		require.True(t, ok)
		covered := (1 - answer(t, s, "waste")) * low.Low * one
		assert.InEpsilon(t, covered, faces, 1e-4, "%s: whole pavers may lack a millimetre", name)
		holed := 0.0
		if name == "L" {
			holed = 1 // the piece about the post has an inner outline too
		}
		assert.Equal(t, answer(t, s, "full")+answer(t, s, "cut")+holed, float64(outlines), name)
	}
}

// A layout that is offered gives, once it is taken, what its row says.
func TestUseThis(t *testing.T) {
	for name, entry := range shapes {
		offered := table(t, solve(t, entry), "layouts")
		require.NotEmpty(t, offered.Rows)
		last := 0.0
		for i, row := range offered.Rows {
			require.NotEmpty(t, row.Button)
			taken := entry
			for key, text := range row.Puts {
				taken += "&" + key + "=" + text
			}
			s := solve(t, taken)
			assert.Equal(t, row.Cells[4].Is.Base, answer(t, s, "cut"), "%s, layout %d", name, i+1)
			slim, price := weigh(t, s, taken)
			assert.Equal(t, row.Cells[1].Is.Base, slim, "%s, layout %d", name, i+1)
			if name == "rectangle" || name == "L" { // every edge runs along the pattern
				price = ordered(row)
			}
			assert.GreaterOrEqual(t, price, last-1e-6, "%s, layout %d: the better come first", name, i+1)
			last = price
			for _, other := range s.Tables {
				assert.NotEqual(t, "layouts", other.Key, "a start that is given is not searched for")
			}
		}
	}
}

// ordered is the place that a row has where every edge runs along the pattern: no piece under half first, then equal cuts, then the
// widest narrowest cut up to half a paver, then the fewest pavers.
func ordered(row calc.Row) float64 {
	place := 0.0
	if row.Cells[1].Is.Base > 0 {
		place = 1e6
	}
	place += map[words.Msg]float64{"both ways": 0, "along the rows": 1e5, "across the rows": 1e5, "no": 2e5}[row.Cells[3].Says.Msg]
	return place + 1e4*(1-min(row.Cells[2].Is.Base, 0.5))
}

// Six metres by four, offset by a third: no start has every cut of half a paver, so equal cuts come first, and the widest of them.
func TestEqualCutsFirst(t *testing.T) {
	offered := table(t, solve(t, "outline=0 m,0 m;6 m,0 m;6 m,4 m;0 m,4 m&pattern=third&paver_l=600 mm&paver_w=300 mm"), "layouts")
	for i, row := range offered.Rows[1:] {
		assert.GreaterOrEqual(t, ordered(row), ordered(offered.Rows[0]), "layout %d", i+2)
	}
}

// weigh counts the cut pieces under half a paver, and weighs all by what the list of layouts says: one each, those under half
// three and up to eleven, the narrower the more; nothing where none is under half.
func weigh(t *testing.T, s *calc.Sheet, entry string) (slim, price float64) {
	t.Helper()
	e, _ := link.Read(&setout.Calculator, entry, calc.Habit{})
	cuts := table(t, s, "cuts")
	listed := 0.0
	for _, row := range cuts.Rows {
		share := min(row.Cells[1].Is.Base/e.Reading("paver_l").Base, row.Cells[2].Is.Base/e.Reading("paver_w").Base)
		count := row.Cells[3].Is.Base
		listed += count
		if share < 0.5-1e-9 {
			slim += count
			price += count * (11 - 16*share)
		} else {
			price += count
		}
	}
	require.Equal(t, answer(t, s, "cut"), listed, "all are listed")
	if slim == 0 {
		price = 0
	}
	return slim, price
}

// A drag moves the pavers by its vector; by a whole module along and across, nothing changes.
func TestDrag(t *testing.T) {
	entry := "outline=0 m,0 m;3 m,0 m;3 m,2 m;0 m,2 m&joint=5 mm&start=fixed&start_x=100 mm&start_y=200 mm"
	e, _ := link.Read(&setout.Calculator, entry, calc.Habit{})
	texts := setout.Calculator.Drag(e, calc.Point{X: 30 * unit.Millimetre, Y: -70 * unit.Millimetre})
	moved, problems := setout.Calculator.Read(texts, calc.Habit{})
	require.Empty(t, problems)
	assert.Equal(t, "fixed", texts["start"])
	assert.InDelta(t, 0, math.Mod(moved.Reading("start_x").Base-130e3, 605e3), 1e-3)
	assert.InDelta(t, 0, math.Mod(moved.Reading("start_y").Base-130e3, 605e3), 1e-3)
	was := solve(t, entry)
	texts = setout.Calculator.Drag(e, calc.Point{X: 605 * unit.Millimetre, Y: -605 * unit.Millimetre})
	again := solve(t, "outline=0 m,0 m;3 m,0 m;3 m,2 m;0 m,2 m&joint=5 mm&start=fixed&start_x="+texts["start_x"]+"&start_y="+texts["start_y"])
	for i, a := range was.Answers {
		assert.InDelta(t, a.Is.Base, again.Answers[i].Is.Base, 1e-6*(1+math.Abs(a.Is.Base)), a.Key)
	}
	crossed, _ := link.Read(&setout.Calculator, "outline=0 m,0 m;1 m,1 m;1 m,0 m;0 m,1 m", calc.Habit{})
	assert.Nil(t, setout.Calculator.Drag(crossed, calc.Point{X: 1}), "nothing is laid, nothing is moved")
}

// A mirrored or turned outline gives the same counts.
func TestMirrored(t *testing.T) {
	l := "outline=0 m,0 m;7 m,0 m;7 m,3 m;4 m,3 m;4 m,6 m;0 m,6 m"
	want := solve(t, l)
	for name, entry := range map[string]string{
		"mirrored":  "outline=0 m,0 m;-7 m,0 m;-7 m,3 m;-4 m,3 m;-4 m,6 m;0 m,6 m",
		"backwards": "outline=0 m,6 m;4 m,6 m;4 m,3 m;7 m,3 m;7 m,0 m;0 m,0 m",
		"turned":    "outline=0 m,0 m;0 m,7 m;-3 m,7 m;-3 m,4 m;-6 m,4 m;-6 m,0 m&turn=90 deg",
		"moved":     "outline=11 m,-5 m;18 m,-5 m;18 m,-2 m;15 m,-2 m;15 m,1 m;11 m,1 m",
	} {
		got := solve(t, entry)
		for _, key := range []string{"full", "cut", "fields", "pavers", "waste", "grout_run", "soft_run", "narrowest"} {
			assert.InDelta(t, answer(t, want, key), answer(t, got, key), 1e-6*(1+answer(t, want, key)), "%s: %s", name, key)
		}
	}
}

// Chalk marks, by hand: pavers that begin 100 mm from the left edge and 200 mm from the lower one of a 2 m square are
// lined up by marks 200 mm above its lower corners and 100 mm right of its left ones.
func TestChalk(t *testing.T) {
	chalk := table(t, solve(t, "outline=0 m,0 m;2 m,0 m;2 m,2 m;0 m,2 m&start=fixed&start_x=100 mm&start_y=200 mm"), "chalk")
	require.Len(t, chalk.Rows, 2, "2 m needs no movement joint")
	for i, want := range [][2]string{{"0.2 m from corner 1 towards 4", "0.2 m from corner 2 towards 3"}, {"0.1 m from corner 1 towards 2", "0.1 m from corner 4 towards 3"}} {
		for j, w := range want {
			assert.Equal(t, w, reader.Line(chalk.Rows[i].Cells[1+j].Says))
		}
	}
}

// Work starts at the building wherever it stands, and comes out at an open edge: the arrow's end, and row 1 beside the
// building.
func TestOrder(t *testing.T) {
	for at, names := range []string{"building,open,open,open", "open,building,open,open", "open,open,building,open", "open,open,open,building"} {
		s := solve(t, "outline=0 m,0 m;3 m,0 m;3 m,3 m;0 m,3 m&edges="+names)
		order := s.More[1]
		require.Equal(t, "Order of setting", string(order.Title))
		var arrow []calc.Point
		for _, shape := range order.Shapes {
			if shape.Of == calc.Strong && len(shape.Points) == 2 {
				arrow = shape.Points
			}
		}
		require.Len(t, arrow, 2)
		dx, dy := arrow[1].X-arrow[0].X, arrow[1].Y-arrow[0].Y
		want := [][2]float64{{0, 1}, {-1, 0}, {0, -1}, {1, 0}}[at]
		assert.InDelta(t, want[0], float64(dx/(3*unit.Metre)), 1e-9, names)
		assert.InDelta(t, want[1], float64(dy/(3*unit.Metre)), 1e-9, names)
	}
}

// No open edge to come out at is told.
func TestShutIn(t *testing.T) {
	told := func(entry string) bool {
		for _, c := range solve(t, entry).Cautions {
			if c.Severity == calc.Care && strings.HasPrefix(string(c.Says.Msg), "No open edge") {
				return true
			}
		}
		return false
	}
	assert.True(t, told("edges=wall"))
	assert.True(t, told("edges=building"))
	assert.False(t, told("edges=building,wall,open,wall"))
	assert.False(t, told("edges=open"))
}

// A search that is ended early gives its best so far, and says so.
func TestEndedEarly(t *testing.T) {
	calls := 0
	s := setout.Calculator.SolveWith(setout.Calculator.Example(), func(int, int) bool { calls++; return calls < 4 })
	require.Empty(t, s.Problems)
	assert.Contains(t, string(table(t, s, "layouts").Says.Msg), "ended early")
	assert.Less(t, calls, 10)
	assert.NotContains(t, string(table(t, solve(t, ""), "layouts").Says.Msg), "ended early")
}

// A straight side of a wedge gets whole pavers along it and no course of slivers.
func TestNoCourseOfSlivers(t *testing.T) {
	for _, row := range table(t, solve(t, shapes["wedge"]), "cuts").Rows {
		narrow, count := min(row.Cells[1].Is.Base, row.Cells[2].Is.Base), row.Cells[3].Is.Base
		assert.False(t, narrow < 300e3 && count > 3, "%v of %v µm", count, narrow)
	}
}

// Ten thousand pavers on sixty corners stay light: few shapes, and a drawing that a phone can hold.
func TestManyPavers(t *testing.T) {
	s := solve(t, "outline="+curve(60, 9.2)+"&paver_l=200 mm&paver_w=150 mm&joint=3 mm")
	assert.Greater(t, answer(t, s, "full")+answer(t, s, "cut"), 9_500.0)
	svg := draw.SVG(&s.Drawing, "p", reader)
	assert.Less(t, len(svg), 900_000)
	screen, _, _ := strings.Cut(svg, "</svg>")
	assert.Less(t, strings.Count(screen, `<path class="line`), 12)
}

// Any fault of an outline is told in words at its own key.
func TestFaults(t *testing.T) {
	for entry, want := range map[string]string{
		"outline=0 m,0 m;6 m,0 m;0 m,4 m;6 m,4 m": "outline: The edges from corners 2 and 4 cross",
		"outline=0 m,0 m;6 m,0 m;6 m,0 m;0 m,4 m": "outline: Corners 2 and 3 lie on one another",
		"outline=0 m,0 m;6 m,0 m":                 "outline: The paving has fewer",
		"holes=1 ft,1 ft":                         "holes: Hole 1 has fewer than three corners",
		"holes=-5 ft,1 ft;-4 ft,2 ft":             "holes: Hole 1 lies outside",
		"outline=-30 m,-30 m;30 m,-30 m;30 m,30 m;-30 m,30 m&paver_l=300 mm&paver_w=300 mm": "outline: That is more than 12000",
		"paver_l=1.79 m&movement_max=6 ft&soft=40 mm":                                       "movement_max: The movement joints would",
		"outline=0 m,0 m;50 mm,0 m;50 mm,50 mm;0 m,50 mm&edges=wall&perimeter=40 mm":        "perimeter: The joints at the walls leave nothing",
		"pattern=third&offset=50 %":                                                         "offset: Offset of each course: read 50 %",
	} {
		e, problems := link.Read(&setout.Calculator, entry, calc.Habit{})
		require.Empty(t, problems, entry)
		s := setout.Calculator.Solve(e)
		if assert.NotEmpty(t, s.Problems, entry) {
			assert.Contains(t, s.Problems[0].Key+": "+reader.Line(s.Problems[0].Says), want)
		}
	}
}

// The triangle is one of 3, 4 and 5 with its right angle on the paving, and both legs lie on it.
func TestSquareUp(t *testing.T) {
	for name, entry := range map[string]string{
		"tall":  "outline=0 m,0 m;3 m,0 m;3 m,4 m;0 m,4 m",
		"wide":  "outline=0 m,0 m;9 m,0 m;9 m,2.5 m;0 m,2.5 m",
		"left":  "outline=0 m,0 m;3 m,0 m;3 m,4 m;0 m,4 m&edges=open,building,open,open",
		"wedge": shapes["wedge"],
	} {
		e, problems := link.Read(&setout.Calculator, entry, calc.Habit{})
		require.Empty(t, problems)
		s := setout.Calculator.Solve(e)
		var legs []calc.Point
		for _, shape := range s.More[0].Shapes {
			if shape.Of == calc.Strong {
				legs = shape.Points
			}
		}
		require.Len(t, legs, 4, name)
		long := func(a, b calc.Point) float64 { return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) }
		four, five, three := long(legs[0], legs[1]), long(legs[1], legs[2]), long(legs[2], legs[0])
		assert.InDelta(t, 4.0/3, four/three, 1e-9, name)
		assert.InDelta(t, 5.0/3, five/three, 1e-9, name)
		for _, p := range legs {
			assert.True(t, inside(e.Reading("outline").Rows, p), "%s: %v", name, p)
		}
	}
}

// inside reports whether a point lies in a convex outline that runs against the clock, or within a millimetre of it.
func inside(corners [][]float64, p calc.Point) bool {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		dx, dy := b[0]-a[0], b[1]-a[1]
		if (dx*(float64(p.Y)-a[1])-dy*(float64(p.X)-a[0]))/math.Hypot(dx, dy) < -1000 {
			return false
		}
	}
	return true
}

// Six pavers of 0.36 m² and mixes for 0.7 m², by hand: a mix begins at the first, the third and the fifth.
func TestMixes(t *testing.T) {
	s := solve(t, "outline=0 m,0 m;3.625 m,0 m;3.625 m,0.6 m;0 m,0.6 m&joint=5 mm&mix=0.7 m2&start=fixed")
	for _, a := range s.More[1].Says.With {
		if a.Name == "mixes" {
			assert.Equal(t, 3.0, a.Figure.Base)
		}
	}
	var marks []float64
	for _, shape := range s.More[1].Shapes {
		if shape.Label.Msg != "" && strings.HasPrefix(reader.Line(shape.Label), "M") {
			marks = append(marks, float64(shape.Points[0].X)/1e3)
		}
	}
	assert.InDeltaSlice(t, []float64{300, 1510, 2720}, marks, 1e-3)
}

// Points under 30° are told: of a wedge with an acute corner, and not of one of 45°.
func TestSharp(t *testing.T) {
	told := func(entry string) bool {
		for _, c := range solve(t, entry).Cautions {
			if strings.Contains(string(c.Says.Msg), "sharper than 30°") {
				return true
			}
		}
		return false
	}
	assert.True(t, told("outline=0 m,0 m;3 m,0 m;0 m,1 m&joint=5 mm&start=fixed"), "18.4° at the far corner")
	assert.False(t, told("outline=0 m,0 m;3.025 m,0 m;0 m,3.025 m&joint=5 mm&start=fixed&start_x=100 mm&start_y=100 mm"))
}
