package page

import (
	"setbook/calc"
	"setbook/calc/markup"
	"setbook/calc/unit"
)

// field writes one input: a choice as large tiles, a table as a text area, a
// quantity as a text field with the values often entered and a strip of keys.
func (l *Live) field(w *writer, in *calc.Input) {
	id := l.Name + "-" + in.Key
	label, invalid := l.reader.Word(in.Label), markup.If(l.Invalid(in.Key), "true")
	class := "field" + markup.If(l.Invalid(in.Key), " field-bad")
	if len(in.Options) > 0 {
		w.Put(`<fieldset class="% choice" data-field="%"><legend>%</legend><div class="tiles">`, class, in.Key, label)
		for _, o := range in.Options {
			w.Put(`<label class="tile"><input type="radio" name="%" value="%" data-key="%" checked="%"><span>%</span></label>`,
				id, o.Name, in.Key, markup.If(o.Name == l.Field(in.Key), "checked"), l.reader.Word(o.Label))
		}
		w.Put(`</div>`)
		l.noteUnder(w, in, id)
		w.Put(`</fieldset>`)
		return
	}
	w.Put(`<div class="%" data-field="%"><label for="%">%`, class, in.Key, id, label)
	if in.Symbol != "" {
		w.Text(" ")
		w.symbol(in.Symbol)
	}
	w.Put(`</label>`)
	if len(in.Columns) > 0 {
		w.Put(`<textarea id="%" name="%" data-key="%" rows="4" spellcheck="false" aria-describedby="%-note" aria-invalid="%">%</textarea>`,
			id, in.Key, in.Key, id, invalid, l.Field(in.Key))
	} else {
		w.Put(`<input id="%" name="%" data-key="%" type="text" inputmode="%" value="%" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="next" aria-describedby="%-note" aria-invalid="%">`,
			id, in.Key, in.Key, inputMode(in.Kind), l.Field(in.Key), id, invalid)
		l.strip(w, in)
	}
	l.noteUnder(w, in, id)
	l.usual(w, in)
	w.Put(`</div>`)
}

func (l *Live) noteUnder(w *writer, in *calc.Input, id string) {
	w.Put(`<p class="note" id="%-note" data-part="note-%">`, id, in.Key)
	w.Markup(l.note(in))
	w.Put(`</p>`)
}

// inputMode is the keyboard that a phone shows: digits with a decimal mark. The strip of keys
// supplies what that keyboard lacks. A date or a time of day needs the whole keyboard.
func inputMode(k unit.Kind) string {
	if k == unit.KindDate || k == unit.KindClock {
		return "text"
	}
	return "decimal"
}

// usual writes the values often entered, each as one key to press.
func (l *Live) usual(w *writer, in *calc.Input) {
	if len(in.Usual) == 0 {
		return
	}
	w.Put(`<div class="keys">`)
	for _, text := range in.Usual {
		if shown, ok := in.Offered(text, l.reader.Style); ok {
			w.Put(`<button type="button" data-fill="%" data-for="%">%</button>`, shown, in.Key, shown)
		}
	}
	w.Put(`</div>`)
}

// strip writes the keys that a phone's number pad lacks: the slash and the space of a
// fraction, and the units. They are left out of the order of tabbing: a keyboard has them.
func (l *Live) strip(w *writer, in *calc.Input) {
	keys := stripKeys(in, l.reader.Style)
	if len(keys) == 0 {
		return
	}
	w.Put(`<div class="strip">`)
	for _, k := range keys {
		shown := k
		if k == " " {
			shown = l.reader.Word("space")
		}
		w.Put(`<button type="button" tabindex="-1" data-insert="%" data-for="%">%</button>`, k, in.Key, shown)
	}
	w.Put(`</div>`)
}

func stripKeys(in *calc.Input, s unit.Style) []string {
	us, metric := in.As.US.Unit, in.As.Metric.Unit
	var keys []string
	if in.Min < 0 {
		keys = append(keys, "-")
	}
	switch {
	case us.Symbol == "" && metric.Symbol == "":
		return keys
	case s.System != unit.Metric && (us == unit.Inches || us == unit.Feet):
		keys = append(keys, " ", "/", unit.Feet.Symbol, unit.Inches.Symbol)
	case us != metric:
		keys = append(keys, us.Symbol)
	}
	return append(keys, metric.Symbol)
}

// note says under a field how it was read, or what is wrong with it.
func (l *Live) note(in *calc.Input) string {
	w := &writer{r: l.reader}
	if p := l.problem(in.Key); p != nil {
		w.Put(`<span class="note-bad">%</span>`, l.reader.Line(p.Says))
		return w.String()
	}
	if in.Help != "" {
		w.put(`<span class="help">%</span> `, in.Help)
	}
	if len(in.Options) > 0 || len(in.Columns) > 0 {
		return w.String()
	}
	if echo := l.echo(in); echo != "" {
		w.Put(`<span class="echo">= %</span>`, echo)
	}
	return w.String()
}

// echo shows a reading back in the unit that was not typed, so that a slip in the unit is seen at once.
func (l *Live) echo(in *calc.Input) string {
	us, metric := in.As.US.Unit, in.As.Metric.Unit
	if us == metric {
		return ""
	}
	base, ok := l.value(in)
	if !ok {
		return ""
	}
	f := unit.Figure{Kind: in.Kind, Base: base, As: in.As}
	other := l.reader.Style
	other.System = other.Other()
	if u := unit.Ends(in.Kind, l.Field(in.Key)); u != nil && u.System != l.reader.Style.System && u.System != unit.Either {
		return l.reader.Style.Print(f)
	}
	return other.Print(f)
}
