package unit

import (
	"math"
	"strconv"
)

// printDate writes days since 1970-01-01 as ISO 8601, 2026-06-21, and a dash for
// a year that does not have four digits. The time package would add 60 KB to the
// page for this.
func printDate(base float64) string {
	day := math.Round(base)
	if !(math.Abs(day) < 1e7) {
		return none
	}
	y, m, d := civil(int64(day))
	if y < 0 || y > 9999 {
		return none
	}
	return pad(y, 4) + "-" + pad(m, 2) + "-" + pad(d, 2)
}

// printClock writes seconds since midnight as 14:30. A clock goes round: half a
// minute before midnight is 00:00.
func printClock(base float64) string {
	m := int64(math.Floor(onClock(base)/60+0.5)) % (24 * 60)
	return pad(m/60, 2) + ":" + pad(m%60, 2)
}

// printTime writes seconds since midnight as 14:30, or 14:30:20 where the minute
// is not whole.
func printTime(base float64) string {
	s := int64(math.Floor(onClock(base)+0.5)) % 86_400
	if s%60 == 0 {
		return printClock(float64(s))
	}
	return pad(s/3600, 2) + ":" + pad(s/60%60, 2) + ":" + pad(s%60, 2)
}

// onClock brings any number of seconds into one day.
func onClock(base float64) float64 {
	s := math.Mod(base, 86_400)
	if s < 0 {
		s += 86_400
	}
	return s
}

func pad(n int64, width int) string {
	s := strconv.FormatInt(n, 10)
	for len(s) < width {
		s = "0" + s
	}
	return s
}

// civil turns days since 1970-01-01 into year, month and day of the Gregorian
// calendar (counting years from March, so that the leap day comes last).
func civil(days int64) (year, month, day int64) {
	days += 719_468
	era := days / 146_097
	if days < 0 {
		era = (days - 146_096) / 146_097
	}
	doe := days - era*146_097
	yoe := (doe - doe/1460 + doe/36_524 - doe/146_096) / 365
	doy := doe - (365*yoe + yoe/4 - yoe/100)
	mp := (5*doy + 2) / 153
	day = doy - (153*mp+2)/5 + 1
	month = mp + 3
	year = yoe + era*400
	if month > 12 {
		month -= 12
		year++
	}
	return year, month, day
}

// DayNumber counts the days from 1970-01-01 to a date of the Gregorian calendar.
func DayNumber(year, month, day int64) Date {
	if month <= 2 {
		year--
		month += 12
	}
	era := year / 400
	if year < 0 {
		era = (year - 399) / 400
	}
	yoe := year - era*400
	doy := (153*(month-3)+2)/5 + day - 1
	doe := yoe*365 + yoe/4 - yoe/100 + doy
	return Date(era*146_097 + doe - 719_468)
}

// Civil gives the year, month and day of a date.
func (d Date) Civil() (year, month, day int64) { return civil(int64(math.Round(float64(d)))) }
