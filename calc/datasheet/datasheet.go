// Package datasheet reads a supplier's own data sheet: one file, CSV or JSON, with a product a row, and says which inputs of
// which calculators a product fills. The names in it are the supplier's. It is read strictly: whatever is not
// understood is told with its line and its field, and a product with a fault is left out.
package datasheet

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Bounds of a file, far past a real one, so that a wrong file cannot freeze a phone.
const (
	maxBytes    = 1 << 20
	maxProducts = 1000
	maxName     = 60
	maxProblems = 200
)

// Problem is one thing that is wrong: the line of the file, counted from 1, the field ("" where it
// concerns the whole line), and what was read and what would be taken.
type Problem struct {
	Line  int
	Field string
	Says  words.Line
}

// Product is one product of a sheet. Its texts are those of the file, by the key of their column.
type Product struct {
	Name, Type string
	Line       int
	Texts      calc.Texts
	base       map[string]float64
}

// Sheet is the products of a file, in its order.
type Sheet struct{ Products []*Product }

// cell is one field of a row as it stands in the file.
type cell struct {
	key, text string
	line      int
}

// row is one product as it stands in the file. A broken one had faults of form, which are told already.
type row struct {
	line   int
	cells  []cell
	broken bool
}

// reader gathers what is wrong while it reads.
type reader struct {
	problems []Problem
	byName   map[string]int // the line of each product, by its name in small letters
}

func (r *reader) fail(line int, field string, m words.Msg, with ...*words.Arg) {
	r.tell(line, field, words.Say(m, with...))
}

func (r *reader) tell(line int, field string, l words.Line) {
	if len(r.problems) < maxProblems {
		r.problems = append(r.problems, Problem{line, calc.Cut(field), l})
	}
}

// Read reads a file: JSON where it begins with a bracket or a brace, else CSV. The sheet holds every product without a fault.
func Read(text string) (*Sheet, []Problem) {
	r := &reader{byName: map[string]int{}}
	text = strings.TrimPrefix(text, "\ufeff") // spreadsheets put a byte order mark in front
	var rows []row
	switch first := strings.TrimSpace(text); {
	case len(text) > maxBytes:
		r.fail(1, "", "The file is longer than 1 MB, which is all that is read.")
	case !utf8.ValidString(text):
		r.fail(badLine(text), "", "This is not text in UTF-8. Save the file as UTF-8.")
	case first == "":
		r.fail(1, "", "The file is empty.")
	case first[0] == '[' || first[0] == '{':
		rows = r.json(text)
	default:
		rows = r.csv(text)
	}
	s := &Sheet{}
	for i, row := range rows {
		if i == maxProducts {
			r.fail(row.line, "", "There are more than {most} products, which is all that is read.", words.Is("most", unit.Count(maxProducts), unit.Whole1))
			break
		}
		if p := r.product(row); p != nil {
			s.Products = append(s.Products, p)
		}
	}
	if len(rows) == 0 && len(r.problems) == 0 {
		r.fail(1, "", "There is no product in this file.")
	}
	order(r.problems)
	return s, r.problems
}

// badLine is the line of the first byte that is not UTF-8.
func badLine(text string) int {
	line := 1
	for i, c := range text {
		if c == utf8.RuneError && !strings.HasPrefix(text[i:], string(utf8.RuneError)) {
			break
		}
		if c == '\n' {
			line++
		}
	}
	return line
}

// order sorts problems by their lines and keeps those of one line as they were found.
func order(p []Problem) {
	for i := 1; i < len(p); i++ {
		for j := i; j > 0 && p[j].Line < p[j-1].Line; j-- {
			p[j], p[j-1] = p[j-1], p[j]
		}
	}
}

