package datasheet_test

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/datasheet"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var english = words.Reader{Language: words.English, Style: unit.Style{System: unit.US, Decimal: '.'}}

func file(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../testdata/" + name)
	require.NoError(t, err)
	return string(text)
}

func told(problems []datasheet.Problem) (lines []string) {
	for _, p := range problems {
		lines = append(lines, strconv.Itoa(p.Line)+" "+p.Field+": "+english.Line(p.Says))
	}
	return lines
}

func TestTwentyFaultsOfACSVFile(t *testing.T) {
	sheet, problems := datasheet.Read(file(t, "datasheet_faults.csv"))
	assert.Len(t, problems, 20)
	assert.Equal(t, []string{
		"1 colour: There is no field named “colour”. The page lists the names that are known.",
		"1 bag: Two columns have this name.",
		"3 : The line has 3 cells, where the first line names 17 columns.",
		"4 product: The product has no name.",
		"5 product: “greyline bed 20” stands in line 2 already. Each product needs a name of its own.",
		"6 type: “plaster” is no type of product. It is one of: mortar, grout, coating, sealant.",
		"7 bag: Powder in a full bag: read “50” with no unit. Add one of: lb, oz, g, kg, t.",
		"8 bag: Powder in a full bag: the unit in “50 stone” is not known here. It takes lb, oz, g, kg, t.",
		"9 bag: Powder in a full bag: “50 qt” is in a unit of another kind. It takes lb, oz, g, kg, t.",
		"10 bag: Powder in a full bag: read 500 lb. It takes from 2.205 lb (1 kg) to 132.3 lb (60 kg).",
		"11 liquid_min: The least liquid, 6 qt, is more than the most, 5.5 qt.",
		"12 liquid: The liquid, 4 qt, is less than the least, 4.8 qt.",
		"13 foot_time: A time of a stage needs the temperature that it is for, in the field times_at.",
		"14 cartridge: A product of the type mortar has no field of this name.",
		"15 temp_min: The least temperature, 90 F, is not below the highest, 50 F.",
		"16 binder: Binder: read “quick”. Choose one of: rapid, portland.",
		"17 liquid: Liquid for a full bag: “5,2 qt” has the decimal mark of another habit. Write it as in 5.2 qt. Perhaps “5.2 qt”?",
		"18 bag: Something stands after the closing quote: “50 lbx”.",
		"19 bag: A quote stands inside a cell that does not begin with one: “50\" lb”.",
		"20 open_time: The quote that opens this cell is never closed: “20 min,,,,,,,,,”.",
	}, told(problems))
	require.Len(t, sheet.Products, 1, "the one good product is kept")
	assert.Equal(t, "Greyline Bed 20", sheet.Products[0].Name)
}

func TestTwentyFaultsOfAJSONFile(t *testing.T) {
	sheet, problems := datasheet.Read(file(t, "datasheet_faults.json"))
	assert.Len(t, problems, 20)
	assert.Equal(t, []string{
		"3 colour: There is no field named “colour”. The page lists the names that are known.",
		"4 bag: This field is given twice.",
		"5 product: The product has no name.",
		"6 product: “GREYLINE BED 20” stands in line 2 already. Each product needs a name of its own.",
		"7 type: “plaster” is no type of product. It is one of: mortar, grout, coating, sealant.",
		"8 bag: Powder in a full bag: read “50” with no unit. Add one of: lb, oz, g, kg, t.",
		"9 bag: Powder in a full bag: the unit in “50 stone” is not known here. It takes lb, oz, g, kg, t.",
		"10 bag: Powder in a full bag: “50 qt” is in a unit of another kind. It takes lb, oz, g, kg, t.",
		"11 bag: Powder in a full bag: read 500 lb. It takes from 2.205 lb (1 kg) to 132.3 lb (60 kg).",
		"12 liquid_min: The least liquid, 6 qt, is more than the most, 5.5 qt.",
		"13 liquid: The liquid, 4 qt, is less than the least, 4.8 qt.",
		"14 foot_time: A time of a stage needs the temperature that it is for, in the field times_at.",
		"15 cartridge: A product of the type mortar has no field of this name.",
		"16 temp_min: The least temperature, 90 F, is not below the highest, 50 F.",
		"17 binder: Binder: read “quick”. Choose one of: rapid, portland.",
		"18 liquid: Liquid for a full bag: “5,2 qt” has the decimal mark of another habit. Write it as in 5.2 qt. Perhaps “5.2 qt”?",
		"19 bag: A value is a text in quotes or a number, and “null” was read.",
		"20 bag: A value is a text in quotes or a number, and “true” was read.",
		"21 product: “A name that goes on and on until it is l…” is longer than 60 characters.",
		"22 : “,” was expected, and “\"type\": \"mortar\"}” was read. What follows is not read.",
	}, told(problems))
	require.Len(t, sheet.Products, 1)
}

