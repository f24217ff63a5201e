package glossary_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
			clear(t, term.ID, svg)
		}
	}
	assert.GreaterOrEqual(t, count, 30)
}

var (
	letters = regexp.MustCompile(`<text class="[^"]*" x="([^"]*)" y="([^"]*)" text-anchor="([^"]*)"(?: transform="rotate\(([-0-9.]+)[^"]*")?[^>]*>([^<]*)<`)
	ground  = regexp.MustCompile(`<path class="ground s-[a-z]+" d="([^"]*)"`)
	number  = regexp.MustCompile(`-?[0-9.]+`)
)

// clear fails for letters that lie on a hatch: they cannot be read there. Letters are 13 px high and as wide as the
// drawing counts them, a hatch is as large as the box around it.
func clear(t *testing.T, term, svg string) {
	for _, m := range letters.FindAllStringSubmatch(svg, -1) {
		x, y, long := value(t, m[1]), value(t, m[2]), float64(utf8.RuneCountInString(m[5]))*13*0.6
		require.Equal(t, "middle", m[3])
		x0, x1, y0, y1 := x-long/2, x+long/2, y-10, y+1.0
		if m[4] != "" {
			require.Equal(t, "-90", m[4])
			x0, x1, y0, y1 = x-10, x+1, y-long/2, y+long/2
		}
		for _, g := range ground.FindAllStringSubmatch(svg, -1) {
			at := number.FindAllString(g[1], -1)
			gx0, gx1, gy0, gy1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
			for i := 0; i+1 < len(at); i += 2 {
				px, py := value(t, at[i]), value(t, at[i+1])
				gx0, gx1, gy0, gy1 = min(gx0, px), max(gx1, px), min(gy0, py), max(gy1, py)
			}
			assert.False(t, x0 < gx1 && gx0 < x1 && y0 < gy1 && gy0 < y1, "%s: “%s” lies on a hatch", term, m[5])
		}
	}
}

func value(t *testing.T, text string) float64 {
	n, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return n
}
