package page

import (
	"strconv"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/datasheet"
	"setbook/calc/qr"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// CounterLinks lead to the pages about a counter.
func CounterLinks(r words.Reader) string {
	w := &writer{r: r}
	w.Put(`<ul class="told-links">`)
	for _, to := range [...]struct {
		path string
		says words.Msg
	}{
		{"embedding", "Put a calculator on your own page"}, {"datasheet", "Check and keep a data sheet"}, {"hosting", "Host the book yourself"},
	} {
		w.Put(`<li><a class="button" href="../%/">%</a></li>`, to.path, r.Word(to.says))
	}
	w.Put(`</ul>`)
	return w.String()
}

// clearAfter are the times after which a tablet may be cleared.
var clearAfter = [...]unit.Span{60, 120, 180, 300, 600}

// Manners is the control of the counter's manners on this device. The program fills in how it stands.
func Manners(r words.Reader) string {
	w := &writer{r: r}
	w.put(`<div class="manners" data-manners="off"><div class="field"><label for="manners-after">%</label><select id="manners-after">`, "Clear after")
	for _, s := range clearAfter {
		w.Put(`<option value="%">%</option>`, strconv.Itoa(int(s)), r.Style.Print(unit.Fig(s, unit.MinSpan)))
	}
	w.put(`</select></div><div class="actions"><button type="button" data-manners-do="start">%</button><button type="button" data-manners-do="end">%</button></div>`+
		`<p class="said" data-part="manners" role="status"></p></div>`, "Start on this device", "End on this device")
	return w.String()
}

// Checker is the form of the page that checks a data sheet.
func Checker(r words.Reader) string {
	w := &writer{r: r}
	w.put(`<div class="checker"><div class="field"><label for="checker-file">%</label><input id="checker-file" type="file" accept=".csv,.json,text/csv,application/json"></div>`+
		`<div class="field"><label for="checker-text">%</label><textarea id="checker-text" rows="6" spellcheck="false" autocomplete="off"></textarea></div>`+
		`<div class="actions"><button type="button" data-check-do="check">%</button><button type="button" data-check-do="keep">%</button><button type="button" data-check-do="forget">%</button></div>`+
		`<p class="said" data-part="sheet-said" role="status"></p><div class="checked" data-part="checked"></div></div>`,
		"A file, CSV or JSON", "Or its text", "Check it", "Keep it on this device", "Forget the one that is kept")
	return w.String()
}

// Verdict says in one sentence what a data sheet holds.
func Verdict(r words.Reader, s *datasheet.Sheet, problems []datasheet.Problem) string {
	count := words.Is("count", unit.Count(len(s.Products)), unit.Whole1)
	if len(problems) == 0 {
		return r.Line(words.Say("Nothing is wrong. Products: {count}.", count))
	}
	return r.Line(words.Say("Faults: {faults}. Products without a fault: {count}.", words.Is("faults", unit.Count(len(problems)), unit.Whole1), count))
}

// Checked is what is wrong with a data sheet, and what each product fills.
func Checked(r words.Reader, s *datasheet.Sheet, problems []datasheet.Problem, calculators []*calc.Calculator) string {
	w := &writer{r: r}
	if len(problems) > 0 {
		w.put(`<h2>%</h2><ol class="faults">`, "Faults")
		for _, p := range problems {
			w.Put(`<li><b>%`, r.Line(words.Say("Line {line}", words.Text("line", strconv.Itoa(p.Line)))))
			if p.Field != "" {
				w.Put(`, <code>%</code>`, p.Field)
			}
			w.Put(`</b> %</li>`, r.Line(p.Says))
		}
		w.Put(`</ol>`)
	}
	if len(s.Products) == 0 {
		return w.String()
	}
	w.put(`<h2>%</h2><ul class="stock">`, "Products")
	for _, p := range s.Products {
		w.Put(`<li><details class="fold"><summary><span>% <small>%</small></span></summary><dl>`, p.Name, p.Type)
		for _, f := range datasheet.Fields() {
			if text, ok := p.Texts[f.Key]; ok {
				w.Put(`<dt>%</dt><dd>%</dd>`, r.Word(f.Label), text)
			}
		}
		w.Put(`</dl></details></li>`)
	}
	w.put(`</ul><h2>%</h2><dl class="fills">`, "What it fills")
	for _, c := range calculators {
		if n := len(s.Offers(c.ID)); n > 0 {
			w.Put(`<dt><a href="../%/">%</a></dt><dd>%</dd>`, c.ID, r.Word(c.Title), r.Line(words.Say("Products or stages: {count}.", words.Is("count", unit.Count(n), unit.Whole1))))
		}
	}
	w.Put(`</dl>`)
	return w.String()
}

// warnsFor is how long the countdown of an idle tablet shows, in milliseconds.
const warnsFor = 20_000

// Idle is a tablet that nobody may be standing at: how long after the last touch it is cleared, in milliseconds, and when
// that touch was. Nothing runs until something is touched.
type Idle struct {
	After   int64
	Touched countdown.Instant // 0: nothing since it was cleared
}

// Look says how a tablet stands at an instant: whether it is to be cleared now, the seconds that are left once
// the countdown shows (else 0), and how many milliseconds later it should be looked at again (0: not before a touch).
func (i *Idle) Look(now countdown.Instant) (clear bool, left int, again int64) {
	if i.Touched == 0 {
		return false, 0, 0
	}
	rest := i.After - int64(now-i.Touched)
	switch {
	case rest <= 0:
		return true, 0, 0
	case rest > i.After: // the clock was set back
		i.Touched = now
		return false, 0, i.After - warnsFor
	case rest > warnsFor:
		return false, 0, rest - warnsFor
	}
	return false, int((rest + 999) / 1000), (rest-1)%1000 + 1
}

// Clearing says how long there is left until the figures are cleared.
func Clearing(r words.Reader, seconds int) string {
	return r.Line(words.Say("These figures are cleared in {seconds} s", words.Text("seconds", strconv.Itoa(seconds))))
}

// Manner says how the manners of a device stand.
func Manner(r words.Reader, seconds int) string {
	if seconds == 0 {
		return r.Word("This device has no counter manners.")
	}
	return r.Line(words.Say("This device has counter manners: it is cleared {time} after the last touch.", words.Is("time", unit.Span(seconds), unit.MinSpan)))
}

// HoldsJobs says that the manners of a counter will erase the jobs that a device holds, before they begin.
func HoldsJobs(r words.Reader, jobs int) string {
	return r.Line(words.Say("Jobs on this device: {count}. Counter manners erase them with everything else. Save each one’s file first, or press again to begin.",
		words.Is("count", unit.Count(jobs), unit.Whole1)))
}

// Carry is the address that holds a page's figures, to be taken away on a phone.
func Carry(r words.Reader, address string) string {
	w := &writer{r: r}
	if code, ok := qr.Of(address); ok {
		w.put(`<p>%</p>`, "Point the phone’s camera at the code: it opens this page with these figures.")
		// Black on white in every look, since no reader takes the reverse for granted.
		w.Put(`<svg class="code" viewBox="%" role="img" aria-label="%"><path fill="#ffffff" d="M-9-9h300v300h-300z"/><path fill="#000000" d="%"/></svg>`,
			code.Box(), r.Word("The address as a code"), code.Path())
	}
	w.Put(`<p class="address">%</p>`, address)
	return w.String()
}
