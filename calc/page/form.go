package page

import (
	"strings"

	"setbook/calc"
)

// form is a set of fields: those of the calculator, or of one of its tools. It holds what was typed or loaded, by
// key (the other fields hold the example), and what is wrong with it.
type form struct {
	of       *calc.Calculator // asks what the fields ask
	tool     string           // the key of the tool; "": the calculator's own fields
	texts    map[string]typed
	problems []calc.Problem
}

// typed is a text with the habit that it was written in. It is kept as it was when the
// page is written for another habit, so that no value drifts by being rewritten.
type typed struct {
	text  string
	habit calc.Habit
}

// key is how a field is known on the page: by its own key, or behind that of its tool.
func (f *form) key(in *calc.Input) string {
	if f.tool == "" {
		return in.Key
	}
	return f.tool + "." + in.Key
}

// at finds the form of a key of the page, and the input where there is one.
func (l *Live) at(key string) (*form, *calc.Input) {
	tool, own, ok := strings.Cut(key, ".")
	if !ok {
		return &l.form, l.Calculator.Input(key)
	}
	for i := range l.tools {
		if f := &l.tools[i]; f.tool == tool {
			return f, f.of.Input(own)
		}
	}
	return &l.form, nil
}

// read checks every text in the habit that it was typed in.
func (f *form) read() (calc.Entry, []calc.Problem) {
	texts, habits := calc.Texts{}, map[string]calc.Habit{}
	for key, t := range f.texts {
		texts[key], habits[key] = t.text, t.habit
	}
	return f.of.ReadEach(texts, habits)
}

func (f *form) problem(key string) *calc.Problem {
	for i := range f.problems {
		if f.problems[i].Key == key {
			return &f.problems[i]
		}
	}
	return nil
}

// typed is what stands in a field, before it is rewritten for the reader.
func (f *form) typed(in *calc.Input) typed {
	if t, ok := f.texts[in.Key]; ok {
		return t
	}
	return typed{in.Example, calc.Habit{Decimal: '.'}}
}

// value is a field's own reading, whatever is wrong in another.
func (f *form) value(in *calc.Input) (base float64, ok bool) {
	t := f.typed(in)
	return in.Value(t.text, t.habit)
}

// text is the text that stands in a field: as it was typed, or as the reader would write it. Each row of a table
// has a line of its own.
func (l *Live) text(f *form, in *calc.Input) string {
	t, touched := f.texts[in.Key]
	shown, ok := "", false
	switch {
	case !touched:
		t = f.typed(in)
		shown, ok = in.Offered(in.Example, l.reader.Style)
	case t.habit == l.habit():
		return t.text
	default:
		shown, ok = in.Shown(t.text, t.habit, l.reader.Style)
	}
	if !ok {
		return t.text
	}
	if len(in.Columns) > 0 {
		return strings.NewReplacer("; ", "\n", ";", "\n").Replace(shown)
	}
	return shown
}
