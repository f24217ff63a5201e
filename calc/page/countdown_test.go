package page_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/bed"
	"setbook/calc/countdown"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/wait"
)

const ms = int64(time.Second / time.Millisecond)

// board is a phone in a zone of Go's own data.
func board(t *testing.T, zone string) *page.Board {
	loc, err := time.LoadLocation(zone)
	require.NoError(t, err)
	return &page.Board{Reader: us, Root: "../", West: func(i countdown.Instant) float64 {
		_, east := time.UnixMilli(int64(i)).In(loc).Zone()
		return -float64(east) / 60
	}}
}

func at(t *testing.T, text string) countdown.Instant {
	at, err := time.Parse(time.RFC3339, text)
	require.NoError(t, err)
	return countdown.Instant(at.UnixMilli())
}

func counting(id, name string, from, until countdown.Instant) *countdown.Countdown {
	return &countdown.Countdown{ID: id, Name: name, Of: "wait", Entry: "v=1&bag_time=4+h", From: from, Until: until}
}

// What is left and the clock at which it ends are right across daylight saving and another zone. The times on
// the wall were worked out by hand from the rules of each zone (US: clocks back on the first Sunday of November).
func TestTheBoardInItsZone(t *testing.T) {
	start := at(t, "2026-10-31T20:00:00-04:00")
	c := counting("a", "Wheels", start, start+countdown.Instant(24*3600*ms))
	for zone, want := range map[string]string{"America/New_York": "ends tomorrow 19:00", "America/Los_Angeles": "ends tomorrow 16:00", "Asia/Kolkata": "ends Mon 2 Nov, 05:30"} {
		b := board(t, zone)
		b.Show([]*countdown.Countdown{c}, start)
		now := start
		if zone == "Asia/Kolkata" {
			now -= countdown.Instant(6 * 3600 * ms) // at 00:00 there it is the first: the day after would be tomorrow
			now -= 1
		}
		r := b.Rows(now)[0]
		assert.Equal(t, want, r.Ends, zone)
	}
	b := board(t, "America/New_York")
	b.Show([]*countdown.Countdown{c}, start)
	for now, want := range map[string]string{
		"2026-10-31T20:00:00-04:00":   "1 d 0 h 00 min · ends tomorrow 19:00 · Sun 1 Nov 2026",
		"2026-11-01T01:30:00-04:00":   "18 h 30 min · ends 19:00 · Sun 1 Nov 2026",
		"2026-11-01T01:30:00-05:00":   "17 h 30 min · ends 19:00 · Sun 1 Nov 2026",
		"2026-11-01T17:59:59-05:00":   "1 h 00 min · ends 19:00 · Sun 1 Nov 2026",
		"2026-11-01T18:00:01-05:00":   "59 min 59 s · ends 19:00 · Sun 1 Nov 2026",
		"2026-11-01T18:58:59-05:00":   "1 min 01 s · ends 19:00 · Sun 1 Nov 2026",
		"2026-11-01T18:59:59-05:00":   "1 s · ends 19:00 · Sun 1 Nov 2026",
		"2026-11-01T19:00:00-05:00":   "Done just now · ended 19:00 · Sun 1 Nov 2026",
		"2026-11-01T19:05:59-05:00":   "Done 5 min ago · ended 19:00 · Sun 1 Nov 2026",
		"2026-11-01T19:05:59.9-05:00": "Done 5 min ago · ended 19:00 · Sun 1 Nov 2026",
		"2026-11-01T21:05:00-05:00":   "Done 2 h 05 min ago · ended 19:00 · Sun 1 Nov 2026",
		"2026-11-02T23:00:00-05:00":   "Done 1 d 4 h ago · ended yesterday 19:00 · Sun 1 Nov 2026",
		"2027-01-02T00:00:00-05:00":   "Done 61 d 5 h ago · ended Sun 1 Nov 2026, 19:00 · Sun 1 Nov 2026",
		"2025-12-31T00:00:00-05:00":   "305 d 19 h 00 min · ends Sun 1 Nov 2026, 19:00 · Sun 1 Nov 2026",
	} {
		r := b.Rows(at(t, now))[0]
		assert.Equal(t, want, r.Left+" · "+r.Ends+" · "+r.Date, now)
	}
	summer := at(t, "2026-07-01T08:00:00-04:00")
	b.Show([]*countdown.Countdown{counting("s", "Grout", summer, summer+countdown.Instant(4*3600*ms))}, summer)
	assert.Equal(t, "ends 12:00", b.Rows(summer)[0].Ends)
	c.Until += 1
	b.Show([]*countdown.Countdown{c}, start)
	assert.Equal(t, "ends tomorrow 19:01", b.Rows(start)[0].Ends, "a clock without seconds is never early")
}

func TestTheBoardKeepsOrderAndTellsEachEndOnce(t *testing.T) {
	b := board(t, "UTC")
	b.Show(nil, 100) // the page comes before what is kept
	b.Show([]*countdown.Countdown{counting("c", "Third", 0, 9000), counting("old", "Over before", 0, 10), counting("b", "Second", 0, 5000)}, 100)
	b.Add(counting("a", "First", 0, 2000), 100)
	var order []string
	for _, r := range b.Rows(100) {
		order = append(order, r.ID)
	}
	assert.Equal(t, []string{"old", "a", "b", "c"}, order)

	names := func(now countdown.Instant) (said []string) {
		for _, c := range b.Due(now) {
			said = append(said, b.Over(c))
		}
		return said
	}
	assert.Empty(t, names(1999), "what was over before the page was opened is shown, not announced")
	assert.Equal(t, []string{"Done: First"}, names(2000))
	assert.Empty(t, names(2001))
	assert.Equal(t, []string{"Done: Second", "Done: Third"}, names(99_000), "a phone that slept tells all of them")
	assert.Empty(t, names(4000), "the clock was set back")
	assert.Equal(t, []string{"Done: Second"}, names(6000))

	b.Remove("c", true)
	assert.Len(t, b.Rows(0), 3)
	assert.Contains(t, b.List(0), "Removed: Third")
	assert.Empty(t, names(99_000), "what was removed is not announced")
	b.Show([]*countdown.Countdown{counting("b", "Second", 0, 5000)}, 0)
	assert.Contains(t, b.List(0), "Removed: Third", "it can still be brought back after the store was read anew")
	b.Remove("c", false)
	assert.NotContains(t, b.List(0), "Removed")
	c, ok := b.Find("c")
	assert.True(t, ok)
	assert.Equal(t, "Third", c.Name)
}

