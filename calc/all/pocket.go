//go:build pocket

package all

import "setbook/calc"

// large is empty in the program of the pages that have no large calculator.
var large []*calc.Calculator
