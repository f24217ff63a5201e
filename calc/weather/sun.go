package weather

import (
	"math"

	"setbook/calc/unit"
)

// Sun is where the sun stands at an instant, as seen from the centre of the earth, with the
// parts that lead there (source.SunPosition). Within 0.01° and a second of time from 1950 to 2050.
type Sun struct {
	Days         unit.Number // since noon of 2000-01-01, universal time
	Century      unit.Number // of 36,525 days
	Longitude    unit.Angle  // mean longitude, less Turns whole turns
	Turns        unit.Count
	Anomaly      unit.Angle // mean anomaly, less AnomalyTurns whole turns
	AnomalyTurns unit.Count
	Eccentricity unit.Number // of the earth's orbit
	Centre       unit.Angle  // equation of the centre
	Apparent     unit.Angle  // apparent longitude
	Obliquity    unit.Angle  // of the ecliptic
	Declination  unit.Angle
	Equation     unit.Span // equation of time: true solar time less mean
}

// epoch is noon of 2000-01-01 in days since 1970-01-01.
const epoch = 10957.5

// SunAt is the sun on a date at a time of day, counted from midnight of a zone. Source: source.SunPosition.
func SunAt(date unit.Date, clock, zone unit.Span) Sun {
	days := float64(date) - epoch + float64(clock-zone)/float64(unit.Day)
	s := sunAtCentury(days / 36525)
	s.Days = unit.Number(days)
	return s
}

func sunAtCentury(t float64) Sun {
	s := Sun{Century: unit.Number(t), Eccentricity: unit.Number(0.016708634 - t*(0.000042037+0.0000001267*t))}
	s.Longitude, s.Turns = turned(280.46646 + t*(36000.76983+0.0003032*t))
	s.Anomaly, s.AnomalyTurns = turned(357.52911 + t*(35999.05029-0.0001537*t))
	m, node := s.Anomaly, unit.Angle(125.04-1934.136*t)
	s.Centre = unit.Angle(m.Sin()*(1.914602-t*(0.004817+0.000014*t)) + (2*m).Sin()*(0.019993-0.000101*t) + (3*m).Sin()*0.000289)
	s.Apparent = s.Longitude + s.Centre - unit.Angle(0.00569+0.00478*node.Sin())
	s.Obliquity = unit.Angle(23 + (26+(21.448-t*(46.815+t*(0.00059-t*0.001813)))/60)/60 + 0.00256*node.Cos())
	s.Declination = degrees(math.Asin(s.Obliquity.Sin() * s.Apparent.Sin()))
	s.Equation = s.equation()
	return s
}

// equation is the equation of time.
func (s Sun) equation() unit.Span {
	y, e, l, m := float64(s.Half()), float64(s.Eccentricity), s.Longitude, s.Anomaly
	turn := y*(2*l).Sin() - 2*e*m.Sin() + 4*e*y*m.Sin()*(2*l).Cos() - 0.5*y*y*(4*l).Sin() - 1.25*e*e*(2*m).Sin()
	return unit.Span(240 * float64(degrees(turn)))
}

// Half is the square of the tangent of half the obliquity.
func (s Sun) Half() unit.Number {
	tan := (s.Obliquity / 2).Sin() / (s.Obliquity / 2).Cos()
	return unit.Number(tan * tan)
}

// turned takes whole turns off an angle.
func turned(a float64) (unit.Angle, unit.Count) {
	turns := math.Floor(a / 360)
	return unit.Angle(a - 360*turns), unit.Count(turns)
}

func degrees(radians float64) unit.Angle { return unit.Angle(radians * 180 / math.Pi) }
