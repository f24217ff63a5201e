package calc

import (
	"slices"
	"strings"
	"unicode"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// name makes a term known to what follows it.
func (s *Sheet) name(t Term) {
	if i := s.find(t.Symbol); i >= 0 {
		s.known[i] = t
		return
	}
	s.known = append(s.known, t)
}

func (s *Sheet) find(symbol string) int {
	return slices.IndexFunc(s.known, func(t Term) bool { return t.Symbol == symbol })
}

// terms gathers the terms of an expression in the order in which it names them. The known
// ones are copied, so that a later Let does not change an earlier step.
func (s *Sheet) terms(expr string, given []Term) []Term {
	terms := given
	for _, symbol := range symbols(expr) {
		if slices.ContainsFunc(terms, func(t Term) bool { return t.Symbol == symbol }) {
			continue
		}
		if i := s.find(symbol); i >= 0 {
			terms = append(terms, s.known[i])
		}
	}
	return terms
}

// symbols are the names in an expression.
func symbols(expr string) []string {
	return strings.FieldsFunc(expr, func(c rune) bool {
		return !unicode.IsLetter(c) && !unicode.IsDigit(c) && c != '_'
	})
}

// fill adds the known figures that a line's placeholders ask for.
func (s *Sheet) fill(l words.Line) []*words.Arg {
	with := l.With
	for _, part := range strings.Split(string(l.Msg), "{")[1:] {
		name, _, _ := strings.Cut(part, "}")
		if slices.ContainsFunc(with, func(a *words.Arg) bool { return a.Name == name }) {
			continue
		}
		if i := s.find(name); i >= 0 {
			with = append(with, &words.Arg{Name: name, Figure: figure(s.known[i].Is)})
		}
	}
	return with
}

func figure(f unit.Figure) *unit.Figure { return &f }
