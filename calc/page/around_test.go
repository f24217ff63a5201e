package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/batch"
	"setbook/calc/bed"
	"setbook/calc/datasheet"
	"setbook/calc/page"
	"setbook/calc/wait"
	"setbook/calc/words"
)

func TestWhatIsSettledStays(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	l.Settle(calc.Texts{"notch": "round", "width": "3/8 in"}, calc.Texts{"area": "200 ft2"}, []string{"hold", "skim"})
	html := l.HTML()
	assert.NotContains(t, html, `data-key="width"`, "what is fixed is not asked for")
	assert.NotContains(t, html, `data-key="notch"`)
	assert.NotContains(t, html, `data-key="hold"`, "nor what is hidden")
	assert.Contains(t, html, `data-key="area"`)
	assert.Contains(t, html, "Round-bottomed", "what is fixed is shown")
	assert.Contains(t, html, "Set by this page", "and what is hidden is told, since the answers rest on it")
	assert.Contains(t, html, "Angle of the trowel to the slab")
	assert.False(t, l.Touched(), "a visitor has typed nothing yet")

	l.Type("width", "1/2 in")
	assert.Equal(t, "3/8 in", l.Field("width"))
	l.Load("width=1/2 in&notch=vee&area=300 ft2")
	assert.Equal(t, "3/8 in", l.Field("width"), "whatever is loaded")
	assert.Equal(t, "round", l.Field("notch"))
	assert.Equal(t, "300 ft2", l.Field("area"))
	assert.True(t, l.Touched())
	l.Put("width=1/4+in&hold=60+deg")
	assert.Equal(t, "3/8 in", l.Field("width"), "and whatever a button writes")
	l.Example()
	assert.Equal(t, "200 ft2", l.Field("area"), "back to what the page has set")
	assert.False(t, l.Touched())
}

// A fault at a field that is not there is told at the top.
func TestAFaultOfAHiddenFieldIsTold(t *testing.T) {
	l := page.NewLive(&batch.Calculator, "batch", us)
	l.Settle(nil, nil, []string{"liquid_min"})
	l.Load("liquid_min=9 qt&liquid_max=5 qt")
	require.True(t, l.Stale())
	l.Settle(nil, calc.Texts{"powder": "x"}, []string{"powder"})
	assert.Contains(t, part(t, l, "state"), "Powder to mix now")
}

func sheet(t *testing.T) *datasheet.Sheet {
	t.Helper()
	s, problems := datasheet.Read("product,type,bag,liquid,liquid_min,liquid_max,foot_time,grout_time,times_at\n" +
		"Greyline Bed 20,mortar,20 kg,5.5 L,5.1 L,5.9 L,16 h,24 h,23 C\nHarrow Flex,mortar,50 lb,5.2 qt,4.8 qt,5.5 qt,,,\n")
	require.Empty(t, problems)
	return s
}

func TestAProductFillsTheFieldsAndSaysWhereEachCameFrom(t *testing.T) {
	l := page.NewLive(&batch.Calculator, "batch", us)
	assert.NotContains(t, l.HTML(), "data-product")
	require.True(t, l.Shelve(sheet(t)))
	assert.Contains(t, l.HTML(), ">Harrow Flex</option>")
	l.Product(1)
	assert.False(t, l.Stale())
	for key, text := range map[string]string{"bag": "20 kg", "liquid": "5.5 L"} {
		in := l.Calculator.Input(key)
		want, _ := in.Value(text, calc.Habit{})
		got, ok := in.Value(l.Field(key), calc.Habit{Decimal: '.'})
		require.True(t, ok)
		assert.InEpsilon(t, want, got, 1e-5, key)
	}
	assert.Contains(t, part(t, l, "note-bag"), "From the data sheet: Greyline Bed 20, Powder in a full bag.")
	assert.NotContains(t, part(t, l, "note-powder"), "data sheet")
	assert.Contains(t, l.HTML(), `<option value="1" selected="selected">`)

	l.Type("bag", "25 kg")
	assert.NotContains(t, part(t, l, "note-bag"), "data sheet", "what is typed over comes from nobody's sheet")
	assert.Contains(t, part(t, l, "note-liquid"), "data sheet")

	l.Product(2)
	assert.Contains(t, part(t, l, "note-liquid"), "Harrow Flex")
	l.Product(0)
	assert.NotContains(t, strings.Join(notes(l), ""), "From the data sheet")
	assert.Equal(t, "5.2 qt", l.Field("liquid"), "the example is back")
}

