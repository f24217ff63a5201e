package page

import (
	"setbook/calc"
	"setbook/calc/words"
)

// toolsAt writes the tools that stand by a field: those that ask for something fold away, the others are a row of buttons.
func (l *Live) toolsAt(w *writer, in *calc.Input) {
	bare := false
	for i, t := range l.Calculator.Tools {
		switch {
		case t.At != in.Key:
		case len(t.Inputs) == 0:
			bare = true
		default:
			w.Put(`<details class="fold tool" data-tool="%"><summary>%</summary><div class="asks">`, t.Key, l.reader.Word(t.Title))
			f := &l.tools[i]
			for _, own := range t.Inputs {
				l.field(w, f, own)
			}
			w.Put(`<div class="actions"><button type="button" data-use="%">%</button></div></div>`, t.Key, l.reader.Word("Fill it in"))
			l.saidBy(w, "used-"+t.Key, l.usedBy(t))
			w.Put(`</details>`)
		}
	}
	if !bare {
		return
	}
	w.Put(`<div class="tools"><div class="keys">`)
	for _, t := range l.Calculator.Tools {
		if t.At == in.Key && len(t.Inputs) == 0 {
			w.Put(`<button type="button" data-use="%">%</button>`, t.Key, l.reader.Word(t.Title))
		}
	}
	w.Put(`</div>`)
	l.saidBy(w, "tools-"+in.Key, l.usedAt(in))
	w.Put(`</div>`)
}

// saidBy is the place where a tool says what it did: read out as it changes.
func (l *Live) saidBy(w *writer, part, made string) {
	w.Put(`<p class="said" data-part="%" role="status" aria-live="polite">`, part)
	w.Markup(made)
	w.Put(`</p>`)
}

// usedBy is what a tool said when it was used last, and what is wrong that no field of its own can show.
func (l *Live) usedBy(t *calc.Tool) string {
	w := &writer{r: l.reader}
	if said, ok := l.used[t.Key]; ok {
		w.Text(l.reader.Line(said))
	}
	f, _ := l.at(t.Key + ".")
	for _, p := range f.problems {
		if f.of.Input(p.Key) == nil {
			w.Put(`<span class="note-bad">%</span>`, l.reader.Line(p.Says))
		}
	}
	return w.String()
}

// usedAt is what the bare buttons by a field say: the one that was pressed last.
func (l *Live) usedAt(in *calc.Input) string {
	w := &writer{r: l.reader}
	for _, t := range l.Calculator.Tools {
		if t.At == in.Key && len(t.Inputs) == 0 {
			w.Markup(l.usedBy(t))
		}
	}
	return w.String()
}

// said adds what the tools say.
func (l *Live) said(parts []Part) []Part {
	seen := ""
	for _, t := range l.Calculator.Tools {
		switch {
		case len(t.Inputs) > 0:
			parts = append(parts, Part{"used-" + t.Key, l.usedBy(t)})
		case t.At != seen:
			seen = t.At
			parts = append(parts, Part{"tools-" + t.At, l.usedAt(l.Calculator.Input(t.At))})
		}
	}
	return parts
}

// Use has a tool write its texts into the fields. Where it cannot, they stay as they were.
func (l *Live) Use(key string) {
	f, _ := l.at(key + ".")
	for _, t := range l.Calculator.Tools {
		if t.Key != key {
			continue
		}
		if t.Moves != (calc.Point{}) {
			l.grip.by = t.Moves
			l.move(t.Moves)
			l.used = map[string]words.Line{key: l.moved()}
			return
		}
		own, problems := f.read()
		var texts calc.Texts
		var said words.Line
		if len(problems) == 0 {
			texts, said, problems = t.Write(l.entry, own)
		}
		for _, other := range l.Calculator.Tools {
			if other.At == t.At {
				delete(l.used, other.Key)
			}
		}
		f.problems = problems
		if len(problems) > 0 {
			return
		}
		if l.used == nil {
			l.used = map[string]words.Line{}
		}
		l.used[key] = said
		l.put(texts)
	}
}
