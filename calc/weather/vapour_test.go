package weather

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/unit"
)

func fahrenheit(f float64) unit.Temperature { return unit.Temperature(unit.Fahrenheit.Base(f)) }

func mph(v float64) unit.Speed { return unit.Speed(unit.MilesPerHour.Base(v)) }

// Every want is printed by somebody else; the share allowed is what a Magnus form may differ from the fuller
// formulas behind them.
func TestSaturation(t *testing.T) {
	const psi, hPa, inHg = 6894.757293168, 100, 3386.389
	for _, c := range []struct {
		at     unit.Temperature
		pascal float64
		within float64 // share
		from   string
	}{
		{5, 872.6, 0.002, "ASHRAE Fundamentals 2017 ch. 1 table 3, in psychrolib's tests"},
		{25, 3169.7, 0.0035, "the same"},
		{50, 12351.3, 0.005, "the same"},
		{fahrenheit(41), 0.12656 * psi, 0.002, "the same, in psi"},
		{fahrenheit(77), 0.45973 * psi, 0.0035, "the same, in psi"},
		{fahrenheit(122), 1.79140 * psi, 0.005, "the same, in psi"},
		{5, 8.72 * hPa, 0.002, "Bolton's form, in MetPy's tests"},
		{10, 12.27 * hPa, 0.002, "the same"},
		{18, 20.63 * hPa, 0.002, "the same"},
		{25, 31.67 * hPa, 0.002, "the same"},
		{0, 6.112 * hPa, 0.001, "the same"},
		{fahrenheit(50), 12.2717 * hPa, 0.002, "the same"},
		{fahrenheit(68), 23.3695 * hPa, 0.002, "the same"},
		{10, 1228, 0.005, "Sonntag 1990, in xclim's tests"},
		{20, 2339, 0.005, "the same"},
		{30, 4247, 0.005, "the same"},
		{40, 7385, 0.005, "the same"},
		{60, 19947, 0.005, "the same"},
		{25, 3169.92, 0.0035, "ITS-90 Hardy, in thermofeel's tests"},
		{fahrenheit(80), 1.022 * inHg, 0.012, "NOAA El Paso psychrometric table, an older formula that runs 0.9 % low"},
		{fahrenheit(104), 2.160 * inHg, 0.012, "the same"},
		{fahrenheit(110), 2.576 * inHg, 0.012, "the same"},
	} {
		assert.InEpsilon(t, c.pascal, float64(Saturation(c.at)), c.within, "at %v °C: %s", c.at, c.from)
	}
}

func TestHumidity(t *testing.T) {
	for _, c := range []struct {
		air, dew     unit.Temperature
		want, within float64 // per cent
		from         string
	}{
		{25, 15, 53.80, 0.05, "MetPy"},
		{30, 28, 89.085, 0.05, "thermofeel"},
		{32, 10, 25.79, 0.05, "pyIEM"},
		{5, 4, 93.24, 0.02, "pyIEM"},
	} {
		assert.InDelta(t, c.want, 100*float64(Humidity(c.air, c.dew)), c.within, c.from)
		assert.InDelta(t, float64(c.dew), float64(DewPoint(c.air, unit.Ratio(c.want/100))), 0.05, c.from)
	}
	// NACE 6A192/SSPC-TR 3, table 1, as printed in CoatingsPro: the humidity at a surface so much warmer than the dew
	// point. Its rows of 10 and 35 °F do not come out by any psychrometry and are left out. Printed in whole per cent.
	for _, c := range []struct{ spread, low, high float64 }{{15, 54, 62}, {20, 43, 51}, {25, 34, 42}, {30, 27, 35}} {
		for surface := 50.0; surface <= 80; surface += 10 {
			got := 100 * float64(Humidity(fahrenheit(surface), fahrenheit(surface-c.spread)))
			assert.True(t, c.low-1 <= got && got <= c.high+1, "%v °F over the dew point at %v °F: %v %%", c.spread, surface, got)
		}
	}
}

func TestPossible(t *testing.T) {
	assert.True(t, Possible(35, 1), "the record stands")
	assert.True(t, Possible(fahrenheit(122), 0.3))
	assert.False(t, Possible(40, 1))
}

// The nomograph's own example, and rows of the table of the Portland Cement Association (1957), which the
// reference has from memory only: those allow 12 % or 0.006 lb/ft²·h, as the reference does.
func TestEvaporation(t *testing.T) {
	rate := func(surface, air, humidity, wind float64) float64 {
		return unit.PoundsPerSquareFootHour.Of(float64(Evaporation(fahrenheit(air), unit.Ratio(humidity/100), fahrenheit(surface), mph(wind))))
	}
	assert.InDelta(t, 0.25, rate(87, 80, 50, 12), 0.02, "ACI and PCA nomograph, as quoted in a question and answer")
	for _, c := range [][5]float64{
		{70, 70, 70, 5, 0.038}, {70, 70, 70, 10, 0.062}, {70, 70, 70, 15, 0.085}, {70, 70, 70, 20, 0.110}, {70, 70, 70, 25, 0.135},
		{70, 70, 90, 10, 0.020}, {70, 70, 50, 10, 0.100}, {70, 70, 30, 10, 0.135}, {70, 70, 10, 10, 0.175},
		{50, 50, 70, 10, 0.026}, {60, 60, 70, 10, 0.043}, {80, 80, 70, 10, 0.077}, {90, 90, 70, 10, 0.110},
		{70, 50, 70, 10, 0.125}, {70, 30, 70, 10, 0.165}, {80, 40, 100, 10, 0.205}, {70, 40, 100, 10, 0.130}, {60, 40, 100, 10, 0.075},
		{70, 40, 50, 0, 0.035}, {70, 40, 50, 10, 0.162}, {70, 40, 50, 25, 0.357}, {90, 90, 10, 0, 0.070}, {90, 90, 10, 10, 0.336}, {90, 90, 10, 25, 0.740},
	} {
		assert.InDelta(t, c[4], rate(c[0], c[1], c[2], c[3]), math.Max(0.006, 0.12*c[4]), "%v", c)
	}
	assert.Zero(t, rate(50, 80, 80, 10), "wet air on a cold slab: condensing, not drying")
}

// thermofeel's tests give the wind at 2 m for 7 m/s at 10 m.
func TestWindShare(t *testing.T) {
	assert.InDelta(t, 5.36907, 7*float64(WindShare(2*unit.Metre)), 0.0001)
}
