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
	if ok {
		w.Put(`<var>%<sub>%</sub></var>`, stem, sub)
		return
	}
	w.Put(`<var>%</var>`, stem)
}

func (l *Live) working() string {
	w := &writer{r: l.reader}
	w.Put(`<ol class="steps">`)
	for i := range l.sheet.Steps {
		l.step(w, &l.sheet.Steps[i])
	}
	w.Put(`</ol>`)
	return w.String()
}

func (l *Live) step(w *writer, st *calc.Step) {
	style := l.reader.Style
	w.Put(`<li class="step"><p class="says">%</p><p class="formula">`, l.reader.Line(st.Says))
	w.symbol(st.Gives.Symbol)
	w.Text(" = ")
	for _, p := range st.Formula(style.System) {
		if p.Symbol {
			w.symbol(p.Text)
		} else {
			w.Text(p.Text)
		}
	}
	w.Put(`</p><p class="with">= % = <b>%</b></p><p class="terms">`, st.With(style), style.PrintBoth(st.Gives.Is))
	for i, t := range st.Terms {
		if i > 0 {
			w.Text(" · ")
		}
		w.symbol(t.Symbol)
		w.Put(` = %`, style.Print(t.Is))
	}
	w.Put(`</p><p class="cite"><cite>%</cite></p></li>`, Cite(l.reader, st.Cite))
}

// Cite names a source in a few words: its title and place, or what the figure rests on where it has none.
func Cite(r words.Reader, s *source.Source) string {
	if s.Title == "" {
		return r.Word(s.Basis.Says())
	}
	text := s.Title
	for _, more := range []string{s.Edition, s.Place} {
		if more != "" {
			text += ", " + more
		}
	}
	if s.Basis != source.Published {
		text += " (" + r.Word(s.Basis.Says()) + ")"
	}
	return text
}

// sources lists each source once, in the order in which the sheet needs them.
func (l *Live) sources() string {
	w := &writer{r: l.reader}
	seen := map[string]bool{}
	w.Put(`<ul>`)
	list := func(s *source.Source) {
		text := Cite(l.reader, s)
		if seen[text] {
			return
		}
		seen[text] = true
		w.Put(`<li>%`, text)
		if s.URL != "" {
			w.Put(` <a href="%" rel="noreferrer">%</a>`, s.URL, s.URL)
		}
		w.Put(`</li>`)
	}
	for _, st := range l.sheet.Steps {
		list(st.Cite)
	}
	for _, c := range l.sheet.Cautions {
		list(c.Cite)
	}
	w.Put(`</ul>`)
	if note := l.Calculator.Checked; note != "" {
		w.put(`<p>%</p>`, note)
	}
	return w.String()
}
