// Package pace answers how far ahead of its pavers a crew may comb, and how large a
// mix it can use up.
package pace

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	covering = unit.In(unit.SquareFeetPerHour, unit.SquareMetresPerHour)
	gives    = unit.In(unit.CubicFeetPerPound, unit.LitresPerKilogram)
	six      = &unit.Pair{US: unit.Form{Unit: unit.One, Digits: 6}, Metric: unit.Form{Unit: unit.One, Digits: 6}}
)

var (
	crew = calc.Ask("crew", "c", "Setters", unit.Whole1, unit.Count(1), 20, "2").Usually("1", "2", "3").
		Helped("Those who comb and set. Whoever mixes and carries is not counted.")
	rate = calc.Ask("rate", "r", "Area that one setter sets an hour", covering, unit.AreaRate(0.2/3600), 50.0/3600, "25 ft2/h").
		Helped("Time a setter over a few pavers, cuts and levelling included.")
	open   = calc.Ask("open", "t_o", "Open time", unit.MinSpan, 2*unit.Minute, 3*unit.Hour, "20 min").Usually("10 min", "20 min", "30 min").Helped("On the bag. Sun, wind and a dry slab cut it.")
	pot    = calc.Ask("pot", "t_p", "Pot life", unit.MinSpan, 2*unit.Minute, 12*unit.Hour, "45 min").Usually("30 min", "45 min", "2 h").Helped("On the bag. It runs from the first wetting, slaking included.")
	paverL = calc.Ask("paver_l", "l", "Paver, along the way that the work goes", unit.InchMM, 50*unit.Millimetre, 3*unit.Metre, "24 in").Usually("24 in", "48 in", "600 mm")
	paverW = calc.Ask("paver_w", "b", "Paver, across it", unit.InchMM, 50*unit.Millimetre, 3*unit.Metre, "24 in").Usually("12 in", "24 in", "600 mm")
	joint  = calc.Ask("joint", "j", "Joint", unit.InchMM, 0, 50*unit.Millimetre, "3/16 in").Usually("3/16 in", "1/4 in", "5 mm")
	bed    = calc.Ask("bed", "t", "Bed after the ridges fall in", unit.InchMM, unit.Millimetre, 60*unit.Millimetre, "3/16 in").Helped("From Notch to bed, skim and hollows with it.")
	yield  = calc.Ask("powder_yield", "Y", "Wet mortar that powder gives", gives, unit.Yield(0.0002), 0.003, "0.012 ft3/lb").
		Helped("Wet volume of a bag over its mass. From the bag, or from Bag to bucket.")
)

// hotShare is what sun, wind and a hot slab may leave of open time and pot life: common practice.
const hotShare = 50 * unit.Percent

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "pace", Stage: calc.Setting, Title: "How far to comb, how much to mix",
	Asks: "How far ahead of the pavers may this crew comb, and how large a mix can it use up?",
	Inputs: []*calc.Input{crew.Input, rate.Input, open.Input, pot.Input, paverL.Input, paverW.Input, joint.Input,
		bed.Input, yield.Input},
	Work:   work,
	Origin: "What a crew sets in the open time is the area that may be combed, and what it sets in the pot life is the area of one mix. Both are the crew's own rate times that time, cut down to whole rows of pavers.",
	Memory: []words.Msg{
		"Snap the line where a row of whole pavers ends, comb up to it and no further: a straight edge of mortar and a clean joint to start from.",
		"Touch the ridges. Mortar that no longer comes off on the finger has skinned over: scrape it off, do not comb it again.",
		"Key mortar into the slab with the flat of the trowel before you comb.",
		"Lay out the next row dry beside the line before any mortar goes down.",
		"Scrape back the mortar that squeezes out past the last row before it sets.",
		"Have the next mix slaking while the last is spread, and none standing.",
	},
}

// Area is what a crew covers in a time. By definition of the rate.
func Area(crew unit.Count, each unit.AreaRate, in unit.Span) unit.Area {
	return unit.Area(float64(crew) * float64(each) * float64(in) * 1e12)
}

// Module is the area that one paver takes up with its joints. Geometry.
func Module(l, w, joint unit.Length) unit.Area { return (l + joint).Times(w + joint) }

// Rows is how many rows of whole pavers lie within an area, before they are cut down
// to whole ones: each setter works a lane of one paver's width. Common practice.
func Rows(comb unit.Area, crew unit.Count, module unit.Area) unit.Number {
	return unit.Number(float64(comb) / float64(crew) / float64(module))
}

// whole is a number cut down to whole things, but not for a trace of rounding.
func whole(n unit.Number) unit.Count { return -unit.Whole(-float64(n)) }

// Powder is what a bed over an area takes. By definition of the yield.
func Powder(area unit.Area, bed unit.Length, gives unit.Yield) unit.Mass {
	return unit.Mass(float64(area.Deep(bed)) * 1e-12 / float64(gives) * 1e9)
}

// Mixes is how often an hour a mix must be made when each is used up just within its pot life.
func Mixes(pot unit.Span) unit.Number { return unit.Number(unit.Hour / pot) }

func work(e calc.Entry, s *calc.Sheet) {
	p := at(e, 1)
	hot := at(e, hotShare)
	from := words.Say("Sun, wind and a hot slab leave {share} of open time and pot life.", words.Is("share", hotShare, unit.Share))
	calc.Gives(s, "rows", "Rows of whole pavers ahead of the line", p.rows, unit.Whole1).Between(float64(hot.rows), float64(p.rows), from).First()
	calc.Gives(s, "comb", "Area to comb at a time", p.comb, unit.FootArea).Between(float64(hot.comb), float64(p.comb), from).First()
	calc.Gives(s, "batch", "Powder for one mix, at the most", p.batch, unit.PoundKg).Between(float64(hot.batch), float64(p.batch), from).First()
	calc.Gives(s, "mixes", "Mixes an hour, at the least", p.mixes, unit.Bare).Between(float64(p.mixes), float64(hot.mixes), from)
	steps(s, e, p)
	cautions(s, e, p)
	s.Drawing = drawing(e, p)
}

// parts are what the work has found.
type parts struct {
	comb, module unit.Area
	lane         unit.Number
	rows         unit.Count
	ahead        unit.Length // from the line to the end of the last whole row
	set          unit.Area   // in a pot life
	batch        unit.Mass
	mixes        unit.Number
}

// at works the sum with a share of the bag's times.
func at(e calc.Entry, share unit.Ratio) parts {
	openFor, lives := unit.Span(share)*open.Of(e), unit.Span(share)*pot.Of(e)
	p := parts{comb: Area(crew.Of(e), rate.Of(e), openFor), module: Module(paverL.Of(e), paverW.Of(e), joint.Of(e))}
	p.lane = Rows(p.comb, crew.Of(e), p.module)
	p.rows = whole(p.lane)
	p.ahead = unit.Length(p.rows) * (paverL.Of(e) + joint.Of(e))
	p.set = Area(crew.Of(e), rate.Of(e), lives)
	p.batch = Powder(p.set, bed.Of(e), yield.Of(e))
	p.mixes = Mixes(lives)
	return p
}
