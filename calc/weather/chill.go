package weather

import (
	"math"

	"setbook/calc/unit"
)

// The limits of the wind chill index (source.WindChill).
var (
	ChillWarmest = unit.Temperature(unit.Fahrenheit.Base(50))
	ChillCalmest = unit.Speed(unit.MilesPerHour.Base(3))
)

// Chill is a wind chill. The parts are in °F and mph as plain numbers, because the
// source's formula is written in them.
type Chill struct {
	Air, Wind unit.Number // °F, mph
	Power     unit.Number // wind to the power of 0.16
	Felt      unit.Number // °F
	Index     unit.Temperature
	Warm      bool // over 50 °F: no wind chill is defined, and Index is the air
	Calm      bool // under 3 mph: the same
}

// Defined reports whether the index reaches the weather.
func (c Chill) Defined() bool { return !c.Warm && !c.Calm }

// WindChill is how cold wind feels on bare skin, from air and wind at 10 m. The chart is
// printed in whole degrees. Source: source.WindChill.
func WindChill(air unit.Temperature, wind unit.Speed) Chill {
	c := Chill{Air: number(unit.Fahrenheit, float64(air)), Wind: number(unit.MilesPerHour, float64(wind)), Index: air}
	c.Warm, c.Calm = c.Air > 50, c.Wind < 3
	if !c.Defined() {
		return c
	}
	t := float64(c.Air)
	p := math.Pow(float64(c.Wind), 0.16)
	c.Power = unit.Number(p)
	c.Felt = unit.Number(35.74 + 0.6215*t - 35.75*p + 0.4275*t*p)
	c.Index = unit.Temperature(unit.Fahrenheit.Base(float64(c.Felt)))
	return c
}
