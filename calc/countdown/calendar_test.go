package countdown_test

import (
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	ics "github.com/arran4/golang-ical"
	"github.com/emersion/go-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
	"setbook/calc/unit"
)

// What the file says comes back the same from two readers that have nothing to do with this project:
// github.com/emersion/go-ical and github.com/arran4/golang-ical.
func TestTwoReadersAgree(t *testing.T) {
	names := []string{"Foot traffic", `Gate; "north", C:\site`, strings.Repeat("Grün größer ✓ ", 4), "日本語の名前で長い長い長い長い長い長い長い名前", "a,b;c\\n:d", "\\", ";,\\;"}
	for _, name := range names {
		start := time.Date(2028, 2, 28, 22, 30, 0, 250e6, time.UTC)
		c, ok := countdown.Begin("0f3a-9", name, "wait", "", instant(start), 4*unit.Hour)
		require.True(t, ok)
		says := "One line of " + c.Name + "\nand; another, with \\ and ü"
		text := countdown.Calendar(c, instant(start), says)
		wire(t, text)

		cal, err := ical.NewDecoder(strings.NewReader(text)).Decode()
		require.NoError(t, err, text)
		require.Len(t, cal.Children, 1)
		event := cal.Events()[0]
		at, err := event.DateTimeStart(time.UTC)
		require.NoError(t, err)
		end := time.Date(2028, 2, 29, 2, 30, 1, 0, time.UTC) // a quarter of a second is a whole one, for a file knows no less
		assert.Equal(t, end, at)
		over, err := event.DateTimeEnd(time.UTC)
		require.NoError(t, err)
		assert.Equal(t, end.Add(15*time.Minute), over)
		stamp, err := event.Props.DateTime(ical.PropDateTimeStamp, time.UTC)
		require.NoError(t, err)
		assert.Equal(t, start.Truncate(time.Second), stamp)
		summary, err := event.Props.Text(ical.PropSummary)
		require.NoError(t, err)
		assert.Equal(t, c.Name, summary)
		told, err := event.Props.Text(ical.PropDescription)
		require.NoError(t, err)
		assert.Equal(t, says, told)
		require.Len(t, event.Children, 1)
		alarm := event.Children[0]
		assert.Equal(t, ical.CompAlarm, alarm.Name)
		assert.Equal(t, "DISPLAY", alarm.Props.Get(ical.PropAction).Value)
		before, err := alarm.Props.Get(ical.PropTrigger).Duration()
		require.NoError(t, err)
		assert.Zero(t, before)
		// Its own writer refuses a calendar that lacks what RFC 5545 requires.
		require.NoError(t, ical.NewEncoder(&strings.Builder{}).Encode(cal))

		other, err := ics.ParseCalendar(strings.NewReader(text))
		require.NoError(t, err)
		require.Len(t, other.Events(), 1)
		e := other.Events()[0]
		at, err = e.GetStartAt()
		require.NoError(t, err)
		assert.True(t, end.Equal(at))
		over, err = e.GetEndAt()
		require.NoError(t, err)
		assert.True(t, end.Add(15*time.Minute).Equal(over))
		assert.Equal(t, c.Name, e.GetProperty(ics.ComponentPropertySummary).Value)
		assert.Equal(t, "0f3a-9@setbook.invalid", e.Id())
		require.Len(t, e.Alarms(), 1)
		assert.Equal(t, c.Name, e.Alarms()[0].GetProperty(ics.ComponentPropertyDescription).Value)
	}
}

// wire holds a file to the rules of RFC 5545, section 3.1, by hand: CRLF and no bare LF or CR, lines of 75
// bytes at most, no character cut, each required property once (3.6, 3.6.1, 3.6.6). Check cases IC05, IC08, IC09, IC10, IC12.
func wire(t testing.TB, text string) {
	t.Helper()
	require.True(t, utf8.ValidString(text))
	require.True(t, strings.HasSuffix(text, "\r\n"))
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		require.LessOrEqual(t, len(line), 75)
		require.True(t, utf8.ValidString(line), line)
		require.NotEmpty(t, line)
		require.NotContains(t, line, "\r")
		require.NotContains(t, line, "\n")
	}
	plain := strings.ReplaceAll(text, "\r\n ", "")
	for name, times := range map[string]int{"BEGIN:VCALENDAR": 1, "VERSION:2.0": 1, "PRODID:": 1, "BEGIN:VEVENT": 1, "UID:": 1, "DTSTAMP:": 1, "DTSTART:": 1,
		"DTEND:": 1, "DURATION:": 0, "BEGIN:VALARM": 1, "ACTION:DISPLAY": 1, "TRIGGER:": 1, "DESCRIPTION:": 2, "SUMMARY:": 1} {
		require.Equal(t, times, strings.Count("\r\n"+plain, "\r\n"+name), name)
	}
	date := regexp.MustCompile(`\r\n(DTSTAMP|DTSTART|DTEND):\d{8}T\d{6}Z\r\n`)
	require.Len(t, date.FindAllString(strings.ReplaceAll(plain, "\r\n", "\r\n\r\n"), -1), 3)
}

// The reference cases of text and folding. IC01: the tests of the icalendar library; IC02 to IC04: RFC 5545, section 3.3.11;
// IC06, IC07: the tests of the icalendar library, section 3.1.
func TestReferenceCases(t *testing.T) {
	for text, want := range map[string]string{
		"hello,world;test": `hello\,world\;test`, // IC01
		"Project XYZ Final Review\nConference Room - 3B\nCome Prepared.": `Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`, // IC02
		"a: b":           "a: b",         // IC03
		`C:\n;`:          `C:\\n\;`,      // IC04
		"one\r\ntwo\rto": `one\ntwo\nto`, // no line end of any kind is left
		"":               "",             //
	} {
		assert.Equal(t, want, countdown.Escape(text))
	}
	assert.Equal(t, "foo\r\n", countdown.Fold("foo")) // IC06
	lorem := "Lorem ipsum dolor sit amet, consectetur adipiscing elit. Vestibulum convallis imperdiet dui posuere."
	require.Len(t, lorem, 100) // IC07: either break is legal, the property is what counts
	assert.Equal(t, lorem, strings.TrimSuffix(strings.ReplaceAll(countdown.Fold(lorem), "\r\n ", ""), "\r\n"))
	assert.True(t, strings.HasPrefix(countdown.Fold(lorem), lorem[:75]+"\r\n "+lorem[75:76]), "75 bytes, and the fold")
	assert.Equal(t, strings.Repeat("x", 75)+"\r\n", countdown.Fold(strings.Repeat("x", 75)), "exactly full: not folded")
}

// Any text folds into lines that fit, at whole characters, and unfolds to itself.
func FuzzFold(f *testing.F) {
	f.Add(strings.Repeat("é", 80))
	f.Add(strings.Repeat("x", 300))
	f.Add(strings.Repeat("a", 74) + "😀😀")
	f.Fuzz(func(t *testing.T, name string) {
		line := countdown.Escape(strings.ToValidUTF8(name, "?"))
		folded := countdown.Fold(line)
		for _, l := range strings.Split(strings.TrimSuffix(folded, "\r\n"), "\r\n") {
			require.LessOrEqual(t, len(l), 75)
			require.True(t, utf8.ValidString(l))
		}
		require.Equal(t, line+"\r\n", strings.ReplaceAll(folded, "\r\n ", ""))
		c, ok := countdown.Begin("a", name, "wait", "", 0, 1)
		if ok {
			wire(t, countdown.Calendar(c, 0, strings.ToValidUTF8(name, "?")))
		}
	})
}
