package job

// DEFLATE (RFC 1951) with the fixed codes of its section 3.2.6 alone, and with a dictionary before the text. The package
// compress/flate would add 50 KB to the program for the same.

// The lengths of a match and the distances back to it, by their codes (RFC 1951, section 3.2.5): the least of each code and
// how many further bits it has.
const (
	shortest = 3
	longest  = 258
	window   = 32_768
	endCode  = 256
)

func lengthCode(length int) (code, base, bits int) {
	switch {
	case length == longest:
		return 285, longest, 0
	case length < 11:
		return 254 + length, length, 0
	}
	bits = log2(length-3) - 2
	step := (length - 3) >> bits
	return 257 + 4*bits + step, step<<bits + 3, bits
}

func lengthOf(code int) (base, bits int) {
	switch {
	case code == 285:
		return longest, 0
	case code < 265:
		return code - 254, 0
	}
	bits = (code - 261) / 4
	return (4+(code-261)%4)<<bits + 3, bits
}

func distanceCode(distance int) (code, base, bits int) {
	if distance < 5 {
		return distance - 1, distance, 0
	}
	bits = log2(distance-1) - 1
	step := (distance - 1) >> bits
	return 2*bits + step, step<<bits + 1, bits
}

func distanceOf(code int) (base, bits int) {
	if code < 4 {
		return code + 1, 0
	}
	bits = code/2 - 1
	return (2+code%2)<<bits + 1, bits
}

func log2(n int) (power int) {
	for n > 1 {
		n >>= 1
		power++
	}
	return power
}

// fixed is the fixed code of a literal or a length: its bits, the first of them highest, and how many.
func fixed(code int) (value, bits int) {
	switch {
	case code < 144:
		return 0x30 + code, 8
	case code < 256:
		return 0x190 + code - 144, 9
	case code < 280:
		return code - 256, 7
	}
	return 0xc0 + code - 280, 8
}

// step is the cheapest way found to a place of the text: one literal, or a match so long and so far back.
type step struct{ cost, length, distance int }

// chain bounds how many earlier places are looked at for a match.
const chain = 256

// deflate packs a text behind a dictionary. The codes being fixed, the cheapest way through the text is found exactly, among the
// matches that are looked at.
func deflate(text, dictionary string) []byte {
	all := dictionary + text
	start := len(dictionary)
	best := make([]step, len(all)+1)
	last := map[string]int{} // the place where three bytes stood last, plus one
	before := make([]int, len(all))
	for i := range len(all) {
		if i >= start {
			_, bits := fixed(int(all[i]))
			better(&best[i+1], step{best[i].cost + bits, 1, 0})
		}
		if i+shortest > len(all) {
			continue
		}
		three := all[i : i+shortest]
		found := last[three]
		before[i], last[three] = found, i+1
		for looked, done := 0, shortest-1; i >= start && found > 0 && looked < chain && done < longest && i+1-found <= window; looked++ {
			at := found - 1
			length := same(all, at, i)
			_, _, far := distanceCode(i - at)
			for ; done < length; done++ {
				code, _, more := lengthCode(done + 1)
				_, bits := fixed(code)
				better(&best[i+done+1], step{best[i].cost + bits + more + 5 + far, done + 1, i - at})
			}
			found = before[at]
		}
	}
	var way []int
	for at := len(all); at > start; at -= best[at].length {
		way = append(way, at)
	}
	w := &bitWriter{}
	w.put(1, 1) // the last block
	w.put(1, 2) // of fixed codes
	for n := len(way) - 1; n >= 0; n-- {
		s := best[way[n]]
		if s.distance == 0 {
			w.code(fixed(int(all[way[n]-1])))
			continue
		}
		code, base, bits := lengthCode(s.length)
		w.code(fixed(code))
		w.put(s.length-base, bits)
		code, base, bits = distanceCode(s.distance)
		w.code(code, 5)
		w.put(s.distance-base, bits)
	}
	w.code(fixed(endCode))
	w.put(0, 7) // what is left of the last byte
	return w.out
}

func better(at *step, s step) {
	if at.length == 0 || s.cost < at.cost {
		*at = s
	}
}

// same is how many bytes from a place on are the same as those from a later one.
func same(text string, at, later int) (length int) {
	for length < longest && later+length < len(text) && text[at+length] == text[later+length] {
		length++
	}
	return length
}

// bitWriter gathers bits into bytes, the lowest first.
type bitWriter struct {
	out         []byte
	hold, count int
}

func (w *bitWriter) put(value, bits int) {
	w.hold |= value << w.count
	for w.count += bits; w.count >= 8; w.count -= 8 {
		w.out = append(w.out, byte(w.hold))
		w.hold >>= 8
	}
}

// code puts a code, whose highest bit comes first.
func (w *bitWriter) code(value, bits int) {
	for bits--; bits >= 0; bits-- {
		w.put(value>>bits&1, 1)
	}
}

// inflate undoes deflate. It gives up on what deflate does not write, and on what would come to more than most bytes.
func inflate(packed []byte, dictionary string, most int) (string, bool) {
	r := &bitReader{in: packed}
	if r.take(3) != 1|1<<1 {
		return "", false
	}
	out := []byte(dictionary)
	for !r.over && len(out) <= len(dictionary)+most {
		code := r.literal()
		switch {
		case code < endCode:
			out = append(out, byte(code))
			continue
		case code == endCode:
			return string(out[len(dictionary):]), !r.over && len(r.in) == 0
		case code > 285:
			return "", false
		}
		base, bits := lengthOf(code)
		length := base + r.take(bits)
		far := r.code(0, 5)
		if far > 29 {
			return "", false
		}
		base, bits = distanceOf(far)
		distance := base + r.take(bits)
		if distance > len(out) {
			return "", false
		}
		for range length {
			out = append(out, out[len(out)-distance])
		}
	}
	return "", false
}

// bitReader gives the bits of bytes, the lowest first.
type bitReader struct {
	in    []byte
	hold  int
	count int
	over  bool // more was asked for than there is
}

func (r *bitReader) take(bits int) (value int) {
	for r.count < bits {
		if len(r.in) == 0 {
			r.over = true
			return 0
		}
		r.hold |= int(r.in[0]) << r.count
		r.in = r.in[1:]
		r.count += 8
	}
	value = r.hold & (1<<bits - 1)
	r.hold >>= bits
	r.count -= bits
	return value
}

// code takes so many further bits of a code, whose highest bit comes first.
func (r *bitReader) code(value, bits int) int {
	for range bits {
		value = value<<1 | r.take(1)
	}
	return value
}

// literal takes the fixed code of a literal or a length. Codes of seven bits come first, then those of eight.
func (r *bitReader) literal() int {
	v := r.code(0, 7)
	if v < 0x18 {
		return v + 256
	}
	switch v = r.code(v, 1); {
	case v < 0xc0:
		return v - 0x30
	case v < 0xc8:
		return v - 0xc0 + 280
	}
	return r.code(v, 1) - 0x190 + 144
}
