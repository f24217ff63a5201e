package unit

import (
	"bytes"
	"strings"
)

// digitsKept is how many digits of a decimal count: a float64 cannot tell the
// eighteenth apart, and eighteen fit a uint64.
const digitsKept = 18

// placesKept is how many decimal places count: 1e22 is the last power of ten
// that a float64 holds exactly.
const placesKept = 22

// decimal reads digits with their decimal and group marks, and tells whether
// they are a plain run of digits, which may be part of a fraction.
func (r *reader) decimal() (n typed, plain bool) {
	start := r.at
	r.at += r.decimalLength()
	token := r.folded[start:r.at]
	if len(token) == 0 {
		r.fail(NotNumber)
		return n, false
	}
	mark := r.mark(token)
	if r.why != 0 {
		return n, false
	}
	n, ok := value(token, mark)
	if !ok {
		r.fail(TooBig)
	}
	plain = len(token) <= most && !bytes.ContainsAny(token, "., ")
	return n, plain
}

// decimalLength is how far digits and marks reach from here. A space between
// groups of three belongs to the number, as SP 811 (10.5.3) writes 1 905, unless
// a fraction follows it (75 125/1000).
func (r *reader) decimalLength() (n int) {
	for {
		switch c := r.ahead(n); {
		case digit(c):
			n++
		case (c == '.' || c == ',') && digit(r.ahead(n+1)):
			n++
		case c == ' ' && r.digitsAt(n+1) == 3 && r.ahead(n+4) != '/' && leadGroup(r.folded[r.at:r.at+n]):
			n++
		default:
			return n
		}
	}
}

// leadGroup tells whether a group of three may follow after a space: one to
// three digits not led by a nought, or such groups already.
func leadGroup(token []byte) bool {
	first, rest, more := bytes.Cut(token, []byte(" "))
	if len(first) == 0 || len(first) > 3 || first[0] == '0' || bytes.ContainsAny(token, ".,") {
		return false
	}
	return !more || len(rest)%4 == 3
}

// mark finds which of the marks in a number is the decimal one, 0 for none.
//
// Where the habit names the decimal mark, the other may stand between groups of
// three. Where it does not, the last of two different marks is the decimal one,
// a mark that comes twice is a group mark, and a lone comma before three digits
// may be either: 1,905 is refused, 12,5 and 1.905 are read.
func (r *reader) mark(token []byte) (mark byte) {
	commas, points := bytes.Count(token, []byte(",")), bytes.Count(token, []byte("."))
	switch d := r.habit.Decimal; {
	case commas+points == 0:
		return 0
	case d == '.' || d == ',':
		mark = d
		if !marked(token, d) {
			r.refuseMark(token, other(d))
		}
		return mark
	case commas > 0 && points > 0:
		mark = token[bytes.LastIndexAny(token, ".,")]
	case commas > 1:
		mark = '.'
	case points > 1:
		mark = ','
	case points == 1:
		mark = '.'
	case marked(token, '.'):
		text := string(token)
		r.fail(AmbiguousComma, r.instead(text, strings.Replace(text, ",", "", 1)), r.instead(text, strings.Replace(text, ",", ".", 1)))
	default:
		mark = ','
	}
	if r.why == 0 && !marked(token, mark) {
		r.fail(NotNumber)
	}
	return mark
}

// refuseMark tells a number written with the marks the other way round from one
// that is no number either way.
func (r *reader) refuseMark(token []byte, otherway byte) {
	if !marked(token, otherway) {
		r.fail(NotNumber)
		return
	}
	swapped := bytes.Map(func(c rune) rune {
		switch c {
		case '.':
			return ','
		case ',':
			return '.'
		}
		return c
	}, token)
	r.fail(WrongMark, r.instead(string(token), string(swapped)))
}

// instead is the typed text with one number of it written otherwise.
func (r *reader) instead(was, is string) string { return strings.Replace(r.text, was, is, 1) }

// other is the mark that is not the decimal one.
func other(mark byte) byte {
	if mark == ',' {
		return '.'
	}
	return ','
}

// marked tells whether a number is written rightly for a decimal mark: at most
// one of it, and before it groups of three behind one to three digits.
func marked(token []byte, mark byte) bool {
	whole, after, _ := bytes.Cut(token, []byte{mark})
	if bytes.ContainsAny(after, "., ") {
		return false
	}
	group := bytes.IndexAny(whole, "., ")
	if group < 0 {
		return true
	}
	if group == 0 || group > 3 || whole[0] == '0' {
		return false
	}
	for i, c := range whole[group:] {
		if c == whole[group] != (i%4 == 0) {
			return false
		}
	}
	return (len(whole)-group)%4 == 0
}

// value adds the digits up, and tells whether the whole part has at most 18.
// Digits past the eighteenth and places past the 22nd are below anything that a
// float64 shows and are dropped.
func value(token []byte, mark byte) (n typed, ok bool) {
	n.bottom = 1
	places, after := 0, false
	for _, c := range token {
		switch {
		case c == mark && mark != 0:
			after = true
		case !digit(c):
		case after && (n.top >= 1e17 || places == placesKept):
		case n.top >= 1e17:
			return n, false
		default:
			n.top = n.top*10 + uint64(c-'0')
			if after {
				places++
			}
		}
	}
	n.bottom = power10(places)
	return n, true
}

// power10 is exact up to 1e22.
func power10(n int) float64 {
	p := 1.0
	for range n {
		p *= 10
	}
	return p
}
