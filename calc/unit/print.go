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
	if first.Unit == second.Unit {
		return one
	}
	two, _ := s.Form(f.Base, second)
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
// the last printed digit, in base units: the most that the print can be off by.
func (s Style) Form(base float64, f Form) (text string, half float64) {
	u := f.Unit
	switch u {
	case CalendarDay:
		return printDate(base), 0.5
	case TimeOfDay:
		return printClock(base), 30
	}
	if f.Fraction > 0 {
		return printFraction(base, f), float64(Inch) / float64(f.Fraction) / 2
	}
	digits := f.Digits
	if digits == 0 {
		digits = 4
	}
	number, step := s.number(u.Of(base), digits)
	return join(number, u.Symbol), step / 2 * u.Size
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

// join sets a symbol after its number: a space before it (SP 811, 7.2), except
// for degrees of arc.
func join(number, symbol string) string {
	if symbol == "" {
		return number
	}
	if symbol == Degrees.Symbol {
		return number + symbol
	}
	return number + " " + symbol
}

// number writes n to so many significant digits, never fewer than its whole
// part has, without trailing noughts, and tells the size of the last digit.
func (s Style) number(n float64, digits int) (text string, step float64) {
	decimals := 0
	if n != 0 {
		whole := int(math.Floor(math.Log10(math.Abs(n)))) + 1
		decimals = min(max(digits-whole, 0), 9)
	}
	text = strconv.FormatFloat(n, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		text = "0"
	}
	text = strings.Replace(text, "-", "−", 1)
	if s.Decimal == ',' {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text, math.Pow(10, float64(-decimals))
}

// printFraction writes a length in feet, inches and a fraction of an inch,
// rounded half up to the form's fraction, with carry: 11.9999 in is 1'-0".
func printFraction(base float64, f Form) string {
	n := int64(math.Floor(math.Abs(base)/float64(Inch)*float64(f.Fraction) + 0.5))
	den := int64(f.Fraction)
	whole, num := n/den, n%den
	for num > 0 && num%2 == 0 && den%2 == 0 {
		num, den = num/2, den/2
	}
	sign := ""
	if base < 0 && n != 0 {
		sign = "−"
	}
	part := ""
	if num > 0 {
		part = strconv.FormatInt(num, 10) + "/" + strconv.FormatInt(den, 10)
	}
	if f.Unit != Feet || whole < 12 {
		switch {
		case part == "":
			return sign + strconv.FormatInt(whole, 10) + " in"
		case whole == 0:
			return sign + part + " in"
		}
		return sign + strconv.FormatInt(whole, 10) + " " + part + " in"
	}
	inches := strconv.FormatInt(whole%12, 10)
	if part != "" {
		inches += " " + part
	}
	return sign + strconv.FormatInt(whole/12, 10) + "'-" + inches + "\""
}

// Exact writes a base value in a unit with every digit that it needs to read
// back as the same value: what a field shows. Inches that are a whole number of
// sixty-fourths are written as a fraction.
func (s Style) Exact(base float64, u *Unit) string {
	switch u {
	case CalendarDay:
		return printDate(base)
	case TimeOfDay:
		return printClock(base)
	case Inches:
		n := base / float64(Inch) * 64
		if base >= 0 && n == math.Trunc(n) && n < 1<<40 {
			return printFraction(base, Form{Unit: Inches, Fraction: 64})
		}
	}
	text := strconv.FormatFloat(round12(u.Of(base)), 'f', -1, 64)
	text = strings.Replace(text, "-", "−", 1)
	if s.Decimal == ',' {
		text = strings.Replace(text, ".", ",", 1)
	}
	return join(text, u.Symbol)
}

// round12 drops what a change of unit adds behind the twelfth significant digit.
func round12(x float64) float64 {
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	if err != nil {
		return x
	}
	return y
}
