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

var (
	reading  = calc.Ask("reading", "", "Reading", unit.InchMM, -unit.Metre, 3*unit.Metre, "10 mm")
	readings = calc.Gridded("grid", "Heights", "10 mm,20;30,40", reading.Input)
)

// slab gives how many readings there are and their sum.
func slab(long bool) *calc.Calculator {
	return &calc.Calculator{ID: "slab", Title: "Slab", Asks: "How high?", Inputs: []*calc.Input{readings.Input}, Long: long,
		Work: func(e calc.Entry, s *calc.Sheet) {
			count, sum := 0, unit.Length(0)
			for _, row := range readings.Of(e) {
				for _, h := range row {
					if h == h {
						count++
						sum += unit.Length(h)
					}
				}
			}
			calc.Gives(s, "count", "Count", unit.Count(count), unit.Whole1).First()
			calc.Gives(s, "sum", "Sum", sum, unit.InchMM)
			s.Warn(calc.Note, source.CommonPractice, "Measure twice.")
			s.Drawing.Box(calc.Paver, 0, 0, 1, 1)
		}}
}

// press presses keys: each sign for itself, words between spaces.
func press(l *page.Live, keys string) {
	for _, k := range strings.Fields(keys) {
		if strings.Contains(" next back none row up down empty mm ft ", " "+k+" ") {
			l.PadPress("grid", k)
			continue
		}
		for _, sign := range strings.Split(k, "") {
			l.PadPress("grid", sign)
		}
	}
}

func current(t *testing.T, l *page.Live) (row, col int, text string) {
	doc, err := html.Parse(strings.NewReader(part(t, l, "pad-grid")))
	require.NoError(t, err)
	at := all(doc, "aria-current", "true")
	require.Len(t, at, 1, "one cell is the one that is written")
	row, _ = strconv.Atoi(attr(at[0], "data-row"))
	col, _ = strconv.Atoi(attr(at[0], "data-col"))
	for c := range at[0].Descendants() {
		text += c.Data
	}
	return row, col, text
}

// A grid is typed cell by cell: the first row tells how long the others are, and then the next cell comes by itself.
func TestTypingOnThePad(t *testing.T) {
	l := page.NewLive(slab(false), "slab", metric)
	press(l, "empty 12.5 mm next 13 next 14 row")
	assert.Equal(t, "12.5mm, 13, 14", l.Field("grid"))
	assert.Contains(t, part(t, l, "padat-grid"), "Row 2, reading 1, in mm")
	press(l, "15 next none 17 next 18 next 9")
	assert.Equal(t, "12.5mm, 13, 14\n15, , 17\n18, 9", l.Field("grid"))
	row, col, shown := current(t, l)
	assert.Equal(t, []int{2, 1}, []int{row, col})
	assert.Equal(t, "9", shown)
	assert.Equal(t, 7.0, value(t, l, "count"))
	assert.InDelta(t, 12.5+13+14+15+17+18+9, value(t, l, "sum")/1000, 1e-9)
	press(l, "back back back")
	row, col, _ = current(t, l)
	assert.Equal(t, []int{2, 0}, []int{row, col}, "back takes a sign back, then goes to the cell before")
	assert.Equal(t, "1", l.Draft("grid"))
	press(l, "up up -7")
	assert.Equal(t, "-7 mm, 13, 14\n15, , 17\n1, ", l.Field("grid"), "a number typed over another keeps its unit")
	press(l, "none")
	assert.Equal(t, ", 13 mm, 14\n15, , 17\n1, ", l.Field("grid"), "a unit outlives the reading that carried it")
	whole(t, l)
}

func TestThePadFollowsTheField(t *testing.T) {
	l := page.NewLive(slab(false), "slab", comma)
	assert.Equal(t, "10 mm", l.Draft("grid"))
	l.Type("grid", "1,5 mm | 2,5\n3,5 | 4")
	assert.Equal(t, "1,5 mm", l.Draft("grid"))
	l.PadAt("grid", 1, 0)
	press(l, "6,5 next")
	assert.Equal(t, "1,5 mm | 2,5\n6,5 | 4", l.Field("grid"))
	l.PadType("grid", "7,25")
	assert.Equal(t, "1,5 mm | 2,5\n6,5 | 7,25", l.Field("grid"))
	assert.InDelta(t, 17.75, value(t, l, "sum")/1000, 1e-9)
	press(l, "next 8 next 9 next")
	row, col, _ := current(t, l)
	assert.Equal(t, []int{3, 0}, []int{row, col}, "a row that is complete is followed by the next")
	l.Example()
	assert.Equal(t, "10 mm", l.Draft("grid"))
	whole(t, l)
}

