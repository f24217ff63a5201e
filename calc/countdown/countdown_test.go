package countdown_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/countdown"
	"setbook/calc/unit"
)

func begin(t testing.TB, now time.Time, wait unit.Span) *countdown.Countdown {
	t.Helper()
	c, ok := countdown.Begin("1f-2", "Foot traffic", "wait", "v=1&bag_time=24+h", instant(now), wait)
	require.True(t, ok)
	return c
}

func instant(at time.Time) countdown.Instant { return countdown.Instant(at.UnixMilli()) }

// west is the offset that a browser gives for an instant: minutes behind UTC (ECMA-262, Date.prototype.getTimezoneOffset).
func west(at time.Time) float64 {
	_, east := at.Zone()
	return -float64(east) / 60
}

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation(name)
	require.NoError(t, err)
	return loc
}

// The end stands still while the clocks on the wall are put forward or back, the phone is carried into another zone, or
// the leap day passes. Independent: Go's time package with the IANA zone data.
func TestTheEndIsOneInstant(t *testing.T) {
	for _, c := range []struct {
		name, from string
		hours      float64
		ends       map[string]string // on the wall, by zone
	}{
		{"spring forward in New York, 2026-03-08 02:00", "2026-03-07T20:00:00-05:00", 24,
			map[string]string{"America/New_York": "2026-03-08 21:00 Sunday", "America/Los_Angeles": "2026-03-08 18:00 Sunday", "UTC": "2026-03-09 01:00 Monday"}},
		{"fall back in New York, 2026-11-01 02:00", "2026-10-31T20:00:00-04:00", 24,
			map[string]string{"America/New_York": "2026-11-01 19:00 Sunday", "Asia/Kolkata": "2026-11-02 05:30 Monday"}},
		{"the hour that comes twice", "2026-10-31T20:00:00-04:00", 6.5,
			map[string]string{"America/New_York": "2026-11-01 01:30 Sunday"}}, // the second 01:30, in standard time
		{"spring forward in Berlin, 2026-03-29 02:00", "2026-03-29T01:59:59+01:00", 1.0 / 3600,
			map[string]string{"Europe/Berlin": "2026-03-29 03:00 Sunday"}},
		{"a leap day", "2028-02-28T18:00:00+00:00", 24,
			map[string]string{"UTC": "2028-02-29 18:00 Tuesday", "Pacific/Kiritimati": "2028-03-01 08:00 Wednesday"}},
		{"no leap day in 2100", "2100-02-28T18:00:00+00:00", 24, map[string]string{"UTC": "2100-03-01 18:00 Monday"}},
		{"half an hour of daylight saving", "2026-04-04T12:00:00+11:00", 24, map[string]string{"Australia/Lord_Howe": "2026-04-05 11:30 Sunday"}},
		{"the end of a year", "2026-12-31T23:30:00+00:00", 1, map[string]string{"UTC": "2027-01-01 00:30 Friday", "America/St_Johns": "2026-12-31 21:00 Thursday"}},
	} {
		from, err := time.Parse(time.RFC3339, c.from)
		require.NoError(t, err)
		d := begin(t, from, unit.Span(c.hours)*unit.Hour)
		end := time.UnixMilli(int64(d.Until))
		assert.Equal(t, time.Duration(c.hours*float64(time.Hour)).Milliseconds(), d.Left(instant(from)), c.name)
		for name, want := range c.ends {
			at := d.Until.At(west(end.In(zone(t, name))))
			y, m, day := at.Date.Civil()
			assert.Equal(t, want, time.Date(int(y), time.Month(m), int(day), int(at.Hour), int(at.Minute), 0, 0, time.UTC).Format("2006-01-02 15:04 ")+
				time.Weekday(at.Weekday).String(), "%s, %s", c.name, name)
		}
	}
}

