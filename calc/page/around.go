package page

import (
	"strconv"

	"setbook/calc"
	"setbook/calc/datasheet"
	"setbook/calc/markup"
	"setbook/calc/words"
)

// around is what stands around a mounted calculator: what the page that it is embedded in has settled, the products that it is
// offered, and whether it stands on a counter.
type around struct {
	base          map[string]typed // what is settled, by key
	fixed, hidden map[string]bool
	came          map[string]words.Line // where the text of a field came from
	offers        []datasheet.Offer
	chosen        int // of the offers, counted from 1; 0: none
	counter       bool
}

// Settle fixes some fields, fills others, and leaves some out. Fixed ones stay as they are whatever is loaded.
func (l *Live) Settle(fixed, start calc.Texts, hidden []string) {
	l.base, l.fixed, l.hidden = map[string]typed{}, map[string]bool{}, map[string]bool{}
	for key, text := range start {
		l.base[key] = typed{text: text}
	}
	for key, text := range fixed {
		l.base[key], l.fixed[key] = typed{text: text}, true
	}
	for _, key := range hidden {
		l.hidden[key] = true
	}
	l.Example()
}

// settled puts what is settled into the fields: all of it at the start, else what is fixed.
func (l *Live) settled(start bool) {
	for key, t := range l.base {
		if start {
			l.texts[key] = t
		}
	}
	l.hold()
	l.came, l.chosen = nil, 0
}

// hold keeps what is fixed in its fields.
func (l *Live) hold() {
	for key := range l.fixed {
		l.texts[key] = l.base[key]
	}
}

// Fill puts texts into fields from outside, each as in a link.
func (l *Live) Fill(texts calc.Texts) {
	for key := range texts {
		delete(l.came, key)
	}
	l.put(texts)
}

// typedOver takes note that a person types into a field, and reports whether it is fixed.
func (l *Live) typedOver(f *form, key string) bool {
	if f != &l.form {
		return false
	}
	delete(l.came, key)
	return l.fixed[key]
}

// untouched reports whether nothing but what is settled stands in the fields.
func (l *Live) untouched() bool {
	for key, t := range l.texts {
		if base, ok := l.base[key]; !ok || base != t {
			return false
		}
	}
	return len(l.texts) == len(l.base)
}

// Fixed reports whether a field cannot be changed.
func (l *Live) Fixed(key string) bool { return l.fixed[key] }

// AtCounter has the page carry the keys of a counter: to print a slip, and to carry the figures away.
func (l *Live) AtCounter() { l.counter = true }

// Shelve offers the products of a data sheet, as far as they fill anything here.
func (l *Live) Shelve(s *datasheet.Sheet) bool {
	l.offers, l.chosen = s.Offers(l.Calculator.ID), 0
	return len(l.offers) > 0
}

// Product fills the fields from an offer, counted from 1. Nought takes back what the one before has filled.
func (l *Live) Product(n int) {
	for key := range l.came {
		delete(l.texts, key)
		if t, ok := l.base[key]; ok {
			l.texts[key] = t
		}
	}
	l.came, l.chosen = map[string]words.Line{}, 0
	texts := calc.Texts{}
	if 0 < n && n <= len(l.offers) {
		l.chosen = n
		o := &l.offers[n-1]
		for key, text := range o.Texts {
			if !l.fixed[key] {
				texts[key] = text
				l.came[key] = words.Say("From the data sheet: {product}, {field}.", words.Text("product", o.Product.Name), words.Named("field", o.From[key]))
			}
		}
	}
	l.put(texts)
}

// products writes the choice among the products of a data sheet.
func (l *Live) products(w *writer) {
	if len(l.offers) == 0 {
		return
	}
	id := l.Name + "-product"
	w.Put(`<div class="field products"><label for="%">%</label><select id="%" data-product="%"><option value="0">%</option>`,
		id, l.reader.Word("Product of the data sheet"), id, id, l.reader.Word("None: your own figures"))
	for i := range l.offers {
		o := &l.offers[i]
		name := o.Product.Name
		if o.Stage != "" {
			name = l.reader.Line(words.Say("{product}, {stage}", words.Text("product", name), words.Named("stage", o.Stage)))
		}
		w.Put(`<option value="%" selected="%">%</option>`, strconv.Itoa(i+1), markup.If(i+1 == l.chosen, "selected"), name)
	}
	w.Put(`</select></div>`)
}

// instead writes what stands in the place of a field that is not asked for, and reports whether anything does.
func (l *Live) instead(w *writer, in *calc.Input) bool {
	if l.hidden[in.Key] {
		return true
	}
	if !l.fixed[in.Key] {
		return false
	}
	w.Put(`<div class="field given"><p class="given-label">%`, l.reader.Word(in.Label))
	if in.Symbol != "" {
		w.Text(" ")
		w.symbol(in.Symbol)
	}
	w.Put(`</p><p class="given-figure">%</p></div>`, l.stands(in))
	return true
}

// stands is what stands in a field, in words where it is a choice.
func (l *Live) stands(in *calc.Input) string {
	text := l.Field(in.Key)
	for _, o := range in.Options {
		if o.Name == text {
			return l.reader.Word(o.Label)
		}
	}
	return text
}

// givens tells of what is hidden, since the answers rest on it.
func (l *Live) givens(w *writer) {
	if len(l.hidden) == 0 {
		return
	}
	w.put(`<details class="fold"><summary>%</summary><dl class="givens">`, "Set by this page")
	for _, in := range l.Calculator.Inputs {
		if l.hidden[in.Key] {
			w.Put(`<dt>%</dt><dd>%</dd>`, l.reader.Word(in.Label), l.stands(in))
		}
	}
	w.Put(`</dl></details>`)
}

// cameFrom says under a field where its text came from, where it was filled from a data sheet.
func (l *Live) cameFrom(w *writer, f *form, in *calc.Input) {
	if said, ok := l.came[in.Key]; ok && f == &l.form {
		w.Put(`<span class="came">%</span> `, l.reader.Line(said))
	}
}

// counterKeys are the keys of a counter.
func (l *Live) counterKeys(w *writer) {
	if l.counter {
		w.put(`<button type="button" data-do="slip">%</button><button type="button" data-do="carry">%</button><div class="carry" data-carry="carry"></div>`,
			"Print a slip", "Carry it away on a phone")
	}
}
