package pace

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

func steps(s *calc.Sheet, e calc.Entry, p parts) {
	calc.Works(s, "Area to comb at a time: what the crew covers before the mortar skins over.",
		"A_c", p.comb, unit.FootArea, "c * r * t_o / 60", source.ByDefinition)
	calc.WorksUS(s, "Area that one paver takes up with its joints.",
		"a", p.module, unit.FootArea, "(l + j) * (b + j) / 1000000", "(l + j) * (b + j) / 144", source.ByDefinition)
	calc.Works(s, "Rows in that area, each setter in a lane of one paver.",
		"q", p.lane, six, "A_c / c / a", source.CommonPractice)
	calc.Works(s, "Only whole rows: the chalk line falls where a paver ends.",
		"N", p.rows, unit.Whole1, "floor(q)", source.CommonPractice)
	calc.WorksUS(s, "Where to snap the line, ahead of the last row set.",
		"x", p.ahead, unit.FootMetre, "N * (l + j) / 1000", "N * (l + j) / 12", source.ByDefinition)
	calc.Works(s, "Area that the crew sets in one pot life.",
		"A_p", p.set, unit.FootArea, "c * r * t_p / 60", source.ByDefinition)
	calc.WorksUS(s, "Powder for one mix: the bed on that area, over what powder gives.",
		"P", p.batch, unit.PoundKg, "A_p * t / Y", "A_p * t / 12 / Y", source.ByDefinition)
	calc.Works(s, "Mixes an hour, each used up in its pot life.",
		"m", p.mixes, unit.Bare, "60 / t_p", source.ByDefinition)
}

// oneBag is the powder that one person lifts, pours and mixes in one bucket: common practice.
const oneBag = 25 * unit.Kilogram

func cautions(s *calc.Sheet, e calc.Entry, p parts) {
	if p.rows < 1 {
		s.Warn(calc.Stop, source.CommonPractice, "Not one paver a setter can be set within the open time of {open}. Comb for one paver and set it at once, set faster, or take a mortar with a longer open time.", open.Is("open", open.Of(e)))
	}
	if pot.Of(e) < open.Of(e) {
		s.Warn(calc.Care, source.CommonPractice, "The pot life, {pot}, is shorter than the open time, {open}. It is mostly the other way round: look at the bag again.", pot.Is("pot", pot.Of(e)), open.Is("open", open.Of(e)))
	}
	if p.batch > oneBag*(1+1e-9) { // a trace of rounding is no more than a bag
		s.Warn(calc.Care, source.CommonPractice, "A mix of {batch} is more than a bag and a bucket hold. Mix a bag at a time, and so more often.", words.Is("batch", p.batch, unit.PoundKg))
	}
	s.Warn(calc.Care, source.OpenTimeTest, "Open time on the bag is a laboratory's: hardly any wind and no sun. Outdoors trust the finger on the ridges, not the clock.")
	s.Warn(calc.Care, source.CommonPractice, "Never add water or liquid to a mix or to ridges that have begun to set. Throw it out and mix anew.")
	s.Warn(calc.Note, source.CommonPractice, "Pot life runs from the first wetting: slaking, a second mix and the way to the slab come out of it.")
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves and kneepads, wash splashes off at once, and follow the bag.")
	s.Warn(calc.Care, source.CommonPractice, "A pace is for a day, not for an hour: large pavers are a two-person lift, and heat and kneeling call for rest and water.")
}