// Any instant in any zone shows the calendar and clock that Go's time package gives, before 1970 too.
func TestTheClockOnTheWall(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	zones := []*time.Location{time.UTC}
	for _, name := range []string{"America/New_York", "Europe/Berlin", "Asia/Kathmandu", "Australia/Lord_Howe", "Pacific/Apia", "America/Caracas", "Africa/Casablanca"} {
		zones = append(zones, zone(t, name))
	}
	for range 20_000 {
		ms := random.Int64N(200*365*86_400_000) - 20*365*86_400_000
		at := time.UnixMilli(ms).In(zones[random.IntN(len(zones))])
		_, east := at.Zone()
		if east%60 != 0 {
			continue // local mean time of the nineteenth century: no browser's offset has seconds today
		}
		c := countdown.Instant(ms).At(west(at))
		y, m, d := c.Date.Civil()
		require.Equal(t, [7]int64{int64(at.Year()), int64(at.Month()), int64(at.Day()), int64(at.Weekday()), int64(at.Hour()), int64(at.Minute()), int64(at.Second())},
			[7]int64{y, m, d, int64(c.Weekday), c.Hour, c.Minute, c.Second}, "%s", at)
		whole := countdown.Instant(ms).Whole()
		require.Zero(t, whole%60_000)
		require.True(t, whole >= countdown.Instant(ms) && whole < countdown.Instant(ms)+60_000)
	}
}

// What is left is the end less now, whatever the clock did in between.
func TestAClockThatWasSet(t *testing.T) {
	start := time.Date(2026, 6, 12, 8, 0, 0, 0, time.UTC)
	c := begin(t, start, 4*unit.Hour)
	for ahead, left := range map[time.Duration]time.Duration{
		0: 4 * time.Hour, time.Hour: 3 * time.Hour, 4 * time.Hour: 0, 5 * time.Hour: -time.Hour,
		-30 * time.Minute: 4*time.Hour + 30*time.Minute, // set back before the start
	} {
		now := instant(start.Add(ahead))
		assert.Equal(t, left.Milliseconds(), c.Left(now))
		assert.Equal(t, left <= 0, c.Done(now), ahead)
	}
	again, ok := countdown.Read(c.ID, c.Text())
	require.True(t, ok)
	assert.Equal(t, c, again, "kept and read again it is the same, hours later too")
}

func TestWhatCannotBeStarted(t *testing.T) {
	for _, wait := range []unit.Span{0, -1, unit.Span(1e-9), unit.Span(1e15), unit.Span(math.NaN())} {
		_, ok := countdown.Begin("a", "x", "wait", "", 0, wait)
		assert.False(t, ok, wait)
	}
	_, ok := countdown.Begin("a", "\n", "wait", "", 0, 1)
	assert.False(t, ok, "no name")
	c, ok := countdown.Begin("a", "x", "wait", "a="+strings.Repeat("1", 30_000), 0, 1)
	assert.True(t, ok)
	assert.Empty(t, c.Entry)
}

func TestNames(t *testing.T) {
	assert.Equal(t, "Foot traffic, gate side", countdown.Clean("  Foot\ttraffic,\r\n gate\x00 side\xff "))
	long := countdown.Clean(strings.Repeat("é", 100))
	assert.Equal(t, 60, utf8.RuneCountInString(long))
	assert.True(t, utf8.ValidString(long))

	var list []*countdown.Countdown
	for _, want := range []string{"Wheels", "Wheels 2", "Wheels 3"} {
		name := countdown.Distinct(list, "Wheels")
		assert.Equal(t, want, name)
		list = append(list, &countdown.Countdown{Name: name})
	}
	list = []*countdown.Countdown{{Name: long}}
	assert.Equal(t, strings.Repeat("é", 58)+" 2", countdown.Distinct(list, long))
}

func TestOrderAndBeat(t *testing.T) {
	list := []*countdown.Countdown{{ID: "c", Until: 9_000}, {ID: "b", Until: 4_000}, {ID: "a", Until: 9_000}}
	countdown.Order(list)
	assert.Equal(t, []string{"b", "a", "c"}, []string{list[0].ID, list[1].ID, list[2].ID})

	assert.EqualValues(t, 0, countdown.Beat(nil, 0, false), "out of sight with nothing running, no clock is looked at")
	assert.EqualValues(t, 5_000, countdown.Beat(nil, 0, true))
	assert.EqualValues(t, 1_000, countdown.Beat(list, 0, true))
	assert.EqualValues(t, 400, countdown.Beat(list, 3_600, true), "the last second is not overrun")
	assert.EqualValues(t, 250, countdown.Beat(list, 2_750, true), "in step with the seconds that are shown")
	assert.EqualValues(t, 4_000, countdown.Beat(list, 0, false), "out of sight it looks when the next one ends")
	assert.EqualValues(t, 60_000, countdown.Beat([]*countdown.Countdown{{Until: 1e9}}, 0, false))
	assert.EqualValues(t, 0, countdown.Beat(list, 9_000, false))
	// Followed beat by beat, every second of the first one is shown once, and the end on time.
	var shown []int64
	now := countdown.Instant(137)
	for !list[0].Done(now) {
		shown = append(shown, countdown.Split(list[0].Left(now)).Seconds)
		now += countdown.Instant(countdown.Beat(list, now, true))
	}
	assert.Equal(t, []int64{4, 3, 2, 1}, shown)
	assert.EqualValues(t, 4_000, now)
}

