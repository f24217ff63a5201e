package datasheet

import (
	"strings"

	"setbook/calc"
	"setbook/calc/jsontext"
	"setbook/calc/words"
)

// A sheet is one list of flat objects, so a tree as package job reads it would be more than it needs and tell less: this
// reader goes on after a wrong value and tells every one of them. Only what makes the rest unreadable ends it.

// object walks over a JSON text (RFC 8259).
type object struct {
	*reader
	jsontext.Scanner
}

// json reads a list of objects whose values are texts or numbers.
func (r *reader) json(text string) (rows []row) {
	o := &object{reader: r, Scanner: jsontext.Scanner{Text: text}}
	o.want('[')
	if o.take(']') {
		return nil
	}
	for !o.Halted {
		rows = append(rows, o.product())
		if o.take(']') {
			break
		}
		o.want(',')
	}
	if !o.Halted && o.next() != 0 {
		o.stop(words.Say("After the end of the list stands “{read}”.", words.Text("read", o.rest())))
	}
	return rows
}

// product reads one object.
func (o *object) product() (made row) {
	o.want('{')
	made.line = o.Line()
	before := len(o.problems)
	seen := map[string]bool{}
	if o.take('}') {
		return made
	}
	for !o.Halted {
		o.next()
		at := o.Line()
		key := strings.ToLower(strings.TrimSpace(o.quoted()))
		o.want(':')
		o.next()
		c := cell{key: key, line: o.Line()}
		c.text = o.value(key)
		switch {
		case o.Halted:
		case seen[key]:
			o.fail(at, key, "This field is given twice.")
		case key != nameKey && key != typeKey && find(key) == nil:
			o.unknown(at, key)
		default:
			made.cells = append(made.cells, c)
		}
		seen[key] = true
		if o.take('}') {
			break
		}
		o.want(',')
	}
	made.broken = len(o.problems) > before
	return made
}

// value reads a text or a number as text. Another value is told and passed over.
func (o *object) value(key string) string {
	switch c := o.next(); {
	case c == '"':
		return o.quoted()
	case c == '-' || '0' <= c && c <= '9':
		from := o.At
		for o.At < len(o.Text) && strings.IndexByte("+-.eE0123456789", o.Text[o.At]) >= 0 {
			o.At++
		}
		return o.Text[from:o.At]
	}
	for _, word := range [...]string{"true", "false", "null"} {
		if o.Word(word) {
			o.fail(o.Line(), key, "A value is a text in quotes or a number, and “{read}” was read.", words.Text("read", word))
			return ""
		}
	}
	o.stop(words.Say("A value is a text in quotes or a number, and “{read}” was read.", words.Text("read", o.rest())))
	return ""
}

// next passes over space and gives the sign that stands next, 0 at the end.
func (o *object) next() byte {
	o.Space()
	return o.Peek()
}

func (o *object) take(c byte) bool {
	o.Space()
	return o.Take(c)
}

// want passes over a sign that must come next.
func (o *object) want(c byte) {
	if !o.Halted && !o.take(c) {
		o.fail(o.Line(), "", "“{sign}” was expected, and “{read}” was read. What follows is not read.", words.Text("sign", string(rune(c))), words.Text("read", o.rest()))
		o.Halted = true
	}
}

// stop tells of what makes the rest unreadable.
func (o *object) stop(l words.Line) {
	if !o.Halted {
		o.tell(o.Line(), "", l)
		o.Halted = true
	}
}

// rest is what stands next, to the end of its line.
func (o *object) rest() string {
	rest, _, _ := strings.Cut(o.Text[o.At:], "\n")
	return calc.Cut(strings.TrimSpace(rest))
}

// quoted reads a text in quotes.
func (o *object) quoted() string {
	if o.next() != '"' {
		o.stop(words.Say("A name in quotes was expected, and “{read}” was read. What follows is not read.", words.Text("read", o.rest())))
		return ""
	}
	from := o.At
	text, fault := o.Quoted()
	switch fault {
	case jsontext.Open:
		o.At = from
		o.stop(words.Say("A closing quote was expected on the line of “{read}”. What follows is not read.", words.Text("read", o.rest())))
	case jsontext.Escape:
		o.At++ // what stands after the backslash is told
		o.stop(words.Say("This is no escape of JSON: “{read}”. What follows is not read.", words.Text("read", o.rest())))
	}
	return text
}
