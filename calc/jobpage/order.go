package jobpage

import (
	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/draw"
	"setbook/calc/job"
	"setbook/calc/link"
)

// orderOf is the question that makes one order of a job.
const orderOf = "takeoff"

// order is what the whole job orders, for paper. How many spares, what a pallet carries and the prices are those of the
// order that the job has among its sums, if it has one.
func (v *View) order(now countdown.Instant) string {
	w := v.writer()
	w.put(`<article class="paper"><header><p class="of-stage">%</p>`, "Order for the job")
	w.Put(`<h1 dir="auto">%</h1><dl class="paper-facts">`, v.Job.Name)
	v.fact(w, "Place", v.place())
	v.fact(w, "Crew", v.Job.HandOver.Crew)
	w.Put(`</dl></header>`)
	s, problems := v.ordered()
	for _, p := range problems {
		w.Put(`<p class="note-bad">%</p>`, w.r.Line(p.Says))
	}
	if s != nil {
		for _, t := range s.Tables {
			v.listing(w, t)
		}
		for _, c := range s.Cautions {
			w.Put(`<p class="paper-note">%</p>`, w.r.Line(c.Says))
		}
		if len(s.Drawing.Shapes) > 0 {
			w.Put(`<figure class="drawing">`)
			w.Markup(draw.SVG(&s.Drawing, "paper-order", w.r))
			w.Put(`</figure>`)
		}
	}
	if s != nil && len(s.Tables) == 0 || s == nil && len(problems) == 0 {
		w.put(`<p>%</p>`, "No sum of this job says what to buy yet.")
	}
	v.made(w, now)
	w.Put(`</article>`)
	return w.String()
}

// ordered works out the order of the job; nil with nothing wrong where this program has no such question.
func (v *View) ordered() (*calc.Sheet, []calc.Problem) {
	c, ok := v.Find(orderOf)
	if !ok {
		return nil, nil
	}
	texts, _ := link.Parse(v.orderText())
	e, problems := c.Read(texts, calc.Habit{})
	if len(problems) > 0 {
		return nil, problems
	}
	s := c.Solve(e)
	if len(s.Problems) > 0 {
		return nil, s.Problems
	}
	return s, nil
}

// orderText is the entry of the order: the job's own one, with the entries of the job as they are now.
func (v *View) orderText() string {
	texts := calc.Texts{}
	for _, e := range v.Job.Entries {
		if e.Calculator == orderOf {
			texts, _ = link.Parse(e.Link)
		}
	}
	texts["job"] = job.Lines(v.Job)
	c, ok := v.Find(orderOf)
	if !ok {
		return ""
	}
	text := "v=" + link.Version
	for _, in := range c.Inputs {
		if value, given := texts[in.Key]; given {
			text += "&" + in.Key + "=" + link.Escape(value)
		}
	}
	return text
}

// listing writes a table of a sheet for paper.
func (v *View) listing(w *writer, t *calc.Table) {
	w.table(t.Title, t.Heads...)
	for _, r := range t.Rows {
		cells := make([]string, len(r.Cells))
		for i, c := range r.Cells {
			switch {
			case c.Is != nil:
				cells[i] = w.r.Style.Print(*c.Is)
			case c.Says.Msg != "":
				cells[i] = w.r.Line(c.Says)
			default:
				cells[i] = c.Text
			}
		}
		w.row(cells...)
	}
	w.endTable()
	if t.Says.Msg != "" {
		w.Put(`<p class="paper-note">%</p>`, w.r.Line(t.Says))
	}
}

// fed is the link with which a sum is opened or begun from the job: with the weather of the job, and the order with its entries.
func (v *View) fed(e job.Entry) string {
	if e.Calculator == orderOf {
		return v.orderText()
	}
	return v.Job.Fed(e, v.Find)
}
