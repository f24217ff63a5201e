package embed

import (
	"encoding/json"
	"math"
	"net/url"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var english = words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}

func told(lines []words.Line) (texts []string) {
	for _, l := range lines {
		texts = append(texts, english.Line(l))
	}
	return texts
}

// TestASetup is read from a query as a browser writes one: Go's own net/url stands in for it.
func TestASetup(t *testing.T) {
	q := url.Values{"calculator": {"bed"}, "fixed": {"notch=square&width=3/8 in"}, "start": {"area=200 ft2"}, "hide": {"hold, skim"},
		"units": {"metric"}, "theme": {"dark"}, "site-sheet": {"mortars.csv"}, "clear": {"120"}, "ink": {"#111"}}
	s, faults := Read("?"+q.Encode(), all.ByID)
	assert.Empty(t, told(faults))
	assert.Equal(t, "bed", s.Calculator.ID)
	assert.Equal(t, calc.Texts{"notch": "square", "width": "3/8 in"}, s.Fixed)
	assert.Equal(t, calc.Texts{"area": "200 ft2"}, s.Start)
	assert.Equal(t, []string{"hold", "skim"}, s.Hidden)
	assert.Equal(t, "metric", s.Units)
	assert.Equal(t, "dark", s.Theme)
	assert.Equal(t, "mortars.csv", s.Sheet)
	assert.Equal(t, 120, s.Clear)
	assert.Equal(t, map[string]string{"ink": "#111"}, s.Colours)
}

func TestASetupThatCannotBeFollowed(t *testing.T) {
	q := url.Values{"calculator": {"bed"}, "fixed": {"notch=square&width=9 lb"}, "start": {"colour=grey"}, "hide": {"hold,nose"},
		"units": {"old"}, "theme": {"blue"}, "site-sheet": {"../secret.csv"}, "clear": {"5"}, "wide": {"1"}}
	s, faults := Read("?"+q.Encode(), all.ByID)
	assert.Equal(t, []string{
		"The setting “clear” cannot be “5”.",
		"Notch width: “9 lb” is in a unit of another kind. It takes in, ft, yd, mil, µm, mm, cm, m.",
		"There is no input named “nose” to hide.",
		"The setting “site-sheet” cannot be “../secret.csv”.",
		"There is no input named “colour” here. The inputs are: notch, width, depth, land, hold, skim, hollow, area, waste, bag_yield.",
		"The setting “theme” cannot be “blue”.",
		"The setting “units” cannot be “old”.",
		"There is no setting named “wide”.",
	}, told(faults))
	assert.Equal(t, calc.Texts{"notch": "square"}, s.Fixed)
	assert.Empty(t, s.Start)
	assert.Equal(t, []string{"hold"}, s.Hidden)
	assert.Empty(t, s.Units+s.Theme+s.Sheet)
	assert.Zero(t, s.Clear)

	_, faults = Read("", all.ByID)
	assert.Len(t, faults, 1)
	_, faults = Read("?calculator=%3Cscript%3E", all.ByID)
	assert.Len(t, faults, 1)
}

func TestAPlainNameStaysInItsFolder(t *testing.T) {
	for _, good := range []string{"mortars.csv", "A_b-2.json"} {
		assert.True(t, PlainName(good), good)
	}
	for _, bad := range []string{"..", ".hidden.csv", "a/b.csv", `a\b.csv`, "a b.csv", "a%2fb.csv", "http:b.csv", "a?b"} {
		assert.False(t, PlainName(bad), bad)
	}
}

// TestOriginsAreWrittenAsABrowserWritesThem: the list is compared letter by letter with what the browser says, so
// nothing looser may pass.
func TestOriginsAreWrittenAsABrowserWritesThem(t *testing.T) {
	for _, good := range []string{"https://shop.example", "http://localhost:8080", "http://127.0.0.1:3000", "https://a-b.example:8443"} {
		assert.True(t, IsOrigin(good), good)
		u, err := url.Parse(good)
		require.NoError(t, err)
		assert.Equal(t, good, u.Scheme+"://"+u.Host)
	}
	for _, bad := range []string{"", "*", "null", "https://*", "https://", "https://shop.example/", "https://shop.example/x", "shop.example", "HTTPS://shop.example",
		"https://Shop.example", "https://shop.example:443", "http://shop.example:80", "https://shop.example:", "https://shop.example:0", "https://shop.example:99999",
		"https://shop.example:08", "https://user@shop.example", "ftp://shop.example", "https://.example", "https://shop.", "https://a b", "javascript://x", "https://shop.example?x", "https://shop.example#x"} {
		assert.False(t, IsOrigin(bad), bad)
	}
	assert.Equal(t, []string{"https://a.example", "http://localhost:1"}, Origins(" https://a.example * null\nhttp://localhost:1 "))
	assert.Empty(t, Origins(""))
}

