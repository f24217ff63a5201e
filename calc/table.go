package calc

import (
	"math"
	"slices"
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// maxRows and maxCells keep a pasted table from freezing a phone.
const (
	maxRows  = 10_000
	maxCells = 1_100_000
)

// readTable reads rows parted by ";" or a line's end, and cells parted by ",".
// Where the writer's decimal mark is a comma, cells are parted by a tab or "|".
// A bare number has the unit that was written last before it in its column.
func (in *Input) readTable(text string, h Habit) (Reading, *Problem) {
	r := Reading{Text: text}
	lines := strings.FieldsFunc(strings.ReplaceAll(text, "\r", ""), func(c rune) bool { return c == ';' || c == '\n' })
	if in.Form != Plain {
		// A ; at the end of a line ends that row, and is not an empty one after it.
		lines = strings.Split(strings.NewReplacer(";\r\n", ";", ";\n", ";", "\r", "", "\n", ";").Replace(text), ";")
	}
	if len(lines) > maxRows {
		return Reading{}, &Problem{in.Key, words.Say("{field}: read {rows} rows. It takes up to {most}.",
			words.Named("field", in.Label), words.Is("rows", unit.Count(len(lines)), unit.Whole1),
			words.Is("most", unit.Count(maxRows), unit.Whole1))}
	}
	reader := tableReader{in: in, habit: h, last: make([]*unit.Unit, len(in.Columns))}
	for _, line := range lines {
		if strings.TrimSpace(line) == "" {
			reader.part()
			continue
		}
		if problem := reader.line(line); problem != nil {
			return Reading{}, problem
		}
	}
	r.Rows = reader.finish()
	if len(r.Rows) == 0 && !in.Empty {
		return Reading{}, &Problem{in.Key, words.Say("{field}: read nothing. Give at least one row, as in {example}.",
			words.Named("field", in.Label), words.Text("example", in.Example))}
	}
	return r, nil
}

// tableReader gathers the rows of one table.
type tableReader struct {
	in    *Input
	habit Habit
	rows  [][]float64
	last  []*unit.Unit // the unit written last in each column
	cells int
	count int // rows that are not empty
}

// part takes an empty line: it parts groups, and in a grid may be a row of one missing reading.
func (t *tableReader) part() {
	switch n := len(t.rows); {
	case n == 0 || t.in.Form == Plain:
	case t.in.Form == Grid || t.rows[n-1] != nil:
		t.rows = append(t.rows, nil)
	}
}

func (t *tableReader) line(line string) *Problem {
	t.count++
	number := unit.Count(t.count)
	cells := splitCells(line, t.habit.Decimal, t.in.Form == Grid)
	if last := len(t.in.Columns) - 1; t.in.Spare && len(cells) >= last && len(cells) <= last+1 && strings.TrimSpace(strings.Join(cells[last:], "")) == "" {
		cells = append(cells[:last], t.in.Columns[last].Example)
	}
	t.cells += len(cells)
	switch {
	case t.in.Form != Grid && len(cells) != len(t.in.Columns):
		return &Problem{t.in.Key, words.Say("{field}, row {row}: read “{read}”. A row has {cells} cells.",
			words.Named("field", t.in.Label), words.Is("row", number, unit.Whole1), words.Text("read", Cut(line)),
			words.Is("cells", unit.Count(len(t.in.Columns)), unit.Whole1))}
	case t.cells > maxCells:
		return &Problem{t.in.Key, words.Say("{field}: read more than {most} cells, which is all that it takes.",
			words.Named("field", t.in.Label), words.Is("most", unit.Count(maxCells), unit.Whole1))}
	}
	row := make([]float64, len(cells))
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		column := min(i, len(t.in.Columns)-1)
		if cell == "" && t.in.Form == Grid {
			row[i] = math.NaN()
			continue
		}
		base, problem := t.cell(column, cell)
		if problem != nil {
			return &Problem{t.in.Key, words.Say("{field}, row {row}: {problem}", words.Named("field", t.in.Label),
				words.Is("row", number, unit.Whole1), words.Also("problem", problem.Says))}
		}
		row[i] = base
	}
	t.rows = append(t.rows, row)
	return nil
}

