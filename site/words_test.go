package site

import (
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/glossary"
	"setbook/calc/words"
)

var (
	action = regexp.MustCompile(`\{\{.*?\}\}`)
	letter = regexp.MustCompile(`\pL`)
	called = regexp.MustCompile(`\{\{word \$?\.W\.(\w+)\}\}`)
)

// spoken are the attributes that a person sees or hears.
var spoken = map[string]bool{"title": true, "alt": true, "placeholder": true, "aria-label": true, "aria-description": true, "value": true, "label": true, "data-failed": true}

// plain finds words that stand in a template themselves.
func plain(t *testing.T, template string) []string {
	t.Helper()
	doc, err := html.ParseWithOptions(strings.NewReader(action.ReplaceAllString(template, "")), html.ParseOptionEnableScripting(false))
	require.NoError(t, err)
	var found []string
	for n := range doc.Descendants() {
		if n.Type == html.TextNode && letter.MatchString(n.Data) {
			found = append(found, strings.TrimSpace(n.Data))
		}
		for _, a := range n.Attr {
			if spoken[a.Key] && letter.MatchString(a.Val) {
				found = append(found, a.Val)
			}
		}
	}
	return found
}

func TestNoWordStandsInATemplate(t *testing.T) {
	text, err := files.ReadFile("shell.html")
	require.NoError(t, err)
	assert.Empty(t, plain(t, string(text)))
	assert.Equal(t, []string{"Contents", "Units"}, plain(t, `<p>{{.X}} Contents</p><div aria-label="Units"></div>`))
}

// TestEveryPhraseIsSaidAndUsed: no phrase is empty, and none is left over.
func TestEveryPhraseIsSaidAndUsed(t *testing.T) {
	text, err := files.ReadFile("shell.html")
	require.NoError(t, err)
	used := map[string]bool{"TitleOf": true, "Intro": true, "AboutDoes": true, "Job": true, "JobSays": true} // by the code, not by a template
	for _, m := range called.FindAllStringSubmatch(string(text), -1) {
		used[m[1]] = true
	}
	v := reflect.ValueOf(shell)
	for i := range v.NumField() {
		name := v.Type().Field(i).Name
		assert.NotEmpty(t, v.Field(i).String(), name)
		assert.True(t, used[name], "%s is said nowhere", name)
	}
}

// figure reports whether an element prints a dimension: a number and the symbol of its unit, in no language.
func figure(n *html.Node) bool {
	for _, a := range n.Attr {
		if a.Key == "class" && strings.Contains(a.Val, "dim-text") {
			return true
		}
	}
	return false
}

var tags = regexp.MustCompile(`<[^>]*>`)

// TestAnotherLanguage renders the pages for a reader of a language that marks each phrase, and looks for
// a phrase that came through in English.
func TestAnotherLanguage(t *testing.T) {
	own := map[words.Msg]words.Msg{}
	mark := func(m words.Msg) { own[m] = "¤" + words.Msg(strings.ReplaceAll(string(m), " ", "¤")) }
	v := reflect.ValueOf(shell)
	for i := range v.NumField() {
		mark(v.Field(i).Interface().(words.Msg))
	}
	for _, a := range asides {
		mark(a.Title)
		mark(a.Asks)
	}
	for _, g := range glossary.Groups() {
		mark(g.Title)
		for _, t := range g.Terms {
			mark(t.Name)
			mark(t.Means)
			var d calc.Drawing
			t.Draw(&d)
			for _, shape := range d.Shapes {
				mark(shape.Label.Msg)
			}
		}
	}
	for _, m := range counterWords() {
		mark(m)
	}
	r := Reader()
	r.Language = &words.Language{Tag: "xx", Say: own}
	pages, err := Pages(nil, r, nil, Assets{}, "/")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(pages), 3)
	for _, p := range pages {
		doc, err := html.Parse(strings.NewReader(string(p.HTML)))
		require.NoError(t, err)
		for n := range doc.Descendants() {
			if n.Type == html.TextNode && letter.MatchString(n.Data) && !figure(n.Parent) && n.Parent.Data != "code" {
				for _, word := range strings.Fields(tags.ReplaceAllString(n.Data, "")) { // what is for a page without scripts parses as text
					assert.Contains(t, word, "¤", "%s: %s", p.Path, n.Data)
				}
			}
			for _, a := range n.Attr {
				if spoken[a.Key] && a.Val != "" {
					assert.True(t, strings.HasPrefix(a.Val, "¤"), "%s: %s=%q", p.Path, a.Key, a.Val)
				}
			}
		}
		assert.Contains(t, string(p.HTML), `<html lang="xx"`)
	}
}
