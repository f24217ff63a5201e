package unit

import "bytes"

// ratio reads 2 %, 0.02, 1:48, 1/48, 1 in 48, and a rise in a run: 1/4 in per ft,
// 20 mm/m, 2 in / 8 ft, 1/8 in in 10 ft. A stroke between two numbers is a ratio whatever a bare
// number means: 1/48 is never a forty-eighth of a per cent.
func (r *reader) ratio() float64 {
	start := r.at
	n := r.number()
	if r.why != 0 {
		return 0
	}
	switch {
	case r.peek() == ' ' && r.ahead(1) == ':':
		r.at += 2
		return r.to(n)
	case r.peek() == ':', r.peek() == '/' && numeral(r.ahead(1)) && n.shape == decimal:
		r.at++
		return r.to(n)
	case bytes.HasPrefix(r.rest(), oneIn) && digit(r.ahead(len(oneIn))):
		r.at += len(oneIn)
		return r.to(n)
	case r.at == r.end && n.shape == simple:
		return n.base(Plain, r.minus)
	}
	r.space()
	if r.unit(r.rest()) == nil {
		if end, run := r.stroke(); run > 0 {
			r.at = start
			return r.rise(end, run)
		}
	}
	return r.measure(n)
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
	case r.at != r.end:
		r.fail(NotNumber)
	case m.top == 0:
		r.fail(ZeroDenominator)
	}
	if r.why != 0 {
		return 0
	}
	return n.base(Plain, r.minus) / m.base(Plain, false)
}

// stroke finds the first stroke, or " in ", that follows a unit and so is no
// fraction's and no inches: where the rise ends and where the run starts, 0 for
// nowhere.
func (r *reader) stroke() (end, run int) {
	for i := r.at + 1; i < r.end; i++ {
		switch c := r.folded[i]; {
		case digit(r.folded[i-1]):
		case c == '/':
			return i, i + 1
		case bytes.HasPrefix(r.folded[i:r.end], oneIn):
			return i, i + len(oneIn)
		}
	}
	return 0, 0
}

// rise reads a length over a length, or over one of a unit of length.
func (r *reader) rise(stop, start int) float64 {
	kind, end := r.kind, r.end
	r.kind, r.end = KindLength, stop
	rise := r.quantity()
	r.at, r.end, r.minus = start, end, false
	run := 0.0
	switch u := r.unit(r.rest()); {
	case r.why != 0:
	case numeral(r.peek()):
		run = r.quantity()
	case u == nil:
		r.fail(UnknownUnit)
	case u.Kind != KindLength:
		r.fail(WrongKind)
	default:
		run = u.Size
	}
	r.kind = kind
	if r.why == 0 && run == 0 {
		r.fail(ZeroDenominator)
	}
	if r.why != 0 {
		return 0
	}
	return rise / run
}
