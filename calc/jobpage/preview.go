package jobpage

import (
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Preview is what a file or a link would bring, before anything is changed.
type Preview struct {
	New      *job.Job
	Old      *job.Job // the job of the same ID that is kept; nil: there is none
	Gone     bool     // that job was deleted here and can still be brought back
	merged   *job.Job // both together: what stands in one alone is lost from neither
	Record   string   // what was read: a newer program's record is kept as it is
	Problems []job.Problem
	Blocked  Trouble           // why it cannot be kept over what there is
	ahead    countdown.Instant // the latest of its times, where by this phone's clock that is still to come; 0: none is
}

// Look reads a file's text.
func Look(text string) *Preview {
	j, problems := job.Read(text)
	return &Preview{New: j, Record: text, Problems: problems}
}

// LookPacked reads the fragment of a link.
func LookPacked(fragment string) *Preview {
	j, problems := job.Unpack(fragment)
	p := &Preview{New: j, Problems: problems}
	if j != nil {
		p.Record = job.Write(j)
	}
	return p
}

// Against compares it with what is kept of the same job, nil for nothing.
func (p *Preview) Against(old *job.Job, now countdown.Instant) {
	p.Old, p.ahead = old, 0
	if p.New != nil {
		// A clock may be out by a zone; by more than a day it is wrong, or somebody would have the last word.
		if last := p.New.Latest(); last-now > day {
			p.ahead = last
		}
	}
	switch {
	case old == nil || p.New == nil:
	case old.Newer != 0 || p.New.Newer != 0:
		p.Blocked = NewerJob
	default:
		p.merged, p.Problems = job.Merge(old, p.New, now)
	}
}

// mostProblems and mostNew are how many lines of what is wrong and of what is new are shown. What changes or goes is shown always, all of it:
// what is to be hidden must not be put under many others.
const mostProblems, mostNew = 12, 40

const day = 24 * 60 * minute

func (p *Preview) html(b *Book) string {
	w := b.writer()
	w.put(`<section class="job-section job-preview" role="status"><h2>%</h2>`, "Before anything changes")
	switch {
	case p.New == nil:
		w.put(`<p>%</p>`, "This cannot be read as a job, and nothing was changed.")
		b.problems(w, p.Problems)
	case p.Old == nil:
		w.Put(`<p dir="auto"><b>%</b> %</p><p>%</p>`, p.New.Name, p.New.Place, b.Reader.Line(words.Say("A job that is not on this phone: sums {sums}, mixes {mixes}, contact checks {checks}, notes {notes}.",
			count("sums", len(p.New.Entries)), count("mixes", len(p.New.Mixes)), count("checks", len(p.New.Checks)), count("notes", len(p.New.Notes)))))
	default:
		w.Put(`<p dir="auto"><b>%</b> %</p>`, p.Old.Name, p.Old.Place)
		if p.Gone {
			w.put(`<p class="note">%</p>`, "This job was deleted here. Taking this over brings it back, with all that it had.")
		}
		if p.merged != nil {
			b.changes(w, job.Diff(p.Old, p.merged))
		}
		b.problems(w, p.Problems)
	}
	if p.ahead != 0 {
		w.Put(`<div class="caution caution-care"><b>%</b> %`, b.Reader.Word("Take care"), b.Reader.Line(words.Say(
			"By this phone’s clock this holds a time that is still to come: {when}. A clock was wrong, or somebody changed it by hand.", words.Also("when", b.stamp(p.ahead)))))
		if p.merged != nil {
			w.put(` %`, "Where both hold something else, the later time decides. Look at each line here before you take it.")
		}
		w.Put(`</div>`)
	}
	if p.New != nil && p.New.Newer != 0 {
		w.put(`<p class="note">%</p>`, "It was written by a newer Setbook. It is kept as it is and can only be looked at here.")
	}
	w.Put(`<div class="count-acts">`)
	switch {
	case p.New == nil:
	case p.Old == nil:
		w.do("take", "", "Keep this job", "")
	case p.Blocked != None:
		w.Put(`<p>%</p>`, b.Reader.Word(p.Blocked.Says()))
	default:
		if p.merged != nil {
			w.do("take", "", "Make these changes", "")
		}
		w.do("take-copy", "", "Keep it beside, as a copy", "")
	}
	w.do("leave", "", "Leave it", "")
	w.Put(`</div></section>`)
	return w.String()
}

func count(name string, n int) *words.Arg { return words.Is(name, unit.Count(n), unit.Whole1) }

// problems lists what is wrong.
func (b *Book) problems(w *writer, list []job.Problem) {
	w.Put(`<ul class="job-changes">`)
	for i := range list[:min(len(list), mostProblems)] {
		w.Put(`<li>%</li>`, b.Reader.Line(list[i].Says))
	}
	w.Put(`</ul>`)
}

// changes lists what would change.
func (b *Book) changes(w *writer, list []job.Change) {
	if len(list) == 0 {
		w.put(`<p>%</p>`, "There is no difference.")
		return
	}
	// What changes or goes comes before what is new.
	var said, fresh []string
	for i := range list {
		if line := b.Reader.Line(list[i].Says); list[i].New {
			fresh = append(fresh, line)
		} else {
			said = append(said, line)
		}
	}
	shown := min(len(fresh), mostNew)
	b.lines(w, append(said, fresh[:shown]...))
	if rest := fresh[shown:]; len(rest) > 0 {
		w.Put(`<details class="fold job-fold" data-fold="changes"><summary>%</summary><div>`, b.Reader.Line(words.Say("And {count} more that are new.", count("count", len(rest)))))
		b.lines(w, rest)
		w.unfold()
	}
}

func (b *Book) lines(w *writer, list []string) {
	w.Put(`<ul class="job-changes">`)
	for _, line := range list {
		w.Put(`<li dir="auto">%</li>`, line)
	}
	w.Put(`</ul>`)
}

// Taken is the job to keep, once it was said so: over the one that is kept (its revision is the one to compare with), or beside it
// under another ID. A record of a newer program is not for Write: Record holds it.
func (p *Preview) Taken(b *Book, fresh string, beside bool) *job.Job {
	c := *p.New
	switch {
	case c.Newer != 0:
	case beside:
		v := NewView(b, &c, Work)
		v.Copy(fresh)
		return v.Job
	case p.merged != nil:
		c = *p.merged
		c.Revision = p.Old.Revision
	default:
		c.Revision = 0
	}
	return &c
}
