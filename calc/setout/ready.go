package setout

import (
	"math"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// asked is what an entry asks to have laid.
type asked struct {
	outline paving.Outline
	paver   paving.Paver
	pattern paving.Pattern
	joints  paving.Joints
	corners [][]float64 // of the outline, as given
	mix     unit.Area
}

// third is the most that a course may be offset: source.OffsetPattern, whose 33 % is a third. What is typed within half a
// per cent of it is taken as one, so that every third course falls in line and not a sliver off it.
const (
	third = 1.0 / 3
	about = 0.005
)

// read takes an entry apart. Where edges are told apart there is a name for each.
func read(e calc.Entry) (a asked, named bool) {
	a.corners = outline.Of(e)
	a.outline.Corners = points(a.corners)
	names := edgeNames(e, len(a.corners))
	for _, name := range names {
		a.outline.Edges = append(a.outline.Edges, kinds[name])
	}
	for _, h := range holes.Groups(e) {
		hole := points(h)
		if len(hole) == 2 { // opposite corners of a box
			p, q := hole[0], hole[1]
			hole = []paving.Point{p, {X: q.X, Y: p.Y}, q, {X: p.X, Y: q.Y}}
		}
		a.outline.Holes = append(a.outline.Holes, hole)
	}
	for _, row := range structural.Of(e) {
		a.outline.Structural = append(a.outline.Structural, []paving.Point{{X: row[0], Y: row[1]}, {X: row[2], Y: row[3]}})
	}
	a.paver = paving.Paver{L: paverL.Of(e), W: paverW.Of(e), Joint: joint.Of(e)}
	a.pattern.Turn = turn.Of(e)
	if pattern.Of(e) == "third" {
		if a.pattern.Offset = float64(offset.Of(e)); math.Abs(a.pattern.Offset-third) < about {
			a.pattern.Offset = third
		}
	}
	a.joints = paving.Joints{Movement: soft.Of(e), Perimeter: perimeter.Of(e), Structural: soft.Of(e), Longest: most.Of(e)}
	a.mix = mix.Of(e)
	return a, len(names) == len(a.corners)
}

var kinds = map[string]paving.Edge{"open": paving.Open, "wall": paving.Wall, "building": paving.Building}

func points(rows [][]float64) []paving.Point {
	ps := make([]paving.Point, len(rows))
	for i, r := range rows {
		ps[i] = paving.Point{X: r[0], Y: r[1]}
	}
	return ps
}

// refused says why an entry cannot be laid.
func refused(s *calc.Sheet, e calc.Entry, a *asked, named bool) bool {
	if !named {
		s.Refuse("edges", "Edges: read {read}, and the paving has {edges}. Give one for all, or one for each.",
			words.Is("read", unit.Count(len(a.outline.Edges)), unit.Whole1), words.Is("edges", unit.Count(len(a.corners)), unit.Whole1))
	}
	if o := offset.Of(e); pattern.Of(e) == "third" && float64(o) > third+about {
		s.Refuse("offset", "Offset of each course: read {offset}. It takes up to 33 %: long pavers bow, and the middle of one, its highest place, would lie beside the low ends of the next.",
			offset.Is("offset", o))
	}
	return len(s.Problems) > 0
}

// faults tells what is wrong with the ground.
func faults(s *calc.Sheet, found []paving.Fault) {
	for _, f := range found {
		key := "outline"
		if f.Hole > 0 {
			key = "holes"
		}
		first, other := words.Is("first", unit.Count(f.Corner+1), unit.Whole1), words.Is("other", unit.Count(f.Other+1), unit.Whole1)
		hole := words.Is("hole", unit.Count(f.Hole), unit.Whole1)
		switch f.Problem {
		case paving.FewCorners:
			if key == "holes" {
				s.Refuse(key, "Hole {hole} has fewer than three corners. Two alone, at opposite corners, are a box.", hole)
			} else {
				s.Refuse(key, "The paving has fewer than three corners.")
			}
		case paving.Repeated:
			s.Refuse(key, "Corners {first} and {other} lie on one another.", first, other)
		case paving.Crossing:
			s.Refuse(key, "The edges from corners {first} and {other} cross or touch. Give the corners in order round the edge.", first, other)
		case paving.HoleOutside:
			s.Refuse(key, "Hole {hole} lies outside the paving.", hole)
		case paving.HoleTouches:
			s.Refuse(key, "Hole {hole} meets the edge or another hole. Give it as part of the edge.", hole)
		case paving.SpanTooShort:
			s.Refuse("movement_max", "The movement joints would stand closer than one paver. Take a smaller paver, or a longer span up to 12 ft (3.66 m).")
		case paving.NothingLeft:
			s.Refuse("perimeter", "The joints at the walls leave nothing to pave.")
		case paving.TooMany:
			tooMany(s)
		default:
			s.Refuse(key, "The corners enclose nothing that can be paved.")
		}
	}
}

// mostPavers keeps the plan within what a phone draws.
const mostPavers = 12_000

func tooMany(s *calc.Sheet) {
	s.Refuse("outline", "That is more than {most} pavers. Set out a part at a time, from one movement joint to another.",
		words.Is("most", unit.Count(mostPavers), unit.Whole1))
}
