package draw

import (
	"setbook/calc"
	"setbook/calc/markup"
)

// names are the class and hatch names of the materials.
var names = [...]string{
	calc.Outline: "outline", calc.Hidden: "hidden", calc.Axis: "axis", calc.Concrete: "concrete", calc.Mortar: "mortar",
	calc.Paver: "paver", calc.Water: "water", calc.Steel: "steel", calc.Sealant: "sealant", calc.Foam: "foam",
	calc.Membrane: "membrane", calc.Air: "air", calc.Strong: "strong",
}

// hatch is one tile of a hatch: its size and the path drawn in it.
type hatch struct {
	size float64
	path string
}

// hatches follow drawing-office habit (ISO 128-3 leaves the choice to the office and
// asks only that one material keeps one hatch and that it is told in words too).
var hatches = [calc.Strong + 1]hatch{
	calc.Concrete: {26, "M3 8l5-5l2 6zM16 20l6-3l0 5zM14 5h.01M22 9h.01M6 18h.01M11 14h.01M19 1h.01M2 24h.01"},
	calc.Mortar:   {7, "M1.5 1.5h.01M5 5h.01"},
	calc.Paver:    {8, "M-2 2l4-4M0 8l8-8M6 10l4-4"},
	calc.Water:    {14, "M0 4h8M7 11h7"},
	calc.Steel:    {5, "M-1 1l2-2M0 5l5-5M4 6l2-2"},
	calc.Sealant:  {6, "M0 6l6-6M0 0l6 6"},
	calc.Foam:     {9, "M2.5 4.5a2 2 0 1 0 4 0a2 2 0 1 0-4 0"},
	calc.Membrane: {3, "M1.5 0v3"},
}

// patterns writes the hatches that the drawing uses.
func (s *scene) patterns(w *markup.Writer) {
	w.Put(`<defs>`)
	for of, used := range s.used {
		h := hatches[of]
		if !used || h.size == 0 {
			continue
		}
		size := markup.Number(h.size)
		w.Put(`<pattern id="%-%" width="%" height="%" patternUnits="userSpaceOnUse"><path class="hatch-line" fill="none" d="%"/></pattern>`,
			s.id, names[of], size, size, h.path)
	}
	w.Put(`</defs>`)
}
