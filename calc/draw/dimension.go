package draw

import (
	"math"

	"setbook/calc"
	"setbook/calc/markup"
)

// dimension draws a dimension line as ISO 129-1 has it: extension lines, a line
// with arrowheads, the figure above it. Where the arrows would not fit between
// the extension lines they stand outside, pointing in.
func (s *scene) dimension(shape *calc.Shape) {
	x1, y1 := s.at(shape.Points[0])
	x2, y2 := s.at(shape.Points[1])
	dx, dy := x2-x1, y2-y1
	long := math.Hypot(dx, dy)
	if long == 0 {
		return
	}
	ux, uy := dx/long, dy/long
	nx, ny := uy, -ux // to the left of the way from first to second, as seen on the page
	off := s.clear(shape, (x1+x2)/2, (y1+y2)/2, ux, uy)
	ax, ay, bx, by := x1+nx*off, y1+ny*off, x2+nx*off, y2+ny*off
	if off != 0 {
		past := math.Copysign(beyond, off)
		s.stroke("dim ext", x1, y1, ax+nx*past, ay+ny*past)
		s.stroke("dim ext", x2, y2, bx+nx*past, by+ny*past)
	}
	if long > 3*arrow {
		s.stroke("dim", ax, ay, bx, by)
		s.head(ax, ay, ux, uy)
		s.head(bx, by, -ux, -uy)
	} else {
		s.stroke("dim", ax-ux*2*arrow, ay-uy*2*arrow, bx+ux*2*arrow, by+uy*2*arrow)
		s.head(ax, ay, -ux, -uy)
		s.head(bx, by, ux, uy)
	}
	s.figure(shape, (ax+bx)/2, (ay+by)/2, ux, uy, off)
}

// clear is how far off a dimension line stands so that neither it nor its figure lies over a wall: as far as it asks for, or a little further.
func (s *scene) clear(shape *calc.Shape, x, y, ux, uy float64) float64 {
	off := shape.Away * text
	const near = 6 // a line so near a wall would be taken for its edge
	across, up := length(s.r.Style.Print(*shape.Dim))/2, (near+text+beyond)/2
	if math.Abs(ux) < math.Abs(uy) {
		across, up = up, across
	}
	for i := 0; i < len(s.walls); i++ {
		past := off + math.Copysign((text+beyond-near)/2, off) // the middle of what the line and its figure take
		mx, my := x+uy*past, y-ux*past
		if b := s.walls[i]; b.x0 < mx+across && mx-across < b.x1 && b.y0 < my+up && my-up < b.y1 && math.Abs(off) < most {
			off += math.Copysign(2, off)
			i = -1 // it may stand over one of those before now
		}
	}
	return off
}

// figure writes the figure above its line; along a steep one, turned to be read from the right.
func (s *scene) figure(shape *calc.Shape, x, y, ux, uy, off float64) {
	words := s.r.Style.Print(*shape.Dim)
	if math.Abs(ux) >= math.Abs(uy) {
		gap := -4.0
		if off*ux < 0 {
			gap = text // the line stands below what it measures: write under it
		}
		s.letters(x, y+gap, words, "middle", "dim-text", 0)
		return
	}
	side := -4.0
	if off*uy > 0 { // the line stands to the right
		side = text
	}
	if s.turned { // the sheet is turned a quarter to the left: to be upright there
		s.letters(x+side-text*0.7, y, words, "middle", "dim-text", 90)
		return
	}
	s.letters(x+side, y, words, "middle", "dim-text", -90)
}

func (s *scene) stroke(class string, x1, y1, x2, y2 float64) {
	s.box.add(x1, y1)
	s.box.add(x2, y2)
	n := markup.Number
	s.over.Put(`<path class="%" d="M% %L% %"/>`, class, n(x1), n(y1), n(x2), n(y2))
}

// head draws an arrowhead with its point at x, y and its body towards ux, uy.
func (s *scene) head(x, y, ux, uy float64) {
	n := markup.Number
	const half = arrow * 0.18
	bx, by := x+ux*arrow, y+uy*arrow
	s.over.Put(`<path class="arrow" d="M% %L% %L% %Z"/>`, n(x), n(y), n(bx-uy*half), n(by+ux*half), n(bx+uy*half), n(by-ux*half))
}
