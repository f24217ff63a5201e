package drill

import (
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

// setsOut is counts for setout, which takes too long to be worked thirty times over for each exercise.
func (x *Exercise) setsOut(key string) bool {
	switch key {
	case "offset":
		return x.Entry.Reading("pattern").Text == "third"
	case "start_x", "start_y":
		return x.Entry.Reading("start").Text == "fixed"
	case "perimeter": // of a wall: the edges of an exercise are open
		return x.Entry.Reading("edges").Text != "open"
	}
	return key != "mix"
}

// counts reports whether another text in an input changes anything in the working. No calculator says which of its
// inputs an entry uses, so others are tried where no step names it; where none can be worked, the input stays.
func (x *Exercise) counts(in *calc.Input) bool {
	if in.Reads != nil || len(in.Columns) > 0 {
		return x.Entry.Reading(in.Key).Text != ""
	}
	if x.Calculator.ID == "setout" {
		return x.setsOut(in.Key)
	}
	if in.Symbol != "" && x.named(in) {
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

// named reports whether a step has an input's symbol with its value: another value under it is no input's.
func (x *Exercise) named(in *calc.Input) bool {
	for i := range x.Sheet.Steps {
		terms := x.Sheet.Steps[i].Terms
		for j := range terms {
			if terms[j].Symbol == in.Symbol && terms[j].Is.Base == x.Entry.Reading(in.Key).Base {
				return true
			}
		}
	}
	return false
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
	texts := calc.Texts{in.Key: text}
	for key, text := range x.Texts {
		if key != in.Key {
			texts[key] = text
		}
	}
	e, problems := x.Calculator.Read(texts, point)
	if len(problems) > 0 {
		return nil, false
	}
	s := x.Calculator.Solve(e)
	return s, len(s.Problems) == 0
}

// alike reports whether two sheets have the same working: each step with its figures, and the answers.
func alike(a, b *calc.Sheet) bool {
	if len(a.Steps) != len(b.Steps) || len(a.Answers) != len(b.Answers) {
		return false
	}
	for i := range a.Steps {
		one, two := &a.Steps[i], &b.Steps[i]
		if one.Expr != two.Expr || one.Gives.Is.Base != two.Gives.Is.Base || len(one.Terms) != len(two.Terms) {
			return false
		}
		for j := range one.Terms {
			if one.Terms[j].Is.Base != two.Terms[j].Is.Base {
				return false
			}
		}
	}
	for i := range a.Answers {
		if a.Answers[i].Is.Base != b.Answers[i].Is.Base {
			return false
		}
	}
	return true
}
