package paving

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

// textbook is what every tile-setting manual says of a course: centre it, and where that leaves less than half a paver at the
// ends, shift it by half a module. It gives the end cut, or the whole paver where nothing is to cut.
func textbook(long, size, joint float64) float64 {
	module := size + joint
	// Where whole pavers fall short of the edges by no more than a joint (and a sliver) there is nothing to cut either.
	if n := math.Floor((long + joint + float64(Trim)) / module); long-n*module+joint < 2*(joint+float64(Sliver)) {
		return size
	}
	half := math.Mod(long/2-joint/2, module) // a joint in the middle
	if other := math.Mod(long/2+size/2, module); half < size/2 || half > size {
		half = other // a paver in the middle
	}
	return math.Min(half, size)
}

// Independent: the manuals' rule, worked out in the test without the search.
func TestRectangleGetsTheTextbookAnswer(t *testing.T) {
	tries := uint64(300)
	if testing.Short() {
		tries = 60
	}
	for i := range tries {
		r := rand.New(rand.NewPCG(8, i))
		size := func(lo, hi int) float64 { return float64(lo + r.IntN(hi-lo)) }
		p := Paver{unit.Length(size(200, 900)) * mmU, unit.Length(size(200, 900)) * mmU, unit.Length(size(2, 8)) * mmU}
		long, wide := size(2000, 9000), size(2000, 9000)
		if r.IntN(4) == 0 {
			long = math.Round(long/float64((p.L+p.Joint)/mmU))*float64((p.L+p.Joint)/mmU) - float64(p.Joint/mmU)
		}
		g, faults := Prepare(&Outline{Corners: rectangle(0, 0, long, wide)}, p, Pattern{}, Joints{})
		require.Empty(t, faults)
		best := g.Search(nil)[0]
		x, y := g.rulers()
		require.True(t, best.Why.BalancedX && best.Why.BalancedY)
		for _, axis := range []struct {
			r    ruler
			a    Axis
			long float64
		}{{x, best.Grid.X, long * mm}, {y, best.Grid.Y, wide * mm}} {
			first, last := axis.r.ends(axis.a)
			want := textbook(axis.long, axis.r.size, axis.r.joint)
			require.InDelta(t, first, last, float64(Trim))
			require.InDelta(t, want, first, float64(Trim), "end cut on %v with %v and %v", axis.long, axis.r.size, axis.r.joint)
		}
	}
}

// By hand: 4,000 mm with 600 and 5: a joint in the middle leaves 1,997.5 - 3 x 605 = 182.5 at each end, under half a paver;
// a paver in the middle leaves 1,700 - 2 x 605 - 5 = 485.
func TestRectangleByHand(t *testing.T) {
	g, faults := Prepare(&Outline{Corners: rectangle(0, 0, 4000, 4000)}, Paver{600 * mmU, 600 * mmU, 5 * mmU}, Pattern{}, Joints{})
	require.Empty(t, faults)
	found := g.Search(nil)
	best := found[0]
	l := g.Lay(best.Grid)
	assert.Equal(t, 25, l.Full)
	require.Len(t, l.Cuts, 2)
	assert.InDelta(t, 485, l.Cuts[0].W/mm, 1e-3)
	assert.Equal(t, 20, l.Cuts[0].Count)
	assert.InDelta(t, 485.0/600, best.Why.Narrowest, 1e-6)
	assert.Equal(t, 24, best.Why.Cuts)
	assert.Equal(t, 25, best.Why.Full)
	assert.Equal(t, 25+24, best.Estimate, "no two cuts of 485 come out of one paver")
	assert.LessOrEqual(t, len(found), given)
	for i := 1; i < len(found); i++ {
		assert.Negative(t, compare(found[i-1], found[i]), "each worse than the one before")
	}
}

