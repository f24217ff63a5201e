package page

import (
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// pad is the large keys of a grid: where they write, and what stands there. It goes by the text of the field, which
// stays the one truth: whatever else writes it, the pad follows.
type pad struct {
	text     string   // that the rows are those of
	rows     []string // each as it is written, with no empty one among them
	row, col int      // the cell that is written; it may stand one past the others
	wide     int      // cells of a row, once the first has been ended
	typing   bool     // what is pressed goes on with the cell, instead of taking its place
	draft    string   // what has been written of it
	unit     string   // that the cell had before: a new number keeps it
	cell     string   // what is to be put into the cell when it is left: a long grid is not written at each key
	open     bool     // it has not been put
}

// pad brings the pad of a grid in step with its field.
func (l *Live) pad(in *calc.Input) *pad {
	if l.pads == nil {
		l.pads = map[string]*pad{}
	}
	p := l.pads[in.Key]
	if p == nil {
		p = &pad{}
		l.pads[in.Key] = p
	}
	text, _ := l.written(in)
	if p.text == text && p.rows != nil {
		return p
	}
	p.text, p.rows, p.wide, p.typing = text, []string{}, 0, false
	for _, row := range strings.Split(strings.ReplaceAll(text, ";", "\n"), "\n") {
		if strings.TrimSpace(row) != "" {
			p.rows = append(p.rows, row)
		}
	}
	if len(p.rows) > 1 {
		p.wide = len(l.padCells(in, p.rows[0]))
	}
	if p.row > len(p.rows) || p.wide > 0 && p.col >= p.wide {
		p.row, p.col = 0, 0
	}
	return p
}

// written is a grid as its field shows it, with the decimal mark of its numbers. One too long to be shown is left as
// it came.
func (l *Live) written(in *calc.Input) (text string, decimal byte) {
	if t, ok := l.texts[in.Key]; ok && l.unshown(in) {
		return t.text, t.habit.Decimal
	}
	return l.text(&l.form, in), l.habit().Decimal
}

// padCells parts a row as the reader of tables does.
func (l *Live) padCells(in *calc.Input, row string) []string {
	_, decimal := l.written(in)
	part := ","
	switch {
	case strings.Contains(row, "\t"):
		part = "\t"
	case strings.Contains(row, "|"):
		part = "|"
	case decimal == ',':
		return []string{strings.TrimSpace(row)}
	}
	cells := strings.Split(row, part)
	for i := range cells {
		cells[i] = strings.TrimSpace(cells[i])
	}
	return cells
}

// padCell is what stands in a cell.
func (l *Live) padCell(in *calc.Input, p *pad, row, col int) string {
	if row >= len(p.rows) {
		return ""
	}
	if cells := l.padCells(in, p.rows[row]); col < len(cells) {
		return cells[col]
	}
	return ""
}

// Draft is what has been written of the cell of a grid that is being written.
func (l *Live) Draft(key string) string {
	in := l.Calculator.Input(key)
	if in == nil {
		return ""
	}
	p := l.pad(in)
	if p.typing {
		return p.draft
	}
	return l.padCell(in, p, p.row, p.col)
}

// PadType takes what the field of the cell now holds.
func (l *Live) PadType(key, text string) {
	if in := l.Calculator.Input(key); in != nil && text != l.Draft(key) {
		l.draft(in, l.pad(in), text)
	}
}

// PadAt goes to a cell, counted from nought.
func (l *Live) PadAt(key string, row, col int) {
	if in := l.Calculator.Input(key); in != nil {
		p := l.pad(in)
		l.settle(in, p)
		p.to(row, col)
	}
}

// settle puts what has been written into the cell of a long grid.
func (l *Live) settle(in *calc.Input, p *pad) {
	if p.open {
		p.open = false
		l.set(in, p, p.cell)
	}
}

func (p *pad) to(row, col int) {
	p.row, p.col, p.typing, p.open = max(row, 0), max(col, 0), false, false
}

// The keys of a pad that write nothing.
const (
	padNext  = "next" // to the next cell
	padBack  = "back" // takes a letter back, or goes to the cell before
	padNone  = "none" // no reading here
	padRow   = "row"  // ends a row
	padUp    = "up"
	padDown  = "down"
	padEmpty = "empty" // begins anew
)

// PadPress takes one of the large keys: a sign, or one of those that have a name.
func (l *Live) PadPress(key, pressed string) {
	in := l.Calculator.Input(key)
	if in == nil {
		return
	}
	p := l.pad(in)
	held := l.Draft(key)
	switch pressed {
	case padNext, padRow, padUp, padDown:
		l.settle(in, p)
	case padNone:
		p.open = false
	case padBack:
		if held == "" {
			l.settle(in, p)
		}
	}
	switch pressed {
	case padNext:
		p.next()
	case padNone:
		l.set(in, p, "")
		p.next()
	case padRow:
		if p.wide == 0 {
			p.wide = p.col
			if held != "" {
				p.wide++
			}
		}
		if p.wide > 0 {
			p.to(p.row+1, 0)
		}
	case padUp:
		p.to(p.row-1, p.col)
	case padDown:
		p.to(min(p.row+1, len(p.rows)), p.col)
	case padEmpty:
		l.Type(key, "")
		*p = pad{rows: []string{}}
	case padBack:
		switch {
		case held != "":
			_, size := utf8.DecodeLastRuneInString(held)
			l.draft(in, p, held[:len(held)-size])
		case p.col > 0:
			p.to(p.row, p.col-1)
		case p.row > 0:
			p.to(p.row-1, p.wide-1)
		}
	default:
		if !p.typing && strings.Contains("0123456789.,-", pressed) {
			held = "" // a number takes the place of another, a unit goes behind it
		}
		l.draft(in, p, held+pressed)
	}
}

func (p *pad) next() {
	if p.wide > 0 && p.col+1 >= p.wide {
		p.to(p.row+1, 0)
		return
	}
	p.to(p.row, p.col+1)
}

// draft writes the cell anew. A number that is typed over another keeps its unit, since those behind it go by it.
func (l *Live) draft(in *calc.Input, p *pad, text string) {
	if !p.typing {
		p.unit = ""
		if u := unit.Ends(in.Columns[0].Kind, l.padCell(in, p, p.row, p.col)); u != nil {
			p.unit = u.Symbol
		}
	}
	cell := strings.TrimSpace(text)
	if cell != "" && p.unit != "" && unit.Ends(in.Columns[0].Kind, cell) == nil {
		cell += " " + p.unit
	}
	p.typing, p.draft = true, text
	if p.cell, p.open = cell, l.unshown(in); !p.open {
		l.set(in, p, cell)
		p.typing, p.draft = true, text
	}
}

// set puts a text into the cell, and has the field and the answers follow.
func (l *Live) set(in *calc.Input, p *pad, text string) {
	was := l.padCell(in, p, p.row, p.col)
	_, decimal := l.written(in)
	put := func(row, col int, text string) {
		var cells []string
		if row < len(p.rows) {
			cells = l.padCells(in, p.rows[row])
		}
		for len(cells) <= col || len(cells) < min(p.wide, 2) {
			cells = append(cells, "")
		}
		cells[col] = text
		for row >= len(p.rows) {
			p.rows = append(p.rows, joined(make([]string, max(p.wide, 1)), decimal))
		}
		p.rows[row] = joined(cells, decimal)
	}
	put(p.row, p.col, text)
	if u := unit.Ends(in.Columns[0].Kind, was); text == "" && u != nil {
		if row, col := l.after(in, p); row >= 0 {
			if next := l.padCell(in, p, row, col); unit.Ends(in.Columns[0].Kind, next) == nil {
				put(row, col, next+" "+u.Symbol)
			}
		}
	}
	whole := strings.Join(p.rows, "\n")
	if t, ok := l.texts[in.Key]; ok && l.unshown(in) {
		l.texts[in.Key] = typed{whole, t.habit}
		l.work()
	} else {
		l.Type(in.Key, whole)
	}
	p.text = whole
}

// after is the next cell that is not empty.
func (l *Live) after(in *calc.Input, p *pad) (row, col int) {
	for row := p.row; row < len(p.rows); row++ {
		for col, cell := range l.padCells(in, p.rows[row]) {
			if cell != "" && (row > p.row || col > p.col) {
				return row, col
			}
		}
	}
	return -1, 0
}

// joined is a row of cells, one of which may be all that stands in it.
func joined(cells []string, decimal byte) string {
	if decimal == ',' {
		return strings.Join(cells, " | ")
	}
	return strings.Join(cells, ", ")
}

// where names a cell, and the unit that a bare number has in it.
func (l *Live) where(in *calc.Input) words.Line {
	p := l.pad(in)
	kind := in.Columns[0].Kind
	u := in.Columns[0].As.For(l.reader.Style.System).Unit
	for row := 0; row <= p.row && row < len(p.rows); row++ {
		if row > 0 && len(p.text) > shownCells*8 {
			break // the first row will do: nobody changes the unit among so many
		}
		for col, cell := range l.padCells(in, p.rows[row]) {
			if row == p.row && col > p.col {
				break
			}
			if written := unit.Ends(kind, cell); written != nil {
				u = written
			}
		}
	}
	return words.Say("Row {row}, reading {place}, in {unit}",
		words.Is("row", unit.Count(p.row+1), unit.Whole1), words.Is("place", unit.Count(p.col+1), unit.Whole1), words.Text("unit", u.Symbol))
}
