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
	texts      calc.Texts // what stands in the fields, wherever it differs from the example
	entry      calc.Entry // the last good one
	sheet      *calc.Sheet
	problems   []calc.Problem // of what stands in the fields now
}

// Part is a region of a mounted calculator that changes: the element under the
// section whose data-part is Name, and what stands inside it.
type Part struct{ Name, HTML string }

// NewLive mounts a calculator with its example.
func NewLive(c *calc.Calculator, name string, r words.Reader) *Live {
	l := &Live{Calculator: c, Name: name, reader: r, texts: calc.Texts{}, entry: c.Example()}
	l.sheet = c.Solve(l.entry)
	return l
}

// Type takes what a field now holds.
func (l *Live) Type(key, text string) {
	l.texts[key] = text
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
	l.texts = texts
	entry, problems := l.Calculator.Read(texts, calc.Habit{})
	return l.take(entry, problems)
}

// Example puts the example back into every field.
func (l *Live) Example() {
	l.texts = calc.Texts{}
	l.work()
}

// Address writes the whole page for another reader: other units, another
// language. What can be read is rewritten in the new units; what cannot stays as typed.
func (l *Live) Address(r words.Reader) {
	old := l.habit()
	l.reader = r
	for _, in := range l.Calculator.Inputs {
		text, typed := l.texts[in.Key]
		if !typed {
			continue
		}
		if again, ok := in.Again(text, old, r.Style); ok {
			l.texts[in.Key] = again
		}
	}
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

func (l *Live) work() {
	entry, problems := l.Calculator.Read(l.texts, l.habit())
	l.take(entry, problems)
}

func (l *Live) take(entry calc.Entry, problems []calc.Problem) bool {
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

// Field is the text that stands in a field.
func (l *Live) Field(key string) string {
	if text, ok := l.texts[key]; ok {
		return text
	}
	for _, in := range l.Calculator.Inputs {
		if in.Key == key {
			return in.Shown(l.reader.Style)
		}
	}
	return ""
}

// With shows a sheet that was worked elsewhere, as the build and the tests do.
func (l *Live) With(e calc.Entry, s *calc.Sheet) *Live {
	l.entry, l.sheet, l.problems = e, s, nil
	l.texts = calc.Texts{}
	for _, in := range l.Calculator.Inputs {
		l.texts[in.Key] = in.Plain(e.Reading(in.Key), l.reader.Style.System)
	}
	return l
}
