package page

import (
	"strings"

	"setbook/calc"
	"setbook/calc/csv"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// mostLink is how long a link may be, in characters: what is longer is cut by some of the programs that links are sent
// with, and slows the browser's own bar.
const mostLink = 8000

// loaded is what became of a file.
type loaded struct {
	says words.Line
	bad  bool
}

// LoadFile puts a file of cells in the place of a table. One that cannot be read changes nothing. It reports whether the
// fields changed. A long one is read where the calculator is worked out, and its table comes back with the answer.
func (l *Live) LoadFile(key, name, text string) bool {
	in := l.Calculator.Input(key)
	if in == nil || len(in.Columns) == 0 {
		return false
	}
	if l.files == nil {
		l.files = map[string]*loaded{}
	}
	if l.aside != nil && len(text) > readable {
		l.aside.file = []string{key, name, text}
		l.files[key] = &loaded{says: words.Say("Reading {file}.", words.Text("file", calc.Cut(name)))}
		l.work()
		l.aside.wants = true
		return false
	}
	put, fault := readFile(in, text, l.habit())
	if fault.Msg == "" {
		alone := form{of: &calc.Calculator{Inputs: []*calc.Input{in}}, texts: map[string]typed{key: put}}
		if _, problems := alone.read(); len(problems) > 0 {
			fault = problems[0].Says
		}
	}
	if fault.Msg != "" {
		l.refuseFile(key, name, fault)
		return false
	}
	l.takeFile(in, name, put)
	l.work()
	return true
}

// readFile is the text of a file, or why it is not taken.
func readFile(in *calc.Input, text string, h calc.Habit) (typed, words.Line) {
	table, fault := csv.Read(text, h.Decimal, in.Form == calc.Grid)
	h.Decimal = table.Decimal
	return typed{table.Text, h}, fault
}

// takeFile has a field hold what was in a file.
func (l *Live) takeFile(in *calc.Input, name string, put typed) {
	l.files[in.Key] = &loaded{says: words.Say("Loaded: {file}. A number without a unit is in {unit}.",
		words.Text("file", calc.Cut(name)), words.Text("unit", l.firstUnit(in, put)))}
	l.texts[in.Key] = put
	delete(l.pads, in.Key)
}

func (l *Live) refuseFile(key, name string, why words.Line) {
	l.files[key] = &loaded{bad: true, says: words.Say("{file} was not taken. {why}", words.Text("file", calc.Cut(name)), words.Also("why", why))}
}

// firstUnit is the unit of the bare numbers of a table: the one in its first cell, or the reader's.
func (l *Live) firstUnit(in *calc.Input, t typed) string {
	column := in.Columns[0]
	first, _, _ := strings.Cut(t.text, "\n")
	first = strings.TrimSpace(strings.Split(strings.Split(first, "|")[0], ", ")[0])
	if u := unit.Ends(column.Kind, first); u != nil {
		return u.Symbol
	}
	return column.As.For(t.habit.System).Unit.Symbol
}

func (l *Live) fileSaid(in *calc.Input) string {
	w := &writer{r: l.reader}
	if f := l.files[in.Key]; f != nil && f.bad {
		w.Put(`<span class="note-bad">%</span>`, l.reader.Line(f.says))
	} else if f != nil {
		w.Text(l.reader.Line(f.says))
	}
	return w.String()
}

// File is a table as a spreadsheet reads it: cells parted by ",", or by ";" where the comma is the decimal mark.
func (l *Live) File(key string) string {
	in := l.Calculator.Input(key)
	if in == nil {
		return ""
	}
	p := l.pad(in)
	_, decimal := l.written(in)
	part := ","
	if decimal == ',' {
		part = ";"
	}
	var b strings.Builder
	for _, row := range p.rows {
		csv.Write(&b, part, l.padCells(in, row))
	}
	return b.String()
}

// Linkable reports whether the link is short enough for the address bar and to be sent.
func (l *Live) Linkable() bool { return l.long() < mostLink/20 || len(l.Link()) <= mostLink }

// linked says under the form that an entry is too long for a link.
func (l *Live) linked() string {
	w := &writer{r: l.reader}
	if !l.Linkable() {
		w.put(`<span class="note">%</span>`, "This entry is too long for a link, so the address bar does not hold it. It is remembered in this browser; to hand it on, save it as a file.")
	}
	return w.String()
}
