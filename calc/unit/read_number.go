package unit

import "bytes"

// shape is how a number was written, because that tells the unit: only builders
// in inches write halves.
type shape uint8

const (
	decimal     shape = iota // 75, 75.5
	simple                   // 1/2
	mixed                    // 75 1/2
	hyphened                 // 75-1/2
	feetAndInch              // 6-3 1/2, the value in inches
)

// typed is a number exactly as written: top over bottom.
type typed struct {
	top    uint64  // at most 18 digits
	bottom float64 // a power of ten up to 1e22, or a denominator: both exact
	shape  shape
}

// most is how many digits the whole, the top or the bottom of a fraction may
// have: the value over the bottom then fits the 18 digits that are kept.
const most = 9

// number reads 75, 75.5, 1/2, 75 1/2, 75-1/2 or 6-3 1/2.
//
// Without a foot mark a hyphen joins a whole to its fraction (3-1/2 is 3.5), and
// of three numbers the first is feet (6-3 1/2). No other hyphen between numbers
// is read: 6-3 may be feet and inches, a range or a subtraction.
func (r *reader) number() typed {
	start := r.at
	n, whole := r.decimal()
	switch {
	case r.why != 0:
		return n
	case whole && r.peek() == '/' && digit(r.ahead(1)):
		r.at++
		return r.over(0, n.top, simple)
	case whole && r.peek() == ' ' && r.fractionAt(1):
		r.at++
		return r.mixed(n.top, mixed)
	case whole && r.peek() == '-' && r.fractionAt(1):
		r.at++
		return r.mixed(n.top, hyphened)
	case whole && r.peek() == '-' && r.inchesAt(1):
		r.at++
		feet, inches := n.top, r.whole()
		r.at++
		if inches > 11 || feet > 1e6 || r.kind != KindLength {
			r.fail(NotNumber)
			return n
		}
		return r.mixed(feet*12+inches, feetAndInch)
	}
	r.refuseHyphen(start, whole)
	return n
}

// mixed reads the fraction of a mixed number. A fraction that is not below one
// is a slip (75 11/2 for 75 1/2 or 75 11/32) and is not read.
func (r *reader) mixed(whole uint64, s shape) typed {
	top := r.whole()
	r.at++
	n := r.over(whole, top, s)
	if r.why == 0 && float64(top) >= n.bottom {
		r.fail(NotNumber)
	}
	return n
}

// over reads the bottom of a fraction, after its stroke.
func (r *reader) over(whole, top uint64, s shape) typed {
	bottom := r.whole()
	switch {
	case r.why != 0:
	case bottom == 0:
		r.fail(ZeroDenominator)
	case whole >= 1e9 || top >= 1e9 || numeral(r.peek()):
		r.fail(NotNumber)
	}
	return typed{top: whole*bottom + top, bottom: float64(bottom), shape: s}
}

// whole reads a run of at most nine digits.
func (r *reader) whole() (n uint64) {
	start := r.at
	for digit(r.peek()) {
		if r.at-start == most {
			r.fail(NotNumber)
			return n
		}
		n = n*10 + uint64(r.peek()-'0')
		r.at++
	}
	return n
}

// digitsAt counts the digits from n bytes ahead.
func (r *reader) digitsAt(n int) (count int) {
	for digit(r.ahead(n + count)) {
		count++
	}
	return count
}

// fractionAt tells whether a/b stands n bytes ahead.
func (r *reader) fractionAt(n int) bool {
	d := r.digitsAt(n)
	return d > 0 && r.ahead(n+d) == '/' && digit(r.ahead(n+d+1))
}

// inchesAt tells whether a b/c or a-b/c stands n bytes ahead.
func (r *reader) inchesAt(n int) bool {
	d := r.digitsAt(n)
	c := r.ahead(n + d)
	return d > 0 && (c == ' ' || c == '-') && r.fractionAt(n+d+1)
}

// refuseHyphen refuses a hyphen between two numbers, and asks for feet and inches
// or a fraction where inches were meant, else for one end of the range.
func (r *reader) refuseHyphen(start int, whole bool) {
	end, n := r.at, 0
	if r.peek() == ' ' {
		n = 1
	}
	if r.ahead(n) != '-' {
		return
	}
	n++
	if r.ahead(n) == ' ' {
		n++
	}
	if !digit(r.ahead(n)) {
		return
	}
	r.at += n
	_, second := r.decimal()
	if r.why != 0 {
		return
	}
	a, b := string(r.folded[start:end]), string(r.folded[end+n:r.at])
	unit := bytes.TrimSpace(r.rest())
	u := r.unit(unit)
	switch {
	case r.kind == KindLength && whole && second && (len(unit) == 0 || u == Inches):
		r.fail(AmbiguousHyphen, a+"' "+b+"\"", a+" "+b+"/16 in")
	case u != nil:
		r.fail(AmbiguousHyphen, join(a, u.Symbol), join(b, u.Symbol))
	default:
		r.fail(AmbiguousHyphen, a, b)
	}
}
