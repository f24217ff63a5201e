package draw

import "setbook/calc"

// Scale is how many micrometres a unit of a drawing's viewBox stands for; 0 where there is nothing to draw.
func Scale(d *calc.Drawing) float64 {
	var s scene
	if !s.fit(d) {
		return 0
	}
	return 1 / s.scale
}
