package paving

import (
	"math"
	"slices"

	"setbook/calc/unit"
)

// Ground is an outline made ready for laying: turned to the pattern's axes, with the perimeter gap and the structural
// joints taken out.
type Ground struct {
	paver    Paver
	pattern  Pattern
	joints   Joints
	cos, sin float64
	parts    [parts][][]Point // rings counterclockwise, holes clockwise
	area     float64          // of the outline
	extent   Rect             // of the outline
	reach    Rect             // of what is paved
	run      float64          // length of edges that restrain
	inner    []Point          // corners at which the paving turns about an inside corner
}

// Prepare makes an outline ready, or says what is wrong with it or with the pavers.
func Prepare(o *Outline, p Paver, pattern Pattern, j Joints) (*Ground, []Fault) {
	if faults := append(o.Check(), check(p, pattern, j)...); len(faults) > 0 {
		return nil, faults
	}
	g := &Ground{paver: p, pattern: pattern, joints: j}
	g.sin, g.cos = sincos(pattern.Turn)
	outer, kinds := slices.Clone(o.Corners), make([]bool, len(o.Corners))
	for i := range kinds {
		kinds[i] = o.Edge(i) != Open
	}
	if area(outer) < 0 {
		slices.Reverse(outer)
		slices.Reverse(kinds[:len(kinds)-1]) // the edge after a corner is now the one before it
	}
	rings := [][]Point{outer}
	held := [][]bool{kinds}
	for _, h := range o.Holes {
		hole := slices.Clone(h)
		if area(hole) > 0 {
			slices.Reverse(hole)
		}
		all := make([]bool, len(hole))
		for i := range all {
			all[i] = true
		}
		rings, held = append(rings, hole), append(held, all)
	}
	for _, r := range rings {
		for i := range r {
			r[i] = g.Along(r[i])
		}
	}
	g.area, g.extent = areas(rings), bounds(outer)
	for k, r := range rings {
		for i := range r {
			next, last := (i+1)%len(r), (i+len(r)-1)%len(r)
			if held[k][i] {
				g.run += length(minus(r[next], r[i]))
			}
			if k == 0 && cross(minus(r[i], r[last]), minus(r[next], r[i])) < 0 {
				g.inner = append(g.inner, r[i])
			}
		}
	}
	ok := false
	for try := 0.0; try < 8 && !ok; try++ {
		// Joints a few micrometres wider do no harm, and part lines that all but coincide.
		g.parts, ok = overlay(rings, gaps(rings, held, float64(j.Perimeter), try), g.structures(o.Structural, try))
	}
	if !ok {
		return nil, []Fault{{Problem: TooFine}}
	}
	g.reach = bounds(g.parts[paving]...)
	if len(g.parts[paving]) == 0 {
		return nil, []Fault{{Problem: NothingLeft}}
	}
	if g.places() > MostPavers {
		return nil, []Fault{{Problem: TooMany}}
	}
	return g, nil
}

// places are the modules in the rectangle about what is paved.
func (g *Ground) places() float64 {
	return (g.reach.X1 - g.reach.X0) / float64(g.paver.L+g.paver.Joint) * (g.reach.Y1 - g.reach.Y0) / float64(g.paver.W+g.paver.Joint)
}

// gaps are the strips along edges that restrain.
func gaps(rings [][]Point, held [][]bool, wide, more float64) (out [][]Point) {
	for k, r := range rings {
		for i := range r {
			if wide > 0 && held[k][i] {
				out = append(out, strip(r, held[k], i, wide+more))
			}
		}
	}
	return out
}

// structures are the strips over joints in the slab.
func (g *Ground) structures(lines [][]Point, more float64) (out [][]Point) {
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			if a, b := g.Along(line[i-1]), g.Along(line[i]); g.joints.Structural > 0 && length(minus(b, a)) > closest {
				out = append(out, band(a, b, float64(g.joints.Structural)+more, i == 1, i == len(line)-1))
			}
		}
	}
	return out
}

// sincos is exact at quarter turns.
func sincos(turn unit.Angle) (sin, cos float64) {
	if quarters := float64(turn) / 90; quarters == math.Trunc(quarters) {
		switch int64(quarters) & 3 {
		case 1:
			return 1, 0
		case 2:
			return 0, -1
		case 3:
			return -1, 0
		}
		return 0, 1
	}
	return math.Sincos(float64(turn) * math.Pi / 180)
}

// Along turns a point from the site's axes to the pattern's.
func (g *Ground) Along(p Point) Point { return Point{p.X*g.cos + p.Y*g.sin, p.Y*g.cos - p.X*g.sin} }

// Site turns a point from the pattern's axes to the site's.
func (g *Ground) Site(p Point) Point { return Point{p.X*g.cos - p.Y*g.sin, p.X*g.sin + p.Y*g.cos} }

// Area is the outline's, less its holes.
func (g *Ground) Area() unit.Area { return unit.Area(g.area) }

// Paved are the rings of what is paved, in the pattern's axes: the outline without perimeter gap and structural joints.
func (g *Ground) Paved() [][]Point { return g.parts[paving] }

// Gaps are the rings of the perimeter gap, and those of the structural joints, in the pattern's axes.
func (g *Ground) Gaps() (perimeter, structural [][]Point) { return g.parts[gap], g.parts[structure] }

// strip is the gap along edge i of a ring with what is paved on the left. It is mitred where the next edge turns away and
// restrains too, and runs on to an open next edge that stands wide; elsewhere it ends square, and overlaps or overshoots.
func strip(r []Point, held []bool, i int, wide float64) []Point {
	n := len(r)
	a, b := r[i], r[(i+1)%n]
	u := unitary(minus(b, a))
	side := Point{-u.Y, u.X}
	next, last := unitary(minus(r[(i+2)%n], b)), unitary(minus(a, r[(i+n-1)%n]))
	baseB, farB := end(cross(u, next), dot(u, next), held[(i+1)%n], wide)
	baseA, farA := end(cross(last, u), dot(last, u), held[(i+n-1)%n], wide)
	return []Point{plus(a, u, -baseA), plus(b, u, baseB), plus(plus(b, side, wide), u, farB), plus(plus(a, side, wide), u, -farA)}
}

// end is how far a strip runs past an end of its edge, at the edge and a width off it: turn and on are the sine and cosine
// of the angle by which the outline turns left there.
func end(turn, on float64, held bool, wide float64) (base, far float64) {
	const steep = 2 // a mitre longer than this many widths is cut square
	switch {
	case turn < 0 && held:
		if tan := -turn / (1 + on); on > -1 && tan <= steep {
			return 0, wide * tan
		}
		return wide, wide
	case turn > 0 && !held && on > 0 && on/turn <= steep:
		return 0, wide * on / turn
	}
	return 0, 0
}

func unitary(p Point) Point {
	far := length(p)
	return Point{p.X / far, p.Y / far}
}

// band is the strip about a line, run on past its ends: half a width at a bend, two where the line ends, so that it
// crosses an edge that it meets askew.
func band(a, b Point, wide float64, first, last bool) []Point {
	u := unitary(minus(b, a))
	side := Point{-u.Y * wide / 2, u.X * wide / 2}
	before, after := wide/2, wide/2
	if first {
		before = 2 * wide
	}
	if last {
		after = 2 * wide
	}
	a, b = plus(a, u, -before), plus(b, u, after)
	return []Point{minus(a, side), minus(b, side), plus(b, side, 1), plus(a, side, 1)}
}
