package nest

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// shown is how many rows of pieces the working writes out. The rest are one term.
const shown = 3

func (j *job) steps(s *calc.Sheet) {
	n := len(j.plan.Sheets)
	calc.Works(s, "Area of a paver: width by length.", "A", j.sheet.W.Times(j.sheet.L), unit.InchArea, "W * L", source.ByDefinition)
	expr, terms := j.sum("")
	s.Step(words.Say("Area of the pieces: of each size how many, by width, by length, all together."),
		calc.Sym("P", j.area, unit.InchArea), expr, source.ByDefinition, terms...)

	var held unit.Area
	for _, p := range j.pieces {
		held += (p.W + j.kerf).Times(p.L + j.kerf)
	}
	expr, terms = j.sum(" + k")
	s.Step(words.Say("The same with a saw cut beside each piece, both ways."), calc.Sym("P_cut", held, unit.InchArea), expr, source.ByDefinition,
		append(terms, calc.Sym("k", j.kerf, unit.InchMM))...)
	calc.Works(s, "Pavers that hold that much. A paver's last piece needs no cut behind it, so a paver counts as larger by one cut both ways.",
		"h", Held(j.sheet, j.kerf, j.pieces), unit.Bare, "P_cut / ((W + k) * (L + k))", source.AreaBound)
	calc.Works(s, "By area it takes at least so many whole pavers.", "B_area", unit.Whole(float64(Held(j.sheet, j.kerf, j.pieces))), unit.Whole1, "ceil(h)", source.AreaBound)

	calc.Let(s, "B_alone", unit.Count(j.plan.Alone), unit.Whole1)
	calc.Let(s, "B_weighed", unit.Count(j.plan.Weighed), unit.Whole1)
	calc.Works(s, "The least by proof: by area, by pieces of which no two come out of one paver, or by weighing the sides of the pieces in steps, whichever is most.",
		"B", unit.Count(j.plan.Bound), unit.Whole1, "max(B_area, max(B_alone, B_weighed))", source.FeasibleBound)
	expr, terms = j.kindSum()
	s.Step(words.Say("Pavers of the plan below: of each kind how many."), calc.Sym("N", unit.Count(n), unit.Whole1), expr, source.ByDefinition, terms...)
	calc.Works(s, "Over the least: what a better plan could save at most.", "o", unit.Count(n-j.plan.Bound), unit.Whole1, "N - B", source.ByDefinition)
	calc.Works(s, "Used: the area of the pieces over the area of the pavers cut up.", "u", j.used, unit.Share, "P / (N * A) * 100", source.ByDefinition)
}

// sum is the area of the pieces, each side with something more, as an expression and its terms.
func (j *job) sum(more string) (string, []calc.Term) {
	extra := unit.Length(0)
	if more != "" {
		extra = j.kerf
	}
	var parts []string
	var terms []calc.Term
	var rest unit.Area
	for i, row := range j.rows {
		a, b, n := width.At(row, 0), length.At(row, 1), unit.Whole(float64(count.At(row, 2)))
		if i >= shown {
			rest += unit.Area(n) * (a + extra).Times(b+extra)
			continue
		}
		no := strconv.Itoa(i + 1)
		side := func(symbol string) string {
			if more == "" {
				return symbol + no
			}
			return "(" + symbol + no + more + ")"
		}
		parts = append(parts, "n_"+no+" * "+side("a_")+" * "+side("b_"))
		terms = append(terms, calc.Sym("n_"+no, n, unit.Whole1), calc.Sym("a_"+no, a, unit.InchMM), calc.Sym("b_"+no, b, unit.InchMM))
	}
	if len(j.rows) > shown {
		parts = append(parts, "P_rest")
		terms = append(terms, calc.Sym("P_rest", rest, unit.InchArea))
	}
	return strings.Join(parts, " + "), terms
}

// kindSum is the sheets of each kind.
func (j *job) kindSum() (string, []calc.Term) {
	const shown = 6
	var parts []string
	var terms []calc.Term
	rest := 0
	for i, k := range j.kinds {
		if i >= shown {
			rest += k.count
			continue
		}
		parts = append(parts, "N_"+k.mark)
		terms = append(terms, calc.Sym("N_"+k.mark, unit.Count(k.count), unit.Whole1))
	}
	if rest > 0 {
		parts = append(parts, "N_rest")
		terms = append(terms, calc.Sym("N_rest", unit.Count(rest), unit.Whole1))
	}
	return strings.Join(parts, " + "), terms
}

// narrow is a strip that breaks easily in 20 mm porcelain: common practice.
const narrow = 50 * unit.Millimetre

func (j *job) cautions(s *calc.Sheet) {
	if len(j.plan.Sheets) == j.plan.Bound {
		s.Warn(calc.Note, source.FeasibleBound, "No plan of any kind takes fewer pavers than this one: {B}.")
	} else {
		s.Warn(calc.Note, source.FeasibleBound, "No plan takes fewer than {B}. This one takes {N}: a better one, if there is any, saves {o} at most.")
	}
	thin := 0
	for _, p := range j.pieces {
		if min(p.W, p.L) < narrow {
			thin++
		}
	}
	if thin > 0 {
		s.Warn(calc.Care, source.CommonPractice, "Pieces narrower than {narrow}: {thin}. They break in the saw and underfoot. Move the layout so that its cuts come out wider.",
			words.Both("narrow", narrow, unit.InchMM), words.Is("thin", unit.Count(thin), unit.Whole1))
	}
	if j.kerf == 0 {
		s.Warn(calc.Care, source.CommonPractice, "The saw cut was entered as nought. Every blade takes something away: measure a cut in a scrap.")
	}
	s.Warn(calc.Care, source.WetSaw, "Sawing pavers raises dust that may hold silica. Saw wet, best on a standing saw with water fed to its blade. Dry sawing by hand is not in the rule's table: it asks for an exposure assessment and a respirator first. Follow your exposure plan and local rules.")
	s.Warn(calc.Care, source.CommonPractice, "A saw throws chips and is loud: eye and ear protection, guard on, no loose clothing, hands off the line of the blade. Slurry is slippery and caustic: keep it off the pavers, the path and the drain. Follow the saw's own handbook.")
	s.Warn(calc.Care, source.CommonPractice, "Carry a large paver on edge, two people or a lifter, and support the whole of it on the saw until the cut is through: an offcut that drops chips the face and the foot.")
	s.Warn(calc.Note, source.CommonPractice, "Pieces that keep one of the paver's own edges: {edge} of {all}. Two that meet at a corner: {corner}. Put an own edge on the open joint and a sawn edge at the wall; ease a sawn edge that shows.",
		words.Is("edge", unit.Count(j.edge), unit.Whole1), words.Is("corner", unit.Count(j.corner), unit.Whole1), words.Is("all", unit.Count(len(j.pieces)), unit.Whole1))
	s.Warn(calc.Note, source.CommonPractice, "Sizes here are what the saw must leave. Take joints off the gap first, and measure the paver: its true size is under its nominal one.")
}
