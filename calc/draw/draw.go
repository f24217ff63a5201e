// Package draw turns a sheet's drawing into SVG: to scale, in line and hatch with
// dimension lines, and with a title and a description for those who cannot see it.
package draw

import (
	"math"
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/markup"
	"setbook/calc/words"
)

// Sizes in CSS px at the width of a phone, where the drawing is about life size on the glass.
const (
	wide   = 300.0 // the shapes fit this width
	high   = 280.0 // and this height
	text   = 13.0  // letter height of a dimension
	arrow  = 8.0
	beyond = 4.0      // an extension line passes the dimension line by this much
	most   = 8 * text // no dimension line is moved further off than this
	margin = 6.0
	frame  = 360.0 // the least width of the whole, so that letters come out at their size
)

// SVG writes the drawing. The id must be unique on its page: the title, the description and the hatches
// are named after it. A drawing with a shape that has no size or is not finite is written without that shape.
// Behind a plan follow its sheets for paper, which a screen does not show.
func SVG(d *calc.Drawing, id string, r words.Reader) string { return Of("", d, id, r) }

// Of is SVG, with a name of whatever is drawn on every sheet of a plan: one that has left its job says whose it is.
func Of(name string, d *calc.Drawing, id string, r words.Reader) string {
	s := scene{r: r, id: id, name: name, box: empty, plan: d.Plan}
	if !s.fit(d) {
		return ""
	}
	for i := range d.Shapes {
		s.shape(&d.Shapes[i])
	}
	if d.Plan {
		return s.svg(d) + sheets(d, &s)
	}
	return s.svg(d)
}

// scene is a drawing on its way to the page: its scale, what is drawn so far and how far that reaches.
type scene struct {
	r      words.Reader
	id     string
	name   string  // of what is drawn, for paper
	scale  float64 // px a micrometre
	body   markup.Writer
	over   markup.Writer // dimensions and labels, over the shapes
	used   [calc.Strong + 1]bool
	box    box
	plan   bool  // its shapes are drawn again on paper, at another scale and with lines of the same width
	turned bool  // on paper a quarter to the left
	bare   bool  // shapes are measured and not written: the paper takes those of the screen
	walls  []box // what stands about a plan, which no figure is to be written over
}

type box struct{ x0, y0, x1, y1 float64 }

var empty = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

func (b *box) add(x, y float64) {
	b.x0, b.y0 = math.Min(b.x0, x), math.Min(b.y0, y)
	b.x1, b.y1 = math.Max(b.x1, x), math.Max(b.y1, y)
}

// fit finds the scale at which all shapes fit.
func (s *scene) fit(d *calc.Drawing) bool {
	b := empty
	for i := range d.Shapes {
		for _, ring := range rings(&d.Shapes[i]) {
			for _, p := range ring {
				if finite(p) {
					b.add(float64(p.X), float64(p.Y))
				}
			}
		}
	}
	w, h := b.x1-b.x0, b.y1-b.y0
	if !(w > 0 || h > 0) {
		return false
	}
	s.scale = math.Min(wide/math.Max(w, 1e-9), high/math.Max(h, 1e-9))
	return true
}

func finite(p calc.Point) bool {
	return !math.IsNaN(float64(p.X)) && !math.IsInf(float64(p.X), 0) && !math.IsNaN(float64(p.Y)) && !math.IsInf(float64(p.Y), 0)
}

// at is a point on the page: y runs down there.
func (s *scene) at(p calc.Point) (x, y float64) {
	return float64(p.X) * s.scale, -float64(p.Y) * s.scale
}

// rings are the lines of a shape, one or many.
func rings(shape *calc.Shape) [][]calc.Point {
	if shape.Rings != nil {
		return shape.Rings
	}
	return [][]calc.Point{shape.Points}
}

func (s *scene) shape(shape *calc.Shape) {
	for _, ring := range rings(shape) {
		for _, p := range ring {
			if !finite(p) {
				return
			}
		}
	}
	switch {
	case shape.Dim != nil:
		s.dimension(shape)
	case shape.Label.Msg != "":
		s.label(shape)
	default:
		s.outline(shape)
	}
}

