// Package calc is the vocabulary of Setbook. A Calculator is one question asked
// on site: what it asks for, and one pure function from a checked Entry to a
// Sheet of steps, answers, cautions and a drawing. Everything a person sees is a
// view of that sheet; no view does arithmetic and no calculator knows a view.
package calc

import (
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Stage is a step of the work. The pages stand in the order of the stages.
type Stage uint8

// The stages, in the order of the work.
const (
	Slab Stage = iota
	SettingOut
	Ordering
	Mixing
	Setting
	Grouting
	Sealing
	Waiting
	Weather
	Handling
)

// Stages names each stage as the contents page does.
var Stages = [...]words.Msg{
	Slab: "Look at the slab", SettingOut: "Set out", Ordering: "Order", Mixing: "Mix", Setting: "Comb and set",
	Grouting: "Grout", Sealing: "Seal the movement joints", Waiting: "Wait", Weather: "Watch the weather", Handling: "Lift and handle",
}

// Calculator is one question asked on site.
type Calculator struct {
	ID     string // in links, saved jobs, test rows: never changes
	Stage  Stage
	Title  words.Msg
	Asks   words.Msg // the question, as a sentence
	Inputs []*Input
	Work   func(Entry, *Sheet)
	Memory []words.Msg // what to do around the sum: common practice, in our own words

	Tools []*Tool                         // small forms and buttons that write its fields
	Drag  func(now Entry, by Point) Texts // what the fields hold once the drawing is dragged; nil: it is not dragged
	Long  bool                            // too long for the page's own thread at times: worked out beside it, with progress

	// Origin is where its formula comes from, in two sentences for a student who sees the drawing beside them.
	Origin words.Msg

	// Checked is said under the sources where no published or independent answer was
	// found to check this calculator against; a test holds it to the truth.
	Checked words.Msg
}

// Input finds an input by its key; nil where there is none.
func (c *Calculator) Input(key string) *Input {
	for _, in := range c.Inputs {
		if in.Key == key {
			return in
		}
	}
	return nil
}

// Tool is a small form, or a bare button where it asks nothing, that stands by a field
// and writes texts into one or more fields: a preset, another way to type the same, a nudge.
type Tool struct {
	Key    string // unique in its calculator
	At     string // the key of the input that it stands by
	Title  words.Msg
	Inputs []*Input

	// Write gives the texts by key, each as in a link (a point decimal and its unit), and what is said about them. Now is the
	// calculator's last good entry, own what the tool's inputs hold.
	Write func(now, own Entry) (Texts, words.Line, []Problem)

	// Moves, where it is not nought, stands in the place of Write: the drawing is moved by it as by a drag, which may take as long as
	// the calculator itself, and is then done beside the page.
	Moves Point
}

// Step is one line of the working. Expr is written in Go's syntax over the
// symbols of Terms, with sin, cos, tan (of degrees), sqrt, pow, exp, ln, min, max
// and ceil, so that a test can work it out from the printed values. ExprUS
// stands in for Expr where US units need a factor, as in square feet by inches.
type Step struct {
	Says   words.Line
	Expr   string
	ExprUS string
	Terms  []Term
	Gives  Term
	Cite   *source.Source
}

// Term is a symbol with its figure. An underscore sets the rest as a subscript.
type Term struct {
	Symbol string
	Is     unit.Figure
}

// Answer is one result. Low and High bound it where HasRange is true, and From says
// what the spread comes from.
type Answer struct {
	Key       string
	Label     words.Msg
	Is        unit.Figure
	Low, High float64 // base units of Is
	HasRange  bool
	From      words.Line
	Buys      bool       // a quantity to buy: Is is likely, High cautious
	Supply    *Supply    // what an order calls it; nil: by the names of the calculator and the answer
	Main      bool       // shown large, beside the field being typed
	Reads     words.Line // stands in for the figure: "passes"
	Waits     bool       // a waiting time that a countdown can be started from
}

// Severity says how a caution is meant.
type Severity uint8

// The severities, the gravest first.
const (
	Stop Severity = iota // do not go on as entered
	Care                 // go on with care
	Note                 // worth knowing
)

// Caution is a warning that belongs beside the answer.
type Caution struct {
	Says     words.Line
	Severity Severity
	Cite     *source.Source
}

// Problem is one reason why an entry cannot be worked: the key it belongs to ("" for
// the whole entry) and what was read and what would be taken.
type Problem struct {
	Key  string
	Says words.Line
}
