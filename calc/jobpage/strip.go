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
	Other   bool   // the address held other figures than the job: they were not taken
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
	case s.Trouble == Gone && s.Removed():
		w.put(`<span>%</span>`, "Not saved: this sum was removed from the job on another page. It can be added again.")
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
	if s.Other && s.Trouble == None {
		w.put(`<span>%</span>`, "Shown as the job keeps it; the link held other figures.")
	}
	w.Put(`</p>`)
	switch s.Trouble {
	case None:
		if s.Entry == "" {
			w.do("add", "", "Add to this job", s.Job.Name)
		}
		return w.String()
	case Conflict:
		w.do("add", "", "Add mine as another", "")
	case Gone:
		if s.Removed() {
			w.do("add", "", "Add to this job", s.Job.Name)
		}
	case Full, Failed, TooLarge, Unfit:
		w.do("again", "", "Try again", "")
	}
	w.do("file", "", "Save as a file", "") // of the job with this sum in it
	return w.String()
}

// Fed is the link of the entry that the page was opened with, as the job keeps it, with the job's weather in it; "" where there is none.
func (s *Strip) Fed() string {
	for _, e := range s.Job.Entries {
		if e.ID == s.Entry {
			return NewView(s.Book, s.Job, Work).fed(e)
		}
	}
	return ""
}

// With is the job with the sum of the page in it, whatever another page has made of that sum: what is handed on as a file.
func (s *Strip) With(calculator, link string, now countdown.Instant) *job.Job {
	j, own := s.Job.Clone(), *s
	own.Known = ""
	for _, e := range j.Entries {
		if e.ID == s.Entry {
			own.Known = e.Link
		}
	}
	own.Put(j, calculator, link, now)
	return j
}

// Open finds the entry that the page was opened with, and gives its link; "" where the job has no such entry of that calculator.
func (s *Strip) Open(entry, calculator string) {
	for _, e := range s.Job.Entries {
		if e.ID == entry && e.Calculator == calculator {
			s.Entry, s.Known = entry, e.Link
		}
	}
}

// Removed reports whether the sum of the page was in the job, and no longer is.
func (s *Strip) Removed() bool { return s.Known != "" && s.Fed() == "" }

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
