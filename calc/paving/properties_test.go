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

// holds checks what must be true of every layout.
func holds(t *testing.T, j *job, g *Ground, l *Layout) {
	t.Helper()
	require.InEpsilon(t, float64(j.outline.Area()), g.area, 1e-9)
	require.InEpsilon(t, g.area, l.Areas.Sum(), 1e-9, "pieces and joints are the outline: %+v", l.Areas)
	for name, a := range map[string]float64{"pavers": l.Areas.Pavers, "grout": l.Areas.Grout, "movement": l.Areas.Movement,
		"structural": l.Areas.Structural, "perimeter": l.Areas.Perimeter, "slivers": l.Areas.Slivers} {
		require.GreaterOrEqual(t, a, -1e-9*g.area, name)
	}
	if limit := float64(j.joints.Longest); limit > 0 {
		end := func(at, gap, last float64) float64 {
			return at + math.Copysign(min(math.Abs(gap), math.Abs(last-at)), gap)
		}
		by := float64(j.joints.Perimeter)
		for _, axis := range []struct {
			span   unit.Length
			lines  []float64
			lo, hi float64
		}{{l.SpanX, l.LinesX, end(g.reach.X0, -by, g.extent.X0), end(g.reach.X1, by, g.extent.X1)},
			{l.SpanY, l.LinesY, end(g.reach.Y0, -by, g.extent.Y0), end(g.reach.Y1, by, g.extent.Y1)}} {
			ends := append(append([]float64{axis.lo}, axis.lines...), axis.hi)
			for i := 1; i < len(ends); i++ {
				require.LessOrEqual(t, ends[i]-ends[i-1], limit+near, "span")
				require.Greater(t, ends[i], ends[i-1], "in order")
			}
			require.LessOrEqual(t, float64(axis.span), limit+near)
		}
	}
	counts := make([]int, len(l.Cuts))
	full := 0
	for i := range l.Pieces {
		p := &l.Pieces[i]
		require.InDelta(t, float64(j.paver.L), p.Cell.X1-p.Cell.X0, near, "a cell is a paver")
		require.InDelta(t, float64(j.paver.W), p.Cell.Y1-p.Cell.Y0, near, "a cell is a paver")
		if p.Full {
			full++
			require.Equal(t, -1, p.Cut)
			require.Nil(t, p.Rings)
			// What a whole paver lacks at most is Trim on every side.
			require.LessOrEqual(t, p.Area, float64(j.paver.L*j.paver.W)*(1+1e-9))
			require.GreaterOrEqual(t, p.Area, float64((j.paver.L-2*Trim)*(j.paver.W-2*Trim)))
			continue
		}
		counts[p.Cut]++
		b := bounds(p.Rings[0])
		require.InDelta(t, p.Area, areas(p.Rings), 8*(b.X1-b.X0+b.Y1-b.Y0), "but for corners a micrometre off a straight edge")
		f := l.Fields[p.Field]
		for _, in := range []Rect{p.Cell, f.Rect, g.reach} {
			require.True(t, b.X0 >= in.X0-near && b.X1 <= in.X1+near && b.Y0 >= in.Y0-near && b.Y1 <= in.Y1+near, "%v outside %v", b, in)
		}
		c := l.Cuts[p.Cut]
		require.InDelta(t, c.Area, p.Area, alike*2*(c.L+c.W), "alike")
	}
	require.Equal(t, full, l.Full)
	for i, c := range l.Cuts {
		require.Equal(t, counts[i], c.Count, c.Mark)
		b := bounds(c.Shape[0])
		require.Equal(t, Rect{0, 0, c.L, c.W}, b)
	}
	apart := map[[4]int]bool{}
	for i := range l.Pieces {
		if p := &l.Pieces[i]; p.Full {
			key := [4]int{p.Field, p.Row, p.Col}
			require.False(t, apart[key], "two whole pavers in one place")
			apart[key] = true
		}
	}
}

func TestEveryLayoutHolds(t *testing.T) {
	slivers, cuts := 0, 0
	n := each(t, 2, 1500, func(r *rand.Rand, j *job, g *Ground) {
		l := g.Lay(g.Start(Point{1e7 * r.Float64(), 1e7 * r.Float64()}))
		holds(t, j, g, &l)
		slivers += b2i(l.Areas.Slivers > 0)
		cuts += len(l.Cuts)
	})
	t.Logf("%d layouts, %d cuts, %d with slivers", n, cuts, slivers)
	require.Greater(t, slivers, 20)
}

