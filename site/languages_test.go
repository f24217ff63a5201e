package site

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc/all"
	"setbook/calc/languages"
	"setbook/calc/words"
)

// fragments are the parts of a language's messages, between their placeholders, that are long enough to be
// told from a name or a symbol and are not the same in the other language.
func fragments(of func(m, own words.Msg) (words.Msg, words.Msg), l *words.Language) (list []string) {
	seen := map[string]bool{}
	for m, own := range l.Say {
		text, other := of(m, own)
		for _, part := range placeholder.Split(string(text), -1) {
			part = strings.TrimSpace(part)
			if len(part) >= 14 && strings.Contains(part, " ") && !seen[part] && !strings.Contains(string(other), part) {
				seen[part] = true
				list = append(list, part)
			}
		}
	}
	return list
}

var placeholder = regexp.MustCompile(`\{[^}]*\}`)

// textOf is every text of a page that a person reads or hears, but for what is marked as of another language.
func textOf(t *testing.T, page []byte, tag string) string {
	doc, err := html.Parse(strings.NewReader(string(page)))
	require.NoError(t, err)
	var b strings.Builder
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		for _, a := range n.Attr {
			if a.Key == "lang" && a.Val != tag {
				return
			}
			if spoken[a.Key] {
				b.WriteString(a.Val + "\n")
			}
		}
		if n.Type == html.TextNode && n.Parent.Data != "script" {
			b.WriteString(strings.Join(strings.Fields(n.Data), " ") + "\n")
		}
		for c := range n.ChildNodes() {
			walk(c)
		}
	}
	walk(doc)
	return b.String()
}

// No page in another language has English left on it, and no English page a word of another: each page, as it is
// served, is searched for every piece of every message.
func TestNoOtherLanguageOnAPage(t *testing.T) {
	for _, l := range languages.All[1:] {
		english := fragments(func(m, own words.Msg) (words.Msg, words.Msg) { return m, own }, l)
		own := fragments(func(m, own words.Msg) (words.Msg, words.Msg) { return own, m }, l)
		require.Greater(t, len(english), 1000)
		for _, on := range []*words.Language{words.English, l} {
			r := Reader()
			r.Language = on
			pages, err := Pages(all.Calculators(), r, languages.All, Assets{}, "/")
			require.NoError(t, err)
			foreign := own
			if on == l {
				foreign = english
			}
			for _, p := range pages {
				text := textOf(t, p.HTML, on.Tag)
				require.Greater(t, len(text), 100, p.Path)
				for _, f := range foreign {
					if strings.Contains(text, f) {
						assert.Fail(t, "a piece of another language", "%s: %s", p.Path, f)
					}
				}
			}
		}
	}
}
