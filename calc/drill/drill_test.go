package drill_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/bed"
	"setbook/calc/drill"
	"setbook/calc/link"
	"setbook/calc/paddle"
	"setbook/calc/unit"
)

var point = calc.Habit{Decimal: '.'}

// seeds is how many exercises of each calculator are made. Long work is made fewer times.
func seeds(c *calc.Calculator) uint64 {
	switch {
	case testing.Short():
		return 20
	case c.Long:
		return 60
	}
	return 1000
}

// Every calculator yields exercises; the key is what the calculator itself says to the texts that are given; no
// number is a silly one, by the rule in the package's comment.
func TestEveryCalculatorYieldsExercises(t *testing.T) {
	for _, c := range all.Calculators() {
		t.Run(c.ID, func(t *testing.T) {
			example, made := c.Solve(c.Example()), uint64(0)
			if !asks(example) {
				t.Log("reads as words alone: there is no figure to ask for")
				return
			}
			for seed := range seeds(c) {
				system := unit.System(1 + seed%2)
				x, ok := drill.New(c, seed, system)
				if !ok {
					continue
				}
				made++
				e, problems := c.Read(x.Texts, point)
				require.Empty(t, problems, "seed %d: %v", seed, x.Texts)
				key, ok := c.Solve(e).Answer(x.Asked.Key)
				require.True(t, ok)
				require.Equal(t, key.Is.Base, x.Asked.Is.Base, "seed %d", seed)
				require.True(t, x.Judge(unit.Style{System: system, Decimal: '.'}.Print(x.Asked.Is), point).Right, "seed %d: the key itself, as printed: %s",
					seed, unit.Style{System: system, Decimal: '.'}.Print(x.Asked.Is))
				for _, in := range c.Inputs {
					silly(t, in, e.Reading(in.Key), system)
				}
				for _, w := range x.Sheet.Cautions {
					require.NotEqual(t, calc.Stop, w.Severity)
				}
			}
			assert.GreaterOrEqual(t, made, seeds(c)*95/100, "of %d seeds", seeds(c))
		})
	}
}

func asks(s *calc.Sheet) bool {
	for _, a := range s.Answers {
		if a.Reads.Msg == "" && a.Is.Base != 0 {
			return true
		}
	}
	return false
}

func silly(t *testing.T, in *calc.Input, r calc.Reading, system unit.System) {
	if len(in.Options) > 0 || len(in.Columns) > 0 || r.Text == in.Example {
		return
	}
	for _, usual := range in.Usual {
		if r.Text == usual {
			return
		}
	}
	example, _ := in.Value(in.Example, point)
	if in.Kind == unit.KindTemperature || in.Kind == unit.KindAngle || example < 0 {
		require.InDelta(t, example, r.Base, 10.001, in.Key)
	} else {
		require.True(t, example/2-1e-9 <= r.Base && r.Base <= example*2+1e-9, "%s is %s, the example %s", in.Key, r.Text, in.Example)
	}
	u := in.As.For(system).Unit
	n := math.Abs((r.Base - u.Zero) / u.Size)
	if n == 0 {
		return
	}
	if u == unit.Inches {
		require.InDelta(t, math.Round(n*16), n*16, 1e-6, "%s: %s is no sixteenth", in.Key, r.Text)
		return
	}
	step := math.Pow(10, math.Floor(math.Log10(n)+1e-12)-1)
	whole := math.Round(n/step) * step
	if n >= 100 && (u == unit.Celsius || u == unit.Fahrenheit || u == unit.Piece || u == unit.Degrees) {
		whole = math.Round(n)
	}
	require.InDelta(t, whole, n, 1e-9*n, "%s: %s has more than two figures", in.Key, r.Text)
}

// A seed gives the same exercise each time, and each seed another than the next.
func TestASeedIsAnExercise(t *testing.T) {
	differ := 0
	for seed := range uint64(50) {
		a, _ := drill.New(&bed.Calculator, seed, unit.US)
		b, _ := drill.New(&bed.Calculator, seed, unit.US)
		c, _ := drill.New(&bed.Calculator, seed+1, unit.US)
		require.Equal(t, a.Texts, b.Texts)
		require.Equal(t, link.Format(&bed.Calculator, a.Entry, unit.US), link.Format(&bed.Calculator, b.Entry, unit.US))
		if link.Format(&bed.Calculator, a.Entry, unit.US) != link.Format(&bed.Calculator, c.Entry, unit.US) {
			differ++
		}
	}
	assert.Greater(t, differ, 45)
}

