package jobpage

import (
	"slices"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/markup"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// List is the page of all jobs.
type List struct {
	*Book
	Heads   []Head
	Unread  int     // jobs whose heads only a newer program reads
	Trouble Trouble // why nothing is kept, or no more
	Ready   bool    // the storage has answered
	Query   string
	Before  bool     // entries or countdowns from before there were jobs are kept
	Preview *Preview // of what would be imported
	Sure    string   // the ID of the deleted job of which it is asked whether it is to go for good

	long [len(newFields)]words.Line // what is wrong with each field of a new job
}

// newFields are those of a job that begins.
var newFields = [...]struct {
	key   string
	label words.Msg
	most  int
}{{"name", "Name of the job", job.MaxName}, {"place", "Place", job.MaxLine}}

// Type takes what a field holds.
func (l *List) Type(key, text string) {
	if key == "query" {
		l.Query = text
	}
	for i := range newFields {
		if f := &newFields[i]; f.key == key {
			l.long[i] = tooLong(job.Clean(text, len(text)), f.most)
		}
	}
}

// Wants is the key of a field of the new job that is to be put right first, or "".
func (l *List) Wants() string {
	for i := range l.long {
		if l.long[i].Msg != "" {
			return newFields[i].key
		}
	}
	return ""
}

// note says what is wrong with a field of the new job.
func (l *List) note(i int) string { return l.wrongly(l.long[i]) }

// HTML is the whole page.
func (l *List) HTML(now countdown.Instant) string {
	w := l.writer()
	w.part("kept", l.kept())
	w.part("preview", l.preview())
	w.Put(`<div class="asks job-pairs"><div class="field"><label for="jobs-query">%</label><input id="jobs-query" type="search" data-jobs-field="query" value="%" autocomplete="off" enterkeyhint="search"></div></div>`,
		l.Reader.Word("Search by name, place or sum"), l.Query)
	w.part("found", l.found(now))
	w.Put(`<section class="job-section">`)
	w.put(`<h2>%</h2><div class="asks job-pairs">`, "A new job")
	for _, f := range newFields {
		w.Put(`<div class="field"><label for="jobs-%">%</label><input id="jobs-%" type="text" data-jobs-field="%" autocomplete="off" enterkeyhint="done" aria-describedby="jobs-%-note"><p class="note" id="jobs-%-note" data-part="new-%"></p></div>`,
			f.key, l.Reader.Word(f.label), f.key, f.key, f.key, f.key, f.key)
	}
	w.Put(`<div class="job-add"><button type="button" class="job-main" data-job-do="new">%</button></div></div></section><section class="job-section">`, l.Reader.Word("Begin the job"))
	w.put(`<h2>%</h2><p class="note">%</p><div class="count-acts">`, "From somewhere else", "A job’s file is shown first, with what it would change. Nothing changes until you say so.")
	w.Put(`<label class="button job-file"><input type="file" accept=".json,application/json" data-job-file><span>%</span></label>`, l.Reader.Word("Open a job’s file"))
	w.do("demo", "", "Try with a demo job", "")
	w.Put(`</div></section>`)
	w.part("before", l.before())
	w.part("gone", l.gone(now))
	return w.String()
}

// Parts is every region that changes.
func (l *List) Parts(now countdown.Instant) []page.Part {
	return []page.Part{{Name: "kept", HTML: l.kept()}, {Name: "preview", HTML: l.preview()}, {Name: "found", HTML: l.found(now)},
		{Name: "before", HTML: l.before()}, {Name: "gone", HTML: l.gone(now)},
		{Name: "new-name", HTML: l.note(0)}, {Name: "new-place", HTML: l.note(1)}}
}

func (l *List) kept() string {
	w := l.writer()
	if l.Trouble != None {
		w.Put(`<div class="job-trouble" role="alert"><p>%</p></div>`, l.Reader.Word(l.Trouble.Says()))
	}
	if l.Unread > 0 {
		w.Put(`<p class="note">%</p>`, l.Reader.Line(words.Say("Jobs kept here that only a newer Setbook reads: {count}. They are left as they are.", words.Is("count", unit.Count(l.Unread), unit.Whole1))))
	}
	w.Markup(l.lasting())
	return w.String()
}

func (l *List) preview() string {
	if l.Preview == nil {
		return ""
	}
	return l.Preview.html(l.Book)
}

// found lists the jobs that the search leaves.
func (l *List) found(now countdown.Instant) string {
	w := l.writer()
	var all []job.Summary
	for _, h := range l.Heads {
		if h.Gone == 0 {
			all = append(all, h.Summary)
		}
	}
	list := job.Search(all, l.Query)
	switch {
	case !l.Ready && l.Trouble == None:
	case len(all) == 0:
		w.put(`<p class="note">%</p>`, "No job on this phone yet.")
	case len(list) == 0:
		w.put(`<p class="note">%</p>`, "No job has all of these words.")
	}
	w.Put(`<ul class="job-list">`)
	for _, s := range list {
		w.Put(`<li><a class="entry" href="%" data-job="%"><span class="entry-title" dir="auto">%</span> <span class="entry-asks" dir="auto">%</span></a></li>`,
			l.Href(s.ID, Work), s.ID, s.Name, join(s.Place, l.Reader.Line(words.Say("changed {when}", words.Also("when", l.past(s.Changed, now))))))
	}
	w.Put(`</ul>`)
	return w.String()
}

// before offers to make a job of what the phone kept before there were jobs.
func (l *List) before() string {
	if !l.Before || slices.ContainsFunc(l.Heads, func(h Head) bool { return h.Gone == 0 }) {
		return ""
	}
	w := l.writer()
	w.put(`<section class="job-section"><h2>%</h2><p class="note">%</p><div class="count-acts">`, "Already on this phone", "The last entry of each sum and the countdowns that run can be gathered into a job. They stay where they are, too.")
	w.do("gather", "", "Make a job of them", "")
	w.Put(`</div></section>`)
	return w.String()
}

// tenMinutes is how long what was deleted is shown unfolded.
const tenMinutes = 600_000

// gone lists the jobs that were deleted and can be brought back.
func (l *List) gone(now countdown.Instant) string {
	rows, lately := l.writer(), false
	for _, h := range l.Heads {
		if h.Gone == 0 {
			continue
		}
		rows.Put(`<li class="count-gone job-gone"><p dir="auto">%</p><div class="count-acts">`, join(h.Name, l.Reader.Line(words.Say("deleted {when}", words.Also("when", l.past(h.Gone, now))))))
		rows.do("back", h.ID, "Bring it back", h.Name)
		if h.ID != l.Sure {
			rows.do("erase", h.ID, "Delete for good", h.Name)
			rows.Put(`</div></li>`)
		} else {
			// What keeps the job stands where the first press fell: a glove that presses twice has kept it.
			rows.do("spare", h.ID, "Keep it", h.Name)
			rows.Put(`</div><div class="job-trouble"><p role="alert">%</p><div class="count-acts job-add"><button type="button" data-job-do="erase-sure" data-job-id="%">%</button></div></div></li>`,
				l.Reader.Word("Nothing brings it back then, unless you have its file."), h.ID, l.Reader.Line(words.Say("Really delete {name} for good", words.Text("name", job.Clean(h.Name, 40)))))
		}
		lately = lately || now-h.Gone < tenMinutes
	}
	if rows.String() == "" {
		return ""
	}
	w := l.writer()
	w.Put(`<details class="fold job-fold" data-fold="gone" open="%"><summary>%</summary><div><ul class="job-log">`, markup.If(lately, "open"), l.Reader.Word("Deleted jobs"))
	w.Markup(rows.String())
	w.Put(`</ul>`)
	w.unfold()
	return w.String()
}

// New is a job that begins now. It reports false where it has no name, or one or a place that is too long.
func (b *Book) New(id, name, place string, now countdown.Instant) (*job.Job, bool) {
	j := &job.Job{ID: id, Name: job.Clean(name, len(name)), Place: job.Clean(place, len(place)), Created: now, Changed: now}
	return j, j.Name != "" && tooLong(j.Name, job.MaxName).Msg == "" && tooLong(j.Place, job.MaxLine).Msg == ""
}

// Gathered is the name of a job that is made of what the phone kept before there were jobs.
func (b *Book) Gathered() string { return b.Reader.Word("What was on this phone") }
