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
	class := "field"
	if l.Invalid(in.Key) {
		class += " field-bad"
	}
	if len(in.Options) > 0 {
		l.choice(w, in, id, class)
		return
	}
	w.Open("div", "class", class, "data-field", in.Key)
	w.Open("label", "for", id)
	w.Text(l.reader.Word(in.Label))
	if in.Symbol != "" {
		w.Text(" ")
		w.symbol(in.Symbol)
	}
	w.Close("label")
	if len(in.Columns) > 0 {
		w.In("textarea", l.Field(in.Key), "id", id, "name", in.Key, "data-key", in.Key, "rows", "4", "spellcheck", "false",
			"aria-describedby", id+"-note", "aria-invalid", markup.Flag(l.Invalid(in.Key), "true"))
	} else {
		w.Open("input", "id", id, "name", in.Key, "data-key", in.Key, "type", "text", "inputmode", inputMode(in.Kind), "value", l.Field(in.Key),
			"autocomplete", "off", "autocapitalize", "off", "spellcheck", "false", "enterkeyhint", "next",
			"aria-describedby", id+"-note", "aria-invalid", markup.Flag(l.Invalid(in.Key), "true"))
		l.strip(w, in, id)
	}
	w.Open("p", "class", "note", "id", id+"-note", "data-part", "note-"+in.Key)
	w.Markup(l.note(in))
	w.Close("p")
	l.usual(w, in)
	w.Close("div")
}

// inputMode is the keyboard that a phone shows: digits with a decimal mark. The strip of keys
// supplies what that keyboard lacks. A date or a time of day needs the whole keyboard.
func inputMode(k unit.Kind) string {
	if k == unit.KindDate || k == unit.KindClock {
		return "text"
	}
	return "decimal"
}

func (l *Live) choice(w *writer, in *calc.Input, id, class string) {
	w.Open("fieldset", "class", class+" choice", "data-field", in.Key)
	w.Open("legend")
	w.Text(l.reader.Word(in.Label))
	w.Close("legend")
	w.Open("div", "class", "tiles")
	for _, o := range in.Options {
		w.Open("label", "class", "tile")
		if o.Name == l.Field(in.Key) {
			w.Open("input", "type", "radio", "name", id, "value", o.Name, "data-key", in.Key, "checked", "checked")
		} else {
			w.Open("input", "type", "radio", "name", id, "value", o.Name, "data-key", in.Key)
		}
		w.In("span", l.reader.Word(o.Label))
		w.Close("label")
	}
	w.Close("div")
	w.Open("p", "class", "note", "id", id+"-note", "data-part", "note-"+in.Key)
	w.Markup(l.note(in))
	w.Close("p")
	w.Close("fieldset")
}

// usual writes the values often entered, each as one key to press.
func (l *Live) usual(w *writer, in *calc.Input) {
	if len(in.Usual) == 0 {
		return
	}
	w.Open("div", "class", "keys")
	for _, text := range in.Usual {
		shown, ok := in.Again(text, calc.Habit{Decimal: '.'}, l.reader.Style)
		if !ok {
			continue
		}
		w.In("button", shown, "type", "button", "data-fill", shown, "data-for", in.Key)
	}
	w.Close("div")
}

// strip writes the keys that a phone's number pad lacks: the slash and the space of a
// fraction, and the units.
func (l *Live) strip(w *writer, in *calc.Input, id string) {
	keys := stripKeys(in, l.reader.Style)
	if len(keys) == 0 {
		return
	}
	w.Open("div", "class", "strip")
	for _, k := range keys {
		if k == " " {
			w.say("button", "space", "type", "button", "data-insert", " ", "data-for", in.Key)
			continue
		}
		w.In("button", k, "type", "button", "data-insert", k, "data-for", in.Key)
	}
	w.Close("div")
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
		w.In("span", l.reader.Line(p.Says), "class", "note-bad")
		return w.String()
	}
	if in.Help != "" {
		w.say("span", in.Help, "class", "help")
		w.Text(" ")
	}
	if len(in.Options) > 0 || len(in.Columns) > 0 {
		return w.String()
	}
	if echo := l.echo(in); echo != "" {
		w.In("span", "= "+echo, "class", "echo")
	}
	return w.String()
}

// echo shows a reading back in the unit that was not typed, so that a slip in the unit is seen at once.
func (l *Live) echo(in *calc.Input) string {
	us, metric := in.As.US.Unit, in.As.Metric.Unit
	if us == metric {
		return ""
	}
	r := l.entry.Reading(in.Key)
	f := unit.Figure{Kind: in.Kind, Base: r.Base, As: in.As}
	other := l.reader.Style
	other.System = other.Other()
	if u := unit.Ends(in.Kind, l.Field(in.Key)); u != nil && u.System != l.reader.Style.System && u.System != unit.Either {
		return l.reader.Style.Print(f)
	}
	return other.Print(f)
}
