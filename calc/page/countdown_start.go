package page

import (
	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// start offers a countdown for each waiting answer: its name, and when it would end. The sentence that
// says when is left empty for the phone, which has a clock.
func (l *Live) start() string {
	w := &writer{r: l.reader}
	for i := range l.sheet.Answers {
		a := &l.sheet.Answers[i]
		if !a.Waits {
			continue
		}
		if l.Stale() {
			w.put(`<p class="note">%</p>`, "A countdown can be started once every field can be worked.")
			break
		}
		id := l.Name + "-start-" + a.Key
		w.Put(`<div class="start-one"><div class="field"><label for="%">%</label><input id="%" type="text" data-names="%" value="%" maxlength="60" autocomplete="off" enterkeyhint="done"></div>`+
			`<button type="button" data-start="%">%</button><p class="start-ends" data-ends="%"></p></div>`,
			id, l.reader.Word("Name of the countdown"), id, a.Key, l.named(a), a.Key, l.reader.Word("Start"), a.Key)
	}
	return w.String()
}

// starts is the region of the countdowns that can be started, and what is said once one is.
func (l *Live) starts(w *writer) {
	l.region(w, "start", l.start())
	w.Put(`<p class="said" data-part="started" role="status"></p>`)
}

// CallCountdown takes the name that is typed for the countdown of an answer. It is kept while the answers change.
func (l *Live) CallCountdown(answer, name string) {
	if l.names == nil {
		l.names = map[string]string{}
	}
	l.names[answer] = name
}

// named is the name of the countdown of an answer: as typed, or else the calculator's title, with the answer's label
// where it gives more than one wait.
func (l *Live) named(a *calc.Answer) string {
	if name, ok := l.names[a.Key]; ok {
		return name
	}
	title, waits := l.reader.Word(l.Calculator.Title), 0
	for _, other := range l.sheet.Answers {
		if other.Waits {
			waits++
		}
	}
	if waits < 2 {
		return title
	}
	return l.reader.Line(words.Say("{title}: {answer}", words.Text("title", title), words.Named("answer", a.Label)))
}

// Countdown starts a countdown of a waiting answer now. It reports false where there is none to start.
func (l *Live) Countdown(id, answer string, now countdown.Instant) (*countdown.Countdown, bool) {
	a, ok := l.sheet.Answer(answer)
	if !ok || !a.Waits || a.Is.Kind != unit.KindSpan || l.Stale() {
		return nil, false
	}
	name := countdown.Clean(l.named(&a))
	if name == "" {
		name = countdown.Clean(l.reader.Word(l.Calculator.Title))
	}
	return countdown.Begin(id, name, l.Calculator.ID, l.Link(), now, unit.Span(a.Is.Base))
}
