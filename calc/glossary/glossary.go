// Package glossary is the terms of the trade as Setbook uses them, each in a sentence or two and a drawing. The
// build writes them as a page; the program for the phone does not need them.
package glossary

import (
	"setbook/calc"
	"setbook/calc/words"
)

// Term is one word of the trade.
type Term struct {
	ID    string // of its place on the page
	Name  words.Msg
	Means words.Msg
	Draw  func(*calc.Drawing)
}

// Group is terms that belong together, in the order of the work.
type Group struct {
	Title words.Msg
	Terms []Term
}

// Groups is every term.
func Groups() []Group {
	return []Group{
		{"The slab", slab},
		{"Setting out", settingOut},
		{"Mortar and bed", mortar},
		{"Joints", joints},
		{"Time and weather", weather},
	}
}
