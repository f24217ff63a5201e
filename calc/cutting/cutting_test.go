package cutting_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/cutting"
	"setbook/calc/unit"
)

const mm = unit.Millimetre

func rect(w, l unit.Length) cutting.Size { return cutting.Size{W: w * mm, L: l * mm} }

func times(n int, size cutting.Size, turn bool) []cutting.Piece {
	pieces := make([]cutting.Piece, n)
	for i := range pieces {
		pieces[i] = cutting.Piece{Size: size, Turn: turn}
	}
	return pieces
}

// Cases small enough to be seen by hand.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		what          string
		sheet         cutting.Size
		kerf          unit.Length
		pieces        []cutting.Piece
		sheets, bound int
	}{
		{"nothing", rect(600, 600), 3, nil, 0, 0},
		{"whole sheets", rect(600, 600), 3, times(3, rect(600, 600), false), 3, 3},
		{"two halves and no kerf", rect(600, 600), 0, times(2, rect(300, 600), false), 1, 1},
		{"two halves and a kerf", rect(600, 600), 3, times(2, rect(300, 600), false), 2, 2},
		{"two halves less half a kerf each", rect(600, 600), 3, times(2, rect(298.5, 600), false), 1, 1},
		{"a grid of three by three between kerfs", rect(600, 600), 3, times(9, rect(198, 198), false), 1, 1},
		{"one more than the grid takes", rect(600, 600), 3, times(10, rect(198, 198), false), 2, 2},
		{"a hair too large for the grid", rect(600, 600), 3, times(9, rect(198.1, 198.1), false), 3, 3}, // two by two on a sheet
		{"just over half both ways: a sheet each, though the area is two", rect(100, 100), 0, times(5, rect(51, 51), true), 5, 5},
		{"turned, it fits", rect(300, 600), 0, times(2, rect(600, 150), true), 1, 1},
		{"strips of the short side and of the long", rect(900, 600), 0, append(times(2, rect(300, 600), false), times(2, rect(300, 300), false)...), 1, 1},
		{"four round one, which no straight cut parts", rect(5, 5), 0, append(times(4, rect(3, 2), true), times(1, rect(1, 1), true)...), 2, 1},
		{"four dominoes and a single", rect(3, 3), 0, append(times(4, rect(2, 1), true), times(1, rect(1, 1), true)...), 1, 1},
	} {
		plan, misfits := cutting.Nest(c.sheet, c.kerf*mm, c.pieces, nil)
		require.Empty(t, misfits, c.what)
		assert.Empty(t, verify(c.sheet, c.kerf*mm, c.pieces, plan), c.what)
		assert.Len(t, plan.Sheets, c.sheets, c.what)
		assert.Equal(t, c.bound, plan.Bound, c.what)
	}
}

// A piece that fits no sheet is named and nothing is placed.
func TestMisfits(t *testing.T) {
	pieces := []cutting.Piece{{Size: rect(300, 300)}, {Size: rect(601, 10), Turn: true}, {Size: rect(500, 200)}, {Size: rect(500, 200), Turn: true}, {Size: rect(0, 5)}}
	plan, misfits := cutting.Nest(rect(300, 600), 3*mm, pieces, nil)
	assert.Equal(t, []int{1, 2, 4}, misfits)
	assert.Empty(t, plan.Sheets)
	_, misfits = cutting.Rough(rect(300, 600), 3*mm, pieces)
	assert.Equal(t, []int{1, 2, 4}, misfits)
}

// A whole sheet is not cut and keeps its four edges. Two pieces off a sheet lie at its ends, and each keeps three.
func TestFactoryEdges(t *testing.T) {
	plan, _ := cutting.Nest(rect(600, 600), 3*mm, times(1, rect(600, 600), true), nil)
	assert.Empty(t, plan.Cuts[0])
	assert.Equal(t, 4, plan.Sheets[0][0].Factory.Count())

	plan, _ = cutting.Nest(rect(600, 600), 3*mm, times(2, rect(600, 250), false), nil)
	require.Len(t, plan.Sheets, 1)
	assert.Len(t, plan.Cuts[0], 2)
	for _, q := range plan.Sheets[0] {
		assert.Equal(t, 3, q.Factory.Count())
	}
	// Nine on a sheet: the four at its corners keep two edges, the one in the middle none.
	plan, _ = cutting.Nest(rect(600, 600), 3*mm, times(9, rect(190, 190), false), nil)
	var kept [5]int
	for _, q := range plan.Sheets[0] {
		kept[q.Factory.Count()]++
	}
	assert.Equal(t, [5]int{1, 4, 4, 0, 0}, kept)
}

