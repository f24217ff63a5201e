// Package csv reads a file of cells as spreadsheets write it, and gives it as the text that a field of a table takes; it writes
// rows of cells as spreadsheets read them.
//
// Cells are parted by a tab where the file has one, else by ";", else by ",". Where cells are parted by a tab or ";", a
// comma in a cell is a decimal mark, which is what spreadsheets write where the comma is one. A file of which every row is
// one comma between digits may be one column or two, and is refused. Cells in quotes are those of RFC 4180; a
// first line "sep=;" is taken at its word.
package csv

import (
	"strings"
	"unicode/utf8"

	"setbook/calc/words"
)

const (
	notText   words.Msg = "The file is not plain text. Save it as CSV in UTF-8."
	nothing   words.Msg = "The file holds nothing."
	twoWays   words.Msg = "“{read}”: the comma may part two cells or be a decimal mark. Save the file with ; or a tab between its cells."
	bothMarks words.Msg = "“{one}” and “{other}”: a comma and a point cannot both be decimal marks. Save the file with one of them."
)

// Text is a file as the text of a table: rows parted by line ends, cells by "," or, where that is the decimal mark, by "|".
type Text struct {
	Text    string
	Decimal byte // '.' or ','
}

// Read reads a file. Known is the decimal mark of whoever reads it, 0 where that is not known; every has each empty cell
// before the last of its row count, as in a grid. A fault with a message says why the file is not taken.
func Read(file string, known byte, every bool) (Text, words.Line) {
	file = strings.TrimPrefix(file, "\uFEFF")
	if !utf8.ValidString(file) || strings.ContainsAny(file, "\x00\uFFFD") {
		return Text{}, words.Line{Msg: notText}
	}
	r := reader{every: every}
	if len(file) > 5 && strings.EqualFold(file[:4], "sep=") {
		r.part, file = file[4], file[5:]
	}
	if read := r.parting(file, known); read != "" {
		return Text{}, words.Say(twoWays, words.Text("read", read))
	}
	r.b.Grow(len(file) + len(file)/2)
	r.write(file)
	switch {
	case r.seen[0] != "" && r.seen[1] != "":
		return Text{}, words.Say(bothMarks, words.Text("one", r.seen[0]), words.Text("other", r.seen[1]))
	case r.either != "" && r.seen[1] == "" && known != '.':
		return Text{}, words.Say(twoWays, words.Text("read", r.either))
	case r.b.Len() == 0:
		return Text{}, words.Line{Msg: nothing}
	}
	if r.seen[0] != "" {
		return Text{strings.ReplaceAll(r.b.String(), ", ", " | "), ','}, words.Line{}
	}
	return Text{r.b.String(), '.'}, words.Line{}
}

// reader gathers the cells of one file. No cell has a comma and then a space in it: so they are parted, until it is known
// which decimal mark they have.
type reader struct {
	part   byte // between cells
	inline bool // ";" ends a row, as it does in a field
	every  bool
	quotes bool // some cell stands in quotes
	b      strings.Builder
	row    []string
	blank  int       // rows with no cell that are not written yet
	rows   int       // that are written
	wide   int       // cells of the widest row
	seen   [2]string // the first cell with a comma, and with a point, as its decimal mark
	either string    // a cell whose comma may stand between groups of digits
}

// parting finds what stands between cells. What it gives back is a row that can be read in two ways.
func (r *reader) parting(file string, known byte) string {
	var tabs, semicolons, commas, loose, points, lines, inLine int
	one := true // every row so far is one comma between digits
	quoted, first, start := false, "", 0
	before := byte('\n')
	line := func(end int) {
		if row := strings.TrimSpace(file[start:end]); row != "" {
			lines++
			one = one && inLine == 1
			if first == "" {
				first = cut(row)
			}
		}
		inLine, start = 0, end+1
	}
	for i := 0; i < len(file); i++ { // a survey has millions of bytes: most of them are digits, and pass the switch
		c := file[i]
		if quoted && c != '"' {
			continue
		}
		switch c {
		case '"':
			if quoted || opens(before) {
				quoted = !quoted
				r.quotes = true
			}
		case '\t':
			tabs++
		case ';':
			semicolons++
		case ',':
			commas++
			inLine++
			if before < '0' || before > '9' || !digit(at(file, i+1)) {
				loose++
			}
		case '.':
			if digit(at(file, i+1)) {
				points++
			}
		case '\n':
			line(i)
		}
		before = c
	}
	line(len(file))
	switch {
	case r.part != 0:
	case tabs > 0:
		r.part = '\t'
	case semicolons > 0 && commas > 0 && loose == 0 && lines == 1 && known == 0:
		return first
	case semicolons > 0 && commas > 0 && (loose > 0 || lines == 1 && known == '.'):
		r.part, r.inline = ',', true
	case semicolons > 0:
		r.part = ';'
	case commas > 0 && one && loose == 0 && points == 0 && known != '.':
		return first
	default:
		r.part = ','
	}
	return ""
}

// at is a byte of a text, a line's end where there is none.
func at(text string, i int) byte {
	if i < 0 || i >= len(text) {
		return '\n'
	}
	return text[i]
}

func opens(before byte) bool { return strings.IndexByte("\n\r\t;,", before) >= 0 }

func digit(c byte) bool { return '0' <= c && c <= '9' }

func cut(text string) string {
	if len(text) > 40 {
		return strings.ToValidUTF8(text[:40], "") + "…"
	}
	return text
}
