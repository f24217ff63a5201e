package setout

import (
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// labels keeps what is written on a drawing apart, in the site's axes.
type labels struct {
	d      *calc.Drawing
	letter unit.Length // height of a letter, as drawn
	taken  []span
}

// span is a box that something written takes.
type span struct{ low, high calc.Point }

// A drawing is fitted to so many heights of a letter, across and up: a few less than the screen has, to be sure (calc/draw).
const (
	lettersAcross = 22
	lettersUp     = 20
)

// labelled begins when all the shapes of a drawing are there.
func labelled(d *calc.Drawing) *labels {
	var s span
	first := true
	for i := range d.Shapes {
		for _, ring := range append([][]calc.Point{d.Shapes[i].Points}, d.Shapes[i].Rings...) {
			for _, q := range ring {
				if first {
					s, first = span{q, q}, false
				}
				s.low = calc.Point{X: min(s.low.X, q.X), Y: min(s.low.Y, q.Y)}
				s.high = calc.Point{X: max(s.high.X, q.X), Y: max(s.high.Y, q.Y)}
			}
		}
	}
	return &labels{d: d, letter: max((s.high.X-s.low.X)/lettersAcross, (s.high.Y-s.low.Y)/lettersUp)}
}

// box is what so many letters about a point take: six tenths of their height a letter.
func (l *labels) box(at calc.Point, letters int) span {
	x, y := l.letter*0.3*unit.Length(letters), l.letter*0.6
	return span{calc.Point{X: at.X - x, Y: at.Y - y}, calc.Point{X: at.X + x, Y: at.Y + y}}
}

// keep counts what stands at a point already.
func (l *labels) keep(at calc.Point, letters int) { l.taken = append(l.taken, l.box(at, letters)) }

// along keeps a line free of letters.
func (l *labels) along(a, b calc.Point) {
	const parts = 24
	for i := range parts + 1 {
		t := unit.Length(i) / parts
		l.keep(calc.Point{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}, 0)
	}
}

// place writes a line of so many letters at the first of the places where it lies over nothing written. It reports whether there was one.
func (l *labels) place(says words.Line, letters int, places ...calc.Point) bool {
	for _, at := range places {
		if box := l.box(at, letters); l.free(box) {
			l.d.Note(at, calc.Middle, says)
			l.taken = append(l.taken, box)
			return true
		}
	}
	return false
}

func (l *labels) free(b span) bool {
	for _, t := range l.taken {
		if b.low.X < t.high.X && t.low.X < b.high.X && b.low.Y < t.high.Y && t.low.Y < b.high.Y {
			return false
		}
	}
	return true
}

// write writes a short text at a point in any case.
func (l *labels) write(at calc.Point, text string) {
	l.keep(at, utf8.RuneCountInString(text))
	l.d.Note(at, calc.Middle, words.Say("{n}", words.Text("n", text)))
}

// within moves a place so that so many letters about it stay within the box from low to high.
func (l *labels) within(at calc.Point, letters int, low, high calc.Point) calc.Point {
	b := l.box(at, letters)
	x, y := at.X-b.low.X, at.Y-b.low.Y
	return calc.Point{X: max(low.X+x, min(at.X, high.X-x)), Y: max(low.Y+y, min(at.Y, high.Y-y))}
}
