package weather

import (
	"math"

	"setbook/calc/unit"
)

// riseZenith is where the sun's middle stands as its upper edge shows: source.Sunrise.
const riseZenith = unit.Angle(90.833)

// Stay says that the sun does not cross the horizon.
type Stay uint8

// Whether it does.
const (
	Crosses   Stay = iota
	StaysUp        // it does not set
	StaysDown      // it does not rise
)

// Edge is a sunrise or a sunset.
type Edge struct {
	Sun   Sun        // at that time
	Half  unit.Angle // hour angle at which the sun meets the horizon; 180 where it stays up, 0 where it stays down
	Stay  Stay
	Run   unit.Span  // seconds from midnight of the date; below nought or past a day where clock and place do not fit
	Clock unit.Clock // the same on the clock
	Days  unit.Count // whole days that Clock is later than Run
}

// Day is a day of the sun from one midnight of the sun to the next.
type Day struct {
	Rise, Set Edge
	Noon      unit.Span // seconds from midnight of the date to when the sun stands highest
}

// Day works out sunrise, noon and sunset on a date. Rise and set are each worked with the sun as it
// stands at that time. On a level horizon at sea level, to about a minute; further from the equator
// than 72° to some minutes. Source: source.Sunrise and source.SunPosition.
func (p Place) Day(date unit.Date) Day {
	middle := p.noon(SunAt(date, p.noon(Sun{}), p.Zone))
	s := SunAt(date, middle, p.Zone)
	return Day{Rise: p.edge(date, s, -1), Set: p.edge(date, s, 1), Noon: middle}
}

// noon is when the sun stands highest, in seconds from midnight.
func (p Place) noon(s Sun) unit.Span {
	return unit.Day/2 - unit.Span(240*p.Longitude) - s.Equation + p.Zone
}

// edge finds the rise (side −1) or set (side 1), beginning with the sun of noon.
func (p Place) edge(date unit.Date, s Sun, side float64) Edge {
	var e Edge
	for range 3 {
		e.Sun = s
		e.Half, e.Stay = p.half(s.Declination)
		e.Run = p.noon(s) + unit.Span(240*side*float64(e.Half))
		s = SunAt(date, e.Run, p.Zone)
	}
	e.Clock, e.Days = OnClock(e.Run)
	return e
}

// half is the hour angle at which a sun of this declination meets the horizon.
func (p Place) half(declination unit.Angle) (unit.Angle, Stay) {
	φ, δ := p.Latitude, declination
	over, under := riseZenith.Cos()-φ.Sin()*δ.Sin(), φ.Cos()*δ.Cos()
	switch {
	case over <= -under:
		return 180, StaysUp
	case over >= under:
		return 0, StaysDown
	}
	return degrees(math.Acos(over / under)), Crosses
}

// OnClock brings seconds from a midnight onto the clock, and tells how many days that adds.
func OnClock(run unit.Span) (unit.Clock, unit.Count) {
	days := -math.Floor(float64(run / unit.Day))
	return unit.Clock(float64(run) + days*float64(unit.Day)), unit.Count(days)
}

// Left is how much daylight is left at a time of day: nought in the dark, a whole day where the sun stays up.
func (d Day) Left(now unit.Clock) unit.Span {
	at := unit.Span(now)
	at += unit.Span(math.Round(float64((d.Noon-at)/unit.Day))) * unit.Day // into the same day of the sun
	switch {
	case at < d.Rise.Run && d.Rise.Stay != StaysUp:
		return 0
	case d.Set.Stay == StaysUp:
		return unit.Day
	case at >= d.Set.Run:
		return 0
	}
	return d.Set.Run - at
}

// Strayed is how far the clock is from the sun's own mean time at the place.
func (p Place) Strayed() unit.Span {
	off := float64(p.Zone) - 240*float64(p.Longitude)
	return unit.Span(off - float64(unit.Day)*math.Round(off/float64(unit.Day)))
}

// mostStrayed is more than any clock in civil use, summer time included. From memory.
const mostStrayed = 4 * unit.Hour

// Astray reports whether zone and longitude do not fit: a slip in one, or in a sign.
func Astray(p Place) bool { return p.Strayed() > mostStrayed || p.Strayed() < -mostStrayed }
