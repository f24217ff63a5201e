package job

import (
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/link"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Find gives a calculator by its ID: all.ByID.
type Find func(id string) (*calc.Calculator, bool)

// Day is the state of a job at an instant.
type Day struct {
	Curing []Wait     // running, the first to end first
	Over   []Wait     // waits that are over: what they were for may go on
	Stages []StageDay // the stages of the work, in their order
	Next   []Next     // what to do next beside all that, the most pressing first
	Stops  []Stop     // what the weather, as last entered, says against going on
}

// Wait is a countdown of the job: the Name says what may be done after it.
type Wait struct {
	Countdown *countdown.Countdown
	Left      int64 // milliseconds; not above nought once it is over
}

// StageDay is one stage of the work: the entries of it in the job, and how far it has come.
type StageDay struct {
	Stage   calc.Stage
	Entries []Entry
	State   State
}

// State is how far a stage has come, as far as the record tells.
type State uint8

// The states.
const (
	Open    State = iota // nothing of it is in the record
	Planned              // entries only
	Begun                // the log has something of it
	Waits                // a countdown of it runs
	Done                 // its countdowns are over, or a later stage has begun
)

// Next is one thing to do: words, and where it is done: the ID of a calculator, or "" for the job's own page.
type Next struct {
	Says       words.Line
	Calculator string
	Entry      string // the ID of the entry that it is about, or ""
}

// Stop is a caution of an entry that says not to go on, or a verdict to hold.
type Stop struct {
	Entry Entry
	Says  words.Line
}

// How fresh the record should be: common practice.
const (
	weatherHolds = 4 * hour // what was measured longer ago is to be measured anew
	mixesACheck  = 4        // mixes after which a paver is to be lifted again
	leastContact = 0.95     // outdoors: source.Contact
)

// Today tells the state of a job at an instant.
func Today(j *Job, now countdown.Instant, find Find) *Day {
	d := &Day{}
	d.countdowns(j, now)
	d.stages(j, find)
	d.stops(j, find)
	d.next(j, now, find)
	return d
}

func (d *Day) countdowns(j *Job, now countdown.Instant) {
	var all []*countdown.Countdown
	for _, c := range j.Countdowns {
		if begun, ok := c.read(); ok {
			all = append(all, begun)
		}
	}
	countdown.Order(all)
	for _, c := range all {
		if w := (Wait{c, c.Left(now)}); c.Done(now) {
			d.Over = append(d.Over, w)
		} else {
			d.Curing = append(d.Curing, w)
		}
	}
}

// stages gives each entry to its stage and says how far the stage has come. What of the work has a log speaks for itself and for the stages before it.
func (d *Day) stages(j *Job, find Find) {
	for stage := range calc.Stages {
		d.Stages = append(d.Stages, StageDay{Stage: calc.Stage(stage)})
	}
	for _, e := range j.Entries {
		if stage, ok := stageOf(e.Calculator, find); ok {
			s := &d.Stages[stage]
			s.Entries, s.State = append(s.Entries, e), Planned
		}
	}
	begun := calc.Slab
	if len(j.Mixes) > 0 {
		begun = calc.Mixing
		d.Stages[begun].State = Begun
	}
	if len(j.Checks) > 0 {
		begun = calc.Setting
		d.Stages[begun].State = Begun
	}
	switch wait := &d.Stages[calc.Waiting]; {
	case len(d.Curing) > 0:
		wait.State = Waits
	case len(d.Over) > 0:
		wait.State = Done
	}
	for i := range d.Stages {
		s := &d.Stages[i]
		if s.State == Planned && (s.Stage < begun && s.Stage < calc.Mixing || j.HandOver.When != 0) {
			s.State = Done
		}
	}
}

// stageOf is the stage of a calculator. The program of the job's page may be without the large ones, whose stages are known all the same.
func stageOf(id string, find Find) (calc.Stage, bool) {
	if c, ok := find(id); ok {
		return c.Stage, true
	}
	for _, s := range starts {
		if s.id == id {
			return s.stage, true
		}
	}
	return 0, false
}

// feeds are the inputs that the weather fills, wherever a calculator asks for them in that kind.
func (w *Weather) feeds() [4]struct {
	in   *calc.Input
	text string
} {
	return [4]struct {
		in   *calc.Input
		text string
	}{{Air.Input, w.Air}, {Humidity.Input, w.Humidity}, {Surface.Input, w.Surface}, {Wind.Input, w.Wind}}
}

// coldest is the key of an input that asks for the coldest of air and slab.
const coldest = "temp"

// Fed gives an entry's link with the weather of the job in the place of its own, where the calculator asks for it: air, humidity,
// surface and wind by their keys, and for the coldest of air and slab in a wait the colder of the two, where the entry's own is not colder yet. What was not measured, and
// what a calculator does not take, stays as it was entered.
func (j *Job) Fed(e Entry, find Find) string {
	c, ok := find(e.Calculator)
	texts, problems := link.Parse(e.Link)
	if !ok || len(problems) > 0 {
		return e.Link
	}
	fed := false
	put := func(in *calc.Input, key, text string) {
		to := c.Input(key)
		if to == nil || text == "" || to.As == nil || to.Kind != in.Kind {
			return
		}
		if _, takes := to.Value(text, calc.Habit{}); takes {
			texts[key], fed = text, true
		}
	}
	w := &j.Weather
	for _, f := range w.feeds() {
		put(f.in, f.in.Key, f.text)
	}
	if c.Stage == calc.Waiting {
		cold := w.Air
		air, _ := Air.Value(w.Air, calc.Habit{})
		if surface, ok := Surface.Value(w.Surface, calc.Habit{}); ok && (cold == "" || surface < air) {
			cold = w.Surface
		}
		// The coldest of a whole wait was entered with the night in mind: a reading of the day does not make it warmer.
		if now, ok := Air.Value(cold, calc.Habit{}); ok && !colder(c, texts, now) {
			put(Air.Input, coldest, cold)
		}
	}
	if !fed {
		return e.Link
	}
	var b strings.Builder
	b.WriteString("v=" + link.Version)
	for _, in := range c.Inputs {
		if text, given := texts[in.Key]; given {
			b.WriteString("&" + in.Key + "=" + link.Escape(text))
		}
	}
	return b.String()
}

// colder reports whether an entry's own coldest is below a temperature.
func colder(c *calc.Calculator, texts calc.Texts, than float64) bool {
	in := c.Input(coldest)
	if in == nil || texts[coldest] == "" {
		return false
	}
	own, ok := in.Value(texts[coldest], calc.Habit{})
	return ok && own < than
}

// Solve works an entry out in the weather of the job. A calculator or an entry that is not known here has problems and nothing else.
func (j *Job) Solve(e Entry, find Find) *calc.Sheet {
	c, ok := find(e.Calculator)
	if !ok {
		return &calc.Sheet{Problems: []calc.Problem{{Says: words.Say("This Setbook has no calculator named “{read}”.", words.Text("read", calc.Cut(e.Calculator)))}}}
	}
	entry, problems := link.Read(c, j.Fed(e, find), calc.Habit{})
	if len(problems) > 0 {
		return &calc.Sheet{Problems: problems}
	}
	return c.Solve(entry)
}

// stops works out what looks at the weather, and what waits in it: quick sums all.
func (d *Day) stops(j *Job, find Find) {
	for _, stage := range [...]calc.Stage{calc.Weather, calc.Waiting} {
		for _, e := range d.Stages[stage].Entries {
			s := j.Solve(e, find)
			for _, p := range s.Problems {
				d.Stops = append(d.Stops, Stop{e, p.Says})
			}
			for _, w := range s.Cautions {
				if w.Severity == calc.Stop {
					d.Stops = append(d.Stops, Stop{e, w.Says})
				}
			}
		}
	}
}

// starts are the calculators that a stage begins with, where nothing of it is in the record: the order of the work.
var starts = [...]struct {
	stage calc.Stage
	id    string
}{{calc.Slab, "levels"}, {calc.SettingOut, "setout"}, {calc.Ordering, "takeoff"}, {calc.Mixing, "batch"}, {calc.Setting, "bed"}, {calc.Grouting, "grout"}, {calc.Sealing, "sealant"}, {calc.Waiting, "wait"}}

func (d *Day) next(j *Job, now countdown.Instant, find Find) {
	add := func(calculator, entry string, m words.Msg, with ...*words.Arg) {
		d.Next = append(d.Next, Next{words.Say(m, with...), calculator, entry})
	}
	if j.HandOver.When != 0 {
		add("", "", "The job is handed over. Look at the sealant when the cold season comes.")
		return
	}
	if w := j.Weather; w.When == 0 || now-w.When > weatherHolds {
		add("", "", "Measure air, humidity, surface and wind, and enter them: they feed every sum that asks for them.")
	}
	d.colder(j, find, add)
	if n := len(j.Checks); n > 0 {
		c := j.Checks[n-1]
		if share, ok := Contact.Value(c.Contact, calc.Habit{}); ok && share < leastContact || c.Bare() {
			add("contact", "", "The last paver that was lifted was not bedded as it must be outdoors. Take up its neighbours too, and change notch, mortar or hand before the next is set: {where}", words.Text("where", c.Where))
		}
	}
	if n := sinceCheck(j); n >= mixesACheck {
		add("contact", "", "Lift a paver and look at its back: {mixes} mixes have gone since the last look.", words.Is("mixes", unit.Count(n), unit.Whole1))
	}
	open := false
	for _, s := range starts {
		if d.Stages[s.stage].State == Open && !open {
			add(s.id, "", "Not in the record yet: {stage}.", words.Named("stage", calc.Stages[s.stage]))
			open = true
		}
	}
	if !open && len(d.Curing) == 0 && len(d.Stops) == 0 {
		add("", "", "All stages are in the record and nothing is waiting. Walk over it with the client and hand over.")
	}
}

// nothing are the words, in the languages of this program, with which somebody says that no edge and no corner was bare instead of leaving the
// field empty. Only a whole text is one of them: "no mortar at the drain" is a bare corner.
const nothing = " none no nothing nil 0 - – — n/a ninguno ninguna ningún nada no hay "

// Bare reports whether edges or corners were seen bare.
func (c *Check) Bare() bool {
	said := strings.ToLower(strings.Trim(c.Corners, " .!"))
	return said != "" && !strings.Contains(nothing, " "+said+" ")
}

// colder tells of each wait that runs whether the weather, as measured since, would make it longer.
func (d *Day) colder(j *Job, find Find, add func(calculator, entry string, m words.Msg, with ...*words.Arg)) {
	for _, w := range d.Curing {
		c := w.Countdown
		if j.Weather.When < c.From {
			continue
		}
		for _, a := range j.Solve(Entry{Calculator: c.Of, Link: c.Entry}, find).Answers {
			if late := int64(a.Is.Base*second) - int64(c.Until-c.From); a.Waits && late > minute {
				add(c.Of, "", "It is colder than was reckoned with: {name} takes {late} longer.", words.Text("name", c.Name), words.Is("late", unit.Span(float64(late)/second), unit.HourSpan))
			}
		}
	}
}

// sinceCheck counts the mixes that were logged after the last paver was lifted.
func sinceCheck(j *Job) (mixes int) {
	var last countdown.Instant
	for _, c := range j.Checks {
		last = max(last, c.When)
	}
	for _, m := range j.Mixes {
		if m.When > last {
			mixes++
		}
	}
	return mixes
}
