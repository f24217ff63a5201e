// Package words holds every word that a person sees. The English sentence is the
// key: it stands in the code beside what it says, typed Msg so that no view can
// print a plain string, and a language is one file that maps each to its own.
package words

import (
	"strings"

	"setbook/calc/unit"
)

// Msg is a message in English, with {name} where a figure or a word goes. Where
// one English word has two meanings, a context goes before a bar: "verb|Set".
type Msg string

// Arg fills one placeholder: with a figure, a further message, or a text that is
// the same in every language (what a user typed, a symbol, a key).
type Arg struct {
	Name   string
	Figure *unit.Figure
	Both   bool // print the figure in both systems
	Line   *Line
	Text   string
}

// Line is a message with its placeholders filled.
type Line struct {
	Msg  Msg
	With []*Arg
}

// Say makes a line.
func Say(m Msg, with ...*Arg) Line { return Line{m, with} }

// Is fills a placeholder with a figure.
func Is[T unit.Quantity](name string, q T, as *unit.Pair) *Arg {
	f := unit.Fig(q, as)
	return &Arg{Name: name, Figure: &f}
}

// Both fills a placeholder with a figure printed in both systems.
func Both[T unit.Quantity](name string, q T, as *unit.Pair) *Arg {
	a := Is(name, q, as)
	a.Both = true
	return a
}

// Text fills a placeholder with a text that no language changes.
func Text(name, text string) *Arg { return &Arg{Name: name, Text: text} }

// Also fills a placeholder with a further line.
func Also(name string, l Line) *Arg { return &Arg{Name: name, Line: &l} }

// Named fills a placeholder with a further message that has no placeholder.
func Named(name string, m Msg) *Arg { return Also(name, Line{Msg: m}) }

// Language is one language: its tag (BCP 47), what it calls itself, and its messages by their English.
type Language struct {
	Tag, Name string
	Say       map[Msg]Msg
}

// English needs no map: the keys are English. Package languages lists the others, which the phone fetches only where
// they are wanted.
var English = &Language{Tag: "en", Name: "English"}

// Reader is the person a page is written for: a language and a style of numbers.
type Reader struct {
	Language *Language
	Style    unit.Style
}

// Word gives a message that has no placeholder.
func (r Reader) Word(m Msg) string { return r.Line(Line{Msg: m}) }

// Line gives a line as text, its figures in the reader's style. A placeholder
// with no argument is left standing, so that a test can find it.
func (r Reader) Line(l Line) string {
	text := string(l.Msg)
	if r.Language != nil {
		if own, ok := r.Language.Say[l.Msg]; ok {
			text = string(own)
		}
	}
	if context, rest, ok := strings.Cut(text, "|"); ok && !strings.Contains(context, " ") {
		text = rest
	}
	if len(l.With) == 0 || !strings.Contains(text, "{") {
		return text
	}
	var out strings.Builder
	for {
		before, after, ok := strings.Cut(text, "{")
		out.WriteString(before)
		if !ok {
			return out.String()
		}
		name, rest, ok := strings.Cut(after, "}")
		if !ok {
			out.WriteString("{" + after)
			return out.String()
		}
		out.WriteString(r.arg(name, l.With))
		text = rest
	}
}

func (r Reader) arg(name string, with []*Arg) string {
	for _, a := range with {
		switch {
		case a.Name != name:
		case a.Figure != nil && a.Both:
			return r.Style.PrintBoth(*a.Figure)
		case a.Figure != nil:
			return r.Style.Print(*a.Figure)
		case a.Line != nil:
			return r.Line(*a.Line)
		default:
			return a.Text
		}
	}
	return "{" + name + "}"
}
