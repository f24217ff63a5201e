package cutting_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/cutting"
	"setbook/calc/unit"
)

// Every plan holds: inside the sheet, a kerf between any two, each piece once, cut in three stages, and never under the bound.
func TestAnyPlanHolds(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 26))
	for range 300 {
		sheet, kerf, pieces := someJob(random)
		plan, misfits := cutting.Nest(sheet, kerf, pieces, nil)
		require.Empty(t, misfits)
		require.Empty(t, verify(sheet, kerf, pieces, plan), "%v kerf %v pieces %v", sheet, kerf, pieces)
		assert.LessOrEqual(t, plan.Bound, len(plan.Sheets))
	}
}

func someJob(random *rand.Rand) (cutting.Size, unit.Length, []cutting.Piece) {
	sheet := cutting.Size{W: unit.Length(100+random.IntN(1000)) * unit.Millimetre, L: unit.Length(100+random.IntN(1000)) * unit.Millimetre}
	kerf := unit.Length(random.IntN(5)) * unit.Millimetre
	pieces := make([]cutting.Piece, 1+random.IntN(60))
	for i := range pieces {
		share := func(of unit.Length) unit.Length {
			return max(unit.Length(random.IntN(int(of/unit.Millimetre)+1))*unit.Millimetre, 1)
		}
		pieces[i] = cutting.Piece{Size: cutting.Size{W: share(sheet.W), L: share(sheet.L)}, Turn: random.IntN(3) > 0}
		if pieces[i].Turn && random.IntN(2) > 0 {
			pieces[i].W, pieces[i].L = pieces[i].L, pieces[i].W
			if !(pieces[i].L <= sheet.L && pieces[i].W <= sheet.W || pieces[i].L <= sheet.W && pieces[i].W <= sheet.L) {
				pieces[i].W, pieces[i].L = pieces[i].L, pieces[i].W
			}
		}
		if i > 0 && random.IntN(3) == 0 {
			pieces[i] = pieces[random.IntN(i)]
		}
	}
	return sheet, kerf, pieces
}