// asking finds an exercise that asks for one answer.
func asking(t *testing.T, c *calc.Calculator, key string) drill.Exercise {
	for seed := range uint64(400) {
		if x, ok := drill.New(c, seed, unit.Metric); ok && x.Asked.Key == key {
			return x
		}
	}
	require.Fail(t, "no exercise asks for it", key)
	return drill.Exercise{}
}

// in writes a figure of the exercise times a factor in the unit of its answer.
func in(x drill.Exercise, factor float64) string {
	u := x.Asked.Is.As.For(x.System).Unit
	return strconv.FormatFloat(x.Asked.Is.Base*factor/u.Size, 'g', 6, 64) + " " + u.Symbol
}

// The commonest slips are known by what they do to the figure: each factor is exact by definition (NIST SP 811,
// appendix B).
func TestASlipIsPointedAt(t *testing.T) {
	x := asking(t, &bed.Calculator, "bed")
	for _, c := range []struct {
		text  string
		right bool
		says  string
	}{
		{in(x, 1), true, "Right"},
		{in(x, 1.009), true, "Right"},
		{in(x, 1.03), false, "Not yet"},
		{in(x, 25.4), false, "25.4 times"},
		{in(x, 1/25.4), false, "25.4 times"},
		{in(x, 100), false, "hundred times"},
		{in(x, 0.01), false, "hundred times"},
		{in(x, 10), false, "ten times"},
		{in(x, -1), false, "sign is not"},
		{"twelve", false, "cannot be read"},
		{"", false, "cannot be read"},
	} {
		v := x.Judge(c.text, point)
		assert.Equal(t, c.right, v.Right, c.text)
		assert.Contains(t, string(v.Says.Msg), c.says, c.text)
	}
}

// A step too few and a forgotten waste are told from one another.
func TestTheStepThatWentWrong(t *testing.T) {
	found := map[string]bool{}
	for seed := range uint64(2000) {
		x, ok := drill.New(&bed.Calculator, seed, unit.Metric)
		if !ok || x.Asked.Key != "buy" && x.Asked.Key != "per_bag" && x.Asked.Key != "bed" {
			continue
		}
		for i := range x.Sheet.Steps {
			g := x.Sheet.Steps[i].Gives.Is
			if g.Kind != x.Asked.Is.Kind || math.Abs(g.Base/x.Asked.Is.Base-1) < 0.1 {
				continue
			}
			v := x.Judge(unit.Style{System: unit.Metric, Decimal: '.'}.Print(g), point)
			require.False(t, v.Right)
			if v.Says.Msg == "That is the result of this step. Go on from there." {
				require.GreaterOrEqual(t, v.Step, 0)
				require.InEpsilon(t, g.Base, x.Sheet.Steps[v.Step].Gives.Is.Base, 0.02)
				found["step"] = true
			}
		}
		without := calc.Texts{}
		for k, text := range x.Texts {
			without[k] = text
		}
		without["waste"] = "0 %"
		e, problems := bed.Calculator.Read(without, point)
		require.Empty(t, problems)
		if a, _ := bed.Calculator.Solve(e).Answer(x.Asked.Key); math.Abs(a.Is.Base/x.Asked.Is.Base-1) > 0.02 {
			v := x.Judge(unit.Style{System: unit.Metric, Decimal: '.'}.Print(a.Is), point)
			require.False(t, v.Right)
			if v.Says.Msg == "That is what comes out without “{field}”." {
				found["waste"] = true
			}
		}
	}
	assert.True(t, found["step"])
	assert.True(t, found["waste"], "%v", found)
}

// The speed at the rim is pi times the diameter times the turns: with the radius it comes out at half, with the diameter
// taken for a radius at twice (geometry).
func TestARadiusForADiameter(t *testing.T) {
	x := asking(t, &paddle.Calculator, "tip_speed")
	for factor, says := range map[float64]string{0.5: "radius where a diameter", 2: "diameter where a radius"} {
		v := x.Judge(in(x, factor), point)
		assert.False(t, v.Right)
		assert.Contains(t, string(v.Says.Msg), says)
		assert.GreaterOrEqual(t, v.Step, 0)
	}
}

// A set is the same everywhere, and its exercises differ from one another.
func TestASetOfExercises(t *testing.T) {
	set := drill.Set(&bed.Calculator, 7, 10, unit.US)
	require.Len(t, set, 10)
	seen := map[string]bool{}
	for _, x := range set {
		seen[link.Format(&bed.Calculator, x.Entry, unit.US)+x.Asked.Key] = true
	}
	assert.Len(t, seen, 10)
	again := drill.Set(&bed.Calculator, 7, 10, unit.US)
	for i := range set {
		assert.Equal(t, set[i].Texts, again[i].Texts)
	}
	assert.NotEqual(t, set[0].Texts, drill.Set(&bed.Calculator, 8, 1, unit.US)[0].Texts)
}
