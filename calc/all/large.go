//go:build !pocket

package all

import (
	"setbook/calc"
	"setbook/calc/levels"
	"setbook/calc/nest"
	"setbook/calc/setout"
	"setbook/calc/takeoff"
)

// large are the calculators whose code is large. They are long work too (Calculator.Long), and their pages have the whole
// program; the tag "pocket" leaves them out of the one that every other page has. The last orders from the others' entries: they are
// handed to it, so that it knows none of them.
var large = ordered(&levels.Calculator, &setout.Calculator, &nest.Calculator)

func ordered(list ...*calc.Calculator) []*calc.Calculator {
	return append(list, takeoff.Of(inOrder(questions, list)))
}
