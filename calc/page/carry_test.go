package page_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/unit"
)

// A list is taken away as text and as a file that the standard library's reader of CSV reads back cell by cell, whatever
// stands in the cells.
func TestAListIsTakenAway(t *testing.T) {
	length := calc.Ask("length", "L", "Length", unit.FootMetre, unit.Foot, 100*unit.Foot, "10 ft")
	c := &calc.Calculator{ID: "listed", Title: "Listed", Asks: "What is on the list?", Inputs: []*calc.Input{length.Input},
		Work: func(e calc.Entry, s *calc.Sheet) {
			calc.Works(s, "Length.", "X", length.Of(e), unit.FootMetre, "L", source.ByDefinition)
			calc.Gives(s, "x", "Length", length.Of(e), unit.FootMetre).First()
			list := s.Table("rows", "The rows", "Mark", "Length, cut", "Note")
			list.Row(calc.Marked(`A"1`), calc.Amount(length.Of(e), unit.FootMetre), calc.Worded("one, two"))
			list.Row(calc.Marked("B\nC"), calc.Amount(2*length.Of(e), unit.FootMetre), calc.Worded("plain"))
		}}
	l := page.NewLive(c, "listed", comma)
	l.Type("length", "2,5")
	var texts []string
	var names []string
	doc, err := html.Parse(strings.NewReader(part(t, l, "tables")))
	require.NoError(t, err)
	for n := range doc.Descendants() {
		for _, a := range n.Attr {
			switch a.Key {
			case "data-carry":
				texts = append(texts, a.Val)
			case "data-file":
				names = append(names, a.Val)
			}
		}
	}
	require.Len(t, texts, 2)
	assert.Equal(t, []string{"setbook-listed-rows.csv"}, names)
	assert.Equal(t, "The rows\nMark · Length, cut · Note\nA\"1 · 2,5 m · one, two\nB\nC · 5 m · plain\n", texts[0])
	assert.Contains(t, texts[1], "\r\n", "RFC 4180, 2.1: lines end in CR LF")
	records, err := csv.NewReader(strings.NewReader(texts[1])).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, [][]string{{"Mark", "Length, cut", "Note"}, {`A"1`, "2,5 m", "one, two"}, {"B\nC", "5 m", "plain"}}, records)
}
