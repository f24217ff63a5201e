package calc

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/unit"
)

func gridInput() *Input {
	cell := Ask("z", "", "Reading", unit.InchMM, -100*unit.Metre, 100*unit.Metre, "1 mm")
	return Gridded("grid", "Readings", "1 mm", cell.Input).Input
}

// A grid's plain cells are read by a short way. It must give the very float64 that the long way gives, for every text that it takes.
func FuzzPlainCell(f *testing.F) {
	for _, text := range []string{"12.345", "-0.001", "418.617 mm", "7", "0012.50", "1.905", "1,905", "12,5", "99999999999", "9007199254740993", "0.1234567890123456789", "98765.4321098765432", "7.00000000000000001", "5in", "3 m", "5 mm", "-", ".5", "5.", "1e3", "--1", "1 2", "½", "123456789.123456"} {
		f.Add(text, byte('.'), true)
		f.Add(text, byte(','), false)
		f.Add(text, byte(0), true)
	}
	f.Fuzz(func(t *testing.T, text string, decimal byte, metric bool) {
		if decimal != '.' && decimal != ',' {
			decimal = 0
		}
		for _, u := range []*unit.Unit{unit.Millimetres, unit.Inches, unit.Feet, unit.Metres, unit.Mils} {
			in := gridInput()
			reader := tableReader{in: in, habit: Habit{Decimal: decimal}, last: []*unit.Unit{u}}
			base, ok := reader.plain(0, text)
			if !ok {
				continue
			}
			bare := u
			if written := unit.Ends(unit.KindLength, text); written != nil {
				require.Same(t, u, written, text)
				bare = nil
			}
			want, fault := unit.Read(unit.KindLength, text, unit.Habit{Decimal: decimal, Bare: bare})
			require.Nil(t, fault, "%q in %s", text, u.Symbol)
			require.Equal(t, want, base, "%q in %s", text, u.Symbol)
		}
	})
}

// The short way is taken where it should be: it reads no less than bare decimals after a unit, and those in the reader's own units.
func TestPlainCell(t *testing.T) {
	for _, c := range []struct {
		text   string
		last   *unit.Unit
		habit  Habit
		want   float64
		wanted bool
	}{
		{"12.5", unit.Millimetres, Habit{}, 12500, true},
		{"-12.5 mm", unit.Millimetres, Habit{}, -12500, true},
		{"12,5", unit.Millimetres, Habit{Decimal: ','}, 12500, true},
		{"3", nil, Habit{System: unit.US}, 3 * 25400, true},
		{"3", nil, Habit{System: unit.Metric}, 3000, true},
		{"3", nil, Habit{}, 0, false},
		{"3 mm", nil, Habit{System: unit.Metric}, 0, false},
		{"12.5", unit.Millimetres, Habit{Decimal: ','}, 0, false},
		{"1/2", unit.Inches, Habit{}, 0, false},
		{"200000", unit.Millimetres, Habit{}, 0, false}, // past the limit: the long way says so
	} {
		reader := tableReader{in: gridInput(), habit: c.habit, last: []*unit.Unit{c.last}}
		got, ok := reader.plain(0, c.text)
		assert.Equal(t, c.wanted, ok, c.text)
		if c.wanted {
			assert.Equal(t, c.want, got, c.text)
		}
	}
}

// Whatever is pasted into a grid is refused with words or read into rows of one length, within the limits, that read back alike.
func FuzzGrid(f *testing.F) {
	for _, text := range []string{"1 mm,2,3;4,5,6", "1 mm,,3\n4,5\r\n\n6", "1 in\t2\t3", "1,5 mm | 2", ";;", "1 mm;2 ft;3", "1/2 in,3/4", "a", "0 mm,0.001 mm"} {
		f.Add(text, byte('.'))
		f.Add(text, byte(','))
	}
	f.Fuzz(func(t *testing.T, text string, decimal byte) {
		if decimal != '.' && decimal != ',' {
			decimal = 0
		}
		in := gridInput()
		r, problem := in.read(text, Habit{Decimal: decimal})
		if problem != nil {
			require.NotEmpty(t, problem.Says.Msg)
			return
		}
		require.NotEmpty(t, r.Rows)
		for _, row := range r.Rows {
			require.Len(t, row, len(r.Rows[0]))
			for _, z := range row {
				require.True(t, math.IsNaN(z) || math.Abs(z) <= float64(100*unit.Metre))
			}
		}
		again, problem := in.read(in.WrittenTable(r.Rows, unit.Style{System: unit.Metric}), Habit{})
		require.Nil(t, problem)
		require.Equal(t, len(r.Rows), len(again.Rows))
		for i, row := range again.Rows {
			require.InDeltaSlice(t, r.Rows[i], row, 1e-6)
		}
	})
}

// The contract: an empty cell is a missing reading. In a grid of one column an empty cell is an empty line, and what follows it must not
// move up. Beside more columns an empty line is no row, since a row that was skipped has its commas. Empty lines at either end are none.
func TestEmptyCellOfAColumnIsMissing(t *testing.T) {
	for text, want := range map[string][]float64{
		"1 mm;;3;;;6":              {1, math.NaN(), 3, math.NaN(), math.NaN(), 6},
		";;1 mm\r\n \r\n3\r\n\r\n": {1, math.NaN(), 3},
		"1 mm;\n2;\r\n3;\n":        {1, 2, 3},
		"1 mm,2;;3,4":              {1, 2, 3, 4},
		"1 mm,2;,;3,4":             {1, 2, math.NaN(), math.NaN(), 3, 4},
	} {
		r, problem := gridInput().readTable(text, Habit{})
		require.Nil(t, problem, text)
		read := []float64{}
		for _, row := range r.Rows {
			for _, base := range row {
				read = append(read, base/float64(unit.Millimetre))
			}
		}
		require.Len(t, read, len(want), text)
		for i := range want {
			assert.True(t, read[i] == want[i] || read[i] != read[i] && want[i] != want[i], "%q: cell %d: %g", text, i, read[i])
		}
	}
}