func (s *scene) outline(shape *calc.Shape) {
	if s.bare {
		b := empty
		for _, ring := range rings(shape) {
			for _, p := range ring {
				x, y := s.at(p)
				b.add(x, y)
				s.box.add(x, y)
			}
		}
		if shape.Closed && (shape.Of == calc.Concrete || shape.Of == calc.Steel) {
			s.walls = append(s.walls, b)
		}
		return
	}
	var path strings.Builder
	for _, ring := range rings(shape) {
		for i, p := range ring {
			x, y := s.at(p)
			s.box.add(x, y)
			if i == 0 {
				path.WriteString("M")
			} else {
				path.WriteString("L")
			}
			path.WriteString(markup.Number(x) + " " + markup.Number(y))
		}
		if shape.Closed {
			path.WriteString("Z")
		}
	}
	fill := "none"
	if shape.Closed {
		s.used[shape.Of] = true
		if hatches[shape.Of].size > 0 {
			fill = "url(#" + s.id + "-" + names[shape.Of] + ")"
			s.body.Put(`<path class="ground s-%" d="%"/>`, names[shape.Of], path.String())
		}
	}
	s.body.Put(`<path class="line s-%" vector-effect="%" fill="%" d="%"/>`, names[shape.Of], markup.If(s.plan, "non-scaling-stroke"), fill, path.String())
}

func (s *scene) label(shape *calc.Shape) {
	x, y := s.at(shape.Points[0])
	says := s.r.Line(shape.Label)
	if shape.Room > 0 && length(says) > float64(shape.Room)*s.scale {
		return
	}
	s.letters(x, y+text/3, says, anchors[shape.Anchor], "note-text", 0)
}

var anchors = [...]string{calc.Middle: "middle", calc.Start: "start", calc.End: "end"}

// length is the room that a text takes, at six tenths of its height a letter.
func length(words string) float64 { return float64(utf8.RuneCountInString(words)) * text * 0.6 }

// letters writes a text, and counts the room it takes.
func (s *scene) letters(x, y float64, words, anchor, class string, turn float64) {
	long := length(words)
	left := x - long/2
	switch anchor {
	case "start":
		left = x
	case "end":
		left = x - long
	}
	transform := ""
	if turn != 0 {
		s.box.add(x-text, y-long/2)
		s.box.add(x+text/2, y+long/2)
		transform = "rotate(" + markup.Number(turn) + " " + markup.Number(x) + " " + markup.Number(y) + ")"
	} else {
		s.box.add(left, y-text)
		s.box.add(left+long, y+text/3)
	}
	s.over.Put(`<text class="%" x="%" y="%" text-anchor="%" transform="%">%</text>`, class, markup.Number(x), markup.Number(y), anchor, transform, words)
}

func (s *scene) svg(d *calc.Drawing) string {
	b := s.box
	b.x0, b.y0, b.x1, b.y1 = b.x0-margin, b.y0-margin, b.x1+margin, b.y1+margin
	if spare := frame - (b.x1 - b.x0); spare > 0 {
		b.x0, b.x1 = b.x0-spare/2, b.x1+spare/2
	}
	var w markup.Writer
	n := markup.Number
	w.Put(`<svg class="drawing" viewBox="% % % %" role="img" aria-labelledby="%-title %-says" xmlns="http://www.w3.org/2000/svg"><title id="%-title">%</title><desc id="%-says">%</desc>`,
		n(b.x0), n(b.y0), n(b.x1-b.x0), n(b.y1-b.y0), s.id, s.id, s.id, s.r.Word(d.Title), s.id, s.r.Line(d.Says))
	s.patterns(&w)
	if s.plan {
		w.Put(`<g class="plan-shapes" id="%-shapes">`, s.id)
	}
	w.Markup(s.body.String())
	if s.plan {
		w.Put(`</g>`)
	}
	w.Markup(s.over.String())
	w.Put(`</svg>`)
	return w.String()
}
