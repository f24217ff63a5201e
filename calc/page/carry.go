package page

import (
	"strings"

	"setbook/calc"
	"setbook/calc/csv"
)

// carry writes the buttons that take a list away, with what they take: as lines of text, or as a file for a spreadsheet. The texts
// go with the buttons, since the sheet may have been worked elsewhere.
func (l *Live) carry(w *writer, t *calc.Table) {
	w.Put(`<div class="actions carry"><button type="button" data-carry="%">%</button>`, l.plainList(t), l.reader.Word("Copy as text"))
	w.Put(`<button type="button" data-carry="%" data-file="setbook-%-%.csv">%</button></div>`, l.spreadsheet(t), l.Calculator.ID, t.Key, l.reader.Word("Save as a CSV file"))
}

// cell is a cell as the reader reads it.
func (l *Live) cell(c *calc.Cell) string {
	switch {
	case c.Is != nil:
		return l.reader.Style.Print(*c.Is)
	case c.Says.Msg != "":
		return l.reader.Line(c.Says)
	}
	return c.Text
}

// plainList is a list as lines of text, to be sent to somebody: its title, its heads, a line a row.
func (l *Live) plainList(t *calc.Table) string {
	lines := []string{l.reader.Word(t.Title), strings.Join(l.heads(t), " · ")}
	for i := range t.Rows {
		lines = append(lines, strings.Join(l.cells(&t.Rows[i]), " · "))
	}
	return strings.Join(lines, "\n") + "\n"
}

// spreadsheet is a list as comma-separated values (RFC 4180), its heads in the first line.
func (l *Live) spreadsheet(t *calc.Table) string {
	var b strings.Builder
	csv.Write(&b, ",", l.heads(t))
	for i := range t.Rows {
		csv.Write(&b, ",", l.cells(&t.Rows[i]))
	}
	return b.String()
}

func (l *Live) heads(t *calc.Table) (heads []string) {
	for _, h := range t.Heads {
		heads = append(heads, l.reader.Word(h))
	}
	return heads
}

func (l *Live) cells(r *calc.Row) (cells []string) {
	for i := range r.Cells {
		cells = append(cells, l.cell(&r.Cells[i]))
	}
	return cells
}
