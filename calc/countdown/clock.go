package countdown

import "setbook/calc/unit"

// Clock is what calendar and clock on a wall show at an instant.
type Clock struct {
	Date                 unit.Date
	Weekday              int // 0 is Sunday
	Hour, Minute, Second int64
}

// At is an instant on a clock that stands so many minutes behind UTC: west of Greenwich positive, the sign that
// browsers use. The offset must be the one in force at that very instant, else
// daylight saving puts the clock out by an hour.
func (i Instant) At(west float64) Clock {
	local := int64(i) - int64(west*minute)
	date := floor(local, day)
	s := (local - date*day) / second
	return Clock{
		Date:    unit.Date(date),
		Weekday: int((date+4)%7+7) % 7, // 1970-01-01 was a Thursday
		Hour:    s / 3600, Minute: s / 60 % 60, Second: s % 60,
	}
}

// Whole is the first whole minute (of UTC) that is not before the instant: a clock without seconds that shows
// it is never early.
func (i Instant) Whole() Instant { return -Instant(floor(-int64(i), minute) * minute) }

// floor divides downwards, also before 1970.
func floor(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}

// Parts are the days, hours, minutes and seconds of a time.
type Parts struct{ Days, Hours, Minutes, Seconds int64 }

// Split parts milliseconds to go into whole seconds, upwards: nought is shown only once it is over.
func Split(milliseconds int64) Parts {
	s := -floor(-milliseconds, second)
	return Parts{s / 86_400, s / 3600 % 24, s / 60 % 60, s % 60}
}
