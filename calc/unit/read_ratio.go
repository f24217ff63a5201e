package unit

import "bytes"

// ratio reads 2 %, 0.02, 1:48, 1/48, 1 in 48, and a rise in a run: 1/4 in per ft,
// 20 mm/m, 2 in / 8 ft. A stroke between two numbers is a ratio whatever a bare
// number means, and so is not a fraction of a per cent.
func (r *reader) ratio() float64 {
	start := r.at
	if stroke := r.lengthStroke(); stroke > 0 {
		return r.rise(stroke)
	}
	n := r.number()
	if r.why != 0 {
		return 0
	}
	switch {
	case r.peek() == ' ' && r.ahead(1) == ':':
		r.at += 2
		return r.to(n)
	case r.peek() == ':', r.peek() == '/' && numeral(r.ahead(1)):
		r.at++
		return r.to(n)
	case bytes.HasPrefix(r.s[r.at:], oneIn) && digit(r.ahead(len(oneIn))):
		r.at += len(oneIn)
		return r.to(n)
	case r.at == len(r.s) && n.shape == simple:
		return n.base(Plain, r.minus)
	}
	r.at = start
	return r.quantity()
}

// oneIn stands in 1 in 80, a fall as British drawings give it. Read as inches, 1
// in 12 says the same.
var oneIn = []byte(" in ")

// to divides a number by the one that follows, the last thing in the entry.
func (r *reader) to(n typed) float64 {
	r.space()
	m := r.number()
	switch {
	case r.why != 0:
	case r.at != len(r.s):
		r.fail(NotNumber)
	case m.top == 0:
		r.fail(ZeroDenominator)
	}
	if r.why != 0 {
		return 0
	}
	return n.base(Plain, r.minus) / m.base(Plain, false)
}

// lengthStroke finds the stroke between two lengths: the first one that follows a
// unit, where what stands before it is no unit of its own (W/m2). 0 is none.
func (r *reader) lengthStroke() int {
	for i := r.at + 1; i < len(r.s); i++ {
		if r.s[i] == '/' && !numeral(r.s[i-1]) {
			return i
		}
	}
	return 0
}

// rise reads a length over a length, or over one of a unit of length.
func (r *reader) rise(stroke int) float64 {
	whole := r.s
	lengths := reader{kind: KindLength, habit: Habit{Decimal: r.habit.Decimal}, text: r.text, minus: r.minus}
	lengths.s, lengths.at = whole[:stroke], r.at
	rise := lengths.quantity()
	lengths.s, lengths.at, lengths.minus = whole, stroke+1, false
	run := 0.0
	switch {
	case lengths.why != 0:
	case numeral(lengths.peek()):
		run = lengths.quantity()
	default:
		u := lengths.unit(whole[lengths.at:])
		switch {
		case u == nil:
			lengths.fail(UnknownUnit)
		case u.Kind != KindLength:
			lengths.fail(WrongKind)
		default:
			run = u.Size
		}
	}
	if lengths.why == 0 && run == 0 {
		lengths.fail(ZeroDenominator)
	}
	r.why, r.try = lengths.why, lengths.try
	if r.why != 0 {
		return 0
	}
	return rise / run
}
