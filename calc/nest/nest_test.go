package nest_test

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/calctest"
	"setbook/calc/link"
	"setbook/calc/nest"
	"setbook/calc/words"
)

func solve(t *testing.T, text string) (calc.Entry, *calc.Sheet) {
	e, problems := link.Read(&nest.Calculator, text, calc.Habit{})
	require.Empty(t, problems, text)
	s := nest.Calculator.Solve(e)
	require.Empty(t, s.Problems, text)
	return e, s
}

func table(t *testing.T, s *calc.Sheet, key string) *calc.Table {
	for _, one := range s.Tables {
		if one.Key == key {
			return one
		}
	}
	require.Fail(t, "no table "+key)
	return nil
}

// The tables hold each piece as often as it was asked for, and each paver of the answer.
func TestTablesAddUp(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	solved := 0
	for range 200 {
		e, problems := nest.Calculator.Read(calctest.RandomTexts(&nest.Calculator, random), calc.Habit{})
		require.Empty(t, problems)
		s := nest.Calculator.Solve(e)
		if len(s.Problems) > 0 {
			continue
		}
		kinds := table(t, s, "kinds")
		if strings.Contains(string(kinds.Says.Msg), "{listed}") {
			continue // not all are listed
		}
		solved++
		sheets, wanted := 0.0, map[string]float64{}
		for i, row := range e.Reading("pieces").Rows {
			wanted[strconv.Itoa(i+1)] = row[2]
		}
		got := map[string]float64{}
		for _, row := range kinds.Rows {
			sheets += row.Cells[1].Is.Base
			for _, text := range strings.Split(row.Cells[2].Text, ", ") {
				name, times, many := strings.Cut(strings.TrimSuffix(text, ")"), " (")
				n := 1
				if many {
					var err error
					n, err = strconv.Atoi(times)
					require.NoError(t, err)
				}
				got[name] += float64(n) * row.Cells[1].Is.Base
			}
		}
		for name := range wanted {
			require.GreaterOrEqual(t, got[name], wanted[name]-1e-9)
			require.Less(t, got[name], wanted[name]+1, "a part of a piece is a whole one, and no more")
		}
		answer, _ := s.Answer("sheets")
		require.Equal(t, answer.Is.Base, sheets)
	}
	assert.Greater(t, solved, 10)
}

// Three by three between saw cuts: eight pieces keep an edge of the paver's, four of them two that meet. The strips and
// the columns part by two cuts each.
func TestNineOnAPaver(t *testing.T) {
	_, s := solve(t, "sheet_w=600 mm&sheet_l=600 mm&kerf=3 mm&turn=yes&pieces=198 mm,198 mm,9")
	assert.Len(t, table(t, s, "cuts").Rows, 2+3*2)
	for _, c := range s.Cautions {
		if !strings.HasPrefix(string(c.Says.Msg), "Pieces that keep") {
			continue
		}
		said := calctest.Readers[0].Line(c.Says)
		assert.Contains(t, said, "8 of 9")
		assert.Contains(t, said, "corner: 4")
		return
	}
	assert.Fail(t, "nothing is said of the paver's own edges")
}

// How a cut is told: two pieces off the ends of a paver, and two off the ends of a strip.
func TestCutsAreTold(t *testing.T) {
	_, s := solve(t, "sheet_w=600 mm&sheet_l=600 mm&kerf=3 mm&turn=no&pieces=600 mm,320 mm;290 mm,270 mm;200 mm,200 mm")
	rows := table(t, s, "cuts").Rows
	var told [][]string
	for _, row := range rows {
		var line []string
		for i, c := range row.Cells {
			switch {
			case c.Is != nil:
				line = append(line, calctest.Readers[1].Line(words.Say("{x}", &words.Arg{Name: "x", Figure: c.Is})))
			case i > 1:
				line = append(line, c.Text+calctest.Readers[1].Line(c.Says))
			}
		}
		told = append(told, line)
	}
	assert.Equal(t, [][]string{
		{"A", "a strip off the paver", "320 mm", "the near edge", "along the paver's width"},
		{"A", "a strip off the paver", "270 mm", "the far edge", "along the paver's width"},
		{"A2", "a block off the strip", "290 mm", "the left end", "along the paver's length"},
		{"A2", "a block off the strip", "200 mm", "the right end", "along the paver's length"},
		{"A2.2", "a piece off the block", "200 mm", "the far edge", "along the paver's width"},
	}, told)
}

// A piece that is turned is drawn as it lies.
func TestTurnedPieceIsDrawn(t *testing.T) {
	_, s := solve(t, "sheet_w=300 mm&sheet_l=600 mm&kerf=0 mm&turn=yes&pieces=600 mm,150 mm")
	for _, shape := range s.Drawing.Shapes {
		for _, p := range shape.Points {
			if shape.Of == calc.Paver && shape.Closed {
				assert.True(t, 0 <= p.X && p.X <= 300e3 && 0 <= p.Y && p.Y <= 600e3, "%v", p)
			}
		}
	}
}

// Whoever waits may end it early.
func TestEndedEarly(t *testing.T) {
	e, _ := solve(t, "sheet_w=1000 mm&sheet_l=1000 mm&kerf=3 mm&turn=yes&pieces=333 mm,444 mm,40;511 mm,222 mm,40;105 mm,650 mm,40")
	asked := 0
	s := nest.Calculator.SolveWith(e, func(done, of int) bool { asked++; return false })
	assert.LessOrEqual(t, asked, 1)
	answer, ok := s.Answer("sheets")
	assert.True(t, ok)
	assert.Greater(t, answer.Is.Base, 1.0)
}
