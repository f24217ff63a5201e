package levels_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/calctest"
	"setbook/calc/levels"
	"setbook/calc/link"
	"setbook/calc/surface"
	"setbook/calc/unit"
)

// The table of DIN 18202 with its columns filled in, mm, as the German trade body printed it ("Handbuch für das Estrich- und
// Belaggewerbe", at https://deploy.doczz.net/doc/5839552/). One printed cell does not follow from its neighbours.
func TestGerman(t *testing.T) {
	at := []float64{0.1, 0.6, 1, 1.5, 2, 2.5, 3, 3.5, 4, 6, 8, 10, 15}
	printed := map[int][]float64{
		1: {10, 13, 15, 16, 17, 18, 18, 19, 20, 22, 23, 25, 30},
		2: {5, 7, 8, 9, 9, 10, 11, 12, 12, 13, 14, 15, 20},
		3: {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 11, 12, 15},
		4: {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15},
	}
	for line, row := range printed {
		for i, mm := range row {
			if line == 2 && at[i] == 3.5 {
				mm = 11 // printed 12; straight between 8 at 1 m and 12 at 4 m it is 11.33
			}
			assert.Equal(t, unit.Length(mm)*unit.Millimetre, levels.German(line, unit.Length(at[i])*unit.Metre), "line %d at %v m", line, at[i])
		}
		assert.Equal(t, levels.German(line, 15*unit.Metre), levels.German(line, 20*unit.Metre), "the last column holds beyond it")
		assert.Equal(t, levels.German(line, unit.Metre/10), levels.German(line, unit.Metre/20), "and the first before it")
	}
}

// BS 8204, as reported by The Concrete Society: 3, 5 and 10 mm under 2 m. The table says how many of the three classes a gap is within.
func TestBritish(t *testing.T) {
	for mm, classes := range map[string]int{"0": 3, "3": 3, "3.1": 2, "5": 2, "5.1": 1, "10": 1, "10.1": 0} {
		e, problems := link.Read(&levels.Calculator, "grid=0 mm,-"+mm+",0&step_x=1 m", calc.Habit{})
		require.Empty(t, problems)
		within, rows := 0, 0
		for _, row := range levels.Calculator.Solve(e).Tables[0].Rows {
			if strings.HasPrefix(string(row.Cells[0].Says.Msg), "BS 8204") {
				rows++
				if row.Cells[4].Says.Msg == "within" {
					within++
				}
			}
		}
		assert.Equal(t, 3, rows)
		assert.Equal(t, classes, within, "%s mm", mm)
	}
}

// A straight line has no curvature and no end to its number: nothing divides by nought (ASTM E1155, by its definitions). Two samples
// of one number make that number, however many readings each has.
func TestF(t *testing.T) {
	straight := surface.Bend([]float64{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11})
	assert.Equal(t, unit.Number(1000), levels.F(straight))
	f, _, _ := levels.Together([]surface.Flatness{straight, straight})
	assert.Equal(t, unit.Number(1000), f)
	some := surface.Flatness{Bends: 12, Mean: 100, Spread: 1200}
	more := some
	more.Bends = 40
	f, bends, _ := levels.Together([]surface.Flatness{some, more})
	assert.InDelta(t, float64(levels.F(some)), float64(f), 1e-9)
	assert.Equal(t, unit.Number(52), bends)
	f, _, _ = levels.Together(nil)
	assert.Zero(t, f)
}

// The way down is the one along which the plane falls its whole slope, and the printed expression gives it.
func TestDirection(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 18))
	for range 500 {
		b, c := r.NormFloat64(), r.NormFloat64()
		switch r.IntN(8) {
		case 0:
			b = 0
		case 1:
			c = 0
		}
		way, expr := levels.Direction(b, c)
		require.True(t, 0 <= way && way < 360)
		require.InDelta(t, -math.Hypot(b, c), b*way.Cos()+c*way.Sin(), 1e-12)
		got, err := calctest.Eval(expr, map[string]float64{"b": b, "c": c})
		require.NoError(t, err)
		require.InDelta(t, float64(way), math.Mod(got, 360), 1e-9, expr)
	}
}

