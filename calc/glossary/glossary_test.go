package glossary_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/glossary"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Every term has its own place on the page, at least one whole sentence and a drawing with something in it, and says
// of nothing that it is safe.
func TestTerms(t *testing.T) {
	seen, count := map[string]bool{}, 0
	place := regexp.MustCompile(`^[a-z]+$`)
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}
	for _, g := range glossary.Groups() {
		assert.NotEmpty(t, g.Title)
		for _, term := range g.Terms {
			count++
			assert.Regexp(t, place, term.ID)
			assert.False(t, seen[term.ID], term.ID)
			seen[term.ID] = true
			assert.True(t, strings.HasSuffix(string(term.Means), "."), term.ID)
			assert.NotRegexp(t, `(?i)\bsafe\b`, string(term.Means))
			d := calc.Drawing{Title: term.Name, Says: words.Line{Msg: term.Means}}
			term.Draw(&d)
			assert.NotEmpty(t, d.Shapes, term.ID)
			svg := draw.SVG(&d, term.ID, r)
			assert.Contains(t, svg, "<path", term.ID)
			assert.NotContains(t, svg, "NaN")
		}
	}
	assert.GreaterOrEqual(t, count, 30)
}
