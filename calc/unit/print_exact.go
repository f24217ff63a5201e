package unit

import (
	"math"
	"strconv"
)

// Exact writes a base value in a unit with every digit that it needs to read
// back as the same float64 under the same decimal mark: what a field shows.
//
// It starts at twelve digits, which is what a value that somebody typed needs
// even after a change of unit. Two sorts of value cannot come back to the last
// bit: degrees Fahrenheit within a degree of 0 °C, where taking 32 away leaves
// fewer digits than were written (they are right to 1e-15 °C), and numbers whose
// digits go past the 22nd place (right to 1e-22 of the unit). A time of day is
// written to the second, a date to the day.
//
// Lengths that are a whole number of sixty-fourths are written as a fraction in
// inches and, unless they are whole feet, in feet.
func (s Style) Exact(base float64, u *Unit) string {
	n := u.Of(base)
	if !finite(n) {
		return none
	}
	switch u {
	case CalendarDay:
		return printDate(base)
	case TimeOfDay:
		return printTime(base)
	case Inches, Feet:
		if sixtyFourths(base) && (u == Inches || math.Mod(base, float64(Foot)) != 0) {
			return printFraction(base, Form{Unit: u, Fraction: 64})
		}
	}
	minus := n < 0
	var t typed
	var decimals int
	for digits := enough; digits <= digitsKept; digits++ {
		t, decimals = rounded(math.Abs(n), digits)
		if t.base(u, minus) == base {
			break
		}
		if digits > significant {
			if t = t.closer(base, u, minus); t.base(u, minus) == base {
				break
			}
		}
	}
	text := strconv.AppendUint(nil, t.top, 10)
	return join(s.decimal(minus, text, len(text)-1-decimals), u.Symbol)
}

// enough is how many digits a typed value needs.
const enough = 12

// rounded is a number to so many significant digits, or to 22 decimals if those
// are fewer, with its count of decimals.
func rounded(n float64, digits int) (t typed, decimals int) {
	var scratch [32]byte
	e := strconv.AppendFloat(scratch[:0], n, 'e', digits-1, 64)
	exponent, _ := strconv.Atoi(string(e[digits+2:]))
	decimals = digits - 1 - exponent
	for i, c := range e[:digits+1] {
		if i == 1 { // the mark
			continue
		}
		t.top = t.top*10 + uint64(c-'0')
	}
	for ; decimals > placesKept; decimals-- {
		t.top = (t.top + 5) / 10
	}
	for ; decimals < 0 && t.top < 1e17; decimals++ {
		t.top *= 10
	}
	t.bottom = power10(max(decimals, 0))
	return t, decimals
}

// closer mends the last digits of a number so that it reads as the base value:
// the number of a unit as a float64 is itself only near. It goes half the way at
// a time, because the whole way from the end of what reads as one float64 may
// overshoot the next.
func (t typed) closer(base float64, u *Unit, minus bool) typed {
	top, bottom, _ := u.fraction()
	for range 8 {
		off := (base - t.base(u, minus)) * bottom / top * t.bottom
		if minus {
			off = -off
		}
		off = math.Round(off / 2)
		if next := float64(t.top) + off; off == 0 || next < 0 || next >= 1e18 {
			return t
		}
		t.top = uint64(int64(t.top) + int64(off))
	}
	return t
}

// sixtyFourths tells whether a length is a whole number of 1/64 in, to the bit.
func sixtyFourths(base float64) bool {
	n := math.Round(base * 64 / float64(Inch))
	return math.Abs(base) < longestFraction && n*float64(Inch)/64 == base
}
