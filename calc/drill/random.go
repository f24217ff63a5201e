package drill

// random is SplitMix64 (Steele, Lea and Flood 2014): the same seed gives the same numbers on every machine, now and
// in a later version of Go.
type random struct{ state uint64 }

func (r *random) next() uint64 {
	r.state += 0x9e3779b97f4a7c15
	z := r.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// below is a whole number from nought to less than n.
func (r *random) below(n int) int { return int(r.next() >> 11 % uint64(n)) }

// share is a number from nought to less than one.
func (r *random) share() float64 { return float64(r.next()>>11) / (1 << 53) }

// begin mixes a calculator and a number into the seed, so that no two calculators share their numbers.
func begin(id string, seed uint64, attempt int) *random {
	h := uint64(14695981039346656037) // FNV-1a
	for i := range len(id) {
		h = (h ^ uint64(id[i])) * 1099511628211
	}
	r := &random{state: h ^ seed*0x9e3779b97f4a7c15 ^ uint64(attempt)<<56}
	r.next()
	return r
}
