package calc

import (
	"strings"

	"setbook/calc/unit"
	"setbook/calc/words"
)

// maxRows keeps a pasted table from freezing a phone.
const maxRows = 10_000

// readTable reads rows parted by ";" or a line's end, and cells parted by ",".
// Where the writer's decimal mark is a comma, cells are parted by a tab or "|".
func (in *Input) readTable(text string, h Habit) (Reading, *Problem) {
	r := Reading{Text: text}
	lines := strings.FieldsFunc(text, func(c rune) bool { return c == ';' || c == '\n' || c == '\r' })
	if len(lines) > maxRows {
		return Reading{}, &Problem{in.Key, words.Say("{field}: read {rows} rows. It takes up to {most}.",
			words.Named("field", in.Label), words.Is("rows", unit.Count(len(lines)), unit.Whole1),
			words.Is("most", unit.Count(maxRows), unit.Whole1))}
	}
	for _, line := range lines {
		if strings.TrimSpace(line) == "" {
			continue
		}
		cells := splitCells(line, h.Decimal)
		number := unit.Count(len(r.Rows) + 1)
		if len(cells) != len(in.Columns) {
			return Reading{}, &Problem{in.Key, words.Say("{field}, row {row}: read “{read}”. A row has {cells} cells.",
				words.Named("field", in.Label), words.Is("row", number, unit.Whole1), words.Text("read", Cut(line)),
				words.Is("cells", unit.Count(len(in.Columns)), unit.Whole1))}
		}
		row := make([]float64, len(cells))
		for i, cell := range cells {
			base, problem := in.Columns[i].readQuantity(strings.TrimSpace(cell), h)
			if problem != nil {
				return Reading{}, &Problem{in.Key, words.Say("{field}, row {row}: {problem}", words.Named("field", in.Label),
					words.Is("row", number, unit.Whole1), words.Also("problem", problem.Says))}
			}
			row[i] = base
		}
		r.Rows = append(r.Rows, row)
	}
	if len(r.Rows) == 0 {
		return Reading{}, &Problem{in.Key, words.Say("{field}: read nothing. Give at least one row, as in {example}.",
			words.Named("field", in.Label), words.Text("example", in.Example))}
	}
	return r, nil
}

func splitCells(line string, decimal byte) []string {
	if strings.ContainsAny(line, "\t|") {
		return strings.FieldsFunc(line, func(c rune) bool { return c == '\t' || c == '|' })
	}
	if decimal == ',' {
		return []string{line}
	}
	return strings.Split(line, ",")
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
			b.WriteString(write(in.Columns[j], base, s))
		}
	}
	return b.String()
}
