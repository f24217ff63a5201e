package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// patient is a calculator whose work goes a step at a time, and counts how often it is done.
func patient(times *int) *calc.Calculator {
	grid := calc.Gridded("grid", "Heights", "10 mm,20 mm", side.Input).MayBeEmpty()
	return &calc.Calculator{ID: "patient", Title: "Patient", Asks: "How long?", Inputs: []*calc.Input{side.Input, grid.Input}, Long: true,
		Work: func(e calc.Entry, s *calc.Sheet) {
			*times++
			if side.Of(e) > 5*unit.Metre {
				s.Refuse("side", "Too long to lay.")
				return
			}
			steps := 0
			for steps < 10 && s.Going(steps, 10) {
				steps++
			}
			calc.Gives(s, "steps", "Steps", unit.Count(steps), unit.Whole1).First()
			calc.Gives(s, "side", "Side", side.Of(e), unit.InchMM)
			calc.Gives(s, "pause", "Pause", unit.Hour, unit.HourSpan).Wait()
			s.Warn(calc.Note, source.CommonPractice, "Measure twice.")
			s.Drawing.Box(calc.Paver, 0, 0, side.Of(e), side.Of(e))
		}}
}

// beside is a page and what works beside it.
type beside struct {
	*testing.T
	l      *page.Live
	aside  page.Aside
	worked int
}

func besides(t *testing.T) *beside {
	b := &beside{T: t}
	c := patient(&b.worked)
	b.aside = page.Aside{Language: words.English, Find: func(id string) (*calc.Calculator, bool) { return c, id == c.ID }}
	b.l = page.MountAside(c, "p", metric)
	return b
}

func onward(int, int) bool { return true }

// answer sends what is to be worked, and gives what comes back.
func (b *beside) answer(going func(int, int) bool) []string {
	b.Helper()
	ask, ok := b.l.Ask()
	require.True(b, ok, "there is something to be worked")
	return b.aside.Answer(ask, going)
}

func parts(l *page.Live) map[string]string {
	m := map[string]string{}
	for _, p := range l.Parts() {
		m[p.Name] = p.HTML
	}
	return m
}

func TestNothingIsWorkedWhenItIsMounted(t *testing.T) {
	b := besides(t)
	assert.Zero(t, b.worked)
	_, ok := b.l.Ask()
	assert.False(t, ok)
	for _, name := range []string{"main", "answers", "drawing", "tables"} {
		assert.NotContains(t, parts(b.l), name, "what was served stays")
	}
	assert.Contains(t, parts(b.l)["state"], "Worked example")
}

// What is worked beside the page is what the page itself would show, link and all.
func TestTheSameAsOnThePage(t *testing.T) {
	for _, r := range []words.Reader{us, metric, comma} {
		b := besides(t)
		b.l.Address(r)
		b.l.Type("side", "400 mm")
		b.l.Take(b.answer(onward))
		var n int
		here := page.NewLive(patient(&n), "p", r)
		here.Type("side", "400 mm")
		assert.Equal(t, parts(here), parts(b.l))
		assert.Equal(t, here.Link(), b.l.Link())
		assert.Equal(t, 1, b.worked)
	}
}

func TestWhatIsWrongWithAFieldIsSaidAtOnce(t *testing.T) {
	b := besides(t)
	b.l.Type("side", "400 mm")
	b.l.Take(b.answer(onward))
	good, link := parts(b.l)["answers"], b.l.Link()
	b.l.Type("side", "nonsense")
	_, ok := b.l.Ask()
	assert.False(t, ok, "there is nothing to be worked")
	assert.True(t, b.l.Stale())
	assert.True(t, b.l.Invalid("side"))
	assert.Equal(t, good, parts(b.l)["answers"])
	assert.Equal(t, link, b.l.Link())

	b.l.Type("side", "6 m")
	assert.False(t, b.l.Stale(), "it can be read")
	b.l.Take(b.answer(onward))
	assert.True(t, b.l.Invalid("side"), "and not be worked")
	assert.Contains(t, parts(b.l)["note-side"], "Too long to lay.")
	assert.Equal(t, good, parts(b.l)["answers"])
	assert.Equal(t, link, b.l.Link(), "the last that was worked")
}

