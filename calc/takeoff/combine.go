package takeoff

import (
	"math"

	"setbook/calc/unit"
)

// How a sheet's spread is read, and how much of it an order covers.
const (
	deviations = 2     // standard deviations from a sheet's likely figure to its high end: source.TwoDeviations, taken by us
	oneSided   = 1.645 // standard deviations that 19 in 20 stay under: source.OneInTwenty
)

// Shared adds spreads that one cause moves together, as the hand and the bag of one crew do: they add straight. Source: source.SharedAdds.
func Shared(halves ...float64) (half float64) {
	for _, h := range halves {
		half += h
	}
	return half
}

// Independent adds spreads that know nothing of each other: the root of the sum of their squares. Source: source.RootSumSquares.
func Independent(halves ...float64) float64 {
	squares := 0.0
	for _, h := range halves {
		squares += h * h
	}
	return math.Sqrt(squares)
}

// Cautious is enough 19 times in 20, where half is how far the high end lies over the likely figure. Source: source.OneInTwenty.
func Cautious(likely, half float64) float64 { return likely + oneSided*half/deviations }

// EachPaver is the mass of one paver. By definition.
func EachPaver(face unit.Area, thick unit.Length, density unit.Density) unit.Mass {
	return face.Deep(thick).Weighs(density)
}
