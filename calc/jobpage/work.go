package jobpage

import (
	"slices"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/markup"
	"setbook/calc/page"
	"setbook/calc/words"
)

// Replace shows another state of the job: another page's, or a copy.
func (v *View) Replace(j *job.Job) {
	v.Job, v.Base, v.Theirs, v.Trouble, v.Unfit = j, j.Clone(), nil, None, nil
	for i := range fields {
		// What stands in the fields of a line that is being written stays, and what was refused.
		if f := &fields[i]; f.at != nil && !v.Invalid(f.key) {
			v.spent(f.key)
		}
	}
}

// Copy makes the job as it stands here another job, which is not kept yet.
func (v *View) Copy(id string) {
	c := *v.Job
	c.ID, c.Revision = id, 0
	c.Name = job.Clean(v.Reader.Line(words.Say("{name} (copy)", words.Text("name", job.Clean(c.Name, job.MaxName-10)))), job.MaxName)
	v.Replace(&c)
}

func (v *View) workFrame(w *writer, now countdown.Instant) {
	w.Put(`<header class="question">`)
	w.part("title", v.title(now))
	w.Put(`</header>`)
	w.Put(`<div class="job-go" role="group" aria-label="%">`, w.r.Word("Parts of this page"))
	for _, p := range [...]struct {
		part string
		says words.Msg
	}{{"sums", "Sums"}, {"weather", "Weather"}, {"mixes", "Mixes"}, {"checks", "Contact"}, {"notes", "Notes"}, {"paper", "Paper"}} {
		w.do("go", p.part, p.says, "")
	}
	w.Put(`</div>`)
	v.part(w, "undo", v.undone(now))
	v.part(w, "day", v.day(now))
	w.Put(`<div class="job-columns"><section class="job-section" data-go="sums">`)
	v.part(w, "sums", v.sums(now))
	v.begin(w)
	w.Put(`</section><section class="job-section" data-go="weather">`)
	w.put(`<h2>%</h2><p class="note">%</p><div class="asks job-pairs">`, "Weather", "Typed once, it stands in every sum that is opened from this job.")
	for _, key := range []string{"air", "surface", "humidity", "wind"} {
		v.ask(w, key)
	}
	w.Put(`</div></section><section class="job-section" data-go="mixes">`)
	w.put(`<h2>%</h2><div class="asks job-pairs">`, "Mixes")
	for _, key := range []string{"mix-amount", "mix-product", "mix-lot", "mix-air", "mix-surface"} {
		v.ask(w, key)
	}
	v.add(w, "mix", "Mixed now: put it in the log")
	w.Put(`</div>`)
	v.part(w, "mixes", v.mixes(now))
	w.Put(`</section><section class="job-section" data-go="checks">`)
	w.put(`<h2>%</h2><p class="note">%</p><div class="asks job-pairs">`, "Contact checks", "Lift a paver at the start, at each change of mix or weather, and whenever the combed ridges look dull.")
	for _, key := range []string{"check-where", "check-contact", "check-corners", "check-note"} {
		v.ask(w, key)
	}
	v.pictureField(w)
	v.add(w, "check", "Checked now: put it in the log")
	w.Put(`</div>`)
	v.part(w, "checks", v.checks(now))
	w.Put(`</section><section class="job-section" data-go="notes">`)
	w.put(`<h2>%</h2><div class="asks">`, "Notes")
	v.ask(w, "note-text")
	v.add(w, "note", "Put the note in the diary")
	w.Put(`</div>`)
	v.part(w, "notes", v.notes(now))
	w.Put(`</section><section class="job-section" data-go="paper">`)
	w.put(`<h2>%</h2>`, "Paper")
	v.entry(w, v.Href(v.Job.ID, HandOver), "Hand-over sheet", "What the client keeps: drawing, materials with lots, conditions, checks, times, care.")
	v.entry(w, v.Href(v.Job.ID, Order), "Order", "What to buy, likely and cautious, from the sums of this job.")
	v.handOn(w)
	w.fold("about", "Name and place")
	w.Put(`<div class="asks">`)
	for _, key := range []string{"name", "place", "address"} {
		v.ask(w, key)
	}
	w.Put(`</div>`)
	w.unfold()
	w.fold("delete", "Delete this job")
	w.put(`<p>%</p><div class="count-acts">`, "It leaves the list of jobs. From the list it can be brought back, until it is deleted there for good.")
	w.do("delete", "", "Delete this job", "")
	w.Put(`</div>`)
	w.unfold()
	w.Put(`</section></div>`)
}

// part writes a region that is written anew as the job changes.
func (v *View) part(w *writer, name, made string) { w.part(name, made) }

// add writes the button that puts a line into the record.
func (v *View) add(w *writer, do string, says words.Msg) {
	w.Put(`<div class="job-add"><button type="button" class="job-main" data-job-do="%">%</button><p class="said" role="status" data-said="%"></p></div>`, do, w.r.Word(says), do)
}