// Two pieces never overlap: pieces of different places cannot, since their places do not; the places of a layout are
// looked at pair by pair here.
func TestPlacesLieApart(t *testing.T) {
	each(t, 3, 150, func(r *rand.Rand, j *job, g *Ground) {
		l := g.Lay(g.Start(Point{1e7 * r.Float64(), 1e7 * r.Float64()}))
		var boxes []Rect
		seen := map[[3]int]int{}
		for i := range l.Pieces {
			p := &l.Pieces[i]
			at := [3]int{p.Field, p.Row, p.Col}
			f := l.Fields[p.Field]
			b := Rect{max(p.Cell.X0, f.X0), max(p.Cell.Y0, f.Y0), min(p.Cell.X1, f.X1), min(p.Cell.Y1, f.Y1)}
			if _, again := seen[at]; !again {
				seen[at] = i
				boxes = append(boxes, b)
			} else {
				// Pieces of one place are apart: the middle of no edge of one lies in the other.
				for k := seen[at]; k < i; k++ {
					q := &l.Pieces[k]
					for e, c := range p.Rings[0] {
						d := p.Rings[0][(e+1)%len(p.Rings[0])]
						require.False(t, within(Point{(c.X + d.X) / 2, (c.Y + d.Y) / 2}, q.Rings), "two pieces of one place overlap")
					}
				}
			}
		}
		slices.SortFunc(boxes, func(a, b Rect) int { return int(math.Copysign(1, a.X0-b.X0)) })
		for i, a := range boxes {
			for _, b := range boxes[i+1:] {
				if b.X0 >= a.X1 {
					break
				}
				require.False(t, min(a.X1, b.X1)-max(a.X0, b.X0) > near && min(a.Y1, b.Y1)-max(a.Y0, b.Y0) > near, "%v and %v overlap", a, b)
			}
		}
	})
}

// sums are what stays the same when the outline is mirrored or turned together with the grid.
type sums struct {
	full, pieces, fields, cuts int
	counts                     []int
}

func summed(l *Layout) sums {
	s := sums{full: l.Full, pieces: len(l.Pieces), fields: len(l.Fields), cuts: len(l.Cuts)}
	for _, c := range l.Cuts {
		s.counts = append(s.counts, c.Count)
	}
	return s
}

func sameAreas(t *testing.T, a, b *Layout) {
	t.Helper()
	whole := a.Areas.Sum() * 1e-9
	for _, pair := range [][2]float64{{a.Areas.Pavers, b.Areas.Pavers}, {a.Areas.Grout, b.Areas.Grout}, {a.Areas.Movement, b.Areas.Movement},
		{a.Areas.Structural, b.Areas.Structural}, {a.Areas.Perimeter, b.Areas.Perimeter}, {a.Areas.Slivers, b.Areas.Slivers}} {
		assert.InDelta(t, pair[0], pair[1], whole)
	}
}

// mirrored is an axis seen from its other end.
func mirrored(r *ruler, a Axis) Axis {
	spans := r.spans(a)
	s := spans[len(spans)-1]
	out := Axis{First: -(s.at + float64(s.modules)*r.module() - r.joint)}
	for i := len(spans) - 1; i >= 0; i-- {
		out.Fields = append(out.Fields, spans[i].modules)
	}
	return out
}

func TestMirroredOutlineGivesMirroredCounts(t *testing.T) {
	each(t, 4, 400, func(r *rand.Rand, j *job, g *Ground) {
		j.pattern.Offset = 0 // an offset pattern is handed
		j.pattern.Turn = 0
		g, faults := j.prepare()
		require.Empty(t, faults)
		grid := g.Start(Point{1e7 * r.Float64(), 1e7 * r.Float64()})
		l := g.Lay(grid)

		m := *j
		flip := func(ring []Point) (out []Point) {
			for _, p := range ring {
				out = append(out, Point{-p.X, p.Y})
			}
			return out
		}
		m.outline = Outline{Corners: flip(j.outline.Corners), Edges: j.outline.Edges}
		for _, h := range j.outline.Holes {
			m.outline.Holes = append(m.outline.Holes, flip(h))
		}
		for _, s := range j.outline.Structural {
			m.outline.Structural = append(m.outline.Structural, flip(s))
		}
		h, faults := m.prepare()
		require.Empty(t, faults)
		x, _ := g.rulers()
		k := h.Lay(Grid{mirrored(&x, grid.X), grid.Y})
		require.Equal(t, summed(&l), summed(&k))
		sameAreas(t, &l, &k)
	})
}

func TestTurnedOutlineGivesTheSameCounts(t *testing.T) {
	each(t, 5, 400, func(r *rand.Rand, j *job, g *Ground) {
		grid := g.Start(Point{1e7 * r.Float64(), 1e7 * r.Float64()})
		l := g.Lay(grid)
		for _, turn := range []unit.Angle{90, 180, unit.Angle(360 * r.Float64())} {
			sin, cos := sincos(turn)
			spin := func(ring []Point) (out []Point) {
				for _, p := range ring {
					out = append(out, Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos})
				}
				return out
			}
			m := *j
			m.pattern.Turn += turn
			m.outline = Outline{Corners: spin(j.outline.Corners), Edges: j.outline.Edges}
			for _, h := range j.outline.Holes {
				m.outline.Holes = append(m.outline.Holes, spin(h))
			}
			for _, s := range j.outline.Structural {
				m.outline.Structural = append(m.outline.Structural, spin(s))
			}
			h, faults := m.prepare()
			require.Empty(t, faults)
			k := h.Lay(grid)
			require.Equal(t, summed(&l), summed(&k), "turned by %v", turn)
			sameAreas(t, &l, &k)
		}
	})
}

