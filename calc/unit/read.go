package unit

import (
	"math"
	"strings"
	"unicode/utf8"
)

// Why says what is wrong with a text that could not be read.
type Why uint8

// The faults. Each is turned into a sentence by the package calc, so that this
// one stays free of any language.
const (
	Empty           Why = iota + 1
	NotNumber           // not a number at all
	UnknownUnit         // a number, then something that is no unit of any kind
	WrongKind           // a unit of another kind
	NoUnit              // a bare number where the unit cannot be guessed
	AmbiguousHyphen     // 6-3: 6' 3" or 6 less 3?
	AmbiguousComma      // 1,905 where the decimal mark is not known
	WrongMark           // 12,5 where the decimal mark is a point, or the reverse
	ZeroDenominator     // 1/0
	Negative            // below nought where nothing can be
	TooBig              // past what a float64 holds to the micrometre
	NoSuchDate
	NoSuchTime
)

// Fault tells why a text could not be read, what was read, which units would be
// taken, and what the writer may have meant.
type Fault struct {
	Why   Why
	Read  string   // as typed, trimmed, at most 40 characters
	Units []string // symbols that the kind takes
	Try   []string // texts that do read under the same habit
}

// Habit is how a person writes numbers: the decimal mark ('.', ',' or 0 where it
// is not known) and the unit of a number typed with none (nil: refuse it).
type Habit struct {
	Decimal byte
	Bare    *Unit
}

// longest is how many characters an entry may have. Every quantity that a person
// writes by hand is shorter, and a bound keeps the reader on the stack.
const longest = 40

// Read turns what a builder writes into the base unit of a kind: 6'-3 1/2",
// 75 1/2 in, 1½", 1.9177 m, 1 gal 1 pt, 73 °F, 1:48, 1/4 in per ft. The grammar
// is described where each part of it is read. A base value is the float64
// nearest to what was typed: 5.3 mm is 5,300 µm and 1/64 in is 396.875 µm,
// exactly.
func Read(k Kind, text string, h Habit) (base float64, fault *Fault) {
	base, fault = read(k, text, h)
	if fault == nil || fault.Try == nil && fault.Why != AmbiguousHyphen {
		return base, fault
	}
	// A hint that would be refused in its turn is no help.
	var reads []string
	for _, t := range fault.Try {
		if _, again := read(k, t, h); again == nil {
			reads = append(reads, t)
		}
	}
	fault.Try = reads
	if reads == nil && (fault.Why == AmbiguousHyphen || fault.Why == AmbiguousComma) {
		fault.Why = NotNumber // two ways to read it, and neither can be
	}
	return base, fault
}

func read(k Kind, text string, h Habit) (float64, *Fault) {
	text = strings.TrimSpace(text)
	r := reader{kind: k, habit: h, text: text}
	if !r.fold(text) {
		return 0, r.refuse(NotNumber)
	}
	if r.end == 0 {
		return 0, r.refuse(Empty)
	}
	var base float64
	switch k {
	case KindDate:
		base = r.date()
	case KindClock:
		base = r.clock()
	case KindRatio:
		base = r.signed(r.ratio)
	default:
		base = r.signed(r.quantity)
	}
	switch {
	case r.why != 0:
		return 0, r.refuse(r.why)
	case base < 0 && !signs(k):
		return 0, r.refuse(Negative)
	case !(math.Abs(base) <= limit(k)):
		return 0, r.refuse(TooBig)
	}
	return base, nil
}

// signs tells which kinds go below nought: levels, drops, differences.
func signs(k Kind) bool {
	switch k {
	case KindNumber, KindRatio, KindLength, KindTemperature, KindDifference, KindAngle, KindSpan, KindDate:
		return true
	}
	return false
}

// limit is the most that is read of a kind, in base units: far past any site
// (1e6 km, 1 km2, 1e6 m3), near enough that every unit counts it in 18 digits.
func limit(k Kind) float64 {
	switch k {
	case KindArea, KindVolume:
		return 1e18
	case KindYield, KindAreaRate, KindEvaporation, KindExpansion:
		return 1e6
	}
	return 1e15
}

// reader walks over one entry. The first thing that is wrong stays in why.
type reader struct {
	kind    Kind
	habit   Habit
	text    string    // as typed, trimmed
	folded  [256]byte // the text in one plain alphabet: see fold
	at, end int       // the place in folded, and the end of what is read
	minus   bool
	why     Why
	try     []string
}

// fail notes a fault, keeping the first.
func (r *reader) fail(why Why, try ...string) {
	if r.why == 0 {
		r.why, r.try = why, try
	}
}

// refuse makes the fault that the caller sees.
func (r *reader) refuse(why Why) *Fault {
	f := &Fault{Why: why, Read: cut(r.text), Try: r.try}
	switch why {
	case UnknownUnit, WrongKind, NoUnit:
		f.Units = Symbols(r.kind)
	}
	return f
}

// cut keeps the first 40 characters, on a boundary between characters.
func cut(s string) string {
	if len(s) <= longest {
		return s
	}
	n := 0
	for i := range s {
		if n == longest {
			return s[:i]
		}
		n++
	}
	return s
}

// signed reads a leading + or − and what follows it.
func (r *reader) signed(rest func() float64) float64 {
	switch r.peek() {
	case '-':
		r.minus = true
		r.at++
	case '+':
		r.at++
	}
	r.space()
	return rest()
}

// peek is the next byte, 0 at the end.
func (r *reader) peek() byte { return r.ahead(0) }

// ahead is the byte n after the next, 0 past the end.
func (r *reader) ahead(n int) byte {
	if r.at+n >= r.end {
		return 0
	}
	return r.folded[r.at+n]
}

// rest is what is still to be read.
func (r *reader) rest() []byte { return r.folded[r.at:r.end] }

// space passes over a space; folding leaves at most one at a place.
func (r *reader) space() {
	if r.peek() == ' ' {
		r.at++
	}
}

// take passes over a byte if it comes next.
func (r *reader) take(c byte) bool {
	if r.peek() == c {
		r.at++
		return true
	}
	return false
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

func letter(c byte) bool { return 'a' <= c && c <= 'z' || c >= utf8.RuneSelf }