// What the search says of a candidate is what laying it gives.
func TestCandidatesAreWhatTheySay(t *testing.T) {
	each(t, 9, 60, func(_ *rand.Rand, j *job, g *Ground) {
		for _, c := range g.Search(nil) {
			require.Equal(t, c.Grid, g.Start(Point{c.Grid.X.First, c.Grid.Y.First}), "the first paver's corner says it all")
			l := g.Lay(c.Grid)
			holds(t, j, g, &l)
			require.Equal(t, l.Full, c.Why.Full)
			require.Equal(t, len(l.Pieces)-l.Full, c.Why.Cuts)
			require.Equal(t, len(l.LinesX)+len(l.LinesY), c.Why.Spans)
			require.GreaterOrEqual(t, float64(c.Estimate)+1, l.Areas.Pavers/float64(j.paver.L*j.paver.W), "no fewer pavers than area")
			require.LessOrEqual(t, c.Estimate, len(l.Pieces))
			if j.pattern.Offset == 0 {
				least := 1.0
				for i := range l.Cuts {
					c := &l.Pieces[l.Cuts[i].Example]
					b := bounds(c.Rings[0])
					least = min(least, (b.X1-b.X0)/float64(j.paver.L), (b.Y1-b.Y0)/float64(j.paver.W))
				}
				require.InDelta(t, least, c.Why.Narrowest, 0.002)
			}
		}
	})
}

// Nothing tried at random is better than what the search found, in the order that it judges by: on outlines of right angles,
// where the ends of the courses are all there is.
func TestNothingTriedAtRandomIsBetter(t *testing.T) {
	better, tried := 0, 0
	each(t, 10, 120, func(r *rand.Rand, j *job, _ *Ground) {
		j.outline.Corners, j.outline.Holes, j.outline.Structural, j.pattern = stairs(r), nil, nil, Pattern{}
		g, faults := j.prepare()
		if len(faults) > 0 {
			return
		}
		best := g.Search(nil)[0]
		x, y := g.rulers()
		s := seeker{Ground: g, x: x, y: y}
		for range 20 {
			tried++
			better += b2i(compare(s.judge(g.Start(Point{1e7 * r.Float64(), 1e7 * r.Float64()})), best) < 0)
		}
	})
	require.Greater(t, tried, 300)
	require.Zero(t, better, "of %d", tried)
}

// On an L turned by 45 degrees no end is square to the rows: nothing is called balanced.
func TestPointedEndsAreNotBalanced(t *testing.T) {
	o := &Outline{Corners: []Point{{0, 0}, {7200 * mm, 0}, {7200 * mm, 3100 * mm}, {3500 * mm, 3100 * mm}, {3500 * mm, 6400 * mm}, {0, 6400 * mm}}}
	p, j := Paver{600 * mmU, 600 * mmU, 5 * mmU}, Joints{12 * mmU, 10 * mmU, 12 * mmU, 12 * unit.Foot}
	g, _ := Prepare(o, p, Pattern{Turn: 45}, j)
	for _, c := range g.Search(nil) {
		assert.False(t, c.Why.BalancedX || c.Why.BalancedY)
	}
	// Square to it, what is given has the best by each measure.
	g, _ = Prepare(o, p, Pattern{}, j)
	x, y := g.rulers()
	s := seeker{Ground: g, x: x, y: y}
	s.try(x.starts(), y.starts())
	found := g.Search(nil)
	for _, better := range []func(a, b Candidate) int{compare, narrower, dearer, busier} {
		for _, c := range s.found {
			assert.LessOrEqual(t, better(slices.MinFunc(found, better), c), 0)
		}
	}
}

func TestSearchIsTheSameEachTimeAndCanBeEnded(t *testing.T) {
	g, faults := large().prepare()
	require.Empty(t, faults)
	last, of := 0, 0
	whole := g.Search(func(done, total int) bool {
		require.Greater(t, done, last)
		require.LessOrEqual(t, done, total)
		last, of = done, total
		return true
	})
	require.Equal(t, whole, g.Search(nil))
	require.LessOrEqual(t, of, 2*starts+few*few)
	calls := 0
	early := g.Search(func(done, _ int) bool { calls++; return done < 7 })
	require.Equal(t, 7, calls)
	require.NotEmpty(t, early)
	require.GreaterOrEqual(t, compare(early[0], whole[0]), 0)
	require.NotEmpty(t, g.Search(func(int, int) bool { return false }))
}
