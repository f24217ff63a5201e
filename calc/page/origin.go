package page

// origin says under the drawing where the formula comes from.
func (l *Live) origin(w *writer) {
	if l.Calculator.Origin != "" {
		w.put(`<p class="origin"><b>%</b> %</p>`, "Where it comes from:", l.Calculator.Origin)
	}
}
