// Package takeoff makes one order out of a job: each material that the entries of its calculators come to, likely and cautious,
// what it weighs and, where prices are typed, what it costs.
package takeoff

import (
	"setbook/calc"
	"setbook/calc/job"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	density = unit.In(unit.PoundsPerCubicFoot, unit.KilogramsPerLitre)
	liquid  = unit.In(unit.PoundsPerGallon, unit.KilogramsPerLitre)
	asSold  = unit.Both(unit.Millimetres)
)

var (
	spares    = calc.Ask("spares", "k", "Spare pavers", unit.Share, 0, unit.Ratio(0.5), "5 %").Usually("3 %", "5 %", "10 %").Helped("Broken on the way, and kept for later: another batch has another shade.")
	thickness = calc.Ask("thickness", "t", "Paver thickness", asSold, 5*unit.Millimetre, 100*unit.Millimetre, "20 mm")
	heavy     = calc.Ask("density", "ρ", "What the pavers weigh", density, unit.Density(1000), 4000, "2.3 kg/L").Helped("Weigh one paver and divide by its volume.")
	bagMass   = calc.Ask("mortar_bag", "M", "A bag of mortar or patch", unit.PoundKg, unit.Kilogram, 60*unit.Kilogram, "50 lb").Usually("50 lb", "20 kg", "25 kg")
	wets      = calc.Ask("liquid_density", "d", "What primer, membrane and sealant weigh", liquid, unit.Density(500), 3000, "1.3 kg/L").Helped("From the label. 1.3 kg/L is an assumption.")
	pallet    = calc.Ask("pallet", "P", "What one pallet carries", unit.PoundKg, 50*unit.Kilogram, 3000*unit.Kilogram, "2000 lb").Usually("2000 lb", "1000 kg")
	spacers   = calc.Ask("spacers", "c_s", "Spacers to a paver", unit.Whole1, unit.Count(0), 40, "2").Usually("0", "1", "2", "4").Helped("One at each crossing comes to one a paver, one on each side to two. 0 orders none.")
	clips     = calc.Ask("clips", "c_l", "Levelling clips to a paver", unit.Whole1, unit.Count(0), 40, "0").Usually("0", "4", "6")
	cuts      = calc.Ask("cuts", "x", "Length to saw", unit.FootMetre, 0, 100_000*unit.Metre, "40 ft").Helped("From the list of cuts under Set out. 0 orders no blade.")
	life      = calc.Ask("blade_life", "y", "Length that one blade saws", unit.FootMetre, unit.Metre, 10_000*unit.Metre, "100 ft").Helped("In 20 mm porcelain, from the blades that you have worn out.")

	priceLine = calc.Ask("line", "", "Line of the order", unit.Whole1, unit.Count(1), 1000, "1")
	priceEach = calc.Ask("price", "", "Price of one", unit.Bare, unit.Number(0), 1_000_000, "20")
	prices    = calc.Tabulate("prices", "Prices, if you like: the line of the order, and what one costs", "", priceLine.Input, priceEach.Input).MayBeEmpty().
			Helped("In your own money. Setbook knows no price.")
)

// How far what is not on a sheet strays, either way: common practice.
const (
	lost  = 0.1 // of spacers and clips, more
	blunt = 0.5 // more blades, where each saws a third less
)