// entry writes a large link, as the contents page has them.
func (v *View) entry(w *writer, href string, title, asks words.Msg) {
	w.Put(`<a class="entry" href="%"><span class="entry-title">%</span> <span class="entry-asks">%</span></a>`, href, w.r.Word(title), w.r.Word(asks))
}

// handOn offers every way in which a job leaves the phone.
func (v *View) handOn(w *writer) {
	w.fold("hand-on", "Hand this job on")
	w.put(`<p>%</p><div class="count-acts">`, "The file holds everything. A link or a code holds a small job whole: whoever opens it sees what it would change before anything changes. Nothing is sent anywhere by itself.")
	w.do("file", "", "Save as a file", "")
	w.do("share", "", "Share the file", "")
	w.do("link", "", "Copy a link", "")
	w.do("code", "", "Show a code to scan", "")
	w.do("copy", "", "Copy the file’s text", "")
	w.Put(`</div><p class="said" data-said="hand-on" role="status"></p><div data-code></div>`)
	w.unfold()
}

// begin lists the calculators, to begin a sum for this job.
func (v *View) begin(w *writer) {
	w.fold("begin", "Begin a sum for this job")
	for i, title := range calc.Stages {
		first := true
		for _, c := range v.All {
			if c.Stage != calc.Stage(i) {
				continue
			}
			if first {
				w.put(`<h3>%</h3>`, title)
				first = false
			}
			text := v.fed(job.Entry{Calculator: c.ID, Link: "v=1"})
			if text == "v=1" {
				text = ""
			}
			w.Put(`<a class="entry" href="%"><span class="entry-title">%</span></a>`, v.sumHref(c.ID, "", text), w.r.Word(c.Title))
		}
	}
	w.unfold()
}

// states names each state of a stage.
var states = [...]words.Msg{job.Open: "nothing yet", job.Planned: "worked out", job.Begun: "begun", job.Waits: "waits", job.Done: "done"}

// marks are the states as the style sheet knows them.
var marks = [...]string{job.Open: "open", job.Planned: "planned", job.Begun: "begun", job.Waits: "waits", job.Done: "done"}

// day is the state of the work: what speaks against going on, what to do next, what waits and what may be walked on.
func (v *View) day(now countdown.Instant) string {
	d := job.Today(v.Job, now, v.Find)
	w := v.writer()
	w.put(`<h2>%</h2>`, "Today")
	for _, s := range d.Stops {
		w.Put(`<div class="caution caution-stop"><b>%</b> % <cite>%</cite></div>`, w.r.Word("Stop"), w.r.Line(s.Says), v.entryName(s.Entry))
	}
	if len(d.Next) > 0 {
		w.put(`<h3>%</h3><ol class="job-next">`, "What to do next")
		for _, n := range d.Next {
			if n.Calculator == "" {
				w.Put(`<li>%</li>`, w.r.Line(n.Says))
				continue
			}
			text := ""
			for _, e := range v.Job.Entries {
				if e.ID == n.Entry {
					text = v.fed(e)
				}
			}
			if text == "" {
				text = v.fed(job.Entry{Calculator: n.Calculator, Link: "v=1"})
			}
			w.Put(`<li><a class="entry" href="%"><span class="entry-title">%</span></a></li>`, v.sumHref(n.Calculator, n.Entry, text), w.r.Line(n.Says))
		}
		w.Put(`</ol>`)
	}
	if len(d.Curing) > 0 {
		w.put(`<h3>%</h3><ul class="job-waits">`, "Waiting, and when it may go on")
		for _, c := range d.Curing {
			v.wait(w, c, now)
		}
		w.Put(`</ul>`)
	}
	if len(d.Over) > 0 {
		w.put(`<h3>%</h3><ul class="job-waits job-over">`, "The wait is over")
		for _, c := range d.Over {
			v.wait(w, c, now)
		}
		w.put(`</ul><p class="note">%</p>`, "A time that has passed is no test. Press the joint with a thumb, or lift a corner piece, before anybody walks there.")
	}
	if len(v.others()) > 0 && !v.readOnly() {
		w.Put(`<div class="count-acts">`)
		w.do("countdowns", "", "Take in the countdowns that run on this phone", "")
		w.Put(`</div>`)
	}
	w.put(`<h3>%</h3><ol class="job-course">`, "The course of the work")
	for _, s := range d.Stages {
		w.Put(`<li data-state="%"><span>%</span> <b>%</b></li>`, marks[s.State], w.r.Word(calc.Stages[s.Stage]), w.r.Word(states[s.State]))
	}
	w.Put(`</ol>`)
	return w.String()
}

// others are the countdowns of the phone that the job has not.
func (v *View) others() (list []*countdown.Countdown) {
	for _, c := range v.Phone {
		if !slices.ContainsFunc(v.Job.Countdowns, func(have job.Countdown) bool { return have.ID == c.ID }) {
			list = append(list, c)
		}
	}
	return list
}

