package page

import (
	"slices"

	"setbook/calc/countdown"
	"setbook/calc/markup"
	"setbook/calc/words"
)

// Board is the countdowns of a phone as they stand on every page, in the order of their ending. It is told what time it
// is and how far the phone's clock stands from UTC at an instant; it never asks.
type Board struct {
	Reader words.Reader
	Root   string                          // the contents page, relative to the page
	West   func(countdown.Instant) float64 // minutes behind UTC at an instant
	list   []*countdown.Countdown          // those removed among them, until the page is left
	gone   map[string]bool                 // removed, and can be brought back
	told   map[string]bool                 // was seen to be done
}

// Row is what changes in one countdown as time goes by. Each text is plain, not markup.
type Row struct {
	ID         string
	Left, Ends string
	Note       string // what is odd about it, or ""
	Date       string // in full, for paper
	Done       bool
	Today      bool
}

// Show takes what the store holds. What was removed on this page stays to be brought back.
func (b *Board) Show(kept []*countdown.Countdown, now countdown.Instant) {
	for _, c := range b.list {
		if b.gone[c.ID] && !slices.ContainsFunc(kept, func(k *countdown.Countdown) bool { return k.ID == c.ID }) {
			kept = append(kept, c)
		}
	}
	if b.told == nil {
		b.told, b.gone = map[string]bool{}, map[string]bool{}
	}
	for _, c := range kept {
		if _, seen := b.told[c.ID]; !seen {
			b.told[c.ID] = c.Done(now) // it was over before it came to this page: shown, not announced
		}
	}
	b.list = kept
	countdown.Order(b.list)
}

// Add puts a countdown that was just started among the others.
func (b *Board) Add(c *countdown.Countdown, now countdown.Instant) {
	b.Show(append(slices.Clone(b.list), c), now)
}

// Remove takes a countdown away, or brings it back.
func (b *Board) Remove(id string, gone bool) { b.gone[id] = gone }

// Running is every countdown that was not removed, done ones among them.
func (b *Board) Running() []*countdown.Countdown {
	return slices.DeleteFunc(slices.Clone(b.list), func(c *countdown.Countdown) bool { return b.gone[c.ID] })
}

// Empty reports whether there is nothing to show.
func (b *Board) Empty() bool { return len(b.list) == 0 }

// Find gives a countdown by its ID.
func (b *Board) Find(id string) (*countdown.Countdown, bool) {
	i := slices.IndexFunc(b.list, func(c *countdown.Countdown) bool { return c.ID == id })
	if i < 0 {
		return nil, false
	}
	return b.list[i], true
}

// Due is every countdown that came to its end since this was last asked, each once.
func (b *Board) Due(now countdown.Instant) (due []*countdown.Countdown) {
	for _, c := range b.Running() {
		if c.Done(now) && !b.told[c.ID] {
			due = append(due, c)
		}
		b.told[c.ID] = c.Done(now) // a clock that was set back brings it to its end a second time
	}
	return due
}

// Frame is everything inside the panel, written once: the list, what is announced, and what concerns all of them.
func (b *Board) Frame() string {
	w := &writer{r: b.Reader}
	w.put(`<h2>%</h2><ul data-part="list"></ul><p class="said" data-part="done" role="status"></p>`+
		`<p class="said" data-part="kept"></p><p class="said" data-part="back" role="status"></p>`+
		`<details class="fold count-more"><summary>%</summary><div><p>%</p><div class="count-acts">`+
		`<button type="button" data-count-do="awake" aria-pressed="false">%</button>`+
		`<button type="button" data-count-do="notify" aria-pressed="false">%</button></div>`+
		`<p class="said" data-part="asked" role="status"></p></div></details>`,
		"Countdowns", "A closed page cannot ring",
		"No page can promise to ring once it is closed or the phone sleeps. A calendar file can: press a countdown, save its file, and see that the phone’s calendar took the alert. The end itself is kept, whatever becomes of the page.",
		"Keep the screen on", "Notify me while the page is open")
	return w.String()
}

