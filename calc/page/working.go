package page

import (
	"strings"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/words"
)

// symbol sets a symbol in italics, with what follows an underscore as a subscript.
func (w *writer) symbol(symbol string) {
	stem, sub, ok := strings.Cut(symbol, "_")
	w.Open("var")
	w.Text(stem)
	if ok {
		w.In("sub", sub)
	}
	w.Close("var")
}

func (l *Live) working() string {
	w := &writer{r: l.reader}
	w.Open("ol", "class", "steps")
	for i := range l.sheet.Steps {
		l.step(w, &l.sheet.Steps[i])
	}
	w.Close("ol")
	return w.String()
}

func (l *Live) step(w *writer, st *calc.Step) {
	style := l.reader.Style
	w.Open("li", "class", "step")
	w.In("p", l.reader.Line(st.Says), "class", "says")
	w.Open("p", "class", "formula")
	w.symbol(st.Gives.Symbol)
	w.Text(" = ")
	for _, p := range st.Formula(style.System) {
		if p.Symbol {
			w.symbol(p.Text)
		} else {
			w.Text(p.Text)
		}
	}
	w.Close("p")
	w.Open("p", "class", "with")
	w.Text("= " + st.With(style) + " = ")
	w.In("b", style.PrintBoth(st.Gives.Is))
	w.Close("p")
	w.Open("p", "class", "terms")
	for i, t := range st.Terms {
		if i > 0 {
			w.Text(" · ")
		}
		w.symbol(t.Symbol)
		w.Text(" = " + style.Print(t.Is))
	}
	w.Close("p")
	w.Open("p", "class", "cite")
	w.cite(st.Cite)
	w.Close("p")
	w.Close("li")
}

// cite names a source in a few words.
func (w *writer) cite(s *source.Source) {
	w.Open("cite")
	w.Text(Cite(w.r, s))
	w.Close("cite")
}

// Cite names a source in a few words: its title and place, or what the figure rests on where it has none.
func Cite(r words.Reader, s *source.Source) string {
	if s.Title == "" {
		return r.Word(s.Basis.Says())
	}
	text := s.Title
	if s.Edition != "" {
		text += ", " + s.Edition
	}
	if s.Place != "" {
		text += ", " + s.Place
	}
	if s.Basis != source.Published {
		text += " (" + r.Word(s.Basis.Says()) + ")"
	}
	return text
}

// sources lists each source once, in the order in which the sheet needs them.
func (l *Live) sources() string {
	w := &writer{r: l.reader}
	seen := map[*source.Source]bool{}
	w.Open("ul")
	list := func(s *source.Source) {
		if seen[s] {
			return
		}
		seen[s] = true
		w.Open("li")
		w.Text(Cite(l.reader, s))
		if s.URL != "" {
			w.Text(" ")
			w.In("a", s.URL, "href", s.URL, "rel", "noreferrer")
		}
		w.Close("li")
	}
	for _, st := range l.sheet.Steps {
		list(st.Cite)
	}
	for _, c := range l.sheet.Cautions {
		list(c.Cite)
	}
	w.Close("ul")
	if note := l.Calculator.Checked; note != "" {
		w.say("p", note)
	}
	return w.String()
}
