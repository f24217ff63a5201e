package jobpage

import (
	"strconv"
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/link"
)

// Head is what is kept of a job beside its record: what a list shows of it, and the revision that a save is compared with. It
// spares reading a whole record where only that is wanted.
type Head struct {
	job.Summary
	Revision int64
	Gone     countdown.Instant // when it was deleted, and can still be brought back; 0: it was not
}

// headVersion is written into every head. A head of another version is left alone, for the program that wrote it.
const headVersion = "1"

// HeadOf is the head of a job as it stands.
func HeadOf(j *job.Job) Head { return Head{Summary: job.Summarise(j), Revision: j.Revision} }

// Text writes a head as it is kept, without the job's ID, which is its key.
func (h *Head) Text() string {
	entries := make([]string, len(h.Entries))
	for i, name := range h.Entries {
		entries[i] = link.Escape(name)
	}
	return "head=" + headVersion + "&revision=" + strconv.FormatInt(h.Revision, 10) + "&changed=" + strconv.FormatInt(int64(h.Changed), 10) +
		"&gone=" + strconv.FormatInt(int64(h.Gone), 10) + "&name=" + link.Escape(h.Name) + "&place=" + link.Escape(h.Place) +
		"&entries=" + link.Escape(strings.Join(entries, "|"))
}

// ReadHead reads what Text wrote. It reports false for anything else: a head of a newer program is not guessed at.
func ReadHead(id, text string) (Head, bool) {
	pairs, problems := link.Parse(text)
	revision, wrong := strconv.ParseInt(pairs["revision"], 10, 64)
	changed, wrongToo := strconv.ParseInt(pairs["changed"], 10, 64)
	gone, wrongThree := strconv.ParseInt(pairs["gone"], 10, 64)
	if len(problems) > 0 || wrong != nil || wrongToo != nil || wrongThree != nil {
		return Head{}, false
	}
	h := Head{Summary: job.Summary{ID: id, Name: pairs["name"], Place: pairs["place"], Changed: countdown.Instant(changed)},
		Revision: revision, Gone: countdown.Instant(gone)}
	if pairs["entries"] != "" {
		for _, name := range strings.Split(pairs["entries"], "|") {
			inner, _ := link.Parse("x=" + name)
			h.Entries = append(h.Entries, inner["x"])
		}
	}
	return h, h.Text() == text
}

// Revived is the revision to compare with for a job that is to be kept again in the place of one that was deleted or cleared.
const Revived = -1

// May tells whether a job that was read at a revision (0: it is new) may be kept over what is kept now, "" for nothing: None, or why not.
func May(id, kept string, was int64) Trouble {
	h, ok := ReadHead(id, kept)
	switch {
	case kept == "" && was <= 0:
		return None
	case kept == "":
		return Gone
	case !ok:
		return NewerJob
	case h.Gone != 0 && was == Revived:
		return None
	case h.Gone != 0:
		return Gone
	case h.Revision != was:
		return Conflict
	}
	return None
}

// Side is which of two copies of a job is ahead of the other.
type Side uint8

// The sides.
const (
	Neither Side = iota
	First
	Second
)

// Ahead compares the heads of two copies, "" for none: the second is ahead only where it holds a later save, or the first holds
// nothing. What is a newer program's is not judged.
func Ahead(id, first, second string) Side {
	a, okA := ReadHead(id, first)
	b, okB := ReadHead(id, second)
	switch {
	case first == second:
		return Neither
	case first == "" || okA && okB && b.Revision > a.Revision && a.Gone == 0:
		return Second
	case second != "" && !okB:
		return Neither
	}
	return First
}
