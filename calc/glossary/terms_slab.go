package glossary

import "setbook/calc"

var slab = []Term{
	{"slab", "Slab", "The concrete that the pavers are bonded to. It must be sound, clean, flat and laid to a fall before a paver goes down.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, 0, 900, 100)
		s.dim(900, 100, 900, 0, 1.5, 100)
		s.note(450, 140, "top, open and clean")
	}},
	{"fall", "Fall", "How far a surface drops over a way, so that water runs off it. Two in a hundred away from a building is the usual least.", func(d *calc.Drawing) {
		s := scene{d}
		s.area(calc.Concrete, 0, -120, 1000, -120, 1000, 40, 0, 60)
		s.line(calc.Axis, 0, 60, 1000, 60)
		s.part(1000, 60, 1000, 40, 1.5, 2)
		s.part(0, -120, 1000, -120, -1.5, 100)
	}},
	{"flatness", "Flatness", "How far a surface leaves a straight line, whatever its fall. It is measured as the gap under a straightedge that rests on the high points. Here that gap is drawn ten times too deep, to be seen.", func(d *calc.Drawing) {
		s := scene{d}
		s.area(calc.Concrete, 0, -120, 1000, -120, 1000, 0, 800, -8, 600, -30, 400, -30, 200, -8, 0, 0)
		s.box(calc.Steel, 0, 0, 1000, 45)
		s.line(calc.Axis, 400, -30, 1000, -30)
		s.dim(1000, 0, 1000, -30, 1.5, 3)
	}},
	{"pond", "Pond", "A low place that keeps water after rain. Bonded pavers follow the slab, so a pond in the slab is a pond on the pavers.", func(d *calc.Drawing) {
		s := scene{d}
		s.area(calc.Concrete, 0, -140, 1000, -140, 1000, 0, 750, -30, 500, -70, 250, -30, 0, 10)
		s.area(calc.Water, 62.5, 0, 1000, 0, 750, -30, 500, -70, 250, -30)
	}},
	{"drummy", "Drummy", "Sounding hollow when it is tapped: the top has come away from what is below it. Nothing bonded to it will stay.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, -100, 900, 70)
		s.area(calc.Air, 250, -30, 650, -30, 550, -15, 350, -15)
		s.area(calc.Concrete, 0, -30, 250, -30, 350, -15, 550, -15, 650, -30, 900, -30, 900, 20, 0, 20)
		s.note(450, 60, "tap here")
	}},
	{"membrane", "Crack-isolation membrane", "A sheet or coat between slab and mortar that lets a crack open and close a little without breaking the pavers. It does nothing for a crack whose sides stand at two heights.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, -80, 445, 80)
		s.box(calc.Concrete, 455, -80, 445, 80)
		s.box(calc.Membrane, 200, 0, 500, 6)
		s.box(calc.Mortar, 0, 6, 900, 6)
		s.box(calc.Paver, 0, 12, 900, 20)
		s.note(450, -130, "crack")
	}},
}
