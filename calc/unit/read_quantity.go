package unit

import (
	"bytes"
	"strings"
)

// quantity reads a number with its unit, or several of falling size (6 ft 3 in),
// to the end of the entry.
func (r *reader) quantity() float64 {
	n := r.number()
	if r.why != 0 {
		return 0
	}
	return r.measure(n)
}

// measure reads what follows the first number of a quantity.
func (r *reader) measure(n typed) float64 {
	r.space()
	rest := r.rest()
	if len(rest) == 0 {
		return r.bare(n)
	}
	if string(rest) == "°" && (r.kind == KindTemperature || r.kind == KindDifference) {
		return r.degrees(n)
	}
	if u := r.unit(rest); u != nil {
		return r.of(n, u)
	}
	switch c := rest[0]; {
	case c == ':' && r.kind == KindSpan:
		r.span()
		return 0
	case numeral(c), c == ':', c == 'e' && len(rest) > 1 && (digit(rest[1]) || rest[1] == '-' || rest[1] == '+'):
		r.fail(NotNumber)
		return 0
	}
	if r.kind == KindVolume && r.british(n, rest) {
		return 0
	}
	return r.chain(n)
}

// of is a number of a unit, where the unit fits the kind and how it was written.
func (r *reader) of(n typed, u *Unit) float64 {
	switch {
	case u.Kind != r.kind:
		r.fail(WrongKind)
	case n.shape == feetAndInch && u != Inches:
		// 6-3 1/2 ft: feet, inches and a fraction have no one unit.
		r.fail(AmbiguousHyphen, strings.Replace(string(bytes.TrimSpace(r.folded[:r.at])), "-", "' ", 1)+"\"")
	}
	return n.base(u, r.minus)
}

// bare reads a number typed with no unit.
func (r *reader) bare(n typed) float64 {
	u := r.habit.Bare
	if u != nil && u.Kind != r.kind {
		u = nil
	}
	if r.kind == KindLength && n.shape != decimal {
		// Only builders in inches write halves, so 1/2 is half an inch where
		// nothing is said, and may be one even where millimetres are.
		switch {
		case u == nil, n.shape == feetAndInch:
			u = Inches
		case u.System == Metric:
			r.fail(NoUnit, r.text+" in", r.text+" "+u.Symbol)
		case n.shape == hyphened && u != Inches:
			r.fail(AmbiguousHyphen, r.text+" in", r.text+" "+u.Symbol)
		}
	}
	if u == nil {
		switch r.kind {
		case KindNumber:
			u = One
		case KindCount:
			u = Piece
		case KindRatio:
			u = Plain
		default:
			r.fail(NoUnit)
			return 0
		}
	}
	return r.of(n, u)
}

// degrees reads 73°, where the degree sign does not tell the scale: it is the
// scale of a number typed with no unit.
func (r *reader) degrees(n typed) float64 {
	if b := r.habit.Bare; b != nil {
		for _, u := range All {
			if u.Kind == r.kind && u.Symbol == b.Symbol {
				return r.of(n, u)
			}
		}
	}
	number := string(bytes.TrimSpace(r.folded[:r.at]))
	r.fail(NoUnit, number+" °F", number+" °C")
	return 0
}

// span refuses 1:30, which may be minutes or seconds after the colon.
func (r *reader) span() {
	first := string(r.folded[:r.at])
	r.at++
	last := string(r.rest())
	r.fail(NotNumber, first+" h "+last+" min", first+" min "+last+" s")
}

// chains are the units that follow one another in one quantity, falling.
var chains = [...][]*Unit{
	{Feet, Inches},
	{Gallons, Quarts, Pints, FluidOunces},
	{Pounds, Ounces},
	{Days, Hours, Minutes, Seconds},
}

// chain reads the first of several numbers with units and those that follow it.
// All but the last are whole numbers: 6.3 ft 3 in is more likely a slip.
func (r *reader) chain(n typed) (base float64) {
	word := r.word()
	u := r.unit(word)
	for {
		switch {
		case u == nil:
			r.refuseWord(word)
		case u.Kind == r.kind && (n.shape != decimal || n.bottom != 1):
			r.fail(NotNumber)
		}
		part := 0.0
		if r.why == 0 {
			part = r.of(n, u)
		}
		if r.why != 0 {
			return 0
		}
		base += part
		r.at += len(word)
		r.space()
		if u == Feet && r.take('-') {
			r.space()
		}
		n = r.number()
		if r.why != 0 {
			return 0
		}
		if n.shape == feetAndInch {
			r.fail(NotNumber)
			return 0
		}
		r.space()
		next, last := r.follows(u)
		if last {
			return base + r.of(n, next)
		}
		if next == nil {
			return 0
		}
		u = next
		word = r.word()
	}
}

// follows reads which unit comes after one in a chain, and whether it is the last
// thing in the entry. After feet, a number alone is inches.
func (r *reader) follows(u *Unit) (next *Unit, last bool) {
	rest := r.rest()
	if len(rest) == 0 {
		switch next := after(u); {
		case u == Feet:
			return Inches, true
		case next == nil:
			r.fail(NotNumber)
		default:
			r.fail(NoUnit, r.text+" "+next.Symbol)
		}
		return nil, false
	}
	next = r.unit(rest)
	last = next != nil
	if !last {
		next = r.unit(r.word())
	}
	switch {
	case next == nil:
		r.refuseWord(r.word())
	case next.Kind != r.kind:
		r.fail(WrongKind)
	case !inChain(u, next):
		r.fail(NotNumber)
	default:
		return next, last
	}
	return nil, false
}

// after is the unit that comes next in a chain, nil after the last.
func after(u *Unit) *Unit {
	for _, c := range chains {
		for i, v := range c[:len(c)-1] {
			if u == v {
				return c[i+1]
			}
		}
	}
	return nil
}

// inChain tells whether a unit may follow another in one quantity.
func inChain(first, next *Unit) bool {
	for _, c := range chains {
		found := false
		for _, u := range c {
			if u == next {
				return found
			}
			found = found || u == first
		}
	}
	return false
}
