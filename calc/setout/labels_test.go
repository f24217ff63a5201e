package setout_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// lettered is a text as the screen has it, with the box that its letters take: 13 px high, six tenths of it a letter.
type lettered struct {
	text           string
	x0, y0, x1, y1 float64
}

func letters(t *testing.T, d *calc.Drawing, system unit.System) (all []lettered) {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(draw.SVG(d, "x", words.Reader{Language: words.English, Style: unit.Style{System: system, Decimal: '.'}})))
	require.NoError(t, err)
	for n := range doc.Descendants() {
		if n.Data != "text" || n.Type != html.ElementNode {
			continue
		}
		at := map[string]float64{}
		for _, a := range n.Attr {
			at[a.Key], _ = strconv.ParseFloat(a.Val, 64)
		}
		text := n.FirstChild.Data
		long := float64(utf8.RuneCountInString(text)) * 13 * 0.6
		all = append(all, lettered{text, at["x"] - long/2, at["y"] - 10, at["x"] + long/2, at["y"]})
	}
	return all
}

// What is written on the two drawings lies over nothing else that is written, and every mix has its mark. A terrace of 7.3 by 4.6 m with the house
// behind it, and mixes of 20 ft² or 1.858 m²: 33.58 m² less joints are begun 18 times (hand calculation: 104 pieces cover 32.7 m², 32.7 ÷ 1.858 = 17.6).
func TestLabels(t *testing.T) {
	const terrace = "outline=0 m,0 m;7.3 m,0 m;7.3 m,4.6 m;0 m,4.6 m&edges=open,open,building,open"
	for entry, mixes := range map[string]int{terrace: 18, "": 14, terrace + "&turn=30 deg": 18, terrace + "&turn=90 deg": 18, terrace + "&mix=40 ft2": 9} {
		s := solve(t, entry)
		for _, system := range []unit.System{unit.Metric, unit.US} {
			marks := 0
			for _, d := range s.More[:2] {
				all := letters(t, d, system)
				for i, a := range all {
					if strings.HasPrefix(a.text, "M") {
						marks++
					}
					for _, b := range all[:i] {
						over := min(a.x1, b.x1)-max(a.x0, b.x0) > 0.5 && min(a.y1, b.y1)-max(a.y0, b.y0) > 0.5
						assert.False(t, over, "%s: %q lies over %q on %q", entry, a.text, b.text, d.Title)
					}
				}
			}
			assert.Equal(t, mixes, marks, entry)
		}
		assert.Len(t, table(t, s, "mixes").Rows, mixes, entry)
	}
}

// Nor where the triangle stands elsewhere: its figures and the diagonals keep apart on terraces of every shape.
func TestSquareApart(t *testing.T) {
	for long := 2.0; long < 10; long += 1.3 {
		for deep := 1.5; deep < 9; deep += 0.9 {
			for _, start := range []string{"0", "0.3"} {
				entry := fmt.Sprintf("outline=0 m,0 m;%.2f m,0 m;%.2f m,%.2f m;0 m,%.2f m&start=fixed&start_x=%s m&start_y=%s m", long, long, deep, deep, start, start)
				all := letters(t, solve(t, entry).More[0], unit.Metric)
				for i, a := range all {
					for _, b := range all[:i] {
						over := min(a.x1, b.x1)-max(a.x0, b.x0) > 0.5 && min(a.y1, b.y1)-max(a.y0, b.y0) > 0.5
						assert.False(t, over, "%s: %q lies over %q", entry, a.text, b.text)
					}
				}
			}
		}
	}
}

// By hand: 3.02 m of 5 pavers of 600 mm with joints of 5 mm, in two rows, 0.36 m² each. A mix of 0.72 m² covers two, so of the ten the third, the
// fifth, the seventh and the ninth begin the next ones.
func TestMixList(t *testing.T) {
	const row = "outline=0 m,0 m;3.02 m,0 m;3.02 m,1.205 m;0 m,1.205 m&edges=building,open,open,open&perimeter=0 mm&joint=5 mm&start=fixed&start_x=0 m&start_y=0 m&mix=0.72 m2"
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	var got []string
	for _, row := range table(t, solve(t, row), "mixes").Rows {
		got = append(got, fmt.Sprintf("%s %v %s", row.Cells[0].Text, math.Round(row.Cells[1].Is.Base), r.Line(row.Cells[2].Says)))
	}
	assert.Equal(t, []string{"M1 1 1 from the left", "M2 1 3 from the left", "M3 1 5 from the left", "M4 2 2 from the left", "M5 2 4 from the left"}, got)
}
