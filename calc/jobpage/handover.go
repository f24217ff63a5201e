package jobpage

import (
	"sort"
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/draw"
	"setbook/calc/job"
	"setbook/calc/link"
	"setbook/calc/page"
	"setbook/calc/source"
	"setbook/calc/words"
)

// solve works out an entry as its link stands; nil where that cannot be. A long work is ended early: a record need not be
// laid out anew to be looked at.
func (v *View) solve(calculator, text string) *calc.Sheet {
	c, ok := v.Find(calculator)
	if !ok {
		return nil
	}
	key := calculator + "#" + text
	if s, ok := v.solved[key]; ok {
		return s
	}
	var sheet *calc.Sheet
	if e, problems := link.Read(c, text, calc.Habit{}); len(problems) == 0 {
		if s := c.SolveWith(e, func(int, int) bool { return false }); len(s.Problems) == 0 {
			sheet = s
		}
	}
	if v.solved == nil {
		v.solved = map[string]*calc.Sheet{}
	}
	v.solved[key] = sheet
	return sheet
}

// way leads back from paper to the job, and has the paper printed.
func (v *View) way(w *writer) {
	w.Put(`<div class="count-acts job-way"><a class="button" href="%">%</a>`, v.Href(v.Job.ID, Work), w.r.Word("Back to the job"))
	w.do("print", "", "Print", "")
	w.Put(`</div>`)
}

// sheetFrame is the page of the hand-over sheet: what is typed for it, and the sheet itself.
func (v *View) sheetFrame(w *writer, now countdown.Instant) {
	v.way(w)
	w.fold("hand-over", "What the sheet says besides the record")
	w.Put(`<div class="asks job-pairs">`)
	for _, key := range []string{"client", "crew", "care", "remarks"} {
		v.ask(w, key)
	}
	w.put(`</div><h3>%</h3><div class="asks job-pairs">`, "Materials used")
	for _, key := range []string{"material-name", "material-product", "material-lots"} {
		v.ask(w, key)
	}
	v.add(w, "material", "Add the material")
	w.Put(`</div>`)
	w.part("materials", v.materials(now))
	w.unfold()
	w.part("sheet", v.sheet(now))
}

// materials lists the materials that were typed, and the button that says that the work was handed over.
func (v *View) materials(now countdown.Instant) string {
	w := v.writer()
	w.Put(`<ul class="job-log">`)
	for _, m := range v.Job.HandOver.Materials {
		w.Put(`<li class="count-gone"><p dir="auto">%</p>`, join(m.Name, m.Product, m.Lots))
		v.drop(w, "materials/"+m.ID, m.Name)
		w.Put(`</li>`)
	}
	w.Put(`</ul>`)
	w.Markup(v.undone(now))
	if v.readOnly() {
		return w.String()
	}
	w.Put(`<div class="count-acts">`)
	if v.Job.HandOver.When == 0 {
		w.do("handed", "", "Handed over now", "")
	} else {
		w.do("unhanded", "", "Not handed over yet", "")
	}
	w.Put(`</div>`)
	return w.String()
}

// sheet is the hand-over sheet, for paper.
func (v *View) sheet(now countdown.Instant) string {
	w := v.writer()
	j := v.Job
	w.put(`<article class="paper"><header><p class="of-stage">%</p>`, "Hand-over sheet")
	w.Put(`<h1 dir="auto">%</h1><dl class="paper-facts">`, j.Name)
	v.fact(w, "Place", v.place())
	v.fact(w, "Client", j.HandOver.Client)
	v.fact(w, "Crew", j.HandOver.Crew)
	handed := w.r.Word("not yet")
	if j.HandOver.When != 0 {
		handed = w.r.Line(v.stamp(j.HandOver.When))
	}
	v.fact(w, "Handed over", handed)
	w.Put(`</dl></header>`)
	v.used(w)
	v.conditions(w)
	v.checked(w)
	v.shots(w)
	v.times(w)
	v.figures(w)
	v.lines(w, "Care of the surface", j.HandOver.Care)
	v.lines(w, "Remarks", j.HandOver.Remarks)
	v.cautions(w)
	v.sources(w)
	v.made(w, now)
	v.drawings(w)
	w.Put(`</article>`)
	return w.String()
}

// fact writes one line of the head of a sheet, where there is anything to say.
func (v *View) fact(w *writer, label words.Msg, text string) {
	if text != "" {
		w.Put(`<div><dt>%</dt><dd dir="auto">%</dd></div>`, w.r.Word(label), text)
	}
}

