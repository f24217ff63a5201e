package job

import (
	"strings"
	"unicode/utf8"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/link"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The most that a record holds. They keep a hostile file from filling a phone, and are far past any job.
const (
	MaxSize       = 8 << 20 // bytes of a file
	MaxEntries    = 200
	MaxCountdowns = 200
	MaxLog        = 10_000 // of mixes, of checks, of notes
	MaxMaterials  = 200
	MaxName       = 100 // characters
	MaxLine       = 300
	MaxText       = 4000
	MaxLink       = 1 << 20 // bytes
	maxProblems   = 20      // told of one file
)

// rule is what a text of the record must be: at most so long, and what the check says of it (no words: it is well).
type rule struct {
	most  int // characters
	must  bool
	check func(text string) words.Line
}

// The rules. A text that may be left out may also be "".
var (
	idRule       = rule{64, true, checkID}
	nameRule     = rule{MaxName, true, checkLine}
	lineRule     = rule{MaxLine, false, checkLine}
	textRule     = rule{MaxText, false, checkText}
	saidRule     = rule{MaxText, true, checkText}
	linkRule     = rule{MaxLink, true, checkLink}
	countRule    = rule{4 * 20_000, true, checkText}
	pictureRule  = rule{MaxPicture, false, checkPicture}
	amountRule   = rule{40, true, checkAmount}
	airRule      = quantity(Air)
	surfaceRule  = quantity(Surface)
	humidityRule = quantity(Humidity)
	windRule     = quantity(Wind)
	contactRule  = quantity(Contact)
)

var fine = words.Line{}

// takes reports whether a text that must be there keeps the rule.
func (r rule) takes(text string) bool {
	return text != "" && utf8.RuneCountInString(text) <= r.most && r.check(text).Msg == ""
}

// Clean makes a typed text fit for one line of the record: no control character, no run of spaces, so many characters at most.
func Clean(text string, most int) string {
	text = strings.Join(strings.Fields(strings.Map(func(r rune) rune {
		if control(r) {
			return ' '
		}
		return r
	}, text)), " ")
	if runes := []rune(text); len(runes) > most {
		text = strings.TrimSpace(string(runes[:most]))
	}
	return text
}

// CleanLines makes a typed text fit for a place of many lines.
func CleanLines(text string, most int) string {
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	text = strings.TrimSpace(strings.Map(func(r rune) rune {
		if control(r) && r != '\n' {
			return ' '
		}
		return r
	}, text))
	if runes := []rune(text); len(runes) > most {
		text = strings.TrimSpace(string(runes[:most]))
	}
	return text
}

// control reports what no text of the record holds: control characters, and the mark that stands for a byte that is no text.
func control(r rune) bool { return r < ' ' || 0x7f <= r && r < 0xa0 || r == utf8.RuneError }

func checkID(text string) words.Line {
	for i := range len(text) {
		if c := text[i]; !('a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '-') {
			return words.Say("read “{read}”. It is made of small letters, digits and dashes.", words.Text("read", calc.Cut(text)))
		}
	}
	return fine
}

func checkLine(text string) words.Line {
	if strings.ContainsFunc(text, control) {
		return words.Say("“{read}” has a control character in it.", words.Text("read", calc.Cut(Clean(text, MaxName))))
	}
	return fine
}

func checkText(text string) words.Line {
	return checkLine(strings.ReplaceAll(text, "\n", " "))
}

func checkLink(text string) words.Line {
	if l := checkLine(text); l.Msg != "" {
		return l
	}
	if _, problems := link.Parse(text); len(problems) > 0 {
		return problems[0].Says
	}
	return fine
}

func checkAmount(text string) words.Line {
	m := Mix{Amount: text}
	_, weighed := m.Mass()
	if _, counted := m.Bags(); weighed || counted {
		return fine
	}
	if _, l := reading(Powder.Input, text, calc.Habit{}); l.Msg != "" {
		return words.Say("{problem} Whole or part bags are written as in “2 bags”.", words.Also("problem", l))
	}
	return fine
}

// quantity is the rule of a text that reads as an input of the log, the same for everybody.
func quantity[T unit.Quantity](in calc.In[T]) rule {
	return rule{40, false, func(text string) words.Line {
		if _, ok := in.Value(text, calc.Habit{}); ok {
			return fine
		}
		_, l := reading(in.Input, text, calc.Habit{})
		return l
	}}
}

// readCountdown is the countdown that a record holds.
func (c Countdown) read() (*countdown.Countdown, bool) { return countdown.Read(c.ID, c.Text) }
