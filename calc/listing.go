package calc

import (
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Table is a list on a sheet: cuts with their sizes, the lines of an order, the best few layouts.
type Table struct {
	Key   string // in the JSON of the command line
	Title words.Msg
	Says  words.Line // may be empty
	Heads []words.Msg
	Rows  []Row
}

// Row is one line of a table. Where Button is not "", the row has a button that puts texts into the calculator's
// fields, each as in a link.
type Row struct {
	Cells  []Cell
	Button words.Msg
	Puts   Texts
}

// Cell is a figure, a line of words, or a text that no language changes (a mark, a count of rows).
type Cell struct {
	Is   *unit.Figure
	Says words.Line
	Text string
}

// Table adds a table to the sheet, to be filled row by row.
func (s *Sheet) Table(key string, title words.Msg, heads ...words.Msg) *Table {
	t := &Table{Key: key, Title: title, Heads: heads}
	s.Tables = append(s.Tables, t)
	return t
}

// Row adds a line. The pointer holds until the next.
func (t *Table) Row(cells ...Cell) *Row {
	t.Rows = append(t.Rows, Row{Cells: cells})
	return &t.Rows[len(t.Rows)-1]
}

// Offer gives the line a button that puts texts into fields.
func (r *Row) Offer(button words.Msg, puts Texts) *Row {
	r.Button, r.Puts = button, puts
	return r
}

// Amount is a cell with a figure.
func Amount[T unit.Quantity](q T, as *unit.Pair) Cell {
	f := unit.Fig(q, as)
	return Cell{Is: &f}
}

// Worded is a cell with words.
func Worded(m words.Msg, with ...*words.Arg) Cell { return Cell{Says: words.Say(m, with...)} }

// Marked is a cell with a text that no language changes.
func Marked(text string) Cell { return Cell{Text: text} }
