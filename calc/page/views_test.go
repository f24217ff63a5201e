package page_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The calculators of these tests ask what none of the trade would: each is there for one view.
var (
	side  = calc.Ask("side", "a", "Side", unit.InchMM, unit.Millimetre, 10*unit.Metre, "300 mm")
	edges = calc.ChooseEach("edges", "Edge", "open", calc.Option{Name: "open", Label: "Open"}, calc.Option{Name: "wall", Label: "Wall"})
	times = calc.Ask("times", "", "Times", unit.InchMM, unit.Millimetre, unit.Metre, "10 mm")
)

func demo() *calc.Calculator {
	return &calc.Calculator{ID: "demo", Title: "Demo", Asks: "Is it there?", Inputs: []*calc.Input{side.Input, edges.Input},
		Work: func(e calc.Entry, s *calc.Sheet) {
			calc.Gives(s, "side", "Side", side.Of(e), unit.InchMM).First()
			s.Warn(calc.Note, source.CommonPractice, "Measure twice.")
			s.Drawing.Title, s.Drawing.Says = "First", words.Say("First drawing.")
			s.Drawing.Box(calc.Paver, 0, 0, side.Of(e), side.Of(e))
			for _, title := range []words.Msg{"Second", "Third"} {
				d := s.Draw(title)
				d.Says = words.Say("Another drawing.")
				d.Box(calc.Concrete, 0, 0, side.Of(e), side.Of(e))
			}
			s.Draw("Nothing")
			t := s.Table("cuts", "Cuts", "Mark", "Count", "Size", "Where")
			t.Says = words.Say("Each in the order of setting.")
			t.Row(calc.Marked("A<1>"), calc.Marked("12"), calc.Amount(side.Of(e), unit.InchMM), calc.Worded("Left")).
				Offer("Take this one", calc.Texts{"side": "1 1/2 in", "edges": "wall,open"})
			t.Row(calc.Marked("A2"), calc.Marked("3"), calc.Amount(side.Of(e)/2, unit.InchMM), calc.Worded("Right"))
			s.Table("none", "Nothing to list", "Mark")
		},
		Tools: []*calc.Tool{
			{Key: "grow", At: "side", Title: "Longer by", Inputs: []*calc.Input{times.Input},
				Write: func(now, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
					if times.Of(own) > 500*unit.Millimetre {
						return nil, words.Line{}, []calc.Problem{{Key: "times", Says: words.Say("Too much.")}, {Says: words.Say("Not at all.")}}
					}
					return calc.Texts{"side": side.Written(float64(side.Of(now)+times.Of(own)), unit.Style{System: unit.Metric})}, words.Say("Longer by {by}.", times.Is("by", times.Of(own))), nil
				}},
			{Key: "small", At: "side", Title: "A small one", Write: preset("50 mm", "A small one it is.")},
			{Key: "large", At: "side", Title: "A large one", Write: preset("2 m", "A large one it is.")},
		}}
}

func preset(text string, said words.Msg) func(now, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
	return func(calc.Entry, calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
		return calc.Texts{"side": text}, words.Say(said), nil
	}
}

// parsed is a section as a browser has it.
func parsed(t *testing.T, l *page.Live) *html.Node {
	doc, err := html.Parse(strings.NewReader(l.HTML()))
	require.NoError(t, err)
	return doc
}

// all gives every element with an attribute of a value, or of any where the value is "".
func all(doc *html.Node, name, value string) (found []*html.Node) {
	for n := range doc.Descendants() {
		for _, a := range n.Attr {
			if a.Key == name && (value == "" || a.Val == value) {
				found = append(found, n)
			}
		}
	}
	return found
}

func attr(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

func text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return b.String()
}

// whole holds a section to its parts: each stands in it as it would be written anew.
func whole(t *testing.T, l *page.Live) {
	t.Helper()
	made := l.HTML()
	seen := map[string]bool{}
	for _, p := range l.Parts() {
		assert.Contains(t, made, p.HTML, p.Name)
		assert.Contains(t, made, ` data-part="`+p.Name+`"`, "there is a place for it")
		assert.False(t, seen[p.Name], "%s stands twice", p.Name)
		seen[p.Name] = true
	}
	for _, n := range all(parsed(t, l), "data-part", "") {
		switch name := attr(n, "data-part"); name {
		case "said", "started", "memory", "head": // written by the program, or never anew
		default:
			assert.True(t, seen[name], "nothing brings %s up to date", name)
		}
	}
}

func TestTablesOfASheet(t *testing.T) {
	l := page.NewLive(demo(), "demo", metric)
	whole(t, l)
	doc := parsed(t, l)
	tables := all(doc, "data-table", "")
	require.Len(t, tables, 1, "one with no rows is not shown")
	var heads, first, right []string
	for n := range tables[0].Descendants() {
		switch {
		case attr(n, "scope") == "col":
			heads = append(heads, text(n)+" "+attr(n, "class"))
		case attr(n, "scope") == "row":
			first = append(first, text(n))
		case attr(n, "class") == "num":
			right = append(right, text(n))
		}
	}
	assert.Equal(t, []string{"Mark ", "Count num", "Size num", "Where "}, heads)
	assert.Equal(t, []string{"A<1>", "A2"}, first)
	assert.Equal(t, []string{"12", "300 mm", "3", "150 mm"}, right)
	scroll := all(tables[0], "tabindex", "0")
	require.Len(t, scroll, 1)
	assert.Equal(t, "region", attr(scroll[0], "role"))
	assert.Equal(t, "Cuts", text(all(doc, "id", attr(scroll[0], "aria-labelledby"))[0]))

	buttons := all(doc, "data-puts", "")
	require.Len(t, buttons, 1)
	l.Put(attr(buttons[0], "data-puts"))
	assert.InDelta(t, 38.1, value(t, l, "side")/1000, 1e-9, "1 1/2 in is 38.1 mm, by definition")
	assert.Equal(t, "wall,open", l.Field("edges"))
	assert.Equal(t, "38.1 mm", l.Field("side"))
	whole(t, l)
}