// Whatever grid is given, every figure of the sheet is finite and its printed arithmetic holds, in both systems. (The suite of all
// calculators draws grids of one column alone.)
func TestSheets(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 20))
	pick := func(options ...string) string { return options[r.IntN(len(options))] }
	for range 150 {
		wide, deep := 1+r.IntN(14), 1+r.IntN(8)
		spread := math.Pow(10, 3*r.Float64()-1)
		var rows []string
		for range deep {
			var row []string
			for range wide {
				z := strconv.FormatFloat(spread*r.NormFloat64(), 'f', r.IntN(4), 64) + " mm"
				if r.IntN(12) == 0 {
					z = ""
				}
				row = append(row, z)
			}
			rows = append(rows, strings.Join(row, ","))
		}
		texts := calc.Texts{
			"grid": strings.Join(rows, ";"), "reading": pick("heights", "rod"), "step_x": pick("300 mm", "1 ft", "6 in", "2 m", "1.37 m"), "step_y": pick("300 mm", "1 ft", "2 m"),
			"edge": pick("10 in", "595 mm", "3 m"), "straightedge": pick("2 m", "0.1 m", "20 m"), "building": pick("none", "top", "bottom", "left", "right"), "access": pick("no", "yes"),
			"target": pick("plane", "flat", "chosen"), "level": pick("0 mm", "12 mm"), "fall": pick("2 %", "0 %"),
		}
		e, problems := levels.Calculator.Read(texts, calc.Habit{})
		if len(problems) > 0 { // nothing but gaps
			continue
		}
		s := levels.Calculator.Solve(e)
		if len(s.Problems) > 0 {
			continue
		}
		for _, reader := range calctest.Readers {
			calctest.Sheet(t, &levels.Calculator, e, s, reader)
		}
		calctest.RoundTrip(t, &levels.Calculator, e)
		require.False(t, t.Failed(), "%v", texts)
	}
}

// A grid turned end for end with its building is the same slab.
func TestMirrored(t *testing.T) {
	answers := func(entry string) map[string]float64 {
		e, problems := link.Read(&levels.Calculator, entry, calc.Habit{})
		require.Empty(t, problems)
		got := map[string]float64{}
		for _, a := range levels.Calculator.Solve(e).Answers {
			got[a.Key] = a.Is.Base
		}
		return got
	}
	one := answers("grid=10 mm,4,7,1;3,-2,8,0;5,9,2,6&step_x=300 mm&building=left")
	two := answers("grid=1 mm,7,4,10;0,8,-2,3;6,2,9,5&step_x=300 mm&building=right")
	for key, x := range one {
		if key == "direction" {
			assert.InDelta(t, math.Mod(540-x, 360), two[key], 1e-9)
			continue
		}
		assert.InDelta(t, x, two[key], 1e-9*math.Abs(x)+1e-3, key)
	}
}

// A long work that is told to stop ends with what it has, and its figures are finite.
func TestStopped(t *testing.T) {
	row := strings.Repeat("1 mm,2,", 60) + "3"
	e, problems := link.Read(&levels.Calculator, "grid="+strings.Repeat(row+";", 80)+row, calc.Habit{})
	require.Empty(t, problems)
	asked := 0
	s := levels.Calculator.SolveWith(e, func(done, of int) bool {
		asked++
		assert.LessOrEqual(t, done, of)
		return asked < 3
	})
	assert.Equal(t, 3, asked)
	require.Empty(t, s.Problems)
	for _, a := range s.Answers {
		assert.False(t, math.IsNaN(a.Is.Base))
	}
}

// The grid method goes by cells between four readings, or three. A line of them has none: no patch is found there, which is not that none is needed.
func TestALineHasNoPatch(t *testing.T) {
	for text, found := range map[string]bool{
		"0 mm,-9 mm,0 mm": false, "0 mm;-9 mm;0 mm": false, "0 mm,,0 mm;,,;0 mm,,-9 mm": false, "0 mm,0 mm;0 mm,-9 mm": true, "0 mm,;0 mm,-9 mm": true,
	} {
		e, problems := levels.Calculator.Read(calc.Texts{"grid": text}, calc.Habit{})
		require.Empty(t, problems)
		s := levels.Calculator.Solve(e)
		for _, a := range s.Answers {
			if a.Key == "fill" || a.Key == "buy" {
				assert.Equal(t, found, a.Reads.Msg == "", "%s of %s", a.Key, text)
			}
		}
	}
}
