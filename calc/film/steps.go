package film

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func steps(s *calc.Sheet, e calc.Entry, p parts) {
	calc.WorksUS(s, "Wet volume: area by film by coats, and the waste on top. A gallon is 231 cubic inches and covers 1,604 ft² a thousandth of an inch deep; a litre covers a square metre a millimetre deep.",
		"V", p.volume, unit.GallonL, "A * w * c * (1 + k / 100)", "A * 144 * w / 1000 * c / 231 * (1 + k / 100)", source.FilmSpread)
	calc.Works(s, "One coat, dry: what is left when all but the solids has gone.",
		"d_1", p.one, thin, "w * v / 100", source.FilmSpread)
	calc.Works(s, "All coats, dry.",
		"d", p.dry, thin, "d_1 * c", source.ByDefinition)
	calc.Works(s, "Pails: wet volume over one pail.",
		"n", p.pails, unit.Bare, "V / V_p", source.ByDefinition)
	calc.Works(s, "Pails are bought whole.",
		"N", unit.Whole(float64(p.pails)), unit.Whole1, "ceil(n)", source.ByDefinition)
}

func cautions(s *calc.Sheet, e calc.Entry, p parts) {
	if coats.Of(e) < 2 {
		s.Warn(calc.Care, source.CommonPractice, "One coat leaves pinholes. A membrane is mostly laid in two, the second across the first; a primer may want only one: read the label.")
	}
	s.Warn(calc.Note, source.CommonPractice, "Hold {dry} against the least dry film on the label. A film thinner than that is paint, not a membrane.", words.Is("dry", p.dry, thin))
	s.Warn(calc.Note, source.FilmSpread, "Only solids by volume give the dry film. Solids by mass are another figure: ask the maker if the label gives no other.")
	s.Warn(calc.Note, source.CommonPractice, "Do not coat a slab that is damp, hot in the sun or near the dew point: the film blisters or does not hold.")
	s.Warn(calc.Care, source.CommonPractice, "Primers and membranes may burn skin and eyes and give off fumes. Wear what the data sheet calls for, keep the air moving, and keep flames away from solvents.")
	s.Warn(calc.Care, source.CommonPractice, "A wet film is slippery and hides the edge of a slab. Work backwards to a way out, and fence off edges and steps.")
}
