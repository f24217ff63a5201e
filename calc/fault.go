package calc

import (
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// faultLine turns what the reader of quantities found into a sentence that names
// the field, what was read and what is accepted, with what may have been meant.
func (in *Input) faultLine(f *unit.Fault) words.Line {
	l := in.faultSays(f)
	if len(f.Try) == 0 || f.Why == unit.AmbiguousHyphen || f.Why == unit.AmbiguousComma {
		return l
	}
	return words.Say("{problem} Perhaps {try}?", words.Also("problem", l), tries(f))
}

func tries(f *unit.Fault) *words.Arg {
	return words.Text("try", "“"+strings.Join(f.Try, "”, “")+"”")
}

func (in *Input) faultSays(f *unit.Fault) words.Line {
	units := words.Text("units", strings.Join(f.Units, ", "))
	field, read := words.Named("field", in.Label), words.Text("read", f.Read)
	example := words.Text("example", in.Example)
	switch f.Why {
	case unit.Empty:
		return words.Say("{field}: nothing was typed. Write it as in {example}.", field, example)
	case unit.UnknownUnit:
		return words.Say("{field}: the unit in “{read}” is not known here. It takes {units}.", field, read, units)
	case unit.WrongKind:
		return words.Say("{field}: “{read}” is in a unit of another kind. It takes {units}.", field, read, units)
	case unit.NoUnit:
		return words.Say("{field}: read “{read}” with no unit. Add one of: {units}.", field, read, units)
	case unit.AmbiguousHyphen:
		return words.Say("{field}: “{read}” could be read two ways. Write {try}.", field, read, tries(f))
	case unit.AmbiguousComma:
		return words.Say("{field}: the comma in “{read}” could part thousands or mark decimals. Write {try}.", field, read, tries(f))
	case unit.WrongMark:
		return words.Say("{field}: “{read}” has the decimal mark of another habit. Write it as in {example}.", field, read, example)
	case unit.ZeroDenominator:
		return words.Say("{field}: “{read}” divides by nought.", field, read)
	case unit.Negative:
		return words.Say("{field}: read “{read}”. It cannot be below nought.", field, read)
	case unit.TooBig:
		return words.Say("{field}: “{read}” is too large to be meant.", field, read)
	case unit.NoSuchDate:
		return words.Say("{field}: “{read}” is not a date. Write year, month, day as in {example}.", field, read, example)
	case unit.NoSuchTime:
		return words.Say("{field}: “{read}” is not a time of day. Write it as in {example}.", field, read, example)
	}
	return words.Say("{field}: read “{read}”, which is not a number with its unit. Write it as in {example}.", field, read, example)
}
