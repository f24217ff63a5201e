// Package page writes a calculator and its sheet as HTML: form, answers, cautions,
// drawing and working. The build calls it for the page as first served, and the
// phone for each answer after that.
package page

import (
	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/markup"
	"setbook/calc/words"
)

// writer is markup with its reader.
type writer struct {
	markup.Writer
	r words.Reader
}

func (w *writer) say(tag string, m words.Msg, attributes ...string) {
	w.In(tag, w.r.Word(m), attributes...)
}

// HTML is everything inside the calculator's section.
func (l *Live) HTML() string {
	w := &writer{r: l.reader}
	w.Open("div", "class", "head", "data-part", "head", "role", "status")
	w.Markup(l.head())
	w.Close("div")
	w.Open("form", "class", "asks", "autocomplete", "off", "aria-label", l.reader.Word("What the sum needs"))
	for i := range l.Calculator.Inputs {
		l.field(w, l.Calculator.Inputs[i])
	}
	w.Open("div", "class", "actions")
	w.say("button", "Back to the example", "type", "button", "data-do", "example")
	w.say("button", "Copy a link to this", "type", "button", "data-do", "copy")
	w.In("p", "", "class", "said", "data-part", "said", "role", "status")
	w.Close("div")
	w.Close("form")
	w.Open("div", "class", "sheet")
	l.region(w, "div", "answers", "answers", l.answers())
	l.region(w, "div", "cautions", "cautions", l.cautions())
	l.region(w, "figure", "drawing", "drawing", l.drawing())
	l.fold(w, "working", "The working, step by step", l.working())
	if len(l.Calculator.Memory) > 0 {
		l.fold(w, "memory", "Around the sum", l.memory())
	}
	l.fold(w, "sources", "What it rests on", l.sources())
	w.Close("div")
	return w.String()
}

func (l *Live) region(w *writer, tag, class, part, made string) {
	w.Open(tag, "class", class, "data-part", part)
	w.Markup(made)
	w.Close(tag)
}

// fold is a region that can be folded away. It stays as the reader left it, because only what is inside it is written anew.
func (l *Live) fold(w *writer, part string, title words.Msg, made string) {
	w.Open("details", "class", "fold fold-"+part)
	w.say("summary", title)
	l.region(w, "div", part, part, made)
	w.Close("details")
}

// Parts is every region that changes as fields are typed in.
func (l *Live) Parts() []Part {
	parts := []Part{
		{"head", l.head()}, {"answers", l.answers()}, {"cautions", l.cautions()},
		{"drawing", l.drawing()}, {"working", l.working()}, {"sources", l.sources()},
	}
	for i := range l.Calculator.Inputs {
		in := l.Calculator.Inputs[i]
		parts = append(parts, Part{"note-" + in.Key, l.note(in)})
	}
	return parts
}

// head is the answers wanted most, kept in sight while fields are typed in.
func (l *Live) head() string {
	w := &writer{r: l.reader}
	switch {
	case l.Stale():
		w.In("p", l.reader.Word("Not worked: the answers are from before.")+" "+l.otherProblem(), "class", "state state-stale")
	case !l.Touched():
		w.say("p", "Worked example", "class", "state state-example")
	default:
		w.say("p", "Your figures", "class", "state state-yours")
	}
	w.Open("dl", "class", "main-answers")
	for _, a := range l.sheet.Answers {
		if !a.Main {
			continue
		}
		w.Open("div", "class", "main-answer", "data-answer", a.Key)
		w.say("dt", a.Label)
		w.Open("dd")
		w.In("strong", l.reads(a))
		if a.HasRange && a.Buys {
			w.In("span", l.reader.Line(words.Say("likely, {high} cautious", highOf(a))), "class", "cautious")
		}
		w.Close("dd")
		w.Close("div")
	}
	w.Close("dl")
	if n := l.worst(); n != "" {
		w.In("p", n, "class", "head-caution")
	}
	return w.String()
}

