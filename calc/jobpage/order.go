package jobpage

import (
	"setbook/calc/countdown"
	"setbook/calc/page"
	"setbook/calc/unit"
)

// order is what the sums of the job say to buy, for paper: likely, and cautious.
func (v *View) order(now countdown.Instant) string {
	w := v.writer()
	w.put(`<article class="paper"><header><p class="of-stage">%</p>`, "Order")
	w.Put(`<h1 dir="auto">%</h1><dl class="paper-facts">`, v.Job.Name)
	v.fact(w, "Place", v.place())
	v.fact(w, "Crew", v.Job.HandOver.Crew)
	w.Put(`</dl></header>`)
	first := true
	for _, e := range v.Job.Entries {
		s := v.solve(e.Calculator, e.Link)
		if s == nil {
			continue
		}
		for i := range s.Answers {
			a := &s.Answers[i]
			if !a.Buys {
				continue
			}
			if first {
				w.table("What to buy", "Sum", "What", "Likely", "Cautious")
				first = false
			}
			cautious := ""
			if a.HasRange {
				cautious = w.r.Style.Print(unit.Figure{Kind: a.Is.Kind, Base: a.High, As: a.Is.As})
			}
			w.row(v.entryName(e), w.r.Word(a.Label), page.Reads(w.r, a), cautious)
		}
	}
	if first {
		w.put(`<p>%</p>`, "No sum of this job says what to buy yet.")
	} else {
		w.endTable()
		w.put(`<p class="paper-note">%</p>`, "Buy the cautious figure to be nearly sure. Compare each with the yield printed on the bag.")
	}
	v.made(w, now)
	w.Put(`</article>`)
	return w.String()
}
