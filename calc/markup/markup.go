// Package markup writes HTML and SVG so that nothing reaches them unescaped: tag
// and attribute names are the program's, every value and every text goes
// through one escape function.
package markup

import (
	"html"
	"strconv"
	"strings"
)

// Writer gathers markup. The zero Writer is ready.
type Writer struct{ b strings.Builder }

// Escape is the one escape function, for text and for attribute values alike.
func Escape(text string) string { return html.EscapeString(text) }

// Open writes a start tag with attributes in pairs of name and value. An
// attribute whose value is "" is left out, except alt and value, where empty means something.
func (w *Writer) Open(tag string, attributes ...string) {
	w.b.WriteString("<" + tag)
	for i := 0; i+1 < len(attributes); i += 2 {
		name, value := attributes[i], attributes[i+1]
		if value == "" && name != "value" && name != "alt" {
			continue
		}
		w.b.WriteString(" " + name + `="` + Escape(value) + `"`)
	}
	w.b.WriteString(">")
}

// Flag adds a value to an attribute list where a condition holds.
func Flag(on bool, value string) string {
	if on {
		return value
	}
	return ""
}

// Close writes an end tag.
func (w *Writer) Close(tag string) { w.b.WriteString("</" + tag + ">") }

// Text writes a text, escaped.
func (w *Writer) Text(text string) { w.b.WriteString(Escape(text)) }

// In writes an element that holds one text.
func (w *Writer) In(tag, text string, attributes ...string) {
	w.Open(tag, attributes...)
	w.Text(text)
	w.Close(tag)
}

// Markup writes what another Writer made.
func (w *Writer) Markup(made string) { w.b.WriteString(made) }

// String is what was written.
func (w *Writer) String() string { return w.b.String() }

// Number writes a coordinate to a hundredth, which no screen shows finer.
func Number(x float64) string {
	text := strconv.FormatFloat(x, 'f', 2, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}
