package unit

import "bytes"

// Symbols lists the symbols that the reader takes for a kind.
func Symbols(k Kind) (symbols []string) {
	for _, u := range All {
		if u.Kind == k && u.Symbol != "" {
			symbols = append(symbols, u.Symbol)
		}
	}
	return symbols
}

// unit finds what a folded word spells: in the kind that is read if it can, else
// in any other, so that kilograms for a length are called kilograms.
func (r *reader) unit(word []byte) *Unit {
	var elsewhere *Unit
	for _, u := range All {
		if u.Kind != r.kind && elsewhere != nil || !u.spelled(word) {
			continue
		}
		if u.Kind == r.kind {
			return u
		}
		elsewhere = u
	}
	return elsewhere
}

// spelled tells whether a folded word is the unit's symbol or one of its other
// spellings.
func (u *Unit) spelled(word []byte) bool {
	if len(word) == 0 {
		return false
	}
	if same(u.Symbol, word) {
		return true
	}
	for _, a := range u.Also {
		if a == string(word) {
			return true
		}
	}
	return false
}

// same folds a symbol as far as its first difference from a word.
func same(symbol string, word []byte) bool {
	for _, c := range symbol {
		s, known := plain(c)
		if !known {
			s = string(c)
		}
		if len(s) > len(word) || string(word[:len(s)]) != s {
			return false
		}
		word = word[len(s):]
	}
	return len(word) == 0 && symbol != ""
}

// word is the folded text from here up to the next digit: a unit among several.
func (r *reader) word() []byte {
	word := r.rest()
	if i := bytes.IndexAny(word, "0123456789"); i >= 0 {
		word = word[:i]
	}
	// ft -3: the space and the hyphen belong to what follows.
	return bytes.TrimRight(word, " -")
}

// refuseWord tells a word that spells no unit from what is no word at all.
func (r *reader) refuseWord(word []byte) {
	for _, c := range word {
		if letter(c) || c == '\'' || c == '"' || c == '%' || c == '#' {
			r.fail(UnknownUnit)
			return
		}
	}
	r.fail(NotNumber)
}

// british looks for an imperial measure. It is a fifth larger than the US one of
// the same name, so it is refused, with the litres that it holds.
func (r *reader) british(n typed, word []byte) bool {
	for _, p := range []string{"uk ", "imp ", "imperial ", "british "} {
		if len(word) <= len(p) || string(word[:len(p)]) != p {
			continue
		}
		gallons := 0.0
		switch rest := word[len(p):]; {
		case Gallons.spelled(rest):
			gallons = 1
		case Quarts.spelled(rest):
			gallons = 1.0 / 4
		case Pints.spelled(rest):
			gallons = 1.0 / 8
		case FluidOunces.spelled(rest):
			gallons = 1.0 / 160
		default:
			continue
		}
		// 4.54609 L: Weights and Measures Act 1985, schedule 1.
		litres := n.base(One, r.minus) * gallons * 4.54609
		text, _ := Style{Decimal: r.habit.Decimal}.Form(Litres.Base(litres), Form{Unit: Litres, Digits: 6})
		r.fail(UnknownUnit, text)
		return true
	}
	return false
}