var own = map[string]string{"paper": "#fbfaf4", "ink": "#15171a", "chalk": "#16478f"}

func TestColoursThatAreTakenAndRefused(t *testing.T) {
	p := Mix(map[string]string{"paper": "#ffffff", "ink": "#000", "line": "#003366"}, own)
	assert.Empty(t, p.Refused)
	assert.Equal(t, "#ffffff", p.Colours["field"])
	assert.Equal(t, "#003366", p.Colours["chalk"])
	assert.False(t, p.Dark)

	p = Mix(map[string]string{"ink": "#999999"}, own)
	assert.Nil(t, p.Colours)
	assert.Equal(t, []string{"The colour ink #999999 on paper #fbfaf4 has a contrast of 2.7 to 1. Text needs 7 to 1, so the book’s own colour stays."}, told(p.Refused))

	p = Mix(map[string]string{"paper": "#101010", "ink": "#fff"}, own)
	assert.True(t, p.Dark)
	assert.Equal(t, "#ffffff", p.Colours["chalk"], "the book's own line would be lost")

	for _, bad := range []string{"red", "rgb(0,0,0)", "#12", "#00000080", "url(x)", "#ggg", "var(--x)"} {
		assert.Len(t, Mix(map[string]string{"ink": bad}, own).Refused, 1, bad)
	}
}

// TestMessagesHaveOneShape: read back by Go's own reader of JSON, for every calculator.
func TestMessagesHaveOneShape(t *testing.T) {
	type answer struct {
		Value *float64
		Unit  string
		Low   *float64
		High  *float64
		Text  string
	}
	type message struct {
		Setbook    int
		Kind       string
		Calculator string
		Entry      string
		Stale      *bool
		Height     int
		Answers    map[string]answer
	}
	read := func(text string) (m message) {
		t.Helper()
		require.NoError(t, json.Unmarshal([]byte(text), &m), text)
		assert.Equal(t, 1, m.Setbook)
		return m
	}
	assert.Equal(t, message{Setbook: 1, Kind: "ready", Calculator: "bed"}, read(Ready("bed")))
	assert.Equal(t, message{Setbook: 1, Kind: "height", Height: 640}, read(Height(640)))
	for _, c := range all.Calculators() {
		live := page.NewLive(c, c.ID, english)
		m := read(Answers(c.ID, live.Link(), live.Stale(), live.Sheet(), english))
		assert.Equal(t, "answers", m.Kind)
		assert.Equal(t, live.Link(), m.Entry)
		require.NotNil(t, m.Stale)
		assert.False(t, *m.Stale)
		require.Len(t, m.Answers, len(live.Sheet().Answers))
		for _, a := range live.Sheet().Answers {
			value, symbol := a.Is.Kind.SI(a.Is.Base)
			got := m.Answers[a.Key]
			assert.Equal(t, symbol, got.Unit)
			assert.NotEmpty(t, got.Text)
			assert.Equal(t, a.HasRange, got.Low != nil && got.High != nil, "%s.%s", c.ID, a.Key)
			if math.IsInf(value, 0) || math.IsNaN(value) {
				assert.Nil(t, got.Value)
			} else {
				assert.Equal(t, value, *got.Value)
			}
		}
	}
}

func FuzzText(f *testing.F) {
	for _, text := range []string{"", "a\"b\\c\n\x00", "é\u2028👷", "\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		w := &writer{}
		w.text(text)
		var back string
		if err := json.Unmarshal([]byte(w.b.String()), &back); err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		var want string
		made, _ := json.Marshal(text)
		if json.Unmarshal(made, &want); strconv.Quote(back) != strconv.Quote(want) && len(want) == len(back) {
			t.Fatalf("%q reads back as %q", text, back)
		}
	})
}
