package drill_test

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
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
				for _, in := range x.Given() {
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

// silly fails for a number that no tape, scale or bag shows: by what is printed, not by what the package meant to print.
func silly(t *testing.T, in *calc.Input, r calc.Reading, system unit.System) {
	if len(in.Options) > 0 || in.Reads != nil {
		return
	}
	for _, n := range digitRuns.FindAllString(r.Text, -1) {
		if r.Text == in.Example || slices.Contains(in.Usual, r.Text) {
			break // as the trade sells it: 1195 mm
		}
		require.LessOrEqual(t, len(strings.Trim(strings.ReplaceAll(n, ".", ""), "0")), 3, "%s: %s is no round number", in.Key, r.Text)
	}
	if system == unit.Metric {
		require.NotRegexp(t, `\d ?(F|°F|in|ft|ft2|ft²|ft3|ft³|lb|qt|gal|mil|mph|fl oz)\b`, r.Text, "%s: another habit's unit", in.Key)
	}
	if len(in.Columns) > 0 || r.Text == in.Example || slices.Contains(in.Usual, r.Text) {
		return
	}
	example, _ := in.Value(in.Example, point)
	if in.Kind == unit.KindTemperature || in.Kind == unit.KindAngle || example < 0 {
		require.InDelta(t, example, r.Base, 10.001, in.Key)
	} else {
		require.True(t, example/2-1e-9 <= r.Base && r.Base <= example*2+1e-9, "%s is %s, the example %s", in.Key, r.Text, in.Example)
	}
	u := in.As.For(system).Unit
	n := math.Abs((r.Base - u.Zero) / u.Size)
	if u == unit.Inches {
		require.InDelta(t, math.Round(n*16), n*16, 1e-6, "%s: %s is no sixteenth", in.Key, r.Text)
	}
}

// digitRuns are the numbers in a text: a date's year and the parts of a fraction too.
var digitRuns = regexp.MustCompile(`\d+(\.\d+)?`)

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

// What is given can change the working or the figure asked for, and what is not given cannot: tried here with values of the
// test's own, drawn over the whole of what each input takes, and not by the symbols that the package goes by.
func TestWhatIsGivenCounts(t *testing.T) {
	for _, c := range all.Calculators() {
		t.Run(c.ID, func(t *testing.T) {
			rounds, setout := min(seeds(c), 100), c.ID == "setout"
			switch {
			case !asks(c.Solve(c.Example())):
				return
			case setout:
				rounds = 4
			case c.Long:
				rounds = 10
			}
			for seed := range rounds {
				x, ok := drill.New(c, seed, unit.System(1+seed%2))
				if !ok {
					continue
				}
				given := x.Given()
				require.NotEmpty(t, given)
				for _, in := range c.Inputs {
					if changed, worked := varied(&x, in); worked {
						if setout && !changed && (in.Key == "kerf" || in.Key == "turn" || in.Key == "edges") {
							continue // whether they change a count hangs on the other numbers
						}
						require.Equal(t, slices.Contains(given, in), changed, "seed %d: %s of %v, asked %s", seed, in.Key, x.Texts, x.Asked.Key)
					}
				}
			}
		})
	}
}

// varied works an exercise with other texts in an input, and reports whether a figure of the working changes.
func varied(x *drill.Exercise, in *calc.Input) (changed, worked bool) {
	var texts []string
	r := x.Entry.Reading(in.Key)
	switch {
	case in.Reads != nil:
		return false, false
	case len(in.Columns) > 0:
		if len(r.Rows) > 1 {
			texts = append(texts, in.WrittenTable(r.Rows[1:], unit.Style{}))
		}
	case len(in.Options) > 0:
		for _, o := range in.Options {
			texts = append(texts, o.Name)
		}
	default:
		for i := range 8 {
			texts = append(texts, in.Written(in.Min+(in.Max-in.Min)*float64(i)/7, unit.Style{}), in.Written(r.Base*(0.55+0.23*float64(i)), unit.Style{}))
		}
	}
	for _, text := range texts {
		with := calc.Texts{}
		maps.Copy(with, x.Texts)
		with[in.Key] = text
		e, problems := x.Calculator.Read(with, point)
		if len(problems) > 0 {
			continue
		}
		if s := x.Calculator.Solve(e); len(s.Problems) == 0 {
			worked = true
			if printed(s) != printed(x.Sheet) {
				return true, true
			}
		}
	}
	return false, worked
}

// printed is each figure of the working as the page prints it, with its expression, and each answer.
func printed(s *calc.Sheet) string {
	var b strings.Builder
	put := func(f unit.Figure) { b.WriteString(strconv.FormatFloat(f.Base, 'g', -1, 64) + " ") }
	for _, st := range s.Steps {
		b.WriteString(st.Expr)
		for _, term := range st.Terms {
			put(term.Is)
		}
		put(st.Gives.Is)
	}
	for _, a := range s.Answers {
		put(a.Is)
	}
	return b.String()
}

// A vee notch has no land (calc/bed: its ridges touch), so no exercise gives one; every other notch has.
func TestAVeeHasNoLand(t *testing.T) {
	seen := map[bool]int{}
	for seed := range uint64(300) {
		x, ok := drill.New(&bed.Calculator, seed, unit.Metric)
		require.True(t, ok)
		vee := x.Entry.Reading("notch").Text == "vee"
		land := slices.ContainsFunc(x.Given(), func(in *calc.Input) bool { return in.Key == "land" })
		require.NotEqual(t, vee, land, "seed %d: %v", seed, x.Texts)
		seen[vee]++
	}
	assert.Greater(t, min(seen[true], seen[false]), 30)
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
