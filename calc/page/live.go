package page

import (
	"strings"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Live is one calculator mounted on a page: what stands in its fields, the last
// entry that could be worked, and for whom it is written. The build makes one
// for the page as first served; the phone keeps one and feeds it each key.
type Live struct {
	Calculator *calc.Calculator
	Name       string // unique on the page: the id of its section
	reader     words.Reader
	form                  // its fields
	tools      []form     // the fields of its tools, in their order
	entry      calc.Entry // the last good one
	sheet      *calc.Sheet
	names      map[string]string     // typed for a countdown, by the key of its answer
	used       map[string]words.Line // what each tool said when it was used last
	aside      *aside                // nil: it is worked out on the page
	grip       grip                  // on the drawing
	pads       map[string]*pad       // of the grids, once they are wanted
	files      map[string]*loaded    // what became of the last file of each table
	known      string                // what the entry meant as it was loaded, or as Differs told last; "": not known
	own        bool                  // Differs has told of a change since it was loaded
	around                           // what the page that it is embedded in has settled, products, a counter
}

// Part is a region of a mounted calculator that changes: the element under the
// section whose data-part is Name, and what stands inside it.
type Part struct{ Name, HTML string }

// NewLive mounts a calculator with its example.
func NewLive(c *calc.Calculator, name string, r words.Reader) *Live {
	l := mount(c, name, r)
	l.sheet = c.Solve(l.entry)
	return l
}

func mount(c *calc.Calculator, name string, r words.Reader) *Live {
	l := &Live{Calculator: c, Name: name, reader: r, form: form{of: c, texts: map[string]typed{}}, entry: c.Example()}
	for _, t := range c.Tools {
		l.tools = append(l.tools, form{of: &calc.Calculator{Inputs: t.Inputs}, tool: t.Key, texts: map[string]typed{}})
	}
	return l
}

// Type takes what a field now holds.
func (l *Live) Type(key, text string) {
	f, in := l.at(key)
	if in != nil {
		key = in.Key
	}
	if l.typedOver(f, key) {
		return
	}
	f.texts[key] = typed{text, l.habit()}
	if f != &l.form {
		_, f.problems = f.read()
		return
	}
	l.work()
}

// put writes texts into fields, each as in a link.
func (l *Live) put(texts calc.Texts) {
	for key, text := range texts {
		l.texts[key] = typed{text: text}
	}
	l.hold()
	l.work()
}

// Put takes what a button of a table puts into fields, as link text.
func (l *Live) Put(text string) {
	texts, _ := link.Parse(text)
	l.put(texts)
}

// Load takes a link: from the address bar, or as it was remembered. It reports whether
// the link could be worked; where it could not, its texts stand in the fields with what is wrong.
func (l *Live) Load(text string) bool {
	l.known, l.own = "", false
	texts, problems := link.Parse(text)
	if len(problems) > 0 {
		l.problems = problems
		return false
	}
	l.texts = map[string]typed{}
	for key, text := range texts {
		l.texts[key] = typed{text: text}
	}
	l.settled(false)
	if !l.work() {
		return false
	}
	l.known = l.means()
	return true
}

// Differs reports, once for each change, whether the entry means anything else than what was loaded. Other units, another
// language and other words for the same figures are no change; once there is one, other words are kept too.
func (l *Live) Differs() bool {
	if l.means() == l.known {
		return false
	}
	l.own = true
	l.known = l.means()
	if l.aside != nil && l.aside.unread {
		l.known = "" // its link comes once it is worked, and is told then
	}
	return true
}

// means is what the entry means, whoever reads it: the figures, or the texts where they are a person's own or are read
// beside the page.
func (l *Live) means() string {
	var all strings.Builder
	for _, in := range l.Calculator.Inputs {
		if l.own || l.aside != nil && l.aside.unread {
			t := l.texts[in.Key]
			all.WriteString(habit(t.habit).text() + t.text + "\x00")
			continue
		}
		r := l.entry.Reading(in.Key)
		if len(in.Options) == 0 && in.Reads == nil {
			r.Text = "" // the figure is written out, however it was typed
		}
		all.WriteString(in.Plain(r, unit.US) + "\x00")
	}
	return all.String()
}

// LoadUnder is Load, but what a person has typed into a field stays. It reports whether anything was, and whether the link
// changes what the entry means.
func (l *Live) LoadUnder(text string) (typed, differs bool) {
	l.own = false
	before, meant := l.texts, l.means()
	l.Load(text)
	for key, t := range before {
		if t.habit != (calc.Habit{}) {
			l.texts[key], typed = t, true
		}
	}
	l.work()
	return typed, l.means() != meant
}

// Example puts the example back into every field.
func (l *Live) Example() {
	l.texts = map[string]typed{}
	l.settled(true)
	l.work()
}

// Address writes the whole page for another reader: other units, another language.
func (l *Live) Address(r words.Reader) {
	l.reader = r
	if l.aside != nil {
		l.aside.count++
		l.aside.wants = len(l.problems) == 0
	}
}

// Link is the last good entry as link text.
func (l *Live) Link() string { return l.current() }

// Touched reports whether anything but the example stands in the fields.
func (l *Live) Touched() bool { return len(l.texts) > 0 && !l.untouched() }

// Stale reports whether what stands in the fields cannot be worked, so that the answers shown belong to an
// earlier entry.
func (l *Live) Stale() bool { return len(l.problems) > 0 || l.aside != nil && l.aside.halted }

// Sheet is the last good sheet.
func (l *Live) Sheet() *calc.Sheet { return l.sheet }

// Invalid reports whether the text of a field cannot be worked.
func (l *Live) Invalid(key string) bool {
	f, in := l.at(key)
	return in != nil && f.problem(in.Key) != nil
}

func (l *Live) habit() calc.Habit {
	h := calc.Habit{Decimal: l.reader.Style.Decimal, System: l.reader.Style.System}
	if h.Decimal == 0 {
		h.Decimal = '.'
	}
	return h
}

// work reads every field in the habit that it was typed in and works the entry out.
func (l *Live) work() bool { return l.workWith(nil) }

// workWith is work for one who waits.
func (l *Live) workWith(going func(done, of int) bool) bool {
	if l.aside != nil {
		return l.change()
	}
	entry, problems := l.read()
	l.problems = problems
	if len(problems) > 0 {
		return false
	}
	sheet := l.Calculator.SolveWith(entry, going)
	if len(sheet.Problems) > 0 {
		l.problems = sheet.Problems
		return false
	}
	l.entry, l.sheet = entry, sheet
	return true
}

// Field is the text that stands in a field.
func (l *Live) Field(key string) string {
	f, in := l.at(key)
	if in == nil {
		return ""
	}
	return l.text(f, in)
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
