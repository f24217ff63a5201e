package jobpage

import (
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/words"
)

// Strip stands over a calculator and says what it has to do with a job. The rule: a sum that was opened from a job, or was added to one, is
// kept in it as it changes; any other sum is added by a press.
type Strip struct {
	*Book
	Job     *job.Job
	Entry   string // the ID of the entry that is kept; "": it is not in the job yet
	Known   string // the entry's link as this page last read or kept it
	Trouble Trouble
	Saving  bool
	SavedAt countdown.Instant
}

// HTML is everything inside the strip.
func (s *Strip) HTML(now countdown.Instant) string {
	w := s.writer()
	w.Put(`<p class="strip-says"><a class="strip-job" href="%" dir="auto">%</a> `, s.Href(s.Job.ID, Work), s.Job.Name)
	switch {
	case s.Trouble == Conflict:
		w.put(`<span>%</span>`, "Not saved: this sum was changed on another page of this phone. Yours can be added as another one.")
	case s.Trouble != None:
		w.put(`<span>%</span>`, s.Trouble.Says())
	case s.Entry == "":
	case s.Saving:
		w.put(`<span>%</span>`, "Saving…")
	case s.SavedAt != 0:
		w.Put(`<span>%</span>`, w.r.Line(words.Say("Saved in the job {when}", words.Also("when", s.past(s.SavedAt, now)))))
	default:
		w.put(`<span>%</span>`, "What you change is kept in the job.")
	}
	w.Put(`</p>`)
	switch {
	case s.Trouble == Conflict:
		w.do("add", "", "Add mine as another", "")
	case s.Trouble == None && s.Entry == "":
		w.do("add", "", "Add to this job", s.Job.Name)
	}
	return w.String()
}

// Open finds the entry that the page was opened with, and gives its link; "" where the job has no such entry of that calculator.
func (s *Strip) Open(entry, calculator string) {
	for _, e := range s.Job.Entries {
		if e.ID == entry && e.Calculator == calculator {
			s.Entry, s.Known = entry, e.Link
		}
	}
}

// Put puts the entry of the page into a job, which may have been read anew. Where another page has changed that very entry since, it
// is refused.
func (s *Strip) Put(j *job.Job, calculator, link string, now countdown.Instant) Trouble {
	for i := range j.Entries {
		e := &j.Entries[i]
		if e.ID != s.Entry {
			continue
		}
		if e.Link != s.Known {
			return Conflict
		}
		e.Link, e.Changed = link, now
		return None
	}
	if s.Known != "" {
		return Gone // it was in the job, and was removed on another page
	}
	if len(j.Entries) >= job.MaxEntries {
		return TooLarge
	}
	j.Entries = append(j.Entries, job.Entry{ID: s.Entry, Calculator: calculator, Link: link, Changed: now})
	return None
}
