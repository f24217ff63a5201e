// Package icon draws Setbook's icon: a paver lying in combed mortar, over one
// blue chalk line. The same shapes are written as SVG and as PNG, so that the two cannot differ.
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

// shapes lists the polygons from the back to the front. All but the ground stay
// in the middle circle of 0.4 times the side, which a launcher may cut out.
func (c Colours) shapes() []shape {
	all := []shape{box(c.Paper, 0, 0, Grid, Grid)}
	// The paver: an outline with a hatch of two strokes at 45 degrees, as stone is hatched.
	all = append(all,
		box(c.Ink, 16, 30, 80, 50),
		box(c.Paper, 19.5, 33.5, 76.5, 46.5))
	for _, x := range []float32{26, 40, 54} {
		all = append(all, shape{c.Ink, [][2]float32{{x, 46.5}, {x + 13, 33.5}, {x + 16, 33.5}, {x + 3, 46.5}}})
	}
	// The ridges that a square notch leaves.
	for _, x := range []float32{18, 32, 46, 60, 74} {
		all = append(all, box(c.Ink, x-1, 50, x+5, 58))
	}
	// The chalk line, with the little sag of a line not yet drawn tight left out: it is snapped.
	return append(all, box(c.Chalk, 13, 62, 83, 67))
}

func hex(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// SVG writes the icon as an SVG file. Zoom above 1 enlarges the middle: an icon that is never cut to a
// circle can fill its square better.
func (c Colours) SVG(zoom float32) []byte {
	var b strings.Builder
	side := Grid / zoom
	corner := (Grid - side) / 2
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="%g %g %g %g">`+"\n", corner, corner, side, side)
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

// PNG draws the icon with sides of so many pixels, enlarged as SVG does.
func (c Colours) PNG(side int, zoom float32) ([]byte, error) {
	img := image.NewNRGBA(image.Rect(0, 0, side, side))
	scale := float32(side) / Grid * zoom
	shift := float32(side) * (1 - zoom) / 2
	for _, s := range c.shapes() {
		r := vector.NewRasterizer(side, side)
		for i, p := range s.points {
			x, y := p[0]*scale+shift, p[1]*scale+shift
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
