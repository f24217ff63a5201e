package nest

import (
	"strconv"

	"setbook/calc"
	"setbook/calc/cutting"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// listed is how many kinds of sheet the tables list.
const listed = 100

func (j *job) tables(s *calc.Sheet) {
	kinds := j.kinds[:min(len(j.kinds), listed)]
	sheet := j.sheet.W.Times(j.sheet.L)
	t := s.Table("kinds", "The pavers, by how they are cut", "Paver", "How many", "Pieces: row (how many)", "Used")
	cuts := s.Table("cuts", "The cuts, in order", "Paver", "Cut", "On the saw", "What comes off", "So wide", "Measured from", "The line runs")
	t.Says = words.Say("A row number is the row of the piece in the list above.")
	cuts.Says = words.Say("Each cut runs straight through the part that is on the saw. Parts are numbered as they lie, from the near left corner: A2.1 is the first block of the second strip of paver A. Put the blade outside the measure: the saw cut is not in it.")
	if len(j.kinds) > listed {
		t.Says = words.Say("A row number is the row of the piece in the list above. The first {listed} kinds of {all} are listed; nest fewer pieces at once to see them all.",
			words.Is("listed", unit.Count(listed), unit.Whole1), words.Is("all", unit.Count(len(j.kinds)), unit.Whole1))
	}
	for _, k := range kinds {
		var area unit.Area
		for _, q := range k.placed {
			area += j.pieces[q.Piece].W.Times(j.pieces[q.Piece].L)
		}
		t.Row(calc.Marked(k.mark), calc.Amount(unit.Count(k.count), unit.Whole1), calc.Marked(j.list(k)), calc.Amount(unit.Ratio(area/sheet), unit.Share))
		for i, c := range k.cuts {
			cuts.Row(calc.Marked(k.mark), calc.Marked(strconv.Itoa(i+1)), calc.Marked(part(k.mark, c)), calc.Worded(comesOff(c)), calc.Amount(c.Wide, sawn),
				calc.Worded(measuredFrom(c)), calc.Worded(runs(c)))
		}
	}
}

// sawn shows a size as it is marked on a paver.
var sawn = &unit.Pair{US: unit.Form{Unit: unit.Inches, Fraction: 32}, Metric: unit.Form{Unit: unit.Millimetres}}

// part names what lies on the saw: A is the whole paver, A2.1 the first block of its second strip.
func part(text string, c cutting.Cut) string {
	for i, n := range c.Part {
		if n == 0 {
			break
		}
		if i > 0 {
			text += "."
		}
		text += strconv.Itoa(n)
	}
	return text
}

func comesOff(c cutting.Cut) words.Msg {
	switch c.Stage {
	case 1:
		return "a strip off the paver"
	case 2:
		return "a block off the strip"
	case 3:
		return "a piece off the block"
	}
	return "the piece, trimmed"
}

func measuredFrom(c cutting.Cut) words.Msg {
	switch {
	case c.Upright && c.Beyond:
		return "the right end"
	case c.Upright:
		return "the left end"
	case c.Beyond:
		return "the far edge"
	}
	return "the near edge"
}

func runs(c cutting.Cut) words.Msg {
	if c.Upright {
		return "along the paver's length"
	}
	return "along the paver's width"
}
