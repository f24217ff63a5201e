package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// A step is shown as it would be keyed into a pocket calculator, in symbols and in figures.
func TestStepShown(t *testing.T) {
	var s calc.Sheet
	calc.Let(&s, "w", 12.7*unit.Millimetre, unit.InchMM)
	calc.Let(&s, "T_1", unit.Temperature(-5), unit.Warmth)
	calc.Let(&s, "θ", unit.Angle(45), unit.Arc)
	calc.WorksUS(&s, "Any {w}.", "x", unit.Number(1), unit.Bare,
		"max(1, pow(2 * w, (w - T_1) / 10)) * sin(θ) - ceil(w)", "-w / 12 + pi", source.ByDefinition)
	st := &s.Steps[0]
	metric, us := unit.Style{System: unit.Metric, Decimal: ','}, unit.Style{System: unit.US}
	formula := func(system unit.System) string {
		var b strings.Builder
		for _, p := range st.Formula(system) {
			b.WriteString(p.Text)
		}
		return b.String()
	}
	assert.Equal(t, "max (1; (2 × w)^((w − T_1) ÷ 10)) × sin (θ) − round up (w)", formula(unit.Metric))
	assert.Equal(t, "max (1; (2 × 12,7)^((12,7 − (−5)) ÷ 10)) × sin (45°) − round up (12,7)", st.With(metric))
	assert.Equal(t, "−w ÷ 12 + π", formula(unit.US))
	assert.Equal(t, "−0.5 ÷ 12 + π", st.With(us))
	assert.Equal(t, "Any 12.7 mm.", words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric}}.Line(st.Says))
}
