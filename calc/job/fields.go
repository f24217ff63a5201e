package job

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// pass goes over the fields of one object of the record in their order. One list of the fields serves reading,
// writing, comparing and joining, so that they cannot differ: exactly one of from, to and cells is in use.
type pass struct {
	r    *reader
	from *node
	path string

	to    *strings.Builder
	depth int
	wrote bool // something was written in this object

	cells *[]cell
	lists *[]list
}

// list is a list of the record: the label of one line, and how its lines are reached and made. A line is gone over only when it is wanted: a
// log may have ten thousand.
type list struct {
	key   string
	label words.Msg
	count int
	grow  func()
	each  func(i int, p *pass)
	cells []cell // of the line that was last asked for
}

// line is the cells of one line, its ID first. They stand until the next line is asked for.
func (l *list) line(i int) []cell {
	l.cells = l.cells[:0]
	l.each(i, &pass{cells: &l.cells})
	return l.cells
}

// id is the ID of a line.
func (l *list) id(i int) string { return *l.line(i)[0].text }

// places are the lines by their IDs.
func (l *list) places() map[string]int {
	at := make(map[string]int, l.count)
	for i := range l.count {
		at[l.id(i)] = i
	}
	return at
}

// cell is one field of an object and where it stands: a text, or an instant.
type cell struct {
	key     string
	label   words.Msg
	text    *string
	at      *countdown.Instant // where it is no text
	must    bool               // an instant that is there even where it is 0
	picture bool
}

// same reports whether the same stands in two cells of one field.
func (c *cell) same(as *cell) bool {
	if c.at != nil {
		return *c.at == *as.at
	}
	return *c.text == *as.text
}

// set makes a cell hold what another cell of its field holds.
func (c *cell) set(from *cell) {
	if c.at != nil {
		*c.at = *from.at
	} else {
		*c.text = *from.text
	}
}

// raw is what stands in the record.
func (c *cell) raw() string {
	switch {
	case c.at == nil:
		return *c.text
	case *c.at == 0 && !c.must:
		return ""
	}
	return stamp(*c.at)
}

// shown is what a person is told of it: an instant to its minute, of a picture how large it is in place of its letters.
func (c *cell) shown() string {
	text := c.raw()
	switch {
	case text == "":
	case c.at != nil:
		return text[:len("2026-05-04")] + " " + text[len("2026-05-04T"):len("2026-05-04T08:30")] + " UTC"
	case c.picture:
		if width, height, ok := PictureSize(text); ok {
			return strconv.Itoa(width) + " × " + strconv.Itoa(height) + " px"
		}
	}
	return text
}

// take finds a member while reading, and marks it as known.
func (p *pass) take(key string) *node {
	n := p.from.member(key)
	if n != nil {
		n.known = true
	}
	return n
}

// begin writes what stands before a value, and its key.
func (p *pass) begin(key string) {
	if p.wrote {
		p.to.WriteByte(',')
	}
	switch {
	case p.depth < wholeLine:
		p.to.WriteString("\n" + strings.Repeat("  ", p.depth))
	case p.wrote:
		p.to.WriteByte(' ')
	}
	p.wrote = true
	quote(p.to, key)
	p.to.WriteString(": ")
}

// wholeLine is the depth at which an object is written on one line.
const wholeLine = 2

func (p *pass) at(key string) string {
	if p.path == "" {
		return key
	}
	return p.path + "." + key
}

// text is a field that holds text.
func (p *pass) text(key string, label words.Msg, field *string, is rule) {
	switch {
	case p.cells != nil:
		*p.cells = append(*p.cells, cell{key: key, label: label, text: field})
	case p.to != nil:
		if *field != "" || is.must {
			p.begin(key)
			quote(p.to, *field)
		}
	default:
		n := p.take(key)
		switch {
		case n == nil:
			p.missing(key, is.must)
		case n.kind != '"':
			p.r.wrong(n.at, p.at(key), words.Say("a text in quotes was expected."))
		case n.text == "" && !is.must:
		case n.text == "":
			p.r.wrong(n.at, p.at(key), words.Say("nothing stands there."))
		case len(n.text) > is.most && utf8.RuneCountInString(n.text) > is.most:
			p.r.wrong(n.at, p.at(key), words.Say("it has more than {most} characters, which is the most.", words.Is("most", unit.Count(is.most), unit.Whole1)))
		default:
			if l := is.check(n.text); l.Msg != "" {
				p.r.wrong(n.at, p.at(key), l)
				return
			}
			*field = n.text
		}
	}
}

// picture is a field that holds a picture.
func (p *pass) picture(key string, label words.Msg, field *string) {
	p.text(key, label, field, pictureRule)
	if p.cells != nil {
		(*p.cells)[len(*p.cells)-1].picture = true
	}
}

func (p *pass) missing(key string, must bool) {
	if must {
		p.r.wrong(p.from.at, p.at(key), words.Say("it is missing."))
	}
}

