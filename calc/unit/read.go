package unit

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
	Read  string
	Units []string
	Try   []string
}

// Habit is how a person writes numbers: the decimal mark ('.', ',' or 0 where it
// is not known) and the unit of a number typed with none (nil: refuse it).
type Habit struct {
	Decimal byte
	Bare    *Unit
}
