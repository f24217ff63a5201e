package calc

import (
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// Reading is one checked value of an entry.
type Reading struct {
	Text    string // as typed, or the name of the option
	Base    float64
	Rows    [][]float64
	Example bool // not given: the calculator's example was taken
}

// Entry is a full set of checked readings, one an input.
type Entry struct{ read map[string]Reading }

// Reading is the reading under a key.
func (e Entry) Reading(key string) Reading { return e.read[key] }

// Habit is how the writer of an entry writes: the decimal mark (0: not known),
// and the system whose units a bare number is in (Either: a bare number is refused).
type Habit struct {
	Decimal byte
	System  unit.System
}

// Texts are the texts of an entry by key.
type Texts map[string]string

// Read checks texts against what the calculator asks for. A missing key takes
// the example. Every problem is told, not only the first; an entry is returned
// only where there is none.
func (c *Calculator) Read(texts Texts, h Habit) (Entry, []Problem) {
	habits := make(map[string]Habit, len(texts))
	for key := range texts {
		habits[key] = h
	}
	return c.ReadEach(texts, habits)
}

// ReadEach is Read with a habit for each text.
func (c *Calculator) ReadEach(texts Texts, habits map[string]Habit) (Entry, []Problem) {
	var problems []Problem
	for key := c.unknown(texts, ""); key != ""; key = c.unknown(texts, key) {
		problems = append(problems, Problem{key, words.Say(
			"There is no input named “{key}” here. The inputs are: {keys}.",
			words.Text("key", Cut(key)), words.Text("keys", strings.Join(c.keys(), ", ")))})
	}
	e := Entry{make(map[string]Reading, len(c.Inputs))}
	for _, in := range c.Inputs {
		text, given := texts[in.Key]
		habit := habits[in.Key]
		if !given {
			text, habit = in.Example, Habit{Decimal: '.'}
		}
		r, problem := in.read(text, habit)
		if problem != nil {
			problems = append(problems, *problem)
			continue
		}
		r.Example = !given
		e.read[in.Key] = r
	}
	if len(problems) > 0 {
		return Entry{}, problems
	}
	return e, nil
}

// Example is the entry of examples alone.
func (c *Calculator) Example() Entry {
	e, _ := c.Read(nil, Habit{})
	return e
}

func (c *Calculator) keys() []string {
	var keys []string
	for _, in := range c.Inputs {
		keys = append(keys, in.Key)
	}
	return keys
}

// unknown is the first key in the alphabet, past one already told, that no input has.
func (c *Calculator) unknown(texts Texts, past string) (first string) {
	for key := range texts {
		if key > past && (first == "" || key < first) && c.Input(key) == nil {
			first = key
		}
	}
	return first
}

// read checks one text against the input.
func (in *Input) read(text string, h Habit) (Reading, *Problem) {
	text = strings.TrimSpace(text)
	switch {
	case in.Reads != nil:
		kept, wrong := in.Reads(text)
		if wrong.Msg != "" {
			return Reading{}, &Problem{in.Key, words.Say("{field}: {problem}", words.Named("field", in.Label), words.Also("problem", wrong))}
		}
		return Reading{Text: kept}, nil
	case len(in.Options) > 0:
		return in.readOption(text)
	case len(in.Columns) > 0:
		return in.readTable(text, h)
	}
	base, problem := in.readQuantity(text, h)
	if problem != nil {
		return Reading{}, problem
	}
	return Reading{Text: text, Base: base}, nil
}

func (in *Input) readOption(text string) (Reading, *Problem) {
	if in.Each && strings.ContainsAny(text, ",;") {
		return in.readOptions(text)
	}
	var names []string
	for _, o := range in.Options {
		if strings.EqualFold(o.Name, text) {
			return Reading{Text: o.Name}, nil
		}
		names = append(names, o.Name)
	}
	return Reading{}, &Problem{in.Key, words.Say("{field}: read “{read}”. Choose one of: {names}.",
		words.Named("field", in.Label), words.Text("read", Cut(text)), words.Text("names", strings.Join(names, ", ")))}
}

// readOptions reads a choice for each of several things.
func (in *Input) readOptions(text string) (Reading, *Problem) {
	var names []string
	for _, one := range strings.FieldsFunc(text, func(c rune) bool { return c == ',' || c == ';' }) {
		r, problem := in.readOption(strings.TrimSpace(one))
		if problem != nil {
			return Reading{}, problem
		}
		names = append(names, r.Text)
	}
	return Reading{Text: strings.Join(names, ",")}, nil
}

func (in *Input) readQuantity(text string, h Habit) (float64, *Problem) {
	habit := unit.Habit{Decimal: h.Decimal}
	if h.System != unit.Either || in.As.US.Unit == in.As.Metric.Unit && in.As.US.Unit.Symbol == "" {
		habit.Bare = in.As.For(h.System).Unit
	}
	base, fault := unit.Read(in.Kind, text, habit)
	if fault != nil {
		return 0, &Problem{in.Key, in.faultLine(fault)}
	}
	if base < in.Min || base > in.Max {
		return 0, &Problem{in.Key, words.Say("{field}: read {read}. It takes from {low} to {high}.",
			words.Named("field", in.Label), in.figure("read", base, false),
			in.figure("low", in.Min, true), in.figure("high", in.Max, true))}
	}
	return base, nil
}

func (in *Input) figure(name string, base float64, both bool) *words.Arg {
	return &words.Arg{Name: name, Both: both, Figure: &unit.Figure{Kind: in.Kind, Base: base, As: in.As}}
}

// Cut keeps what was read short enough to be shown in a sentence.
func Cut(text string) string {
	runes := []rune(text)
	if len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	return text
}

// Value is the base value that a text stands for in the input, where it can be read.
func (in *Input) Value(text string, h Habit) (base float64, ok bool) {
	r, problem := in.read(text, h)
	return r.Base, problem == nil
}

// Plain is the text of a reading that means the same to everybody: as it was typed where
// that is so, else written out with a point decimal and the unit of a system.
func (in *Input) Plain(r Reading, s unit.System) string {
	if len(in.Options) > 0 || in.Reads != nil {
		return r.Text
	}
	if len(in.Columns) > 0 {
		return in.WrittenTable(r.Rows, unit.Style{System: s})
	}
	if base, problem := in.readQuantity(r.Text, Habit{}); problem == nil && base == r.Base {
		return r.Text
	}
	return in.Written(r.Base, unit.Style{System: s})
}

// Written is a value of the input with its unit and every digit that it needs to read back.
func (in *Input) Written(base float64, s unit.Style) string {
	return s.Exact(base, in.As.For(s.System).Unit)
}

// Shown is a text as a reader of that style would write it: as it stands where it is already in
// units of that system, else the same value in them, to six digits. It reports false where it cannot be read.
func (in *Input) Shown(text string, h Habit, s unit.Style) (string, bool) {
	r, problem := in.read(text, h)
	switch {
	case problem != nil:
		return "", false
	case len(in.Options) > 0, in.Reads != nil:
		return r.Text, true
	case len(in.Columns) > 0:
		return in.shownTable(r.Rows, s), true
	}
	same, again := in.readQuantity(text, Habit{Decimal: s.Decimal})
	if again == nil && same == r.Base && in.inSystem(text, s.System) {
		return text, true
	}
	return in.shown(r.Base, s), true
}

// Offered is a declared text, an example or a value often entered, as a reader sees it: in the reader's own
// units, but for a metric size that does not come out short in US ones. A paver is sold as 20 mm and a bag as 25 kg
// to everybody, and nobody orders 0.787402 in.
func (in *Input) Offered(text string, s unit.Style) (string, bool) {
	shown, ok := in.Shown(text, Habit{Decimal: '.'}, s)
	if ok && s.System != unit.Metric && s.Decimal != ',' && digits(shown) > 4 {
		return text, true
	}
	return shown, ok
}

// digits counts the digits of a text from the first that is not nought.
func digits(text string) (count int) {
	for _, c := range text {
		if '1' <= c && c <= '9' || c == '0' && count > 0 {
			count++
		}
	}
	return count
}

// shown writes a value for a field: a fraction of an inch where it is one, else six digits, which is more than anybody measures.
func (in *Input) shown(base float64, s unit.Style) string {
	u := in.As.For(s.System).Unit
	if text := s.Exact(base, u); len(text) <= len("1234.567 mm") {
		return text
	}
	text, _ := s.Form(base, unit.Form{Unit: u, Digits: 6})
	return text
}

// inSystem reports whether a text is written in units of the system: the unit at its end is looked up
// among those of the input's kind.
func (in *Input) inSystem(text string, s unit.System) bool {
	if in.As.US.Unit == in.As.Metric.Unit {
		return true
	}
	u := unit.Ends(in.Kind, text)
	return u != nil && u.System == s
}
