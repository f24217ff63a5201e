package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var severities = map[calc.Severity]string{calc.Stop: "stop", calc.Care: "care", calc.Note: "note"}

type jsonSheet struct {
	ID       string                `json:"id"`
	Entry    map[string]jsonEntry  `json:"entry"`
	Answers  map[string]jsonAnswer `json:"answers"`
	Tables   []jsonTable           `json:"tables,omitempty"`
	Steps    []jsonStep            `json:"steps"`
	Cautions []jsonCaution         `json:"cautions"`
}

type jsonEntry struct {
	Value   *float64     `json:"value,omitempty"`
	Rows    [][]*float64 `json:"rows,omitempty"` // null: a missing reading; a null row parts two groups
	Unit    string       `json:"unit,omitempty"`
	Text    string       `json:"text"`
	Example bool         `json:"example,omitempty"`
}

type jsonAnswer struct {
	Value float64  `json:"value"`
	Low   *float64 `json:"low,omitempty"`
	High  *float64 `json:"high,omitempty"`
	Unit  string   `json:"unit"`
	Text  string   `json:"text"`
}

type jsonStep struct {
	Says   string `json:"says"`
	Expr   string `json:"expr"`
	With   string `json:"with"`
	Gives  string `json:"gives"`
	Source string `json:"source"`
}

type jsonCaution struct {
	Says     string `json:"says"`
	Severity string `json:"severity"`
	Source   string `json:"source"`
}

func printJSON(out io.Writer, c *calc.Calculator, e calc.Entry, s *calc.Sheet, r words.Reader) {
	sheet := jsonSheet{ID: c.ID, Entry: map[string]jsonEntry{}, Answers: map[string]jsonAnswer{}, Steps: []jsonStep{}, Cautions: []jsonCaution{}}
	for _, in := range c.Inputs {
		sheet.Entry[in.Key] = entryOf(in, e.Reading(in.Key))
	}
	for _, a := range s.Answers {
		sheet.Answers[a.Key] = answerOf(a, r)
	}
	for _, t := range s.Tables {
		sheet.Tables = append(sheet.Tables, tableOf(t, r))
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		sheet.Steps = append(sheet.Steps, jsonStep{r.Line(st.Says), st.Gives.Symbol + " = " + formula(st, r.Style.System),
			st.With(r.Style), r.Style.PrintBoth(st.Gives.Is), page.Cite(r, st.Cite)})
	}
	for _, w := range s.Cautions {
		sheet.Cautions = append(sheet.Cautions, jsonCaution{r.Line(w.Says), severities[w.Severity], page.Cite(r, w.Cite)})
	}
	encode(out, sheet)
}

func entryOf(in *calc.Input, reading calc.Reading) jsonEntry {
	e := jsonEntry{Text: reading.Text, Example: reading.Example}
	switch {
	case len(in.Options) > 0, in.Reads != nil:
	case len(in.Columns) > 0:
		for _, row := range reading.Rows {
			e.Rows = append(e.Rows, rowOf(in, row))
		}
	default:
		value, symbol := in.Kind.SI(reading.Base)
		e.Value, e.Unit = &value, symbol
	}
	return e
}

// rowOf is a row in SI, nil where a cell is missing or where the row parts two groups.
func rowOf(in *calc.Input, row []float64) (cells []*float64) {
	for i, base := range row {
		if value, _ := in.Columns[min(i, len(in.Columns)-1)].Kind.SI(base); !math.IsNaN(value) {
			cells = append(cells, &value)
		} else {
			cells = append(cells, nil)
		}
	}
	return cells
}

func answerOf(a calc.Answer, r words.Reader) jsonAnswer {
	value, symbol := a.Is.Kind.SI(a.Is.Base)
	answer := jsonAnswer{Value: value, Unit: symbol, Text: r.Style.PrintBoth(a.Is)}
	if a.Reads.Msg != "" {
		answer.Text = r.Line(a.Reads)
	}
	if a.HasRange {
		low, _ := a.Is.Kind.SI(a.Low)
		high, _ := a.Is.Kind.SI(a.High)
		answer.Low, answer.High = &low, &high
	}
	return answer
}

func formula(st *calc.Step, s unit.System) string {
	var b strings.Builder
	for _, p := range st.Formula(s) {
		b.WriteString(p.Text)
	}
	return b.String()
}