// made says what wrote the sheet, and when.
func (v *View) made(w *writer, now countdown.Instant) {
	w.Put(`<p class="paper-made">%</p>`, w.r.Line(words.Say("Written by Setbook, edition {version}, on {when}. The bags, the local code and the licensed person on the job come before any figure here.",
		words.Text("version", v.Version), words.Also("when", v.stamp(now)))))
}

// drawings are the plans of the job; where it has none, the first drawing of the setting-out or of the bed.
func (v *View) drawings(w *writer) {
	var first *calc.Drawing
	var name string
	count := 0
	for _, e := range v.Job.Entries {
		s := v.solve(e.Calculator, e.Link)
		if s == nil || len(s.Drawing.Shapes) == 0 {
			continue
		}
		c, _ := v.Find(e.Calculator)
		switch {
		case s.Drawing.Plan:
			v.drawing(w, &s.Drawing, v.entryName(e), count)
			count++
		case first == nil && (c.Stage == calc.SettingOut || c.Stage == calc.Setting):
			first, name = &s.Drawing, v.entryName(e)
		}
	}
	if count == 0 && first != nil {
		v.drawing(w, first, name, 0)
	}
}

func (v *View) drawing(w *writer, d *calc.Drawing, name string, n int) {
	w.Put(`<figure class="drawing">`)
	w.Markup(draw.Of(join(v.Job.Name, v.place()), d, "paper-drawing-"+countdown.Pad(int64(n), 1), w.r))
	w.Put(`<figcaption><b>%</b> %</figcaption></figure>`, name, w.r.Line(d.Says))
}

// table begins a table of the sheet.
func (w *writer) table(title words.Msg, heads ...words.Msg) {
	w.Put(`<section class="paper-part"><h2>%</h2><div class="paper-wide" role="region" aria-label="%" tabindex="0"><table aria-label="%"><thead><tr>`, w.r.Word(title), w.r.Word(title), w.r.Word(title))
	for _, h := range heads {
		w.Put(`<th scope="col">%</th>`, w.r.Word(h))
	}
	w.Put(`</tr></thead><tbody>`)
}

// row writes one row, its first cell as the head of it.
func (w *writer) row(cells ...string) {
	w.Put(`<tr><th scope="row" dir="auto" class="%">%</th>`, breaks(cells[0]), cells[0])
	for _, c := range cells[1:] {
		w.Put(`<td dir="auto" class="%">%</td>`, breaks(c), c)
	}
	w.Put(`</tr>`)
}

// breaks is the class of a cell. A word so long that it would push the others off the paper may be broken anywhere, and no other; what is as short as
// a figure and its unit stays on one line.
func breaks(text string) string {
	if len(text) <= 12 {
		return "whole"
	}
	for _, word := range strings.Fields(text) {
		if len(word) > 20 {
			return "long"
		}
	}
	return ""
}

func (w *writer) endTable() { w.Put(`</tbody></table></div></section>`) }

// used lists the materials with their lots: those that were typed, and those of the log that nobody typed.
func (v *View) used(w *writer) {
	logged := v.logged()
	if len(v.Job.HandOver.Materials)+len(logged) == 0 {
		return
	}
	w.table("Materials", "Material", "Product", "Lots on the bags")
	for _, m := range v.Job.HandOver.Materials {
		w.row(m.Name, m.Product, m.Lots)
	}
	for _, l := range logged {
		w.row(l.product, w.r.Word("from the log of mixes"), strings.Join(l.lots, ", "))
	}
	w.endTable()
}

// conditions tells each day of mixing, and the weather entered last.
func (v *View) conditions(w *writer) {
	days := v.days()
	if len(days) > 0 {
		w.table("Conditions at mixing", "Day", "Mixes", "Powder", "Air", "Surface", "Lots")
		for _, d := range days {
			w.row(w.r.Line(v.Day(d.first)), countdown.Pad(int64(d.mixes), 1), d.powder(v), d.air.said(v, job.Air.Input), d.surface.said(v, job.Surface.Input), strings.Join(d.lots, ", "))
		}
		w.endTable()
	}
	if t := v.Job.Weather; t.When != 0 {
		w.Put(`<p class="paper-note">%</p>`, join(w.r.Line(words.Say("Weather as entered {when}", words.Also("when", v.stamp(t.When)))),
			v.reading("Air", v.shown(job.Air.Input, t.Air)), v.reading("Surface", v.shown(job.Surface.Input, t.Surface)),
			v.reading("Relative humidity", v.shown(job.Humidity.Input, t.Humidity)), v.reading("Wind", v.shown(job.Wind.Input, t.Wind))))
	}
}

