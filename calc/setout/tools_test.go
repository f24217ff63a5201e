package setout_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/setout"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var reader = words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}

func tool(t *testing.T, key string) *calc.Tool {
	for _, tool := range setout.Calculator.Tools {
		if tool.Key == key {
			return tool
		}
	}
	require.Fail(t, "no tool", key)
	return nil
}

// use presses a tool's button over an entry of the calculator.
func use(t *testing.T, key string, now calc.Texts, own calc.Texts) (calc.Texts, string, []calc.Problem) {
	e, problems := setout.Calculator.Read(now, calc.Habit{})
	require.Empty(t, problems)
	asked := &calc.Calculator{Inputs: tool(t, key).Inputs}
	o, problems := asked.Read(own, calc.Habit{})
	require.Empty(t, problems)
	texts, says, faults := tool(t, key).Write(e, o)
	return texts, reader.Line(says), faults
}

// read is the corners that an outline's text reads as, in metres.
func read(t *testing.T, texts calc.Texts) (corners [][2]float64) {
	e, problems := setout.Calculator.Read(texts, calc.Habit{})
	require.Empty(t, problems)
	for _, row := range e.Reading("outline").Rows {
		corners = append(corners, [2]float64{row[0] / 1e6, row[1] / 1e6})
	}
	return corners
}

// What each preset writes is read back as the shape that its name says.
func TestPresets(t *testing.T) {
	texts, says, _ := use(t, "rectangle", nil, calc.Texts{"long": "6 m", "wide": "2.5 m"})
	assert.Equal(t, [][2]float64{{0, 0}, {6, 0}, {6, 2.5}, {0, 2.5}}, read(t, texts))
	assert.Equal(t, "building,open,open,open", texts["edges"])
	assert.Contains(t, says, "6.5 m", "2.5, 6, 6.5 is a right triangle")

	texts, says, _ = use(t, "ell", nil, calc.Texts{"long": "6 m", "wide": "5 m", "out_x": "2 m", "out_y": "3 m"})
	assert.Equal(t, [][2]float64{{0, 0}, {6, 0}, {6, 2}, {4, 2}, {4, 5}, {0, 5}}, read(t, texts))
	assert.Contains(t, says, "24 m²")
	_, _, faults := use(t, "ell", nil, calc.Texts{"long": "6 m", "wide": "5 m", "out_x": "6 m", "out_y": "3 m"})
	assert.Len(t, faults, 1)

	texts, _, _ = use(t, "round", nil, calc.Texts{"along_x": "5 m", "along_y": "4 m", "wide": "2 m"})
	assert.Equal(t, [][2]float64{{-2, -2}, {5, -2}, {5, 0}, {0, 0}, {0, 4}, {-2, 4}}, read(t, texts))
	assert.Equal(t, "building", strings.Split(texts["edges"], ",")[2])
}

// Sides and angles: 3, 4, 5 with its own angles closes; a side read wrong does not; a small miss is shared out and told.
func TestSidesAndAngles(t *testing.T) {
	texts, says, faults := use(t, "traverse", nil, calc.Texts{"legs": "3 m, 90 deg; 4 m, 36.8699 deg; 5 m, 53.1301 deg"})
	require.Empty(t, faults)
	corners := read(t, texts)
	want := [][2]float64{{0, 0}, {3, 0}, {3, 4}}
	for i := range want {
		assert.InDeltaSlice(t, want[i][:], corners[i][:], 1e-5)
	}
	assert.Contains(t, says, "make 180°")

	// A side of 6 m read as 6.02: the miss of 20 mm is shared in the measure of the way, 6.02, 10.02 and 16.02 of 20.02.
	texts, says, _ = use(t, "traverse", nil, calc.Texts{"legs": "6.02 m, 90 deg; 4 m, 90 deg; 6 m, 90 deg; 4 m, 90 deg"})
	assert.Contains(t, says, "20 mm")
	corners = read(t, texts)
	assert.InDelta(t, 6.02-0.02*6.02/20.02, corners[1][0], 1e-6)
	assert.InDelta(t, 0.02-0.02*16.02/20.02, corners[3][0], 1e-6)

	_, _, faults = use(t, "traverse", nil, calc.Texts{"legs": "7 m, 90 deg; 4 m, 90 deg; 6 m, 90 deg; 4 m, 90 deg"})
	require.Len(t, faults, 1)
	assert.Contains(t, reader.Line(faults[0].Says), "1000 mm")
	_, _, faults = use(t, "traverse", nil, calc.Texts{"legs": "7 m, 90 deg; 4 m, 90 deg"})
	assert.Len(t, faults, 1)
}

// Turns are of the pattern: half a turn more is none.
func TestTurns(t *testing.T) {
	texts, _, _ := use(t, "quarter", calc.Texts{"turn": "30 deg"}, nil)
	assert.Equal(t, "−60°", texts["turn"])
	texts, _, _ = use(t, "line_up", calc.Texts{"outline": "0 m,0 m;3 m,4 m;0 m,4 m"}, calc.Texts{"edge": "1"})
	e, _ := setout.Calculator.Read(texts, calc.Habit{})
	assert.InDelta(t, 53.13010235-90, e.Reading("turn").Base, 1e-8, "columns run along it")
	_, _, faults := use(t, "line_up", nil, calc.Texts{"edge": "5"})
	assert.Len(t, faults, 1)
}
