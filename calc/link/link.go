// Package link turns an entry into text and back: "v=1&width=1/2+in&depth=1/2+in".
// The same text is a share link's fragment, a remembered entry, a test row and
// the argument of the command line. Order does not matter.
package link

import (
	"strings"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Version is written into every link as v=1. A link without it is read as this version.
const Version = "1"

// Format writes an entry, every key of it, so that a later change of an example
// does not change an old link. A text that reads the same for everybody is kept
// as it was typed; any other is written out with a point decimal and its unit.
func Format(c *calc.Calculator, e calc.Entry, s unit.System) string {
	var b strings.Builder
	b.WriteString("v=" + Version)
	for _, in := range c.Inputs {
		b.WriteString("&" + in.Key + "=" + Escape(in.Plain(e.Reading(in.Key), s)))
	}
	return b.String()
}

// Parse splits a link into texts by key. It refuses a key given twice, a pair without
// "=", a broken escape, and a version that is not known.
func Parse(text string) (calc.Texts, []calc.Problem) {
	texts := calc.Texts{}
	var problems []calc.Problem
	for _, pair := range strings.Split(strings.TrimPrefix(text, "#"), "&") {
		if pair == "" {
			continue
		}
		rawKey, rawValue, ok := strings.Cut(pair, "=")
		key, okKey := unescape(rawKey)
		value, okValue := unescape(rawValue)
		switch {
		case !ok || key == "":
			problems = append(problems, calc.Problem{Says: words.Say(
				"“{read}” is not a pair of a key and a value, as in width=1/2 in.", words.Text("read", calc.Cut(pair)))})
		case !okKey || !okValue:
			problems = append(problems, calc.Problem{Key: calc.Cut(key), Says: words.Say(
				"“{read}” has a broken escape: % must be followed by two hexadecimal digits.", words.Text("read", calc.Cut(pair)))})
		case key == "v" && value != Version:
			problems = append(problems, calc.Problem{Key: "v", Says: words.Say(
				"This link was written by a newer Setbook (version “{read}”). This one reads version {known}.",
				words.Text("read", calc.Cut(value)), words.Text("known", Version))})
		case key == "v":
		default:
			if _, twice := texts[key]; twice {
				problems = append(problems, calc.Problem{Key: calc.Cut(key), Says: words.Say(
					"“{key}” is given twice.", words.Text("key", calc.Cut(key)))})
			}
			texts[key] = value
		}
	}
	return texts, problems
}

// Read parses a link and checks it against what a calculator asks for.
func Read(c *calc.Calculator, text string, h calc.Habit) (calc.Entry, []calc.Problem) {
	texts, problems := Parse(text)
	if len(problems) > 0 {
		return calc.Entry{}, problems
	}
	return c.Read(texts, h)
}
