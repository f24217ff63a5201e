// Package jobpage writes jobs as HTML: the list of them, one job at work, its hand-over sheet, its order, and what an import
// would change. It holds what is typed on such a page and changes the record by it; it knows neither browser nor storage.
package jobpage

import (
	"slices"
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/link"
	"setbook/calc/markup"
	"setbook/calc/page"
	"setbook/calc/words"
)

// Book is what every page of jobs is written with.
type Book struct {
	page.Board // the reader, the way to the contents page, the phone's offset from UTC
	Find       job.Find
	All        []*calc.Calculator // in the order of the work
	Version    string             // of this Setbook
	Lasting    Lasting            // what the browser says of how long it keeps what is stored
	Back       int                // jobs that the browser had lost and that came back from the second copy
}

// Mode is what a job's page shows of it.
type Mode uint8

// The modes.
const (
	Work Mode = iota
	HandOver
	Order
)

// View is one job on a page.
type View struct {
	*Book
	Job     *job.Job
	Mode    Mode
	Trouble Trouble                // why it is not kept as it stands
	Base    *job.Job               // as it was last read or kept: what is changed here is what differs from it
	Unkept  bool                   // something was changed that no save has taken with it yet
	Saving  bool                   // it is on its way to the storage
	SavedAt countdown.Instant      // when the browser last said that it is kept; 0: not since the page was opened
	Phone   []*countdown.Countdown // those that run on this phone, in this job or not
	Theirs  *job.Job               // what another page made of it, where the two differ
	Unfit   []job.Problem          // why it could not be read again
	Raw     string                 // the record as it was read: one of a newer program is handed on as it is

	typed   map[string]string            // what stands in a field and is not in the record as it was typed
	wrong   map[string]words.Line        // what is wrong with it
	entered map[string]countdown.Instant // when each reading of the weather was entered on this page
	shot    string                       // the picture of the check that is being written; "": none
	Back    string                       // where what was brought back last stands: "mixes/ID"
	shoots  map[string]*Shoot            // pictures that are being read, by their check
	lost    []lost                       // what was removed and can be brought back, the last one last
	tight   bool                         // there was no room for what was to be brought back
	whole   bool                         // the whole log is shown

	solved map[string]*calc.Sheet // what was worked out, by calculator and entry
}

// NewView shows a job.
func NewView(b *Book, j *job.Job, m Mode) *View {
	return &View{Book: b, Job: j, Base: j.Clone(), Mode: m, typed: map[string]string{}, wrong: map[string]words.Line{}, entered: map[string]countdown.Instant{}, shoots: map[string]*Shoot{}}
}

// writer is markup with its reader.
type writer struct {
	markup.Writer
	r words.Reader
}

func (b *Book) writer() *writer { return &writer{r: b.Reader} }

// put writes markup with messages in the places.
func (w *writer) put(made string, messages ...words.Msg) {
	values := make([]string, len(messages))
	for i, m := range messages {
		values[i] = w.r.Word(m)
	}
	w.Put(made, values...)
}

// do writes a button. About says for whom it is, where the words alone do not.
func (w *writer) do(do, id string, says words.Msg, about string) {
	said, label := w.r.Word(says), ""
	if about != "" {
		label = said + ": " + about
	}
	w.Put(`<button type="button" data-job-do="%" data-job-id="%" aria-label="%">%</button>`, do, id, label, said)
}

func (w *writer) part(name, made string) {
	w.Put(`<div class="job-part" data-part="%">`, name)
	w.Markup(made)
	w.Put(`</div>`)
}

// fold begins what can be folded away; the caller ends it with unfold.
func (w *writer) fold(name string, title words.Msg) {
	w.Put(`<details class="fold job-fold" data-fold="%"><summary>%</summary><div>`, name, w.r.Word(title))
}

func (w *writer) unfold() { w.Put(`</div></details>`) }

// region is a part of the page that is written anew as the job changes.
type region struct {
	name string
	html func(now countdown.Instant) string
}

func (v *View) regions() []region {
	kept := region{"kept", v.kept}
	switch v.Mode {
	case HandOver:
		return []region{kept, {"sheet", v.sheet}, {"materials", v.materials}}
	case Order:
		return []region{kept, {"order", v.order}}
	}
	return []region{kept, {"title", v.title}, {"undo", v.undone}, {"day", v.day}, {"sums", v.sums},
		{"mixes", v.mixes}, {"picture", v.pending}, {"checks", v.checks}, {"notes", v.notes}}
}

// Parts is every region of the page, and what is said under each field.
func (v *View) Parts(now countdown.Instant) []page.Part {
	var parts []page.Part
	for _, r := range v.regions() {
		parts = append(parts, page.Part{Name: r.name, HTML: r.html(now)})
	}
	return append(parts, v.Notes()...)
}

// Notes is what is said under each field: all that typing changes where it changes no record.
func (v *View) Notes() []page.Part {
	parts := v.Names()
	for i := range fields {
		f := &fields[i]
		parts = append(parts, page.Part{Name: "note-" + f.key, HTML: v.note(f)})
	}
	return parts
}