func TestFurtherDrawings(t *testing.T) {
	l := page.NewLive(demo(), "demo", metric)
	var titles []string
	ids := map[string]bool{}
	for n := range parsed(t, l).Descendants() {
		if n.Data == "figcaption" {
			titles = append(titles, text(n))
		}
		if id := attr(n, "id"); id != "" {
			assert.False(t, ids[id], "%s stands twice", id)
			ids[id] = true
		}
	}
	assert.Equal(t, []string{"First First drawing.", "Second Another drawing.", "Third Another drawing."}, titles)
}

func TestToolsWriteFields(t *testing.T) {
	l := page.NewLive(demo(), "demo", metric)
	link := l.Link()
	l.Type("grow.times", "25,4 mm")
	assert.True(t, l.Invalid("grow.times"))
	assert.False(t, l.Stale(), "what a tool is asked is no part of the entry")
	l.Use("grow")
	assert.Equal(t, link, l.Link(), "what cannot be read changes nothing")
	l.Type("grow.times", "1 in")
	assert.Equal(t, link, l.Link(), "nor does typing alone")
	assert.False(t, l.Touched())
	l.Use("grow")
	assert.InDelta(t, 325.4, value(t, l, "side")/1000, 1e-9)
	assert.Equal(t, "325.4 mm", l.Field("side"))
	assert.Equal(t, "Longer by 25.4 mm.", part(t, l, "used-grow"))
	whole(t, l)

	l.Type("grow.times", "600 mm")
	l.Use("grow")
	assert.InDelta(t, 325.4, value(t, l, "side")/1000, 1e-9)
	assert.Contains(t, part(t, l, "note-grow.times"), "Too much.")
	assert.Contains(t, part(t, l, "used-grow"), "Not at all.", "what no field can show")
	assert.NotContains(t, part(t, l, "used-grow"), "Longer by", "what it said before is over")

	l.Use("small")
	l.Use("large")
	assert.Equal(t, "A large one it is.", part(t, l, "tools-side"), "the button pressed last")
	assert.Equal(t, "2 m", l.Field("side"))
	whole(t, l)
	folds := all(parsed(t, l), "data-tool", "")
	require.Len(t, folds, 1, "bare buttons do not fold")
	assert.Equal(t, "details", folds[0].Data)
}

func TestAChoiceForEach(t *testing.T) {
	l := page.NewLive(demo(), "demo", us)
	assert.Empty(t, part(t, l, "each-edges"), "one is for all")
	tiles := all(parsed(t, l), "data-key", "edges")
	require.Len(t, tiles, 3)
	assert.Equal(t, "checked", attr(tiles[0], "checked"))
	l.Type("edges", attr(tiles[2], "value"))
	chosen := func() (names []string) {
		doc := parsed(t, l)
		for i, s := range all(doc, "data-each", "edges") {
			assert.Equal(t, strconv.Itoa(i), attr(s, "data-at"))
			require.Len(t, all(s, "selected", ""), 1)
			names = append(names, attr(all(s, "selected", "")[0], "value"))
		}
		return names
	}
	assert.Equal(t, []string{"open", "open", "open", "open"}, chosen())
	l.PickEach("edges", 1, "wall")
	l.CountEach("edges", 5)
	l.CountEach("edges", 3)
	assert.Equal(t, []string{"open", "wall", "open"}, chosen())
	assert.Equal(t, []string{"open", "wall", "open"}, edges.Of(entryOf(t, l)))
	assert.True(t, l.Checks("edges", "open,open,open,open"), "the tile of one by one is the one that is held")
	l.CountEach("edges", 1)
	assert.Len(t, chosen(), 3, "one alone would be for all")
	l.PickEach("edges", 7, "wall")
	assert.Len(t, chosen(), 3)
	whole(t, l)
}

func entryOf(t *testing.T, l *page.Live) calc.Entry {
	other := page.NewLive(l.Calculator, "other", us)
	require.True(t, other.Load(l.Link()))
	e, problems := l.Calculator.Read(calc.Texts{"edges": l.Field("edges")}, calc.Habit{})
	require.Empty(t, problems)
	return e
}

// Each row of a table has a line of its own in its field.
func TestRowsAreLines(t *testing.T) {
	c := demo()
	holes := calc.Tabulate("holes", "Holes", "1 in,2 in;3 in,4 in;;5 in,6 in", side.Input, side.Input).Grouped()
	c.Inputs = append(c.Inputs, holes.Input)
	l := page.NewLive(c, "demo", us)
	assert.Equal(t, "1 in,2 in\n3 in,4 in\n\n5 in,6 in", l.Field("holes"))
	l.Type("holes", l.Field("holes"))
	assert.False(t, l.Stale())
	assert.Contains(t, l.Link(), "holes=1+in,+2+in;+3+in,+4+in;+;+5+in,+6+in")
}
