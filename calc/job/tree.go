package job

import (
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/jsontext"
	"setbook/calc/words"
)

// The reader of a record is stricter than RFC 8259 asks for: no key twice in an object, no value too deep.

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
	jsontext.Scanner
	wrong *Problem
}

// tree reads one JSON value that fills a text.
func tree(text string) (node, *Problem) {
	s := &scanner{Scanner: jsontext.Scanner{Text: text}}
	s.Space()
	n := s.value(0)
	s.Space()
	if !s.Halted && s.At < len(text) {
		s.fail(words.Say("After the end of the record stands “{read}”.", s.next()))
	}
	return n, s.wrong
}

// fail notes what is wrong where the scanner stands.
func (s *scanner) fail(l words.Line) {
	if !s.Halted {
		line, column := place(s.Text, s.At)
		s.wrong = &Problem{Line: line, Column: column, Says: l}
		s.Halted = true
	}
}

// next fills a placeholder with what stands next, to the end of its line at most.
func (s *scanner) next() *words.Arg {
	rest := s.Text[s.At:min(len(s.Text), s.At+200)]
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

func (s *scanner) value(depth int) (n node) {
	n.at = s.At
	if depth > deepest {
		s.fail(words.Say("Values stand too deep in one another at “{read}”.", s.next()))
		return n
	}
	switch c := s.Peek(); {
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
	case s.Word("true"), s.Word("false"), s.Word("null"):
		n.kind = c
	default:
		s.fail(words.Say("A value was expected, and “{read}” was read.", s.next()))
	}
	return n
}

func (s *scanner) items(n *node, depth int) {
	s.At++
	s.Space()
	if s.Take(']') {
		return
	}
	for !s.Halted {
		n.in = append(n.in, s.value(depth+1))
		s.Space()
		if s.Take(']') {
			return
		}
		if !s.Take(',') {
			s.fail(words.Say("A comma or ] was expected, and “{read}” was read.", s.next()))
		}
		s.Space()
	}
}

func (s *scanner) members(n *node, depth int) {
	s.At++
	s.Space()
	if s.Take('}') {
		return
	}
	for !s.Halted {
		before := s.At
		if s.Peek() != '"' {
			s.fail(words.Say("A key in quotes was expected, and “{read}” was read.", s.next()))
			return
		}
		key := s.quoted()
		if n.member(key) != nil {
			s.At = before
			s.fail(words.Say("A key is given twice: “{read}”.", s.next()))
		}
		s.Space()
		if !s.Take(':') {
			s.fail(words.Say("A colon was expected, and “{read}” was read.", s.next()))
		}
		s.Space()
		v := s.value(depth + 1)
		v.key = key
		n.in = append(n.in, v)
		if len(n.in) > mostMembers {
			s.At = before
			s.fail(words.Say("There are too many keys at “{read}”.", s.next()))
		}
		s.Space()
		if s.Take('}') {
			return
		}
		if !s.Take(',') {
			s.fail(words.Say("A comma or } was expected, and “{read}” was read.", s.next()))
		}
		s.Space()
	}
}

// mostMembers bounds an object, whose keys are compared each with each.
const mostMembers = 64

// number passes over a number (RFC 8259, section 6).
func (s *scanner) number() string {
	from := s.At
	s.Take('-')
	if !s.Take('0') {
		s.digits()
	}
	if s.Take('.') {
		s.digits()
	}
	if c := s.Peek(); c == 'e' || c == 'E' {
		s.At++
		if !s.Take('+') {
			s.Take('-')
		}
		s.digits()
	}
	return s.Text[from:s.At]
}

// digits passes over one digit or more.
func (s *scanner) digits() {
	if c := s.Peek(); c < '0' || '9' < c {
		s.fail(words.Say("A digit was expected, and “{read}” was read.", s.next()))
	}
	for c := s.Peek(); '0' <= c && c <= '9'; c = s.Peek() {
		s.At++
	}
}

// quoted reads a string.
func (s *scanner) quoted() string {
	text, fault := s.Quoted()
	switch fault {
	case jsontext.Open:
		s.fail(words.Say("A closing quote was expected, and “{read}” was read.", s.next()))
	case jsontext.Bytes:
		s.fail(words.Say("This is not text in UTF-8: “{read}”.", s.next()))
	case jsontext.Escape:
		s.fail(words.Say("This is no escape of JSON: “{read}”.", s.next()))
	}
	return text
}

// quote writes a string of JSON. Text that is not UTF-8 is mended.
func quote(b *strings.Builder, text string) { jsontext.Quote(b, text) }
