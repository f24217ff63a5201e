// Package weather holds what the questions about weather share: the formulas, each
// typed and cited, the rules that judge their results, and the lines of working and
// the drawing that tell them. It is no question itself.
package weather

import (
	"math"

	"setbook/calc/unit"
)

// The constants of source.SaturationVapour: hPa, none, °C.
const (
	magnusA = 6.1094
	magnusB = 17.625
	magnusC = 243.04
)

// Saturation is the pressure of saturated vapour over water. Within 0.4 % of fuller
// formulas from −40 to 50 °C. Source: source.SaturationVapour.
func Saturation(at unit.Temperature) unit.Pressure {
	return unit.Pressure(100 * magnusA * math.Exp(magnus(at)))
}

func magnus(at unit.Temperature) float64 { return magnusB * float64(at) / (magnusC + float64(at)) }

// DewPoint is the temperature at which air of this humidity begins to shed water: the
// same formula turned round. Within 0.02 °C of the other usual constants from 0 to
// 40 °C. Source: source.SaturationVapour.
func DewPoint(air unit.Temperature, humidity unit.Ratio) unit.Temperature {
	g := dewExponent(air, humidity)
	return unit.Temperature(magnusC * g / (magnusB - g))
}

func dewExponent(air unit.Temperature, humidity unit.Ratio) float64 {
	return math.Log(float64(humidity)) + magnus(air)
}

// Humidity is the relative humidity of air of this dew point where it is as warm as the surface it
// touches. Source: source.SaturationVapour.
func Humidity(surface, dewPoint unit.Temperature) unit.Ratio {
	return unit.Ratio(Saturation(dewPoint) / Saturation(surface))
}

// wettest is the highest dew point taken for weather: about the highest ever recorded. From memory.
const wettest = unit.Temperature(35)

// Possible reports whether air so warm and humid occurs outdoors. What does not is a slip in one of the two.
func Possible(air unit.Temperature, humidity unit.Ratio) bool {
	return DewPoint(air, humidity) <= wettest+1e-9
}