// List is the rows.
func (b *Board) List(now countdown.Instant) string {
	w := &writer{r: b.Reader}
	for _, c := range b.list {
		if b.gone[c.ID] {
			w.Put(`<li class="count count-gone" data-count="%"><p>%</p>`, c.ID, b.Reader.Line(words.Say("Removed: {name}", words.Text("name", c.Name))))
			b.button(w, c, "undo", "Bring it back")
			w.Put(`</li>`)
			continue
		}
		r := b.row(c, now)
		w.Put(`<li class="count" data-count="%" data-done="%" data-today="%"><details><summary><span class="count-what"><b class="count-name" dir="auto">%</b> `+
			`<strong class="count-left" data-says="left">%</strong> <span class="count-ends" data-says="ends">%</span> <span class="count-date" data-says="date">%</span></span></summary>`,
			c.ID, markup.If(r.Done, "true"), markup.If(r.Today, "true"), c.Name, r.Left, r.Ends, r.Date)
		w.Put(`<p class="note" data-says="note">%</p><div class="count-acts">`, r.Note)
		b.button(w, c, "calendar", "Calendar file")
		w.Put(`<a class="button" href="%%/#%">%</a>`, b.Root, c.Of, c.Entry, b.Reader.Word("Open the sum"))
		b.button(w, c, "remove", "Remove")
		w.Put(`</div></details></li>`)
	}
	return w.String()
}

// button writes a button that says for whom it is to those who do not see where it stands.
func (b *Board) button(w *writer, c *countdown.Countdown, do string, says words.Msg) {
	said := b.Reader.Word(says)
	w.Put(`<button type="button" data-count-do="%" aria-label="%: %">%</button>`, do, said, c.Name, said)
}

// Rows is what changes as time goes by.
func (b *Board) Rows(now countdown.Instant) []Row {
	var rows []Row
	for _, c := range b.Running() {
		rows = append(rows, b.row(c, now))
	}
	return rows
}

func (b *Board) row(c *countdown.Countdown, now countdown.Instant) Row {
	when, today := b.when(c.Until, now)
	r := Row{ID: c.ID, Done: c.Done(now), Today: today, Date: b.Reader.Line(b.date(b.wall(c.Until), true))}
	ends := words.Say("ends {when}", words.Also("when", when))
	left := Left(c.Left(now))
	if r.Done {
		ends = words.Say("ended {when}", words.Also("when", when))
		left = Ago(-c.Left(now))
	}
	if now < c.From {
		r.Note = b.Reader.Word("This phone’s clock is behind the start of this countdown. Look whether its date and time are right.")
	}
	r.Left, r.Ends = b.Reader.Line(left), b.Reader.Line(ends)
	return r
}

// Ends says when a wait would be over that were started now.
func (b *Board) Ends(c *countdown.Countdown, now countdown.Instant) string {
	when, _ := b.when(c.Until, now)
	return b.Reader.Line(words.Say("If you start it now, it ends {when}.", words.Also("when", when)))
}

// Started says that a countdown was started.
func (b *Board) Started(c *countdown.Countdown, now countdown.Instant) string {
	when, _ := b.when(c.Until, now)
	return b.Reader.Line(words.Say("Started: {name}, ends {when}. It stands at the top of every page.", words.Text("name", c.Name), words.Also("when", when)))
}

// Back says that countdowns were lost by the browser and brought back from their second copy.
func (b *Board) Back(count int) string {
	return b.Reader.Line(words.Say("The browser had lost what it kept for this site. Countdowns brought back from the second copy: {count}. Look at each: one that you had removed may be among them.", words.Text("count", digits(int64(count)))))
}

// Over says that a countdown is done: in the panel and in the phone's own notice.
func (b *Board) Over(c *countdown.Countdown) string {
	return b.Reader.Line(words.Say("Done: {name}", words.Text("name", c.Name)))
}

// Calendar is the calendar file of a countdown.
func (b *Board) Calendar(c *countdown.Countdown, now countdown.Instant) string {
	return countdown.Calendar(c, now, b.Reader.Word("The wait that was worked out is over. Try the work itself before you go on: the bag, the local code and the licensed person on the job come first."))
}
