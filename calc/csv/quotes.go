package csv

import "strings"

// Unquote takes a cell in quotes, in which two stand for one, from behind its first one to behind its last. One that is never
// closed goes to the end of the file.
func Unquote(file string, from int) (cell string, next int, closed bool) {
	var b strings.Builder
	for i := from; ; {
		end := strings.IndexByte(file[i:], '"')
		if end < 0 {
			return b.String() + file[i:], len(file), false
		}
		b.WriteString(file[i : i+end])
		i += end + 1
		if at(file, i) != '"' {
			return b.String(), i, true
		}
		b.WriteByte('"')
		i++
	}
}

// Write writes a row of cells as RFC 4180 has it, with what parts them.
func Write(b *strings.Builder, part string, cells []string) {
	quoted := part + "\"\r\n"
	for i, cell := range cells {
		if i > 0 {
			b.WriteString(part)
		}
		if strings.ContainsAny(cell, quoted) {
			cell = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
		}
		b.WriteString(cell)
	}
	b.WriteString("\r\n")
}
