package embed

import (
	"math"
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/words"
)

// begin begins a message to the page around: JSON text, an object with the version and its kind.
func begin(kind string) *writer {
	w := &writer{}
	w.raw(`{"setbook":` + strconv.Itoa(Version) + `,"kind":`)
	w.text(kind)
	return w
}

// Ready is the first message: the calculator listens from now on.
func Ready(calculator string) string {
	w := begin("ready")
	w.raw(`,"calculator":`)
	w.text(calculator)
	return w.end()
}

// Height says how high the page is, in CSS pixels.
func Height(pixels int) string {
	w := begin("height")
	w.raw(`,"height":` + strconv.Itoa(pixels))
	return w.end()
}

// Answers is what a calculator answers: the entry as link text, and each answer by its key with its value in an SI unit, the
// name of that unit, its bounds where it has any, and what the visitor reads. While stale is true, what stands
// in the fields cannot be worked and the answers are those of the entry before.
func Answers(calculator, entry string, stale bool, sheet *calc.Sheet, r words.Reader) string {
	w := begin("answers")
	w.raw(`,"calculator":`)
	w.text(calculator)
	w.raw(`,"entry":`)
	w.text(entry)
	w.raw(`,"stale":` + strconv.FormatBool(stale) + `,"answers":{`)
	for i := range sheet.Answers {
		a := &sheet.Answers[i]
		if i > 0 {
			w.raw(",")
		}
		value, symbol := a.Is.Kind.SI(a.Is.Base)
		w.text(a.Key)
		w.raw(`:{"value":`)
		w.number(value)
		w.raw(`,"unit":`)
		w.text(symbol)
		if a.HasRange {
			low, _ := a.Is.Kind.SI(a.Low)
			high, _ := a.Is.Kind.SI(a.High)
			w.raw(`,"low":`)
			w.number(low)
			w.raw(`,"high":`)
			w.number(high)
		}
		w.raw(`,"text":`)
		if a.Reads.Msg != "" {
			w.text(r.Line(a.Reads))
		} else {
			w.text(r.Style.Print(a.Is))
		}
		w.raw("}")
	}
	w.raw("}")
	return w.end()
}

// writer writes JSON.
type writer struct{ b strings.Builder }

func (w *writer) raw(made string) { w.b.WriteString(made) }

func (w *writer) end() string { w.raw("}"); return w.b.String() }

// number writes a figure; JSON has none that is not finite.
func (w *writer) number(x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		w.raw("null")
		return
	}
	w.raw(strconv.FormatFloat(x, 'g', -1, 64))
}

// text writes a string (RFC 8259, section 7).
func (w *writer) text(text string) {
	const hex = "0123456789abcdef"
	w.b.WriteByte('"')
	for _, c := range strings.ToValidUTF8(text, "\ufffd") {
		switch {
		case c == '"' || c == '\\':
			w.b.WriteByte('\\')
			w.b.WriteRune(c)
		case c < ' ':
			w.raw(`\u00` + hex[c>>4:c>>4+1] + hex[c&15:c&15+1])
		default:
			w.b.WriteRune(c)
		}
	}
	w.b.WriteByte('"')
}
