// Package jsontext goes over a JSON text (RFC 8259) a sign at a time. What its reader makes of the values, how much of the
// grammar it asks for and how it tells a fault is the reader's own affair.
//
// encoding/json would add 120 KB to the program, and tells neither the line of a wrong value nor a key that is given twice.
package jsontext

import "strings"

// Scanner walks over a text.
type Scanner struct {
	Text   string
	At     int  // the byte that stands next
	Halted bool // set by the reader where the rest cannot be read: nothing stands next any more
	ends   int
}

// Line is the line that the scanner stands in, counted from 1.
func (s *Scanner) Line() int { return 1 + s.ends }

// Peek is the byte that stands next, 0 at the end.
func (s *Scanner) Peek() byte {
	if s.Halted || s.At >= len(s.Text) {
		return 0
	}
	return s.Text[s.At]
}

// Space passes over white space. Line ends stand nowhere else.
func (s *Scanner) Space() {
	for c := s.Peek(); c == ' ' || c == '\n' || c == '\t' || c == '\r'; c = s.Peek() {
		if c == '\n' {
			s.ends++
		}
		s.At++
	}
}

// Take passes over a sign, if it stands next.
func (s *Scanner) Take(c byte) bool {
	if s.Peek() != c {
		return false
	}
	s.At++
	return true
}

// Word passes over a bare word, if it stands next.
func (s *Scanner) Word(w string) bool {
	if s.Halted || !strings.HasPrefix(s.Text[s.At:], w) {
		return false
	}
	s.At += len(w)
	return true
}
