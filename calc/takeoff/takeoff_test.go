package takeoff_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/calctest"
	"setbook/calc/job"
	"setbook/calc/link"
	"setbook/calc/source"
	"setbook/calc/takeoff"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Published: JCGM 100:2008 (GUM), example H.1: the parts 25, 9.7, 2.9 and 16.6 nm come to 32 nm, and those of d, 5.8, 3.9 and 6.7 nm, to 9.7 nm
// (read in the documentation of the GTC library, MSLNZ/GTC docs/API/GUM_H1.rst). GUM 5.2.2, from memory: ten resistors that were checked against one standard of 100 mΩ come to 1 Ω,
// not to 0.32 Ω.
func TestCombining(t *testing.T) {
	assert.InDelta(t, 32, takeoff.Independent(25, 9.7, 2.9, 16.6), 0.5)
	assert.InDelta(t, 9.7, takeoff.Independent(5.8, 3.9, 6.7), 0.05)
	ten := make([]float64, 10)
	for i := range ten {
		ten[i] = 0.1
	}
	assert.InDelta(t, 1, takeoff.Shared(ten...), 1e-12)
	assert.InDelta(t, 0.32, takeoff.Independent(ten...), 0.005)
	// Two deviations are a sheet's high end, and 5 % of a normal spread lie above 1.645 of them: the complementary error function of the standard library.
	above := math.Erfc((takeoff.Cautious(10, 2)-10)/(2.0/2)/math.Sqrt2) / 2
	assert.InDelta(t, 0.05, above, 1e-4)
	assert.InDelta(t, 47, float64(takeoff.EachPaver(unit.SquareMetre, 20*unit.Millimetre, 2350)/unit.Kilogram), 1e-9, "47.0 kg/m² at 20 mm: references, case 97")
}

// supply makes a calculator that comes to so much of one material, to stand for a question.
func supply(id string, of *calc.Material, pack unit.Figure, likely, high float64) *calc.Calculator {
	return &calc.Calculator{ID: id, Title: "Bed", Work: func(_ calc.Entry, s *calc.Sheet) {
		calc.Gives(s, "buy", "Bags to buy", unit.Whole(likely), unit.Whole1).Between(likely, high, words.Line{}).Buy().
			Of(&calc.Supply{Of: of, In: "bags", Pack: pack, Likely: likely, Low: likely, High: high})
	}}
}

func solve(t *testing.T, questions []*calc.Calculator, texts calc.Texts) *calc.Sheet {
	c := takeoff.Of(questions)
	e, problems := c.Read(texts, calc.Habit{})
	require.Empty(t, problems)
	s := c.Solve(e)
	require.Empty(t, s.Problems)
	for i := range s.Steps {
		for _, r := range calctest.Readers[:2] {
			calctest.Arithmetic(t, &s.Steps[i], r.Style)
		}
	}
	return s
}

func figure(t *testing.T, s *calc.Sheet, key string) calc.Answer {
	a, ok := s.Answer(key)
	require.True(t, ok, key)
	return a
}

// One cause adds straight, different causes by squares. With spreads of 6 and 8: straight 14, by squares 10.
func TestCauses(t *testing.T) {
	pack := unit.Fig(25*unit.Kilogram, unit.PoundKg)
	questions := []*calc.Calculator{supply("a", calc.BuyGrout, pack, 30, 36), supply("b", calc.BuyGrout, pack, 50, 58)}
	s := solve(t, questions, calc.Texts{"job": "a?\nb?", "cuts": "0 m"})
	a := figure(t, s, "grout")
	assert.EqualValues(t, 80, a.Is.Base)
	assert.EqualValues(t, 89, a.High, "80 + 1.645 × 10 ÷ 2 = 88.225, bought whole")
	assert.InDelta(t, 89*25, figure(t, s, "weight").Is.Base/float64(unit.Kilogram), 1e-9)
	s = solve(t, questions, calc.Texts{"job": "a?\na?\nb?", "cuts": "0 m"})
	assert.EqualValues(t, 122, figure(t, s, "grout").High, "the root of (6 + 6)² + 8² is 14.42; 110 + 11.86 = 121.86, bought whole")
}

