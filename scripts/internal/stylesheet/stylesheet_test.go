package stylesheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/site"
)

func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, err := Hex(a)
	require.NoError(t, err)
	y, err := Hex(b)
	require.NoError(t, err)
	return Contrast(x, y)
}

// TestContrast checks the function against ratios printed by the W3C: A1 in the definition (WCAG 2.2, "contrast ratio": from 1
// to 21), A2 technique G183, A3 G195, A4 G223, A5 G207, A6 understanding 1.4.11, A7 and A8 understanding documents. The W3C rounds
// some of them and cuts others short, hence 0.1 around each.
func TestContrast(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"000000", "ffffff", 21},
		{"3366cc", "000000", 3.9},
		{"ff3838", "ffffff", 3.6},
		{"ca0000", "ffffff", 6},
		{"e3660e", "ffffff", 3.4},
		{"949494", "ffffff", 3},
		{"e5e5e5", "6221ea", 5.6},
		{"fff000", "ffffff", 1.2},
		{"9d9d9d", "ffffff", 2.7},
	} {
		assert.InDelta(t, c.want, contrast(t, c.a, c.b), 0.1, "%s on %s", c.a, c.b)
		assert.Equal(t, contrast(t, c.a, c.b), contrast(t, c.b, c.a))
	}
	// A9 and A10: the lightest greys that meet 4.5 and 7 on white, worked out by hand from the definition.
	assert.InDelta(t, 4.542, contrast(t, "767676", "ffffff"), 0.001)
	assert.InDelta(t, 4.478, contrast(t, "777777", "ffffff"), 0.001)
	assert.InDelta(t, 7.005, contrast(t, "595959", "ffffff"), 0.001)
	// A11: a near miss is a miss.
	assert.Less(t, contrast(t, "777777", "ffffff"), 4.5)
}

// TestColours holds the site's own colours to 7:1 for every text on every ground (WCAG 2.2, 1.4.6, taken as the
// target for a screen in the sun) and to 3:1 for the edges of controls and for hatches (1.4.11).
func TestColours(t *testing.T) {
	css, err := site.Style()
	require.NoError(t, err)
	looks, err := Read(string(css))
	require.NoError(t, err)
	for look, p := range map[string]Palette{"light": looks.Light, "dark": looks.Dark} {
		for _, c := range []struct {
			least float64
			on    []string
			over  []string
		}{
			{7, []string{"ink", "soft", "chalk"}, []string{"paper", "field", "wash"}},
			{7, []string{"on-chalk"}, []string{"chalk"}},
			{7, []string{"paper"}, []string{"ink"}},
			{3, []string{"edge", "hatch"}, []string{"paper", "field"}},
		} {
			for _, on := range c.on {
				for _, over := range c.over {
					a, ok := p[on]
					require.True(t, ok, on)
					b, ok := p[over]
					require.True(t, ok, over)
					assert.GreaterOrEqual(t, Contrast(a, b), c.least, "%s: %s on %s", look, on, over)
				}
			}
		}
	}
}

// TestColoursStandInThePalette keeps every colour where TestColours can see it.
func TestColoursStandInThePalette(t *testing.T) {
	css, err := site.Style()
	require.NoError(t, err)
	assert.Equal(t, []string(nil), Strays(string(css)), "colours written outside the palettes")
	assert.Equal(t, []string{"#123456", "rgb(", "red"}, Strays(`a { color: #123456; background: rgb(1, 2, 3); border: 1px solid red; }`))
}

func TestReadRefuses(t *testing.T) {
	_, err := Read(`/* palette: light */ :root { --ink: #000000; } /* palette: dark */ :root { --ink: #ffffff; } /* palette: dark */ a { --ink: #fffffe; }`)
	assert.ErrorContains(t, err, "differs")
	_, err = Read(`/* palette: light */ :root { --ink: #000000; } /* palette: dark */ :root { --soft: #ffffff; }`)
	assert.ErrorContains(t, err, "no dark counterpart")
	_, err = Read(`:root { --ink: #000000; }`)
	assert.ErrorContains(t, err, "0 colours")
}
