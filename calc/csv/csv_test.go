package csv_test

import (
	"bytes"
	stdcsv "encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc/csv"
	"setbook/calc/words"
)

func TestFilesAsSpreadsheetsWriteThem(t *testing.T) {
	cases := []struct {
		name, file string
		known      byte
		want       string
		decimal    byte
	}{
		{"commas", "1.5,2.5\n3.5,4.5\n", 0, "1.5, 2.5\n3.5, 4.5", '.'},
		{"line ends of Windows, and a mark before the first", "\uFEFF1.5,2.5\r\n3.5,4.5\r\n", 0, "1.5, 2.5\n3.5, 4.5", '.'},
		{"semicolons with decimal commas", "1,5;2,5\r\n3,5;4,5\r\n", '.', "1,5 | 2,5\n3,5 | 4,5", ','},
		{"three decimals are no groups there", "1,234;1,250\n1,240;1,260\n", '.', "1,234 | 1,250\n1,240 | 1,260", ','},
		{"semicolons with points", "1.5;2.5\n3.5;4.5", ',', "1.5, 2.5\n3.5, 4.5", '.'},
		{"tabs with decimal commas", "1,5\t2,5\n3,5\t4,5", 0, "1,5 | 2,5\n3,5 | 4,5", ','},
		{"quotes", "\"1.5\",\"6' 3 1/2\"\"\"\n\"3.5\",4 ft", 0, "1.5, 6' 3 1/2\"\n3.5, 4 ft", '.'},
		{"a quote that opens nothing", "6' 3\",4 ft", 0, "6' 3\", 4 ft", '.'},
		{"decimal commas in quotes", "\"1,5\",\"2,25\"\n\"3,5\",\"4,5\"", 0, "1,5 | 2,25\n3,5 | 4,5", ','},
		{"groups of digits beside a point", "\"1,234.5\",2.5", 0, "1234.5, 2.5", '.'},
		{"groups of digits beside a comma", "1.234,5;2,5\n1;2", 0, "1234,5 | 2,5\n1 | 2", ','},
		{"the cells of a field", "0 m,0 m;6 m,0 m;6 m,4 m", 0, "0 m, 0 m\n6 m, 0 m\n6 m, 4 m", '.'},
		{"one row of decimal commas, for one who writes them", "1,5;2,5", ',', "1,5 | 2,5", ','},
		{"one row of the cells of a field, for one who writes points", "1,5;2,5", '.', "1, 5\n2, 5", '.'},
		{"whole numbers in two columns, for one who writes points", "600,300\n900,450", '.', "600, 300\n900, 450", '.'},
		{"whole numbers in three columns", "1,2,3\n4,5,6", ',', "1, 2, 3\n4, 5, 6", '.'},
		{"its own word for what parts cells", "sep=;\n1,5;2,5\n", '.', "1,5 | 2,5", ','},
		{"empty cells at the end of rows and of the file", "1.5,2.5,,\n3.5,4.5,,\n,,,\n", 0, "1.5, 2.5\n3.5, 4.5", '.'},
		{"an empty row between groups", "1.5,2.5\n,\n3.5,4.5\n", 0, "1.5, 2.5\n\n3.5, 4.5", '.'},
		{"a comma and a space part no cell of theirs", "12, 5\t13,5\n14\t15", 0, "12 5 | 13,5\n14 | 15", ','},
		{"nor in quotes", "\"12, 5\",13.5\n14,15", 0, "12 5, 13.5\n14, 15", '.'},
		{"a line's end in quotes", "\"1\n2\",3.5", 0, "1 2, 3.5", '.'},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, fault := csv.Read(c.file, c.known, false)
			require.Empty(t, fault.Msg)
			assert.Equal(t, c.want, got.Text)
			assert.Equal(t, string(c.decimal), string(got.Decimal))
		})
	}
}

// In a grid an empty cell is a missing reading, so its place counts, and so does a row of nothing between others.
func TestGridsKeepTheirGaps(t *testing.T) {
	got, fault := csv.Read("1.5;;2.5\n;;\n;3.5;\n;;\n", 0, true)
	require.Empty(t, fault.Msg)
	assert.Equal(t, "1.5, , 2.5\n, \n, 3.5", got.Text)
}

func TestWhatCannotBeToldIsRefused(t *testing.T) {
	reader := words.Reader{Language: words.English}
	cases := []struct {
		name, file string
		known      byte
		says       string
	}{
		{"one column of decimal commas, or two of whole numbers", "1,25\n1,30\n", 0, "may part two cells"},
		{"the same for one who writes commas", "1,25\n1,30\n", ',', "may part two cells"},
		{"one row", "1,5;2,5", 0, "may part two cells"},
		{"a group of digits, or three decimals", "\"1,234\",\"1,250\"", 0, "may part two cells"},
		{"both marks", "1,5;2.5\n3,5;4,5", 0, "“1,5” and “2.5”"},
		{"nothing", "\r\n;;;\r\n", 0, "holds nothing"},
		{"the 16-bit text of some spreadsheets", "\xff\xfe1\x00,\x002\x00", 0, "plain text"},
		{"what a browser makes of another code page", "1\uFFFD2", 0, "plain text"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, fault := csv.Read(c.file, c.known, false)
			assert.Contains(t, reader.Line(fault), c.says)
		})
	}
}

// What Go's own writer of RFC 4180 makes of cells is read as those cells.
func FuzzAgainstGo(f *testing.F) {
	f.Add("1.5", "2 ft", "6' 3\"", "0.1")
	f.Add("", "x", "1", "")
	f.Fuzz(func(t *testing.T, a, b, c, d string) {
		for _, cell := range []string{a, b, c, d} {
			if cell != strings.TrimSpace(cell) || strings.ContainsAny(cell, ",;|\t\r\n\x00\uFFFD\uFEFF") || strings.Count(cell, ".") > 1 || strings.ToValidUTF8(cell, "") != cell {
				return
			}
		}
		if b == "" || d == "" || strings.HasPrefix(a, "sep=") {
			return
		}
		var file bytes.Buffer
		w := stdcsv.NewWriter(&file)
		require.NoError(t, w.WriteAll([][]string{{a, b}, {c, d}}))
		got, fault := csv.Read(file.String(), '.', true)
		require.Empty(t, fault.Msg)
		assert.Equal(t, a+", "+b+"\n"+c+", "+d, got.Text)
	})
}

// What is written is what Go's own reader of RFC 4180 reads, whatever parts the cells.
func TestRowsAreWrittenForSpreadsheets(t *testing.T) {
	rows := [][]string{{"6' 3\"", "1,5", "2;5", ""}, {"one\ntwo", "\"", " ", "plain"}}
	for _, part := range []string{",", ";"} {
		var b strings.Builder
		for _, row := range rows {
			csv.Write(&b, part, row)
		}
		r := stdcsv.NewReader(strings.NewReader(b.String()))
		r.Comma = rune(part[0])
		got, err := r.ReadAll()
		require.NoError(t, err)
		assert.Equal(t, rows, got)
	}
}
