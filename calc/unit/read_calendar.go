package unit

// date reads 2026-06-21, the only order of a date that no country reads another
// way (ISO 8601), from 1900 to 2200.
func (r *reader) date() float64 {
	y := r.digits(4)
	r.want('-')
	m := r.digits(2)
	r.want('-')
	d := r.digits(2)
	if r.why == 0 && (r.at != r.end || y < 1900 || y > 2200 || m < 1 || m > 12 || d < 1 || d > monthDays(y, m)) {
		r.fail(NoSuchDate)
	}
	if r.why != 0 {
		r.why = NoSuchDate
		return 0
	}
	return float64(DayNumber(y, m, d))
}

// monthDays is how long a month of the Gregorian calendar is.
func monthDays(year, month int64) int64 {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// clock reads 14:30, 7:05:20, 2:30 pm, 7 am. Twelve at noon is 12 pm.
func (r *reader) clock() float64 {
	h := r.digits(min(max(r.digitsAt(0), 1), 2))
	var m, s int64
	minutes := r.take(':')
	if minutes {
		m = r.digits(2)
		if r.take(':') {
			s = r.digits(2)
		}
	}
	r.space()
	switch half := string(r.rest()); {
	case half == "" && minutes:
	case half == "am" && 1 <= h && h <= 12:
		h %= 12
	case half == "pm" && 1 <= h && h <= 12:
		h = h%12 + 12
	default:
		r.fail(NoSuchTime)
	}
	if r.why != 0 || h > 23 || m > 59 || s > 59 {
		r.why = NoSuchTime
		return 0
	}
	return float64(h*3600 + m*60 + s)
}

// digits reads exactly so many digits.
func (r *reader) digits(count int) (n int64) {
	for range count {
		if !digit(r.peek()) {
			r.fail(NotNumber)
			return 0
		}
		n = n*10 + int64(r.peek()-'0')
		r.at++
	}
	return n
}

// want passes over a byte that must come next.
func (r *reader) want(c byte) {
	if !r.take(c) {
		r.fail(NotNumber)
	}
}