func encode(out io.Writer, v jsonValue) {
	e := json.NewEncoder(out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	// Only plain structs of strings and finite numbers come here: calctest holds every answer finite, and a missing
	// reading is null.
	if err := e.Encode(v); err != nil {
		fmt.Fprintln(out, err)
	}
}

func printText(out io.Writer, c *calc.Calculator, e calc.Entry, s *calc.Sheet, r words.Reader) {
	fmt.Fprintf(out, "%s\n%s\n\n", r.Word(c.Title), r.Word(c.Asks))
	for _, in := range c.Inputs {
		reading := e.Reading(in.Key)
		taken := ""
		if reading.Example {
			taken = "  (" + r.Word("not given: the example was taken") + ")"
		}
		fmt.Fprintf(out, "  %-16s %s%s\n", in.Key, short(reading), taken)
	}
	fmt.Fprintf(out, "\n%s\n", r.Word("Answers"))
	for _, a := range s.Answers {
		text := answerOf(a, r).Text
		if a.HasRange {
			low, high := a.Is, a.Is
			low.Base, high.Base = a.Low, a.High
			text += ", " + r.Line(words.Say("from {low} to {high}",
				&words.Arg{Name: "low", Figure: &low}, &words.Arg{Name: "high", Figure: &high}))
		}
		fmt.Fprintf(out, "  %-16s %s: %s\n", a.Key, r.Word(a.Label), text)
	}
	for _, t := range s.Tables {
		printTable(out, t, r)
	}
	fmt.Fprintf(out, "\n%s\n", r.Word("The working, step by step"))
	for i := range s.Steps {
		st := &s.Steps[i]
		fmt.Fprintf(out, "  %d. %s\n     %s = %s = %s = %s\n     %s\n", i+1, r.Line(st.Says), st.Gives.Symbol,
			formula(st, r.Style.System), st.With(r.Style), r.Style.PrintBoth(st.Gives.Is), page.Cite(r, st.Cite))
	}
	if len(s.Cautions) > 0 {
		fmt.Fprintf(out, "\n%s\n", r.Word("Cautions"))
	}
	for _, w := range s.Cautions {
		fmt.Fprintf(out, "  %s: %s\n     %s\n", severities[w.Severity], r.Line(w.Says), page.Cite(r, w.Cite))
	}
}

// printList writes every calculator with its keys, units and limits.
func printList(out io.Writer, r words.Reader) {
	for _, c := range all.Calculators() {
		fmt.Fprintf(out, "%s  %s\n", c.ID, r.Word(c.Asks))
		for _, in := range c.Inputs {
			printInput(out, "  ", in, r)
		}
		fmt.Fprintln(out)
	}
}

func printInput(out io.Writer, indent string, in *calc.Input, r words.Reader) {
	takes := ""
	switch {
	case len(in.Options) > 0:
		var names []string
		for _, o := range in.Options {
			names = append(names, o.Name)
		}
		takes = strings.Join(names, ", ")
		if in.Each {
			takes += "; one for all, or one each as in " + names[0] + "," + names[len(names)-1]
		}
	case in.Reads != nil:
		takes = "lines of text, or @file"
	case len(in.Columns) > 0:
		var columns []string
		for _, column := range in.Columns {
			columns = append(columns, column.Key)
		}
		takes = "rows of " + strings.Join(columns, ", ")
		switch {
		case in.Form == calc.Grid:
			takes = "rows of any number of " + columns[0] + ", an empty cell is a missing one"
		case in.Form == calc.Groups:
			takes += ", an empty row between groups"
		}
		if in.Empty {
			takes += ", or none"
		}
		takes += "; inline or as @file.csv"
	default:
		low, high := unit.Figure{Kind: in.Kind, Base: in.Min, As: in.As}, unit.Figure{Kind: in.Kind, Base: in.Max, As: in.As}
		takes = r.Style.PrintBoth(low) + " to " + r.Style.PrintBoth(high)
		if in.Kind == unit.KindClock {
			takes = "a time of day" // a clock goes round: both ends may print as 00:00
		}
	}
	fmt.Fprintf(out, "%s%-16s %s  [%s; example %s]\n", indent, in.Key, r.Word(in.Label), takes, in.Example)
	for _, column := range in.Columns {
		printInput(out, indent+"  ", column, r)
	}
}
