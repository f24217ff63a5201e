package calc

import (
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Input is one thing a calculator asks for: a quantity within limits, one of
// several Options, or a table of Columns.
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
}

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

// Rows is a table: rows of cells, one quantity a column.
type Rows struct{ *Input }

// Tabulate declares a table. Its example has ";" between rows and "," between cells.
func Tabulate(key string, label words.Msg, example string, columns ...*Input) Rows {
	return Rows{&Input{Key: key, Label: label, Example: example, Columns: columns}}
}

// Helped adds a line of help.
func (r Rows) Helped(m words.Msg) Rows { r.Help = m; return r }

// Of is the rows that an entry holds, each cell in the base unit of its column.
func (r Rows) Of(e Entry) [][]float64 { return e.read[r.Key].Rows }
