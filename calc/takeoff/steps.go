package takeoff

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// fig is an amount of a line before it is rounded to whole pieces.
func (l *line) fig(base float64) unit.Figure {
	if l.counted() {
		return unit.Fig(unit.Number(base), unit.Bare)
	}
	return unit.Figure{Kind: l.like.Kind, Base: base, As: l.like.As}
}

// sym is a symbol with the number of the line.
func (l *line) sym(letter string) string { return letter + "_" + strconv.Itoa(int(l.number)) }

func (o *order) steps() {
	for _, l := range o.lines {
		o.sums(l)
	}
	o.weighs()
	o.prices()
}

// sums writes how a line is added up: its likely figure, its cautious one, and the whole pieces of it.
func (o *order) sums(l *line) {
	s := o.s
	is := []*words.Arg{words.Is("line", l.number, unit.Whole1), words.Named("material", l.label)}
	var terms []calc.Term
	var likely []string
	for _, p := range l.parts {
		q, half := calc.Term{Symbol: p.symbol, Is: l.fig(p.likely)}, calc.Term{Symbol: p.spread, Is: l.fig(p.half)}
		if p.says != "" {
			cite := source.CommonPractice
			if p.given != nil {
				cite = source.ByDefinition // one length of joint over another
			}
			s.Step(words.Line{Msg: p.says}, q, p.likelyExpr, cite, append(o.known(p.likelyExpr), p.given...)...)
			s.Step(words.Say("How far that may stray upwards."), half, p.spreadExpr, cite, append(o.known(p.spreadExpr), p.given...)...)
		}
		terms = append(terms, q, half)
		likely = append(likely, p.symbol)
	}
	sum, more := strings.Join(likely, " + "), ""
	if l.supply.Of == calc.BuyPavers {
		sum, more = "("+sum+") * (1 + k / 100)", " * (1 + k / 100)"
	}
	s.Step(words.Say("Line {line}, {material}: the likely figures of its entries, added up.", is...),
		calc.Term{Symbol: l.sym("L"), Is: l.fig(l.likely)}, sum, source.ByDefinition, terms...)
	says, spread, cite := l.spread()
	s.Step(words.Say("Line {line}, {material}, enough 19 times in 20: 1.645 standard deviations on top. {how}", append(is, words.Named("how", says))...),
		calc.Term{Symbol: l.sym("C"), Is: l.fig(l.cautious)}, l.sym("L")+" + 1.645 * "+spread+" / 2"+more, cite, terms...)
	if l.counted() {
		s.Step(words.Say("Line {line}, {material}: bought whole, rounded up once.", is...),
			calc.Sym(l.sym("N"), unit.Count(l.buy), unit.Whole1), "ceil("+l.sym("C")+")", source.ByDefinition)
	}
}

// known are the parts that an expression names, as terms.
func (o *order) known(expr string) (terms []calc.Term) {
	named := strings.FieldsFunc(expr, func(c rune) bool { return strings.ContainsRune(" ()+*/", c) })
	for _, l := range o.lines {
		for _, p := range l.parts {
			for _, n := range named {
				switch n {
				case p.symbol:
					terms = append(terms, calc.Term{Symbol: n, Is: l.fig(p.likely)})
				case p.spread:
					terms = append(terms, calc.Term{Symbol: n, Is: l.fig(p.half)})
				}
			}
		}
	}
	return terms
}

// spread is how the spreads of a line's parts are put together: in words, as an expression, and where that is from.
func (l *line) spread() (says words.Msg, expr string, cite *source.Source) {
	var groups []string
	for _, of := range l.causes() {
		var halves []string
		for _, p := range l.parts {
			if p.of == of {
				halves = append(halves, p.spread)
			}
		}
		groups = append(groups, strings.Join(halves, " + "))
	}
	switch {
	case len(groups) > 1:
		return "Spreads of different calculators: the root of the sum of their squares. Half of a spread is one deviation.", "sqrt(pow(" + strings.Join(groups, ", 2) + pow(") + ", 2))", source.RootSumSquares
	case len(l.parts) > 1:
		return "Spreads of one calculator share their causes and add straight. Half of a spread is one deviation.", "(" + groups[0] + ")", source.SharedAdds
	}
	return "Half of its spread is one deviation.", groups[0], source.OneInTwenty
}

// weighs writes what each line weighs, and all of them.
func (o *order) weighs() {
	s := o.s
	var sum []string
	for _, l := range o.lines {
		if l.each == 0 {
			continue
		}
		is := words.Is("line", l.number, unit.Whole1)
		mass := calc.Sym(l.sym("m"), l.each, unit.PoundKg)
		switch pack := l.supply.Pack; {
		case pack.Kind == unit.KindArea:
			face := calc.Sym(l.sym("F"), unit.Area(pack.Base), unit.InchArea)
			s.StepUS(words.Say("Line {line}: one paver weighs its face by its thickness by what it weighs for its volume.", is), mass,
				face.Symbol+" * t * ρ / 1000000", face.Symbol+" * t / 25.4 / 1728 * ρ", source.ByDefinition, face)
		case pack.Kind == unit.KindVolume && !l.yields():
			holds := calc.Sym(l.sym("V"), unit.Volume(pack.Base), fine)
			s.Step(words.Say("Line {line}: one weighs the volume in it by what that weighs.", is), mass, holds.Symbol+" * d", source.ByDefinition, holds)
		default:
			calc.Let(s, mass.Symbol, l.each, unit.PoundKg)
		}
		sum = append(sum, l.sym("N")+" * "+mass.Symbol)
	}
	if len(sum) == 0 {
		sum = []string{"0"}
	}
	calc.Works(s, "Weight of all that is ordered and whose weight is known.", "W", o.weight, unit.PoundKg, strings.Join(sum, " + "), source.ByDefinition)
	calc.Works(s, "Pallets: the weight over what one carries.", "N_p", o.pallets(), unit.Whole1, "ceil(W / P)", source.ByDefinition)
	if o.pallets() > 0 {
		calc.Works(s, "Weight on a pallet, shared out evenly.", "W_p", o.weight/unit.Mass(o.pallets()), unit.PoundKg, "W / N_p", source.ByDefinition)
	}
}

// fine shows a volume by the gallon, to six digits: what is in a cartridge is little of one.
var fine = &unit.Pair{US: unit.Form{Unit: unit.Gallons, Digits: 6}, Metric: unit.Form{Unit: unit.Litres, Digits: 6}}

func (o *order) pallets() unit.Count { return unit.Whole(float64(o.weight / pallet.Of(o.e))) }

// prices writes what it all costs, where prices were typed: a piece, or a metre.
func (o *order) prices() {
	if !o.priced {
		return
	}
	var sum, us []string
	for _, l := range o.lines {
		if l.price == 0 {
			continue
		}
		calc.Let(o.s, l.sym("p"), l.price, unit.Bare)
		if l.counted() {
			sum, us = append(sum, l.sym("N")+" * "+l.sym("p")), append(us, l.sym("N")+" * "+l.sym("p"))
		} else {
			sum, us = append(sum, l.sym("C")+" * "+l.sym("p")), append(us, l.sym("C")+" * 0.3048 * "+l.sym("p"))
		}
	}
	if len(sum) == 0 {
		sum, us = []string{"0"}, []string{"0"}
	}
	calc.WorksUS(o.s, "Price of what has one: pieces by the piece, lengths by the metre.", "B", o.price, unit.Bare, strings.Join(sum, " + "), strings.Join(us, " + "), source.ByDefinition)
}