// Pavers: 100 and 40 of 0.36 m², spares of 5 %, spread 10 and 4 from one cause.
func TestPavers(t *testing.T) {
	face := unit.Fig(unit.Area(0.36e12), unit.InchArea)
	questions := []*calc.Calculator{supply("a", calc.BuyPavers, face, 100, 110), supply("b", calc.BuyPavers, face, 40, 43)}
	s := solve(t, questions, calc.Texts{"job": "a Main+terrace?\nb?", "cuts": "0 m", "spares": "5 %", "spacers": "2", "clips": "4", "density": "2.35 kg/L"})
	a := figure(t, s, "pavers")
	assert.InDelta(t, 147, a.Is.Base, 1e-9)
	assert.EqualValues(t, 157, a.High, "147 + 1.05 × 1.645 × √(10² + 3²) ÷ 2 = 156.02, bought whole")
	assert.InDelta(t, 157*0.36*47, figure(t, s, "weight").Is.Base/float64(unit.Kilogram), 1e-6, "47 kg/m² at 20 mm: references, case 97")
	assert.EqualValues(t, 280, figure(t, s, "spacers").Is.Base, "two to each of the 140 that are laid")
	assert.EqualValues(t, 325, figure(t, s, "spacers").High, "13 pavers more are 26, a tenth lost 28: 280 + 1.645 × 54 ÷ 2 = 324.4")
	assert.EqualValues(t, 560, figure(t, s, "clips").Is.Base)
	row := listed(s)[0]
	assert.Equal(t, "157", row[2])
	assert.Contains(t, row[3], "pieces with a face of ")
	assert.Contains(t, row[6], "(Main terrace), ")
	care := false
	for _, w := range s.Cautions {
		care = care || w.Severity == calc.Care && w.Cite == source.LiftingEquation
	}
	assert.False(t, care, "16.9 kg are less than the 23 kg that the lifting equation starts from")
}

// The order buys what the page of the sealant tells of, and every answer reads as its line. By hand, 17.5 mm of joint in 20 mm pavers on a closed
// bed: 20 − 8.75 mm leaves 11.25 mm, too little for a rod of 21.875 mm. 3/8 in of joint leaves 13.65 mm for one of 11.91 mm.
func TestBacking(t *testing.T) {
	c, _ := all.ByID("takeoff")
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	for entry, want := range map[string]string{
		"width=17.5 mm&depth=0 mm&bed=0 mm&sag=0 mm&dome=3 mm":            "bond-breaker tape on a flat strip of soft foam, 17.5 mm wide, 11.25 mm to fill",
		"width=17.5 mm&depth=0 mm&bed=0 mm&sag=0 mm&dome=0 mm&paver=9 mm": "bond-breaker tape, 17.5 mm across",
		"width=3/8 in&depth=0 mm&bed=0 mm&sag=0 mm&dome=3 mm":             "backing rod, 11.91 mm across",
	} {
		e, problems := c.Read(calc.Texts{"job": "sealant?" + entry + "&run=10 m&cartridge=300 mL", "cuts": "0 m"}, calc.Habit{})
		require.Empty(t, problems)
		s := c.Solve(e)
		row := listed(s)[1]
		assert.Equal(t, want, row[3], entry)
		assert.Equal(t, row[2]+" of "+want, r.Line(figure(t, s, "backing").Reads), entry)
		cartridges := listed(s)[0]
		assert.Equal(t, cartridges[2]+" cartridges of 300 mL", r.Line(figure(t, s, "sealant").Reads), entry)
	}
}

// A question that names nothing is ordered from all the same, by its own words, with its rounded figure.
func TestUnnamed(t *testing.T) {
	plain := &calc.Calculator{ID: "levels", Title: "Levels", Work: func(_ calc.Entry, s *calc.Sheet) {
		calc.Gives(s, "buy", "Bags to buy", unit.Count(4), unit.Whole1).Between(3, 6, words.Line{}).Buy()
		calc.Gives(s, "none", "Pails to buy", unit.Count(0), unit.Whole1).Buy()
	}}
	s := solve(t, []*calc.Calculator{plain}, calc.Texts{"job": "levels?", "cuts": "0 m"})
	a := figure(t, s, "levels_buy")
	assert.EqualValues(t, 4, a.Is.Base)
	assert.EqualValues(t, 6, a.High, "4 + 1.645 × 2 ÷ 2 = 5.645, bought whole")
	assert.Equal(t, []string{"1", "Levels: Bags to buy", "6"}, listed(s)[0][:3])
	require.Len(t, s.Tables[0].Rows, 1, "nothing is ordered of what comes to nought")
}

// Whatever the parts: never under the likely figure, never more than their high ends, and what is bought is whole.
func TestBounds(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 5))
	pack := unit.Fig(unit.Kilogram, unit.PoundKg)
	for range 500 {
		var questions []*calc.Calculator
		var lines []string
		likely, high := 0.0, 0.0
		for i := range 1 + random.IntN(6) {
			id := "q" + strconv.Itoa(i)
			at, more := random.Float64()*50, random.Float64()*20
			questions = append(questions, supply(id, calc.BuyMortar, pack, at, at+more))
			for range 1 + random.IntN(3) {
				lines = append(lines, id+"?")
				likely, high = likely+at, high+at+more
			}
		}
		a := figure(t, solve(t, questions, calc.Texts{"job": strings.Join(lines, "\n"), "cuts": "0 m"}), "mortar")
		assert.InDelta(t, likely, a.Is.Base, 1e-9*likely)
		assert.GreaterOrEqual(t, a.High, likely)
		assert.LessOrEqual(t, a.High, math.Ceil(high))
		assert.Equal(t, math.Trunc(a.High), a.High)
	}
}

