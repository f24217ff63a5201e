package surface

import "math"

// Flatness is what the F number of a set of lines is found from.
type Flatness struct {
	Bends  int     // curvatures: readings less two
	Mean   float64 // of the curvatures
	Spread float64 // their standard deviation, of a sample
}

// Bend is the flatness of one line of readings at equal steps: from each three in a row, the first less twice the
// middle one and the last. It is 0 along a straight line, whatever its slope; hollows are positive. Source: source.FNumbers.
func Bend(z []float64) Flatness {
	f := Flatness{Bends: max(len(z)-2, 0)}
	if f.Bends < 2 {
		return f
	}
	sum := 0.0
	for k := 2; k < len(z); k++ {
		sum += z[k] - 2*z[k-1] + z[k-2]
	}
	f.Mean = sum / float64(f.Bends)
	square := 0.0
	for k := 2; k < len(z); k++ {
		off := z[k] - 2*z[k-1] + z[k-2] - f.Mean
		square += off * off
	}
	f.Spread = math.Sqrt(square / float64(f.Bends-1))
	return f
}

// Rough is the spread and the mean of the curvatures together: what the F number divides. 0 for a straight line.
func (f Flatness) Rough() float64 { return 3*f.Spread + math.Abs(f.Mean) }

// Flatten raises readings as little as has every straightedge of these lengths, laid anywhere, lie over no gap that is
// deeper than its limit. It gives how far each is raised. Nothing is taken off. Raising one reading can lift a
// straightedge off another, so the lines are gone over until no reading rises by more than a ten-thousandth of the least limit, a thousand
// times at most. Going may end it early by reporting false.
func (g *Grid) Flatten(lengths, limits []float64, going func(done, of int) bool) []float64 {
	raised := g.with(append([]float64(nil), g.Z...))
	least := math.Inf(1)
	for _, limit := range limits {
		least = math.Min(least, limit)
	}
	const rounds = 1000
	var s scan
	for round := range rounds {
		most := 0.0
		whole := true
		done, of := 0, 3*(g.Wide+g.Deep)
		raised.lines(func(l *line) bool {
			s.line = l
			for i, length := range lengths {
				if reach := length / l.long * (1 + 1e-9); reach >= 2 {
					most = math.Max(most, s.raise(raised.Z, reach, limits[i]))
				}
			}
			done++
			whole = done&63 != 0 || going == nil || going(done*(round+1), of*(round+2))
			return whole
		})
		if !whole || most <= least*1e-4 {
			break
		}
	}
	for i, z := range g.Z {
		raised.Z[i] -= z
	}
	return raised.Z
}

// raise lifts the readings of the line that lie more than the limit under a straightedge, in the line and in z, and tells the most
// that one was lifted by.
func (s *scan) raise(z []float64, reach, limit float64) (most float64) {
	s.best = limit
	if _, _, at := s.worst(reach); at < 0 {
		return 0 // most lines, most of the time, and found in far fewer steps
	}
	n := len(s.x)
	for a := 0; a < n; a++ {
		e := a
		for e < n-1 && s.x[e+1]-s.x[a] <= reach {
			e++
		}
		if e-a >= 2 && s.hollow(a, e) > limit {
			s.hull(a, e)
			for h := 1; h < len(s.right); h++ {
				l, r := s.right[h-1], s.right[h]
				rise := (s.z[r] - s.z[l]) / (s.x[r] - s.x[l])
				for k := l + 1; k < r; k++ {
					if to := s.z[l] + rise*(s.x[k]-s.x[l]) - limit; to > s.z[k] {
						most = math.Max(most, to-s.z[k])
						s.z[k] = to
						z[s.index(k)] = to
					}
				}
			}
		}
		if e == n-1 {
			break
		}
	}
	return most
}
