package glossary

import "setbook/calc"

// soft draws a movement joint cut through: sealant on a rod between two pavers.
func (s scene) soft(width, depth float64) {
	s.box(calc.Concrete, 0, -50, 200, 50)
	left, right := 100-width/2, 100+width/2
	s.box(calc.Mortar, 0, 0, left, 6)
	s.box(calc.Mortar, right, 0, 200-right, 6)
	s.box(calc.Paver, 0, 6, left, 20)
	s.box(calc.Paver, right, 6, 200-right, 20)
	s.box(calc.Sealant, left, 26-depth, width, depth)
}

var joints = []Term{
	{"grout", "Grout joint", "The hard joint between two pavers, filled with grout. It carries no movement to speak of.", func(d *calc.Drawing) {
		s := scene{d}
		s.section(400, 6, 200)
		s.box(calc.Mortar, 197.5, 6, 5, 20)
		s.dim(197.5, 26, 202.5, 26, 1.5, 5)
	}},
	{"movement", "Movement joint", "A joint left open through pavers and bed and filled with sealant, so that the pavers can grow in the sun. It is never grouted.", func(d *calc.Drawing) {
		s := scene{d}
		s.soft(12, 6)
		s.dim(94, 26, 106, 26, 1.5, 12)
	}},
	{"perimeter", "Perimeter joint", "A movement joint where pavers meet a wall, a post or a kerb. Without it they push against what does not move.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, -50, 260, 50)
		s.box(calc.Concrete, 220, 0, 40, 120)
		s.box(calc.Mortar, 0, 0, 208, 6)
		s.box(calc.Paver, 0, 6, 208, 20)
		s.box(calc.Sealant, 208, 20, 12, 6)
		s.note(240, 130, "wall")
	}},
	{"rod", "Backer rod", "A foam rod pushed into a joint to carry the sealant at its depth. Sealant must not stick to it, or it tears: it may hold on two sides only.", func(d *calc.Drawing) {
		s := scene{d}
		s.soft(12, 6)
		s.area(calc.Foam, 94, 12, 96, 7.5, 100, 6, 104, 7.5, 106, 12, 104, 18, 100, 20, 96, 18)
	}},
	{"tape", "Bond-breaker tape", "A tape laid on the floor of a joint that is too shallow for a rod. It does a rod's second work: the sealant holds to the sides alone.", func(d *calc.Drawing) {
		s := scene{d}
		s.soft(12, 10)
		s.box(calc.Membrane, 94, 14, 12, 2)
	}},
	{"field", "Field", "A part of the pavers between movement joints. It moves as one piece, so it is at most 12 ft long either way outdoors.", func(d *calc.Drawing) {
		s := scene{d}
		s.grid(4, 4, 600, 600, 5, 0)
		s.line(calc.Strong, 1207, 0, 1207, 2415)
		s.line(calc.Strong, 0, 1207, 2415, 1207)
	}},
	{"structural", "Structural joint", "A joint in the slab itself, made so that its parts can move. It is carried up through bed and pavers at its full width, wherever it falls.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, -60, 190, 60)
		s.box(calc.Concrete, 210, -60, 190, 60)
		s.box(calc.Mortar, 0, 0, 190, 6)
		s.box(calc.Mortar, 210, 0, 190, 6)
		s.box(calc.Paver, 0, 6, 190, 20)
		s.box(calc.Paver, 210, 6, 190, 20)
		s.box(calc.Sealant, 190, 16, 20, 10)
	}},
}
