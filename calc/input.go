package calc

import (
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// Input is one thing a calculator asks for: a quantity within limits, one of
// several Options (or several of them, where Each is true), or a table of Columns.
type Input struct {
	Key      string
	Symbol   string // in the working; "" where the working does not use it
	Label    words.Msg
	Help     words.Msg // where to find the figure, or what it means; may be ""
	Kind     unit.Kind
	As       *unit.Pair
	Min, Max float64 // base units, both allowed
	Example  string  // as in a link: a point decimal, with its unit
	Usual    []string
	Options  []Option
	Columns  []*Input
	Form     Form // of a table
	Empty    bool // a table may have no row
	Spare    bool // a row of a table may leave out its last cell, which then reads as that column's example
	Each     bool // one of the Options for each of several things, in order; one alone is for all of them

	// Reads is set where the question reads a text of lines itself: it gives the text to keep, which reads the same for
	// everybody, or says what is wrong.
	Reads func(text string) (kept string, wrong words.Line)
}

// Form is how the rows of a table stand.
type Form uint8

// The forms of a table.
const (
	Plain  Form = iota // every row has a cell for each column
	Grid               // one column alone: a row has any number of its cells, and a cell may be missing
	Groups             // as Plain, and an empty row parts one group of rows from the next
)

// Option is one choice: its name in links and its words on the page.
type Option struct {
	Name  string
	Label words.Msg
}

// In is an input that reads as a T, so that a length cannot land where a ratio belongs.
type In[T unit.Quantity] struct{ *Input }

// Ask declares a quantity to be asked for.
func Ask[T unit.Quantity](key, symbol string, label words.Msg, as *unit.Pair, low, high T, example string) In[T] {
	return In[T]{&Input{Key: key, Symbol: symbol, Label: label, Kind: low.Kind(), As: as,
		Min: float64(low), Max: float64(high), Example: example}}
}

// Usually lists values that the trade often enters, offered as large keys.
func (in In[T]) Usually(texts ...string) In[T] { in.Usual = texts; return in }

// Helped adds a line of help.
func (in In[T]) Helped(m words.Msg) In[T] { in.Help = m; return in }

// Of is the value that an entry holds.
func (in In[T]) Of(e Entry) T { return T(e.read[in.Key].Base) }

// Sym is the value as a term of the working, under the input's symbol.
func (in In[T]) Sym(e Entry) Term { return Sym(in.Symbol, in.Of(e), in.As) }

// Is fills a placeholder with a quantity shown as this input is.
func (in In[T]) Is(name string, q T) *words.Arg { return words.Is(name, q, in.As) }

// At is the value in one row of a table that this input is a column of, counted from nought.
func (in In[T]) At(row []float64, column int) T { return T(row[column]) }

// Pick is a choice among options.
type Pick struct{ *Input }

// Choose declares a choice. The example is the name of one of the options.
func Choose(key string, label words.Msg, example string, options ...Option) Pick {
	return Pick{&Input{Key: key, Label: label, Example: example, Options: options}}
}

// Helped adds a line of help.
func (p Pick) Helped(m words.Msg) Pick { p.Help = m; return p }

// Of is the name of the option that an entry holds.
func (p Pick) Of(e Entry) string { return e.read[p.Key].Text }

// Picks is a choice made for each of several things.
type Picks struct{ *Input }

// ChooseEach declares a choice for each of several things: names of options parted by ",". One alone is for all.
func ChooseEach(key string, label words.Msg, example string, options ...Option) Picks {
	return Picks{&Input{Key: key, Label: label, Example: example, Options: options, Each: true}}
}

// Helped adds a line of help.
func (p Picks) Helped(m words.Msg) Picks { p.Help = m; return p }

// Of is the names that an entry holds, in order.
func (p Picks) Of(e Entry) []string { return strings.Split(e.read[p.Key].Text, ",") }

// Rows is a table: rows of cells, one quantity a column.
type Rows struct{ *Input }

// Tabulate declares a table. Its example has ";" between rows and "," between cells.
func Tabulate(key string, label words.Msg, example string, columns ...*Input) Rows {
	return Rows{&Input{Key: key, Label: label, Example: example, Columns: columns}}
}

// Helped adds a line of help.
func (r Rows) Helped(m words.Msg) Rows { r.Help = m; return r }

// Gridded declares a table of one quantity: rows of any number of cells, where an empty cell is missing (NaN). Every row
// reads as long as the longest.
func Gridded(key string, label words.Msg, example string, cell *Input) Rows {
	return Rows{&Input{Key: key, Label: label, Example: example, Columns: []*Input{cell}, Form: Grid}}
}

// Grouped has an empty row part one group of rows from the next.
func (r Rows) Grouped() Rows { r.Form = Groups; return r }

// MayBeEmpty takes a table with no row.
func (r Rows) MayBeEmpty() Rows { r.Empty = true; return r }

// LastSpare lets a row leave out its last cell, which then reads as that column's example.
func (r Rows) LastSpare() Rows { r.Spare = true; return r }

// Groups is the groups of rows that an entry holds.
func (r Rows) Groups(e Entry) (groups [][][]float64) {
	var group [][]float64
	for _, row := range e.read[r.Key].Rows {
		if row == nil {
			groups, group = append(groups, group), nil
			continue
		}
		group = append(group, row)
	}
	if group != nil {
		groups = append(groups, group)
	}
	return groups
}

// Of is the rows that an entry holds, each cell in the base unit of its column. Where rows stand
// in groups, a nil row parts them.
func (r Rows) Of(e Entry) [][]float64 { return e.read[r.Key].Rows }

// Lines is a text of lines that the question reads itself: the entries of a job.
type Lines struct{ *Input }

// AskLines declares a text of lines with its own reader.
func AskLines(key string, label words.Msg, example string, reads func(text string) (kept string, wrong words.Line)) Lines {
	return Lines{&Input{Key: key, Label: label, As: unit.Bare, Example: example, Reads: reads}}
}

// Helped adds a line of help.
func (l Lines) Helped(m words.Msg) Lines { l.Help = m; return l }

// Of is the text that an entry holds.
func (l Lines) Of(e Entry) string { return e.read[l.Key].Text }
