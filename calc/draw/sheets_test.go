package draw_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// plan is a rectangle with a strong line of one metre (or of four feet), dimensioned.
func plan(wide, high, line unit.Length) *calc.Drawing {
	d := &calc.Drawing{Title: "Plan", Says: words.Say("A plan."), Plan: true}
	d.Areas(calc.Outline, [][]calc.Point{{{X: 0, Y: 0}, {X: wide, Y: 0}, {X: wide, Y: high}, {X: 0, Y: high}}})
	d.Line(calc.Strong, calc.Point{X: 0, Y: 0}, calc.Point{X: line, Y: 0})
	d.Dim(calc.Point{X: 0, Y: 0}, calc.Point{X: wide, Y: 0}, -2, unit.Fig(wide, unit.FootMetre))
	return d
}

func printed(t *testing.T, d *calc.Drawing, system unit.System) (screen element, sheets []element, text string) {
	r := words.Reader{Language: words.English, Style: unit.Style{System: system, Decimal: '.'}}
	text = draw.SVG(d, "p", r)
	all := parse(t, "<div>"+text+"</div>")
	return all.Children[0], all.Children[1:], text
}

func value(t *testing.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

// onPaper is how many millimetres of paper a screen path of a sheet's drawing comes to.
func onPaper(t *testing.T, sheet, path element, text string) float64 {
	box := strings.Fields(sheet.attr("viewBox"))
	mm := value(t, strings.TrimSuffix(sheet.attr("width"), "mm")) / value(t, box[2])
	assert.InDelta(t, mm, value(t, strings.TrimSuffix(sheet.attr("height"), "mm"))/value(t, box[3]), 1e-3, "one scale both ways")
	_, after, ok := strings.Cut(text, `<use href="#p-shapes" transform="scale(`)
	require.True(t, ok)
	larger, _, _ := strings.Cut(after, ")")
	wide, _ := size(t, path)
	return wide * value(t, larger) * mm
}

// A metre is as long on paper as the stated scale says, on the largest scale of ISO 5455 (and 1:25) that one sheet
// of A4 or Letter holds. Hand calculations on 178 by 218 mm: 10 ft by 8 ft at 1:16 is 190.5 by 152.4 mm, turned a quarter.
func TestPlanScale(t *testing.T) {
	for _, c := range []struct {
		wide, high, line unit.Length
		system           unit.System
		says             string
		millimetres      float64
	}{
		{1.5 * unit.Metre, unit.Metre, unit.Metre, unit.Metric, "Scale 1:10", 100},
		{2 * unit.Metre, 3 * unit.Metre, unit.Metre, unit.Metric, "Scale 1:20", 50},
		{6 * unit.Metre, 4 * unit.Metre, unit.Metre, unit.Metric, "Scale 1:50", 20},
		{10 * unit.Metre, 8 * unit.Metre, unit.Metre, unit.Metric, "Scale 1:50", 20},
		{12 * unit.Foot, 10 * unit.Foot, 4 * unit.Foot, unit.US, "Scale 1:24 (1/2 in = 1 ft)", 2 * 25.4},
		{10 * unit.Foot, 8 * unit.Foot, 4 * unit.Foot, unit.US, "Scale 1:16 (3/4 in = 1 ft)", 3 * 25.4},
		{20 * unit.Foot, 20 * unit.Foot, 4 * unit.Foot, unit.US, "Scale 1:48 (1/4 in = 1 ft)", 25.4},
		{6 * unit.Foot, 8 * unit.Foot, 4 * unit.Foot, unit.US, "Scale 1:12 (1 in = 1 ft)", 4 * 25.4},
	} {
		screen, sheets, text := printed(t, plan(c.wide, c.high, c.line), c.system)
		require.Len(t, sheets, 1, c.says)
		assert.Equal(t, c.says, find(sheets[0], "plan-scale")[0].Text)
		assert.InDelta(t, c.millimetres, onPaper(t, sheets[0], find(screen, "s-strong")[0], text), 0.02, "%s: half a hundredth of a px on screen, made larger", c.says)
		assert.NotContains(t, text, "style=", "the content security policy takes no style in an element")
	}
}

// The bar that the scale is checked by is as long as its words say.
func TestPlanBar(t *testing.T) {
	_, sheets, text := printed(t, plan(6*unit.Metre, 4*unit.Metre, unit.Metre), unit.Metric)
	assert.Contains(t, text, "The bar is then 40 mm long on the paper.")
	h := number.FindAllString(find(sheets[0], "plan-bar")[0].attr("d"), -1)
	assert.InDelta(t, 40, value(t, h[2])/96*25.4, 0.01)
	assert.Contains(t, text, ">2 m</text>")
}

// What one sheet does not hold at 1:50 is parted among sheets that lap, and every part of the plan is on one of them; a
// place too large even for that is drawn smaller.
func TestPlanSheets(t *testing.T) {
	_, sheets, text := printed(t, plan(25*unit.Metre, 14*unit.Metre, unit.Metre), unit.Metric)
	assert.Equal(t, "Scale 1:50", find(sheets[0], "plan-scale")[0].Text)
	require.Len(t, sheets, 6)
	assert.Contains(t, text, "Sheet 6 of 6")
	reach := map[string]float64{} // how far the sheets show, by axis
	for _, s := range sheets {
		window := s.Children[1]
		if window.attr("width") == "" { // what is referred to
			window = s.Children[2]
		}
		use := window.Children[0]
		for axis, size := range map[string]string{"x": "width", "y": "height"} {
			from := -value(t, use.attr(axis))
			if from > 0.01 {
				assert.LessOrEqual(t, from, reach[axis]-30, "sheets lap by 10 mm")
			}
			reach[axis] = max(reach[axis], from+value(t, window.attr(size)))
		}
	}
	px := 96 / 25.4 / 50 * 1000
	assert.GreaterOrEqual(t, reach["x"], 25*px)
	assert.GreaterOrEqual(t, reach["y"], 14*px)

	_, sheets, _ = printed(t, plan(60*unit.Metre, 60*unit.Metre, unit.Metre), unit.Metric)
	assert.Equal(t, "Scale 1:200", find(sheets[0], "plan-scale")[0].Text, "at 1:100 it takes twelve sheets")
}

// A mark is written where it fits: on the larger drawing on paper, and not on the screen where it would lie over others.
func TestMarks(t *testing.T) {
	d := plan(10*unit.Metre, 8*unit.Metre, unit.Metre)
	d.Mark(calc.Point{X: unit.Metre, Y: unit.Metre}, 600*unit.Millimetre, words.Say("{mark}", words.Text("mark", "A1")))
	screen, sheets, _ := printed(t, d, unit.Metric)
	assert.Len(t, find(screen, "note-text"), 1, "16 px of letters in 18 px")
	require.Len(t, sheets, 1)
	d.Mark(calc.Point{X: unit.Metre, Y: 2 * unit.Metre}, 400*unit.Millimetre, words.Say("{mark}", words.Text("mark", "A2")))
	screen, sheets, _ = printed(t, d, unit.Metric)
	assert.Len(t, find(screen, "note-text"), 1)
	assert.Len(t, find(find(sheets[0], "plan-paper")[0], "note-text"), 2)
}

// Many outlines of one material are one path.
func TestOnePath(t *testing.T) {
	d := &calc.Drawing{Title: "Plan", Says: words.Say("A plan.")}
	var rings [][]calc.Point
	for i := range 100 {
		x := unit.Length(i) * unit.Inch
		rings = append(rings, []calc.Point{{X: x, Y: 0}, {X: x + unit.Inch/2, Y: 0}, {X: x, Y: unit.Inch}})
	}
	d.Areas(calc.Outline, rings)
	d.Areas(calc.Paver, nil)
	svg := parse(t, draw.SVG(d, "s", reader))
	paths := find(svg, "line")
	require.Len(t, paths, 1)
	assert.Equal(t, 100, strings.Count(paths[0].attr("d"), "Z"))
}

// A dimension line stands clear of a wall, and so does its figure: on paper a wall is as deep as it is, and letters are as high as ever. The wall is 0.3 m
// deep at 1:50, that is 6 mm; the line asks to stand 17 px, 4.5 mm, off its near side.
func TestAFigureStandsClearOfAWall(t *testing.T) {
	const wide, high, deep = 6 * unit.Metre, 8 * unit.Metre, 0.3 * unit.Metre
	d := &calc.Drawing{Title: "Plan", Says: words.Say("A plan."), Plan: true}
	d.Areas(calc.Outline, [][]calc.Point{{{X: 0, Y: 0}, {X: wide, Y: 0}, {X: wide, Y: high}, {X: 0, Y: high}}})
	d.Box(calc.Concrete, wide, 0, deep, high)
	d.Dim(calc.Point{X: wide, Y: high}, calc.Point{X: wide, Y: high / 2}, 1.3, unit.Fig(high/2, unit.FootMetre))
	_, sheets, _ := printed(t, d, unit.Metric)
	require.Len(t, sheets, 1)
	assert.Equal(t, "Scale 1:50", find(sheets[0], "plan-scale")[0].Text)
	onPlan := find(sheets[0], "plan-paper")[0]
	outer := float64(wide+deep) / 1000 / 50 * 96 / 25.4
	figure := find(onPlan, "dim-text")[0]
	assert.Contains(t, figure.attr("transform"), "rotate(-90 ")
	assert.Greater(t, value(t, figure.attr("x"))-13, outer, "letters of 13 px, along the wall")
	line := find(onPlan, "dim")
	xs := number.FindAllString(line[len(line)-1].attr("d"), -1)
	assert.Greater(t, value(t, xs[0]), outer+5, "the line is not taken for the wall's edge")
	assert.Less(t, value(t, xs[0]), outer+30, "nor is it far off")
}

// Each sheet of a plan says whose it is and what its letters and lines are; a name too long for it is cut short, and keeps off the number of the sheet.
func TestASheetSaysWhoseItIs(t *testing.T) {
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	d := plan(25*unit.Metre, 14*unit.Metre, unit.Metre)
	d.Says = words.Say("A plan.")
	d.Mark(calc.Point{X: unit.Metre, Y: unit.Metre}, unit.Metre, words.Say("{mark}", words.Text("mark", "A")))
	for _, c := range []struct{ name, title string }{
		{"North terrace · Town", "Plan · North terrace · Town"},
		{strings.Repeat("é", 300), "Plan · " + strings.Repeat("é", 37) + "…"},
	} {
		sheets := parse(t, "<div>"+draw.Of(c.name, d, "p", r)+"</div>").Children[1:]
		require.Len(t, sheets, 6)
		for _, s := range sheets {
			assert.Equal(t, c.title, find(s, "plan-title")[0].Text)
			assert.Equal(t, "A plan. The same letter is the same cut.", find(s, "plan-key")[0].Text)
		}
	}
	_, sheets, _ := printed(t, plan(2*unit.Metre, 3*unit.Metre, unit.Metre), unit.Metric)
	assert.Equal(t, "Plan", find(sheets[0], "plan-title")[0].Text)
	assert.Equal(t, "A plan.", find(sheets[0], "plan-key")[0].Text, "no letters, no word of them")
}

// What a plan says of itself is written in lines that the sheet holds, all of it, above the sheet's lower edge.
func TestTheKeyOfAPlanFits(t *testing.T) {
	d := plan(2*unit.Metre, 3*unit.Metre, unit.Metre)
	d.Says = words.Say(words.Msg(strings.TrimSpace(strings.Repeat("Thick lines are soft joints, chain lines are chalk lines. ", 6))))
	_, sheets, _ := printed(t, d, unit.Metric)
	var all []string
	for _, line := range find(sheets[0], "plan-key") {
		assert.LessOrEqual(t, float64(len(line.Text))*11*0.57, 178/25.4*96, "letters of 11 px, on average not wider than 0.57 of it")
		assert.Less(t, value(t, line.attr("y"))+3, value(t, strings.Fields(sheets[0].attr("viewBox"))[3]))
		all = append(all, line.Text)
	}
	assert.Len(t, all, 4)
	assert.Equal(t, string(d.Says.Msg), strings.Join(all, " "))
}
