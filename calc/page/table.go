package page

import (
	"strings"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/markup"
)

// tables is every list of the sheet.
func (l *Live) tables() string {
	w := &writer{r: l.reader}
	for _, t := range l.sheet.Tables {
		if len(t.Rows) > 0 {
			l.table(w, t)
		}
	}
	return w.String()
}

// table writes a list. It may be wider than a phone, so it scrolls by itself, with keys too.
func (l *Live) table(w *writer, t *calc.Table) {
	id := l.Name + "-table-" + t.Key
	w.Put(`<section class="listing" data-table="%"><h3 id="%">%</h3>`, t.Key, id, l.reader.Word(t.Title))
	if t.Says.Msg != "" {
		w.Put(`<p>%</p>`, l.reader.Line(t.Says))
	}
	w.Put(`<div class="scroll" role="region" tabindex="0" aria-labelledby="%"><table aria-labelledby="%"><thead><tr>`, id, id)
	offers, number := false, make([]bool, len(t.Heads))
	for i := range t.Rows {
		offers = offers || t.Rows[i].Button != ""
		for j := range t.Rows[i].Cells {
			if j < len(number) {
				number[j] = number[j] || numeral(&t.Rows[i].Cells[j])
			}
		}
	}
	for i, head := range t.Heads {
		w.Put(`<th scope="col" class="%">%</th>`, markup.If(number[i], "num"), l.reader.Word(head))
	}
	if offers {
		w.Put(`<td></td>`)
	}
	w.Put(`</tr></thead><tbody>`)
	for i := range t.Rows {
		l.line(w, &t.Rows[i])
	}
	w.Put(`</tbody></table></div>`)
	l.carry(w, t)
	w.Put(`</section>`)
}

// line writes a row; what its button puts into the fields goes with it, since the sheet may have been worked elsewhere.
func (l *Live) line(w *writer, row *calc.Row) {
	w.Put(`<tr>`)
	first := ""
	for i := range row.Cells {
		c := &row.Cells[i]
		text := l.cell(c)
		class := markup.If(numeral(c), "num")
		if i == 0 {
			first = text
			w.Put(`<th scope="row" class="%">%</th>`, class, text)
			continue
		}
		w.Put(`<td class="%">%</td>`, class, text)
	}
	if row.Button != "" {
		said := l.reader.Word(row.Button)
		w.Put(`<td><button type="button" data-puts="%" aria-label="%: %">%</button></td>`, l.puts(row.Puts), said, first, said)
	}
	w.Put(`</tr>`)
}

// numeral reports whether a cell holds a figure, or a count: it stands at the right.
func numeral(c *calc.Cell) bool {
	return c.Is != nil || c.Text != "" && strings.Trim(c.Text, "0123456789") == ""
}

// puts is texts as the link text that Put takes, in the order of the fields.
func (l *Live) puts(texts calc.Texts) string {
	var pairs []string
	for _, in := range l.Calculator.Inputs {
		if text, ok := texts[in.Key]; ok {
			pairs = append(pairs, in.Key+"="+link.Escape(text))
		}
	}
	return strings.Join(pairs, "&")
}
