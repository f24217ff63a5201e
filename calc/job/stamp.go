package job

import (
	"setbook/calc/countdown"
	"setbook/calc/unit"
)

// latest is the last instant of the year 9998, as of a countdown.
const latest countdown.Instant = 253_370_764_799_999

const (
	second = 1000
	minute = 60 * second
	hour   = 60 * minute
	day    = 24 * hour
)

// stamp writes an instant as a date and time in UTC with milliseconds (RFC 3339, section 5.6): 2026-05-04T08:30:00.000Z.
func stamp(i countdown.Instant) string {
	c := i.At(0)
	year, month, date := c.Date.Civil()
	return countdown.Pad(year, 4) + "-" + countdown.Pad(month, 2) + "-" + countdown.Pad(date, 2) + "T" +
		countdown.Pad(c.Hour, 2) + ":" + countdown.Pad(c.Minute, 2) + ":" + countdown.Pad(c.Second, 2) + "." +
		countdown.Pad(int64(i)%second, 3) + "Z"
}

// readStamp reads what stamp writes and nothing else.
func readStamp(text string) (countdown.Instant, bool) {
	if len(text) != len("2026-05-04T08:30:00.000Z") {
		return 0, false
	}
	at := countdown.Instant(unit.DayNumber(number(text[:4]), number(text[5:7]), number(text[8:10])))*day + countdown.Instant(number(text[11:13])*hour+number(text[14:16])*minute+number(text[17:19])*second+number(text[20:23]))
	return at, 0 <= at && at <= latest && stamp(at) == text
}

// number is the value of a few digits; of anything else, no matter what.
func number(digits string) (n int64) {
	for _, c := range []byte(digits) {
		n = 10*n + int64(c-'0')
	}
	return n
}
