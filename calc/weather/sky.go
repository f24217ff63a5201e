package weather

import (
	"math"

	"setbook/calc/unit"
)

// Place is where the work is and which clock it keeps: latitude north and longitude
// east of nought are positive, and so is a zone ahead of universal time.
type Place struct {
	Latitude, Longitude unit.Angle
	Zone                unit.Span
}

// Sky is where the sun stands over a place. Up, North and East are the parts of a line of
// length 1 towards it.
type Sky struct {
	HourAngle       unit.Angle // west of the meridian, from −180 to 180, after Turns whole turns
	Turns           unit.Count
	Up, North, East unit.Number
	Geometric       unit.Angle // elevation without air
	Refraction      unit.Angle
	Elevation       unit.Angle // as seen
	Azimuth         unit.Angle // clockwise from true north
}

// Sky places a sun over the place at a time of day. Source: source.SunPosition.
func (p Place) Sky(s Sun, clock unit.Span) Sky {
	k := Sky{HourAngle: unit.Angle(float64(clock+s.Equation-p.Zone)/240) + p.Longitude - 180}
	back := math.Floor(float64(k.HourAngle)/360 + 0.5)
	k.Turns, k.HourAngle = unit.Count(-back), k.HourAngle-unit.Angle(360*back)
	φ, δ, h := p.Latitude, s.Declination, k.HourAngle
	k.Up = unit.Number(φ.Sin()*δ.Sin() + φ.Cos()*δ.Cos()*h.Cos())
	k.North = unit.Number(φ.Cos()*δ.Sin() - φ.Sin()*δ.Cos()*h.Cos())
	k.East = unit.Number(-δ.Cos() * h.Sin())
	k.Geometric = degrees(math.Atan2(float64(k.Up), math.Hypot(float64(k.North), float64(k.East))))
	k.Refraction = Refraction(k.Geometric)
	k.Elevation = k.Geometric + k.Refraction
	k.Azimuth = degrees(math.Atan2(float64(k.East), float64(k.North)))
	if k.Azimuth < 0 {
		k.Azimuth += 360
	}
	return k
}

// Band is which form of the refraction holds at an elevation.
type Band uint8

// The bands, from the zenith down.
const (
	RefractionNone  Band = iota // over 85°
	RefractionHigh              // over 5°
	RefractionLow               // over −0.575°
	RefractionUnder             // under the horizon
)

// RefractionBand is the band that an elevation falls in. Source: source.SunPosition.
func RefractionBand(elevation unit.Angle) Band {
	switch {
	case elevation > 85:
		return RefractionNone
	case elevation > 5:
		return RefractionHigh
	case elevation > -0.575:
		return RefractionLow
	}
	return RefractionUnder
}

// Refraction is how much air lifts the sun at sea level. Source: source.SunPosition.
func Refraction(elevation unit.Angle) unit.Angle {
	h := float64(elevation)
	tan := elevation.Sin() / elevation.Cos()
	switch RefractionBand(elevation) {
	case RefractionNone:
		return 0
	case RefractionHigh:
		return unit.Angle((58.1/tan - 0.07/math.Pow(tan, 3) + 0.000086/math.Pow(tan, 5)) / 3600)
	case RefractionLow:
		return unit.Angle((1735 + h*(-518.2+h*(103.4+h*(-12.79+h*0.711)))) / 3600)
	}
	return unit.Angle(-20.774 / tan / 3600)
}

// ClearSky is what the sun gives a level surface through a clear sky, at the most: haze,
// cloud and shade take away from it. Source: source.ClearSky.
func ClearSky(elevation unit.Angle) unit.Irradiance {
	high := elevation.Sin()
	if high <= 0 {
		return 0
	}
	return unit.Irradiance(1098 * high * math.Exp(-0.059/high))
}
