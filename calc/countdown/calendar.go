package countdown

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// fold is the greatest length of a line in bytes, its end not counted (RFC 5545, section 3.1).
const fold = 75

// Calendar writes the end of a countdown as a calendar file (RFC 5545): one event of a quarter of an
// hour with an alarm at its start, to be shown. All times are in UTC, so that it rings at the same instant wherever the
// phone is. Stamp is when the file is made; says is what the event tells beside the name.
func Calendar(c *Countdown, stamp Instant, says string) string {
	end := c.Until + second - 1 // to the whole second, never early
	name := Escape(c.Name)
	var b strings.Builder
	for _, line := range [...]string{
		"BEGIN:VCALENDAR",
		"VERSION:2.0",
		"PRODID:-//Setbook//Countdown " + version + "//EN",
		"BEGIN:VEVENT",
		"UID:" + c.ID + "@setbook.invalid",
		"DTSTAMP:" + stamp.utc(),
		"DTSTART:" + end.utc(),
		"DTEND:" + (end + 15*minute).utc(),
		"SUMMARY:" + name,
		"DESCRIPTION:" + Escape(says),
		"BEGIN:VALARM",
		"ACTION:DISPLAY",
		"TRIGGER:PT0S",
		"DESCRIPTION:" + name,
		"END:VALARM",
		"END:VEVENT",
		"END:VCALENDAR",
	} {
		b.WriteString(Fold(line))
	}
	return b.String()
}

// FileName is a name for the calendar file that every file system takes.
func (c *Countdown) FileName() string { return "setbook-" + c.Of + "-" + c.Until.utc() + ".ics" }

// Escape writes a value of type TEXT (RFC 5545, section 3.3.11): a colon stays as it is.
func Escape(text string) string {
	return strings.NewReplacer("\\", "\\\\", ";", "\\;", ",", "\\,", "\r\n", "\\n", "\n", "\\n", "\r", "\\n").Replace(text)
}

// Fold ends a line, and breaks it where it is too long: each further line begins with a space that counts
// towards its length. No UTF-8 sequence is cut (RFC 5545, section 3.1).
func Fold(line string) string {
	var b strings.Builder
	for room := fold; len(line) > room; room = fold - 1 {
		at := room
		for at > room-utf8.UTFMax && !utf8.RuneStart(line[at]) {
			at--
		}
		b.WriteString(line[:at] + "\r\n ")
		line = line[at:]
	}
	b.WriteString(line + "\r\n")
	return b.String()
}

// utc writes an instant as a date with UTC time (RFC 5545, section 3.3.5, form 2).
func (i Instant) utc() string {
	c := i.At(0)
	year, month, day := c.Date.Civil()
	return Pad(year, 4) + Pad(month, 2) + Pad(day, 2) + "T" + Pad(c.Hour, 2) + Pad(c.Minute, 2) + Pad(c.Second, 2) + "Z"
}

// Pad writes a number with noughts in front.
func Pad(n int64, width int) string {
	s := strconv.FormatInt(n, 10)
	for len(s) < width {
		s = "0" + s
	}
	return s
}