// TestTwoHundredProducts reads the same sheet in both forms, and holds what is read to the readers of Go's own
// library (encoding/csv, encoding/json).
func TestTwoHundredProducts(t *testing.T) {
	inCSV, problems := datasheet.Read(file(t, "sheets/datasheet.csv"))
	require.Empty(t, told(problems))
	inJSON, problems := datasheet.Read(file(t, "sheets/datasheet.json"))
	require.Empty(t, told(problems))

	records, err := csv.NewReader(strings.NewReader(file(t, "sheets/datasheet.csv"))).ReadAll()
	require.NoError(t, err)
	var objects []map[string]string
	require.NoError(t, json.Unmarshal([]byte(file(t, "sheets/datasheet.json")), &objects))
	require.Len(t, inCSV.Products, 200)
	require.Len(t, inJSON.Products, 200)
	require.Len(t, objects, 200)
	for i, p := range inCSV.Products {
		want := map[string]string{}
		for j, cell := range records[i+1] {
			if cell != "" {
				want[records[0][j]] = cell
			}
		}
		assert.Equal(t, objects[i], want)
		for _, p := range []*datasheet.Product{p, inJSON.Products[i]} {
			assert.Equal(t, want["product"], p.Name)
			assert.Equal(t, want["type"], p.Type)
			assert.Len(t, p.Texts, len(want)-2)
			for key, text := range p.Texts {
				assert.Equal(t, want[key], text)
			}
		}
	}
}

// TestQuotedCells: what RFC 4180 allows in quotes reads as Go's own reader has it.
func TestQuotedCells(t *testing.T) {
	const text = "\ufeffproduct,type,bag\r\n\"Bed \"\"One\"\", grey\",mortar,\"50 lb\"\r\n\r\nTwo,mortar,\r\n"
	records, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(text, "\ufeff"))).ReadAll()
	require.NoError(t, err)
	sheet, problems := datasheet.Read(text)
	require.Empty(t, told(problems))
	require.Len(t, sheet.Products, 2)
	for i, p := range sheet.Products {
		assert.Equal(t, records[i+1][0], p.Name)
		assert.Equal(t, records[i+1][2], p.Texts["bag"])
	}
	assert.Equal(t, 4, sheet.Products[1].Line)
}

// TestLinesAreThoseOfTheFile: a cell that goes over a line's end counts with both its lines.
func TestLinesAreThoseOfTheFile(t *testing.T) {
	_, problems := datasheet.Read("product,type,bag\r\na,mortar,\"50\r\nlb\"\r\n\r\nb,plaster,50 lb\r\n")
	require.NotEmpty(t, problems)
	assert.Equal(t, 5, problems[len(problems)-1].Line)
	_, problems = datasheet.Read("[\n\n{\"product\": \"a\",\n\"type\":\n\"plaster\"}]")
	require.Len(t, problems, 1)
	assert.Equal(t, 5, problems[0].Line)
}

func TestEscapesOfJSON(t *testing.T) {
	const text = `[{"product": "Bed \u00e9\n\"x\" \ud83d\udc77\/", "type": "mortar"}]`
	var want []map[string]string
	require.NoError(t, json.Unmarshal([]byte(text), &want))
	_, problems := datasheet.Read(text)
	require.Len(t, problems, 1, "a name with a line end in it")
	sheet, problems := datasheet.Read(strings.Replace(text, `\n`, "", 1))
	require.Empty(t, told(problems))
	assert.Equal(t, strings.Replace(want[0]["product"], "\n", "", 1), sheet.Products[0].Name)
}

func TestWholeFilesThatCannotBe(t *testing.T) {
	for text, want := range map[string]string{
		"":                      "1 : The file is empty.",
		" \n":                   "1 : The file is empty.",
		"[]":                    "1 : There is no product in this file.",
		"product,type\n":        "1 : There is no product in this file.",
		"product,type\na\xff":   "2 : This is not text in UTF-8. Save the file as UTF-8.",
		"{}":                    "1 : “[” was expected, and “{}” was read. What follows is not read.",
		"[{\"product\":\n\n1e,": "3 : A name in quotes was expected, and “” was read. What follows is not read.",
	} {
		_, problems := datasheet.Read(text)
		require.NotEmpty(t, problems, text)
		assert.Equal(t, want, told(problems)[0], text)
	}
	_, problems := datasheet.Read(strings.Repeat("x", 2<<20))
	assert.Len(t, problems, 1)
}

