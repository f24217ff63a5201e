package paving

import (
	"math"
	"math/rand/v2"
	"testing"

	"setbook/calc/unit"
)

// large is 10,000 pavers and more on an outline of 60 corners with a hole.
func large() *job {
	r := rand.New(rand.NewPCG(60, 60))
	j := &job{
		outline: Outline{Corners: round(r, 0, 0, 36_000, 60, 0.1), Holes: [][]Point{rectangle(-2000, -3000, 1500, 1200)}},
		paver:   Paver{600 * unit.Millimetre, 600 * unit.Millimetre, 5 * unit.Millimetre},
		joints:  Joints{12 * unit.Millimetre, 10 * unit.Millimetre, 10 * unit.Millimetre, 3600 * unit.Millimetre},
	}
	for i := range 60 {
		j.outline.Edges = append(j.outline.Edges, Edge(i/20))
	}
	return j
}

func BenchmarkLargeLayout(b *testing.B) {
	for _, turn := range []unit.Angle{0, 31} {
		for _, offset := range []float64{0, 1.0 / 3} {
			j := large()
			j.pattern = Pattern{offset, turn}
			b.Run("turn "+string('0'+rune(turn/10))+" offset "+string('0'+rune(math.Round(offset*3))), func(b *testing.B) {
				pieces := 0
				for b.Loop() {
					g, faults := j.prepare()
					if len(faults) > 0 {
						b.Fatal(faults)
					}
					l := g.Lay(g.Start(Point{100, 100}))
					pieces = len(l.Pieces)
				}
				b.ReportMetric(float64(pieces), "pieces")
			})
		}
	}
}

func BenchmarkLargeSearch(b *testing.B) {
	g, _ := large().prepare()
	for b.Loop() {
		if len(g.Search(nil)) == 0 {
			b.Fatal("nothing found")
		}
	}
}
