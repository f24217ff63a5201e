package unit

import "math"

// The reader turns what was typed into the float64 nearest to its true value, so
// that 6' 3 1/2", 75.5 in and 1.9177 m are one and the same number and counting
// pieces gains none from rounding. Rounding a length to a grid would do less:
// the whole micrometre loses 1/16 in (1,587.5 µm), 1/1024 µm loses the mil
// (25.4 µm).
//
// Numbers are carried as a sum of two float64, about 106 bits, which is twice
// what the answer needs (Dekker, "A floating-point technique for extending the
// available precision", Numerische Mathematik 18, 1971).
type double struct{ hi, lo float64 }

// sum is a+b with its rounding error.
func sum(a, b float64) double {
	s := a + b
	t := s - a
	return double{s, (a - (s - t)) + (b - t)}
}

// product is a*b with its rounding error.
func product(a, b float64) double {
	p := a * b
	return double{p, math.FMA(a, b, -p)}
}

func (x double) plus(y double) double {
	s := sum(x.hi, y.hi)
	return sum(s.hi, s.lo+x.lo+y.lo)
}

func (x double) times(f float64) double {
	p := product(x.hi, f)
	return sum(p.hi, math.FMA(x.lo, f, p.lo))
}

// over divides, and rounds to one float64.
func (x double) over(y double) float64 {
	q := x.hi / y.hi
	x = x.plus(y.times(-q))
	p := x.hi / y.hi
	x = x.plus(y.times(-p))
	s := sum(q, p)
	return s.hi + (s.lo + x.hi/y.hi)
}

// whole holds a uint64 in two float64.
func whole(n uint64) double {
	hi := float64(n &^ (1<<32 - 1))
	return sum(hi, float64(n&(1<<32-1)))
}

// base is the typed number of a unit in the base unit of its kind.
func (n typed) base(u *Unit, minus bool) float64 {
	top, bottom, nought := u.fraction()
	x := whole(n.top)
	if minus {
		x = double{-x.hi, -x.lo}
	}
	x = x.plus(double{-nought * n.bottom, 0})
	return x.times(top).over(product(n.bottom, bottom))
}
