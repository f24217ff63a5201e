// Package markup writes HTML and SVG so that nothing reaches them unescaped: the
// program writes the tags, and every value goes through one escape function.
package markup

import (
	"html"
	"strconv"
	"strings"
)

// Escape is the one escape function, for text and for attribute values alike. A carriage return is written as a reference, since a
// reader of markup takes a bare one for the end of a line.
func Escape(text string) string { return strings.ReplaceAll(html.EscapeString(text), "\r", "&#13;") }

// Writer gathers markup. The zero Writer is ready.
type Writer struct{ b strings.Builder }

// Put writes markup with a value in the place of each "%", escaped. The markup is a
// constant of the program, never a value. An attribute whose value comes out empty is
// left out (` name="%"`), so that a flag can be put as a value or as "".
func (w *Writer) Put(markup string, values ...string) {
	for _, value := range values {
		before, after, ok := strings.Cut(markup, "%")
		if !ok {
			break
		}
		if name := strings.LastIndexByte(before, ' '); value == "" && optional(before, after, name) {
			w.b.WriteString(before[:name])
			markup = after[1:]
			continue
		}
		w.b.WriteString(before)
		w.b.WriteString(Escape(value))
		markup = after
	}
	w.b.WriteString(markup)
}

// optional reports whether a place is the whole of an attribute's value, other than one where empty means something.
func optional(before, after string, name int) bool {
	return name >= 0 && strings.HasSuffix(before, `="`) && strings.HasPrefix(after, `"`) &&
		before[name:] != ` value="` && !strings.Contains(before[name:], ">")
}

// Text writes a text, escaped.
func (w *Writer) Text(text string) { w.b.WriteString(Escape(text)) }

// Markup writes what another Writer made.
func (w *Writer) Markup(made string) { w.b.WriteString(made) }

// String is what was written.
func (w *Writer) String() string { return w.b.String() }

// If is a value where a condition holds, else nothing.
func If(on bool, value string) string {
	if on {
		return value
	}
	return ""
}

// Number writes a coordinate to a hundredth, which no screen shows finer.
func Number(x float64) string {
	text := strconv.FormatFloat(x, 'f', 2, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}
