// Package qr draws a text as a QR code (ISO/IEC 18004), for another device to scan from the screen or from paper. The encoding is the
// library rsc.io/qr's; its package of codes alone costs 20 KB of the program, its images are left out.
package qr

import (
	"strconv"
	"strings"

	"rsc.io/qr/coding"
)

// Most is how many bytes the largest code holds at the level taken here, L (ISO/IEC 18004, table 7, version 40): a seventh of it may be
// damaged. A phone reads the largest from a screen only in good light and held still; half of that is read at once.
const Most = 2953

// Quiet is how many modules of white the standard wants around a code.
const Quiet = 4

// Code is a square of modules, black or white.
type Code struct {
	Side  int // modules, the white around them not counted
	black func(x, y int) bool
}

// Of draws a text in the smallest code that holds it. It reports false where none does.
func Of(text string) (*Code, bool) {
	bytes := coding.String(text)
	for v := coding.Version(coding.MinVersion); v <= coding.MaxVersion; v++ {
		if bytes.Bits(v) > v.DataBytes(coding.L)*8 {
			continue
		}
		plan, err := coding.NewPlan(v, coding.L, 0)
		if err != nil {
			return nil, false
		}
		drawn, err := plan.Encode(bytes)
		if err != nil {
			return nil, false
		}
		return &Code{drawn.Size, drawn.Black}, true
	}
	return nil, false
}

// Black reports whether a module is black: x to the right and y down from the upper left one.
func (c *Code) Black(x, y int) bool { return c.black(x, y) }

// Box is the viewBox of an SVG that shows the code with the white around it.
func (c *Code) Box() string {
	side := strconv.Itoa(c.Side + 2*Quiet)
	return "0 0 " + side + " " + side
}

// Path is the code as the d of an SVG path, a unit a module: each run of black in a row is a bar one unit high. The white around it
// is left, and must be drawn under it: a dark page would hide it.
func (c *Code) Path() string {
	var b strings.Builder
	for y := range c.Side {
		for x := 0; x < c.Side; x++ {
			if !c.Black(x, y) {
				continue
			}
			from := x
			for x < c.Side && c.Black(x, y) {
				x++
			}
			long := strconv.Itoa(x - from)
			b.WriteString("M" + strconv.Itoa(from+Quiet) + " " + strconv.Itoa(y+Quiet) + "h" + long + "v1h-" + long + "z")
		}
	}
	return b.String()
}
