package lift_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/lift"
	"setbook/calc/link"
	"setbook/calc/source"
	"setbook/calc/unit"
)

func sheet(t *testing.T, entry string) *calc.Sheet {
	t.Helper()
	e, problems := link.Read(&lift.Calculator, entry, calc.Habit{})
	require.Empty(t, problems, entry)
	s := lift.Calculator.Solve(e)
	require.Empty(t, s.Problems, entry)
	return s
}

// Two people. Network Rail, Lifting and handling in teams: two rated 20 kg each, not over about 26.6 kg (two thirds of
// 40 is 26.67, printed cut short). A training page: two at 50 kg, 66 (66.67, cut short likewise).
func TestPair(t *testing.T) {
	assert.InDelta(t, 26.6, float64(lift.Pair(20*unit.Kilogram, 20*unit.Kilogram)/unit.Kilogram), 0.07)
	assert.InDelta(t, 66, float64(lift.Pair(50*unit.Kilogram, 50*unit.Kilogram)/unit.Kilogram), 0.67)
	assert.InDelta(t, 2.0/3*(20+35), float64(lift.Pair(20*unit.Kilogram, 35*unit.Kilogram)/unit.Kilogram), 1e-9, "HSE: two thirds of the sum")
}

// NIOSH 94-110 (2021), p. 14: two hours of lifting need at least 36 min of recovery, and up to one hour as long as the work.
func TestRecovery(t *testing.T) {
	assert.InDelta(t, 36, float64(lift.Recovery(2*unit.Hour)/unit.Minute), 1e-9)
	assert.InDelta(t, 60, float64(lift.Recovery(unit.Hour)/unit.Minute), 1e-9)
	assert.InDelta(t, 0.3*75, float64(lift.Recovery(75*unit.Minute)/unit.Minute), 1e-9)
	assert.Zero(t, lift.Recovery(3*unit.Hour), "a longer spell has its usual breaks")
}

// printed is the frequency table of NIOSH 94-110 (2021) as its transcription prints it: lifts a minute, then up to 1, 2
// and 8 hours, each with V under 30 in / from 30 in up.
const printed = `
0.2 | 1.00/1.00 | .95/.95 | .85/.85
0.5 | .97/.97 | .92/.92 | .81/.81
1 | .94/.94 | .88/.88 | .75/.75
2 | .91/.91 | .84/.84 | .65/.65
3 | .88/.88 | .79/.79 | .55/.55
4 | .84/.84 | .72/.72 | .45/.45
5 | .80/.80 | .60/.60 | .35/.35
6 | .75/.75 | .50/.50 | .27/.27
7 | .70/.70 | .42/.42 | .22/.22
8 | .60/.60 | .35/.35 | .18/.18
9 | .52/.52 | .30/.30 | .00/.15
10 | .45/.45 | .26/.26 | .00/.13
11 | .41/.41 | .00/.23 | .00/.00
12 | .37/.37 | .00/.21 | .00/.00
13 | .00/.34 | .00/.00 | .00/.00
14 | .00/.31 | .00/.00 | .00/.00
15 | .00/.28 | .00/.00 | .00/.00`

// Every cell of the printed table, and rates off its rows.
func TestFrequency(t *testing.T) {
	for _, line := range strings.Split(strings.TrimSpace(printed), "\n") {
		cells := strings.FieldsFunc(line, func(r rune) bool { return r == '|' || r == '/' || r == ' ' })
		require.Len(t, cells, 7, line)
		rate := number(t, cells[0])
		for i, hours := range []unit.Span{unit.Hour, 2 * unit.Hour, 8 * unit.Hour} {
			assert.InDelta(t, number(t, cells[1+2*i]), float64(lift.Frequency(unit.PerMinute(rate), hours, 29.9*unit.Inch)), 1e-12, "%s, %v s, low", line, hours)
			assert.InDelta(t, number(t, cells[2+2*i]), float64(lift.Frequency(unit.PerMinute(rate), hours, 30*unit.Inch)), 1e-12, "%s, %v s, high", line, hours)
		}
	}
	assert.InDelta(t, 0.85, float64(lift.Frequency(0.1, 8*unit.Hour, 0)), 1e-12, "fewer than 0.2 a minute count as 0.2")
	assert.InDelta(t, 0.86, float64(lift.Frequency(3.5, unit.Hour, 0)), 1e-12, "half way between 0.88 and 0.84")
	assert.Zero(t, lift.Frequency(15.01, unit.Hour, 30*unit.Inch), "past 15 a minute")
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return n
}

// A limit of nought gives words and a reason for each cause, and never an index to be read as a low one.
func TestNought(t *testing.T) {
	for _, entry := range []string{"reach=25.1 in", "height=71 in", "travel=71 in", "turn=136 deg", "rate=16 /min"} {
		s := sheet(t, entry)
		limit, _ := s.Answer("limit")
		index, _ := s.Answer("index")
		assert.Zero(t, limit.Is.Base, entry)
		assert.NotEmpty(t, limit.Reads.Msg, entry)
		assert.NotEmpty(t, index.Reads.Msg, entry)
		assert.Equal(t, calc.Stop, s.Cautions[0].Severity, entry)
		for _, st := range s.Steps {
			assert.NotEqual(t, "LI", st.Gives.Symbol, entry)
		}
	}
}

// Past 3 the view of some experts is told as theirs, and the pair's load is told with its source.
func TestTold(t *testing.T) {
	told := func(s *calc.Sheet, cite *source.Source, severity calc.Severity) (count int) {
		for _, w := range s.Cautions {
			if w.Cite == cite && w.Severity == severity {
				count++
			}
		}
		return count
	}
	assert.Equal(t, 1, told(sheet(t, "mass=140 lb"), source.LiftingIndex, calc.Care), "140 ÷ 45.9 is 3.05")
	assert.Equal(t, 0, told(sheet(t, "mass=137 lb"), source.LiftingIndex, calc.Care), "137 ÷ 45.9 is 2.98")
	assert.Equal(t, 1, told(sheet(t, ""), source.TeamLift, calc.Care))
	assert.Equal(t, 1, told(sheet(t, ""), source.LiftingLimits, calc.Care), "kneeling is left out, and said")
}