// product checks one row.
func (r *reader) product(row row) *Product {
	before := len(r.problems)
	p := &Product{Line: row.line, Texts: calc.Texts{}, base: map[string]float64{}}
	lines := map[string]int{}
	for _, c := range row.cells {
		switch text := strings.TrimSpace(c.text); {
		case text == "":
			continue
		case c.key == nameKey:
			p.Name = text
		case c.key == typeKey:
			p.Type = strings.ToLower(text)
		default:
			p.Texts[c.key] = text
		}
		lines[c.key] = c.line
	}
	at := func(key string) int {
		if line, ok := lines[key]; ok {
			return line
		}
		return row.line
	}
	r.named(p, at(nameKey), row.broken)
	kind, known := kinds[p.Type]
	if !known && !row.broken {
		r.fail(at(typeKey), typeKey, "“{read}” is no type of product. It is one of: {types}.", words.Text("read", calc.Cut(p.Type)), words.Text("types", typeNames))
	}
	for i := range columns {
		c := &columns[i]
		text, given := p.Texts[c.Key]
		switch {
		case !given:
		case known && c.of&kind == 0:
			r.fail(at(c.Key), c.Key, "A product of the type {type} has no field of this name.", words.Text("type", p.Type))
		default:
			r.value(p, c, text, at(c.Key))
		}
	}
	if known {
		r.agree(p, at)
	}
	if len(r.problems) > before || row.broken {
		return nil
	}
	return p
}

// named checks the name of a product.
func (r *reader) named(p *Product, line int, broken bool) {
	folded := strings.ToLower(p.Name)
	first, twice := r.byName[folded]
	switch {
	case p.Name == "":
		if !broken {
			r.fail(line, nameKey, "The product has no name.")
		}
		return
	case utf8.RuneCountInString(p.Name) > maxName:
		r.fail(line, nameKey, "“{read}” is longer than {most} characters.", words.Text("read", calc.Cut(p.Name)), words.Is("most", unit.Count(maxName), unit.Whole1))
	case strings.ContainsFunc(p.Name, unicode.IsControl):
		r.fail(line, nameKey, "A name stands on one line, with no tab in it.")
	case twice:
		r.fail(line, nameKey, "“{read}” stands in line {line} already. Each product needs a name of its own.", words.Text("read", calc.Cut(p.Name)), words.Is("line", unit.Count(first), unit.Whole1))
	}
	if !twice {
		r.byName[folded] = line
	}
}

// value reads one field. A number must bring its unit.
func (r *reader) value(p *Product, c *column, text string, line int) {
	habit := calc.Habit{Decimal: '.'}
	base, ok := c.Value(text, habit)
	if ok {
		p.base[c.Key] = base
		return
	}
	one := calc.Calculator{Inputs: []*calc.Input{c.Input}} // only now: a good file has thousands of fields
	_, problems := one.Read(calc.Texts{c.Key: text}, habit)
	for _, problem := range problems {
		r.tell(line, c.Key, problem.Says)
	}
}

// agree holds the fields of a product against each other.
func (r *reader) agree(p *Product, at func(key string) int) {
	least, hasLeast := p.base["liquid_min"]
	most, hasMost := p.base["liquid_max"]
	liquid, hasLiquid := p.base["liquid"]
	switch {
	case hasLeast && hasMost && least > most:
		r.fail(at("liquid_min"), "liquid_min", "The least liquid, {read}, is more than the most, {limit}.", words.Text("read", p.Texts["liquid_min"]), words.Text("limit", p.Texts["liquid_max"]))
	case hasLiquid && hasLeast && liquid < least:
		r.fail(at("liquid"), "liquid", "The liquid, {read}, is less than the least, {limit}.", words.Text("read", p.Texts["liquid"]), words.Text("limit", p.Texts["liquid_min"]))
	case hasLiquid && hasMost && liquid > most:
		r.fail(at("liquid"), "liquid", "The liquid, {read}, is more than the most, {limit}.", words.Text("read", p.Texts["liquid"]), words.Text("limit", p.Texts["liquid_max"]))
	}
	low, hasLow := p.base["temp_min"]
	high, hasHigh := p.base["temp_max"]
	if hasLow && hasHigh && low >= high {
		r.fail(at("temp_min"), "temp_min", "The least temperature, {read}, is not below the highest, {limit}.", words.Text("read", p.Texts["temp_min"]), words.Text("limit", p.Texts["temp_max"]))
	}
	_, hasTemperature := p.Texts["times_at"]
	for _, s := range stages {
		if _, has := p.Texts[s.key]; has && !hasTemperature {
			r.fail(at(s.key), s.key, "A time of a stage needs the temperature that it is for, in the field {field}.", words.Text("field", "times_at"))
			break
		}
	}
}
