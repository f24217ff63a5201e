package unit

import (
	"math"
	"strconv"
)

// longestFraction bounds what is written in inches and a fraction, to the nine
// digits of inches that the reader takes.
const longestFraction = 1e13

// printFraction writes a length in feet, inches and a fraction of an inch,
// rounded half up to the form's fraction, with carry: 11.9999 in is 1'-0".
func printFraction(base float64, f Form) string {
	den := int64(f.Fraction)
	n := int64(math.Floor(math.Abs(base)*float64(den)/float64(Inch) + 0.5))
	inches, num := n/den, n%den
	for num > 0 && num%2 == 0 && den%2 == 0 {
		num, den = num/2, den/2
	}
	var scratch [48]byte
	out := scratch[:0]
	if base < 0 && n != 0 {
		out = append(out, "−"...)
	}
	feet := f.Unit == Feet && inches >= 12
	if feet {
		out = strconv.AppendInt(out, inches/12, 10)
		out = append(out, "'-"...)
		inches %= 12
	}
	if feet || inches > 0 || num == 0 {
		out = strconv.AppendInt(out, inches, 10)
		if num > 0 {
			out = append(out, ' ')
		}
	}
	if num > 0 {
		out = strconv.AppendInt(out, num, 10)
		out = append(out, '/')
		out = strconv.AppendInt(out, den, 10)
	}
	if feet {
		return string(append(out, '"'))
	}
	return string(append(out, " in"...))
}
