package setout

import (
	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// britishMost is source.BritishBays.
const britishMost = 5 * unit.Metre

func (p *plan) cautions(s *calc.Sheet, e calc.Entry) {
	k := &p.counts

	for i := range p.laid.Cuts {
		if share, _ := p.share(&p.laid.Cuts[i]); share < half {

			s.Warn(calc.Care, source.BalancedCuts, "The narrowest cut, {mark}, is {width}: under half a paver. Move or turn the layout where that can be helped; where it cannot, ask the owner first.",
				words.Text("mark", k.narrowAt), words.Is("width", k.narrowest, size))
			break
		}
	}
	if p.way.open == 0 {
		s.Warn(calc.Care, source.CommonPractice, "No open edge lies ahead of the work. Leave a way out over dry pavers, or set in two days.")
	}
	if p.shut() {
		s.Warn(calc.Note, source.CommonPractice, "Part of the paving is shut off from the open edge by a wall or a corner: set that part first.")
	}
	p.ragged(s)
	if pattern.Of(e) == "third" && joint.Of(e) < 3*unit.Inch/16-unit.Micrometre && max(p.paver.L, p.paver.W) > 15*unit.Inch {
		s.Warn(calc.Care, source.RunningBond, "Offset with a side over 15 in (381 mm) wants a joint of at least 1/8 in (3.2 mm) for pavers ground to size, and 3/16 in (4.8 mm) for others.")
	}
	s.Warn(calc.Care, source.MovementMethod, "Never grout a movement joint or bridge it with a paver or mortar: it is open to the slab, then sealed. Every joint in the slab is carried through; give them above if the slab has any.")
	s.Warn(calc.Care, source.Silica, "Sawing porcelain frees silica dust: saw wet, with water fed to the blade, or as your dust plan says. Dry sawing by hand is not among the ways that the rule takes as enough.")
	s.Warn(calc.Care, source.TeamLift, "Large pavers are heavy, and cut ones have sharp edges: lift in pairs or with suction grips, and wear gloves and eye protection.")
	s.Warn(calc.Care, source.WetCement, "Wet mortar burns skin: work from the open side in waterproof kneepads, and do not kneel in it.")
	s.Warn(calc.Note, source.SquareUp, "Prove the lines square by the triangle, and the outline by its diagonals, before the first paver is cut.")
	s.Warn(calc.Note, source.MovementDesigner, "Where movement joints go is for the designer to say. Show this plan before the work begins.")
	s.Warn(calc.Note, source.CommonPractice, "The setting-out is no survey of levels: keep the fall away from the building as the slab has it.")
}

// shut reports whether an edge that the work comes out at is not open, though others are.
func (p *plan) shut() bool {
	if p.way.open == 0 {
		return false
	}
	for i := range p.corners {
		x, y := p.normal(i)
		q := p.ground.Along(paving.Point{X: x, Y: y})
		ahead := q.Y
		if p.way.across {
			ahead = q.X
		}
		if p.way.back {
			ahead = -ahead
		}
		if ahead > 0.5 && p.outline.Edge(i) != paving.Open {
			return true
		}
	}
	return false
}

// ragged warns of pieces that no saw likes: long and thin, or with a sharp point.
func (p *plan) ragged(s *calc.Sheet) {
	for i := range p.laid.Cuts {
		c := &p.laid.Cuts[i]
		if c.Square || len(c.Shape) == 0 {
			continue
		}
		ring := c.Shape[0]
		for j, q := range ring {
			a, b := ring[(j+len(ring)-1)%len(ring)], ring[(j+1)%len(ring)]
			if sharp(a, q, b) {
				s.Warn(calc.Note, source.CommonPractice, "Cut {mark} and others run out to a point sharper than 30°: it breaks under the saw and under foot. Clip the point, and let the joint take it up, or turn the layout.",
					words.Text("mark", c.Mark))
				return
			}
		}
	}
}

// sharp reports whether a corner is under 30 degrees.
func sharp(a, q, b paving.Point) bool {
	ux, uy, vx, vy := a.X-q.X, a.Y-q.Y, b.X-q.X, b.Y-q.Y
	dot, cross := ux*vx+uy*vy, vx*uy-vy*ux
	const tan30 = 0.57735026919
	return dot > 0 && cross > 0 && cross < dot*tan30
}
