package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/bed"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	us     = words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}
	metric = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	comma  = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: ','}}
)

func part(t *testing.T, l *page.Live, name string) string {
	for _, p := range l.Parts() {
		if p.Name == name {
			return p.HTML
		}
	}
	require.Fail(t, "no part", name)
	return ""
}

func value(t *testing.T, l *page.Live, key string) float64 {
	a, ok := l.Sheet().Answer(key)
	require.True(t, ok)
	return a.Is.Base
}

// A bad text never blanks an answer: the field says what is wrong, the last good answer stays and is marked.
func TestBadInputKeepsTheAnswer(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	l.Type("hold", "90")
	good := value(t, l, "bed")
	assert.InEpsilon(t, float64(unit.Inch/4), good, 1e-12, "a 1/2 in notch with 1/2 in land held upright leaves 1/4 in: geometry")
	l.Type("width", "1/0")
	assert.True(t, l.Stale())
	assert.True(t, l.Invalid("width"))
	assert.False(t, l.Invalid("hold"))
	assert.Equal(t, good, value(t, l, "bed"))
	assert.Contains(t, part(t, l, "state"), "Not worked")
	assert.Contains(t, part(t, l, "main"), "0.25 in")
	assert.Contains(t, part(t, l, "note-width"), "divides by nought")
	assert.Equal(t, "1/0", l.Field("width"), "what was typed stays")
	l.Type("width", "1/2")
	assert.False(t, l.Stale())
}

// A problem that belongs to no field is said in the head.
func TestUnknownKeyIsNamed(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	assert.False(t, l.Load("widht=6 mm"))
	assert.Contains(t, part(t, l, "state"), "widht")
	assert.False(t, l.Load("v=9&width=6 mm"))
	assert.Contains(t, part(t, l, "state"), "newer Setbook")
}

// A metric size that is sold as such stays so for a US reader, where inches would be no size that anybody knows.
func TestSizesAsSold(t *testing.T) {
	for text, want := range map[string]string{"20 mm": "20 mm", "1/2 in": "1/2 in", "12.7 mm": "1/2 in", "25.4 mm": "1 in", "19 mm": "19 mm"} {
		got, ok := bed.Calculator.Input("depth").Offered(text, us.Style)
		assert.True(t, ok)
		assert.Equal(t, want, got)
	}
	got, _ := bed.Calculator.Input("depth").Offered("9/16 in", comma.Style)
	assert.Equal(t, "14,2875 mm", got)
}

// A change of units rewrites the fields and changes no value, there and back.
func TestUnitsThereAndBack(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	l.Type("area", "137.5")
	l.Type("width", "9/16")
	mortar, link := value(t, l, "mortar"), l.Link()
	for range 3 {
		l.Address(metric)
		assert.Equal(t, "14.2875 mm", l.Field("width"))
		assert.Equal(t, "12.7742 m²", l.Field("area"))
		assert.Equal(t, mortar, value(t, l, "mortar"))
		l.Address(comma)
		assert.Equal(t, "14,2875 mm", l.Field("width"))
		assert.Equal(t, mortar, value(t, l, "mortar"))
		l.Address(us)
		assert.Equal(t, "137.5", l.Field("area"))
		assert.Equal(t, mortar, value(t, l, "mortar"))
		assert.Equal(t, link, l.Link())
	}
}

// The link of one page gives the same answers on another.
func TestLinkCarriesTheEntry(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", comma)
	l.Type("width", "12,5")
	l.Type("notch", "vee")
	other := page.NewLive(&bed.Calculator, "bed", us)
	require.True(t, other.Load(l.Link()), l.Link())
	assert.Equal(t, value(t, l, "bed"), value(t, other, "bed"))
	assert.Contains(t, l.Link(), "width=12.5+mm")
	assert.Contains(t, l.Link(), "notch=vee")
}

// A hostile label, unit, value or source is shown as text: no element or attribute comes of it.
func TestHostileText(t *testing.T) {
	const evil = `"><img src=x onerror=alert(1)><script>x</script>`
	ask := calc.Ask("width", "w", evil, unit.InchMM, 0, unit.Inch, "1/2 in").Helped(evil)
	c := &calc.Calculator{ID: "evil", Title: evil, Asks: evil, Inputs: []*calc.Input{ask.Input}, Memory: []words.Msg{evil}, Checked: evil,
		Work: func(e calc.Entry, s *calc.Sheet) {
			cite := &source.Source{Title: evil, Place: evil, URL: "https://example.org/" + evil, Basis: source.Published}
			calc.Works(s, evil, "x", ask.Of(e), unit.InchMM, "w", cite)
			calc.Gives(s, "x", evil, ask.Of(e), unit.InchMM).First()
			s.Warn(calc.Stop, cite, evil)
			s.Drawing.Title, s.Drawing.Says = evil, words.Say(evil)
			s.Drawing.Box(calc.Mortar, 0, 0, 1, 1)
			s.Drawing.Note(calc.Point{}, calc.Middle, words.Say(evil))
		}}
	l := page.NewLive(c, "evil", us)
	l.Type("width", evil)
	require.True(t, l.Stale())
	z := html.NewTokenizer(strings.NewReader(l.HTML()))
	seen := 0
	for z.Next() != html.ErrorToken {
		token := z.Token()
		assert.NotContains(t, []string{"img", "script"}, token.Data)
		for _, a := range token.Attr {
			assert.False(t, strings.HasPrefix(a.Key, "on"), "%s", token)
		}
		if token.Type == html.TextToken && strings.Contains(token.Data, "<img") {
			seen++
		}
	}
	assert.Greater(t, seen, 8, "the texts are there to be read")
}