// otherProblem is a problem that no field can show.
func (l *Live) otherProblem() string {
	for _, p := range l.problems {
		if _, ok := l.input(p.Key); !ok {
			return l.reader.Line(p.Says)
		}
	}
	return ""
}

// worst is the first caution that says stop.
func (l *Live) worst() string {
	for _, c := range l.sheet.Cautions {
		if c.Severity == calc.Stop {
			return l.reader.Word("Stop") + ": " + l.reader.Line(c.Says)
		}
	}
	return ""
}

func (l *Live) input(key string) (*calc.Input, bool) {
	for i := range l.Calculator.Inputs {
		if l.Calculator.Inputs[i].Key == key {
			return l.Calculator.Inputs[i], true
		}
	}
	return nil, false
}

// reads is an answer as the reader reads it.
func (l *Live) reads(a calc.Answer) string {
	if a.Reads.Msg != "" {
		return l.reader.Line(a.Reads)
	}
	return l.reader.Style.Print(a.Is)
}

func (l *Live) answers() string {
	w := &writer{r: l.reader}
	w.say("h2", "Answers")
	w.Open("dl", "class", "answer-list")
	for _, a := range l.sheet.Answers {
		w.Open("div", "class", "answer", "data-answer", a.Key)
		w.say("dt", a.Label)
		w.Open("dd")
		if a.Reads.Msg != "" {
			w.In("b", l.reader.Line(a.Reads))
		} else {
			w.In("b", l.reader.Style.PrintBoth(a.Is))
		}
		if a.HasRange {
			w.In("span", l.reader.Line(words.Say("from {low} to {high}", lowOf(a), highOf(a))), "class", "range")
			if a.From.Msg != "" {
				w.In("span", l.reader.Line(a.From), "class", "from")
			}
		}
		w.Close("dd")
		w.Close("div")
	}
	w.Close("dl")
	return w.String()
}

func lowOf(a calc.Answer) words.Arg {
	f := a.Is
	f.Base = a.Low
	return words.Arg{Name: "low", Figure: &f}
}

func highOf(a calc.Answer) words.Arg {
	f := a.Is
	f.Base = a.High
	return words.Arg{Name: "high", Figure: &f}
}

// severities names each severity and its class.
var severities = map[calc.Severity]struct {
	says  words.Msg
	class string
}{
	calc.Stop: {"Stop", "caution-stop"},
	calc.Care: {"Take care", "caution-care"},
	calc.Note: {"Note", "caution-note"},
}

func (l *Live) cautions() string {
	if len(l.sheet.Cautions) == 0 {
		return ""
	}
	w := &writer{r: l.reader}
	w.say("h2", "Cautions")
	w.Open("ul")
	for _, severity := range []calc.Severity{calc.Stop, calc.Care, calc.Note} {
		for _, c := range l.sheet.Cautions {
			if c.Severity != severity {
				continue
			}
			w.Open("li", "class", "caution "+severities[severity].class)
			w.In("b", l.reader.Word(severities[severity].says))
			w.Text(" " + l.reader.Line(c.Says) + " ")
			w.cite(c.Cite)
			w.Close("li")
		}
	}
	w.Close("ul")
	return w.String()
}

func (l *Live) drawing() string {
	if len(l.sheet.Drawing.Shapes) == 0 {
		return ""
	}
	w := &writer{r: l.reader}
	w.Markup(draw.SVG(&l.sheet.Drawing, l.Name+"-drawing", l.reader))
	w.say("figcaption", l.sheet.Drawing.Title)
	return w.String()
}

func (l *Live) memory() string {
	w := &writer{r: l.reader}
	w.Open("ul")
	for _, m := range l.Calculator.Memory {
		w.say("li", m)
	}
	w.Close("ul")
	w.say("p", "Common practice of the trade, in our own words. The bag, the local code and the licensed person on the job come first.", "class", "cite")
	return w.String()
}
