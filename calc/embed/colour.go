package embed

import (
	"math"
	"strconv"
	"strings"

	"setbook/calc/words"
)

// leastContrast is that of text on its ground: WCAG 2.2, success criterion 1.4.6, and a screen in the sun.
const leastContrast = 7

// colour is red, green and blue.
type colour [3]uint8

// readColour reads #rgb or #rrggbb. Nothing else is taken: a colour that lets its ground through has no contrast of its own.
func readColour(text string) (c colour, ok bool) {
	digits, ok := strings.CutPrefix(strings.TrimSpace(text), "#")
	if len(digits) == 3 {
		digits = digits[:1] + digits[:1] + digits[1:2] + digits[1:2] + digits[2:] + digits[2:]
	}
	n, err := strconv.ParseUint(digits, 16, 32)
	if !ok || len(digits) != 6 || err != nil {
		return c, false
	}
	return colour{uint8(n >> 16), uint8(n >> 8), uint8(n)}, true
}

func (c colour) text() string {
	n := strconv.FormatUint(1<<24|uint64(c[0])<<16|uint64(c[1])<<8|uint64(c[2]), 16)
	return "#" + n[1:]
}

// luminance is the relative luminance of WCAG 2.2: 0 for black, 1 for white.
func (c colour) luminance() (sum float64) {
	for i, weight := range [...]float64{0.2126, 0.7152, 0.0722} {
		s := float64(c[i]) / 255
		if s <= 0.04045 {
			s /= 12.92
		} else {
			s = math.Pow((s+0.055)/1.055, 2.4)
		}
		sum += weight * s
	}
	return sum
}

// contrast is the contrast ratio of two colours, from 1 to 21 (WCAG 2.2).
func contrast(a, b colour) float64 {
	x, y := a.luminance(), b.luminance()
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Paint is what the colours of a page around come to: every colour of the book by the name of its custom property,
// without "--", none where the book's own stay; whether the paper is dark; and what was refused.
type Paint struct {
	Colours map[string]string
	Dark    bool
	Refused []words.Line
}

// Mix puts wanted colours in the place of the book's own (paper, ink, and chalk for lines and links), as far as every
// text stays at 7:1. Ink and paper go together, or neither does.
func Mix(wanted, own map[string]string) Paint {
	var p Paint
	read := func(name, property string) (c colour, given bool) {
		c, _ = readColour(own[property])
		text, given := wanted[name]
		if !given || strings.TrimSpace(text) == "" {
			return c, false
		}
		asked, ok := readColour(text)
		if !ok {
			p.Refused = append(p.Refused, words.Say("“{read}” is not read as a colour. Write it as #16478f.", words.Text("read", short(text))))
			return c, false
		}
		return asked, true
	}
	paper, hasPaper := read("paper", "paper")
	ink, hasInk := read("ink", "ink")
	line, hasLine := read("line", "chalk")
	if (hasPaper || hasInk) && contrast(paper, ink) < leastContrast {
		p.refuse("ink", ink, "paper", paper)
		hasPaper, hasInk = false, false
		paper, _ = readColour(own["paper"])
		ink, _ = readColour(own["ink"])
	}
	if (hasPaper || hasLine) && contrast(paper, line) < leastContrast {
		if hasLine {
			p.refuse("line", line, "paper", paper)
		}
		hasLine = false
		if line, _ = readColour(own["chalk"]); contrast(paper, line) < leastContrast {
			line = ink // the book's own line would be lost on this paper
		}
	}
	if !hasPaper && !hasInk && !hasLine {
		return p
	}
	p.Dark = paper.luminance() < ink.luminance()
	p.Colours = map[string]string{"chalk": line.text()}
	for _, ground := range [...]string{"paper", "field", "wash", "on-chalk"} {
		p.Colours[ground] = paper.text()
	}
	for _, mark := range [...]string{"ink", "soft", "rule", "edge", "hatch"} {
		p.Colours[mark] = ink.text()
	}
	return p
}

func (p *Paint) refuse(one string, a colour, other string, b colour) {
	ratio := strconv.FormatFloat(math.Floor(contrast(a, b)*10)/10, 'f', 1, 64)
	p.Refused = append(p.Refused, words.Say("The colour {one} {a} on {other} {b} has a contrast of {ratio} to 1. Text needs 7 to 1, so the book’s own colour stays.",
		words.Text("one", one), words.Text("a", a.text()), words.Text("other", other), words.Text("b", b.text()), words.Text("ratio", ratio)))
}

func short(text string) string {
	if len(text) > 20 {
		return strings.ToValidUTF8(text[:20], "") + "…"
	}
	return text
}
