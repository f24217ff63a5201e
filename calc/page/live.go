package page

import (
	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/words"
)

// Live is one calculator mounted on a page: what stands in its fields, the last
// entry that could be worked, and for whom it is written. The build makes one
// for the page as first served; the phone keeps one and feeds it each key.
type Live struct {
	Calculator *calc.Calculator
	Name       string // unique on the page: the id of its section
	reader     words.Reader
	texts      map[string]typed // what was typed or loaded, by key; the other fields hold the example
	entry      calc.Entry       // the last good one
	sheet      *calc.Sheet
	problems   []calc.Problem    // of what stands in the fields now
	names      map[string]string // typed for a countdown, by the key of its answer
}

// typed is a text with the habit that it was written in. It is kept as it was when the
// page is written for another habit, so that no value drifts by being rewritten.
type typed struct {
	text  string
	habit calc.Habit
}

// Part is a region of a mounted calculator that changes: the element under the
// section whose data-part is Name, and what stands inside it.
type Part struct{ Name, HTML string }

// NewLive mounts a calculator with its example.
func NewLive(c *calc.Calculator, name string, r words.Reader) *Live {
	l := &Live{Calculator: c, Name: name, reader: r, texts: map[string]typed{}, entry: c.Example()}
	l.sheet = c.Solve(l.entry)
	return l
}

// Type takes what a field now holds.
func (l *Live) Type(key, text string) {
	l.texts[key] = typed{text, l.habit()}
	l.work()
}

// Load takes a link: from the address bar, or as it was remembered. It reports whether
// the link could be worked; where it could not, its texts stand in the fields with what is wrong.
func (l *Live) Load(text string) bool {
	texts, problems := link.Parse(text)
	if len(problems) > 0 {
		l.problems = problems
		return false
	}
	l.texts = map[string]typed{}
	for key, text := range texts {
		l.texts[key] = typed{text: text}
	}
	return l.work()
}

// Example puts the example back into every field.
func (l *Live) Example() {
	l.texts = map[string]typed{}
	l.work()
}

// Address writes the whole page for another reader: other units, another language.
func (l *Live) Address(r words.Reader) {
	l.reader = r
	l.work()
}

// Link is the last good entry as link text.
func (l *Live) Link() string { return link.Format(l.Calculator, l.entry, l.reader.Style.System) }

// Touched reports whether anything but the example stands in the fields.
func (l *Live) Touched() bool { return len(l.texts) > 0 }

// Stale reports whether what stands in the fields cannot be worked, so that the answers shown belong to an
// earlier entry.
func (l *Live) Stale() bool { return len(l.problems) > 0 }

// Sheet is the last good sheet.
func (l *Live) Sheet() *calc.Sheet { return l.sheet }

// Invalid reports whether the text of a field cannot be worked.
func (l *Live) Invalid(key string) bool { return l.problem(key) != nil }

func (l *Live) habit() calc.Habit {
	h := calc.Habit{Decimal: l.reader.Style.Decimal, System: l.reader.Style.System}
	if h.Decimal == 0 {
		h.Decimal = '.'
	}
	return h
}

// work reads every field in the habit that it was typed in and works the entry out.
func (l *Live) work() bool {
	texts, habits := calc.Texts{}, map[string]calc.Habit{}
	for key, t := range l.texts {
		texts[key], habits[key] = t.text, t.habit
	}
	entry, problems := l.Calculator.ReadEach(texts, habits)
	l.problems = problems
	if len(problems) > 0 {
		return false
	}
	sheet := l.Calculator.Solve(entry)
	if len(sheet.Problems) > 0 {
		l.problems = sheet.Problems
		return false
	}
	l.entry, l.sheet = entry, sheet
	return true
}

func (l *Live) problem(key string) *calc.Problem {
	for i := range l.problems {
		if l.problems[i].Key == key {
			return &l.problems[i]
		}
	}
	return nil
}

// Field is the text that stands in a field: as it was typed, or as the reader would write it.
func (l *Live) Field(key string) string {
	in := l.Calculator.Input(key)
	if in == nil {
		return ""
	}
	t := l.typed(in)
	if _, touched := l.texts[key]; !touched {
		if offered, ok := in.Offered(in.Example, l.reader.Style); ok {
			return offered
		}
	}
	if t.habit == l.habit() {
		return t.text
	}
	if shown, ok := in.Shown(t.text, t.habit, l.reader.Style); ok {
		return shown
	}
	return t.text
}

// typed is what stands in a field, before it is rewritten for the reader.
func (l *Live) typed(in *calc.Input) typed {
	if t, ok := l.texts[in.Key]; ok {
		return t
	}
	return typed{in.Example, calc.Habit{Decimal: '.'}}
}

// value is a field's own reading, whatever is wrong in another.
func (l *Live) value(in *calc.Input) (base float64, ok bool) {
	t := l.typed(in)
	return in.Value(t.text, t.habit)
}

// With shows a sheet that was worked elsewhere, as the tests do.
func (l *Live) With(e calc.Entry, s *calc.Sheet) *Live {
	l.entry, l.sheet, l.problems = e, s, nil
	l.texts = map[string]typed{}
	for _, in := range l.Calculator.Inputs {
		l.texts[in.Key] = typed{text: in.Plain(e.Reading(in.Key), l.reader.Style.System)}
	}
	return l
}