// when is a field that holds an instant. One that need not be there is 0 where it is not.
func (p *pass) when(key string, label words.Msg, field *countdown.Instant, must bool) {
	switch {
	case p.cells != nil:
		*p.cells = append(*p.cells, cell{key: key, label: label, at: field, must: must})
	case p.to != nil:
		if *field != 0 || must {
			p.begin(key)
			quote(p.to, stamp(*field))
		}
	default:
		n := p.take(key)
		if n == nil {
			p.missing(key, must)
			return
		}
		at, ok := readStamp(n.text)
		if n.kind != '"' || !ok {
			p.r.wrong(n.at, p.at(key), words.Say("a time in UTC was expected, as in “{example}”.", words.Text("example", stamp(0))))
			return
		}
		*field = at
	}
}

// whole is a field that holds a whole number.
func (p *pass) whole(key string, field *int64) {
	switch {
	case p.cells != nil: // a number of the program's own, which is no news
	case p.to != nil:
		p.begin(key)
		p.to.WriteString(strconv.FormatInt(*field, 10))
	default:
		n := p.take(key)
		if n == nil {
			p.missing(key, true)
			return
		}
		number, ok := readWhole(n)
		if !ok {
			p.r.wrong(n.at, p.at(key), words.Say("a whole number from 0 on was expected."))
			return
		}
		*field = number
	}
}

// readWhole reads what a browser holds as a whole number, too.
func readWhole(n *node) (int64, bool) {
	number, err := strconv.ParseInt(n.text, 10, 64)
	return number, n.kind == '0' && err == nil && 0 <= number && number < 1<<53 && n.text[0] != '-'
}

// object is a field that holds an object; it is left out where there is nothing in it.
func (p *pass) object(key string, empty bool, fields func(*pass)) {
	switch {
	case p.cells != nil:
		fields(p)
	case p.to != nil:
		if !empty {
			p.begin(key)
			p.write(fields, wholeLine)
		}
	default:
		if n := p.take(key); n != nil {
			p.r.object(n, p.at(key), fields)
		}
	}
}

// write writes an object whose fields stand at a depth.
func (p *pass) write(fields func(*pass), depth int) {
	in := &pass{to: p.to, depth: depth}
	p.to.WriteByte('{')
	fields(in)
	p.to.WriteByte('}')
}

// list is a field that holds a list of objects, each on a line of its own. Grow makes room for one more, which the fields
// of the last are then read into; shrink takes it away again. The label names one object.
func (p *pass) list(key string, label words.Msg, most, count int, grow, shrink func(), fields func(i int, p *pass)) {
	switch {
	case p.cells != nil:
		*p.lists = append(*p.lists, list{key, label, count, grow, fields, nil})
	case p.to != nil:
		if count == 0 {
			return
		}
		p.begin(key)
		p.to.WriteByte('[')
		for i := range count {
			if i > 0 {
				p.to.WriteByte(',')
			}
			p.to.WriteString("\n" + strings.Repeat("  ", p.depth+1))
			p.write(func(in *pass) { fields(i, in) }, wholeLine)
		}
		p.to.WriteString("\n" + strings.Repeat("  ", p.depth) + "]")
	default:
		n := p.take(key)
		switch {
		case n == nil:
		case n.kind != '[':
			p.r.wrong(n.at, p.at(key), words.Say("a list in brackets was expected."))
		case len(n.in) > most:
			p.r.wrong(n.at, p.at(key), words.Say("it has {count} lines. The most is {most}.",
				words.Is("count", unit.Count(len(n.in)), unit.Whole1), words.Is("most", unit.Count(most), unit.Whole1)))
		default:
			p.r.items(n, p.at(key), grow, shrink, fields)
		}
	}
}

// reader is one reading of a record.
type reader struct {
	text     string
	lenient  bool // a record of a newer version: what is not known is passed over
	problems []Problem
	faults   int
}

// wrong notes one thing that is wrong at a byte of the text.
func (r *reader) wrong(at int, path string, l words.Line) {
	r.faults++
	if r.lenient || len(r.problems) >= maxProblems {
		return
	}
	line, column := place(r.text, at)
	r.problems = append(r.problems, Problem{line, column, path, words.Say("Line {line}, {path}: {problem}",
		words.Text("line", strconv.Itoa(line)), words.Text("path", path), words.Also("problem", l))})
}

// object reads one object.
func (r *reader) object(n *node, path string, fields func(*pass)) {
	if n.kind != '{' {
		r.wrong(n.at, path, words.Say("an object in braces was expected."))
		return
	}
	p := &pass{r: r, from: n, path: path}
	fields(p)
	for i := range n.in {
		if m := &n.in[i]; !m.known {
			r.wrong(m.at, p.at(calc.Cut(m.key)), words.Say("there is no such key here."))
		}
	}
}

// items reads the objects of a list, no ID of them twice.
func (r *reader) items(n *node, path string, grow, shrink func(), fields func(i int, p *pass)) {
	seen := make(map[string]bool, len(n.in))
	kept := 0
	for i := range n.in {
		item, at, before := &n.in[i], path+"["+strconv.Itoa(i+1)+"]", r.faults
		grow()
		r.object(item, at, func(p *pass) { fields(kept, p) })
		if id := item.member("id"); id != nil {
			if seen[id.text] {
				r.wrong(id.at, at+".id", words.Say("“{read}” is the ID of two of them.", words.Text("read", calc.Cut(id.text))))
			}
			seen[id.text] = true
		}
		if r.faults > before { // of a newer record, what is not understood is left out whole
			shrink()
			continue
		}
		kept++
	}
}
