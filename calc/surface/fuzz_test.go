package surface_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"setbook/calc/surface"
)

// Any small grid, its heights and gaps from the bytes: the straightedge agrees with trying every three readings, the ponds with sinking from above,
// refilling changes nothing, residuals sum to nought, and both ways of taking a mixed cell leave one net.
func FuzzKernels(f *testing.F) {
	f.Add([]byte{9, 9, 9, 9, 1, 9, 9, 9, 9}, uint8(3), uint8(20))
	f.Add([]byte{5, 0, 255, 7, 3, 200, 5, 5, 80, 1, 2, 3}, uint8(4), uint8(35))
	f.Add([]byte{1, 50, 3, 60, 2, 70, 255, 4, 90, 8, 11, 12, 14}, uint8(13), uint8(60))
	f.Fuzz(func(t *testing.T, data []byte, wide, length uint8) {
		w := 1 + int(wide)%16
		if len(data) < w || len(data) > 200 {
			return
		}
		g := &surface.Grid{Wide: w, Deep: len(data) / w, StepX: 1, StepY: 1.5}
		for _, b := range data[:g.Wide*g.Deep] {
			z := float64(b)
			if b == 255 {
				z = math.NaN()
			}
			g.Z = append(g.Z, z)
		}
		long := float64(length) / 10
		require.InDelta(t, brute(g, long), g.Worst(nil, long)[0].Depth, 1e-9)
		once := g.Fill()
		require.InDeltaSlice(t, filled(g), once.Z, 0)
		require.InDeltaSlice(t, once.Z, once.Fill().Z, 0)
		p, ok := g.Fit()
		if !ok {
			return
		}
		sum := 0.0
		over := g.Over(p)
		for _, z := range over {
			if z == z {
				sum += z
			}
		}
		require.InDelta(t, 0, sum, 1e-9)
		v := g.To(over)
		require.InDelta(t, v.Fill-v.Cut, v.NetFill-v.NetCut, 1e-6)
	})
}
