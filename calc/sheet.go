package calc

import (
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Sheet is what a calculator writes. A sheet with problems has nothing else.
type Sheet struct {
	Steps    []Step
	Answers  []Answer
	Cautions []Caution
	Drawing  Drawing
	More     []*Drawing // further drawings, each with its own title
	Tables   []*Table   // lists that an answer is too short for: cuts, an order
	Problems []Problem
	going    func(done, of int) bool
	known    []Term // what the working has named so far: the inputs' symbols, then each result
}

// Sym makes a term from a typed quantity.
func Sym[T unit.Quantity](symbol string, q T, as *unit.Pair) Term {
	return Term{symbol, unit.Fig(q, as)}
}

// Step writes one line of the working. The terms of its expression are looked up by their symbols
// among the inputs, the results of earlier steps and what Let has named; terms given here come first.
func (s *Sheet) Step(says words.Line, gives Term, expr string, cite *source.Source, terms ...Term) {
	s.StepUS(says, gives, expr, "", cite, terms...)
}

// StepUS writes a line whose expression needs another factor in US units.
func (s *Sheet) StepUS(says words.Line, gives Term, expr, exprUS string, cite *source.Source, terms ...Term) {
	says.With = s.fill(says)
	s.Steps = append(s.Steps, Step{Says: says, Expr: expr, ExprUS: exprUS, Terms: s.terms(expr+" "+exprUS, terms), Gives: gives, Cite: cite})
	s.name(gives)
}

// Works writes one line of the working, as Step does, in fewer words.
func Works[T unit.Quantity](s *Sheet, says words.Msg, symbol string, q T, as *unit.Pair, expr string, cite *source.Source) {
	s.StepUS(words.Line{Msg: says}, Term{symbol, unit.Fig(q, as)}, expr, "", cite)
}

// WorksUS is Works with another expression in US units.
func WorksUS[T unit.Quantity](s *Sheet, says words.Msg, symbol string, q T, as *unit.Pair, expr, exprUS string, cite *source.Source) {
	s.StepUS(words.Line{Msg: says}, Term{symbol, unit.Fig(q, as)}, expr, exprUS, cite)
}

// Let names a figure for the expressions and the sentences that follow. It stands in for an
// input or an earlier result of the same symbol.
func Let[T unit.Quantity](s *Sheet, symbol string, q T, as *unit.Pair) {
	s.name(Term{symbol, unit.Fig(q, as)})
}

// Gives writes an answer and returns it, to be added to. The pointer holds until the next answer.
func Gives[T unit.Quantity](s *Sheet, key string, label words.Msg, q T, as *unit.Pair) *Answer {
	s.Answers = append(s.Answers, Answer{Key: key, Label: label, Is: unit.Fig(q, as)})
	return &s.Answers[len(s.Answers)-1]
}

// Between bounds an answer, in its own base units, and says what the spread comes from.
func (a *Answer) Between(low, high float64, from words.Line) *Answer {
	a.Low, a.High, a.HasRange, a.From = min(low, high), max(low, high), true, from
	return a
}

// Buy marks an answer as a quantity to buy: likely as given, cautious at its high end.
func (a *Answer) Buy() *Answer { a.Buys = true; return a }

// Of names a quantity to buy as an order does.
func (a *Answer) Of(s *Supply) *Answer { a.Supply = s; return a }

// First marks an answer to be shown large.
func (a *Answer) First() *Answer { a.Main = true; return a }

// Says has an answer read as words instead of as a figure.
func (a *Answer) Says(l words.Line) *Answer { a.Reads = l; return a }

// Wait marks an answer as a waiting time.
func (a *Answer) Wait() *Answer { a.Waits = true; return a }

// Warn adds a caution. A placeholder that nothing here fills is filled by the figure of that symbol.
func (s *Sheet) Warn(severity Severity, cite *source.Source, m words.Msg, with ...*words.Arg) {
	l := words.Line{Msg: m, With: with}
	l.With = s.fill(l)
	s.Cautions = append(s.Cautions, Caution{l, severity, cite})
}

// Refuse says why the entry cannot be worked, at one of its keys. The work must return after it.
func (s *Sheet) Refuse(key string, m words.Msg, with ...*words.Arg) {
	l := words.Line{Msg: m, With: with}
	l.With = s.fill(l)
	s.Problems = append(s.Problems, Problem{key, l})
}

// Draw adds a further drawing.
func (s *Sheet) Draw(title words.Msg) *Drawing {
	d := &Drawing{Title: title}
	s.More = append(s.More, d)
	return d
}

// Going tells whoever waits how far a long work has come. Where it reports false the work should end with the best
// that it has so far.
func (s *Sheet) Going(done, of int) bool { return s.going == nil || s.going(done, of) }

// Solve works an entry out. A sheet with problems keeps nothing else.
func (c *Calculator) Solve(e Entry) *Sheet { return c.SolveWith(e, nil) }

// SolveWith is Solve for one who waits: going, which may be nil, is told how far it has come, and reports
// false to have it end early.
func (c *Calculator) SolveWith(e Entry, going func(done, of int) bool) *Sheet {
	s := &Sheet{going: going}
	for _, in := range c.Inputs {
		if in.Symbol != "" && in.As != nil {
			s.known = append(s.known, Term{in.Symbol, unit.Figure{Kind: in.Kind, Base: e.read[in.Key].Base, As: in.As}})
		}
	}
	c.Work(e, s)
	if len(s.Problems) > 0 {
		return &Sheet{Problems: s.Problems}
	}
	return s
}

// Answer finds an answer by its key.
func (s *Sheet) Answer(key string) (Answer, bool) {
	for _, a := range s.Answers {
		if a.Key == key {
			return a, true
		}
	}
	return Answer{}, false
}