func TestAClockSetBackIsSaid(t *testing.T) {
	b := board(t, "UTC")
	b.Show([]*countdown.Countdown{counting("a", "First", 5000, 9000)}, 5000)
	assert.NotContains(t, b.List(5000), "behind the start")
	assert.Empty(t, b.Rows(5000)[0].Note)
	assert.Contains(t, b.List(4999), "behind the start")
	assert.Contains(t, b.Rows(4999)[0].Note, "behind the start")
}

// A name that somebody typed or a store that somebody filled stays text.
func TestTheBoardEscapes(t *testing.T) {
	const evil = `"><img src=x onerror=alert(1)><script>x</script>`
	b := board(t, "UTC")
	c := counting("a", evil, 0, 9000)
	c.Entry = `v=1&x="><img>`
	b.Show([]*countdown.Countdown{c}, 0)
	for _, made := range []string{b.List(0), func() string { b.Remove("a", true); return b.List(0) }()} {
		z := html.NewTokenizer(strings.NewReader(made))
		seen := false
		for z.Next() != html.ErrorToken {
			token := z.Token()
			assert.NotContains(t, []string{"img", "script"}, token.Data)
			seen = seen || strings.Contains(token.Data, "<img")
		}
		assert.True(t, seen)
	}
}

func TestACountdownIsStartedFromAnAnswer(t *testing.T) {
	now := at(t, "2026-06-12T08:00:00Z")
	l := page.NewLive(&wait.Calculator, "wait", us)
	require.True(t, l.Load("binder=rapid&bag_time=4 h&bag_temp=70 F&temp=70 F"))
	c, ok := l.Countdown("a1", "time", now)
	require.True(t, ok)
	assert.Equal(t, &countdown.Countdown{ID: "a1", Name: "How long to wait", Of: "wait", Entry: l.Link(), From: now, Until: now + countdown.Instant(4*3600*ms)}, c)
	assert.Contains(t, part(t, l, "start"), `data-start="time"`)

	l.CallCountdown("time", " Wheels,  gate ")
	l.Type("bag_time", "5 h")
	assert.Contains(t, part(t, l, "start"), `value=" Wheels,  gate "`, "the typed name is kept while the answer changes")
	assert.Contains(t, l.HTML(), `value=" Wheels,  gate "`)
	c, _ = l.Countdown("a2", "time", now)
	assert.Equal(t, "Wheels, gate", c.Name)
	assert.EqualValues(t, 5*3600*ms, c.Left(now))
	l.CallCountdown("time", "  ")
	c, _ = l.Countdown("a2", "time", now)
	assert.Equal(t, "How long to wait", c.Name)

	l.Type("bag_time", "5 lb")
	_, ok = l.Countdown("a3", "time", now)
	assert.False(t, ok, "no countdown from an answer that belongs to an earlier entry")
	assert.NotContains(t, part(t, l, "start"), "data-start")
	l.Type("bag_time", "5 h")
	l.Type("temp", "45 F")
	_, ok = l.Countdown("a4", "time", now)
	assert.False(t, ok, "a floor is no waiting time")
	assert.NotContains(t, part(t, l, "start"), "data-start")
	_, ok = l.Countdown("a4", "factor", now)
	assert.False(t, ok)
	assert.Empty(t, part(t, page.NewLive(&bed.Calculator, "bed", us), "start"))
}

// Two waits of one calculator have two names.
func TestTwoWaitsHaveTwoNames(t *testing.T) {
	c := &calc.Calculator{ID: "two", Title: "How long to wait", Work: func(_ calc.Entry, s *calc.Sheet) {
		calc.Gives(s, "foot", "Depth", unit.Hour, unit.HourSpan).Wait()
		calc.Gives(s, "wheel", "Width", 2*unit.Hour, unit.HourSpan).Wait()
	}}
	l := page.NewLive(c, "two", us)
	foot, _ := l.Countdown("a", "foot", 0)
	wheel, _ := l.Countdown("b", "wheel", 0)
	assert.Equal(t, "How long to wait: Depth, How long to wait: Width", foot.Name+", "+wheel.Name)
	assert.EqualValues(t, 2*3600*ms, wheel.Left(0))
}

func TestTheBoardSaysWhatCameBack(t *testing.T) {
	b := board(t, "UTC")
	assert.Contains(t, b.Back(12), "brought back from the second copy: 12.")
	assert.Contains(t, b.Frame(), `data-part="back" role="status"`, "it is read out")
}

func TestTheBoardsCalendarFile(t *testing.T) {
	b := board(t, "UTC")
	file := b.Calendar(counting("a", "Wheels", 0, 60_000), 0)
	assert.Contains(t, file, "SUMMARY:Wheels\r\n")
	assert.Contains(t, strings.ReplaceAll(file, "\r\n ", ""), "the bag\\, the local code")
}
