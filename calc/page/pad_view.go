package page

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/markup"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// shownCells is how many cells of a grid are shown at once; of more, only those around the one that is written.
// longestShown is how long a table may be to stand in its text field as well.
const (
	shownCells   = 400
	longestShown = 60_000
	aroundRows   = 3
	aroundCols   = 4
)

// unshown reports whether a table is too long for its text field.
func (l *Live) unshown(in *calc.Input) bool { return len(l.texts[in.Key].text) > longestShown }

// table field: the text of the table, the pad of a grid above it, and a file in its place.
func (l *Live) tableField(w *writer, f *form, in *calc.Input) {
	key, id := f.key(in), l.id(f, in)
	pads := in.Form == calc.Grid && f == &l.form
	if pads {
		l.padField(w, in)
	}
	if f == &l.form && l.unshown(in) {
		w.Put(`<p class="held" id="%" tabindex="-1">%</p>`, id, l.reader.Line(l.held(in)))
	} else {
		w.Put(`<textarea id="%" name="%" data-key="%" rows="4" spellcheck="false" aria-describedby="%-note" aria-invalid="%">%</textarea>`,
			id, key, key, id, markup.If(f.problem(in.Key) != nil, "true"), l.text(f, in))
	}
	if f != &l.form {
		return
	}
	w.Put(`<div class="files"><label for="%-file">%</label><input id="%-file" type="file" data-load="%" accept=".csv,.txt,text/csv,text/plain">`,
		id, l.reader.Word("Load a CSV file"), id, key)
	if pads {
		w.Put(`<button type="button" data-save="%">%</button><button type="button" data-pad="%" data-press="%">%</button>`,
			key, l.reader.Word("Save as a CSV file"), key, padEmpty, l.reader.Word("Empty the grid"))
	}
	w.Put(`</div>`)
	l.saidBy(w, "file-"+key, l.fileSaid(in))
}

// padField is the pad: the readings, the cell that is written, and its keys.
func (l *Live) padField(w *writer, in *calc.Input) {
	id := l.id(&l.form, in) + "-pad"
	w.Put(`<div class="pad"><div class="scroll pad-table" role="region" tabindex="0" aria-label="%" data-part="pad-%">`, l.reader.Word("The readings"), in.Key)
	w.Markup(l.readings(in))
	w.Put(`</div><label for="%" data-part="padat-%" aria-live="polite">`, id, in.Key) // the cell changes under the field: it is read out
	w.Markup(l.padAt(in))
	w.Put(`</label><input id="%" type="text" inputmode="none" data-padded="%" value="%" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="next" aria-describedby="%-note">`,
		id, in.Key, l.Draft(in.Key), l.id(&l.form, in))
	w.Put(`<div class="pad-keys">`)
	key := func(pressed, says string) {
		w.Put(`<button type="button" tabindex="-1" data-pad="%" data-press="%">%</button>`, in.Key, pressed, says)
	}
	_, decimal := l.written(in)
	for _, sign := range strings.Split("7 8 9 4 5 6 1 2 3 - 0 "+string(rune(decimal)), " ") {
		key(sign, strings.Replace(sign, "-", "−", 1))
	}
	w.Put(`</div><div class="pad-moves">`)
	w.Put(`<button type="button" class="pad-next" data-pad="%" data-press="%">%</button>`, in.Key, padNext, l.reader.Word("Next"))
	for _, k := range []struct {
		press string
		says  words.Msg
	}{{padBack, "Back"}, {padNone, "No reading"}} {
		w.Put(`<button type="button" data-pad="%" data-press="%">%</button>`, in.Key, k.press, l.reader.Word(k.says))
	}
	w.Put(`<button type="button" data-pad="%" data-press="%" data-part="padrow-%">`, in.Key, padRow, in.Key)
	w.Markup(l.padRow(in))
	w.Put(`</button></div><div class="keys">`)
	for _, k := range stripKeys(in.Columns[0], l.reader.Style) {
		if k != "-" {
			key(k, l.keyName(k))
		}
	}
	w.Put(`</div></div>`)
}

// padRow is what the key says that ends a row: the first one tells how long the others are.
func (l *Live) padRow(in *calc.Input) string {
	if l.pad(in).wide == 0 {
		return markup.Escape(l.reader.Word("End of the first row"))
	}
	return markup.Escape(l.reader.Word("Next row"))
}

func (l *Live) padAt(in *calc.Input) string { return markup.Escape(l.reader.Line(l.where(in))) }

// readings is the table of a grid around the cell that is written.
func (l *Live) readings(in *calc.Input) string {
	p := l.pad(in)
	wide := max(p.wide, p.col+1)
	if len(p.rows) > 0 {
		wide = max(wide, len(l.padCells(in, p.rows[0])))
	}
	high := max(len(p.rows), p.row+1)
	fromRow, toRow, fromCol, toCol := 0, high, 0, wide
	if wide*high > shownCells {
		fromRow, toRow = max(0, p.row-aroundRows), min(high, p.row+aroundRows+1)
		fromCol, toCol = max(0, p.col-aroundCols), min(wide, p.col+aroundCols+1)
	}
	w := &writer{r: l.reader}
	w.put(`<table aria-label="%"><thead><tr><td></td>`, "The readings")
	for col := fromCol; col < toCol; col++ {
		w.Put(`<th scope="col">%</th>`, strconv.Itoa(col+1))
	}
	w.Put(`</tr></thead><tbody>`)
	for row := fromRow; row < toRow; row++ {
		w.Put(`<tr><th scope="row">%</th>`, strconv.Itoa(row+1))
		var cells []string
		if row < len(p.rows) {
			cells = l.padCells(in, p.rows[row])
		}
		for col := fromCol; col < toCol; col++ {
			text := ""
			if col < len(cells) {
				text = cells[col]
			}
			if p.open && row == p.row && col == p.col {
				text = p.cell
			}
			shown, label := text, ""
			if text == "" {
				shown, label = "·", l.reader.Word("No reading")
			}
			w.Put(`<td><button type="button" tabindex="-1" data-pad="%" data-row="%" data-col="%" aria-current="%" aria-label="%">%</button></td>`,
				in.Key, strconv.Itoa(row), strconv.Itoa(col), markup.If(row == p.row && col == p.col, "true"), label, shown)
		}
		w.Put(`</tr>`)
	}
	w.Put(`</tbody></table>`)
	return w.String()
}

// held says how much a table holds that is too long to be shown.
func (l *Live) held(in *calc.Input) words.Line {
	text := l.texts[in.Key].text
	rows := strings.Count(text, "\n") + 1
	cells := rows + strings.Count(text, "|")
	if cells == rows {
		cells += strings.Count(text, ",")
	}
	return words.Say("{cells} cells in {rows} rows are held, too many to be shown as text.",
		words.Is("cells", unit.Count(cells), unit.Whole1), words.Is("rows", unit.Count(rows), unit.Whole1))
}

// padParts adds what changes of the pads.
func (l *Live) padParts(parts []Part) []Part {
	for _, in := range l.Calculator.Inputs {
		if len(in.Columns) == 0 {
			continue
		}
		parts = append(parts, Part{"file-" + in.Key, l.fileSaid(in)})
		if in.Form == calc.Grid {
			parts = append(parts, Part{"pad-" + in.Key, l.readings(in)}, Part{"padat-" + in.Key, l.padAt(in)}, Part{"padrow-" + in.Key, l.padRow(in)})
		}
	}
	return parts
}
