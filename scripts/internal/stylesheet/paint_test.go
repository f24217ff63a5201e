package stylesheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/embed"
	"setbook/site"
)

// TestNoColourFallsUnderSevenToOne tries a grid of every wish and holds what comes out to the measure of the style sheet.
func TestNoColourFallsUnderSevenToOne(t *testing.T) {
	shades := []string{"", "#000", "#ffffff", "#777777", "#16478f", "#ffcc00", "#001020", "#e8e8e8", "#b00", "#7f7f80"}
	text, err := site.Style()
	require.NoError(t, err)
	looks, err := Read(string(text))
	require.NoError(t, err)
	for _, look := range []Palette{looks.Light, looks.Dark} {
		tryPaints(t, shades, len(look), map[string]string{"paper": CSS(look["paper"]), "ink": CSS(look["ink"]), "chalk": CSS(look["chalk"])})
	}
}

func tryPaints(t *testing.T, shades []string, count int, own map[string]string) {
	taken, refused := 0, 0
	for _, paper := range shades {
		for _, ink := range shades {
			for _, line := range shades {
				p := embed.Mix(map[string]string{"paper": paper, "ink": ink, "line": line}, own)
				if p.Refused != nil {
					refused++
				}
				if p.Colours == nil {
					continue
				}
				taken++
				require.Len(t, p.Colours, count, "every colour of the palette is set")
				on := func(text, ground string) float64 {
					a, err := Hex(p.Colours[text])
					require.NoError(t, err)
					b, err := Hex(p.Colours[ground])
					require.NoError(t, err)
					return Contrast(a, b)
				}
				for _, ground := range []string{"paper", "field", "wash"} {
					for _, text := range []string{"ink", "soft", "chalk", "edge"} {
						assert.GreaterOrEqual(t, on(text, ground), 7.0, "%s on %s: %s %s %s", text, ground, paper, ink, line)
					}
				}
				assert.GreaterOrEqual(t, on("on-chalk", "chalk"), 7.0)
				assert.GreaterOrEqual(t, on("paper", "ink"), 7.0, "a stop caution is paper on ink")
			}
		}
	}
	assert.Greater(t, taken, 100)
	assert.Greater(t, refused, 100)
}
