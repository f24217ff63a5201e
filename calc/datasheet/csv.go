package datasheet

import (
	"strings"

	"setbook/calc"
	"setbook/calc/csv"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// line is one record of a CSV file (RFC 4180): its cells, each with the line that it begins in.
type line struct {
	at     int
	cells  []cell
	broken bool
}

// csv reads a file whose first line names the columns.
func (r *reader) csv(text string) []row {
	lines := r.lines(text)
	if len(lines) == 0 {
		return nil
	}
	head := r.head(lines[0])
	var rows []row
	for _, l := range lines[1:] {
		if l.broken {
			rows = append(rows, row{line: l.at, broken: true})
			continue
		}
		if len(l.cells) != len(head) {
			r.fail(l.at, "", "The line has {cells} cells, where the first line names {columns} columns.",
				words.Is("cells", unit.Count(len(l.cells)), unit.Whole1), words.Is("columns", unit.Count(len(head)), unit.Whole1))
			rows = append(rows, row{line: l.at, broken: true})
			continue
		}
		made := row{line: l.at}
		for i, c := range l.cells {
			if head[i] != "" {
				made.cells = append(made.cells, cell{head[i], c.text, c.line})
			}
		}
		rows = append(rows, made)
	}
	return rows
}

// head reads the names of the columns; one that is not known is "".
func (r *reader) head(l line) []string {
	var keys []string
	seen := map[string]bool{}
	for _, c := range l.cells {
		key := strings.ToLower(strings.TrimSpace(c.text))
		switch {
		case seen[key]:
			r.fail(c.line, key, "Two columns have this name.")
			key = ""
		case key != nameKey && key != typeKey && find(key) == nil:
			r.unknown(c.line, key)
			key = ""
		}
		seen[key] = true
		keys = append(keys, key)
	}
	for _, need := range [...]string{nameKey, typeKey} {
		if !seen[need] {
			r.fail(l.at, need, "There is no column of this name, which every file needs.")
		}
	}
	return keys
}

// unknown tells of a name that no column has.
func (r *reader) unknown(at int, key string) {
	r.fail(at, key, "There is no field named “{read}”. The page lists the names that are known.", words.Text("read", calc.Cut(key)))
}

// lines parts a text into records. A cell in quotes may hold commas, doubled quotes and line ends.
func (r *reader) lines(text string) (lines []line) {
	s := scanner{text: text, line: 1}
	for s.at < len(s.text) {
		l := line{at: s.line}
		for {
			from := s.line
			cell := cell{line: from}
			var fault words.Msg
			cell.text, fault = s.cell()
			if fault != "" {
				l.broken = true
				read, _, _ := strings.Cut(cell.text, "\n")
				r.fail(from, r.column(lines, len(l.cells)), fault, words.Text("read", calc.Cut(read)))
			}
			l.cells = append(l.cells, cell)
			if s.next() != ',' {
				break
			}
			s.at++
		}
		s.end()
		if len(l.cells) > 1 || strings.TrimSpace(l.cells[0].text) != "" || l.broken {
			lines = append(lines, l)
		}
	}
	return lines
}

// column is the name of the nth column, where the first line is read already.
func (r *reader) column(lines []line, n int) string {
	if len(lines) > 0 && n < len(lines[0].cells) {
		return strings.TrimSpace(lines[0].cells[n].text)
	}
	return ""
}

// scanner walks over a CSV text.
type scanner struct {
	text     string
	at, line int
}

// next is the sign that stands next, 0 at the end.
func (s *scanner) next() byte {
	if s.at < len(s.text) {
		return s.text[s.at]
	}
	return 0
}

// end passes over the end of a line.
func (s *scanner) end() {
	if s.next() == '\r' {
		s.at++
	}
	if s.next() == '\n' {
		s.at++
	}
	s.line++
}

// cell reads up to the next comma or the end of the line, and says what is wrong with it.
func (s *scanner) cell() (text string, fault words.Msg) {
	if s.next() != '"' {
		text = s.bare()
		if strings.Contains(text, `"`) {
			return text, "A quote stands inside a cell that does not begin with one: “{read}”."
		}
		return text, ""
	}
	text, next, closed := csv.Unquote(s.text, s.at+1)
	s.line += strings.Count(s.text[s.at:next], "\n")
	s.at = next
	if !closed {
		return text, "The quote that opens this cell is never closed: “{read}”."
	}
	if rest := s.bare(); strings.TrimSpace(rest) != "" {
		return text + rest, "Something stands after the closing quote: “{read}”."
	}
	return text, ""
}

// bare reads up to the next comma or the end of the line.
func (s *scanner) bare() string {
	rest := s.text[s.at:]
	if i := strings.IndexAny(rest, ",\n\r"); i >= 0 {
		rest = rest[:i]
	}
	s.at += len(rest)
	return rest
}
