package page

import (
	"strings"

	"setbook/calc"
	"setbook/calc/markup"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// field writes one input: a choice as large tiles, a table as a text area, a
// quantity as a text field with the values often entered and a strip of keys.
func (l *Live) field(w *writer, f *form, in *calc.Input) {
	id, key := l.id(f, in), f.key(in)
	bad := f.problem(in.Key) != nil
	label, invalid := l.reader.Word(in.Label), markup.If(bad, "true")
	class := "field" + markup.If(bad, " field-bad")
	if len(in.Options) > 0 {
		w.Put(`<fieldset class="% choice" data-field="%" aria-describedby="%-note"><legend>%</legend><div class="tiles">`, class, key, id, label)
		l.tiles(w, f, in)
		w.Put(`</div>`)
		if in.Each {
			w.Put(`<div class="each" data-part="each-%">`, key)
			w.Markup(l.each(f, in))
			w.Put(`</div>`)
		}
		l.noteUnder(w, f, in)
		w.Put(`</fieldset>`)
		return
	}
	w.Put(`<div class="%" data-field="%"><label for="%">%`, class, key, id, label)
	if in.Symbol != "" {
		w.Text(" ")
		w.symbol(in.Symbol)
	}
	w.Put(`</label>`)
	if len(in.Columns) > 0 {
		l.tableField(w, f, in)
	} else if in.Reads != nil {
		w.Put(`<textarea id="%" name="%" data-key="%" rows="4" spellcheck="false" aria-describedby="%-note" aria-invalid="%">%</textarea>`,
			id, key, key, id, invalid, l.text(f, in))
	} else {
		w.Put(`<input id="%" name="%" data-key="%" type="text" inputmode="%" value="%" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="next" aria-describedby="%-note" aria-invalid="%">`,
			id, key, key, inputMode(in.Kind), l.text(f, in), id, invalid)
		l.strip(w, key, in)
	}
	l.noteUnder(w, f, in)
	l.usual(w, key, in)
	w.Put(`</div>`)
}

// id is the id of a field's element.
func (l *Live) id(f *form, in *calc.Input) string {
	return l.Name + "-" + markup.If(f.tool != "", f.tool+"-") + in.Key
}

func (l *Live) tiles(w *writer, f *form, in *calc.Input) {
	tile := func(name string, label words.Msg) {
		w.Put(`<label class="tile"><input type="radio" name="%" value="%" data-key="%" checked="%"><span>%</span></label>`,
			l.id(f, in), name, f.key(in), markup.If(l.Checks(f.key(in), name), "checked"), l.reader.Word(label))
	}
	for _, o := range in.Options {
		tile(o.Name, o.Label)
	}
	if in.Each {
		tile(strings.Join(l.picks(f, in), ","), "One by one")
	}
}

func (l *Live) noteUnder(w *writer, f *form, in *calc.Input) {
	w.Put(`<p class="note" id="%-note" data-part="note-%">`, l.id(f, in), f.key(in))
	w.Markup(l.note(f, in))
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
func (l *Live) usual(w *writer, key string, in *calc.Input) {
	if len(in.Usual) == 0 {
		return
	}
	w.Put(`<div class="keys">`)
	for _, text := range in.Usual {
		if shown, ok := in.Offered(text, l.reader.Style); ok {
			w.Put(`<button type="button" data-fill="%" data-for="%">%</button>`, shown, key, shown)
		}
	}
	w.Put(`</div>`)
}

// strip writes the keys that a phone's number pad lacks: the slash and the space of a
// fraction, and the units. They are left out of the order of tabbing: a keyboard has them.
func (l *Live) strip(w *writer, key string, in *calc.Input) {
	keys := stripKeys(in, l.reader.Style)
	if len(keys) == 0 {
		return
	}
	w.Put(`<div class="strip">`)
	for _, k := range keys {
		w.Put(`<button type="button" tabindex="-1" data-insert="%" data-for="%">%</button>`, k, key, l.keyName(k))
	}
	w.Put(`</div>`)
}

func (l *Live) keyName(key string) string {
	if key == " " {
		return l.reader.Word("space")
	}
	return key
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
func (l *Live) note(f *form, in *calc.Input) string {
	w := &writer{r: l.reader}
	if p := f.problem(in.Key); p != nil {
		w.Put(`<span class="note-bad">%</span>`, l.reader.Line(p.Says))
		return w.String()
	}
	l.cameFrom(w, f, in)
	if in.Help != "" {
		w.put(`<span class="help">%</span> `, in.Help)
	}
	if len(in.Options) > 0 || len(in.Columns) > 0 {
		return w.String()
	}
	if echo := l.echo(f, in); echo != "" {
		w.Put(`<span class="echo">= %</span>`, echo)
	}
	return w.String()
}

// echo shows a reading back in the unit that was not typed, so that a slip in the unit is seen at once.
func (l *Live) echo(f *form, in *calc.Input) string {
	us, metric := in.As.US.Unit, in.As.Metric.Unit
	if us == metric {
		return ""
	}
	base, ok := f.value(in)
	if !ok {
		return ""
	}
	figure := unit.Figure{Kind: in.Kind, Base: base, As: in.As}
	other := l.reader.Style
	other.System = other.Other()
	if u := unit.Ends(in.Kind, l.text(f, in)); u != nil && u.System != l.reader.Style.System && u.System != unit.Either {
		return l.reader.Style.Print(figure)
	}
	return other.Print(figure)
}