// In the far strip short pieces hang from the far edge, so that they keep it.
func TestFarStripHangs(t *testing.T) {
	pieces := append(times(1, rect(600, 320), false), cutting.Piece{Size: rect(300, 270)}, cutting.Piece{Size: rect(295, 200)})
	plan, _ := cutting.Nest(rect(600, 600), 3*mm, pieces, nil)
	require.Len(t, plan.Sheets, 1)
	require.Empty(t, verify(rect(600, 600), 3*mm, pieces, plan))
	for _, q := range plan.Sheets[0] {
		assert.GreaterOrEqual(t, q.Factory.Count(), 2, "%+v", q)
	}
}

// Pieces that fit to the last eighth of a micrometre do, and those an eighth too large do not, along either side.
func TestToTheLastStep(t *testing.T) {
	const step = unit.Micrometre / 8
	for over, want := range map[unit.Length]int{0: 1, step: 2} {
		// Three beside one another, with room to spare the other way.
		beside := append(times(2, rect(200, 90), false), cutting.Piece{Size: cutting.Size{W: 200*mm + over, L: 90 * mm}})
		plan, _ := cutting.Nest(rect(600, 100), 0, beside, nil)
		assert.Len(t, plan.Sheets, want)
		above := append(times(2, rect(90, 200), false), cutting.Piece{Size: cutting.Size{W: 90 * mm, L: 200*mm + over}})
		plan, _ = cutting.Nest(rect(100, 600), 0, above, nil)
		assert.Len(t, plan.Sheets, want)
		// One that would make its strip grow past the room that the other strip leaves.
		grows := append(times(1, rect(200, 100), false), cutting.Piece{Size: rect(90, 100)}, cutting.Piece{Size: cutting.Size{W: 90 * mm, L: 100*mm + over}})
		plan, _ = cutting.Nest(rect(200, 200), 0, grows, nil)
		assert.Len(t, plan.Sheets, want)
	}
}

// Every plan holds: inside the sheet, a kerf between any two, each piece once, cut in three stages, and never under the bound.
func TestAnyPlanHolds(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 26))
	count := 200
	if testing.Short() {
		count = 60
	}
	for range count {
		sheet, kerf, pieces := someJob(random)
		plan, misfits := cutting.Nest(sheet, kerf, pieces, nil)
		require.Empty(t, misfits)
		require.Empty(t, verify(sheet, kerf, pieces, plan), "%v kerf %v pieces %v", sheet, kerf, pieces)
		rough, _ := cutting.Rough(sheet, kerf, pieces)
		require.Empty(t, verify(sheet, kerf, pieces, rough), "%v kerf %v pieces %v", sheet, kerf, pieces)
		require.LessOrEqual(t, plan.Bound, len(plan.Sheets))
		require.LessOrEqual(t, len(plan.Sheets), len(rough.Sheets))
		again, _ := cutting.Nest(sheet, kerf, pieces, nil)
		require.Equal(t, plan, again, "the same every time")

		// The job seen in a mirror along the diagonal: a bound of one holds for the other.
		mirrored := make([]cutting.Piece, len(pieces))
		for i, q := range pieces {
			mirrored[i] = cutting.Piece{Size: cutting.Size{W: q.L, L: q.W}, Turn: q.Turn}
		}
		seen, _ := cutting.Nest(cutting.Size{W: sheet.L, L: sheet.W}, kerf, mirrored, nil)
		require.Empty(t, verify(cutting.Size{W: sheet.L, L: sheet.W}, kerf, mirrored, seen))
		require.LessOrEqual(t, plan.Bound, len(seen.Sheets))
		require.LessOrEqual(t, seen.Bound, len(plan.Sheets))

		// A thinner blade: the plan of the thicker one would do too, so its sheets bound the thinner one's bound.
		thin, _ := cutting.Rough(sheet, kerf/2, pieces)
		require.LessOrEqual(t, thin.Bound, len(plan.Sheets))
	}
}

// Who waits is told how far it has come, and may end it early with a plan that holds.
func TestGoing(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		sheet, kerf, pieces := someJob(random)
		calls := 0
		plan, _ := cutting.Nest(sheet, kerf, pieces, func(done, of int) bool {
			calls++
			assert.True(t, 0 <= done && done <= of, "%d of %d", done, of)
			return calls < 3
		})
		assert.LessOrEqual(t, calls, 3)
		assert.Empty(t, verify(sheet, kerf, pieces, plan))
	}
}

