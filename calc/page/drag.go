package page

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// grip is a drawing that is dragged.
type grip struct {
	on   bool // a finger drags it, and does not scroll the page
	held bool
	x, y float64 // where it was taken hold of, in px of the screen
	by   calc.Point
	ask  bool // it is to be moved beside the page
}

// View is how a drawing stands on the screen: two of its attributes, and its size in px.
type View struct {
	Scale, Box string
	Wide, High float64
}

// moved turns a way on the screen into lengths: y runs down there, and the drawing is fitted into its place whole.
func (v View) moved(x, y float64) (by calc.Point, ok bool) {
	box := strings.Fields(v.Box)
	scale, err := strconv.ParseFloat(v.Scale, 64)
	if len(box) != 4 || err != nil {
		return by, false
	}
	wide, _ := strconv.ParseFloat(box[2], 64)
	high, _ := strconv.ParseFloat(box[3], 64)
	if !(wide > 0 && high > 0 && v.Wide > 0 && v.High > 0) {
		return by, false
	}
	length := scale / min(v.Wide/wide, v.High/high)
	return calc.Point{X: unit.Length(x * length), Y: unit.Length(-y * length)}, true
}

// Dragging has the drawing dragged, or no longer.
func (l *Live) Dragging(on bool) { l.grip = grip{on: on && l.Calculator.Drag != nil} }

// Drags reports whether the drawing is dragged.
func (l *Live) Drags() bool { return l.grip.on }

// Grab takes hold of the drawing.
func (l *Live) Grab(x, y float64) { l.grip = grip{on: l.grip.on, held: l.grip.on, x: x, y: y} }

// Drag follows the finger to where it is now.
func (l *Live) Drag(v View, x, y float64) {
	if l.grip.held {
		l.grip.by, _ = v.moved(x-l.grip.x, y-l.grip.y)
	}
}

// LetGo leaves the drawing as it was.
func (l *Live) LetGo() { l.grip.held, l.grip.by = false, calc.Point{} }

// Drop has the fields follow the drawing. Far is how far a hand strays that only meant to press.
func (l *Live) Drop() {
	const far = unit.Millimetre
	by := l.grip.by
	held := l.grip.held
	l.grip.held = false
	if !held || max(by.X, -by.X, by.Y, -by.Y) < far {
		l.grip.by = calc.Point{}
		return
	}
	l.move(by)
}

// Nudge moves the drawing by a step to the right and up: a millimetre or a sixteenth of an inch, or ten of them.
func (l *Live) Nudge(right, up int, far bool) {
	step := unit.Inch / 16
	if l.reader.Style.System == unit.Metric {
		step = unit.Millimetre
	}
	if far {
		step *= 10
	}
	l.grip.by = calc.Point{X: unit.Length(right) * step, Y: unit.Length(up) * step}
	if l.grip.on {
		l.move(l.grip.by)
	}
}

// move has the fields say what they hold once the drawing is moved. Where the calculator is worked out beside the page,
// that is found there too: it may take as long.
func (l *Live) move(by calc.Point) {
	if l.aside != nil {
		l.grip.ask = l.work()
		return
	}
	l.put(l.Calculator.Drag(l.entry, by))
}

// moved says how far the drawing was moved last.
func (l *Live) moved() words.Line {
	by := l.grip.by
	return words.Say("Moved {right} to the right, {up} up.", words.Is("right", by.X, unit.InchMM), words.Is("up", by.Y, unit.InchMM))
}

// dragging is the switch, and how far the drawing was moved last.
func (l *Live) dragging() string {
	w := &writer{r: l.reader}
	w.Put(`<button type="button" data-do="drag" aria-pressed="%">%</button>`, strconv.FormatBool(l.grip.on), l.reader.Word("Move the layout"))
	if !l.grip.on {
		return w.String()
	}
	says := words.Line{Msg: "Drag the drawing, or press the arrow keys on it. Press the button again to scroll the page with it."}
	if l.grip.by != (calc.Point{}) {
		says = l.moved()
	}
	w.Put(` <span class="said">%</span>`, l.reader.Line(says))
	return w.String()
}

// draggable writes the drawing with what it is dragged by.
func (l *Live) draggable(w *writer) {
	if l.Calculator.Drag == nil {
		l.pane(w)
		return
	}
	w.Put(`<div class="drag" data-part="drag" role="status">`) // how far it was moved is read out
	w.Markup(l.dragging())
	w.Put(`</div>`)
	w.Put(`<div class="pull" data-pull="yes" id="%-pull" role="group" aria-label="%">`, l.Name, l.reader.Word("The layout"))
	l.pane(w)
	w.Put(`</div>`)
}

func (l *Live) pane(w *writer) {
	w.Put(`<figure class="drawing" data-part="drawing">`)
	w.Markup(l.drawing())
	w.Put(`</figure>`)
}

// scaled wraps a drawing that is dragged with its scale.
func (l *Live) scaled(made string) string {
	if l.Calculator.Drag == nil || made == "" {
		return made
	}
	w := &writer{r: l.reader}
	w.Put(`<div data-scale="%">`, strconv.FormatFloat(draw.Scale(&l.sheet.Drawing), 'g', 12, 64))
	w.Markup(made)
	w.Put(`</div>`)
	return w.String()
}

// dragAsk is the move that is to be made beside the page, and dragAsked reads it there.
func (g *grip) dragAsk() string {
	if !g.ask {
		return ""
	}
	g.ask = false
	f := func(x unit.Length) string { return strconv.FormatFloat(float64(x), 'g', -1, 64) }
	return "drag " + f(g.by.X) + " " + f(g.by.Y)
}

func dragAsked(text string) (by calc.Point, ok bool) {
	words := strings.Fields(text)
	if len(words) != 3 || words[0] != "drag" {
		return by, false
	}
	x, _ := strconv.ParseFloat(words[1], 64)
	y, _ := strconv.ParseFloat(words[2], 64)
	return calc.Point{X: unit.Length(x), Y: unit.Length(y)}, true
}
