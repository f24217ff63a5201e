package calctest

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/unit"
)

// Header is the first line of every file of check values.
//
// kind: published (printed by somebody else), independent (another general-purpose
// library or a hand calculation, named), practice (no source) or regression (our
// own output: never evidence). entry: link text. answer: the key of an answer, with
// ".low" or ".high" for an end of its range; "refused" where want is the key that
// is refused; "stop" or "care" where want is yes or no, whether such a caution
// beyond those of every entry is given. want: the value with its unit. within: the
// tolerance, with its unit or in % of want; "" is half a unit of the last printed
// digit. why: what a wider tolerance or an internal convention comes from.
var Header = []string{"kind", "entry", "answer", "want", "within", "title", "edition", "place", "url", "basis", "why"}

// Row is one check value.
type Row struct {
	Kind, Entry, Answer, Want, Within, Title, Edition, Place, URL, Basis, Why string
}

// Testdata is the folder of the check values.
func Testdata() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(file), "..", "..", "testdata")
}

// Rows reads the check values of a calculator.
func Rows(t testing.TB, id string) []Row {
	file, err := os.Open(filepath.Join(Testdata(), id+".csv"))
	require.NoError(t, err, "every calculator has a file of check values")
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	require.NotEmpty(t, records)
	require.Equal(t, Header, records[0])
	var rows []Row
	for _, r := range records[1:] {
		rows = append(rows, Row{r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7], r[8], r[9], r[10]})
	}
	return rows
}

// Evidence reports whether a row comes from outside the project.
func (r Row) Evidence() bool { return r.Kind == "published" || r.Kind == "independent" }

func rows(t *testing.T, c *calc.Calculator) {
	evidence := 0
	for i, r := range Rows(t, c.ID) {
		t.Run(strconv.Itoa(i+2), func(t *testing.T) { check(t, c, r) })
		if r.Evidence() {
			evidence++
		}
	}
	assert.Equal(t, evidence == 0, c.Checked != "", "a calculator says on its page that nothing outside checks it exactly where that is so (%d rows do)", evidence)
}

func check(t *testing.T, c *calc.Calculator, r Row) {
	require.Contains(t, []string{"published", "independent", "practice", "regression"}, r.Kind)
	if r.Evidence() {
		require.NotEmpty(t, r.Title, "a row of evidence names its source")
	}
	if r.Within != "" {
		require.NotEmpty(t, r.Why, "a tolerance of one's own says why")
	}
	e, problems := link.Read(c, r.Entry, calc.Habit{})
	var s *calc.Sheet
	if len(problems) == 0 {
		s = c.Solve(e)
		problems = s.Problems
	}
	if r.Answer == "refused" {
		var keys []string
		for _, p := range problems {
			keys = append(keys, p.Key)
		}
		assert.Contains(t, keys, r.Want)
		return
	}
	require.Empty(t, problems, r.Entry)
	if r.Answer == "stop" || r.Answer == "care" {
		severity := map[string]calc.Severity{"stop": calc.Stop, "care": calc.Care}[r.Answer]
		require.Contains(t, []string{"yes", "no"}, r.Want)
		assert.Equal(t, r.Want == "yes", beyondAll(c, s, severity), "a caution of this severity that is not given for every entry")
		return
	}
	key, end, _ := strings.Cut(r.Answer, ".")
	a, ok := s.Answer(key)
	require.True(t, ok, "no answer %q", key)
	got := a.Is.Base
	switch end {
	case "low":
		got = a.Low
	case "high":
		got = a.High
	}
	want, within := wanted(t, r, a.Is.Kind)
	assert.InDelta(t, want, got, within, "%s of %s, from %s", r.Answer, r.Entry, r.Title)
}

// beyondAll reports whether the sheet has a caution of a severity whose message the example's does not have.
func beyondAll(c *calc.Calculator, s *calc.Sheet, severity calc.Severity) bool {
	always := map[string]bool{}
	for _, w := range c.Solve(c.Example()).Cautions {
		always[string(w.Says.Msg)] = true
	}
	for _, w := range s.Cautions {
		if w.Severity == severity && !always[string(w.Says.Msg)] {
			return true
		}
	}
	return false
}

// wanted reads the value and its tolerance in base units.
func wanted(t *testing.T, r Row, k unit.Kind) (want, within float64) {
	want, fault := unit.Read(k, r.Want, unit.Habit{Decimal: '.', Bare: bareOf(k)})
	require.Nil(t, fault, "want %q", r.Want)
	switch share, isShare := strings.CutSuffix(r.Within, "%"); {
	case r.Within == "":
		return want, halfDigit(t, r.Want, k)
	case isShare && k != unit.KindRatio:
		n, err := parse(strings.TrimSpace(share))
		require.NoError(t, err)
		return want, math.Abs(want) * n / 100
	}
	difference := k
	if k == unit.KindTemperature {
		difference = unit.KindDifference
	}
	within, fault = unit.Read(difference, r.Within, unit.Habit{Decimal: '.', Bare: bareOf(k)})
	require.Nil(t, fault, "within %q", r.Within)
	return want, within
}

func bareOf(k unit.Kind) *unit.Unit {
	for _, u := range unit.All {
		if u.Kind == k && u.Symbol == "" {
			return u
		}
	}
	return nil
}

// halfDigit is half a unit of the last digit that a text prints, in base units.
func halfDigit(t *testing.T, text string, k unit.Kind) float64 {
	number := strings.TrimLeft(text, "-−+ ")
	end := strings.IndexFunc(number, func(c rune) bool { return (c < '0' || c > '9') && c != '.' })
	if end < 0 {
		end = len(number)
	}
	number, rest := number[:end], strings.TrimSpace(number[end:])
	require.NotContains(t, rest, "/", "a fraction has no last digit: give within")
	step := 1.0
	if _, decimals, ok := strings.Cut(number, "."); ok {
		step = math.Pow(10, -float64(len(decimals)))
	}
	// One more in the last digit, read in the same unit, is a whole unit of it.
	n, err := parse(number)
	require.NoError(t, err)
	habit := unit.Habit{Decimal: '.', Bare: bareOf(k)}
	at, fault := unit.Read(k, strconv.FormatFloat(n, 'f', -1, 64)+" "+rest, habit)
	require.Nil(t, fault, "%q", text)
	next, fault := unit.Read(k, strconv.FormatFloat(n+step, 'f', -1, 64)+" "+rest, habit)
	require.Nil(t, fault, "%q", text)
	return math.Abs(next-at) / 2 * (1 + 1e-9)
}

func parse(text string) (float64, error) { return strconv.ParseFloat(text, 64) }
