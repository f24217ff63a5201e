// Package page writes a calculator and its sheet as HTML: form, answers, cautions,
// drawing and working. The build calls it for the page as first served, and the
// phone for each answer after that.
package page

import (
	"strconv"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/markup"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// writer is markup with its reader.
type writer struct {
	markup.Writer
	r words.Reader
}

// put writes markup with messages in the places.
func (w *writer) put(made string, messages ...words.Msg) {
	values := make([]string, len(messages))
	for i, m := range messages {
		values[i] = w.r.Word(m)
	}
	w.Put(made, values...)
}

// HTML is everything inside the calculator's section.
func (l *Live) HTML() string {
	w := &writer{r: l.reader}
	w.Put(`<div class="head"><div data-part="head" role="status">`)
	l.region(w, "state", l.state())
	l.region(w, "main", l.main())
	w.Put(`</div>`)
	l.region(w, "work", l.underWay())
	w.put(`</div><form class="asks" autocomplete="off" aria-label="%">`, "What the sum needs")
	w.Markup(l.Fields())
	w.Put(`</form><div class="sheet">`)
	l.region(w, "answers", l.answers())
	l.starts(w)
	l.region(w, "cautions", l.cautions())
	l.draggable(w)
	l.origin(w)
	l.region(w, "figures", l.figures())
	l.region(w, "tables", l.tables())
	l.fold(w, "working", "The working, step by step", l.working())
	if len(l.Calculator.Memory) > 0 {
		l.fold(w, "memory", "Around the sum", l.memory())
	}
	l.fold(w, "sources", "What it rests on", l.sources())
	w.Put(`</div>`)
	return w.String()
}

// Fields is everything inside the form.
func (l *Live) Fields() string {
	w := &writer{r: l.reader}
	l.products(w)
	for _, in := range l.Calculator.Inputs {
		if l.instead(w, in) {
			continue
		}
		l.field(w, &l.form, in)
		l.toolsAt(w, in)
	}
	l.givens(w)
	w.put(`<div class="actions"><button type="button" data-do="example">%</button><button type="button" data-do="copy">%</button>`, "Back to the example", "Copy a link to this")
	l.counterKeys(w)
	w.Put(`<p class="said" data-part="said" role="status"></p></div>`)
	l.saidBy(w, "linked", l.linked())
	return w.String()
}

func (l *Live) region(w *writer, part, made string) {
	w.Put(`<div class="%" data-part="%">`, part, part)
	w.Markup(made)
	w.Put(`</div>`)
}

// fold is a region that can be folded away. It stays as the reader left it, because only what is inside it is written anew.
func (l *Live) fold(w *writer, part string, title words.Msg, made string) {
	w.Put(`<details class="fold fold-%"><summary>%</summary>`, part, l.reader.Word(title))
	l.region(w, part, made)
	w.Put(`</details>`)
}

// Parts is every region that changes as fields are typed in. Where the calculator is worked out beside the page, those of
// its sheet are what came back last; one that never came stays as it was served.
func (l *Live) Parts() []Part {
	parts := []Part{{"state", l.state()}, {"work", l.underWay()}}
	if l.aside == nil {
		parts = append(parts, l.sheetParts()...)
	} else {
		for name, made := range l.aside.given {
			parts = append(parts, Part{name, made})
		}
	}
	parts = l.notes(parts, &l.form)
	for i := range l.tools {
		parts = l.notes(parts, &l.tools[i])
	}
	parts = append(parts, Part{"linked", l.linked()})
	if l.Calculator.Drag != nil {
		parts = append(parts, Part{"drag", l.dragging()})
	}
	return l.padParts(l.said(parts))
}

// sheetParts is every region that shows the sheet.
func (l *Live) sheetParts() []Part {
	return []Part{
		{"main", l.main()}, {"answers", l.answers()}, {"start", l.start()}, {"cautions", l.cautions()}, {"drawing", l.drawing()},
		{"figures", l.figures()}, {"tables", l.tables()}, {"working", l.working()}, {"sources", l.sources()},
	}
}

// notes adds what stands under each field of a form.
func (l *Live) notes(parts []Part, f *form) []Part {
	for _, in := range f.of.Inputs {
		parts = append(parts, Part{"note-" + f.key(in), l.note(f, in)})
		if in.Each {
			parts = append(parts, Part{"each-" + f.key(in), l.each(f, in)})
		}
	}
	return parts
}

// state says whose figures the answers belong to.
func (l *Live) state() string {
	w := &writer{r: l.reader}
	switch a := l.aside; {
	case len(l.problems) > 0:
		w.Put(`<p class="state state-stale">% %</p>`, l.reader.Word("Not worked: the answers are from before."), l.otherProblem())
	case a != nil && a.halted:
		w.put(`<p class="state state-stale">%</p>`, "Stopped: the answers are from before.")
	case a != nil && a.busy && a.ending:
		w.put(`<p class="state state-busy">%</p>`, "Being stopped: the best so far is on its way.")
	case a != nil && a.busy:
		w.put(`<p class="state state-busy">%</p>`, "Being worked out: the answers are from before.")
	case a != nil && a.early:
		w.put(`<p class="state state-early">%</p>`, "Stopped early: the best that was found so far.")
	case !l.Touched():
		w.put(`<p class="state state-example">%</p>`, "Worked example")
	default:
		w.put(`<p class="state state-yours">%</p>`, "Your figures")
	}
	return w.String()
}

// main is the answers wanted most, kept in sight while fields are typed in.
func (l *Live) main() string {
	w := &writer{r: l.reader}
	w.Put(`<dl class="main-answers">`)
	for i := range l.sheet.Answers {
		a := &l.sheet.Answers[i]
		if !a.Main {
			continue
		}
		w.Put(`<div class="main-answer" data-answer="%"><dt>%</dt><dd><strong>%</strong>`, a.Key, l.reader.Word(a.Label), l.reads(a))
		if a.HasRange && a.Buys {
			w.Put(` <span class="cautious">%</span>`, l.reader.Line(words.Say("likely, {high} cautious", end("high", a, a.High))))
		}
		w.Put(`</dd></div>`)
	}
	w.Put(`</dl>`)
	for _, c := range l.sheet.Cautions {
		if c.Severity == calc.Stop {
			w.Put(`<p class="head-caution">%: %</p>`, l.reader.Word("Stop"), l.reader.Line(c.Says))
			break
		}
	}
	return w.String()
}

// otherProblem is a problem that no field can show.
func (l *Live) otherProblem() string {
	for _, p := range l.problems {
		if l.Calculator.Input(p.Key) == nil || l.hidden[p.Key] || l.fixed[p.Key] {
			return l.reader.Line(p.Says)
		}
	}
	return ""
}

// reads is an answer as the reader reads it.
func (l *Live) reads(a *calc.Answer) string {
	return Reads(l.reader, a)
}

// Reads is an answer as a reader reads it.
func Reads(r words.Reader, a *calc.Answer) string {
	if a.Reads.Msg != "" {
		return r.Line(a.Reads)
	}
	return r.Style.Print(a.Is)
}

func (l *Live) answers() string {
	w := &writer{r: l.reader}
	w.put(`<h2>%</h2><dl class="answer-list">`, "Answers")
	for i := range l.sheet.Answers {
		a := &l.sheet.Answers[i]
		text := l.reads(a)
		if a.Reads.Msg == "" {
			text = l.reader.Style.PrintBoth(a.Is)
		}
		w.Put(`<div class="answer" data-answer="%"><dt>%</dt><dd><b>%</b>`, a.Key, l.reader.Word(a.Label), text)
		if a.HasRange {
			w.Put(` <span class="range">%</span>`, l.reader.Line(words.Say("from {low} to {high}", end("low", a, a.Low), end("high", a, a.High))))
			if a.From.Msg != "" {
				w.Put(` <span class="from">%</span>`, l.reader.Line(a.From))
			}
		}
		w.Put(`</dd></div>`)
	}
	w.Put(`</dl>`)
	return w.String()
}

// end fills a placeholder with one end of an answer's range.
func end(name string, a *calc.Answer, base float64) *words.Arg {
	return &words.Arg{Name: name, Figure: &unit.Figure{Kind: a.Is.Kind, Base: base, As: a.Is.As}}
}

// severities names each severity and its class.
var severities = [...]struct {
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
	w.put(`<h2>%</h2><ul>`, "Cautions")
	for severity, s := range severities {
		for _, c := range l.sheet.Cautions {
			if c.Severity == calc.Severity(severity) {
				w.Put(`<li class="caution %"><b>%</b> % <cite>%</cite></li>`, s.class, l.reader.Word(s.says), l.reader.Line(c.Says), Cite(l.reader, c.Cite))
			}
		}
	}
	w.Put(`</ul>`)
	return w.String()
}

func (l *Live) drawing() string {
	w := &writer{r: l.reader}
	l.figure(w, &l.sheet.Drawing, l.Name+"-drawing")
	return l.scaled(w.String())
}

// figure writes a drawing and the words under it, or nothing where it has no shapes.
func (l *Live) figure(w *writer, d *calc.Drawing, id string) {
	if len(d.Shapes) == 0 {
		return
	}
	w.Markup(draw.SVG(d, id, l.reader))
	w.Put(`<figcaption><b>%</b> %</figcaption>`, l.reader.Word(d.Title), l.reader.Line(d.Says))
}

// figures is every further drawing.
func (l *Live) figures() string {
	w := &writer{r: l.reader}
	for i, d := range l.sheet.More {
		if len(d.Shapes) > 0 {
			w.Put(`<figure class="drawing">`)
			l.figure(w, d, l.Name+"-figure-"+strconv.Itoa(i+1))
			w.Put(`</figure>`)
		}
	}
	return w.String()
}

func (l *Live) memory() string {
	w := &writer{r: l.reader}
	w.Put(`<ul>`)
	for _, m := range l.Calculator.Memory {
		w.put(`<li>%</li>`, m)
	}
	w.put(`</ul><p class="cite">%</p>`, "Common practice of the trade, in our own words. The bag, the local code and the licensed person on the job come first.")
	return w.String()
}
