// Package countdown is a wait that somebody has started: the instant at which it ends, and what
// it is for. An instant is one point in time everywhere, so that neither a change of zone nor daylight
// saving moves the end of a wait; a clock on a wall comes of it only when it is shown.
package countdown

import (
	"math"
	"slices"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"setbook/calc/link"
	"setbook/calc/unit"
)

// Instant is a point in time: milliseconds since 1970-01-01T00:00:00 UTC, leap seconds not
// counted (POSIX.1-2017, Base Definitions, 4.16), as every browser's clock gives it.
type Instant int64

const (
	second = 1000
	minute = 60 * second
	hour   = 60 * minute
	day    = 24 * hour

	// latest is the end of the year 9998: the dates of a calendar file have four digits for the year (RFC 5545, 3.3.4).
	latest Instant = 253_370_764_799_999
)

// Limits on what is kept, so that a broken record stays small.
const (
	longestName  = 60     // characters
	longestEntry = 20_000 // bytes
	longestID    = 64
)

// Countdown is a wait that was started.
type Countdown struct {
	ID          string // unique for ever: also in the calendar file
	Name        string // as the person calls it
	Of          string // the calculator's ID
	Entry       string // link text of the entry it came from
	From, Until Instant
}

// Begin starts a wait now. It reports false where the end cannot be told: no positive wait, or past the year 9998.
func Begin(id, name, of, entry string, now Instant, wait unit.Span) (*Countdown, bool) {
	long := math.Round(float64(wait) * second)
	if !(long >= 1 && long <= float64(latest)) {
		return nil, false
	}
	if len(entry) > longestEntry {
		entry = "" // it leads back to the example, which is less harm than a countdown that is not kept
	}
	c := &Countdown{ID: id, Name: Clean(name), Of: of, Entry: entry, From: now, Until: now + Instant(long)}
	return c, c.valid()
}

// Left is how many milliseconds are left, by the clock alone: less than nought once it is done.
func (c *Countdown) Left(now Instant) int64 { return int64(c.Until - now) }

// Done reports whether the wait is over.
func (c *Countdown) Done(now Instant) bool { return now >= c.Until }

// Clean makes a name fit to be kept: valid UTF-8 on one line, with no control character and no run
// of spaces, cut to 60 characters.
func Clean(name string) string {
	name = strings.Map(func(r rune) rune {
		if r < ' ' || 0x7f <= r && r < 0xa0 || r == utf8.RuneError { // a byte that is no UTF-8 comes as RuneError
			return ' '
		}
		return r
	}, name)
	name = strings.Join(strings.Fields(name), " ")
	if utf8.RuneCountInString(name) > longestName {
		name = strings.TrimSpace(string([]rune(name)[:longestName]))
	}
	return name
}

// Distinct is a name that no countdown of the list bears: the name itself, or with the first free number.
func Distinct(list []*Countdown, name string) string {
	name = Clean(name)
	for n, free := 2, name; ; n++ {
		if !slices.ContainsFunc(list, func(c *Countdown) bool { return c.Name == free }) {
			return free
		}
		suffix := " " + strconv.Itoa(n)
		stem := []rune(name)
		free = string(stem[:min(len(stem), longestName-len(suffix))]) + suffix
	}
}

// Order sorts by the time of ending, the first to end first.
func Order(list []*Countdown) {
	sort.SliceStable(list, func(i, j int) bool {
		a, b := list[i], list[j]
		return a.Until < b.Until || a.Until == b.Until && a.ID < b.ID
	})
}

// Beat is how many milliseconds may pass until the page should look at the clock again, and 0 where it
// need not. A page in sight counts each second of the first countdown to end; one out of
// sight looks when the next ends, and once a minute for a clock that was set meanwhile.
func Beat(list []*Countdown, now Instant, visible bool) int64 {
	var wait int64
	if visible {
		wait = 5 * second
	}
	for i := len(list) - 1; i >= 0; i-- {
		left := list[i].Left(now)
		switch {
		case left <= 0:
		case visible:
			wait = min((left-1)%second+1, left)
		default:
			wait = min(left, minute)
		}
	}
	return wait
}

// version is written into every record. A record of another version is left alone, for the
// program that wrote it.
const version = "1"

// Text writes a countdown as it is kept, without its ID, which is its key.
func (c *Countdown) Text() string {
	return "countdown=" + version + "&name=" + link.Escape(c.Name) + "&of=" + link.Escape(c.Of) +
		"&from=" + strconv.FormatInt(int64(c.From), 10) + "&until=" + strconv.FormatInt(int64(c.Until), 10) +
		"&entry=" + link.Escape(c.Entry)
}

// Read reads what Text wrote and nothing else: each text stands for one countdown, and each
// countdown is written in one way.
func Read(id, text string) (*Countdown, bool) {
	if len(text) > 4*longestEntry {
		return nil, false
	}
	pairs, problems := link.Parse(text)
	if len(problems) > 0 {
		return nil, false
	}
	from, wrong := strconv.ParseInt(pairs["from"], 10, 64)
	until, wrongToo := strconv.ParseInt(pairs["until"], 10, 64)
	c := &Countdown{id, pairs["name"], pairs["of"], pairs["entry"], Instant(from), Instant(until)}
	return c, wrong == nil && wrongToo == nil && c.valid() && c.Text() == text
}

func (c *Countdown) valid() bool {
	_, problems := link.Parse(c.Entry)
	return plain(c.ID) && plain(c.Of) && c.Name != "" && c.Name == Clean(c.Name) &&
		len(c.Entry) <= longestEntry && len(problems) == 0 && utf8.ValidString(c.Entry) &&
		0 <= c.From && c.From < c.Until && c.Until <= latest
}

// plain reports whether a text is an ID: small letters, digits and dashes, as stand in an address or a selector unescaped.
func plain(id string) bool {
	for i := range len(id) {
		if c := id[i]; !('a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '-') {
			return false
		}
	}
	return 0 < len(id) && len(id) <= longestID
}
