package calctest

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc"
	"setbook/calc/unit"
)

// Points is how many random entries each calculator is worked at.
const Points = 1000

// points works the calculator at every limit and at seeded random entries: each is refused with
// words, or every figure of its sheet is finite and its printed arithmetic holds.
func points(t *testing.T, c *calc.Calculator) {
	for _, in := range c.Inputs {
		for _, text := range limits(in) {
			at(t, c, calc.Texts{in.Key: text})
		}
	}
	random := rand.New(rand.NewPCG(20, 26))
	count, solved := Points, 0
	if testing.Short() { // in the browser's engine, where the sums are the same and slower
		count = Points / 20
	}
	for range count {
		if at(t, c, RandomTexts(c, random)) {
			solved++
		}
		if t.Failed() {
			return // the first failure tells enough
		}
	}
	assert.Greater(t, solved, count/20, "most random entries are refused: the limits of the inputs are too wide for the question")
}

// at works one entry and reports whether it was not refused.
func at(t *testing.T, c *calc.Calculator, texts calc.Texts) bool {
	e, problems := c.Read(texts, calc.Habit{})
	if !assert.Empty(t, problems, "%v", texts) {
		return false
	}
	s := c.Solve(e)
	if len(s.Problems) > 0 {
		for _, p := range s.Problems {
			assert.NotEmpty(t, p.Key, "a refusal names its key: %v", texts)
			assert.NotContains(t, Readers[0].Line(p.Says), "{", "a refusal is filled in")
		}
		return false
	}
	for _, r := range Readers[:2] {
		Sheet(t, c, e, s, r)
	}
	RoundTrip(t, c, e)
	agree(t, c, e, s)
	if t.Failed() {
		t.Logf("at %v", texts)
	}
	return true
}

// agree enters the same job in US and in metric units: the answers are the same.
func agree(t *testing.T, c *calc.Calculator, e calc.Entry, s *calc.Sheet) {
	for _, style := range []unit.Style{{System: unit.US, Decimal: '.'}, {System: unit.Metric, Decimal: ','}} {
		texts := calc.Texts{}
		for i := range c.Inputs {
			in := c.Inputs[i]
			switch r := e.Reading(in.Key); {
			case len(in.Options) > 0, in.Reads != nil:
				texts[in.Key] = r.Text
			case len(in.Columns) > 0:
				texts[in.Key] = in.WrittenTable(r.Rows, style)
			default:
				texts[in.Key] = in.Written(r.Base, style)
			}
		}
		again, problems := c.Read(texts, calc.Habit{Decimal: style.Decimal})
		if !assert.Empty(t, problems, "%v", texts) {
			return
		}
		other := c.Solve(again)
		if !assert.Equal(t, len(s.Answers), len(other.Answers), "%v", texts) {
			return
		}
		for i, a := range s.Answers {
			assert.InDelta(t, a.Is.Base, other.Answers[i].Is.Base, 1e-7*math.Abs(a.Is.Base)+1e-12, "%s from %v", a.Key, texts)
		}
	}
}

// limits are the texts of an input's ends, or of every option.
func limits(in *calc.Input) []string {
	if len(in.Columns) > 0 || in.Reads != nil {
		return nil
	}
	if len(in.Options) > 0 {
		var names []string
		for _, o := range in.Options {
			names = append(names, o.Name)
		}
		return names
	}
	return []string{in.Written(in.Min, unit.Style{System: unit.Metric}), in.Written(in.Max, unit.Style{System: unit.Metric})}
}

// RandomTexts are texts within every input's limits: half of the quantities evenly spread between
// them, half by powers, so that small values are met too.
func RandomTexts(c *calc.Calculator, random *rand.Rand) calc.Texts {
	texts := calc.Texts{}
	for i := range c.Inputs {
		in := c.Inputs[i]
		switch {
		case in.Reads != nil:
			texts[in.Key] = in.Example // nothing is drawn at random that only the question can read
		case len(in.Options) > 0:
			texts[in.Key] = in.Options[random.IntN(len(in.Options))].Name
		case in.Empty && random.IntN(2) == 0:
			texts[in.Key] = ""
		case len(in.Columns) > 0:
			rows := make([][]float64, 1+random.IntN(6))
			for j := range rows {
				for k := range in.Columns {
					rows[j] = append(rows[j], randomBase(in.Columns[k], random))
				}
			}
			texts[in.Key] = in.WrittenTable(rows, unit.Style{System: unit.Metric})
		default:
			texts[in.Key] = in.Written(randomBase(in, random), unit.Style{System: unit.Metric})
		}
	}
	return texts
}

func randomBase(in *calc.Input, random *rand.Rand) float64 {
	x := in.Min + random.Float64()*(in.Max-in.Min)
	if in.Min > 0 && random.IntN(2) == 0 {
		x = in.Min * math.Pow(in.Max/in.Min, random.Float64())
	}
	// To what a person would type, four digits, and back inside the limits.
	u := in.As.Metric.Unit
	n := u.Of(x)
	if n != 0 {
		unit := math.Pow(10, math.Floor(math.Log10(math.Abs(n)))-3)
		n = math.Round(n/unit) * unit
	}
	if in.Kind == unit.KindCount && random.IntN(2) == 0 {
		n = math.Round(n) // some questions refuse a part of one
	}
	return math.Min(math.Max(u.Base(n), in.Min), in.Max)
}

// Entry works one random entry: what FuzzWork calls.
func Entry(t *testing.T, c *calc.Calculator, random *rand.Rand) {
	texts := RandomTexts(c, random)
	e, problems := c.Read(texts, calc.Habit{})
	if len(problems) > 0 {
		t.Fatalf("within its limits and yet refused: %v", texts)
	}
	s := c.Solve(e)
	for _, a := range s.Answers {
		if bad(a.Is.Base) || a.HasRange && (bad(a.Low) || bad(a.High)) {
			t.Fatalf("%s: answer %s is not finite at %v", c.ID, a.Key, texts)
		}
	}
	for _, st := range s.Steps {
		if bad(st.Gives.Is.Base) {
			t.Fatalf("%s: step %q is not finite at %v", c.ID, st.Says.Msg, texts)
		}
	}
}

func bad(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }
