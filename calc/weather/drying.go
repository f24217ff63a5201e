package weather

import (
	"math"

	"setbook/calc/unit"
)

// EvaporationSpread is how far the estimate may be out, either way (source.EvaporationSpread).
const EvaporationSpread = unit.Ratio(0.4)

// Evaporation is the water that a fresh cement surface gives off, from its own
// temperature, the air's vapour and the wind at half a metre over it: 0.44 (e₀ − e)
// (0.253 + 0.096 V) lb/ft²·h, in psi and mph. Nought where the air is wetter than the
// surface. Good to about 40 %. Source: source.EvaporationRate, from memory.
func Evaporation(air unit.Temperature, humidity unit.Ratio, surface unit.Temperature, wind unit.Speed) unit.Evaporation {
	pull := unit.PSI.Of(float64(Saturation(surface)) - float64(humidity)*float64(Saturation(air)))
	rate := 0.44 * pull * (0.253 + 0.096*unit.MilesPerHour.Of(float64(wind)))
	return unit.Evaporation(unit.PoundsPerSquareFootHour.Base(max(0, rate)))
}

// roughness is that of short ground (source.WindProfile).
const roughness = unit.Metre / 100

// WindShare is what part of the wind at 10 m, as forecasts give it, blows at a height over open ground.
// Source: source.WindProfile.
func WindShare(height unit.Length) unit.Ratio {
	return unit.Ratio(math.Log(float64(height/roughness)) / math.Log(float64(10*unit.Metre/roughness)))
}
