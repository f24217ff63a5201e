package paving

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

const mm = float64(unit.Millimetre)

func rectangle(x, y, w, h float64) []Point {
	return []Point{{x * mm, y * mm}, {(x + w) * mm, y * mm}, {(x + w) * mm, (y + h) * mm}, {x * mm, (y + h) * mm}}
}

// round is a ring of n corners about a point, its radius shaken by a share of itself; all in millimetres.
func round(r *rand.Rand, x, y, radius float64, n int, shake float64) []Point {
	var ring []Point
	for i := range n {
		far := radius * (1 - shake*r.Float64())
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.7*shake*r.Float64()) / float64(n))
		ring = append(ring, Point{(x + far*cos) * mm, (y + far*sin) * mm})
	}
	return ring
}

// stairs is an outline with right angles only: steps up and then back down.
func stairs(r *rand.Rand) []Point {
	ring := []Point{{0, 0}}
	x, n := 0.0, 1+r.IntN(4)
	for range n {
		high := math.Round(800 + 4000*r.Float64())
		ring = append(ring, Point{x, high * mm})
		x += math.Round(700+2500*r.Float64()) * mm
		ring = append(ring, Point{x, high * mm})
	}
	return append(ring, Point{x, 0})
}

// job is something to lay, made up.
type job struct {
	outline Outline
	paver   Paver
	pattern Pattern
	joints  Joints
}

func (j *job) prepare() (*Ground, []Fault) { return Prepare(&j.outline, j.paver, j.pattern, j.joints) }

// invent makes a job up. It may be one that is refused.
func invent(r *rand.Rand) *job {
	j := &job{}
	o := &j.outline
	switch r.IntN(4) {
	case 0:
		o.Corners = rectangle(math.Round(1000*r.Float64()), 0, math.Round(500+6000*r.Float64()), math.Round(500+5000*r.Float64()))
	case 1:
		o.Corners = stairs(r)
	default:
		o.Corners = round(r, 3000*r.Float64(), 3000*r.Float64(), 800+3000*r.Float64(), 3+r.IntN(20), 0.6*r.Float64())
	}
	for range o.Corners {
		o.Edges = append(o.Edges, Edge(r.IntN(3)))
	}
	b := bounds(o.Corners)
	at := func() (x, y float64) {
		return (b.X0 + r.Float64()*(b.X1-b.X0)) / mm, (b.Y0 + r.Float64()*(b.Y1-b.Y0)) / mm
	}
	for range r.IntN(4) {
		x, y := at()
		if hole := round(r, x, y, 20+300*r.Float64(), 3+r.IntN(6), 0.3*r.Float64()); r.IntN(2) == 0 {
			o.Holes = append(o.Holes, hole)
		} else {
			o.Holes = append(o.Holes, rectangle(x, y, 100, math.Round(40+300*r.Float64())))
		}
	}
	for range r.IntN(2) {
		x0, y0 := at()
		x1, y1 := at()
		o.Structural = append(o.Structural, []Point{{x0 * mm, y0 * mm}, {x1 * mm, y1 * mm}})
	}
	side := func() unit.Length { return unit.Length(math.Round(150+700*r.Float64())) * unit.Millimetre }
	j.paver = Paver{side(), side(), unit.Length(2+r.IntN(8)) * unit.Millimetre}
	if r.IntN(3) == 0 {
		j.paver.W = j.paver.L
	}
	j.pattern.Offset = [...]float64{0, 0, 1.0 / 3, 1.0 / 4, r.Float64() / 3}[r.IntN(5)]
	j.pattern.Turn = [...]unit.Angle{0, 0, 90, 45, unit.Angle(360 * r.Float64()), o.Along(0)}[r.IntN(6)]
	j.joints = Joints{
		Movement:   unit.Length(5+r.IntN(12)) * unit.Millimetre,
		Perimeter:  unit.Length(r.IntN(3)*6) * unit.Millimetre,
		Structural: unit.Length(r.IntN(3)*10) * unit.Millimetre,
	}
	if r.IntN(3) > 0 {
		j.joints.Longest = max(j.paver.L, j.paver.W) + 20*unit.Millimetre + unit.Length(3000*r.Float64())*unit.Millimetre
	}
	return j
}

// each runs a check on made-up jobs that can be laid, and says how many there were. A short run, as in the browser's machine,
// takes a quarter of them.
func each(t *testing.T, seed uint64, tries int, check func(r *rand.Rand, j *job, g *Ground)) (laid int) {
	t.Helper()
	if testing.Short() {
		tries /= 4
	}
	for i := range tries {
		r := rand.New(rand.NewPCG(seed, uint64(i)))
		j := invent(r)
		if g, faults := j.prepare(); len(faults) == 0 {
			laid++
			check(r, j, g)
		}
	}
	require.Greater(t, laid, tries/4, "most can be laid")
	return laid
}
