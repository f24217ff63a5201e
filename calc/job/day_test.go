package job_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/link"
	"setbook/calc/unit"
)

const hour = 3_600_000

// Every entry of the demo job can be worked out, so that whoever tries it meets no problem.
func TestDemoSolves(t *testing.T) {
	demo := job.Demo(noon)
	require.NotEmpty(t, demo.Entries)
	for _, e := range demo.Entries {
		c, ok := all.ByID(e.Calculator)
		require.True(t, ok, e.Calculator)
		entry, problems := link.Read(c, e.Link, calc.Habit{})
		require.Empty(t, problems, "%s: %s", e.Calculator, e.Link)
		assert.Empty(t, c.Solve(entry).Problems, e.Link)
		assert.Empty(t, demo.Solve(e, all.ByID).Problems, e.Link)
	}
	assert.Len(t, demo.Countdowns, 2)
}

// The day of the demo job, told from its record by hand: one wait of 36.4 h begun 22 h ago, one of 24 h begun 50 h ago.
func TestToday(t *testing.T) {
	demo := job.Demo(noon)
	d := job.Today(demo, noon, all.ByID)
	require.Len(t, d.Curing, 1)
	assert.Equal(t, "Walk on the terrace", d.Curing[0].Countdown.Name)
	assert.EqualValues(t, 14.4*hour, d.Curing[0].Left)
	require.Len(t, d.Over, 1)
	assert.Equal(t, "Set on the membrane", d.Over[0].Countdown.Name)
	assert.EqualValues(t, -26*hour, d.Over[0].Left)
	require.Len(t, d.Stages, len(calc.Stages))
	for stage, want := range map[calc.Stage]job.State{calc.Slab: job.Done, calc.Mixing: job.Begun, calc.Setting: job.Begun, calc.Grouting: job.Planned, calc.Waiting: job.Waits, calc.Weather: job.Planned} {
		assert.Equal(t, want, d.Stages[stage].State, calc.Stages[stage])
	}
	assert.Empty(t, d.Stops, "mild weather in daylight")

	none := job.Today(demo, noon, func(string) (*calc.Calculator, bool) { return nil, false })
	assert.Equal(t, job.Done, none.Stages[calc.SettingOut].State, "a program without the large calculators knows their stages")
	assert.Len(t, none.Stages[calc.Slab].Entries, 1)

	later := job.Today(demo, noon+15*hour, all.ByID)
	assert.Empty(t, later.Curing)
	assert.Equal(t, job.Done, later.Stages[calc.Waiting].State)
}

func told(d *job.Day) string {
	var lines []string
	for _, n := range d.Next {
		lines = append(lines, english.Line(n.Says))
	}
	return strings.Join(lines, "\n")
}

// What is to be done next follows from what was measured, logged and checked.
func TestNext(t *testing.T) {
	demo := job.Demo(noon)
	assert.NotContains(t, told(job.Today(demo, noon, all.ByID)), "Measure air")
	assert.Contains(t, told(job.Today(demo, noon+4*hour, all.ByID)), "Measure air", "what was measured five hours ago does not count")
	assert.NotContains(t, told(job.Today(demo, noon, all.ByID)), "Lift a paver")
	for i := range 4 {
		demo.Mixes = append(demo.Mixes, job.Mix{ID: "n" + countdown.Pad(int64(i), 1), When: noon - hour, Amount: "25 kg"})
	}
	assert.Contains(t, told(job.Today(demo, noon, all.ByID)), "5 mixes have gone since the last look")
	demo.Checks = append(demo.Checks, job.Check{ID: "n", When: noon, Where: "Step 2", Contact: "94 %"})
	day := told(job.Today(demo, noon, all.ByID))
	assert.NotContains(t, day, "Lift a paver")
	assert.Contains(t, day, "not bedded as it must be outdoors")
	assert.Contains(t, day, "Step 2")
	demo.Checks[3].Contact = "95 %"
	assert.NotContains(t, told(job.Today(demo, noon, all.ByID)), "not bedded")
	demo.Checks[3].Corners = "one bare"
	assert.Contains(t, told(job.Today(demo, noon, all.ByID)), "not bedded", "a bare corner fails, whatever the mean")
	demo.HandOver.When = noon
	assert.Contains(t, told(job.Today(demo, noon, all.ByID)), "handed over")
	assert.Contains(t, told(job.Today(&job.Job{ID: "a", Name: "b"}, noon, all.ByID)), "Not in the record yet")
}