func (v *View) wait(w *writer, c job.Wait, now countdown.Instant) {
	togo, when := left(c.Left), words.Say("may go on {when}", words.Also("when", v.When(c.Countdown.Until, now)))
	if c.Left <= 0 {
		togo, when = page.Ago(-c.Left), words.Say("over since {when}", words.Also("when", v.When(c.Countdown.Until, now)))
	}
	w.Put(`<li class="count"><details data-fold="wait-%"><summary><span class="count-what"><b class="count-name" dir="auto">%</b> <strong class="count-left">%</strong> <span class="count-ends">%</span></span></summary><div class="count-acts">`,
		c.Countdown.ID, c.Countdown.Name, w.r.Line(togo), w.r.Line(when))
	w.Put(`<a class="button" href="%">%</a>`, v.sumHref(c.Countdown.Of, "", c.Countdown.Entry), w.r.Word("Open the sum"))
	v.drop(w, "countdowns/"+c.Countdown.ID, c.Countdown.Name)
	w.Put(`</div></details></li>`)
}

// left says a time to go, to the minute: this part of the page is written anew less often than a second passes.
func left(milliseconds int64) words.Line {
	p := countdown.Split(milliseconds)
	if p.Days == 0 && p.Hours == 0 {
		return words.Say("{minutes} min", words.Text("minutes", countdown.Pad(p.Minutes+min(1, p.Seconds), 1)))
	}
	return page.Left(milliseconds)
}

// drop writes the button that takes something out of the record.
func (v *View) drop(w *writer, what, name string) { v.dropAs(w, "Remove", what, name) }

func (v *View) dropAs(w *writer, says words.Msg, what, name string) {
	if !v.readOnly() {
		w.do("remove", what, says, name)
	}
}

// entryName is what an entry is called: its own name with its calculator's title.
func (v *View) entryName(e job.Entry) string {
	title := e.Calculator
	if c, ok := v.Find(e.Calculator); ok {
		title = v.Reader.Word(c.Title)
	}
	return join(title, e.Name)
}

// sums lists the entries in the order of the work.
func (v *View) sums(countdown.Instant) string {
	w := v.writer()
	w.put(`<h2>%</h2>`, "Sums of this job")
	if len(v.Job.Entries) == 0 {
		w.put(`<p class="note">%</p>`, "None yet. Begin one below, or press “Add to this job” on the page of any sum.")
		return w.String()
	}
	w.Put(`<ul class="job-sums">`)
	for i := range len(calc.Stages) + 1 {
		for _, e := range v.Job.Entries {
			c, ok := v.Find(e.Calculator)
			if ok && int(c.Stage) == i || !ok && i == len(calc.Stages) {
				v.sum(w, e, ok)
			}
		}
	}
	w.Put(`</ul>`)
	return w.String()
}

func (v *View) sum(w *writer, e job.Entry, known bool) {
	name, href := v.entryName(e), ""
	if known {
		href = v.sumHref(e.Calculator, e.ID, v.fed(e))
	}
	w.Put(`<li class="count"><details data-fold="sum-%"><summary><span class="count-what"><b class="count-name" dir="auto">%</b> <span class="count-ends">%</span></span></summary>`,
		e.ID, name, v.first(e))
	if !known {
		w.put(`<p class="note">%</p>`, "This Setbook has no page for it. It is kept as it is.")
	}
	id := "job-entry-" + e.ID
	w.Put(`<div class="field"><label for="%">%</label><input id="%" data-job-field="entry-%" type="text" value="%" autocomplete="off" aria-describedby="%-note"><p class="note" id="%-note" data-part="note-entry-%">`,
		id, w.r.Word("What it is for"), id, e.ID, v.entryText(e), id, id, e.ID)
	w.Markup(v.bad(named + e.ID))
	w.Put(`</p></div><div class="count-acts">`)
	w.Markup(markup.If(known, v.open(href)))
	v.drop(w, "entries/"+e.ID, name)
	w.Put(`</div></details></li>`)
}

func (v *View) open(href string) string {
	w := v.writer()
	w.Put(`<a class="button job-main" href="%">%</a>`, href, w.r.Word("Open the sum"))
	return w.String()
}

// first is the answer wanted most of an entry, where it can be worked. A calculator that takes long is not asked for a list.
func (v *View) first(e job.Entry) string {
	if c, ok := v.Find(e.Calculator); !ok || c.Long {
		return ""
	}
	s := v.solve(e.Calculator, v.fed(e))
	if s == nil {
		return ""
	}
	for i := range s.Answers {
		if s.Answers[i].Main {
			return v.Reader.Word(s.Answers[i].Label) + " " + page.Reads(v.Reader, &s.Answers[i])
		}
	}
	return ""
}
