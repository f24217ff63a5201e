package page_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var atX = calc.Ask("x", "x", "Across", unit.InchMM, -10*unit.Metre, 10*unit.Metre, "100 mm")
var atY = calc.Ask("y", "y", "Up", unit.InchMM, -10*unit.Metre, 10*unit.Metre, "50 mm")

// pulled is a calculator whose drawing is 3 m by 2 m, and is moved to where it is dragged.
func pulled(long bool) *calc.Calculator {
	metric := unit.Style{System: unit.Metric}
	return &calc.Calculator{ID: "pulled", Title: "Pulled", Asks: "Where?", Inputs: []*calc.Input{atX.Input, atY.Input}, Long: long,
		Work: func(e calc.Entry, s *calc.Sheet) {
			calc.Gives(s, "x", "Across", atX.Of(e), unit.InchMM).First()
			s.Drawing.Title = "Plan"
			s.Drawing.Box(calc.Paver, 0, 0, 3*unit.Metre, 2*unit.Metre)
		},
		Drag: func(now calc.Entry, by calc.Point) calc.Texts {
			return calc.Texts{"x": atX.Written(float64(atX.Of(now)+by.X), metric), "y": atY.Written(float64(atY.Of(now)+by.Y), metric)}
		}}
}

// view is how the drawing stands on a screen, and how many px of it the box of 3 m is wide: told by the path drawn.
func view(t *testing.T, l *page.Live, wide, high float64) (v page.View, box float64) {
	made := part(t, l, "drawing")
	find := func(pattern string) string {
		m := regexp.MustCompile(pattern).FindStringSubmatch(made)
		require.Len(t, m, 2, pattern)
		return m[1]
	}
	v = page.View{Scale: find(`data-scale="([^"]*)"`), Box: find(`viewBox="([^"]*)"`), Wide: wide, High: high}
	corner, err := strconv.ParseFloat(find(`class="line s-paver" [^>]*d="M0 0L([\d.]+) 0`), 64)
	require.NoError(t, err)
	size := strings.Fields(v.Box)
	w, _ := strconv.ParseFloat(size[2], 64)
	h, _ := strconv.ParseFloat(size[3], 64)
	return v, corner * math.Min(wide/w, high/h)
}

// A way on the screen becomes a length at the drawing's own scale, whatever size the screen gives it.
func TestADragGoesByTheScaleOfTheDrawing(t *testing.T) {
	for _, size := range [][2]float64{{360, 400}, {900, 300}, {1, 1}} {
		l := page.NewLive(pulled(false), "pulled", metric)
		v, box := view(t, l, size[0], size[1])
		l.Grab(10, 20)
		l.Drag(v, 10+box/3, 20+box/6)
		l.Drop()
		assert.Equal(t, "100 mm", l.Field("x"), "it is not dragged before the button is pressed")
		l.Dragging(true)
		l.Grab(10, 20)
		l.Drag(v, 10+box/3, 20+box/6)
		assert.Contains(t, part(t, l, "drag"), "Moved 1000 mm to the right, −500 mm up.")
		assert.Equal(t, "100 mm", l.Field("x"), "not before it is let go")
		l.Drop()
		assert.InDelta(t, 1100, value(t, l, "x")/1000, 0.05, "a third of 3 m")
		y, _ := atY.Value(l.Field("y"), calc.Habit{Decimal: '.'})
		assert.InDelta(t, -450, y/1000, 0.05, "down on the screen is down in the drawing")
		link := l.Link()
		l.Drop()
		assert.Equal(t, link, l.Link(), "a finger that was let go before moves nothing")
		whole(t, l)
	}
}

func TestALittleStrayingIsNoDrag(t *testing.T) {
	l := page.NewLive(pulled(false), "pulled", metric)
	v, box := view(t, l, 300, 300)
	l.Dragging(true)
	link := l.Link()
	l.Grab(10, 20)
	l.Drag(v, 10+box/6000, 20)
	l.Drop()
	l.Drop()
	assert.Equal(t, link, l.Link())
	l.Grab(10, 20)
	l.Drag(v, 10+box, 20)
	l.LetGo()
	l.Drop()
	assert.Equal(t, link, l.Link(), "a finger that the browser took away")
	for _, bad := range []page.View{{}, {Scale: v.Scale, Box: v.Box}, {Scale: "x", Box: v.Box, Wide: 1, High: 1}, {Scale: v.Scale, Box: "0 0 0 0", Wide: 1, High: 1}} {
		l.Grab(0, 0)
		l.Drag(bad, 100, 100)
		l.Drop()
		assert.Equal(t, link, l.Link())
	}
}

