package drill

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
)

// attempts is how many draws an exercise may take.
const attempts = 40

// Exercise is one question with its key.
type Exercise struct {
	Calculator *calc.Calculator
	Seed       uint64
	System     unit.System
	Texts      calc.Texts // what is given, as in a link
	Entry      calc.Entry
	Sheet      *calc.Sheet // the key: nothing of it is shown before it is judged
	Asked      calc.Answer
	given      []*calc.Input // as far as Given was asked for
}

// New makes the exercise of a seed. The same calculator, seed and units give the same exercise everywhere. It
// reports false where no draw gave numbers that a job could have.
func New(c *calc.Calculator, seed uint64, system unit.System) (Exercise, bool) {
	examples := c.Example()
	example := c.Solve(examples)
	for attempt := range attempts {
		r := begin(c.ID, seed, attempt)
		x := Exercise{Calculator: c, Seed: seed, System: system, Texts: calc.Texts{}}
		for _, in := range c.Inputs {
			text := r.text(in, examples.Reading(in.Key), system)
			if r.below(4) == 0 {
				// Some figures stay as the example has them, so that the exercise is about the others.
				text = fair(in, examples.Reading(in.Key), system)
			}
			if text != in.Example {
				x.Texts[in.Key] = text
			}
		}
		entry, problems := c.Read(x.Texts, point)
		if len(problems) > 0 {
			continue
		}
		x.Entry, x.Sheet = entry, c.Solve(entry)
		if x.plausible() && x.ask(r, example) {
			return x, true
		}
	}
	return Exercise{}, false
}

// plausible reports whether a crew would go on with such a job.
func (x *Exercise) plausible() bool {
	if len(x.Sheet.Problems) > 0 {
		return false
	}
	for _, c := range x.Sheet.Cautions {
		if c.Severity == calc.Stop {
			return false
		}
	}
	return true
}

// ask picks the figure to be worked out: mostly one that is shown large, where it has a figure.
func (x *Exercise) ask(r *random, example *calc.Sheet) bool {
	var main, can []calc.Answer
	for _, a := range x.Sheet.Answers {
		if like, ok := example.Answer(a.Key); ok && askable(a, like) {
			can = append(can, a)
			if a.Main {
				main = append(main, a)
			}
		}
	}
	if len(main) > 0 && r.below(4) > 0 {
		can = main
	}
	if len(can) == 0 {
		return false
	}
	x.Asked = can[r.below(len(can))]
	return true
}

// askable reports whether an answer is a figure that can be asked for and is of the size of the example's.
func askable(a, like calc.Answer) bool {
	if a.Reads.Msg != "" || a.Is.Kind == unit.KindDate || a.Is.Kind == unit.KindClock || a.Is.Base == 0 {
		return false
	}
	if a.Is.Kind == unit.KindTemperature {
		return math.Abs(a.Is.Base-like.Is.Base) < 30
	}
	share := math.Abs(a.Is.Base / like.Is.Base)
	return like.Is.Base == 0 || 0.05 <= share && share <= 20
}

// Series gives the exercises of a set one after the other, so that none is made before it is wanted.
type Series struct {
	of     *calc.Calculator
	seed   uint64
	system unit.System
}

// Begin opens the set of a number.
func Begin(c *calc.Calculator, seed uint64, system unit.System) *Series {
	return &Series{c, seed * 1_000_003, system}
}

// Next is the next exercise. It reports false where the calculator has none to give.
func (s *Series) Next() (Exercise, bool) {
	for range 20 {
		x, ok := New(s.of, s.seed, s.system)
		s.seed++
		if ok {
			return x, true
		}
	}
	return Exercise{}, false
}

// Set is the exercises of one sheet.
func Set(c *calc.Calculator, seed uint64, count int, system unit.System) []Exercise {
	var set []Exercise
	series := Begin(c, seed, system)
	for len(set) < count {
		x, ok := series.Next()
		if !ok {
			break
		}
		set = append(set, x)
	}
	return set
}
