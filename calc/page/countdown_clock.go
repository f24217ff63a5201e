package page

import (
	"setbook/calc/countdown"
	"setbook/calc/words"
)

var weekdays = [...]words.Msg{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}

var months = [...]words.Msg{"month|Jan", "month|Feb", "month|Mar", "month|Apr", "month|May", "month|June",
	"month|July", "month|Aug", "month|Sept", "month|Oct", "month|Nov", "month|Dec"}

// wall is what the clock on the wall shows at an instant, to the whole minute and never early: the offset
// is the one in force at that minute.
func (b *Board) wall(at countdown.Instant) countdown.Clock {
	at = at.Whole()
	return at.At(b.West(at))
}

// when says an instant as the phone's clock shows it, with the day where it is not today.
func (b *Board) when(at, now countdown.Instant) (when words.Line, today bool) {
	c, here := b.wall(at), now.At(b.West(now))
	clock := words.Text("clock", two(c.Hour)+":"+two(c.Minute))
	switch c.Date - here.Date {
	case 0:
		return words.Say("{clock}", clock), true
	case 1:
		return words.Say("tomorrow {clock}", clock), false
	case -1:
		return words.Say("yesterday {clock}", clock), false
	}
	year, _, _ := c.Date.Civil()
	thisYear, _, _ := here.Date.Civil()
	return words.Say("{date}, {clock}", words.Also("date", b.date(c, year != thisYear)), clock), false
}

// When says an instant as the phone's clock shows it, with the day where it is not today.
func (b *Board) When(at, now countdown.Instant) words.Line {
	l, _ := b.when(at, now)
	return l
}

// Stamp says an instant in full, for paper: its day, its year and its time.
func (b *Board) Stamp(at countdown.Instant) words.Line {
	c := b.wall(at)
	return words.Say("{date}, {clock}", words.Also("date", b.date(c, true)), words.Text("clock", two(c.Hour)+":"+two(c.Minute)))
}

// Day says the calendar day of an instant.
func (b *Board) Day(at countdown.Instant) words.Line { return b.date(b.wall(at), true) }

// date is a calendar day, with its year where that is wanted.
func (b *Board) date(c countdown.Clock, withYear bool) words.Line {
	year, month, day := c.Date.Civil()
	l := words.Say("{weekday} {day} {month}", words.Named("weekday", weekdays[c.Weekday]), words.Text("day", digits(day)), words.Named("month", months[month-1]))
	if withYear {
		return words.Say("{date} {year}", words.Also("date", l), words.Text("year", digits(year)))
	}
	return l
}

func digits(n int64) string { return countdown.Pad(n, 1) }

func two(n int64) string { return countdown.Pad(n, 2) }

// Left says a time to go: to the second in its last hour, before that to the minute, the started one not counted.
func Left(milliseconds int64) words.Line {
	p := countdown.Split(milliseconds)
	hours, minutes := words.Text("hours", digits(p.Hours)), words.Text("minutes", two(p.Minutes))
	switch {
	case p.Days > 0:
		return words.Say("{days} d {hours} h {minutes} min", words.Text("days", digits(p.Days)), hours, minutes)
	case p.Hours > 0:
		return words.Say("{hours} h {minutes} min", hours, minutes)
	case p.Minutes > 0:
		return words.Say("{minutes} min {seconds} s", words.Text("minutes", digits(p.Minutes)), words.Text("seconds", two(p.Seconds)))
	}
	return words.Say("{seconds} s", words.Text("seconds", digits(p.Seconds)))
}

// Ago says how long something has been over.
func Ago(milliseconds int64) words.Line {
	p := countdown.Split(milliseconds - 999) // whole seconds that have gone by
	switch {
	case p.Days > 0:
		return words.Say("Done {days} d {hours} h ago", words.Text("days", digits(p.Days)), words.Text("hours", digits(p.Hours)))
	case p.Hours > 0:
		return words.Say("Done {hours} h {minutes} min ago", words.Text("hours", digits(p.Hours)), words.Text("minutes", two(p.Minutes)))
	case p.Minutes > 0:
		return words.Say("Done {minutes} min ago", words.Text("minutes", digits(p.Minutes)))
	}
	return words.Say("Done just now")
}