func TestEachStageIsAChoice(t *testing.T) {
	l := page.NewLive(&wait.Calculator, "wait", us)
	require.True(t, l.Shelve(sheet(t)))
	assert.Contains(t, l.HTML(), "Greyline Bed 20, until grout")
	assert.NotContains(t, l.HTML(), "Harrow Flex", "no times, no choice")
	l.Product(2)
	assert.Equal(t, "24 h", l.Field("bag_time"))
	assert.Contains(t, part(t, l, "note-bag_temp"), "Temperature that the times are for")
}

func notes(l *page.Live) (all []string) {
	for _, p := range l.Parts() {
		if strings.HasPrefix(p.Name, "note-") {
			all = append(all, p.HTML)
		}
	}
	return all
}

func TestTheKeysOfACounter(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	assert.NotContains(t, l.HTML(), `data-do="slip"`)
	l.AtCounter()
	assert.Contains(t, l.HTML(), `data-do="slip"`)
	assert.Contains(t, l.HTML(), `data-do="carry"`)
}

// TestAnIdleTablet: the times are of the clock on the wall, in milliseconds.
func TestAnIdleTablet(t *testing.T) {
	i := page.Idle{After: 60_000}
	clear, left, again := i.Look(5)
	assert.False(t, clear, "nothing was touched")
	assert.Zero(t, left)
	assert.Zero(t, again)
	i.Touched = 1_000_000
	_, left, again = i.Look(1_000_000)
	assert.Zero(t, left)
	assert.EqualValues(t, 40_000, again, "the countdown shows for the last 20 seconds")
	_, left, again = i.Look(1_039_000)
	assert.Zero(t, left)
	assert.EqualValues(t, 1000, again)
	_, left, again = i.Look(1_040_000)
	assert.Equal(t, 20, left)
	assert.EqualValues(t, 1000, again)
	_, left, again = i.Look(1_040_400)
	assert.Equal(t, 20, left)
	assert.EqualValues(t, 600, again)
	clear, left, _ = i.Look(1_059_999)
	assert.False(t, clear)
	assert.Equal(t, 1, left)
	clear, _, _ = i.Look(1_060_000)
	assert.True(t, clear)
	clear, _, _ = i.Look(9_000_000)
	assert.True(t, clear, "also after the device slept")
	clear, left, _ = i.Look(10)
	assert.False(t, clear, "a clock that was set back starts it anew")
	assert.Zero(t, left)
	clear, _, _ = i.Look(60_010)
	assert.True(t, clear)
}

// What is worked beside the page brings the figures of its answers along, for a page around that is told of them.
func TestFiguresComeBackFromBesideThePage(t *testing.T) {
	for _, c := range []*calc.Calculator{&bed.Calculator, &wait.Calculator} { // bounds, and a wait
		l := page.MountAside(c, c.ID, metric)
		l.Settle(nil, nil, nil)
		ask, ok := l.Ask()
		require.True(t, ok)
		aside := page.Aside{Language: words.English, Find: func(string) (*calc.Calculator, bool) { return c, true }}
		l.Take(aside.Answer(ask, onward))
		sameFigures(t, page.NewLive(c, c.ID, metric).Sheet().Answers, l.Sheet().Answers)
	}
}

func sameFigures(t *testing.T, here, there []calc.Answer) {
	t.Helper()
	require.Len(t, there, len(here))
	for i, a := range here {
		got := there[i]
		assert.Equal(t, a.Key, got.Key)
		assert.Equal(t, a.Is.Kind, got.Is.Kind)
		assert.Equal(t, a.Is.Base, got.Is.Base)
		assert.Equal(t, []any{a.Low, a.High, a.HasRange, a.Waits, a.Label}, []any{got.Low, got.High, got.HasRange, got.Waits, got.Label})
		assert.Equal(t, page.Reads(metric, &a), page.Reads(metric, &got))
	}
}
