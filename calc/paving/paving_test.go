package paving

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

func TestRectangle(t *testing.T) {
	o := &Outline{Corners: rectangle(0, 0, 3025, 2420)}
	g, faults := Prepare(o, Paver{600 * unit.Millimetre, 600 * unit.Millimetre, 5 * unit.Millimetre}, Pattern{}, Joints{})
	require.Empty(t, faults)
	l := g.Lay(g.Start(Point{0, 0}))
	assert.Equal(t, 20, l.Full)
	assert.Len(t, l.Pieces, 20)
	assert.InEpsilon(t, g.area, l.Areas.Sum(), 1e-9)
	t.Logf("%+v", l.Areas)
	o.Edges = []Edge{Wall, Wall, Open, Wall}
	o.Holes = [][]Point{rectangle(1000, 1000, 100, 100)}
	o.Structural = [][]Point{{{0, 0}, {3025 * mm, 2420 * mm}}}
	g, faults = Prepare(o, Paver{600 * unit.Millimetre, 600 * unit.Millimetre, 5 * unit.Millimetre}, Pattern{Offset: 1. / 3, Turn: 30}, Joints{10 * unit.Millimetre, 10 * unit.Millimetre, 12 * unit.Millimetre, 1800 * unit.Millimetre})
	require.Empty(t, faults)
	l = g.Lay(g.Start(Point{0, 0}))
	t.Logf("%+v %v", l.Areas, l.Areas.Sum()/g.area-1)
	t.Logf("%v %v %v %v %v", l.Full, len(l.Pieces), l.SpanX, l.SpanY, l.Grid)
	assert.InEpsilon(t, g.area, l.Areas.Sum(), 1e-9)
}