// The weather, entered once, stands in each sum that asks for it, and a colder day lengthens a wait that runs: the trade doubles
// the time for each 18 °F (10 K) colder, so 24 h at 21 °C come to 48 h at 11 °C.
func TestWeatherFeeds(t *testing.T) {
	demo := job.Demo(noon)
	demo.Weather = job.Weather{When: noon, Air: "11 °C", Humidity: "90 %", Surface: "12 °C", Wind: "3 km/h"}
	for _, e := range demo.Entries {
		c, _ := all.ByID(e.Calculator)
		entry, problems := link.Read(c, demo.Fed(e, all.ByID), calc.Habit{})
		require.Empty(t, problems)
		switch e.Calculator {
		case "gohold":
			for key, want := range map[string]float64{"air": 11, "humidity": 0.9, "surface": 12, "lowest": 9} {
				assert.InDelta(t, want, entry.Reading(key).Base, 1e-12, key)
			}
		case "wait":
			assert.InDelta(t, 11, entry.Reading("temp").Base, 1e-12, "the colder of air and slab")
			assert.InDelta(t, 21, entry.Reading("bag_temp").Base, 1e-12)
		default:
			assert.Equal(t, e.Link, demo.Fed(e, all.ByID), "%s does not ask for the weather", e.Calculator)
		}
	}
	day := told(job.Today(demo, noon, all.ByID))
	assert.Contains(t, day, "It is colder than was reckoned with: Walk on the terrace takes 11.6 h longer.", "48 h, where 36.4 h were begun")
	demo.Weather.Surface, demo.Weather.Air = "30 °C", "30 °C"
	for _, e := range demo.Entries {
		if e.Calculator == "wait" {
			c, _ := all.ByID(e.Calculator)
			entry, _ := link.Read(c, demo.Fed(e, all.ByID), calc.Habit{})
			assert.InDelta(t, 15, entry.Reading("temp").Base, 1e-12, "a warm noon does not shorten a wait that was worked out for a colder night")
		}
	}
	assert.NotContains(t, told(job.Today(demo, noon, all.ByID)), "colder", "heat does not shorten a wait")

	demo.Weather = job.Weather{When: noon, Air: "-3 °C", Surface: "-1 °C"}
	d := job.Today(demo, noon, all.ByID)
	stops := ""
	for _, s := range d.Stops {
		stops += s.Entry.Calculator + ": " + english.Line(s.Says) + "\n"
	}
	assert.Contains(t, stops, "wait: ", "no time can be given in frost")
	assert.Contains(t, stops, "gohold: Bag: the surface at")
	assert.Equal(t, "v=1&width=1/2+in", demo.Fed(job.Entry{Calculator: "nobody", Link: "v=1&width=1/2+in"}, all.ByID))
	require.Len(t, demo.Solve(job.Entry{Calculator: "nobody"}, all.ByID).Problems, 1)
}

// What somebody types into the log is kept as text that reads the same for everybody, and is read back as the same quantity.
func TestTaken(t *testing.T) {
	us, comma := calc.Habit{Decimal: '.', System: unit.US}, calc.Habit{Decimal: ',', System: unit.Metric}
	for _, c := range []struct {
		in          *calc.Input
		text        string
		habit       calc.Habit
		want, fault string
	}{
		{job.Air.Input, "73", us, "73 °F", ""},
		{job.Air.Input, "12,5", comma, "12.5 °C", ""},
		{job.Air.Input, " ", us, "", ""},
		{job.Air.Input, "200 C", us, "", "It takes from"},
		{job.Contact.Input, "96 %", us, "96 %", ""},
		{job.Wind.Input, "8 kg", us, "", "unit of another kind"},
	} {
		got, problem := job.Taken(c.in, c.text, c.habit)
		assert.Equal(t, c.want, got, c.text)
		if c.fault == "" {
			assert.Nil(t, problem, c.text)
		} else if assert.NotNil(t, problem, c.text) {
			assert.Contains(t, english.Line(problem.Says), c.fault)
		}
	}
	for text, want := range map[string]string{"2 bags": "2 bags", "1 Bag": "1 bag", "1,5 bags": "1.5 bags", "25": "25 kg", "12,5 kg": "12,5 kg", "0 bags": "", "x bags": "", "1001 bags": ""} {
		got, problem := job.TakenAmount(text, comma, [2]string{})
		assert.Equal(t, want, got, text)
		assert.Equal(t, want == "", problem != nil, text)
	}
	m := job.Mix{Amount: "1.5 bags"}
	bags, ok := m.Bags()
	assert.True(t, ok)
	assert.EqualValues(t, 1.5, bags)
	_, ok = m.Mass()
	assert.False(t, ok)
	m.Amount = "50 lb"
	mass, ok := m.Mass()
	assert.True(t, ok)
	assert.Equal(t, 50*unit.Pound, mass)
	_, ok = m.Bags()
	assert.False(t, ok)
	assert.Equal(t, "a b", job.Clean(" a\n\t\x00b\xff ", 10))
	assert.Equal(t, "äö", job.Clean("äöü", 2))
	assert.Equal(t, "a\nb", job.CleanLines("a\r\nb\x07\n", 10))
}
