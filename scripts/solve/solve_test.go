package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	height = calc.Ask("height", "", "Height", unit.InchMM, unit.Millimetre, unit.Metre, "10 mm")
	grid   = calc.Gridded("grid", "Heights", "10 mm,,12;;9,8,7", height.Input)
	holes  = calc.Tabulate("holes", "Holes", "1 mm;2 mm;;3 mm", height.Input).Grouped()
	sides  = calc.ChooseEach("sides", "Sides", "open", calc.Option{Name: "open", Label: "Open"}, calc.Option{Name: "wall", Label: "Wall"})
)

// listed is a calculator with everything that a table can be.
var listed = calc.Calculator{ID: "listed", Title: "Listed", Asks: "Is it listed?", Inputs: []*calc.Input{grid.Input, holes.Input, sides.Input},
	Work: func(e calc.Entry, s *calc.Sheet) {
		calc.Gives(s, "first", "First", unit.Length(grid.Of(e)[0][0]), unit.InchMM).First()
		s.Warn(calc.Note, source.CommonPractice, "Measure twice.")
		t := s.Table("cuts", "Cuts", "Mark", "Size", "Where")
		t.Row(calc.Marked("A1"), calc.Amount(5*unit.Millimetre, unit.InchMM), calc.Worded("Measure twice."))
	}}

func printed(t *testing.T, text string) map[string]any {
	e, problems := listed.Read(calc.Texts{"grid": text}, calc.Habit{Decimal: '.'})
	require.Empty(t, problems)
	var out bytes.Buffer
	printJSON(&out, &listed, e, listed.Solve(e), words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric}})
	var got map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &got), out.String())
	return got
}

// A missing reading and the row that parts two groups are null, and lengths are in metres.
func TestGapsAreNull(t *testing.T) {
	entry := printed(t, "10 mm,,12\n9,8")["entry"].(map[string]any)
	assert.Equal(t, []any{[]any{0.01, nil, 0.012}, []any{0.009, 0.008, nil}}, entry["grid"].(map[string]any)["rows"])
	assert.Equal(t, []any{[]any{0.001}, []any{0.002}, nil, []any{0.003}}, entry["holes"].(map[string]any)["rows"])
}

func TestTablesArePrinted(t *testing.T) {
	tables := printed(t, "10 mm")["tables"].([]any)
	require.Len(t, tables, 1)
	assert.Equal(t, map[string]any{"key": "cuts", "title": "Cuts", "heads": []any{"Mark", "Size", "Where"}, "rows": []any{[]any{
		map[string]any{"text": "A1"}, map[string]any{"value": 0.005, "unit": "m", "text": "5 mm (0.1969 in)"}, map[string]any{"text": "Measure twice."},
	}}}, tables[0])
	var out bytes.Buffer
	e := listed.Example()
	printText(&out, &listed, e, listed.Solve(e), words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric}})
	assert.Contains(t, out.String(), "A1    5 mm (0.1969 in)  Measure twice.")
}

// A file is read as the spreadsheet wrote it: the spells of hours and degrees are those that were typed into it.
func TestFiles(t *testing.T) {
	name := filepath.Join(t.TempDir(), "spells.csv")
	for text, want := range map[string]any{
		"\uFEFF12,5 h;5 C\r\n6;15\r\n": []any{[]any{45000.0, 5.0}, []any{21600.0, 15.0}},
		"\"12.5 h\",\"5 C\"\n6,15\n":   []any{[]any{45000.0, 5.0}, []any{21600.0, 15.0}},
	} {
		require.NoError(t, os.WriteFile(name, []byte(text), 0o644))
		var out, errs bytes.Buffer
		require.Zero(t, run([]string{"-json", "ripen", "temps=@" + name}, &out, &errs), out.String())
		var got struct{ Entry map[string]struct{ Rows any } }
		require.NoError(t, json.Unmarshal(out.Bytes(), &got))
		assert.Equal(t, want, got.Entry["temps"].Rows, text)
	}
	require.NoError(t, os.WriteFile(name, []byte("1,25\n1,30\n"), 0o644))
	var out, errs bytes.Buffer
	assert.Equal(t, 2, run([]string{"ripen", "temps=@" + name}, &out, &errs))
	assert.Contains(t, errs.String(), "may part two cells or be a decimal mark")
}

// A clock goes round, so its limits, from midnight to midnight, are no "00:00 to 00:00": the list says what is asked for.
func TestAListedTimeOfDay(t *testing.T) {
	var out bytes.Buffer
	printList(&out, words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric}})
	assert.NotContains(t, out.String(), "00:00 to")
	assert.Contains(t, out.String(), "[a time of day; example 08:00]")
}
