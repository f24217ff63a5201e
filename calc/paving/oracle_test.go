package paving

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/require"
)

// The oracle is github.com/peterstace/simplefeatures, a general geometry library with an overlay of its own. It works in
// millimetres here.

func ofRing(r []Point) geom.LineString {
	var c []float64
	for i := range len(r) + 1 {
		p := r[i%len(r)]
		c = append(c, p.X/mm, p.Y/mm)
	}
	return geom.NewLineString(geom.NewSequence(c, geom.DimXY))
}

func ofRings(rings ...[]Point) geom.Geometry {
	var ls []geom.LineString
	for _, r := range rings {
		ls = append(ls, ofRing(r))
	}
	return geom.NewPolygon(ls).AsGeometry()
}

func ofRect(r Rect) geom.Geometry {
	return ofRings([]Point{{r.X0, r.Y0}, {r.X1, r.Y0}, {r.X1, r.Y1}, {r.X0, r.Y1}})
}

// places are what the fields have room for of every paver, found the plain way: row by row and column by column about
// the paving, without asking what is inside.
func places(g *Ground, grid Grid) (cells []Rect, fields []Rect) {
	rx, ry := g.rulers()
	for _, y := range ry.spans(grid.Y) {
		for _, x := range rx.spans(grid.X) {
			fields = append(fields, Rect{x.from, y.from, x.to, y.to})
			for row := 0; row <= 10_000; row++ {
				y0 := y.at + float64(row)*ry.module()
				y1 := min(y0+ry.size, y.to)
				if y0 >= y.to {
					break
				}
				_, part := math.Modf(float64(row)*g.pattern.Offset + 1e-9)
				for col := -1; col <= 10_000; col++ {
					x0 := x.at + (part+float64(col))*rx.module()
					x1 := min(x0+rx.size, x.to)
					x0 = max(x0, x.from)
					if x0 >= x.to {
						break
					}
					if y0 = max(y0, y.from); x1 > x0 && y1 > y0 {
						cells = append(cells, Rect{x0, y0, x1, y1})
					}
				}
			}
		}
	}
	return cells, fields
}

func TestPiecesAgreeWithAGeneralGeometryLibrary(t *testing.T) {
	compared, many := 0, 0
	n := each(t, 1, 60, func(r *rand.Rand, j *job, g *Ground) {
		l := g.Lay(g.Start(Point{5000 * mm * r.Float64(), 5000 * mm * r.Float64()}))
		if len(l.Pieces) > 250 {
			return
		}
		outline := append([][]Point{j.outline.Corners}, j.outline.Holes...)
		var turned [][]Point
		for _, ring := range outline {
			var to []Point
			for _, p := range ring {
				to = append(to, g.Along(p))
			}
			turned = append(turned, to)
		}
		all := ofRings(turned...)
		require.InEpsilon(t, all.Area(), g.area/mm/mm, 1e-9, "the outline")
		paved := ofParts(t, g.parts[paving])
		sum := paved
		for _, p := range []part{gap, structure} {
			other := ofParts(t, g.parts[p])
			both, err := geom.Intersection(sum, other)
			require.NoError(t, err)
			require.Less(t, both.Area(), 1e-3, "paving and gaps lie apart")
			if sum, err = geom.Union(sum, other); err != nil {
				t.Fatal(err)
			}
		}
		lost, err := geom.SymmetricDifference(all, sum)
		require.NoError(t, err)
		require.Less(t, lost.Area(), 1e-3, "together they are the outline")

		cells, _ := places(g, l.Grid)
		slivers := 0.0
		seen := 0
		for _, c := range cells {
			part, err := geom.Intersection(paved, ofRect(c))
			require.NoError(t, err)
			var ours []*Piece
			for i := range l.Pieces {
				b := l.Pieces[i].Cell
				if !l.Pieces[i].Full {
					b = bounds(l.Pieces[i].Rings[0])
				}
				if x, y := (b.X0+b.X1)/2, (b.Y0+b.Y1)/2; c.X0 < x && x < c.X1 && c.Y0 < y && y < c.Y1 {
					ours = append(ours, &l.Pieces[i])
				}
			}
			area := 0.0
			for _, p := range ours {
				area += p.Area / mm / mm
				seen++
			}
			thick, thin := 0, 0.0
			for _, poly := range polygons(part) {
				if w := narrowest(toRing(poly.ExteriorRing())); w < float64(Sliver) {
					thin += poly.Area()
				} else {
					thick++
				}
			}
			slivers += thin
			require.InDelta(t, part.Area()-thin, area, 1e-3, "area in cell %v", c)
			require.Equal(t, thick, len(ours), "pieces in cell %v", c)
			compared++
			many += b2i(thick > 1)
		}
		require.Equal(t, len(l.Pieces), seen, "no piece elsewhere")
		require.InDelta(t, slivers, l.Areas.Slivers/mm/mm, 1e-2)
	})
	t.Logf("%d layouts, %d cells, %d of them with several pieces", n, compared, many)
	require.Greater(t, compared, 300)
	require.Positive(t, many)
}

// ofParts makes one geometry of rings, holes clockwise: the largest first, since a ring may lie in another's hole.
func ofParts(t *testing.T, rings [][]Point) geom.Geometry {
	t.Helper()
	out := geom.Geometry{}
	var err error
	rings = slices.Clone(rings)
	slices.SortFunc(rings, func(a, b []Point) int { return cmp.Compare(math.Abs(area(b)), math.Abs(area(a))) })
	for _, r := range rings {
		if area(r) > 0 {
			out, err = geom.Union(out, ofRings(r))
		} else {
			out, err = geom.Difference(out, ofRings(r))
		}
		require.NoError(t, err)
	}
	return out
}

func polygons(g geom.Geometry) (out []geom.Polygon) {
	switch g.Type() {
	case geom.TypePolygon:
		if !g.IsEmpty() {
			out = append(out, g.MustAsPolygon())
		}
	case geom.TypeMultiPolygon:
		m := g.MustAsMultiPolygon()
		for i := range m.NumPolygons() {
			out = append(out, m.PolygonN(i))
		}
	case geom.TypeGeometryCollection:
		c := g.MustAsGeometryCollection()
		for i := range c.NumGeometries() {
			out = append(out, polygons(c.GeometryN(i))...)
		}
	}
	return out
}

func toRing(l geom.LineString) (ring []Point) {
	s := l.Coordinates()
	for i := range s.Length() - 1 {
		p := s.GetXY(i)
		ring = append(ring, Point{p.X * mm, p.Y * mm})
	}
	return plain(ring, micron)
}
