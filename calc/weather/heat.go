package weather

import (
	"math"

	"setbook/calc/unit"
)

// Heat is a heat index and the way that its source's rule took to it. The parts are in
// degrees Fahrenheit as plain numbers, because the source's formula is written in them.
type Heat struct {
	Air        unit.Number // °F
	Simple     unit.Number // the simple sum
	Mean       unit.Number // the simple sum and the air, halved
	Regression unit.Number // where Mean is 80 or more
	Dry, Humid unit.Number // taken off, put on
	Index      unit.Temperature
}

// regressionFrom is the mean from which the regression stands.
const regressionFrom = 80

// Regressed reports whether the regression was used.
func (h Heat) Regressed() bool { return h.Mean >= regressionFrom }

// HeatIndex is how hot moist air feels in the shade. Below 80 °F the source's rule takes
// the mean of the air and a simple sum; from there on the regression with its two
// adjustments. The regression is good to ±1.3 °F. Source: source.HeatIndex.
func HeatIndex(air unit.Temperature, humidity unit.Ratio) Heat {
	h := Heat{Air: number(unit.Fahrenheit, float64(air))}
	t, r := float64(h.Air), float64(humidity)*100
	h.Simple = unit.Number(0.5 * (t + 61 + (t-68)*1.2 + r*0.094))
	h.Mean = (h.Simple + h.Air) / 2
	index := h.Mean
	if h.Regressed() {
		h.Regression = rothfusz(t, r)
		if r < 13 && 80 <= t && t <= 112 {
			h.Dry = unit.Number((13 - r) / 4 * math.Sqrt((17-math.Abs(t-95))/17))
		}
		if r > 85 && 80 <= t && t <= 87 {
			h.Humid = unit.Number((r - 85) / 10 * (87 - t) / 5)
		}
		index = h.Regression - h.Dry + h.Humid
	}
	h.Index = unit.Temperature(unit.Fahrenheit.Base(float64(index)))
	return h
}

// rothfusz is the regression, of degrees Fahrenheit and per cent.
func rothfusz(t, r float64) unit.Number {
	return unit.Number(-42.379 + 2.04901523*t + 10.14333127*r - 0.22475541*t*r - 0.00683783*t*t -
		0.05481717*r*r + 0.00122874*t*t*r + 0.00085282*t*r*r - 0.00000199*t*t*r*r)
}

// number is a base value in a unit, freed of the last bits that the way there and back costs, so
// that 80 °F is not taken for less.
func number(u *unit.Unit, base float64) unit.Number {
	return unit.Number(math.Round(u.Of(base)*1e9) / 1e9)
}
