package jsontext

import (
	"strings"
	"unicode/utf8"
)

// Fault is what can be wrong with a string.
type Fault uint8

// The faults.
const (
	None   Fault = iota
	Open         // its line ends before it is closed
	Bytes        // it is not UTF-8
	Escape       // a backslash begins no escape, or half a surrogate pair
)

// escapes are the signs after a backslash that stand for one other sign, escaped.
const escapes, escaped = `"\/bfnrt`, "\"\\/\b\f\n\r\t"

// Quoted reads a string, whose quote stands next. Where there is a fault, the scanner stands at it.
func (s *Scanner) Quoted() (string, Fault) {
	s.At++
	from := s.At
	var b []byte // what was read before from; nil: nothing
	for {
		switch c := s.Peek(); {
		case s.At >= len(s.Text) || c < ' ':
			return "", Open
		case c == '"':
			s.At++
			if b == nil {
				return s.Text[from : s.At-1], None
			}
			return string(append(b, s.Text[from:s.At-1]...)), None
		case c == '\\':
			var ok bool
			if b, ok = s.escape(append(b, s.Text[from:s.At]...)); !ok {
				return "", Escape
			}
			from = s.At
		case c < utf8.RuneSelf:
			s.At++
		default:
			r, size := utf8.DecodeRuneInString(s.Text[s.At:])
			if r == utf8.RuneError && size == 1 {
				return "", Bytes
			}
			s.At += size
		}
	}
}

// escape reads what a backslash begins, if it is an escape.
func (s *Scanner) escape(b []byte) ([]byte, bool) {
	if s.At+1 < len(s.Text) {
		if i := strings.IndexByte(escapes, s.Text[s.At+1]); i >= 0 {
			s.At += 2
			return append(b, escaped[i]), true
		}
	}
	r := s.unit(s.At)
	switch {
	case 0 <= r && r < 0xd800 || 0xe000 <= r:
		s.At += 6
		return utf8.AppendRune(b, r), true
	case 0xd800 <= r && r < 0xdc00:
		if low := s.unit(s.At + 6); 0xdc00 <= low && low < 0xe000 {
			s.At += 12
			return utf8.AppendRune(b, 0x10000+(r-0xd800)<<10+(low-0xdc00)), true
		}
	}
	return b, false
}

// unit is the value of an escape \u0000 that stands at a place, or -1.
func (s *Scanner) unit(at int) (r rune) {
	if at+6 > len(s.Text) || s.Text[at] != '\\' || s.Text[at+1] != 'u' {
		return -1
	}
	for _, c := range []byte(s.Text[at+2 : at+6]) {
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

// Quote writes a string of JSON. Text that is not UTF-8 is mended.
func Quote(b *strings.Builder, text string) {
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