// TestFieldsAreThoseOfTheInputs: what a column fills is there, is of its kind, and takes whatever the column takes.
func TestFieldsAreThoseOfTheInputs(t *testing.T) {
	sheet, problems := datasheet.Read(file(t, "sheets/datasheet.csv"))
	require.Empty(t, problems)
	filled := map[string]bool{}
	for _, c := range all.Calculators() {
		for _, o := range sheet.Offers(c.ID) {
			require.NotEmpty(t, o.Texts)
			e, problems := c.Read(o.Texts, calc.Habit{})
			require.Empty(t, problems, "%s: %s", c.ID, o.Product.Name)
			for key := range o.Texts {
				filled[c.ID+"."+key] = true
				assert.NotEmpty(t, o.From[key])
				assert.False(t, e.Reading(key).Example)
			}
		}
	}
	for _, target := range datasheet.Targets() {
		at := strings.Split(target.Input, ".")
		c, ok := all.ByID(at[0])
		require.True(t, ok, target.Input)
		in := c.Input(at[1])
		require.NotNil(t, in, target.Input)
		assert.Equal(t, in.Kind, target.Column.Kind, target.Input)
		assert.Equal(t, len(in.Options), len(target.Column.Options), target.Input)
		assert.LessOrEqual(t, in.Min, target.Column.Min, target.Input)
		assert.GreaterOrEqual(t, in.Max, target.Column.Max, target.Input)
		assert.True(t, filled[target.Input], "%s is filled by no product of the sheet", target.Input)
	}
}

// TestAYieldOverItsBag against a sum by hand: 0.6 ft3 is 16.99 L and 50 lb is 22.68 kg, which is 0.7491 L/kg.
func TestAYieldOverItsBag(t *testing.T) {
	sheet, problems := datasheet.Read("product,type,bag,yield\nBed,mortar,50 lb,0.6 ft3\n")
	require.Empty(t, problems)
	offers := sheet.Offers("pace")
	require.Len(t, offers, 1)
	assert.Equal(t, "0.7491 L/kg", offers[0].Texts["powder_yield"])
}

// TestEachStageOfAWait: each time of a product is offered by itself, with the temperature that it is for.
func TestEachStageOfAWait(t *testing.T) {
	sheet, problems := datasheet.Read("product,type,foot_time,grout_time,times_at,binder\nBed,mortar,4 h,16 h,70 F,rapid\n")
	require.Empty(t, problems)
	offers := sheet.Offers("wait")
	require.Len(t, offers, 2)
	assert.Equal(t, calc.Texts{"bag_time": "4 h", "bag_temp": "70 F", "binder": "rapid"}, offers[0].Texts)
	assert.Equal(t, calc.Texts{"bag_time": "16 h", "bag_temp": "70 F", "binder": "rapid"}, offers[1].Texts)
	assert.Empty(t, sheet.Offers("slope"))
}

// FuzzRead: no file makes the reader fail or go on for ever, each problem has a line of the file, and every product that is
// kept can be put into every calculator.
func FuzzRead(f *testing.F) {
	for _, name := range []string{"datasheet_faults.csv", "datasheet_faults.json"} {
		f.Add(file(f, name))
	}
	f.Add("product,type,bag\n\"a\",mortar,50 lb")
	f.Add(`[{"product":"a","type":"mortar","coats":2}]`)
	f.Fuzz(func(t *testing.T, text string) {
		sheet, problems := datasheet.Read(text)
		if len(sheet.Products) == 0 && len(problems) == 0 {
			t.Fatal("nothing was read and nothing is wrong")
		}
		for _, p := range problems {
			if p.Line < 1 || p.Line > 2+strings.Count(text, "\n")+strings.Count(text, "\r") {
				t.Fatalf("line %d of %q", p.Line, text)
			}
			english.Line(p.Says)
		}
		for _, c := range all.Calculators() {
			for _, o := range sheet.Offers(c.ID) {
				for key := range o.Texts {
					if c.Input(key) == nil {
						t.Fatalf("%s has no %s", c.ID, key)
					}
				}
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	for _, name := range []string{"sheets/datasheet.csv", "sheets/datasheet.json"} {
		text := file(b, name)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				datasheet.Read(text)
			}
		})
	}
}
