// Package calctest is the suite that every calculator passes, and the reader of
// the check values in testdata.
package calctest

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Readers are the readers that every sheet is written for in the suite.
var Readers = []words.Reader{
	{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}},
	{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}},
	{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: ','}},
}

// Conform runs the whole suite on one calculator.
func Conform(t *testing.T, c *calc.Calculator) {
	t.Run("declaration", func(t *testing.T) { declaration(t, c) })
	t.Run("example", func(t *testing.T) { example(t, c) })
	t.Run("points", func(t *testing.T) { points(t, c) })
	t.Run("testdata", func(t *testing.T) { rows(t, c) })
}

var (
	keyShape    = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
	sentence    = regexp.MustCompile(`[.?](\s|$)`)
	symbolShape = regexp.MustCompile(`^\p{L}[\p{L}0-9]*(_[\p{L}0-9]+)?$`)
)

func declaration(t *testing.T, c *calc.Calculator) {
	assert.Regexp(t, keyShape, c.ID)
	assert.NotEmpty(t, c.Title)
	assert.True(t, strings.HasSuffix(string(c.Asks), "?"), "Asks is a question: %q", c.Asks)
	assert.NotEmpty(t, c.Memory, "what to do around the sum")
	assert.Len(t, sentence.FindAllString(string(c.Origin), -1), 2, "where the formula comes from, in two sentences: %q", c.Origin)
	seen := map[string]bool{}
	for _, in := range c.Inputs {
		assert.Regexp(t, keyShape, in.Key)
		assert.False(t, seen[in.Key], "key %s stands twice", in.Key)
		assert.NotEqual(t, "v", in.Key, "v is the version of a link")
		seen[in.Key] = true
		input(t, in)
	}
}

func input(t *testing.T, in *calc.Input) {
	assert.NotEmpty(t, in.Label, in.Key)
	if in.Symbol != "" {
		assert.Regexp(t, symbolShape, in.Symbol)
	}
	for _, column := range in.Columns {
		input(t, column)
	}
	if in.Reads != nil {
		_, wrong := in.Reads(in.Example)
		assert.Empty(t, wrong.Msg, "the example of %s", in.Key)
	}
	if len(in.Options) > 0 || len(in.Columns) > 0 || in.Reads != nil {
		return
	}
	assert.Less(t, in.Min, in.Max, "limits of %s", in.Key)
	require.NotNil(t, in.As.US.Unit, in.Key)
	require.NotNil(t, in.As.Metric.Unit, in.Key)
	assert.Equal(t, in.Kind, in.As.US.Unit.Kind, "unit of %s", in.Key)
	assert.Equal(t, in.Kind, in.As.Metric.Unit.Kind, "unit of %s", in.Key)
	for _, text := range append([]string{in.Example}, in.Usual...) {
		base, fault := unit.Read(in.Kind, text, unit.Habit{Decimal: '.', Bare: bare(in)})
		if assert.Nil(t, fault, "%s: %q", in.Key, text) {
			assert.True(t, in.Min <= base && base <= in.Max, "%s: %q is outside the limits", in.Key, text)
		}
	}
}

func bare(in *calc.Input) *unit.Unit {
	if in.As.US.Unit.Symbol == "" {
		return in.As.US.Unit
	}
	return nil
}

func example(t *testing.T, c *calc.Calculator) {
	e, problems := c.Read(nil, calc.Habit{})
	require.Empty(t, problems)
	s := c.Solve(e)
	require.Empty(t, s.Problems)
	require.NotEmpty(t, s.Answers)
	require.NotEmpty(t, s.Steps)
	assert.NotEmpty(t, s.Cautions, "every sheet has at least one caution or note")
	main := 0
	for _, a := range s.Answers {
		assert.Regexp(t, keyShape, a.Key)
		assert.NotEmpty(t, a.Label, a.Key)
		if a.Main {
			main++
		}
	}
	assert.True(t, 1 <= main && main <= 3, "one to three answers are shown large, not %d", main)
	assert.NotEmpty(t, s.Drawing.Shapes, "a drawing to scale")
	assert.NotEmpty(t, s.Drawing.Title)
	assert.NotEmpty(t, s.Drawing.Says.Msg, "the drawing in words")
	for _, r := range Readers {
		Sheet(t, c, e, s, r)
		html := page.NewLive(c, c.ID, r).HTML()
		for _, part := range page.NewLive(c, c.ID, r).Parts() {
			assert.Contains(t, html, part.HTML, "part %s is the same when mounted and when served", part.Name)
		}
	}
}

