package glossary

import "setbook/calc"

// comb draws ridges as a trowel leaves them.
func (s scene) comb(count int, width, depth, land float64) {
	for i := range count {
		s.box(calc.Mortar, float64(i)*(width+land), 0, width, depth)
	}
}

var mortar = []Term{
	{"notch", "Notch and land", "The gap in a trowel's edge that leaves mortar, and the flat between two gaps that wipes the slab. One of each together is the pitch.", func(d *calc.Drawing) {
		s := scene{d}
		s.area(calc.Steel, 0, 40, 130, 40, 130, 0, 115, 0, 115, 13, 102, 13, 102, 0, 89, 0, 89, 13, 76, 13, 76, 0, 63, 0, 63, 13, 50, 13, 50, 0, 37, 0, 37, 13, 24, 13, 24, 0, 0, 0)
		s.dim(24, 0, 37, 0, -1.5, 13)
		s.dim(76, 0, 63, 0, 1.5, 13)
	}},
	{"ridge", "Ridge", "A row of mortar that a notch leaves. Straight ridges, all one way, let the air out when the paver is pressed.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, -20, -40, 260, 40)
		s.comb(9, 13, 9, 13)
		s.dim(240, 9, 240, 0, 1.5, 9)
		s.line(calc.Axis, 189, 9, 240, 9)
	}},
	{"bed", "Bed", "The mortar under a paver once its ridges have been pressed flat. It carries the paver on its whole back.", func(d *calc.Drawing) {
		s := scene{d}
		s.section(400, 6)
		s.dim(400, 6, 400, 0, 1.5, 6)
	}},
	{"skim", "Skim on the back", "A thin coat of mortar keyed into the back of the paver before it is set. It wets the whole back, which ridges alone may not.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Paver, 0, 2, 400, 20)
		s.box(calc.Mortar, 0, 0, 400, 2)
		s.note(200, -14, "skim, under the paver")
	}},
	{"contact", "Contact", "The share of the paver's back that mortar touches. Lift one now and then and look: outdoors it is 95 in a hundred, with every corner and edge carried.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Mortar, 0, 0, 600, 600)
		s.box(calc.Air, 380, 250, 120, 90)
		s.box(calc.Air, 0, 0, 70, 70)
		s.line(calc.Outline, 440, 295, 620, 295)
		s.note(660, 295, "bare")
		s.note(90, -30, "bare corner")
	}},
	{"lippage", "Lippage", "One paver's edge standing above its neighbour's. It trips feet and holds water.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, -50, 405, 50)
		s.box(calc.Mortar, 0, 0, 200, 6)
		s.box(calc.Mortar, 205, 0, 200, 9)
		s.box(calc.Paver, 0, 6, 200, 20)
		s.box(calc.Paver, 205, 9, 200, 20)
		s.line(calc.Axis, 0, 29, 205, 29)
		s.dim(0, 26, 0, 29, 1.5, 3)
	}},
	{"airpores", "Air in the mix", "Bubbles that a fast paddle beats in. They make the mix light, and the bed weaker than the bag says.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Mortar, 0, 0, 120, 120)
		for _, p := range [][2]float64{{20, 30}, {60, 80}, {90, 20}, {45, 50}, {80, 95}, {25, 90}} {
			s.box(calc.Air, p[0], p[1], 9, 9)
		}
	}},
}
