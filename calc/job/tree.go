package job

import (
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/words"
)

// encoding/json would add 120 KB to the program, and tells neither the line of a wrong value nor a key that is given
// twice. This reader of JSON (RFC 8259) is stricter than it must be: no key twice in an object, no half of a
// surrogate pair, no text that is not UTF-8.

// deepest is how far values may stand in one another. A record needs four.
const deepest = 8

// node is one value of a JSON text. Its kind is the first byte of its kind of value: '{' '[' '"' '0' 't' 'f' 'n'.
type node struct {
	kind  byte
	at    int    // where it begins in the text
	key   string // of a member of an object
	known bool   // a reader has asked for it
	text  string // of a string; of a number, as it was written
	in    []node // items of a list, members of an object
}

// member finds a member of an object by its key.
func (n *node) member(key string) *node {
	for i := range n.in {
		if n.in[i].key == key {
			return &n.in[i]
		}
	}
	return nil
}

// scanner walks over a text. What is wrong first stays in wrong; nothing is read after it.
type scanner struct {
	text  string
	at    int
	wrong *Problem
}

// tree reads one JSON value that fills a text.
func tree(text string) (node, *Problem) {
	s := &scanner{text: text}
	s.space()
	n := s.value(0)
	s.space()
	if s.wrong == nil && s.at < len(text) {
		s.fail(words.Say("After the end of the record stands “{read}”.", s.next()))
	}
	return n, s.wrong
}

// fail notes what is wrong where the scanner stands.
func (s *scanner) fail(l words.Line) {
	if s.wrong == nil {
		line, column := place(s.text, s.at)
		s.wrong = &Problem{Line: line, Column: column, Says: l}
	}
}

// next fills a placeholder with what stands next, to the end of its line at most.
func (s *scanner) next() *words.Arg {
	rest := s.text[s.at:min(len(s.text), s.at+200)]
	if end := strings.IndexAny(rest, "\r\n"); end >= 0 {
		rest = rest[:end]
	}
	return words.Text("read", calc.Cut(strings.ToValidUTF8(rest, "?")))
}

// place is the line of a byte of a text and its character in that line, counted from 1.
func place(text string, at int) (line, column int) {
	before := text[:at]
	return 1 + strings.Count(before, "\n"), 1 + utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:])
}

func (s *scanner) peek() byte {
	if s.wrong != nil || s.at >= len(s.text) {
		return 0
	}
	return s.text[s.at]
}

func (s *scanner) space() {
	for c := s.peek(); c == ' ' || c == '\n' || c == '\t' || c == '\r'; c = s.peek() {
		s.at++
	}
}

// take passes over a sign, if it stands next.
func (s *scanner) take(c byte) bool {
	if s.peek() != c {
		return false
	}
	s.at++
	return true
}

func (s *scanner) value(depth int) (n node) {
	n.at = s.at
	if depth > deepest {
		s.fail(words.Say("Values stand too deep in one another at “{read}”.", s.next()))
		return n
	}
	switch c := s.peek(); {
	case c == '{':
		n.kind = c
		s.members(&n, depth)
	case c == '[':
		n.kind = c
		s.items(&n, depth)
	case c == '"':
		n.kind, n.text = c, s.quoted()
	case c == '-' || '0' <= c && c <= '9':
		n.kind, n.text = '0', s.number()
	case s.word("true"), s.word("false"), s.word("null"):
		n.kind = c
	default:
		s.fail(words.Say("A value was expected, and “{read}” was read.", s.next()))
	}
	return n
}

// word passes over a bare word, if it stands next.
func (s *scanner) word(w string) bool {
	if s.wrong != nil || !strings.HasPrefix(s.text[s.at:], w) {
		return false
	}
	s.at += len(w)
	return true
}

func (s *scanner) items(n *node, depth int) {
	s.at++
	s.space()
	if s.take(']') {
		return
	}
	for s.wrong == nil {
		n.in = append(n.in, s.value(depth+1))
		s.space()
		if s.take(']') {
			return
		}
		if !s.take(',') {
			s.fail(words.Say("A comma or ] was expected, and “{read}” was read.", s.next()))
		}
		s.space()
	}
}

func (s *scanner) members(n *node, depth int) {
	s.at++
	s.space()
	if s.take('}') {
		return
	}
	for s.wrong == nil {
		before := s.at
		if s.peek() != '"' {
			s.fail(words.Say("A key in quotes was expected, and “{read}” was read.", s.next()))
			return
		}
		key := s.quoted()
		if n.member(key) != nil {
			s.at = before
			s.fail(words.Say("A key is given twice: “{read}”.", s.next()))
		}
		s.space()
		if !s.take(':') {
			s.fail(words.Say("A colon was expected, and “{read}” was read.", s.next()))
		}
		s.space()
		v := s.value(depth + 1)
		v.key = key
		n.in = append(n.in, v)
		if len(n.in) > mostMembers {
			s.at = before
			s.fail(words.Say("There are too many keys at “{read}”.", s.next()))
		}
		s.space()
		if s.take('}') {
			return
		}
		if !s.take(',') {
			s.fail(words.Say("A comma or } was expected, and “{read}” was read.", s.next()))
		}
		s.space()
	}
}

