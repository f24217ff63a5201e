package takeoff

import (
	"slices"
	"sort"
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// order is what the work gathers.
type order struct {
	e       calc.Entry
	s       *calc.Sheet
	lines   []*line
	layouts []*layout
	parts   int // so many have a symbol
	weight  unit.Mass
	price   unit.Number
	priced  bool // a line has a price
	wrong   bool // a price has no line
}

// line is one material of the order: what it comes to, added up from its parts.
type line struct {
	number   unit.Count
	key      string // of its answer
	supply   *calc.Supply
	label    words.Msg
	title    words.Msg // of the calculator, where the material has no name; else ""
	like     unit.Figure
	parts    []part
	likely   float64
	half     float64 // from likely to the high end of all parts together
	cautious float64
	buy      float64
	each     unit.Mass // 0: not known
	price    unit.Number
	rests    []words.Line
}

// part is what one entry puts into a line.
type part struct {
	symbol, spread string
	of             string // the calculator: parts of one share their causes
	likely, half   float64

	// A part that comes of the pavers, of the sawing or of a plan's joints has a step of its own.
	says                   words.Msg
	likelyExpr, spreadExpr string
	given                  []calc.Term // that its expressions name besides the parts
}

// called is an entry as what rests on it is told: by its calculator's title, and its own name.
func (e entry) called() words.Line {
	if e.name == "" {
		return words.Say("{title}", words.Named("title", e.of.Title))
	}
	return words.Say("{title} ({name})", words.Named("title", e.of.Title), words.Text("name", e.name))
}

// take puts what a sheet calls to be bought into the lines.
func (o *order) take(from entry, s *calc.Sheet) {
	rests := from.called()
	for i := range s.Answers {
		a := &s.Answers[i]
		if !a.Buys || a.Supply != nil && a.Supply.Of == calc.BuyGrout && o.byPlan(from, s, a, rests) {
			continue
		}
		supply, title := a.Supply, words.Msg("")
		if supply == nil {
			supply = &calc.Supply{Of: &calc.Material{Key: from.of.ID + "_" + a.Key, Name: a.Label}, Likely: a.Is.Base, High: a.High}
			title = from.of.Title
		}
		if supply.Likely > 0 {
			o.add(supply, title, a.Is, from.of.ID, rests)
		}
	}
}

// add puts one supply into the line of its like.
func (o *order) add(supply *calc.Supply, title words.Msg, like unit.Figure, of string, rests words.Line) *part {
	i := slices.IndexFunc(o.lines, func(l *line) bool {
		return l.supply.Of.Key == supply.Of.Key && l.like.Kind == like.Kind && l.supply.In == supply.In && l.supply.Grade == supply.Grade &&
			l.supply.Pack.Kind == supply.Pack.Kind && l.supply.Pack.Base == supply.Pack.Base
	})
	if i < 0 {
		i = len(o.lines)
		o.lines = append(o.lines, &line{supply: supply, label: supply.Of.Name, title: title, like: like})
	}
	l := o.lines[i]
	o.parts++
	n := strconv.Itoa(o.parts)
	l.parts = append(l.parts, part{symbol: "q_" + n, spread: "s_" + n, of: of, likely: supply.Likely, half: max(0, supply.High-supply.Likely)})
	l.rests = append(l.rests, rests)
	return &l.parts[len(l.parts)-1]
}

// more adds what comes of the pavers and of the sawing: spacers, clips and blades.
func (o *order) more() {
	var pavers, spread float64
	var symbols, spreads []string
	var rests []words.Line
	for _, l := range o.lines {
		if l.supply.Of == calc.BuyPavers {
			for _, p := range l.parts {
				pavers, spread = pavers+p.likely, spread+p.half
				symbols, spreads = append(symbols, p.symbol), append(spreads, p.spread)
			}
			rests = append(rests, l.rests...)
		}
	}
	each := func(to *calc.Material, count unit.Count, symbol string, says words.Msg) {
		if count == 0 || pavers == 0 {
			return
		}
		n := pavers * float64(count)
		p := o.add(&calc.Supply{Of: to, In: "pieces", Likely: n, High: n*(1+lost) + spread*float64(count)}, "", unit.Fig(unit.Number(n), unit.Bare), id, rests[0])
		p.says = says
		p.likelyExpr = "(" + strings.Join(symbols, " + ") + ") * " + symbol
		p.spreadExpr = "(" + strings.Join(spreads, " + ") + ") * " + symbol + " + " + p.symbol + " / 10"
		o.lines[len(o.lines)-1].rests = rests
	}
	each(calc.BuySpacers, spacers.Of(o.e), spacers.Symbol, "Spacers: so many to a paver. A tenth is lost.")
	each(calc.BuyClips, clips.Of(o.e), clips.Symbol, "Levelling clips: so many to a paver. A tenth is lost.")
	if x := cuts.Of(o.e); x > 0 {
		n := float64(x / life.Of(o.e))
		p := o.add(&calc.Supply{Of: calc.BuyBlades, In: "pieces", Likely: n, High: n * (1 + blunt)}, "", unit.Fig(unit.Number(n), unit.Bare), id, words.Say("the length to saw"))
		p.says, p.likelyExpr, p.spreadExpr = "Blades: the length to saw over what one saws. Each may saw a third less.", cuts.Symbol+" / "+life.Symbol, p.symbol+" / 2"
	}
}

// sort puts the lines in the order of the materials, those without a name last, and numbers them.
func (o *order) sort() {
	rank := func(l *line) int {
		i := slices.Index(calc.Supplies[:], l.supply.Of)
		if i < 0 {
			return len(calc.Supplies)
		}
		return i
	}
	sort.SliceStable(o.lines, func(i, j int) bool { return rank(o.lines[i]) < rank(o.lines[j]) })
	count := map[string]int{}
	for i, l := range o.lines {
		l.number = unit.Count(i + 1)
		l.key = l.supply.Of.Key
		if count[l.key]++; count[l.key] > 1 {
			l.key += "_" + strconv.Itoa(count[l.key])
		}
	}
}

// total adds each line up, weighs and prices it.
func (o *order) total() {
	for _, l := range o.lines {
		shared := map[string]float64{}
		for _, p := range l.parts {
			l.likely += p.likely
			shared[p.of] = Shared(shared[p.of], p.half)
		}
		l.half = 0
		for _, of := range l.causes() {
			l.half = Independent(l.half, shared[of])
		}
		if l.supply.Of == calc.BuyPavers {
			more := 1 + float64(spares.Of(o.e))
			l.likely, l.half = l.likely*more, l.half*more
		}
		l.cautious = Cautious(l.likely, l.half)
		l.buy = l.cautious
		if l.counted() {
			l.buy = float64(unit.Whole(l.cautious))
		}
		l.each = o.mass(l)
		o.weight += l.each * unit.Mass(l.buy)
	}
	for _, row := range prices.Of(o.e) {
		i := int(priceLine.At(row, 0)) - 1
		if i < 0 || i >= len(o.lines) || float64(i+1) != row[0] || o.lines[i].unit() == 0 {
			o.wrong = true
			continue
		}
		o.lines[i].price, o.priced = priceEach.At(row, 1), true
	}
	for _, l := range o.lines {
		if l.price > 0 {
			o.price += l.price * unit.Number(l.buy/l.unit())
		}
	}
}

// causes are the calculators that a line rests on, each once.
func (l *line) causes() (of []string) {
	for _, p := range l.parts {
		if !slices.Contains(of, p.of) {
			of = append(of, p.of)
		}
	}
	return of
}

// counted reports whether a line is bought in whole pieces.
func (l *line) counted() bool { return l.like.Kind == unit.KindCount || l.like.Kind == unit.KindNumber }

// unit is what a price is for, in base units: a piece, or a metre of what has a length; 0 where it is neither.
func (l *line) unit() float64 {
	switch {
	case l.counted():
		return 1
	case l.like.Kind == unit.KindLength:
		return float64(unit.Metre)
	}
	return 0
}

// yields reports whether the volume of a pack is what a bag of powder yields once it is mixed, not what is in it.
func (l *line) yields() bool { return l.supply.Of == calc.BuyMortar || l.supply.Of == calc.BuyPatch }

// mass is what one of a line weighs, as far as it can be told from its pack: powder by the bag, liquids by their volume, pavers by their face.
func (o *order) mass(l *line) unit.Mass {
	pack := l.supply.Pack
	switch {
	case pack.Base == 0 || !l.counted():
		return 0
	case pack.Kind == unit.KindMass:
		return unit.Mass(pack.Base)
	case l.yields():
		return bagMass.Of(o.e)
	case pack.Kind == unit.KindVolume:
		return unit.Volume(pack.Base).Weighs(wets.Of(o.e))
	case pack.Kind == unit.KindArea:
		return EachPaver(unit.Area(pack.Base), thickness.Of(o.e), heavy.Of(o.e))
	}
	return 0
}