// Of gives the calculator that orders from the entries of others. They are handed in, so that this question knows none of them.
func Of(others []*calc.Calculator) *calc.Calculator {
	q, known := questions(others), &solved{}
	entries := calc.AskLines("job", "Entries of the job", job.Lines(job.Demo(0)), q.reads).
		Helped("A line for each entry: the calculator's name, a question mark and the entry as in its link. Or a job's file. A job's page fills this in.")
	return &calc.Calculator{
		ID: id, Stage: calc.Ordering, Title: "One order",
		Asks: "What does the whole job order, likely and cautious, and what does it weigh?",
		Inputs: []*calc.Input{entries.Input, spares.Input, thickness.Input, heavy.Input, bagMass.Input, wets.Input, pallet.Input,
			spacers.Input, clips.Input, cuts.Input, life.Input, prices.Input},
		Work:   func(e calc.Entry, s *calc.Sheet) { work(q.entries(entries.Of(e)), known, e, s) },
		Origin: "Each sheet gives a likely figure and a spread; what comes from different causes seldom goes wrong together, so its spreads add as the root of their squares, while what shares a cause adds straight. An order that is enough 19 times in 20 stands 1.645 standard deviations over the likely sum, and is rounded up once, at the end.",
		Long:   true, // a layout may be among the entries
		Memory: []words.Msg{
			"Order pavers of one batch and one calibre at once, and read the marks on every crate before it is signed for.",
			"Read the dates on the bags. Half a year is old for most mortar, and a torn bag is a spoilt one.",
			"Keep bags dry, off the ground and covered; keep pails, cartridges and pavers out of frost.",
			"Send whole bags back, not open ones: ask what the yard takes back before you order the cautious figure.",
			"Hand the spare pavers over with their batch written on them.",
		},
	}
}

func work(entries []entry, known *solved, e calc.Entry, s *calc.Sheet) {
	o := &order{e: e, s: s}
	now := known.begin()
	var sheets []*calc.Sheet
	for i, one := range entries {
		if !s.Going(i, len(entries)) {
			break
		}
		sheet := now.sheet(one)
		if len(sheet.Problems) > 0 {
			s.Refuse("job", "{of}: {problem}", words.Named("of", one.of.Title), words.Also("problem", sheet.Problems[0].Says))
			return
		}
		sheets = append(sheets, sheet)
		o.plan(one, sheet)
	}
	known.end(now)
	for i, sheet := range sheets { // once every plan is known
		o.take(entries[i], sheet)
	}
	o.more()
	o.sort()
	o.total()
	o.steps()
	o.answers()
	o.table()
	o.cautions()
	s.Drawing = o.drawing()
}

func (o *order) cautions() {
	s := o.s
	for _, l := range o.lines {
		if l.each > lone {
			s.Warn(calc.Care, source.LiftingEquation, "Line {line}: one weighs {mass}, more than the {most} that the lifting equation starts from. Lift it by two, or with a carrier.",
				words.Is("line", l.number, unit.Whole1), words.Is("mass", l.each, unit.PoundKg), words.Is("most", lone, unit.PoundKg))
		}
	}
	s.Warn(calc.Care, source.CommonPractice, "{W} in one load: read the payload on the truck's plate, and ask what drive, slab and deck carry before a pallet is set down. Wrapping, crates and pallets are not in it.")
	s.Warn(calc.Care, source.CommonPractice, "Nobody stands beside a pallet while it is lifted, nor ever under it. Cut the bands from the side: a stack of pavers slides.")
	s.Warn(calc.Care, source.WetCement, "Bags of mortar and grout burn skin and eyes once they are wet, and their dust may hold silica. Keep them whole until they are mixed.")
	s.Warn(calc.Note, source.TwoDeviations, "The high end of each sheet is taken as two standard deviations over its likely figure. That is a judgement: a sheet's ends are where everything goes well, and where everything goes badly.")
	s.Warn(calc.Note, source.CommonPractice, "Entries of one calculator share the hand, the bag and the waste of one crew, so their spreads add straight. Spreads of different calculators are taken as independent.")
	s.Warn(calc.Note, source.CommonPractice, "Two entries that count the same thing order it twice: leave one of them out.")
	if o.wrong {
		s.Warn(calc.Care, source.CommonPractice, "A price was typed for a line that the order has not. It counts for nothing.")
	}
	if o.priced {
		s.Warn(calc.Note, source.CommonPractice, "Prices are as typed: no tax, no delivery, nothing that was not typed.")
	}
}

// lone is the mass that the lifting equation starts from: the most for one person, all else being right.
const lone = 23 * unit.Kilogram
