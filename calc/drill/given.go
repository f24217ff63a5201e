package drill

import (
	"maps"
	"slices"

	"setbook/calc"
	"setbook/calc/unit"
)

// Given is what the exercise gives: the inputs that its working uses, in their order. One that counts for another choice
// than the chosen one is not among them, nor a table that is empty.
func (x *Exercise) Given() []*calc.Input {
	if x.given == nil {
		for _, in := range x.Calculator.Inputs {
			if x.counts(in) {
				x.given = append(x.given, in)
			}
		}
	}
	return x.given
}

// slow tells which choice an input counts for, where a calculator takes too long to be worked thirty times over for each
// exercise; "" is none that an exercise has. Its other inputs all count.
var slow = map[string]calc.Texts{
	"setout": {"offset": "third", "start_x": "fixed", "start_y": "fixed", "perimeter": "", "mix": ""},
}

// counts reports whether another text in an input changes anything in the working. No calculator says which of its
// inputs an entry uses, so others are tried where no step names it; where none can be worked, the input stays.
func (x *Exercise) counts(in *calc.Input) bool {
	if in.Reads != nil || len(in.Columns) > 0 {
		return x.Entry.Reading(in.Key).Text != ""
	}
	if only, ok := slow[x.Calculator.ID]; ok {
		choice, conditional := only[in.Key]
		return !conditional || choice != "" && slices.ContainsFunc(x.Calculator.Inputs, func(in *calc.Input) bool {
			return len(in.Options) > 0 && x.Entry.Reading(in.Key).Text == choice
		})
	}
	if in.Symbol != "" && x.named(calc.Term{Symbol: in.Symbol, Is: unit.Figure{Base: x.Entry.Reading(in.Key).Base}}) {
		return true
	}
	tried := false
	for _, text := range x.others(in) {
		if s, ok := x.worked(in, text); ok {
			if !alike(s, x.Sheet) {
				return true
			}
			tried = true
		}
	}
	return !tried
}

// named reports whether a step has the symbol with that value: another value under it is no input's.
func (x *Exercise) named(t calc.Term) bool {
	return slices.ContainsFunc(x.Sheet.Steps, func(s calc.Step) bool {
		return slices.ContainsFunc(s.Terms, func(of calc.Term) bool { return of.Symbol == t.Symbol && of.Is.Base == t.Is.Base })
	})
}

// others are texts that an input could hold as well, far and near.
func (x *Exercise) others(in *calc.Input) (texts []string) {
	r := x.Entry.Reading(in.Key)
	for _, o := range in.Options {
		if o.Name != r.Text {
			texts = append(texts, o.Name)
		}
	}
	if len(in.Options) > 0 {
		return texts
	}
	// 0.37 of the way is no half: a pattern turned by a right angle or half of one may look the same.
	for _, base := range []float64{in.Min + 0.37*(in.Max-in.Min), in.Min, in.Max, r.Base * 1.1, r.Base + 1, r.Base / 2, r.Base * 2} {
		if in.Min <= base && base <= in.Max && base != r.Base {
			texts = append(texts, in.Written(base, unit.Style{System: x.System}))
		}
	}
	return texts
}

// worked is the sheet with another text in one input.
func (x *Exercise) worked(in *calc.Input, text string) (*calc.Sheet, bool) {
	texts := calc.Texts{}
	maps.Copy(texts, x.Texts)
	texts[in.Key] = text
	e, problems := x.Calculator.Read(texts, point)
	if len(problems) > 0 {
		return nil, false
	}
	s := x.Calculator.Solve(e)
	return s, len(s.Problems) == 0
}

// alike reports whether two sheets have the same working: each step with its figures, and the answers.
func alike(a, b *calc.Sheet) bool {
	return slices.EqualFunc(a.Steps, b.Steps, func(a, b calc.Step) bool {
		return a.Expr == b.Expr && a.Gives.Is.Base == b.Gives.Is.Base &&
			slices.EqualFunc(a.Terms, b.Terms, func(a, b calc.Term) bool { return a.Is.Base == b.Is.Base })
	}) && slices.EqualFunc(a.Answers, b.Answers, func(a, b calc.Answer) bool { return a.Is.Base == b.Is.Base })
}
