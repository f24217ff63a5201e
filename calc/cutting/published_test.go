package cutting_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/cutting"
	"setbook/calc/unit"
)

// instance is a published set of rectangles, with the fewest sheets known for it: in three stages of guillotine cuts with
// quarter turns, and in any way with quarter turns. Its sizes are plain numbers, read here as millimetres.
type instance struct {
	name        string
	sheet       cutting.Size
	staged, any int
	pieces      []cutting.Piece
}

// published reads the instances of Two-dimensional finite bin-packing algorithms (1987) and of Exact solution of the
// two-dimensional finite bin packing problem (1998).
func published(t testing.TB) []instance {
	file, err := os.Open("../../testdata/cutting/rectangles.csv")
	require.NoError(t, err)
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	number := func(text string) int {
		n, err := strconv.Atoi(text)
		require.NoError(t, err)
		return n
	}
	size := func(w, l string) cutting.Size {
		return cutting.Size{W: unit.Length(number(w)) * unit.Millimetre, L: unit.Length(number(l)) * unit.Millimetre}
	}
	var list []instance
	for _, r := range records[1:] {
		one := instance{name: r[0], sheet: size(r[1], r[2]), staged: number(r[4]), any: number(r[6])}
		for _, text := range strings.Fields(r[8]) {
			w, l, _ := strings.Cut(text, "x")
			one.pieces = append(one.pieces, cutting.Piece{Size: size(w, l), Turn: true})
		}
		require.Len(t, one.pieces, number(r[3]))
		list = append(list, one)
	}
	return list
}

// The sheets of all instances together are within 3 % of the best known, every plan holds, and no bound is over what
// somebody has reached.
func TestPublishedInstances(t *testing.T) {
	list := published(t)
	require.Len(t, list, 400)
	ours, rough, best := 0, 0, 0
	for i, one := range list {
		if testing.Short() && i%5 != 0 {
			continue
		}
		plan, misfits := cutting.Nest(one.sheet, 0, one.pieces, nil)
		require.Empty(t, misfits, one.name)
		require.Empty(t, verify(one.sheet, 0, one.pieces, plan), one.name)
		assert.LessOrEqual(t, plan.Bound, one.any, "%s: a bound over a known plan", one.name)
		assert.LessOrEqual(t, plan.Bound, len(plan.Sheets), one.name)
		first, _ := cutting.Rough(one.sheet, 0, one.pieces)
		ours, rough, best = ours+len(plan.Sheets), rough+len(first.Sheets), best+one.staged
	}
	assert.LessOrEqual(t, float64(ours), 1.03*float64(best), "%d sheets, best known %d", ours, best)
	assert.Less(t, float64(ours-best), 0.75*float64(rough-best), "the search takes off a good part of what the first plans (%d) are over the best known", rough)
	t.Logf("%d sheets, best known %d", ours, best)
}

// BenchmarkHundred nests the instances of a hundred pieces, one a turn.
func BenchmarkHundred(b *testing.B) {
	var list []instance
	for _, one := range published(b) {
		if len(one.pieces) == 100 {
			list = append(list, one)
		}
	}
	for i := 0; b.Loop(); i++ {
		one := list[i%len(list)]
		cutting.Nest(one.sheet, 0, one.pieces, nil)
	}
}
