package unit

import (
	"math"
	"strconv"
	"strings"
)

// Style is how a person reads numbers: which system comes first and which
// decimal mark, '.' or ','. The zero Style is US with a point.
type Style struct {
	System  System
	Decimal byte
}

// none is printed where there is no finite figure. The reader takes it for no
// number.
const none = "—"

// Print writes a figure in the unit that the style calls for, "4.49 mm".
func (s Style) Print(f Figure) string {
	text, _ := s.Form(f.Base, f.As.For(s.System))
	return text
}

// PrintBoth writes a figure in both systems, the style's own first:
// "4.49 mm (0.1768 in)". A figure that both systems print alike is written once.
func (s Style) PrintBoth(f Figure) string {
	first, second := f.As.For(s.System), f.As.For(s.Other())
	one, _ := s.Form(f.Base, first)
	two, _ := s.Form(f.Base, second)
	if first.Unit == second.Unit || one == two {
		return one
	}
	return one + " (" + two + ")"
}

// Other is the system that the style does not put first.
func (s Style) Other() System {
	if s.System == Metric {
		return US
	}
	return Metric
}

// Form writes a base value in one form, with its unit, and tells half a unit of
// the last digit that it was rounded to, in base units: the most that the print
// can be off by. What lies halfway is rounded away from nought, in decimals as in
// fractions of an inch (ISO 80000-1, annex B, rule B), which is how a tape is read.
// A value that is not finite is printed as a dash.
func (s Style) Form(base float64, f Form) (text string, half float64) {
	u := f.Unit
	switch {
	case !finite(u.Of(base)):
		return none, 0
	case u == CalendarDay:
		return printDate(base), 0.5
	case u == TimeOfDay:
		return printClock(base), 30
	case f.Fraction > 0 && u.Kind == KindLength && math.Abs(base) < longestFraction:
		return printFraction(base, f), float64(Inch) / float64(f.Fraction) / 2
	}
	number, half := s.Number(base, f)
	return join(number, u.Symbol), half * u.Size
}

// Number writes the number of a form without its unit, as a step of the working
// shows it, with half a unit of its last digit in that unit.
func (s Style) Number(base float64, f Form) (text string, half float64) {
	digits := f.Digits
	if digits == 0 {
		digits = 4
	}
	number, step := s.number(f.Unit.Of(base), digits)
	return number, step / 2
}

func finite(x float64) bool { return math.Abs(x) <= math.MaxFloat64 }

// join sets a symbol after its number: a space before it (SP 811, 7.2), except
// for degrees of arc and for what starts with a stroke (6/min).
func join(number, symbol string) string {
	if symbol == "" || symbol == Degrees.Symbol || symbol[0] == '/' {
		return number + symbol
	}
	return number + " " + symbol
}

// significant is how many digits of a float64 are trusted. The fifteenth is the
// last that survives every change of unit, and cutting there lets a tie be a tie:
// 21.45 is 21.449999999999999 in a float64, and rounds up.
const significant = 15

// places is the most decimals that are printed.
const places = 9

// number writes n to so many significant digits, never fewer than its whole part
// has, without trailing noughts, and tells the size of the last digit it was
// rounded to: 9.9996 to four digits is 10.00, so it is 10 to the nearest 0.01.
func (s Style) number(n float64, digits int) (text string, step float64) {
	if !finite(n) {
		return none, 0
	}
	var scratch [32]byte
	e := strconv.AppendFloat(scratch[:0], math.Abs(n), 'e', significant-1, 64)
	exponent, _ := strconv.Atoi(string(e[significant+2:]))
	var d [1 + significant]byte // a nought to carry into, then the digits
	d[0], d[1] = '0', e[0]
	copy(d[2:], e[2:significant+1])

	whole := exponent + 1 // digits before the mark
	decimals := min(max(digits-whole, 0), places)
	kept := whole + decimals
	if roundUp(d[:], kept) {
		if whole++; whole+decimals > digits && decimals > 0 {
			decimals--
		}
		exponent++
	} else {
		copy(d[:], d[1:])
		d[significant] = '0'
	}
	kept = min(max(whole+decimals, 0), significant)
	step = math.Pow(10, float64(max(-decimals, whole-significant)))
	return s.decimal(n < 0, d[:kept], exponent), step
}

// roundUp rounds digits, which stand behind one nought, to so many of them, and
// tells whether that carried into the nought.
func roundUp(d []byte, kept int) bool {
	switch {
	case kept < 0:
		return false
	case kept >= significant || d[1+kept] < '5':
		return false
	}
	for i := kept; ; i-- {
		if d[i] != '9' {
			d[i]++
			return i == 0
		}
		d[i] = '0'
	}
}

// decimal writes digits of which the first counts tens to the exponent, without
// trailing noughts behind the mark, and nought without a sign.
func (s Style) decimal(minus bool, digits []byte, exponent int) string {
	var out strings.Builder
	digits = []byte(strings.TrimRight(string(digits), "0"))
	if len(digits) == 0 {
		return "0"
	}
	if minus {
		out.WriteString("−")
	}
	for i := min(exponent, 0); i <= max(exponent, len(digits)-1); i++ {
		if i == exponent+1 {
			if s.Decimal == ',' {
				out.WriteByte(',')
			} else {
				out.WriteByte('.')
			}
		}
		if 0 <= i && i < len(digits) {
			out.WriteByte(digits[i])
		} else {
			out.WriteByte('0')
		}
	}
	return out.String()
}