// Sheet checks one sheet as one reader sees it.
func Sheet(t *testing.T, c *calc.Calculator, e calc.Entry, s *calc.Sheet, r words.Reader) {
	for i := range s.Steps {
		Arithmetic(t, &s.Steps[i], r.Style)
		cited(t, s.Steps[i].Cite, r.Line(s.Steps[i].Says))
	}
	for _, a := range s.Answers {
		finite(t, a.Key, a.Is.Base)
		if a.HasRange {
			finite(t, a.Key+" low", a.Low)
			finite(t, a.Key+" high", a.High)
			slack := 1e-9 * math.Max(math.Abs(a.High), math.Abs(a.Low))
			assert.True(t, a.Low <= a.Is.Base+slack && a.Is.Base <= a.High+slack, "%s: %v is not between %v and %v", a.Key, a.Is.Base, a.Low, a.High)
		}
		assert.True(t, worked(s, a), "answer %s: no step of the working gives %v", a.Key, a.Is.Base)
	}
	for _, w := range s.Cautions {
		cited(t, w.Cite, r.Line(w.Says))
	}
	text := page.NewLive(c, c.ID, r).With(e, s).HTML()
	for _, bad := range []string{"NaN", "Inf", "{", "}", "—</b>", "—</strong>"} {
		if i := strings.Index(text, bad); i >= 0 {
			assert.Fail(t, "the page holds "+bad, text[max(0, i-80):min(len(text), i+80)])
		}
	}
	lower := strings.ToLower(text)
	assert.NotRegexp(t, `\bsafe\b`, lower, "never print that a thing is safe")
}

// worked reports whether a step of the working gives an answer. One that reads as words may rest on a step
// of any value.
func worked(s *calc.Sheet, a calc.Answer) bool {
	for _, st := range s.Steps {
		if math.Abs(st.Gives.Is.Base-a.Is.Base) <= 1e-9*math.Max(1e-12, math.Abs(a.Is.Base)) && st.Gives.Is.Kind == a.Is.Kind {
			return true
		}
	}
	return a.Reads.Msg != ""
}

func finite(t *testing.T, what string, x float64) {
	assert.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%s is %v", what, x)
}

// cited checks that a rule or a step names a source, or says what it rests on.
func cited(t *testing.T, s *source.Source, what string) {
	if s.Basis == source.Published {
		assert.NotEmpty(t, s.Title, "%s: a published source has a title", what)
		assert.True(t, s.URL != "" || s.Edition != "" || s.Place != "", "%s: %s: where was it read?", what, s.Title)
	}
}

// Arithmetic works a step's printed expression out from its printed values and compares it with
// what the step prints as its result, within what the printing rounded away. It catches a
// formula that was changed without its text, and a text without its formula.
func Arithmetic(t *testing.T, st *calc.Step, style unit.Style) {
	values, halves := map[string]float64{}, map[string]float64{}
	for _, term := range st.Terms {
		values[term.Symbol], halves[term.Symbol] = printedValue(t, term.Is, style)
	}
	expr := st.Expression(style.System)
	got, err := Eval(expr, values)
	if !assert.NoError(t, err, st.Says.Msg) {
		return
	}
	want, within := printedValue(t, st.Gives.Is, style)
	for symbol, half := range halves {
		within += swing(expr, values, symbol, half, got)
	}
	within += 1e-9 * math.Abs(want)
	assert.InDelta(t, want, got, within, "step %q: %s with %v in system %d", st.Says.Msg, expr, values, style.System)
}

// swing is how far a result moves when one printed value moves within its rounding.
func swing(expr string, values map[string]float64, symbol string, half, got float64) float64 {
	most := 0.0
	at := values[symbol]
	defer func() { values[symbol] = at }()
	for _, x := range []float64{at - half, at + half} {
		values[symbol] = x
		if y, err := Eval(expr, values); err == nil && !math.IsNaN(y) && !math.IsInf(y, 0) {
			most = math.Max(most, math.Abs(y-got))
		}
	}
	return most * 1.01 // the slope is not quite straight
}

// printedValue reads back the number that a page prints.
func printedValue(t *testing.T, f unit.Figure, style unit.Style) (value, half float64) {
	form := f.As.For(style.System)
	text, half := style.Number(f.Base, form)
	text = strings.Replace(text, "−", "-", 1)
	if style.Decimal == ',' {
		text = strings.Replace(text, ",", ".", 1)
	}
	base, err := parse(text)
	require.NoError(t, err, "printed as %q", text)
	return base, half
}

// RoundTrip checks that an entry survives being written as a link, in any order of its keys.
func RoundTrip(t *testing.T, c *calc.Calculator, e calc.Entry) {
	for _, system := range []unit.System{unit.US, unit.Metric} {
		text := link.Format(c, e, system)
		pairs := strings.Split(text, "&")
		for i, j := 0, len(pairs)-1; i < j; i, j = i+1, j-1 {
			pairs[i], pairs[j] = pairs[j], pairs[i]
		}
		again, problems := link.Read(c, strings.Join(pairs, "&"), calc.Habit{})
		require.Empty(t, problems, text)
		for _, in := range c.Inputs {
			was, is := e.Reading(in.Key), again.Reading(in.Key)
			assert.InDelta(t, was.Base, is.Base, 1e-9*math.Abs(was.Base), "%s in %s", in.Key, text)
			if len(in.Options) > 0 {
				assert.Equal(t, was.Text, is.Text)
			}
			if assert.Equal(t, len(was.Rows), len(is.Rows), "rows of %s in %s", in.Key, text) {
				for i, row := range was.Rows {
					assert.InDeltaSlice(t, row, is.Rows[i], 1e-6, "row %d of %s", i, in.Key)
				}
			}
		}
	}
}