// Of a large grid only what stands around the cell is shown, its text not at all, and a cell is written when it is left.
func TestALargeGrid(t *testing.T) {
	l := page.NewLive(slab(false), "slab", metric)
	row := strings.TrimSuffix(strings.Repeat("12,", 200), ",")
	require.True(t, l.LoadFile("grid", "survey.csv", strings.Replace(strings.Repeat(row+"\r\n", 300), "12", "12 mm", 1)))
	assert.Equal(t, 60_000.0, value(t, l, "count"))
	assert.Contains(t, part(t, l, "file-grid"), "Loaded: survey.csv. A number without a unit is in mm.")
	made := l.HTML()
	assert.Less(t, len(made), 30_000)
	assert.NotContains(t, made, `<textarea id="slab-grid"`)
	assert.Contains(t, made, "60000 cells in 300 rows are held")
	l.PadAt("grid", 150, 100)
	press(l, "13")
	_, _, shown := current(t, l)
	assert.Equal(t, "13", shown)
	assert.InDelta(t, 720_000, value(t, l, "sum")/1000, 1e-6, "not yet")
	press(l, "next")
	assert.InDelta(t, 720_001, value(t, l, "sum")/1000, 1e-6)
	assert.Less(t, strings.Count(part(t, l, "pad-grid"), "<button"), 100)
	assert.False(t, l.Linkable())
	assert.Contains(t, part(t, l, "linked"), "too long for a link")
	whole(t, l)
	press(l, "empty 5 mm")
	assert.Contains(t, l.HTML(), `<textarea id="slab-grid"`)
	assert.True(t, l.Linkable())
	assert.Empty(t, part(t, l, "linked"))
}

func TestABadFileChangesNothing(t *testing.T) {
	l := page.NewLive(slab(false), "slab", metric)
	l.Type("grid", "12 mm, 13")
	before := parts(l)
	for file, says := range map[string]string{
		"12 mm,13\n14,x\n": "row 2",
		"900 m,1\n":        "It takes from",
		"":                 "holds nothing",
		"1,5;2.5\n3;4":     "cannot both be decimal marks",
	} {
		assert.False(t, l.LoadFile("grid", "a<b>.csv", file))
		after := parts(l)
		assert.Contains(t, after["file-grid"], says)
		assert.Contains(t, after["file-grid"], "a&lt;b&gt;.csv was not taken.")
		delete(after, "file-grid")
		for name, made := range after {
			assert.Equal(t, before[name], made, name)
		}
	}
}

// What is too long to be read on the page and turns out not to be readable is taken back too.
func TestABadFileBeside(t *testing.T) {
	c := slab(true)
	l := page.MountAside(c, "slab", metric)
	aside := page.Aside{Language: words.English, Find: func(string) (*calc.Calculator, bool) { return c, true }}
	work := func() {
		ask, ok := l.Ask()
		require.True(t, ok)
		l.Take(aside.Answer(ask, onward))
	}
	rows := strings.Repeat("12 mm;13,5;14;15;16\n", 5000)
	assert.False(t, l.LoadFile("grid", "good.csv", rows), "not yet")
	assert.Equal(t, "10 mm, 20 mm\n30 mm, 40 mm", l.Field("grid"))
	assert.Contains(t, parts(l)["file-grid"], "Reading good.csv.")
	ask, ok := l.Ask()
	require.True(t, ok)
	l.Address(metric) // something else is asked before the answer is there, which is dropped
	ask, ok = l.Ask()
	require.True(t, ok)
	assert.True(t, l.Take(aside.Answer(ask, onward)), "the fields are to be written anew")
	good, link := parts(l)["main"], l.Link()
	assert.Contains(t, good, "25000")
	assert.Contains(t, parts(l)["file-grid"], "Loaded: good.csv. A number without a unit is in mm.")
	assert.Contains(t, l.File("grid"), "12 mm;13,5;14")
	for file, says := range map[string]string{rows + "x;1\n": "row 5001", rows + "1;2.5\n": "cannot both be decimal marks"} {
		assert.False(t, l.LoadFile("grid", "bad.csv", file))
		work()
		assert.False(t, l.Stale())
		assert.Contains(t, parts(l)["file-grid"], says)
		assert.Contains(t, parts(l)["file-grid"], "bad.csv was not taken.")
		assert.Equal(t, good, parts(l)["main"])
		assert.Equal(t, link, l.Link())
		assert.Contains(t, l.HTML(), "25000 cells in 5000 rows")
	}
	l.Address(us)
	work()
	assert.Equal(t, good, parts(l)["main"], "it is worked again from what it was")
}

// What is saved is read again as the same grid.
func TestAGridAsAFile(t *testing.T) {
	for _, r := range []words.Reader{us, metric, comma} {
		l := page.NewLive(slab(false), "slab", r)
		l.Load("grid=1/2 in,,1.25;2,3;4")
		other := page.NewLive(slab(false), "slab", r)
		require.True(t, other.LoadFile("grid", "x.csv", l.File("grid")), "%s", l.File("grid"))
		assert.Equal(t, l.Link(), other.Link())
		assert.InDelta(t, 12.7+25.4*(1.25+2+3+4), value(t, other, "sum")/1000, 1e-3)
	}
}
