package jobpage

import (
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/qr"
	"setbook/calc/words"
)

// FileName is a name for the job's file that every file system takes.
func FileName(j *job.Job) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			return r
		case 'A' <= r && r <= 'Z':
			return r + 'a' - 'A'
		}
		return '-'
	}, j.Name)
	parts := strings.FieldsFunc(name, func(r rune) bool { return r == '-' })
	at := j.Changed.At(0)
	year, month, day := at.Date.Civil()
	return "setbook-" + strings.Join(append(parts, countdown.Pad(year, 4), countdown.Pad(month, 2), countdown.Pad(day, 2)), "-") + ".json"
}

// Code draws a link as a code to be scanned. It reports false where the link is too long for one. It is black on white on any page:
// a camera reads no other.
func (b *Book) Code(text string) (string, bool) {
	c, ok := qr.Of(text)
	if !ok {
		return "", false
	}
	w := b.writer()
	w.Put(`<svg class="job-code" viewBox="%" role="img" aria-label="%"><rect width="100%" height="100%" fill="white"/><path fill="black" d="%"/></svg>`,
		c.Box(), w.r.Word("A code that holds the whole job"), "%", "%", c.Path())
	return w.String(), true
}

// Absent is the page of a job that is not here.
func (b *Book) Absent(asked bool, t Trouble) string {
	w := b.writer()
	says := words.Msg("No job is open. Choose one from the list, or begin one.")
	switch {
	case t != None:
		says = t.Says()
	case asked:
		says = "This job is not on this phone. It was never here, was deleted for good, or the browser cleared what it kept for this site. Its file or link brings it back."
	}
	w.put(`<h1>%</h1>`, "Jobs")
	w.Put(`<div class="job-trouble"><p>%</p><div class="count-acts"><a class="button" href="%jobs/">%</a></div></div>`, w.r.Word(says), b.Root, w.r.Word("To the list of jobs"))
	return w.String()
}

// Broken is the page of a job whose record cannot be read, which can still be handed on.
func (b *Book) Broken(problems []job.Problem) string {
	w := b.writer()
	w.put(`<h1>%</h1>`, "Jobs")
	w.put(`<div class="job-trouble" role="alert"><p>%</p>`, "The record of this job cannot be read here. It is left as it is, and can be handed on as a file.")
	b.problems(w, problems)
	w.Put(`<div class="count-acts">`)
	w.do("file", "", "Save as a file", "")
	w.Put(`</div></div>`)
	return w.String()
}
