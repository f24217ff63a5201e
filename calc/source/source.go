// Package source lists each outside source once. A rule or a constant names one.
package source

import "setbook/calc/words"

// Basis says what stands behind a figure.
type Basis uint8

// The bases, from the firmest to the weakest.
const (
	Definition Basis = iota // true by what the words mean: a ratio, a sum, a unit
	Published               // printed by somebody outside the project
	Practice                // common practice of the trade: no source
	Memory                  // from memory, not confirmed in print
)

// Says names the basis as a page shows it.
func (b Basis) Says() words.Msg {
	switch b {
	case Published:
		return "published"
	case Practice:
		return "common practice, no source"
	case Memory:
		return "from memory, not confirmed: check your local code"
	}
	return "by definition"
}

// Undated is the edition of a source that bears no date, or none that the project knows: a date is never guessed.
const Undated = ""

// Source is one outside source. Title, Edition and Place are written as the
// source writes them and are not translated.
type Source struct {
	Title   string
	Edition string // its edition or date, or Undated
	Place   string // clause, page or table
	URL     string
	Basis   Basis
}

// The bases that need no document.
var (
	ByDefinition   = &Source{Basis: Definition}
	CommonPractice = &Source{Basis: Practice}
	FromMemory     = &Source{Basis: Memory}
)

// At is the same source at another place in it.
func (s Source) At(place string) *Source { s.Place = place; return &s }
