package calc

import (
	"strings"
	"unicode"

	"setbook/calc/unit"
)

// Piece is a part of an expression as a page shows it.
type Piece struct {
	Text   string
	Symbol bool // a symbol of a term: an underscore in it sets a subscript
}

// Expression is the expression that a system's units call for.
func (st *Step) Expression(s unit.System) string {
	if s != unit.Metric && st.ExprUS != "" {
		return st.ExprUS
	}
	return st.Expr
}

// Formula is the expression in symbols.
func (st *Step) Formula(s unit.System) []Piece {
	return pieces(st.Expression(s), func(name string) (Piece, bool) {
		return Piece{name, true}, name != "pi"
	})
}

// With is the expression with the printed value of each term in its place, as a pocket
// calculator would be given it.
func (st *Step) With(style unit.Style) string {
	var b strings.Builder
	for _, p := range pieces(st.Expression(style.System), func(name string) (Piece, bool) {
		for _, t := range st.Terms {
			if t.Symbol == name {
				return Piece{Text: printed(t.Is, style)}, true
			}
		}
		return Piece{Text: name}, false
	}) {
		b.WriteString(p.Text)
	}
	return b.String()
}

// printed is the number of a figure in the unit that the style calls for. Angles keep their sign, because
// a pocket calculator must be told; a negative number stands in brackets.
func printed(f unit.Figure, style unit.Style) string {
	form := f.As.For(style.System)
	text, _ := style.Number(f.Base, form)
	if f.Kind == unit.KindAngle {
		text += form.Unit.Symbol
	}
	if strings.HasPrefix(text, "−") {
		text = "(" + text + ")"
	}
	return text
}

// pieces cuts an expression in Go's syntax into what is shown, with the signs that are written on site.
func pieces(expr string, name func(string) (Piece, bool)) []Piece {
	var out []Piece
	add := func(text string) { out = append(out, Piece{Text: text}) }
	runes := []rune(expr)
	depth, powers := 0, map[int]bool{} // brackets open, and which of them hold a power's base and exponent
	for i := 0; i < len(runes); {
		c := runes[i]
		switch {
		case unicode.IsLetter(c):
			j := i
			for j < len(runes) && (unicode.IsLetter(runes[j]) || unicode.IsDigit(runes[j]) || runes[j] == '_') {
				j++
			}
			word := string(runes[i:j])
			if j < len(runes) && runes[j] == '(' {
				powers[depth+1] = word == "pow"
				add(functions(word))
			} else if p, ok := name(word); ok {
				out = append(out, p)
			} else {
				add(constants(word))
			}
			i = j
			continue
		case c == '*':
			add(" × ")
		case c == '/':
			add(" ÷ ")
		case c == '+':
			add(" + ")
		case c == '-' && len(out) > 0 && out[len(out)-1].Text != "(":
			add(" − ")
		case c == '-':
			add("−")
		case c == '(':
			depth++
			add("(")
		case c == ')':
			powers[depth] = false
			depth--
			add(")")
		case c == ',' && powers[depth]:
			add(")^(")
		case c == ',':
			add("; ")
		case c == ' ':
		default:
			add(string(c))
		}
		i++
	}
	return out
}

// functions gives the written name of a function.
func functions(name string) string {
	switch name {
	case "sqrt":
		return "√"
	case "ceil":
		return "round up "
	case "floor":
		return "round down "
	case "pow":
		return ""
	}
	return name + " "
}

// constants gives the written sign of a constant.
func constants(name string) string {
	if name == "pi" {
		return "π"
	}
	return name
}
