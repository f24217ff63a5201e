package weather

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/unit"
)

// Cases whose humidity comes from a dew point, which no entry can carry. The charts stand in testdata.
func TestHeatIndexFromDewPoint(t *testing.T) {
	at := func(air, dew float64) float64 {
		h := HeatIndex(fahrenheit(air), Humidity(fahrenheit(air), fahrenheit(dew)))
		return unit.Fahrenheit.Of(float64(h.Index))
	}
	assert.InDelta(t, 83.15, at(80, 70), 0.05, "pyIEM mcalc_feelslike")
	assert.InDelta(t, 82.8, at(80, 65), 1.3, "National Weather Service, through an encyclopedia; the regression's own error is 1.3 °F")
}

// Below 80 °F thermofeel keeps the simple sum without the mean with the air; the source's wording asks for the
// mean. The two are compared here through the parts.
func TestHeatIndexSimple(t *testing.T) {
	air, dew := unit.Temperature(295-273.15), unit.Temperature(290-273.15)
	h := HeatIndex(air, Humidity(air, dew))
	assert.False(t, h.Regressed())
	assert.InDelta(t, 295.1536, float64(unit.Fahrenheit.Base(float64(h.Simple)))+273.15, 0.02, "thermofeel; its vapour formula differs by some hundredths of a per cent")
	assert.InDelta(t, float64(h.Simple+h.Air)/2, unit.Fahrenheit.Of(float64(h.Index)), 1e-9)
}

// Outside its range the index is the air.
func TestWindChillRange(t *testing.T) {
	for _, c := range []struct {
		air, wind  float64
		warm, calm bool
	}{{50, 3, false, false}, {50.1, 10, true, false}, {20, 2.9, false, true}, {60, 0, true, true}} {
		got := WindChill(fahrenheit(c.air), mph(c.wind))
		assert.Equal(t, [2]bool{c.warm, c.calm}, [2]bool{got.Warm, got.Calm}, "%v °F, %v mph", c.air, c.wind)
		if !got.Defined() {
			assert.Equal(t, fahrenheit(c.air), got.Index)
		}
	}
}
