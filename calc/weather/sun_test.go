package weather

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/unit"
)

// The intermediate values of NOAA's spreadsheet, as the tests of the astral library print them.
func TestSunAtCentury(t *testing.T) {
	for _, c := range []struct {
		century, longitude, centre, apparent, obliquity, declination, minutes float64
	}{
		{0.119986311, 0, -0.104951648, 279.95995849827, 23.4369810410121, -23.06317068, -3.078194825},
		{12.00844627, 233.8203529, -1.753028843, 232.065823531804, 23.2852236361575, -18.16694394, 16.58348133},
		{0.184134155, 69.43779106, 1.046852316, 70.475244256027, 23.4352890293474, 22.01463552, 2.232039737},
	} {
		s := sunAtCentury(c.century)
		if c.longitude != 0 {
			assert.InDelta(t, c.longitude, float64(s.Longitude), 1e-4)
		}
		assert.InDelta(t, c.centre, float64(s.Centre), 1e-6)
		assert.InDelta(t, c.apparent, float64(s.Apparent), 1e-4)
		assert.InDelta(t, c.obliquity, float64(s.Obliquity), 1e-6)
		assert.InDelta(t, c.declination, float64(s.Declination), 1e-5)
		assert.InDelta(t, c.minutes, float64(s.Equation)/60, 1e-4)
	}
	for century, want := range map[float64]float64{0.119986311: 0.016703588, 12.00844627: 0.016185564, 0.184134155: 0.016700889} {
		assert.InDelta(t, want, float64(sunAtCentury(century).Eccentricity), 1e-6)
	}
	assert.InDelta(t, 310.7374254, float64(sunAtCentury(-1.329130732).Longitude), 1e-4)
}

var golden = Place{39.742476, -105.1786, -7 * unit.Hour}

func at(h, m, s float64) unit.Span { return unit.Span(h*3600 + m*60 + s) }

// The worked example of NREL's solar position algorithm, as in pvlib's tests. NOAA's form is good to 0.01°.
func TestSkyAgainstSPA(t *testing.T) {
	date, clock := unit.DayNumber(2003, 10, 17), at(12, 30, 30)
	s := SunAt(date, clock, golden.Zone)
	k := golden.Sky(s, clock)
	assert.InDelta(t, 90-50.11162, float64(k.Elevation), 0.01, "refracted")
	assert.InDelta(t, 39.872046, float64(k.Geometric), 0.01)
	assert.InDelta(t, 194.340241, float64(k.Azimuth), 0.01)
	assert.InDelta(t, -9.31434, float64(s.Declination), 0.01)
	assert.InDelta(t, 11.10590, float64(k.HourAngle), 0.01)
}

// NREL's web calculator, through pvlib's tests.
func TestEquationOfTime(t *testing.T) {
	for clock, want := range map[unit.Span]float64{at(7, 21, 55): -3.935172, at(12, 4, 45): -4.026295, at(16, 47, 43): -4.117227} {
		assert.InDelta(t, want, float64(SunAt(unit.DayNumber(2015, 1, 2), clock, golden.Zone).Equation)/60, 0.05)
	}
}

func TestNoon(t *testing.T) {
	assert.InDelta(t, float64(at(12, 4, 45)), float64(golden.Day(unit.DayNumber(2015, 1, 2)).Noon), 60, "NREL, through pvlib")
	assert.InDelta(t, float64(at(12, 6, 58)), float64(golden.Day(unit.DayNumber(2015, 8, 2)).Noon), 60, "NREL, through pvlib")
	sydney := Place{-33.87, 151.22, 10 * unit.Hour}
	assert.InDelta(t, float64(at(11, 57, 0)), float64(sydney.Day(unit.DayNumber(2017, 6, 21)).Noon), 60, "ladybug, against NOAA")
}

// pvlib's tests print these.
func TestClearSky(t *testing.T) {
	for elevation, want := range map[unit.Angle]float64{-20: 0, -0.05: 0, 5: 48.62987, 10: 135.74175, 30: 487.89413, 50: 778.76669, 90: 1035.09203} {
		assert.InDelta(t, want, float64(ClearSky(elevation)), 1e-4, "at %v°", elevation)
	}
}

// The astral library's tests have the sun of 5 June 2019 at 69.6 N neither rise nor set. The same place in
// December, when the sun is as far south, has no day: symmetry.
func TestPolar(t *testing.T) {
	north := Place{69.6, 18.8, 2 * unit.Hour}
	up := north.Day(unit.DayNumber(2019, 6, 5))
	assert.Equal(t, [2]Stay{StaysUp, StaysUp}, [2]Stay{up.Rise.Stay, up.Set.Stay})
	down := north.Day(unit.DayNumber(2019, 12, 21))
	assert.Equal(t, [2]Stay{StaysDown, StaysDown}, [2]Stay{down.Rise.Stay, down.Set.Stay})
	for clock := unit.Clock(0); clock < 86400; clock += 3600 {
		assert.Equal(t, unit.Day, up.Left(clock))
		assert.Zero(t, down.Left(clock))
	}
}

// The sun that a day calls rising stands on the horizon: its geometric elevation is 90 − 90.833, everywhere and at
// all seasons. Rise and set come from one formula and elevation from another.
func TestEdgesStandOnTheHorizon(t *testing.T) {
	for latitude := unit.Angle(-66); latitude <= 66; latitude += 11 {
		for day := unit.DayNumber(2026, 1, 1); day < unit.DayNumber(2027, 1, 1); day += 13 {
			p := Place{latitude, -100, -6 * unit.Hour}
			for _, e := range []Edge{p.Day(day).Rise, p.Day(day).Set} {
				if e.Stay == Crosses {
					assert.InDelta(t, -0.833, float64(p.Sky(SunAt(day, e.Run, p.Zone), e.Run).Geometric), 0.003, "%v on %v", latitude, day)
				}
			}
		}
	}
}

// Daylight left: hand counts from NREL's sunset of 16:47:43 and sunrise of 07:21:55.
func TestLeft(t *testing.T) {
	day := golden.Day(unit.DayNumber(2015, 1, 2))
	assert.InDelta(t, 3600, float64(day.Left(unit.Clock(at(15, 47, 43)))), 60)
	assert.Zero(t, day.Left(unit.Clock(at(7, 20, 0))))
	assert.NotZero(t, day.Left(unit.Clock(at(7, 24, 0))))
	assert.Zero(t, day.Left(unit.Clock(at(16, 50, 0))))
	// The same place on universal time: its day runs past midnight.
	utc := Place{golden.Latitude, golden.Longitude, 0}.Day(unit.DayNumber(2015, 1, 2))
	assert.InDelta(t, float64(at(8, 47, 43)), float64(utc.Left(unit.Clock(at(15, 0, 0)))), 120)
	assert.InDelta(t, float64(at(0, 47, 43)), float64(utc.Left(unit.Clock(at(23, 0, 0)))), 120)
}

func TestStrayed(t *testing.T) {
	assert.InDelta(t, 0.0119, float64(golden.Strayed()/unit.Hour), 0.0001)
	wrong := golden
	wrong.Longitude = -wrong.Longitude
	assert.Greater(t, float64(wrong.Strayed()/unit.Hour), 8.0, "the sign of the longitude")
	assert.InDelta(t, 0, float64(Place{0, -150, 14 * unit.Hour}.Strayed()), 1e-6, "a zone across the date line fits")
}