func TestArrowKeysNudge(t *testing.T) {
	for r, want := range map[*words.Reader][2]float64{&metric: {101, 60}, &us: {100 + 25.4/16, 50 + 25.4*10/16}} {
		l := page.NewLive(pulled(false), "pulled", *r)
		l.Nudge(1, 0, false)
		assert.False(t, l.Touched(), "not before the button is pressed")
		l.Dragging(true)
		l.Nudge(1, 0, false)
		l.Nudge(0, 1, true)
		assert.InDelta(t, want[0], value(t, l, "x")/1000, 0.001)
		y, _ := atY.Value(l.Field("y"), calc.Habit{Decimal: '.', System: r.Style.System})
		assert.InDelta(t, want[1], y/1000, 0.001)
	}
}

// Where the calculator is worked out beside the page, so is the move: the fields follow with the answer.
func TestADragBesideThePage(t *testing.T) {
	c := pulled(true)
	l := page.MountAside(c, "pulled", metric)
	aside := page.Aside{Language: words.English, Find: func(string) (*calc.Calculator, bool) { return c, true }}
	l.Dragging(true)
	l.Nudge(1, 0, true)
	assert.Equal(t, "100 mm", l.Field("x"))
	ask, ok := l.Ask()
	require.True(t, ok)
	l.Take(aside.Answer(ask, onward))
	assert.Equal(t, "110 mm", l.Field("x"))
	assert.Contains(t, l.Link(), "x=110+mm")
	assert.Contains(t, parts(l)["answers"], "110 mm")
	l.Type("y", "60 mm")
	ask, _ = l.Ask()
	l.Take(aside.Answer(ask, onward))
	assert.Equal(t, "110 mm", l.Field("x"), "it is moved once")
}

// A drawing that is not dragged has no switch.
func TestNoSwitchWithoutADrag(t *testing.T) {
	assert.NotContains(t, page.NewLive(demo(), "demo", metric).HTML(), `data-do="drag"`)
}

// A button that moves the drawing does what a drag by the same vector does, on the page and beside it.
func TestAButtonMovesTheDrawing(t *testing.T) {
	place := calc.Ask("place", "x", "Place", unit.InchMM, 0, 100*unit.Inch, "10 in")
	c := &calc.Calculator{ID: "moved", Title: "Moved", Asks: "Where is it?", Inputs: []*calc.Input{place.Input},
		Tools: []*calc.Tool{{Key: "along", At: "place", Title: "Along", Moves: calc.Point{X: 2 * unit.Inch}}},
		Drag: func(now calc.Entry, by calc.Point) calc.Texts {
			return calc.Texts{"place": place.Written(float64(place.Of(now)+by.X), unit.Style{System: unit.US})}
		},
		Work: func(e calc.Entry, s *calc.Sheet) {
			calc.Works(s, "Place.", "X", place.Of(e), unit.InchMM, "x", source.ByDefinition)
			calc.Gives(s, "place", "Place", place.Of(e), unit.InchMM).First()
			s.Drawing.Title = "Place"
			s.Drawing.Box(calc.Paver, place.Of(e), 0, unit.Inch, unit.Inch)
		}}
	l := page.NewLive(c, "moved", us)
	l.Use("along")
	assert.Equal(t, "12 in", l.Field("place"))
	assert.Equal(t, float64(12*unit.Inch), value(t, l, "place"))
	assert.Contains(t, part(t, l, "tools-place"), "2 in to the right")

	c.Long = true
	beside := page.Aside{Find: func(string) (*calc.Calculator, bool) { return c, true }}
	far := page.MountAside(c, "moved", us)
	far.Use("along")
	assert.Equal(t, "10 in", far.Field("place"), "nothing is worked on the page")
	ask, ok := far.Ask()
	require.True(t, ok)
	far.Take(beside.Answer(ask, func(int, int) bool { return true }))
	assert.Equal(t, "12 in", far.Field("place"))
}
