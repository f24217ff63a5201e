package jobpage

import (
	"strings"

	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// shortLog is how many lines of each log are shown until the rest is asked for: a phone need not lay out two thousand.
const shortLog = 12

// removes is what the button says that takes a line out of each log.
var removes = map[string]words.Msg{"mixes": "Remove the mix", "checks": "Remove the check", "notes": "Remove the note"}

// rows writes a log, the newest line first.
func (v *View) rows(w *writer, list string, count int, row func(i int) (id, head, text string), more func(w *writer, i int)) {
	if count == 0 {
		w.put(`<p class="note">%</p>`, "Nothing in this log yet.")
		return
	}
	shown := count
	if !v.whole {
		shown = min(count, shortLog)
	}
	w.Put(`<ul class="job-log">`)
	for i := count - 1; i >= count-shown; i-- {
		id, head, text := row(i)
		w.Put(`<li class="count"><details data-fold="%-%"><summary><span class="count-what"><b class="count-name" dir="auto">%</b> <span class="count-ends" dir="auto">%</span></span></summary>`, list, id, head, text)
		if more != nil {
			more(w, i)
		}
		w.Put(`<div class="count-acts">`)
		v.dropAs(w, removes[list], list+"/"+id, head)
		w.Put(`</div></details></li>`)
	}
	w.Put(`</ul>`)
	if shown < count {
		w.Put(`<p><button type="button" data-job-do="more">%</button></p>`, w.r.Line(words.Say("Show all {count} lines", words.Is("count", unit.Count(count), unit.Whole1))))
	}
}

func (v *View) mixes(now countdown.Instant) string {
	w := v.writer()
	v.rows(w, "mixes", len(v.Job.Mixes), func(i int) (id, head, text string) {
		m := &v.Job.Mixes[i]
		return m.ID, join(v.amount(m.Amount), m.Product, v.lot(m.Lot)), join(v.Reader.Line(v.past(m.When, now)),
			v.reading("Air", v.shown(job.Air.Input, m.Air)), v.reading("Surface", v.shown(job.Surface.Input, m.Surface)), m.Note)
	}, nil)
	return w.String()
}

// amount is that of a mix as the reader reads it.
func (v *View) amount(text string) string {
	if count, ok := (&job.Mix{Amount: text}).Bags(); ok {
		return v.bags(count)
	}
	return v.shown(job.Powder.Input, text)
}

// bags says a number of bags, one of them too.
func (v *View) bags(count unit.Number) string {
	says := words.Msg("{count} bags")
	if count == 1 {
		says = "{count} bag"
	}
	return v.Reader.Line(words.Say(says, words.Is("count", count, unit.Bare)))
}

// bagWords are the reader's own words for one bag and for more.
func (v *View) bagWords() [2]string {
	word := func(count unit.Number, figure string) string {
		return strings.ToLower(strings.TrimSpace(strings.Replace(v.bags(count), figure, "", 1)))
	}
	return [2]string{word(1, "1"), word(2, "2")}
}

func (v *View) lot(lot string) string {
	if lot == "" {
		return ""
	}
	return v.Reader.Line(words.Say("lot {lot}", words.Text("lot", lot)))
}

func (v *View) reading(label words.Msg, text string) string {
	if text == "" {
		return ""
	}
	return v.Reader.Word(label) + " " + text
}

func (v *View) checks(now countdown.Instant) string {
	w := v.writer()
	v.rows(w, "checks", len(v.Job.Checks), func(i int) (id, head, text string) {
		c := &v.Job.Checks[i]
		pictured := ""
		if c.Picture != "" {
			pictured = v.Reader.Word("with a picture")
		}
		return c.ID, join(v.shown(job.Contact.Input, c.Contact), c.Where), join(v.Reader.Line(v.past(c.When, now)), c.Corners, c.Note, pictured)
	}, func(w *writer, i int) { v.pictureOf(w, &v.Job.Checks[i]) })
	return w.String()
}

func (v *View) notes(now countdown.Instant) string {
	w := v.writer()
	v.rows(w, "notes", len(v.Job.Notes), func(i int) (id, head, text string) {
		n := &v.Job.Notes[i]
		return n.ID, n.Text, v.Reader.Line(v.past(n.When, now))
	}, nil)
	return w.String()
}
