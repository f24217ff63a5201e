package glossary

import "setbook/calc"

var settingOut = []Term{
	{"paver", "Paver", "A slab of porcelain 20 mm thick, made to be walked and driven on outdoors. It is thicker and heavier than wall or floor tile, and cut with a wet saw.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Paver, 0, 0, 600, 20)
		s.dim(600, 20, 600, 0, 1.5, 20)
		s.dim(0, 0, 600, 0, -1.5, 600)
	}},
	{"module", "Module", "One paver and one joint: the step in which a layout repeats. Movement joints stand on whole modules, in the place of a grout joint.", func(d *calc.Drawing) {
		s := scene{d}
		s.grid(3, 1, 600, 600, 5, 0)
		s.dim(605, 600, 1210, 600, 1.5, 605)
	}},
	{"balanced", "Balanced layout", "Cuts of equal size at opposite edges. Where they would be under half a paver, the layout moves by half a module and both cuts grow.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Paver, 0, 0, 400, 600)
		s.box(calc.Paver, 405, 0, 600, 600)
		s.box(calc.Paver, 1010, 0, 600, 600)
		s.box(calc.Paver, 1615, 0, 400, 600)
		s.dim(0, 600, 400, 600, 1.5, 400)
		s.dim(1615, 600, 2015, 600, 1.5, 400)
	}},
	{"stacked", "Stacked", "Rows laid so that every joint runs through, both ways.", func(d *calc.Drawing) {
		scene{d}.grid(3, 3, 600, 300, 8, 0)
	}},
	{"third", "Third offset", "Each row shifted by a third of a paver against the one before. Long pavers bow in the middle, so more than a third puts high middle beside low end.", func(d *calc.Drawing) {
		scene{d}.grid(3, 3, 600, 300, 8, 1.0/3)
	}},
	{"square", "Square-up", "Three, four and five of any length make a right angle, so a corner is checked with a tape. In a rectangle the two diagonals are equal.", func(d *calc.Drawing) {
		s := scene{d}
		s.line(calc.Outline, 0, 3000, 0, 0, 4000, 0)
		s.line(calc.Strong, 0, 3000, 4000, 0)
		s.part(0, 0, 0, 3000, 1.5, 3)
		s.part(0, 0, 4000, 0, -1.5, 4)
		s.part(0, 3000, 4000, 0, 1.5, 5)
	}},
	{"chalk", "Chalk line", "A string with chalk, stretched and snapped to leave a straight line on the slab. Pavers are set to it, and mortar is combed up to it.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Outline, 0, 0, 2000, 1200)
		s.line(calc.Strong, 0, 600, 2000, 600)
		s.line(calc.Strong, 1000, 0, 1000, 1200)
	}},
	{"kerf", "Saw kerf", "What the blade turns to dust: the width of the cut itself. Two pieces out of one paver lose it once.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Paver, 0, 0, 297, 300)
		s.box(calc.Air, 297, 0, 6, 300)
		s.box(calc.Paver, 303, 0, 297, 300)
		s.dim(297, 300, 303, 300, 1.5, 3)
	}},
	{"offcut", "Offcut", "What is left of a paver when a piece has been cut from it. A long one may still give another cut of the list.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Paver, 0, 0, 220, 600)
		s.box(calc.Hidden, 225, 0, 375, 600)
		s.note(110, 635, "cut")
		s.note(412, 635, "offcut")
	}},
}
