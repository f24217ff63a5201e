package main

import (
	"fmt"
	"math"
	"slices"
)

// sample is one figure measured several times.
type sample []float64

// median is the middle value, or the mean of the two in the middle.
func (s sample) median() float64 {
	v := slices.Sorted(slices.Values(s))
	n := len(v)
	if n == 0 {
		return math.NaN()
	}
	return (v[(n-1)/2] + v[n/2]) / 2
}

// percentile is the smallest value that at least p of 100 do not exceed (nearest rank).
func (s sample) percentile(p float64) float64 {
	v := slices.Sorted(slices.Values(s))
	if len(v) == 0 {
		return math.NaN()
	}
	return v[max(int(math.Ceil(p/100*float64(len(v)))), 1)-1]
}

// row writes the median with the spread and, where there is one, the aim.
func (s sample) row(what, unit, aim string) string {
	if len(s) == 0 {
		return fmt.Sprintf("  %-34s not seen", what)
	}
	text := fmt.Sprintf("  %-34s %8.1f %-3s  (%.1f to %.1f, %d runs)", what, s.median(), unit, slices.Min(s), slices.Max(s), len(s))
	if aim != "" {
		text += "  aim " + aim
	}
	return text
}