// Every point nearer than the gap to what restrains is in the gap, and none further off than the longest mitre.
func TestGapIsKeptAtWhatRestrains(t *testing.T) {
	points := 0
	each(t, 6, 300, func(r *rand.Rand, j *job, g *Ground) {
		wide := float64(j.joints.Perimeter)
		if wide == 0 {
			return
		}
		off := func(p Point) float64 {
			least := math.Inf(1)
			for i, a := range j.outline.Corners {
				if j.outline.Edge(i) != Open {
					least = min(least, apart(p, g.Along(a), g.Along(j.outline.Corners[(i+1)%len(j.outline.Corners)])))
				}
			}
			for _, h := range j.outline.Holes {
				for i, a := range h {
					least = min(least, apart(p, g.Along(a), g.Along(h[(i+1)%len(h)])))
				}
			}
			return least
		}
		perimeter, _ := g.Gaps()
		for range 100 {
			i := r.IntN(len(j.outline.Corners))
			a, b := g.Along(j.outline.Corners[i]), g.Along(j.outline.Corners[(i+1)%len(j.outline.Corners)])
			p := plus(a, minus(b, a), r.Float64())
			p = plus(p, Point{r.Float64() - 0.5, r.Float64() - 0.5}, 6*wide)
			switch far := off(p); {
			case within(p, g.Paved()):
				points++
				require.Greater(t, far, 0.0)
				// Square to the end of an edge that an open one follows the gap may be cut short, never along it.
				require.Truef(t, far > wide*0.999 || nearOpenEnd(j, g, p, wide), "%v paved %v from what restrains", p, far/wide)
			case within(p, perimeter):
				points++
				require.Less(t, far, wide*4.2)
			}
		}
	})
	require.Greater(t, points, 1000)
}

// nearOpenEnd says whether a point is by a corner between an edge that restrains and an open one.
func nearOpenEnd(j *job, g *Ground, p Point, wide float64) bool {
	n := len(j.outline.Corners)
	for i, c := range j.outline.Corners {
		if (j.outline.Edge(i) == Open) != (j.outline.Edge((i+n-1)%n) == Open) && length(minus(p, g.Along(c))) < wide {
			return true
		}
	}
	return false
}

func FuzzLay(f *testing.F) {
	for i := range uint64(20) {
		f.Add(i, i*7, 0.3, 0.7)
	}
	f.Fuzz(func(t *testing.T, a, b uint64, x, y float64) {
		j := invent(rand.New(rand.NewPCG(a, b)))
		g, faults := j.prepare()
		if len(faults) > 0 || !(math.Abs(x)+math.Abs(y) < 1e3) {
			return
		}
		l := g.Lay(g.Start(Point{x * 1e6, y * 1e6}))
		holds(t, j, g, &l)
	})
}

// Corners on a coarse grid, so that much lies on one line, on the module, or a gap's width from the next: what is not refused
// must hold too.
func FuzzCoarse(f *testing.F) {
	f.Add([]byte{0x00, 0x80, 0x88, 0x08}, []byte{0x22, 0x32, 0x33, 0x23}, uint8(7), uint8(0))
	f.Add([]byte{0x00, 0xf0, 0xf8, 0x88, 0x8f, 0x0f}, []byte{0x44, 0x54, 0x55}, uint8(255), uint8(77))
	f.Add([]byte{0x00, 0xf1, 0x02}, []byte{}, uint8(0), uint8(200))
	f.Fuzz(func(t *testing.T, outline, hole []byte, edges, how uint8) {
		if len(outline) > 24 || len(hole) > 12 {
			return
		}
		coarse := func(bytes []byte, step float64) (ring []Point) {
			for _, b := range bytes {
				ring = append(ring, Point{float64(b>>4) * step * mm, float64(b&15) * step * mm})
			}
			return ring
		}
		step := [...]float64{100, 305, 152.5, 10}[how&3]
		j := &job{outline: Outline{Corners: coarse(outline, step)}, paver: Paver{300 * mmU, 300 * mmU, 5 * mmU}}
		if len(hole) > 0 {
			j.outline.Holes = [][]Point{coarse(hole, step)}
		}
		for i := range outline {
			j.outline.Edges = append(j.outline.Edges, Edge(edges>>(i%8)&1))
		}
		j.joints.Perimeter = [...]unit.Length{0, 10 * mmU, 5 * mmU, 50 * mmU}[how>>2&3]
		j.joints.Movement, j.joints.Longest = 10*mmU, [...]unit.Length{0, 700 * mmU, 1220 * mmU, 3000 * mmU}[how>>4&3]
		j.pattern.Turn = [...]unit.Angle{0, 45}[how>>6&1]
		j.pattern.Offset = [...]float64{0, 1.0 / 3}[how>>7]
		g, faults := j.prepare()
		if len(faults) > 0 {
			return
		}
		l := g.Lay(g.Start(Point{}))
		holds(t, j, g, &l)
	})
}
