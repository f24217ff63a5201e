package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
