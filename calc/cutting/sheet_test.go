package cutting

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

// What a layout keeps by the way is what its pieces come to.
func TestLayoutsAddUp(t *testing.T) {
	var pieces []Piece
	r := random(5)
	for range 150 {
		pieces = append(pieces, Piece{Size{unit.Length(5+r.below(400)) * unit.Millimetre, unit.Length(5+r.below(250)) * unit.Millimetre}, r.below(3) > 0})
	}
	p := pose(Size{500 * unit.Millimetre, 300 * unit.Millimetre}, 2*unit.Millimetre, pieces)
	require.Empty(t, p.misfits)
	for _, sheets := range [][]layout{p.search().rough(), p.search().run(1, nil)} {
		for _, s := range sheets {
			long, area := 0, 0
			w, l, stackW, stackL := make([]int, len(s.strips)), make([]int, len(s.strips)), make([]int, len(s.stacks)), make([]int, len(s.stacks))
			for _, it := range s.items {
				wide, tall := p.lying(it.piece, it.turned, s.across)
				stackW[it.stack], stackL[it.stack] = max(stackW[it.stack], wide), stackL[it.stack]+tall
				area += wide * tall
			}
			for i, c := range s.stacks {
				assert.Equal(t, stackW[i], c.w)
				assert.Equal(t, stackL[i], c.l)
				w[c.strip], l[c.strip] = w[c.strip]+c.w, max(l[c.strip], c.l)
			}
			for i, strip := range s.strips {
				assert.Equal(t, w[i], strip.w)
				assert.Equal(t, l[i], strip.l)
				long += l[i]
			}
			assert.Equal(t, long, s.l)
			assert.Equal(t, area, s.area)
		}
	}
}
