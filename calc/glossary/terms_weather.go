package glossary

import "setbook/calc"

// bar draws a length of time as a bar, with what it is.
func (s scene) bar(of calc.Stuff, from, to, y float64) { s.box(of, from, y, to-from, 40) }

var weather = []Term{
	{"open", "Open time", "How long combed mortar still wets what is pressed into it. A skin ends it, sooner in sun and wind: touch it, and comb no more than can be covered.", func(d *calc.Drawing) {
		s := scene{d}
		s.line(calc.Outline, 0, 0, 600, 0)
		s.bar(calc.Mortar, 0, 200, 10)
		s.note(100, 70, "open")
		s.note(400, 70, "skinned over")
		s.bar(calc.Hidden, 200, 600, 10)
	}},
	{"pot", "Pot life", "How long a mix may be used once it is wet. A stiff mix is thrown away, never wetted again.", func(d *calc.Drawing) {
		s := scene{d}
		s.area(calc.Steel, 0, 0, 300, 0, 340, 320, -40, 320)
		s.area(calc.Mortar, 8, 10, 292, 10, 315, 200, -15, 200)
	}},
	{"curing", "Curing", "Hardening after setting: a wait that the cold makes longer. First it may be walked on, later driven on, as the bag says.", func(d *calc.Drawing) {
		s := scene{d}
		s.bar(calc.Hidden, 0, 150, 0)
		s.bar(calc.Mortar, 150, 400, 0)
		s.bar(calc.Concrete, 400, 700, 0)
		s.note(75, 70, "keep off")
		s.note(275, 70, "feet")
		s.note(550, 70, "wheels")
	}},
	{"dew", "Dew point", "The temperature at which the air can hold no more water. A surface colder than that is wet, seen or not, and nothing bonds to it.", func(d *calc.Drawing) {
		s := scene{d}
		s.box(calc.Concrete, 0, -60, 400, 60)
		s.box(calc.Water, 0, 0, 400, 6)
		s.note(200, 25, "colder than the dew point: a film of water")
	}},
	{"range", "Surface range", "From the coldest winter night to the hottest sunlit day of the surface itself, not of the air. It sets how far a field grows and shrinks.", func(d *calc.Drawing) {
		s := scene{d}
		s.line(calc.Outline, 0, 0, 0, 400)
		s.line(calc.Strong, 0, 40, 0, 360)
		s.line(calc.Outline, -20, 40, 20, 40)
		s.line(calc.Outline, -20, 360, 20, 360)
		s.note(110, 360, "summer sun")
		s.note(110, 40, "winter night")
	}},
}
