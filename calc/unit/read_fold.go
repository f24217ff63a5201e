package unit

import (
	"bytes"
	"unicode/utf8"
)

// fold writes the text into the reader's buffer in one plain alphabet, so that
// the grammar meets each thing in one spelling: lower case, ' and " for feet and
// inches, - for every hyphen and minus, one space for any run of spaces and none
// beside a stroke, 1/2 for ½, a stroke for "per", and no stop after an
// abbreviation (in., fl. oz.). It tells whether the text is short enough to be an
// entry: 40 characters of at most five bytes each fit the buffer.
func (r *reader) fold(text string) bool {
	b := r.folded[:0]
	count, vulgar, stop := 0, false, false
	for _, c := range text {
		if count++; count > longest {
			return false
		}
		if f := fraction(c); f != "" {
			// 6½ is 6 1/2, and ½5 is no number: a fraction stands apart.
			if n := len(b); n > 0 && numeral(b[n-1]) {
				b = append(b, ' ')
			}
			b, vulgar, stop = append(b, f...), true, false
			continue
		}
		out, known := plain(c)
		if !known {
			b, vulgar, stop = utf8.AppendRune(b, c), false, false
			continue
		}
		if out == "" {
			continue
		}
		if vulgar && numeral(out[0]) {
			b = append(b, ' ')
		}
		if stop && numeral(out[0]) {
			b = append(b, '.') // ft.5 is no abbreviation
		}
		vulgar, stop = false, out == "." && len(b) > 0 && letter(b[len(b)-1])
		if !stop {
			b = foldNext(b, c, out)
		}
	}
	if n := len(b); n > 0 && b[n-1] == ' ' {
		b = b[:n-1]
	}
	r.end = len(b)
	return true
}

// foldNext adds what one character folds to, where it depends on what is there.
func foldNext(b []byte, c rune, out string) []byte {
	n := len(b)
	last := byte(0)
	if n > 0 {
		last = b[n-1]
	}
	switch out[0] {
	case ' ':
		if last == 0 || last == ' ' || last == '/' || bytes.HasSuffix(b, degree) {
			return b
		}
		if bytes.HasSuffix(b, per) && (n == 3 || !letter(b[n-4])) {
			b = b[:n-3]
			if n > 3 && b[n-4] == ' ' {
				b = b[:n-4]
			}
			return append(b, '/')
		}
	case '/':
		if last == ' ' {
			b = b[:n-1]
		}
	case '\'':
		if last == '\'' { // two apostrophes are an inch mark
			b[n-1] = '"'
			return b
		}
	default:
		if c >= utf8.RuneSelf && digit(out[0]) && digit(last) {
			b = append(b, '^') // 6² is not 62
		}
	}
	return append(b, out...)
}

var (
	degree = []byte("°")
	per    = []byte("per")
)

// numeral tells what a number is written with.
func numeral(c byte) bool { return digit(c) || c == '.' || c == ',' }

// plain gives the spelling in which a character is compared, "" for one that is
// not seen, and false for one that stays as it is.
func plain(c rune) (string, bool) {
	if c < utf8.RuneSelf {
		switch {
		case 'A' <= c && c <= 'Z':
			return lower[c-'A' : c-'A'+1], true
		case c == '`':
			return "'", true
		case '\t' <= c && c <= '\r':
			return " ", true
		}
		return ascii[c : c+1], true
	}
	switch c {
	case 0xa0, 0x202f, 0x205f, 0x3000:
		return " ", true
	case '′', '’', '‘', 'ʹ', 'ʼ', '´':
		return "'", true
	case '″', '”', '“', '„', '‟', 'ʺ', '〃':
		return "\"", true
	case '−', '‐', '‑', '‒', '–', '﹣', '-':
		return "-", true
	case '⁄', '∕':
		return "/", true
	case '·', '⋅', '∙':
		return " ", true
	case 'µ', 'μ', 'Μ':
		return "u", true
	case '°', 'º', '˚':
		return "°", true
	case '℃':
		return "°c", true
	case '℉':
		return "°f", true
	case '×':
		return "x", true
	case '∶':
		return ":", true
	case '²':
		return "2", true
	case '³':
		return "3", true
	case '⁶':
		return "6", true
	case '⁻':
		return "^-", true
	case 0xad, 0x200b, 0x200c, 0x200d, 0x200e, 0x200f, 0x2060, 0xfeff:
		return "", true
	}
	if 0x2000 <= c && c <= 0x200a {
		return " ", true
	}
	return "", false
}

// fraction spells a vulgar fraction out, "" for any other character.
func fraction(c rune) string {
	switch c {
	case '½':
		return "1/2"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '⅛':
		return "1/8"
	case '⅜':
		return "3/8"
	case '⅝':
		return "5/8"
	case '⅞':
		return "7/8"
	case '⅓':
		return "1/3"
	case '⅔':
		return "2/3"
	case '⅕':
		return "1/5"
	case '⅖':
		return "2/5"
	case '⅗':
		return "3/5"
	case '⅘':
		return "4/5"
	case '⅙':
		return "1/6"
	case '⅚':
		return "5/6"
	case '⅐':
		return "1/7"
	case '⅑':
		return "1/9"
	case '⅒':
		return "1/10"
	}
	return ""
}

const lower = "abcdefghijklmnopqrstuvwxyz"

// ascii holds each ASCII character at its own place, so that a piece of it can be
// returned without making a new string.
const ascii = "\x00\x01\x02\x03\x04\x05\x06\x07\x08\x09\x0a\x0b\x0c\x0d\x0e\x0f" +
	"\x10\x11\x12\x13\x14\x15\x16\x17\x18\x19\x1a\x1b\x1c\x1d\x1e\x1f" +
	" !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`" + lower + "{|}~\x7f"
