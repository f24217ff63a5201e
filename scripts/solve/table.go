package main

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"setbook/calc"
	"setbook/calc/words"
)

type jsonTable struct {
	Key   string       `json:"key"`
	Title string       `json:"title"`
	Heads []string     `json:"heads"`
	Rows  [][]jsonCell `json:"rows"`
}

// jsonCell is a figure with its value in SI, or a text alone.
type jsonCell struct {
	Value *float64 `json:"value,omitempty"`
	Unit  string   `json:"unit,omitempty"`
	Text  string   `json:"text"`
}

func tableOf(t *calc.Table, r words.Reader) jsonTable {
	table := jsonTable{t.Key, r.Word(t.Title), []string{}, [][]jsonCell{}}
	for _, head := range t.Heads {
		table.Heads = append(table.Heads, r.Word(head))
	}
	for _, row := range t.Rows {
		cells := []jsonCell{}
		for i := range row.Cells {
			cells = append(cells, cellOf(&row.Cells[i], r))
		}
		table.Rows = append(table.Rows, cells)
	}
	return table
}

func cellOf(c *calc.Cell, r words.Reader) jsonCell {
	switch {
	case c.Is != nil:
		value, symbol := c.Is.Kind.SI(c.Is.Base)
		return jsonCell{&value, symbol, r.Style.PrintBoth(*c.Is)}
	case c.Says.Msg != "":
		return jsonCell{Text: r.Line(c.Says)}
	}
	return jsonCell{Text: c.Text}
}

// printTable writes a table in columns.
func printTable(out io.Writer, t *calc.Table, r words.Reader) {
	fmt.Fprintf(out, "\n%s\n", r.Word(t.Title))
	if t.Says.Msg != "" {
		fmt.Fprintf(out, "  %s\n", r.Line(t.Says))
	}
	table := tableOf(t, r)
	w := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  %s\n", strings.Join(table.Heads, "\t"))
	for _, row := range table.Rows {
		var cells []string
		for _, c := range row {
			cells = append(cells, c.Text)
		}
		fmt.Fprintf(w, "  %s\n", strings.Join(cells, "\t"))
	}
	w.Flush() // out is a terminal or a test's buffer: nothing to be done where it fails
}

// short is a reading as it was given, a long table cut.
func short(r calc.Reading) string {
	text := strings.Join(strings.Fields(strings.ReplaceAll(r.Text, "\n", "; ")), " ")
	runes := []rune(text)
	switch {
	case len(runes) <= 200:
		return text
	case len(r.Rows) == 0: // lines of text
		return fmt.Sprintf("%s… (%d lines)", string(runes[:200]), strings.Count(r.Text, "\n")+1)
	}
	return fmt.Sprintf("%s… (%d rows)", string(runes[:200]), len(r.Rows))
}
