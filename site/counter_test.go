package site

import (
	"encoding/json"
	"html"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/all"
	"setbook/calc/words"
)

// counterWords are the messages of the pages about a counter.
func counterWords() []words.Msg {
	all := []words.Msg{frameTitle, frameSays, frameNoScript, frameWhole}
	for _, p := range counterPages {
		all = append(all, p.title, p.asks)
		for _, s := range p.parts {
			all = append(append(append(all, s.head), s.says...), s.steps...)
			for _, n := range s.rows {
				all = append(all, n.says.Msg)
				for _, a := range n.says.With {
					if a.Line != nil {
						all = append(all, a.Line.Msg)
					}
				}
			}
		}
	}
	return all
}

func TestNoWordStandsInTheTemplateOfTheCounter(t *testing.T) {
	text, err := counterFiles.ReadFile("counter.html")
	require.NoError(t, err)
	assert.Empty(t, plain(t, string(text)))
}

// TestNobodyIsNamedUnlessSomebodyIs: the list is empty as it comes, and takes nothing but origins.
func TestNobodyIsNamedUnlessSomebodyIs(t *testing.T) {
	list, err := Parents()
	require.NoError(t, err)
	assert.Empty(t, list)
	list, err = Parents("https://shop.example", "http://localhost:8080")
	require.NoError(t, err)
	assert.Equal(t, "https://shop.example http://localhost:8080", list)
	for _, bad := range []string{"*", "https://shop.example/", "shop.example", "https://*.example"} {
		_, err = Parents(bad)
		assert.ErrorContains(t, err, bad)
	}
}

// The message that the page about embedding shows is what the program sends. By hand, for a square notch of 1/2 in at 45° with as much land, nothing skimmed
// on and no hollow: the ridge is 0.5 × sin 45° = 0.35355 in, half of which is the bed, 0.17678 in or 4.4901 mm.
func TestTheMessageShownIsSent(t *testing.T) {
	assert.Empty(t, messageExample(words.Reader{Language: words.English}, nil))
	var got struct {
		Setbook                 int
		Kind, Calculator, Entry string
		Answers                 map[string]struct {
			Value, Low, High float64
			Unit, Text       string
		}
	}
	shown := messageExample(words.Reader{Language: words.English}, all.Calculators())
	require.NoError(t, json.Unmarshal([]byte(shown), &got))
	assert.Equal(t, "answers", got.Kind)
	assert.Equal(t, "bed", got.Calculator)
	assert.Contains(t, got.Entry, "width=1/2+in")
	require.Len(t, got.Answers, 1)
	bed := got.Answers["bed"]
	assert.InDelta(t, 0.0044901, bed.Value, 1e-7)
	assert.Equal(t, "m", bed.Unit)
	assert.Contains(t, bed.Text, "0.1768 in")
	c, _ := all.ByID("bed")
	a, _ := c.Solve(c.Example()).Answer("bed")
	assert.InDelta(t, a.Low*1e-6, bed.Low, 1e-12)
	assert.InDelta(t, a.High*1e-6, bed.High, 1e-12)

	pages, err := Pages(all.Calculators(), words.Reader{Language: words.English}, []*words.Language{words.English}, Assets{}, "/")
	require.NoError(t, err)
	for _, p := range pages {
		if p.Path == "embedding/index.html" {
			assert.Contains(t, html.UnescapeString(string(p.HTML)), shown)
			return
		}
	}
	t.Fatal("no page about embedding")
}
