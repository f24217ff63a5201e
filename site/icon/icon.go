// Package icon draws Setbook's icon: the ridges of combed mortar under one blue chalk
// line. The same shapes are written as SVG and as PNG, so that the two cannot differ.
package icon

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"strings"

	"golang.org/x/image/vector"
)

// Grid is the side of the square that the shapes are drawn on.
const Grid = 96

// shape is a polygon of one colour.
type shape struct {
	fill   color.NRGBA
	points [][2]float32
}

// Colours are the colours of the icon, taken from the style sheet.
type Colours struct{ Paper, Ink, Chalk color.NRGBA }

func box(fill color.NRGBA, x0, y0, x1, y1 float32) shape {
	return shape{fill, [][2]float32{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}}
}

// shapes lists the polygons from the back to the front. They run off the edges, and what matters stands in
// the middle, so that a launcher may cut the icon to any shape. Neighbours overlap, so that no seam shows between them.
func (c Colours) shapes() []shape {
	all := []shape{
		box(c.Paper, 0, 0, Grid, Grid),
		box(c.Ink, 0, 66, Grid, Grid), // the bed
	}
	// The ridges that a square notch leaves.
	for _, x := range []float32{-6, 18, 42, 66, 90} {
		all = append(all, box(c.Ink, x, 48, x+12, 67))
	}
	// The chalk line, snapped above them.
	return append(all, box(c.Chalk, 0, 26, Grid, 34))
}

func hex(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// SVG writes the icon as an SVG file.
func (c Colours) SVG() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d">`+"\n", Grid, Grid)
	for _, s := range c.shapes() {
		fmt.Fprintf(&b, `<path fill="%s" d="`, hex(s.fill))
		for i, p := range s.points {
			letter := "L"
			if i == 0 {
				letter = "M"
			}
			fmt.Fprintf(&b, "%s%g %g", letter, p[0], p[1])
		}
		b.WriteString("Z\"/>\n")
	}
	b.WriteString("</svg>\n")
	return []byte(b.String())
}

// PNG draws the icon with sides of so many pixels.
func (c Colours) PNG(side int) ([]byte, error) {
	img := image.NewNRGBA(image.Rect(0, 0, side, side))
	scale := float32(side) / Grid
	for _, s := range c.shapes() {
		r := vector.NewRasterizer(side, side)
		for i, p := range s.points {
			x, y := p[0]*scale, p[1]*scale
			if i == 0 {
				r.MoveTo(x, y)
			} else {
				r.LineTo(x, y)
			}
		}
		r.ClosePath()
		r.DrawOp = draw.Over
		r.Draw(img, img.Bounds(), image.NewUniform(s.fill), image.Point{})
	}
	var b bytes.Buffer
	err := png.Encode(&b, img)
	return b.Bytes(), err
}
