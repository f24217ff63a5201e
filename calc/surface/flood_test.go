package surface_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/surface"
)

// filled floods by its definition, with no queue: from a lake over everything, each reading sinks to the higher of itself and
// its lowest neighbour, until nothing moves (Planchon and Darboux 2001).
func filled(g *surface.Grid) []float64 {
	at := func(col, row int) (int, bool) {
		i := row*g.Wide + col
		return i, col >= 0 && col < g.Wide && row >= 0 && row < g.Deep && g.Z[i] == g.Z[i]
	}
	level := make([]float64, len(g.Z))
	for i, z := range g.Z {
		level[i] = math.Inf(1)
		if z != z {
			level[i] = z
		}
	}
	for moved := true; moved; {
		moved = false
		for i, z := range g.Z {
			p := g.Place(i)
			lowest := math.Inf(1)
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					if n, ok := at(p.Col+dx, p.Row+dy); ok {
						lowest = math.Min(lowest, level[n])
					} else {
						lowest = math.Inf(-1)
					}
				}
			}
			if to := math.Max(z, lowest); to < level[i] {
				level[i], moved = to, true
			}
		}
	}
	return level
}

func TestFillAgainstSinking(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 300 {
		g := random(r, 14)
		got := g.Fill()
		require.Equal(t, len(g.Z), len(got.Z))
		require.InDeltaSlice(t, filled(g), got.Z, 0)
		require.InDeltaSlice(t, got.Z, got.Fill().Z, 0, "refilling a filled grid changes nothing")
	}
}

// Wang and Liu 2006, the worked grid, as printed with its filled heights in the tests of pyflwdir (Deltares,
// https://github.com/Deltares/pyflwdir, tests/test_dem.py): column 3 of rows 2 to 4 becomes 11, all eight neighbours.
func TestFillWangLiu(t *testing.T) {
	g := surface.New([][]float64{
		{15, 15, 14, 15, 12, 6, 12},
		{14, 13, 10, 12, 15, 17, 15},
		{15, 15, 9, 11, 8, 15, 15},
		{16, 17, 8, 16, 15, 7, 5},
		{19, 18, 19, 18, 17, 15, 14},
	}, 1, 1)
	want := append([]float64(nil), g.Z...)
	want[1*7+2], want[2*7+2], want[3*7+2] = 11, 11, 11
	p := g.Ponds()
	assert.Equal(t, want, g.Fill().Z)
	assert.Equal(t, surface.Pond{Depths: p.Depths, Deepest: 3, Sum: 6, Wet: 3}, p)
}

// Rings of 2 with noughts inside, ten by ten: every enclosed nought becomes 2 (richdem, tests/depressions/testdem1.dem and
// testdem1.all.out, https://github.com/r-barnes/richdem).
func TestFillRings(t *testing.T) {
	p := surface.New(testdem1, 1, 1).Ponds()
	assert.Equal(t, 18.0, p.Sum)
	assert.Equal(t, 9, p.Wet)
	assert.Equal(t, 2.0, p.Deepest)
}

// A plane that slopes to one edge holds no water; a missing reading lets water out.
func TestFillDry(t *testing.T) {
	assert.Zero(t, surface.New([][]float64{{0, 1, 2}, {0, 1, 2}, {0, 1, 2}}, 1, 1).Ponds().Wet)
	bowl := [][]float64{{5, 5, 5, 5}, {5, 1, 2, 5}, {5, 5, 5, 5}}
	assert.Equal(t, 7.0, surface.New(bowl, 1, 1).Ponds().Sum)
	bowl[1][2] = math.NaN()
	assert.Zero(t, surface.New(bowl, 1, 1).Ponds().Sum)
}
