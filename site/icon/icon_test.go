package icon

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var colours = Colours{
	Paper: color.NRGBA{255, 255, 255, 255},
	Ink:   color.NRGBA{0, 0, 0, 255},
	Chalk: color.NRGBA{0, 0, 255, 255},
}

// TestPNG reads the picture back with the standard library's decoder: its size, that no pixel is see-through (a
// phone may put anything behind), and a pixel inside each shape.
func TestPNG(t *testing.T) {
	for _, side := range []int{180, 192, 512} {
		data, err := colours.PNG(side)
		require.NoError(t, err)
		img, err := png.Decode(bytes.NewReader(data))
		require.NoError(t, err)
		assert.Equal(t, image.Rect(0, 0, side, side), img.Bounds())
		for y := range side {
			for x := range side {
				if _, _, _, a := img.At(x, y).RGBA(); a != 0xffff {
					t.Fatalf("%d px: see-through at %d, %d", side, x, y)
				}
			}
		}
		at := func(x, y int) color.Color {
			return color.NRGBAModel.Convert(img.At(x*side/Grid, y*side/Grid))
		}
		assert.Equal(t, colours.Paper, at(48, 10))
		assert.Equal(t, colours.Chalk, at(48, 30))
		assert.Equal(t, colours.Ink, at(48, 56), "a ridge")
		assert.Equal(t, colours.Paper, at(36, 56), "a furrow")
		assert.Equal(t, colours.Ink, at(36, 80), "the bed")
		again, err := colours.PNG(side)
		require.NoError(t, err)
		assert.Equal(t, data, again)
	}
}

func TestSVGHoldsTheSameShapes(t *testing.T) {
	svg := string(colours.SVG())
	assert.Contains(t, svg, `viewBox="0 0 96 96"`)
	assert.Contains(t, svg, `<path fill="#0000ff" d="M0 26L96 26L96 34L0 34Z"/>`)
	assert.Equal(t, len(colours.shapes()), bytes.Count([]byte(svg), []byte("<path")))
}
