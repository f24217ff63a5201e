package csv

import "strings"

// write goes through the cells of the file.
func (r *reader) write(file string) {
	part, rowEnd := r.part, byte('\n')
	if r.inline {
		rowEnd = ';'
	}
	for i := 0; i < len(file); {
		var cell string
		if file[i] == '"' && r.quotes {
			cell, i, _ = Unquote(file, i+1)
			for i < len(file) && (file[i] == ' ' || file[i] == '\r') {
				i++
			}
			cell = r.cell(strings.TrimSpace(ends.Replace(cell)))
		} else {
			start, marked := i, false
			for ; i < len(file); i++ {
				c := file[i]
				if c == part || c == '\n' || c == rowEnd {
					break
				}
				marked = marked || c == ',' || c == '.'
			}
			cell = file[start:i]
			if cell != "" && (cell[0] <= ' ' || cell[len(cell)-1] <= ' ') {
				cell = strings.TrimSpace(cell)
			}
			if marked {
				cell = r.cell(cell)
			}
		}
		r.row = append(r.row, cell)
		if i < len(file) && file[i] == part {
			i++
			if i < len(file) {
				continue
			}
			r.row = append(r.row, "")
		}
		r.end()
		i++
	}
}

// ends is what would end a cell in a field; in a quoted cell it is part of no number.
var ends = strings.NewReplacer("\n", " ", "\r", " ", "\t", " ", ";", " ", "|", " ")

// cell notes which decimal mark a cell has, and takes the marks between its groups of digits away.
func (r *reader) cell(cell string) string {
	cell = strings.ReplaceAll(cell, ", ", " ") // no number, and it would part the cell
	comma, point := r.marks(cell, ','), r.marks(cell, '.')
	lastComma := strings.LastIndexByte(cell, ',') > strings.LastIndexByte(cell, '.')
	switch {
	case comma == 0 && point == 0:
	case comma > 0 && point > 0 && lastComma || point > 1:
		r.note(0, cell)
		return strings.ReplaceAll(cell, ".", "")
	case comma > 0 && point > 0 || comma > 1:
		r.note(1, cell)
		return strings.ReplaceAll(cell, ",", "")
	case comma > 0 && r.part == ',' && grouped(cell):
		r.either = cell
		return strings.ReplaceAll(cell, ",", "")
	case comma > 0:
		r.note(0, cell)
	default:
		r.note(1, cell)
	}
	return cell
}

func (r *reader) note(mark int, cell string) {
	if r.seen[mark] == "" {
		r.seen[mark] = cut(cell)
	}
}

// marks counts a mark where digits stand on both sides of it, or behind it.
func (r *reader) marks(cell string, mark byte) (count int) {
	for i := strings.IndexByte(cell, mark); i >= 0 && i+1 < len(cell); i++ {
		if cell[i] == mark && digit(cell[i+1]) {
			count++
		}
	}
	return count
}

// grouped reports whether the comma of a cell may stand between groups of three digits.
func grouped(cell string) bool {
	i := strings.IndexByte(cell, ',')
	return i > 0 && i <= 4 && len(cell) >= i+4 && digit(cell[i+1]) && digit(cell[i+2]) && digit(cell[i+3]) && !digit(at(cell, i+4))
}

// end writes a row, without the empty cells at its end. A row with none is written once another follows it: in
// a grid as missing cells, else as the empty row that parts two groups.
func (r *reader) end() {
	row := r.row
	r.row, r.wide = row[:0], max(r.wide, len(row))
	for len(row) > 0 && row[len(row)-1] == "" {
		row = row[:len(row)-1]
	}
	if len(row) == 0 {
		r.blank++
		return
	}
	for ; r.rows > 0 && r.blank > 0; r.blank-- {
		r.b.WriteByte('\n')
		if r.every && r.wide > 1 {
			r.b.WriteString(", ")
		}
	}
	if r.rows++; r.rows > 1 {
		r.b.WriteByte('\n')
	}
	r.blank = 0
	for i, cell := range row {
		if i > 0 {
			r.b.WriteString(", ")
		}
		r.b.WriteString(cell)
	}
}