// HTML is the whole page.
func (v *View) HTML(now countdown.Instant) string {
	w := v.writer()
	w.part("kept", v.kept(now))
	switch v.Mode {
	case HandOver:
		v.sheetFrame(w, now)
	case Order:
		v.way(w)
		w.part("order", v.order(now))
	default:
		v.workFrame(w, now)
	}
	return w.String()
}

func (v *View) readOnly() bool { return v.Job.Newer != 0 || v.Trouble == NewerBase }

// kept says whether the job is kept as it stands, and offers what helps where it is not.
func (v *View) kept(now countdown.Instant) string {
	w := v.writer()
	switch {
	case v.Trouble != None:
		w.Put(`<div class="job-trouble" role="alert"><p>%</p>`, v.Reader.Word(v.Trouble.Says()))
		if v.Trouble == Conflict && v.Theirs != nil {
			w.put(`<p class="job-changes-head">%</p>`, "What the other page has, against yours:")
			v.changes(w, job.Diff(v.Job, v.Theirs))
		}
		if v.Trouble == Unfit {
			v.problems(w, v.Unfit)
		}
		w.Put(`<div class="count-acts">`)
		switch v.Trouble {
		case Conflict:
			if v.Theirs != nil {
				w.do("both", "", "Put both together", "")
				w.do("theirs", "", "Take the other page’s", "")
			}
			w.do("mine", "", "Keep mine as a copy", "")
		case Gone:
			w.do("again", "", "Keep it again", "")
		case Full, Failed, TooLarge, Unfit:
			w.do("again", "", "Try again", "")
		}
		w.do("file", "", "Save as a file", "")
		w.Put(`</div></div>`)
	case v.Saving:
		w.put(`<p class="job-saved">%</p>`, "Saving…")
	case v.SavedAt != 0:
		w.Put(`<p class="job-saved">%</p>`, v.Reader.Line(words.Say("Saved {when}", words.Also("when", v.past(v.SavedAt, now)))))
	default:
		w.Put(`<p class="job-saved">%</p>`, v.Reader.Line(words.Say("Kept on this phone, last changed {when}", words.Also("when", v.past(v.Job.Changed, now)))))
	}
	w.Markup(v.lasting())
	return w.String()
}

// title is the head of a job.
func (v *View) title(countdown.Instant) string {
	w := v.writer()
	w.Put(`<h1 dir="auto">%</h1>`, v.Job.Name)
	if place := v.place(); place != "" {
		w.Put(`<p class="lede" dir="auto">%</p>`, place)
	}
	return w.String()
}

// place is the place of the job and its address, on one line.
func (v *View) place() string {
	if v.Job.Place == "" || v.Job.Address == "" {
		return v.Job.Place + v.Job.Address
	}
	return v.Job.Place + ", " + v.Job.Address
}

// undone offers to bring back what was removed last.
func (v *View) undone(countdown.Instant) string {
	if len(v.lost) == 0 {
		return ""
	}
	w := v.writer()
	w.Put(`<div class="count-gone job-undo" role="status"><p dir="auto">%`, v.Reader.Line(words.Say("Removed: {name}", words.Text("name", v.lost[len(v.lost)-1].name))))
	if v.tight {
		w.put(` <span class="note-bad">%</span>`, "There is no more room for it in this list. Remove something else first.")
	}
	w.Put(`</p>`)
	w.do("undo", "", "Bring it back", "")
	w.Put(`</div>`)
	return w.String()
}

// Href is where a job is opened, in a mode.
func (b *Book) Href(id string, m Mode) string {
	return b.Root + "job/#job=" + id + [...]string{Work: "", HandOver: "&view=hand-over", Order: "&view=order"}[m]
}

// sumHref is where a calculator is opened for a job: with an entry of it, or to begin one ("").
func (v *View) sumHref(calculator, entry, text string) string {
	at := v.Root + calculator + "/?job=" + v.Job.ID
	if entry != "" {
		at += "&entry=" + entry
	}
	if text != "" {
		at += "#" + text
	}
	return at
}

// At is what an address asks for: the job and what to show of it.
func At(fragment string) (id string, m Mode) {
	pairs, _ := link.Parse(fragment)
	switch pairs["view"] {
	case "hand-over":
		m = HandOver
	case "order":
		m = Order
	}
	return pairs["job"], m
}

// habit is how the reader writes.
func (b *Book) habit() calc.Habit {
	h := calc.Habit{Decimal: b.Reader.Style.Decimal, System: b.Reader.Style.System}
	if h.Decimal == 0 {
		h.Decimal = '.'
	}
	return h
}

// shown is a quantity of the record as the reader reads it.
func (b *Book) shown(in *calc.Input, text string) string {
	if text == "" {
		return ""
	}
	if shown, ok := in.Offered(text, b.Reader.Style); ok {
		return shown
	}
	return text
}

// join puts together what is there, parted by middle dots.
func join(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), " · ")
}

// past says an instant that has gone by, as the phone's clock showed it then: to the started minute, where the end of a wait is shown
// to the one that follows.
func (b *Book) past(at, now countdown.Instant) words.Line { return b.When(at-at%minute, now) }

// stamp says it in full, for paper.
func (b *Book) stamp(at countdown.Instant) words.Line { return b.Stamp(at - at%minute) }

const minute = 60_000 // milliseconds
