package markup_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc/markup"
)

func TestPut(t *testing.T) {
	for _, c := range []struct {
		made   string
		values []string
		want   string
	}{
		{"<p>%</p>", []string{`<img src=x onerror="a('b')">&`}, "<p>&lt;img src=x onerror=&#34;a(&#39;b&#39;)&#34;&gt;&amp;</p>"},
		{`<a href="%" rel="x">%</a>`, []string{`" onclick="x`, "50 %"}, `<a href="&#34; onclick=&#34;x" rel="x">50 %</a>`},
		{`<input value="%" checked="%" id="%">`, []string{"", "", "a"}, `<input value="" id="a">`},
		{`<input value="%" checked="%" id="%">`, []string{"v", "checked", ""}, `<input value="v" checked="checked">`},
		{"<p>%</p>", []string{""}, "<p></p>"},
		{`<i class="a">%</i>`, []string{""}, `<i class="a"></i>`},
		{"<b>%%</b>", []string{"%", "x"}, "<b>%x</b>"},
	} {
		var w markup.Writer
		w.Put(c.made, c.values...)
		assert.Equal(t, c.want, w.String())
	}
}

func TestNumber(t *testing.T) {
	for x, want := range map[float64]string{0: "0", -0.001: "0", 1.5: "1.5", -2.25: "-2.25", 10: "10", 0.126: "0.13"} {
		assert.Equal(t, want, markup.Number(x))
	}
}

// Whatever is put where a value goes stays a value: the markup around it is what it was.
func FuzzPut(f *testing.F) {
	f.Add("a", "b")
	f.Add(`"><script>`, "&lt;")
	f.Fuzz(func(t *testing.T, attribute, text string) {
		var w markup.Writer
		w.Put(`<p class="c" title="%">%</p>`, attribute, text)
		z := html.NewTokenizer(strings.NewReader(w.String()))
		var kinds []html.TokenType
		for z.Next() != html.ErrorToken {
			token := z.Token()
			kinds = append(kinds, token.Type)
			if token.Type == html.StartTagToken {
				for _, a := range token.Attr {
					require.Contains(t, []string{"class", "title"}, a.Key)
				}
			}
		}
		want := []html.TokenType{html.StartTagToken, html.TextToken, html.EndTagToken}
		if text == "" {
			want = []html.TokenType{html.StartTagToken, html.EndTagToken}
		}
		require.Equal(t, want, kinds)
	})
}
