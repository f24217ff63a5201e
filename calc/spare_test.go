package calc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/unit"
)

// A row may leave out its last cell where the table says so, whatever parts the cells; no other row may be short.
func TestSpareCell(t *testing.T) {
	wide := calc.Ask("width", "", "Width", unit.InchMM, 0, unit.Metre, "1 mm")
	count := calc.Ask("count", "", "How many", unit.Whole1, unit.Count(1), 9, "1")
	c := calc.Calculator{Inputs: []*calc.Input{calc.Tabulate("t", "Pieces", "1 mm,2", wide.Input, wide.Input, count.Input).LastSpare().Input}}
	for text, want := range map[string][]float64{
		"5 mm,6 mm": {5000, 6000, 1}, "5 mm,6 mm,": {5000, 6000, 1}, "5 mm, 6 mm , 4": {5000, 6000, 4}, "5 mm|6 mm": {5000, 6000, 1}, "5 mm\t6 mm\t3": {5000, 6000, 3},
	} {
		e, problems := c.Read(calc.Texts{"t": text}, calc.Habit{})
		require.Empty(t, problems, text)
		assert.Equal(t, [][]float64{want}, e.Reading("t").Rows, text)
	}
	for _, text := range []string{"5 mm", "5 mm,,", "5 mm,6 mm,2,2", "5 mm,6 mm,,"} {
		_, problems := c.Read(calc.Texts{"t": text}, calc.Habit{})
		assert.NotEmpty(t, problems, text)
	}
	c.Inputs[0].Spare = false
	_, problems := c.Read(calc.Texts{"t": "5 mm,6 mm"}, calc.Habit{})
	assert.NotEmpty(t, problems)
}