func (v *View) checked(w *writer) {
	if len(v.Job.Checks) == 0 {
		return
	}
	w.table("Contact checks", "Where", "When", "Contact", "Bare edges or corners", "What was done about it")
	for _, c := range v.Job.Checks {
		corners := c.Corners
		if corners == "" {
			corners = w.r.Word("none bare")
		}
		w.row(c.Where, w.r.Line(v.stamp(c.When)), v.shown(job.Contact.Input, c.Contact), corners, c.Note)
	}
	w.endTable()
	w.put(`<p class="paper-note">%</p>`, "Outdoors at least 95 % is wanted, and every edge and corner supported.")
}

// times tells the stages of the work that have a time in the record.
func (v *View) times(w *writer) {
	type span struct {
		name        string
		from, until countdown.Instant
	}
	var list []span
	for _, c := range v.Job.Countdowns {
		if read, ok := countdown.Read(c.ID, c.Text); ok {
			list = append(list, span{read.Name, read.From, read.Until})
		}
	}
	if n := len(v.Job.Mixes); n > 0 {
		list = append(list, span{w.r.Word("Mixing"), v.Job.Mixes[0].When, v.Job.Mixes[n-1].When})
	}
	if n := len(v.Job.Checks); n > 0 {
		list = append(list, span{w.r.Word("Contact checks"), v.Job.Checks[0].When, v.Job.Checks[n-1].When})
	}
	if len(list) == 0 {
		return
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].from < list[j].from })
	w.table("Stages and times", "Stage", "From", "To")
	for _, s := range list {
		w.row(s.name, w.r.Line(v.stamp(s.from)), w.r.Line(v.Stamp(s.until)))
	}
	w.endTable()
}

// figures are the answers wanted most of each sum but those of the day's weather.
func (v *View) figures(w *writer) {
	first := true
	v.each(func(e job.Entry, s *calc.Sheet) {
		var told []string
		for i := range s.Answers {
			if a := &s.Answers[i]; a.Main {
				told = append(told, w.r.Word(a.Label)+" "+page.Reads(w.r, a))
			}
		}
		if len(told) == 0 {
			return
		}
		if first {
			w.table("Worked out", "Sum", "Answer")
			first = false
		}
		w.row(v.entryName(e), join(told...))
	})
	if !first {
		w.endTable()
	}
}

// lines writes a text a line a rule.
func (v *View) lines(w *writer, title words.Msg, text string) {
	if text == "" {
		return
	}
	w.put(`<section class="paper-part"><h2>%</h2><ul class="paper-list">`, title)
	for line := range strings.SplitSeq(text, "\n") {
		if line != "" {
			w.Put(`<li dir="auto">%</li>`, line)
		}
	}
	w.Put(`</ul></section>`)
}

// cautions are those that whoever walks on the finished face needs. What the crew was to mind stays with its sums.
func (v *View) cautions(w *writer) {
	w.put(`<section class="paper-part"><h2>%</h2><ul class="paper-list">`, "Cautions")
	w.put(`<li>%</li><li>%</li><li>%</li><li>%</li>`,
		"Cutting, grinding or drilling this surface throws silica dust: wet, or with suction, and with a mask. Fresh mortar and grout burn the skin.",
		"Wet or frosted, a sloped face is slippery.",
		"A sealed joint is open to the slab: never grout it or bridge it. Look at the sealant once a year, and have it renewed where it lets go.",
		"No vehicle, and no load heavier than it was laid for. A loose paver is heavy and has sharp edges: keep off it until it is set anew.")
	w.Put(`</ul></section>`)
}

// each goes over the sums of the work itself that can be worked: not those of the day's weather, nor of who lifts what.
func (v *View) each(do func(e job.Entry, s *calc.Sheet)) {
	for _, e := range v.Job.Entries {
		c, ok := v.Find(e.Calculator)
		if !ok || c.Stage == calc.Weather || c.Stage == calc.Handling {
			continue
		}
		if s := v.solve(e.Calculator, e.Link); s != nil {
			do(e, s)
		}
	}
}

// sources lists what the figures rest on, each once with its date.
func (v *View) sources(w *writer) {
	w.put(`<section class="paper-part paper-sources"><h2>%</h2><ul class="paper-list">`, "What the figures rest on")
	seen := map[string]bool{}
	cite := func(s *source.Source) {
		whole := *s
		whole.Place = ""
		if whole.Edition == source.Undated {
			whole.Edition = w.r.Word("no date known")
		}
		text := page.Cite(w.r, &whole)
		if s.Title != "" && !seen[text] {
			seen[text] = true
			w.Put(`<li>%</li>`, text)
		}
	}
	v.each(func(_ job.Entry, s *calc.Sheet) {
		for i := range s.Steps {
			cite(s.Steps[i].Cite)
		}
	})
	w.put(`</ul><p class="paper-note">%</p></section>`, "Each is named with its edition or date, or says that none is known. Where a line of a sum has no source it says so on its own page.")
}
