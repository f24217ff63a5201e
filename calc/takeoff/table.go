package takeoff

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func (o *order) answers() {
	s := o.s
	calc.Gives(s, "weight", "Weight of the order", o.weight, unit.PoundKg).First()
	calc.Gives(s, "pallets", "Pallets", o.pallets(), unit.Whole1).First()
	if n := o.pallets(); n > 0 {
		calc.Gives(s, "per_pallet", "Weight on each", o.weight/unit.Mass(n), unit.PoundKg)
	}
	if o.priced {
		calc.Gives(s, "price", "Price, in your own money", o.price, unit.Bare)
	}
	for _, l := range o.lines {
		l.answer(s).Between(l.likely, l.buy, words.Say("Likely, and enough 19 times in 20.")).Buy().Says(l.bought())
	}
}

// bought reads as the order does: what is bought, with what it comes in.
func (l *line) bought() words.Line {
	buys := l.fig(l.buy)
	n := words.Arg{Name: "n", Figure: &buys}
	switch in := words.Also("in", l.in()); {
	case l.supply.Pack.Base == 0 && l.supply.In == "":
		return words.Say("{n}", &n) // in its own unit, or as its label counts it
	case l.counted() && l.buy == 1:
		return words.Say("{n} ({in})", &n, in) // what it comes in is named in the plural
	case l.counted():
		return words.Say("{n} {in}", &n, in)
	default:
		return words.Say("{n} of {in}", &n, in)
	}
}

// answer gives the likely figure of a line, in its own kind.
func (l *line) answer(s *calc.Sheet) *calc.Answer {
	f := l.fig(l.likely)
	switch f.Kind {
	case unit.KindLength:
		return calc.Gives(s, l.key, l.label, unit.Length(f.Base), f.As)
	case unit.KindArea:
		return calc.Gives(s, l.key, l.label, unit.Area(f.Base), f.As)
	case unit.KindVolume:
		return calc.Gives(s, l.key, l.label, unit.Volume(f.Base), f.As)
	case unit.KindMass:
		return calc.Gives(s, l.key, l.label, unit.Mass(f.Base), f.As)
	}
	return calc.Gives(s, l.key, l.label, unit.Number(f.Base), f.As)
}

// The columns of the table, in their order. That of the price is there only where one was typed.
const (
	number = iota
	material
	toOrder
	comesIn
	likely
	weighs
	restsOn
	costs
)

func (o *order) table() {
	heads := []words.Msg{"Line", "Material", "Order", "In", "Likely", "Weight", "Rests on"}
	if o.priced {
		heads = append(heads, "Price")
	}
	t := o.s.Table("order", "The order", heads...)
	t.Says = words.Say("What stands under Order is enough 19 times in 20, and is rounded up once, here.")
	for _, l := range o.lines {
		cells := make([]calc.Cell, restsOn+1, costs+1)
		buys, probably := l.fig(l.buy), l.fig(l.likely)
		cells[number] = calc.Amount(l.number, unit.Whole1)
		cells[material] = l.named()
		cells[toOrder] = calc.Cell{Is: &buys}
		cells[comesIn] = calc.Cell{Says: l.in()}
		cells[likely] = calc.Cell{Is: &probably}
		cells[weighs] = calc.Worded("not known")
		if l.each > 0 {
			cells[weighs] = calc.Amount(l.each*unit.Mass(l.buy), unit.PoundKg)
		}
		cells[restsOn] = calc.Cell{Says: joined(l.rests)}
		if o.priced {
			price := calc.Worded("none typed")
			if l.price > 0 {
				price = calc.Amount(l.price*unit.Number(l.buy/l.unit()), unit.Bare)
			}
			cells = append(cells, price)
		}
		t.Row(cells...)
	}
}

func (l *line) named() calc.Cell {
	if l.title == "" {
		return calc.Worded("{material}", words.Named("material", l.label))
	}
	return calc.Worded("{title}: {material}", words.Named("title", l.title), words.Named("material", l.label))
}

// in says what a line comes in.
func (l *line) in() words.Line {
	pack := words.Arg{Name: "pack", Figure: &l.supply.Pack}
	in := words.Named("in", l.supply.In)
	switch {
	case l.supply.Pack.Base == 0 && l.supply.In == "":
		return words.Say("as it is measured")
	case l.supply.Pack.Base == 0:
		return words.Say("{in}", in)
	case l.supply.Pack.Kind == unit.KindArea:
		return words.Say("pieces with a face of {pack}", &pack)
	case l.supply.Pack.Kind == unit.KindLength && l.supply.Grade > 0:
		return words.Say("{in}, {pack} wide, {thick} to fill", in, &pack, words.Is("thick", unit.Length(l.supply.Grade), unit.InchMM))
	case l.supply.Pack.Kind == unit.KindLength:
		return words.Say("{in}, {pack} across", in, &pack)
	case l.supply.Pack.Kind == unit.KindVolume && l.yields():
		return words.Say("{in}, each yielding {pack}", in, &pack)
	}
	return words.Say("{in} of {pack}", in, &pack)
}

// joined lists lines of words, none twice.
func joined(lines []words.Line) words.Line {
	all := lines[0]
	for _, l := range lines[1:] {
		all = words.Say("{before}, {next}", words.Also("before", all), words.Also("next", l))
	}
	return all
}