// An answer that comes after a further change takes no word back on what is wrong now.
func TestALateAnswer(t *testing.T) {
	b := besides(t)
	b.l.Type("side", "400 mm")
	late := b.answer(onward)
	b.l.Type("side", "nonsense")
	b.l.Take(late)
	assert.True(t, b.l.Invalid("side"))
	assert.Contains(t, parts(b.l)["answers"], "400 mm")

	b.l.Type("side", "6 m")
	late = b.answer(onward)
	b.l.Type("side", "500 mm")
	b.l.Take(late)
	assert.False(t, b.l.Stale(), "what was wrong with an earlier entry is past")
}

func TestAStoppedWorkSaysSo(t *testing.T) {
	b := besides(t)
	b.l.Type("side", "400 mm")
	ask, _ := b.l.Ask()
	b.l.Busy(true)
	assert.Contains(t, parts(b.l)["state"], "Being worked out")
	assert.Contains(t, parts(b.l)["work"], `data-do="stop"`)
	b.l.Stopping()
	assert.Contains(t, parts(b.l)["state"], "Being stopped")
	assert.NotContains(t, parts(b.l)["work"], "data-do")
	b.l.Take(b.aside.Answer(ask, func(done, of int) bool { assert.Equal(t, 10, of); return done < 4 }))
	assert.Contains(t, parts(b.l)["state"], "Stopped early")
	assert.Contains(t, parts(b.l)["main"], "<strong>4</strong>", "the best so far")
	assert.NotContains(t, parts(b.l)["work"], "stop")

	b.l.Again()
	b.l.Take(b.answer(onward))
	assert.Contains(t, parts(b.l)["state"], "Your figures")
	assert.Contains(t, parts(b.l)["main"], "<strong>10</strong>")
	assert.Equal(t, 2, b.worked)

	b.l.Halt()
	assert.True(t, b.l.Stale())
	assert.Contains(t, parts(b.l)["state"], "Stopped: the answers are from before.")
	assert.Contains(t, parts(b.l)["main"], "<strong>10</strong>")
}

// Another reader gets the same sheet: it is not worked again. One whose work was dropped is.
func TestASheetIsKeptForAnotherReader(t *testing.T) {
	b := besides(t)
	b.l.Type("side", "400 mm")
	b.l.Take(b.answer(onward))
	b.l.Address(us)
	b.l.Take(b.answer(onward))
	assert.Equal(t, 1, b.worked)
	assert.Contains(t, parts(b.l)["answers"], "15.75 in (400 mm)")
	b.aside.Forget("p")
	b.l.Address(metric)
	b.l.Take(b.answer(onward))
	assert.Equal(t, 2, b.worked)
}

// A table too long to be read on the page is read beside it, and what is wrong comes back.
func TestALongTableIsReadBeside(t *testing.T) {
	b := besides(t)
	rows := strings.Repeat("12 mm,13 mm,14 mm\n", 5000)
	b.l.Type("grid", rows)
	b.l.Take(b.answer(onward))
	assert.False(t, b.l.Stale())
	assert.Contains(t, b.l.Link(), "grid=12+mm,+13+mm,+14+mm;")
	link := b.l.Link()
	b.l.Type("grid", rows+"x")
	assert.False(t, b.l.Stale())
	b.l.Take(b.answer(onward))
	assert.True(t, b.l.Invalid("grid"))
	assert.Contains(t, parts(b.l)["note-grid"], "row 5001")
	assert.Equal(t, link, b.l.Link())
}

func TestACountdownOfWhatWasWorkedBeside(t *testing.T) {
	b := besides(t)
	b.l.Type("side", "400 mm")
	_, ok := b.l.Countdown("id", "pause", 0)
	assert.False(t, ok, "nothing was worked yet")
	b.l.Take(b.answer(onward))
	c, ok := b.l.Countdown("id", "pause", 0)
	require.True(t, ok)
	assert.Equal(t, countdown.Instant(3600*ms), c.Until)
	assert.Equal(t, "Patient", c.Name)
	assert.Equal(t, b.l.Link(), c.Entry)
}

func TestWithNobodyBesideItIsWorkedHere(t *testing.T) {
	b := besides(t)
	b.l.Type("side", "400 mm")
	b.l.Home()
	assert.False(t, b.l.Aside())
	assert.Contains(t, parts(b.l)["answers"], "400 mm")
	whole(t, b.l)
}
