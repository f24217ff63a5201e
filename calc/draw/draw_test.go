package draw_test

import (
	"encoding/xml"
	"math"
	"regexp"
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

var reader = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}

type element struct {
	Name     xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func (e element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func parse(t *testing.T, svg string) element {
	var e element
	require.NoError(t, xml.Unmarshal([]byte(svg), &e), svg)
	return e
}

func find(e element, class string) (all []element) {
	if strings.Contains(" "+e.attr("class")+" ", " "+class+" ") {
		all = append(all, e)
	}
	for _, c := range e.Children {
		all = append(all, find(c, class)...)
	}
	return all
}

var number = regexp.MustCompile(`-?[0-9.]+`)

// size is the width and height of a path.
func size(t *testing.T, e element) (w, h float64) {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for i, text := range number.FindAllString(e.attr("d"), -1) {
		v, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		if i%2 == 0 {
			x0, x1 = math.Min(x0, v), math.Max(x1, v)
		} else {
			y0, y1 = math.Min(y0, v), math.Max(y1, v)
		}
	}
	return x1 - x0, y1 - y0
}

func sample() *calc.Drawing {
	d := &calc.Drawing{Title: "A section", Says: words.Say("A slab {wide} wide.", words.Is("wide", 120*unit.Millimetre, unit.InchMM))}
	d.Box(calc.Concrete, 0, 0, 120*unit.Millimetre, 30*unit.Millimetre)
	d.Box(calc.Paver, 10*unit.Millimetre, 30*unit.Millimetre, 60*unit.Millimetre, 20*unit.Millimetre)
	d.Dim(calc.Point{X: 0, Y: 0}, calc.Point{X: 120 * unit.Millimetre, Y: 0}, -2, unit.Fig(120*unit.Millimetre, unit.InchMM))
	d.Dim(calc.Point{X: 0, Y: 0}, calc.Point{X: 0, Y: 30 * unit.Millimetre}, 1, unit.Fig(30*unit.Millimetre, unit.InchMM))
	d.Note(calc.Point{X: 60 * unit.Millimetre, Y: 15 * unit.Millimetre}, calc.Middle, words.Say("slab <&>"))
	return d
}

// Every shape is drawn to the one scale, across and up.
func TestToScale(t *testing.T) {
	svg := parse(t, draw.SVG(sample(), "s", reader))
	wide, high := size(t, find(svg, "s-concrete")[0])
	assert.InDelta(t, 4, wide/high, 0.01, "120 mm by 30 mm")
	wide2, high2 := size(t, find(svg, "s-paver")[0])
	assert.InDelta(t, 2, wide/wide2, 0.01, "120 mm against 60 mm")
	assert.InDelta(t, 1.5, high/high2, 0.01, "30 mm against 20 mm")
}

// A drawing has a title and a description that the picture is labelled by, and its dimensions as text.
func TestTold(t *testing.T) {
	svg := parse(t, draw.SVG(sample(), "s", reader))
	assert.Equal(t, "img", svg.attr("role"))
	told := map[string]string{}
	for _, c := range svg.Children {
		told[c.attr("id")] = c.Text
	}
	assert.Equal(t, "s-title s-says", svg.attr("aria-labelledby"))
	assert.Equal(t, "A section", told["s-title"])
	assert.Equal(t, "A slab 120 mm wide.", told["s-says"])
	var dims []string
	for _, e := range find(svg, "dim-text") {
		dims = append(dims, e.Text)
	}
	assert.Equal(t, []string{"120 mm", "30 mm"}, dims)
	assert.Equal(t, "slab <&>", find(svg, "note-text")[0].Text)
}

// Everything drawn, letters included, lies inside the frame.
func TestNothingCutOff(t *testing.T) {
	svg := parse(t, draw.SVG(sample(), "s", reader))
	var box [4]float64
	for i, text := range strings.Fields(svg.attr("viewBox")) {
		v, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		box[i] = v
	}
	for _, class := range []string{"line", "dim", "arrow"} {
		for _, e := range find(svg, class) {
			for i, text := range number.FindAllString(e.attr("d"), -1) {
				v, err := strconv.ParseFloat(text, 64)
				require.NoError(t, err)
				assert.True(t, box[i%2] <= v && v <= box[i%2]+box[2+i%2], "%s of %s", text, e.attr("d"))
			}
		}
	}
}

// Two drawings on one page share no id.
func TestIDs(t *testing.T) {
	ids := map[string]bool{}
	for _, name := range []string{"a-drawing", "b-drawing"} {
		for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(draw.SVG(sample(), name, reader), -1) {
			assert.False(t, ids[m[1]], m[1])
			ids[m[1]] = true
		}
	}
	assert.NotEmpty(t, ids)
}

// A shape that is not finite is left out, and a drawing of nothing is nothing.
func TestNotFinite(t *testing.T) {
	d := sample()
	d.Box(calc.Water, 0, 0, unit.Length(math.NaN()), unit.Length(math.Inf(1)))
	assert.Equal(t, draw.SVG(sample(), "s", reader), draw.SVG(d, "s", reader))
	assert.Equal(t, "", draw.SVG(&calc.Drawing{}, "s", reader))
	point := &calc.Drawing{}
	point.Box(calc.Paver, 1, 1, 0, 0)
	assert.Equal(t, "", draw.SVG(point, "s", reader))
}

// A dimension too short for its arrows has them outside, and is still written.
func TestShortDimension(t *testing.T) {
	d := sample()
	d.Dim(calc.Point{}, calc.Point{X: unit.Millimetre}, 1, unit.Fig(unit.Millimetre, unit.InchMM))
	svg := draw.SVG(d, "s", reader)
	assert.Contains(t, svg, ">1 mm</text>")
	assert.NotContains(t, svg, "NaN")
}