// cell reads one cell; a bare number has the unit written last in its column.
func (t *tableReader) cell(column int, text string) (float64, *Problem) {
	in := t.in.Columns[column]
	if base, ok := t.plain(column, text); ok {
		return base, nil
	}
	u := unit.Ends(in.Kind, text)
	if u == nil && t.last[column] != nil {
		if base, fault := unit.Read(in.Kind, text, unit.Habit{Decimal: t.habit.Decimal, Bare: t.last[column]}); fault == nil && in.Min <= base && base <= in.Max {
			return base, nil
		}
	}
	base, problem := in.readQuantity(text, t.habit)
	if problem == nil && u != nil {
		t.last[column] = u
	}
	return base, problem
}

// plain reads a cell that is digits with at most one decimal mark, and the unit that such a number would have, if any: to the
// very float64 that unit.Read gives, twelve times as fast, since a pasted grid has a million of them. Both whole numbers below are exact, so
// their quotient is rounded once. It reports false for any other text.
func (t *tableReader) plain(column int, text string) (base float64, ok bool) {
	in, u := t.in.Columns[column], t.last[column]
	if u == nil && t.habit.System != unit.Either {
		u = in.As.For(t.habit.System).Unit
	}
	if u == nil || u.Kind != unit.KindLength || u.Over != 0 || u.Size != math.Trunc(u.Size) {
		return 0, false
	}
	text, written := strings.CutSuffix(text, u.Symbol)
	if written {
		if t.last[column] == nil {
			return 0, false // it is the first to be written: the unit is to be kept
		}
		text = strings.TrimSuffix(text, " ")
	}
	text, minus := strings.CutPrefix(text, "-")
	mark := t.habit.Decimal
	if mark == 0 {
		mark = '.'
	}
	top, bottom, marked := 0.0, 1.0, false
	for i := range len(text) {
		switch c := text[i]; {
		case '0' <= c && c <= '9':
			top = top*10 + float64(c-'0')
			if marked {
				bottom *= 10
			}
		case c == mark && !marked && 0 < i && i < len(text)-1:
			marked = true
		default:
			return 0, false
		}
	}
	const exact = 1 << 53
	if text == "" || len(text) > 16 || top*u.Size >= exact {
		return 0, false
	}
	base = top * u.Size / bottom
	if minus {
		base = -base
	}
	return base, in.Min <= base && base <= in.Max
}

// finish drops the parting after the last group and makes the rows of a grid one length.
func (t *tableReader) finish() [][]float64 {
	rows := t.rows
	for len(rows) > 0 && rows[len(rows)-1] == nil {
		rows = rows[:len(rows)-1]
	}
	if t.in.Form != Grid {
		return rows
	}
	longest := 0
	for _, row := range rows {
		longest = max(longest, len(row))
	}
	if longest > 1 { // an empty line is no row there: one that was skipped has its commas
		rows = slices.DeleteFunc(rows, func(row []float64) bool { return row == nil })
	}
	for i := range rows {
		for len(rows[i]) < longest {
			rows[i] = append(rows[i], math.NaN())
		}
	}
	return rows
}

// splitCells parts a line. Every cell of a grid counts, the empty ones too.
func splitCells(line string, decimal byte, every bool) []string {
	part := ","
	switch {
	case every && strings.Contains(line, "\t"):
		part = "\t"
	case every && strings.Contains(line, "|"):
		part = "|"
	case strings.ContainsAny(line, "\t|"):
		return strings.FieldsFunc(line, func(c rune) bool { return c == '\t' || c == '|' })
	case decimal == ',':
		return []string{line}
	}
	return strings.Split(line, part)
}

// WrittenTable writes rows as the reader takes them, with every digit: ";" between rows, and cells parted by
// "," or, where that is the decimal mark, by "|".
func (in *Input) WrittenTable(rows [][]float64, s unit.Style) string {
	return in.table(rows, s, (*Input).Written)
}

func (in *Input) shownTable(rows [][]float64, s unit.Style) string {
	return in.table(rows, s, (*Input).shown)
}

func (in *Input) table(rows [][]float64, s unit.Style, write func(*Input, float64, unit.Style) string) string {
	part := ", "
	if s.Decimal == ',' {
		part = " | "
	}
	var b strings.Builder
	for i, row := range rows {
		if i > 0 {
			b.WriteString("; ")
		}
		for j, base := range row {
			if j > 0 {
				b.WriteString(part)
			}
			if base == base { // a missing cell stays empty
				b.WriteString(write(in.Columns[min(j, len(in.Columns)-1)], base, s))
			}
		}
	}
	return b.String()
}