// Some thousands of pieces.
func TestMany(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	var pieces []cutting.Piece
	for range 2000 {
		pieces = append(pieces, cutting.Piece{Size: rect(unit.Length(30+random.IntN(270)), unit.Length(30+random.IntN(570))), Turn: true})
	}
	plan, misfits := cutting.Rough(rect(600, 600), 3*mm, pieces)
	require.Empty(t, misfits)
	assert.Empty(t, verify(rect(600, 600), 3*mm, pieces, plan))
	assert.Less(t, float64(len(plan.Sheets)), 1.1*float64(plan.Bound))
}

// Pieces off by a trace of rounding, as sums of lengths are, count as what they stand for; a fraction of a micrometre more counts
// as a whole one.
func TestRounding(t *testing.T) {
	sheet := cutting.Size{W: 600*mm - 1e-7, L: 600*mm + 1e-7}
	plan, misfits := cutting.Nest(sheet, 0, times(1, cutting.Size{W: 600*mm + 1e-7, L: 600*mm - 1e-7}, false), nil)
	assert.Empty(t, misfits)
	assert.Len(t, plan.Sheets, 1)
	_, misfits = cutting.Nest(sheet, 0, times(1, cutting.Size{W: 600*mm + 0.05, L: 600 * mm}, false), nil)
	assert.Equal(t, []int{0}, misfits)
}

func someJob(random *rand.Rand) (cutting.Size, unit.Length, []cutting.Piece) {
	sheet := rect(unit.Length(100+random.IntN(1000)), unit.Length(100+random.IntN(1000)))
	if random.IntN(3) == 0 {
		sheet.L = sheet.W
	}
	kerf := unit.Length(random.IntN(5)) * mm
	largest := 1 + random.IntN(4) // to a quarter of the sheet's sides
	pieces := make([]cutting.Piece, 1+random.IntN(60))
	for i := range pieces {
		share := func(of unit.Length) unit.Length {
			return unit.Length(1+random.IntN(int(of/mm)*largest/4)) * mm
		}
		pieces[i] = cutting.Piece{Size: cutting.Size{W: share(sheet.W), L: share(sheet.L)}, Turn: random.IntN(3) > 0}
		if q := &pieces[i]; q.Turn && random.IntN(2) > 0 {
			q.W, q.L = q.L, q.W
		}
		if i > 0 && random.IntN(3) == 0 {
			pieces[i] = pieces[random.IntN(i)]
		}
	}
	return sheet, kerf, pieces
}

func FuzzNest(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Add(uint64(20), uint64(26))
	f.Fuzz(func(t *testing.T, a, b uint64) {
		sheet, kerf, pieces := someJob(rand.New(rand.NewPCG(a, b)))
		plan, misfits := cutting.Nest(sheet, kerf, pieces, nil)
		require.Empty(t, misfits)
		require.Empty(t, verify(sheet, kerf, pieces, plan))
		require.LessOrEqual(t, plan.Bound, len(plan.Sheets))
	})
}

// Pieces sawn from so many sheets, turned and shuffled, need no more than those: the bound may not say so either.
func TestBoundOfSawnSheets(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 3))
	tight := 0
	for range 400 {
		sheet := rect(unit.Length(100+random.IntN(900)), unit.Length(100+random.IntN(900)))
		if random.IntN(2) == 0 {
			sheet.L = sheet.W
		}
		kerf := unit.Length(random.IntN(4)) * mm
		sheets := 1 + random.IntN(8)
		var pieces []cutting.Piece
		var saw func(part cutting.Size, depth int)
		saw = func(part cutting.Size, depth int) {
			one, two := part, part
			share := unit.Length(0.1 + 0.8*random.Float64())
			if random.IntN(2) == 0 {
				one.W = unit.Length(int(part.W * share))
				two.W = part.W - kerf - one.W
			} else {
				one.L = unit.Length(int(part.L * share))
				two.L = part.L - kerf - one.L
			}
			if depth == 0 || min(one.W, one.L, two.W, two.L) < 5*mm {
				piece := cutting.Piece{Size: part, Turn: random.IntN(3) > 0}
				if piece.Turn && random.IntN(2) == 0 {
					piece.W, piece.L = piece.L, piece.W
				}
				pieces = append(pieces, piece)
				return
			}
			saw(one, depth-1)
			saw(two, depth-1)
		}
		for range sheets {
			saw(sheet, random.IntN(4))
		}
		random.Shuffle(len(pieces), func(i, j int) { pieces[i], pieces[j] = pieces[j], pieces[i] })
		plan, misfits := cutting.Rough(sheet, kerf, pieces)
		require.Empty(t, misfits)
		require.LessOrEqual(t, plan.Bound, sheets, "%v kerf %v pieces %v", sheet, kerf, pieces)
		if plan.Bound == sheets {
			tight++
		}
	}
	assert.Greater(t, tight, 200, "and it is often as high")
}