// mostMembers bounds an object, whose keys are compared each with each.
const mostMembers = 64

// number passes over a number (RFC 8259, section 6).
func (s *scanner) number() string {
	from := s.at
	s.take('-')
	if !s.take('0') {
		s.digits()
	}
	if s.take('.') {
		s.digits()
	}
	if c := s.peek(); c == 'e' || c == 'E' {
		s.at++
		if !s.take('+') {
			s.take('-')
		}
		s.digits()
	}
	return s.text[from:s.at]
}

// digits passes over one digit or more.
func (s *scanner) digits() {
	if c := s.peek(); c < '0' || '9' < c {
		s.fail(words.Say("A digit was expected, and “{read}” was read.", s.next()))
	}
	for c := s.peek(); '0' <= c && c <= '9'; c = s.peek() {
		s.at++
	}
}

// escapes are the signs after a backslash that stand for one other sign, escaped.
const escapes, escaped = `"\/bfnrt`, "\"\\/\b\f\n\r\t"

// quoted reads a string.
func (s *scanner) quoted() string {
	s.at++
	from := s.at
	var b []byte // what was read before from; nil: nothing
	for {
		switch c := s.peek(); {
		case s.wrong != nil:
			return ""
		case s.at >= len(s.text) || c < ' ':
			s.fail(words.Say("A closing quote was expected, and “{read}” was read.", s.next()))
		case c == '"':
			s.at++
			if b == nil {
				return s.text[from : s.at-1]
			}
			return string(append(b, s.text[from:s.at-1]...))
		case c == '\\':
			b = append(b, s.text[from:s.at]...)
			b = s.escape(b)
			from = s.at
		case c < utf8.RuneSelf:
			s.at++
		default:
			r, size := utf8.DecodeRuneInString(s.text[s.at:])
			if r == utf8.RuneError && size == 1 {
				s.fail(words.Say("This is not text in UTF-8: “{read}”.", s.next()))
			}
			s.at += size
		}
	}
}

// escape reads what a backslash begins.
func (s *scanner) escape(b []byte) []byte {
	if s.at+1 < len(s.text) {
		if i := strings.IndexByte(escapes, s.text[s.at+1]); i >= 0 {
			s.at += 2
			return append(b, escaped[i])
		}
	}
	r := s.unit(s.at)
	switch {
	case 0 <= r && r < 0xd800 || 0xe000 <= r:
		s.at += 6
		return utf8.AppendRune(b, r)
	case 0xd800 <= r && r < 0xdc00:
		if low := s.unit(s.at + 6); 0xdc00 <= low && low < 0xe000 {
			s.at += 12
			return utf8.AppendRune(b, 0x10000+(r-0xd800)<<10+(low-0xdc00))
		}
	}
	s.fail(words.Say("This is no escape of JSON: “{read}”.", s.next()))
	return b
}

// unit is the value of an escape \u0000 that stands at a place, or -1.
func (s *scanner) unit(at int) (r rune) {
	if at+6 > len(s.text) || s.text[at] != '\\' || s.text[at+1] != 'u' {
		return -1
	}
	for _, c := range []byte(s.text[at+2 : at+6]) {
		switch {
		case '0' <= c && c <= '9':
			c -= '0'
		case 'a' <= c && c <= 'f':
			c -= 'a' - 10
		case 'A' <= c && c <= 'F':
			c -= 'A' - 10
		default:
			return -1
		}
		r = r<<4 | rune(c)
	}
	return r
}

// quote writes a string of JSON. Text that is not UTF-8 is mended.
func quote(b *strings.Builder, text string) {
	text = strings.ToValidUTF8(text, "\ufffd")
	b.WriteByte('"')
	from := 0
	for at := range len(text) {
		c := text[at]
		if c >= ' ' && c != '"' && c != '\\' {
			continue
		}
		b.WriteString(text[from:at])
		from = at + 1
		b.WriteByte('\\')
		if i := strings.IndexByte(escaped, c); i >= 0 {
			b.WriteByte(escapes[i])
		} else {
			b.WriteString("u00")
			b.WriteByte("0123456789abcdef"[c>>4])
			b.WriteByte("0123456789abcdef"[c&15])
		}
	}
	b.WriteString(text[from:])
	b.WriteByte('"')
}