// A job's file and its lines come to the same order, and an order among the entries, or a calculator of a newer Setbook, is passed over in a file.
func TestFile(t *testing.T) {
	c, ok := all.ByID("takeoff")
	require.True(t, ok)
	demo := job.Demo(1_777_000_000_000)
	demo.Entries = append(demo.Entries, job.Entry{ID: "t", Calculator: "takeoff", Link: "v=1&cuts=1+m"}, job.Entry{ID: "u", Calculator: "unheard-of", Link: "v=1&x=1"})
	file, problems := c.Read(calc.Texts{"job": job.Write(demo)}, calc.Habit{})
	require.Empty(t, problems)
	assert.Equal(t, job.Lines(job.Demo(0)), file.Reading("job").Text, "what is kept is the lines")
	assert.Equal(t, c.Solve(c.Example()).Answers, c.Solve(file).Answers)
	text := link.Format(c, file, unit.Metric)
	again, problems := link.Read(c, text, calc.Habit{})
	require.Empty(t, problems)
	assert.Equal(t, c.Solve(file).Answers, c.Solve(again).Answers, "through a link")
	lines, problems := c.Read(calc.Texts{"job": " bed?width=1 in \r\ntakeoff?x\n"}, calc.Habit{})
	require.Empty(t, problems)
	assert.Equal(t, "bed?width=1 in", lines.Reading("job").Text, "an order among the lines is passed over")
	for text, want := range map[string]string{
		"bed?width=1 in\n\nfoo?x=1":   "line 3: there is no calculator named “foo”",
		"bed?width=1 kg":              "line 1: Notch to bed: Notch width: ",
		`{"setbook": "job"`:           "Line 1",
		"\n":                          "nothing to order from",
		strings.Repeat("bed?\n", 201): "more than 200 lines",
	} {
		_, problems := c.Read(calc.Texts{"job": text}, calc.Habit{})
		require.Len(t, problems, 1, text)
		assert.Contains(t, calctest.Readers[0].Line(problems[0].Says), want)
	}
}

// What is known from the order before changes nothing: an entry changed there and back comes to the same.
func TestKnownSheets(t *testing.T) {
	c, _ := all.ByID("takeoff")
	at := func(area string) []calc.Answer {
		e, problems := c.Read(calc.Texts{"job": "bed?area=" + area + "\ngrout?area=10 m2"}, calc.Habit{})
		require.Empty(t, problems)
		return c.Solve(e).Answers
	}
	first := at("10 m2")
	assert.NotEqual(t, first, at("40 m2"))
	assert.Equal(t, first, at("10 m2"))
}

// listed is the cells of the order as they are read.
func listed(s *calc.Sheet) (rows [][]string) {
	r := words.Reader{Language: words.English, Style: unit.Style{System: unit.Metric, Decimal: '.'}}
	for _, row := range s.Tables[0].Rows {
		var cells []string
		for _, c := range row.Cells {
			text := c.Text
			if c.Is != nil {
				text = r.Style.Print(*c.Is)
			} else if c.Says.Msg != "" {
				text = r.Line(c.Says)
			}
			cells = append(cells, text)
		}
		rows = append(rows, cells)
	}
	return rows
}

// Prices are those that were typed, by the piece that is bought.
func TestPrices(t *testing.T) {
	c, _ := all.ByID("takeoff")
	e, problems := c.Read(calc.Texts{"job": `grout A%22b,c?area=100 m2`, "prices": "1, 20"}, calc.Habit{})
	require.Empty(t, problems)
	rows := listed(c.Solve(e))
	assert.Equal(t, "Grout", rows[0][1])
	assert.Equal(t, `Grout in the joints (A"b,c)`, rows[0][6])
	assert.Equal(t, "none typed", rows[1][7])
	order, err := strconv.ParseFloat(rows[0][2], 64)
	require.NoError(t, err)
	assert.Equal(t, strconv.Itoa(int(order)*20), rows[0][7])
}

// Any text for the job does no worse than a problem in words, and what is kept is kept again as it is.
func FuzzEntries(f *testing.F) {
	c, _ := all.ByID("takeoff")
	in := c.Input("job")
	f.Add(in.Example)
	f.Add(job.Write(job.Demo(0)))
	f.Add("bed a+b?width=1 in\r\ntakeoff?x\n")
	f.Fuzz(func(t *testing.T, text string) {
		kept, wrong := in.Reads(text)
		require.NotEqual(t, kept == "", wrong.Msg == "")
		if wrong.Msg == "" {
			again, wrong := in.Reads(kept)
			require.Empty(t, wrong.Msg)
			require.Equal(t, kept, again)
		}
	})
}
