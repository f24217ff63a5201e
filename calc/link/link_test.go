package link_test

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/bed"
	"setbook/calc/link"
	"setbook/calc/unit"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text  string
		want  calc.Texts
		fault string // a part of the key of the problem
	}{
		{"", calc.Texts{}, ""},
		{"#v=1&width=1/2+in&depth=6' 3 1/2\"", calc.Texts{"width": "1/2 in", "depth": "6' 3 1/2\""}, ""},
		{"width=1%2F2%20in&&", calc.Texts{"width": "1/2 in"}, ""},
		{"waste=10 %&hold=45%C2%B0", calc.Texts{"waste": "10 %", "hold": "45°"}, ""},
		{"a=b=c", calc.Texts{"a": "b=c"}, ""},
		{"v=2&width=1 in", calc.Texts{"width": "1 in"}, "v"},
		{"width=1 in&width=2 in", calc.Texts{"width": "2 in"}, "width"},
		{"width=%4", calc.Texts{}, "width"},
		{"width", calc.Texts{}, ""},
	} {
		got, problems := link.Parse(c.text)
		assert.Equal(t, c.want, got, c.text)
		switch {
		case c.fault != "":
			require.Len(t, problems, 1, c.text)
			assert.Equal(t, c.fault, problems[0].Key)
		case c.text == "width":
			assert.Len(t, problems, 1)
		default:
			assert.Empty(t, problems, c.text)
		}
	}
}

// Keys left out take the example and the entry says so.
func TestMissingTakesTheExample(t *testing.T) {
	e, problems := link.Read(&bed.Calculator, "width=6 mm", calc.Habit{})
	require.Empty(t, problems)
	assert.False(t, e.Reading("width").Example)
	assert.True(t, e.Reading("depth").Example)
	assert.Equal(t, float64(unit.Inch/2), e.Reading("depth").Base)
}

func TestGatherAndPick(t *testing.T) {
	both := link.Gather([]link.Named{{Name: "bed", Text: "v=1&width=1/2+in"}, {Name: "bed-2", Text: "v=1&width=6+mm"}})
	assert.Equal(t, "bed.v=1&bed.width=1/2+in&bed-2.v=1&bed-2.width=6+mm", both)
	assert.Equal(t, "v=1&width=1/2+in", link.Pick("#"+both, "bed", false))
	assert.Equal(t, "v=1&width=6+mm", link.Pick(both, "bed-2", false))
	assert.Equal(t, "", link.Pick("width=6+mm", "bed", false))
	assert.Equal(t, "width=6+mm", link.Pick("#width=6+mm", "bed", true))
	assert.Equal(t, "v=1&width=6+mm", link.Gather([]link.Named{{Name: "bed", Text: "v=1&width=6+mm"}}))
}

// Whatever text is written into a link comes back, also through the standard library's reader of queries (net/url).
func FuzzRoundTrip(f *testing.F) {
	for _, seed := range []string{"1/2 in", "6' 3 1/2\"", "50 %", "%41", "a+b", "&=#?", "½ ″", "\x00\xff", "%"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		written := link.Escape(text)
		require.NotContains(t, written, "&")
		require.NotContains(t, written, "#")
		require.NotContains(t, written, " ")
		texts, problems := link.Parse("key=" + written)
		require.Empty(t, problems)
		require.Equal(t, text, texts["key"])
		other, err := url.QueryUnescape(written)
		require.NoError(t, err)
		require.Equal(t, text, other)
	})
}

// No link, however broken, does worse than problems in words.
func FuzzParse(f *testing.F) {
	f.Add("v=1&width=1/2+in&depth=%41")
	f.Add("%zz=%&=&&a")
	f.Fuzz(func(t *testing.T, text string) {
		_, problems := link.Read(&bed.Calculator, text, calc.Habit{})
		for _, p := range problems {
			require.NotEmpty(t, strings.TrimSpace(string(p.Says.Msg)))
		}
	})
}
