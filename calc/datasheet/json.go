package datasheet

import (
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/words"
)

// A sheet is one list of flat objects, so the reader of records (package job) would be more than it needs and tell
// less: this one goes on after a wrong value and tells every one of them. Only what makes the rest unreadable ends it.

// object walks over a JSON text (RFC 8259).
type object struct {
	*reader
	text   string
	at     int
	line   int
	broken bool // nothing after this can be read
}

// json reads a list of objects whose values are texts or numbers.
func (r *reader) json(text string) (rows []row) {
	o := &object{reader: r, text: text, line: 1}
	o.want('[')
	if o.take(']') {
		return nil
	}
	for !o.broken {
		rows = append(rows, o.product())
		if o.take(']') {
			break
		}
		o.want(',')
	}
	if !o.broken && o.next() != 0 {
		o.stop(words.Say("After the end of the list stands “{read}”.", words.Text("read", o.rest())))
	}
	return rows
}

// product reads one object.
func (o *object) product() (made row) {
	o.want('{')
	made.line = o.line
	before := len(o.problems)
	seen := map[string]bool{}
	if o.take('}') {
		return made
	}
	for !o.broken {
		o.next()
		at := o.line
		key := strings.ToLower(strings.TrimSpace(o.quoted()))
		o.want(':')
		o.next()
		c := cell{key: key, line: o.line}
		c.text = o.value(key)
		switch {
		case o.broken:
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
		from := o.at
		for o.at < len(o.text) && strings.IndexByte("+-.eE0123456789", o.text[o.at]) >= 0 {
			o.at++
		}
		return o.text[from:o.at]
	}
	for _, word := range [...]string{"true", "false", "null"} {
		if strings.HasPrefix(o.text[o.at:], word) {
			o.fail(o.line, key, "A value is a text in quotes or a number, and “{read}” was read.", words.Text("read", word))
			o.at += len(word)
			return ""
		}
	}
	o.stop(words.Say("A value is a text in quotes or a number, and “{read}” was read.", words.Text("read", o.rest())))
	return ""
}

// next passes over space and gives the sign that stands next, 0 at the end.
func (o *object) next() byte {
	for ; !o.broken && o.at < len(o.text); o.at++ {
		switch c := o.text[o.at]; c {
		case '\n':
			o.line++
		case ' ', '\t', '\r':
		default:
			return c
		}
	}
	return 0
}

func (o *object) take(c byte) bool {
	if o.next() != c {
		return false
	}
	o.at++
	return true
}

// want passes over a sign that must come next.
func (o *object) want(c byte) {
	if !o.broken && !o.take(c) {
		o.fail(o.line, "", "“{sign}” was expected, and “{read}” was read. What follows is not read.", words.Text("sign", string(rune(c))), words.Text("read", o.rest()))
		o.broken = true
	}
}

// stop tells of what makes the rest unreadable.
func (o *object) stop(l words.Line) {
	if !o.broken {
		o.tell(o.line, "", l)
		o.broken = true
	}
}

// rest is what stands next, to the end of its line.
func (o *object) rest() string {
	rest, _, _ := strings.Cut(o.text[min(o.at, len(o.text)):], "\n")
	return calc.Cut(strings.TrimSpace(rest))
}

// quoted reads a text in quotes.
func (o *object) quoted() string {
	if o.next() != '"' {
		o.stop(words.Say("A name in quotes was expected, and “{read}” was read. What follows is not read.", words.Text("read", o.rest())))
		return ""
	}
	from := o.at
	o.at++
	var b strings.Builder
	for o.at < len(o.text) {
		switch c := o.text[o.at]; {
		case c == '"':
			o.at++
			return b.String()
		case c < ' ':
			o.at = from
			o.stop(words.Say("A closing quote was expected on the line of “{read}”. What follows is not read.", words.Text("read", o.rest())))
			return ""
		case c == '\\':
			o.at++
			o.escape(&b)
		default:
			b.WriteByte(c)
			o.at++
		}
		if o.broken {
			return ""
		}
	}
	o.at = from
	o.stop(words.Say("A closing quote was expected on the line of “{read}”. What follows is not read.", words.Text("read", o.rest())))
	return ""
}

// escape reads what stands after a backslash.
func (o *object) escape(b *strings.Builder) {
	const signs, mean = `"\/bfnrt`, "\"\\/\b\f\n\r\t"
	rest := o.text[o.at:]
	if rest != "" {
		if i := strings.IndexByte(signs, rest[0]); i >= 0 {
			b.WriteByte(mean[i])
			o.at++
			return
		}
	}
	if r := unicodeEscape(rest); r >= 0 {
		o.at += 5
		if low := unicodeEscape(strings.TrimPrefix(o.text[o.at:], `\`)); r>>10 == 0xd800>>10 && low>>10 == 0xdc00>>10 {
			o.at += 6
			r = 0x10000 + (r-0xd800)<<10 + (low - 0xdc00)
		}
		if utf8.ValidRune(r) {
			b.WriteRune(r)
			return
		}
	}
	o.stop(words.Say("This is no escape of JSON: “{read}”. What follows is not read.", words.Text("read", o.rest())))
}

// unicodeEscape is the value of a text that begins with u0000, or -1.
func unicodeEscape(text string) (r rune) {
	if len(text) < 5 || text[0] != 'u' {
		return -1
	}
	for _, c := range []byte(strings.ToLower(text[1:5])) {
		i := strings.IndexByte("0123456789abcdef", c)
		if i < 0 {
			return -1
		}
		r = r<<4 | rune(i)
	}
	return r
}
