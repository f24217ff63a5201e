package weather

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// told gives what a warning writes, each line with its severity.
func told(warn func(*calc.Sheet)) (lines []string) {
	s := &calc.Sheet{}
	warn(s)
	reader := words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}
	for _, c := range s.Cautions {
		lines = append(lines, [...]string{calc.Stop: "stop ", calc.Care: "care ", calc.Note: "note "}[c.Severity]+reader.Line(c.Says))
	}
	return lines
}

// Where a line changes only what is said and not the verdict, the rows of testdata cannot see it. The lines are
// those of OSHA (115 °F), the cement association as told by a university (1.5 kg/m²·h), and the National Weather Service (−18 °F).
func TestWarnings(t *testing.T) {
	heat := func(f float64) []string { return told(func(s *calc.Sheet) { WarnHeat(s, fahrenheit(f)) }) }
	drying := func(kg float64) []string {
		return told(func(s *calc.Sheet) { WarnDrying(s, unit.Evaporation(unit.KilogramsPerSquareMetreHour.Base(kg))) })
	}
	cold := func(air, chill float64) []string {
		return told(func(s *calc.Sheet) { WarnCold(s, fahrenheit(air), fahrenheit(chill)) })
	}
	for _, c := range []struct {
		lines []string
		want  []string // how each line begins and a phrase of it
	}{
		{heat(90.9), nil},
		{heat(91), []string{"care", "moderate"}},
		{heat(102.9), []string{"care", "moderate"}},
		{heat(103), []string{"stop", "high band"}},
		{heat(114.9), []string{"stop", "high band"}},
		{heat(115), []string{"stop", "top band"}},
		{drying(0.4), nil},
		{drying(0.5), []string{"care", "skin over"}},
		{drying(1.0), []string{"stop", "even concrete"}},
		{drying(1.49), []string{"stop", "even concrete"}},
		{drying(1.5), []string{"stop", "almost certain"}},
		{cold(45, 40), nil},
		{cold(39.9, 39.9), []string{"care", "cold weather for cement"}},
		{cold(40, 32), []string{"care", "wet hands"}},
		{cold(32.1, 32.1), []string{"care", "cold weather for cement"}},
		{cold(20, -17), []string{"stop", "frost is near", "note", "half of its strength", "care", "wet hands"}},
		{cold(20, -18), []string{"stop", "frost is near", "note", "half of its strength", "stop", "30 minutes"}},
	} {
		if assert.Len(t, c.lines, len(c.want)/2, "%v", c.want) {
			for i, line := range c.lines {
				assert.True(t, strings.HasPrefix(line, c.want[2*i]), line)
				assert.Contains(t, line, c.want[2*i+1])
			}
		}
	}
}

// Air lifts the sun by 34 minutes of arc where it is seen on the horizon: NOAA's and the Naval Observatory's figure
// for sunrise. The forms for each band meet at its edges.
func TestRefraction(t *testing.T) {
	assert.InDelta(t, 34.0/60, float64(Refraction(-34.0/60)), 0.01)
	for _, edge := range []unit.Angle{5, -0.575} {
		assert.InDelta(t, float64(Refraction(edge-1e-9)), float64(Refraction(edge+1e-9)), 0.001, "at %v°", edge)
	}
	assert.Zero(t, Refraction(86))
}
