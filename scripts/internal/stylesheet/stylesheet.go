// Package stylesheet reads the colours out of the site's style sheet, for the icons and the
// manifest, and measures their contrast.
package stylesheet

import (
	"fmt"
	"image/color"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Palette is the colours of one look by the name of their custom property, without its "--".
type Palette map[string]color.NRGBA

// Looks are the colours in light and in dark.
type Looks struct{ Light, Dark Palette }

var (
	block    = regexp.MustCompile(`(?s)(/\* palette: (\w+) \*/[^{]*)\{([^}]*)\}`)
	property = regexp.MustCompile(`--([\w-]+):\s*#([0-9a-fA-F]{6});`)
)

// Read finds the palettes of a style sheet: the rules that a comment "palette: light" or
// "palette: dark" stands before. A look that is written twice (for the device's preference and for
// the switch) must be the same both times.
func Read(css string) (Looks, error) {
	looks := map[string]Palette{}
	for _, m := range block.FindAllStringSubmatch(css, -1) {
		p := Palette{}
		for _, v := range property.FindAllStringSubmatch(m[3], -1) {
			c, err := Hex(v[2])
			if err != nil {
				return Looks{}, err
			}
			p[v[1]] = c
		}
		if had, twice := looks[m[2]]; twice && !had.equal(p) {
			return Looks{}, fmt.Errorf("the palette %q is written twice and differs", m[2])
		}
		looks[m[2]] = p
	}
	l := Looks{looks["light"], looks["dark"]}
	if len(l.Light) == 0 || len(l.Light) != len(l.Dark) {
		return Looks{}, fmt.Errorf("the palettes hold %d colours in light and %d in dark", len(l.Light), len(l.Dark))
	}
	for name := range l.Light {
		if _, ok := l.Dark[name]; !ok {
			return Looks{}, fmt.Errorf("the colour %q has no dark counterpart", name)
		}
	}
	return l, nil
}

func (p Palette) equal(q Palette) bool {
	if len(p) != len(q) {
		return false
	}
	for name, c := range p {
		if q[name] != c {
			return false
		}
	}
	return true
}

// Hex reads six hexadecimal digits.
func Hex(digits string) (color.NRGBA, error) {
	n, err := strconv.ParseUint(strings.TrimPrefix(digits, "#"), 16, 24)
	return color.NRGBA{uint8(n >> 16), uint8(n >> 8), uint8(n), 255}, err
}

// CSS writes a colour as a style sheet does.
func CSS(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// Contrast is the contrast ratio of two opaque colours, from 1 to 21, as WCAG 2.2 defines it.
// It is not rounded: 4.499 does not meet 4.5.
func Contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance is the relative luminance of WCAG 2.2: 0 for black, 1 for white.
func luminance(c color.NRGBA) float64 {
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

var (
	comment = regexp.MustCompile(`(?s)/\*.*?\*/`)
	printed = regexp.MustCompile(`(?s)@media print \{.*?\n\s*\}\n`)
	named   = regexp.MustCompile(`#[0-9a-fA-F]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\(|\b(?:black|white|red|green|blue|gr[ae]y|silver|navy|yellow|orange|purple)[;,) ]`)
)

// Strays finds colours that stand outside the palettes, and so outside the measure of their contrast. The colours of
// the printed page, black on white, are let be.
func Strays(css string) []string {
	css = block.ReplaceAllString(css, "")
	css = printed.ReplaceAllString(css, "")
	var strays []string
	for _, found := range named.FindAllString(comment.ReplaceAllString(css, ""), -1) {
		strays = append(strays, strings.TrimRight(found, ";,) "))
	}
	return strays
}