func TestSplit(t *testing.T) {
	assert.Equal(t, countdown.Parts{Days: 1, Hours: 1, Minutes: 1, Seconds: 1}, countdown.Split(90_061_000))
	assert.Equal(t, countdown.Parts{Seconds: 1}, countdown.Split(1), "nought only once it is over")
	assert.Equal(t, countdown.Parts{}, countdown.Split(0))
}

func TestReadIsStrict(t *testing.T) {
	c := begin(t, time.UnixMilli(1_781_252_000_123), 90*unit.Minute)
	text := c.Text()
	assert.Equal(t, "countdown=1&name=Foot+traffic&of=wait&from=1781252000123&until=1781257400123&entry=v%3D1%26bag_time%3D24%2Bh", text)
	for _, broken := range []string{
		"", "countdown=1", text + "&", text + "&x=1", "&" + text, "#" + text, text + " ",
		strings.Replace(text, "countdown=1", "countdown=2", 1), // a newer version
		strings.Replace(text, "countdown=1&", "", 1),
		strings.Replace(text, "Foot+traffic", "", 1),
		strings.Replace(text, "Foot+traffic", "Foot++traffic", 1),
		strings.Replace(text, "Foot+traffic", "Foot%20traffic", 1),
		strings.Replace(text, "Foot", "Foot%0A", 1),
		strings.Replace(text, "Foot", "%FF", 1),
		strings.Replace(text, "of=wait", "of=../wait", 1),
		strings.Replace(text, "of=wait", "of=", 1),
		strings.Replace(text, "from=1781252000123", "from=1781257400123", 1), // no wait at all
		strings.Replace(text, "from=1781252000123", "from=-1", 1),
		strings.Replace(text, "from=17", "from=+17", 1),
		strings.Replace(text, "until=17", "until=017", 1),
		strings.Replace(text, "until=1781257400123", "until=1781257400.5", 1),
		strings.Replace(text, "until=1781257400123", "until=253402300799999", 1),
		strings.Replace(text, "until=1781257400123", "until=99999999999999999999", 1),
		strings.Replace(text, "v%3D1", "%25zz%3D%254", 1),
	} {
		_, ok := countdown.Read(c.ID, broken)
		assert.False(t, ok, broken)
	}
	for _, id := range []string{"", "A", "a b", `a"]`, strings.Repeat("a", 65)} {
		_, ok := countdown.Read(id, text)
		assert.False(t, ok, id)
	}
	parts := strings.Split(text, "&")
	slices.Reverse(parts)
	_, ok := countdown.Read(c.ID, strings.Join(parts, "&"))
	assert.False(t, ok, "one countdown is written in one way")
}

// Whatever is kept, the reader never panics, and what it takes it writes again byte by byte.
func FuzzRead(f *testing.F) {
	f.Add("a-1", begin(f, time.UnixMilli(0), 1).Text())
	f.Add("b", begin(f, time.UnixMilli(1_781_252_000_123), 90*unit.Day).Text())
	f.Add("", "countdown=1&name=%&of=&from=x")
	f.Fuzz(func(t *testing.T, id, text string) {
		c, ok := countdown.Read(id, text)
		if !ok {
			return
		}
		require.Equal(t, text, c.Text())
		require.Equal(t, id, c.ID)
		require.Less(t, c.From, c.Until)
	})
}

// Whatever name is typed and whatever wait is worked out, what is started is read again as it was.
func FuzzBegin(f *testing.F) {
	f.Add("Foot traffic", "v=1&bag_time=24+h", int64(1_781_252_000_123), 5400.0)
	f.Add("\x00\r\n", "", int64(-1), -1.0)
	f.Add(strings.Repeat("ß", 70), "%", int64(1<<62), 1e300)
	f.Fuzz(func(t *testing.T, name, entry string, now int64, wait float64) {
		c, ok := countdown.Begin("a", name, "wait", entry, countdown.Instant(now), unit.Span(wait))
		if !ok {
			return
		}
		again, ok := countdown.Read("a", c.Text())
		require.True(t, ok, c.Text())
		require.Equal(t, c, again)
	})
}
