package link

import "strings"

const hex = "0123456789ABCDEF"

// Escape writes a text for the value of a pair: letters, digits and what a fragment
// may hold stand as they are, so that 1/2 in stays readable; a space becomes "+"
// and the rest percent signs with hexadecimal bytes (RFC 3986, section 2.1).
func Escape(text string) string {
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == ' ':
			b.WriteByte('+')
		case 'a' <= c && c <= 'z', 'A' <= c && c <= 'Z', '0' <= c && c <= '9', strings.IndexByte("-._~/:;,'()*!@", c) >= 0:
			b.WriteByte(c)
		default:
			b.WriteString("%" + hex[c>>4:c>>4+1] + hex[c&15:c&15+1])
		}
	}
	return b.String()
}

// unescape undoes Escape, and takes a bare space or any other sign as it stands, so
// that a pair can be typed by hand. A percent sign that is followed by no digit
// at all is a plain one ("2 %"); half an escape is refused.
func unescape(text string) (string, bool) {
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '+':
			b.WriteByte(' ')
		case c == '%' && i+2 < len(text) && nibble(text[i+1]) >= 0 && nibble(text[i+2]) >= 0:
			b.WriteByte(byte(nibble(text[i+1])<<4 | nibble(text[i+2])))
			i += 2
		case c == '%' && i+1 < len(text) && nibble(text[i+1]) >= 0:
			return "", false
		default:
			b.WriteByte(c)
		}
	}
	return b.String(), true
}

// nibble is the value of a hexadecimal digit, or -1.
func nibble(c byte) int {
	switch {
	case '0' <= c && c <= '9':
		return int(c - '0')
	case 'A' <= c && c <= 'F':
		return int(c-'A') + 10
	case 'a' <= c && c <= 'f':
		return int(c-'a') + 10
	}
	return -1
}
