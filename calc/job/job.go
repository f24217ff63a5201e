// Package job is the record that a crew keeps of one job: the entries of the calculators used for it, running
// countdowns, a log of mixes, contact checks, notes, the weather and the hand-over. It is plain data with a strict reader
// and one way of being written; it knows no storage and no page.
package job

import (
	"slices"

	"setbook/calc/countdown"
	"setbook/calc/words"
)

// Version is the version of the record that this program writes.
const Version = 1

// Job is one job. Every text that holds a quantity carries its unit and reads the same for everybody
// ("25 kg", "12.5 °C"); "" is a quantity that was not taken. Lists stand in the order in which they were made.
type Job struct {
	ID               string // unique for ever: small letters, digits, dashes
	Name             string
	Place            string // town or site
	Address          string
	Created, Changed countdown.Instant
	Revision         int64 // one more at each save, so that two pages of one job do not overwrite each other unseen
	Weather          Weather
	Entries          []Entry
	Countdowns       []Countdown
	Mixes            []Mix
	Checks           []Check
	Notes            []Note
	HandOver         HandOver

	// Newer is the version that the record was written in, where that is later than this program's: what is known of it can be
	// looked at, and it must never be written back. Else it is 0.
	Newer int64
}

// Clone is a copy of a job that shares no list with it.
func (j *Job) Clone() *Job {
	c := *j
	c.Entries, c.Countdowns, c.Mixes = slices.Clone(j.Entries), slices.Clone(j.Countdowns), slices.Clone(j.Mixes)
	c.Checks, c.Notes, c.HandOver.Materials = slices.Clone(j.Checks), slices.Clone(j.Notes), slices.Clone(j.HandOver.Materials)
	return &c
}

// Entry is one use of a calculator.
type Entry struct {
	ID         string
	Calculator string // its ID, which may be unknown to this program
	Name       string // what it was for: "Steps", "Main terrace"; may be ""
	Link       string // link text, version 1
	Changed    countdown.Instant
}

// Countdown is a wait that was started, as countdown.Countdown.Text writes it.
type Countdown struct{ ID, Text string }

// Mix is one line of the mixing log.
type Mix struct {
	ID      string
	When    countdown.Instant
	Amount  string // "25 kg", "50 lb", or "2 bags"
	Lot     string // of the bag
	Product string // as the crew calls it: "mortar", "grout"
	Air     string // temperature
	Surface string // temperature
	Note    string
}

// Check is one paver lifted to see its contact.
type Check struct {
	ID      string
	When    countdown.Instant
	Where   string
	Contact string // "96 %"
	Corners string // what was seen of edges and corners; "" nothing bare
	Picture string // a data URL of an image, or ""
	Note    string
}

// Note is a line of the diary.
type Note struct {
	ID   string
	When countdown.Instant
	Text string
}

// Weather is what was measured or forecast, entered once for every calculator that asks for it.
type Weather struct {
	When     countdown.Instant // 0: never entered
	Air      string
	Humidity string
	Surface  string
	Wind     string
}

// HandOver is what the hand-over sheet says beside the record itself.
type HandOver struct {
	When      countdown.Instant // 0: not handed over yet
	Client    string
	Crew      string
	Care      string // of the surface, a line a rule
	Remarks   string
	Materials []Material
}

// Material is a product that was used, with its lots.
type Material struct{ ID, Name, Product, Lots string }

// Problem is one thing wrong with a file: where it stands, the path to it ("mixes[3].amount") and what is wrong.
type Problem struct {
	Line, Column int // counted from 1; 0 where it is the whole
	Path         string
	Says         words.Line
}
