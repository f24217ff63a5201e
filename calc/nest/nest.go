// Package nest answers how many sheets or pavers a list of rectangular pieces takes, and how to cut them.
package nest

import (
	"setbook/calc"
	"setbook/calc/cutting"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	sheetW = calc.Ask("sheet_w", "W", "Width of the paver or sheet", unit.InchMM, 100*unit.Millimetre, 3500*unit.Millimetre, "23 7/16 in").
		Usually("23 7/16 in", "595 mm", "895 mm")
	sheetL = calc.Ask("sheet_l", "L", "Length of the paver or sheet", unit.InchMM, 100*unit.Millimetre, 3500*unit.Millimetre, "23 7/16 in").
		Usually("23 7/16 in", "595 mm", "1195 mm")
	width  = calc.Ask("width", "", "Width of a piece", unit.InchMM, 5*unit.Millimetre, 3500*unit.Millimetre, "6 in")
	length = calc.Ask("length", "", "Length of a piece", unit.InchMM, 5*unit.Millimetre, 3500*unit.Millimetre, "12 in")
	count  = calc.Ask("count", "", "How many alike", unit.Whole1, unit.Count(1), 1000, "1")
	pieces = calc.Tabulate("pieces", "Pieces to cut", "23 7/16 in,9 1/2 in,7;11 5/8 in,9 1/2 in,6;7 in,7 in,8", width.Input, length.Input, count.Input).
		LastSpare().Helped("One row a size: its width, its length and how many. Leave the count out for one.")
	kerf = calc.Ask("kerf", "k", "Width of the saw cut", unit.InchMM, 0, 20*unit.Millimetre, "1/8 in").
		Usually("3/32 in", "1/8 in", "2 mm", "3 mm").Helped("What the blade takes away. Saw a scrap through and measure: it is a little more than the blade.")
	turn = calc.Choose("turn", "May a piece be turned a quarter?", "yes",
		calc.Option{Name: "yes", Label: "Yes"}, calc.Option{Name: "no", Label: "No: the face has a grain or a print that must run one way"})
)

// most is how many pieces are nested at once.
const most = 5000

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "nest", Stage: calc.SettingOut, Title: "Pieces out of pavers",
	Asks:   "How many pavers do these cut pieces take, and how is each cut?",
	Inputs: []*calc.Input{sheetW.Input, sheetL.Input, pieces.Input, kerf.Input, turn.Input},
	Work:   work,
	Long:   true,
	Origin: "The pieces, each with a saw cut beside it, cannot come out of less area than they have, and no cutting can do better than the proven least. The plan is found by trying: pieces are set where they leave the largest blanks, then some are taken off and set anew, as long as the work allows and the least is not reached.",
	Memory: []words.Msg{
		"Measure each gap where the piece will lie, both ends of it, and take the joint off before you write the size down.",
		"Mark the face with the piece's number and an arrow that points the way it will lie.",
		"Put the paver's own edge on the joint and the sawn edge to the wall or under the sealant.",
		"Cut the long straight cuts first, then the short ones, and feed slowly in and out of the edge: that is where it chips.",
		"Ease the sawn arris with a rubbing stone, wet.",
		"Keep every offcut until the job is done, marked with its size.",
	},
}

func work(e calc.Entry, s *calc.Sheet) {
	j := job{sheet: cutting.Size{W: sheetW.Of(e), L: sheetL.Of(e)}, kerf: kerf.Of(e), rows: pieces.Of(e)}
	for i, row := range j.rows {
		w, l, n := width.At(row, 0), length.At(row, 1), int(unit.Whole(float64(count.At(row, 2))))
		if len(j.pieces)+n > most {
			s.Refuse("pieces", "Pieces to cut: read more than {most} pieces, which is all that it nests at once. Nest them in two lots.",
				words.Is("most", unit.Count(most), unit.Whole1))
			return
		}
		for range n {
			j.pieces = append(j.pieces, cutting.Piece{Size: cutting.Size{W: w, L: l}, Turn: turn.Of(e) == "yes"})
			j.of = append(j.of, i)
		}
	}
	plan, misfits := cutting.Nest(j.sheet, j.kerf, j.pieces, s.Going)
	if len(misfits) > 0 {
		refuse(s, e, j.rows[j.of[misfits[0]]], j.of[misfits[0]])
		return
	}
	j.plan = plan
	j.group()
	j.measure()
	j.steps(s)
	j.answers(s)
	j.cautions(s)
	j.tables(s)
	j.draw(s)
}

// refuse names a row whose piece fits no sheet.
func refuse(s *calc.Sheet, e calc.Entry, row []float64, i int) {
	told := []*words.Arg{words.Is("row", unit.Count(i+1), unit.Whole1), width.Is("a", width.At(row, 0)), length.Is("b", length.At(row, 1)),
		sheetW.Is("w", sheetW.Of(e)), sheetL.Is("l", sheetL.Of(e))}
	if turn.Of(e) == "no" {
		s.Refuse("pieces", "Pieces to cut, row {row}: read {a} by {b}. Unturned, that does not come out of a paver {w} by {l}.", told...)
		return
	}
	s.Refuse("pieces", "Pieces to cut, row {row}: read {a} by {b}. That does not come out of a paver {w} by {l}.", told...)
}

// job is what is asked and what came of it.
type job struct {
	sheet  cutting.Size
	kerf   unit.Length
	rows   [][]float64
	pieces []cutting.Piece
	of     []int // the row of each piece
	plan   cutting.Plan
	kinds  []kind

	area   unit.Area  // of the pieces
	used   unit.Ratio // of the sheets' area
	corner int        // pieces with two of the sheet's own edges that meet
	edge   int        // pieces with one at least
}

// Used is the share of the sheets' area that the pieces come to. By definition.
func Used(pieces unit.Area, sheets int, sheet unit.Area) unit.Ratio {
	return unit.Ratio(float64(pieces) / (float64(sheets) * float64(sheet)))
}

// Held is how many sheets' worth of area the pieces take with a kerf beside each, both ways, out of sheets larger by one kerf
// both ways: a cut lies between two pieces, and none at the sheet's own edge. No plan needs fewer sheets than that.
// Source: source.AreaBound; the kerf is geometry.
func Held(sheet cutting.Size, kerf unit.Length, pieces []cutting.Piece) unit.Number {
	var total unit.Area
	for _, p := range pieces {
		total += (p.W + kerf).Times(p.L + kerf)
	}
	return unit.Number(total / (sheet.W + kerf).Times(sheet.L+kerf))
}

func (j *job) measure() {
	for _, p := range j.pieces {
		j.area += p.W.Times(p.L)
	}
	j.used = Used(j.area, len(j.plan.Sheets), j.sheet.W.Times(j.sheet.L))
	const across, along = cutting.Left | cutting.Right, cutting.Bottom | cutting.Top
	for _, sheet := range j.plan.Sheets {
		for _, q := range sheet {
			if q.Factory != 0 {
				j.edge++
			}
			if q.Factory&across != 0 && q.Factory&along != 0 {
				j.corner++
			}
		}
	}
}

func (j *job) answers(s *calc.Sheet) {
	n := unit.Count(len(j.plan.Sheets))
	spare := n + unit.Whole(float64(n)*spares)
	calc.Gives(s, "sheets", "Pavers to cut up", n, unit.Whole1).
		Between(float64(n), float64(spare), words.Say("One paver in twenty, and one at least, chips, breaks or has a flaw.")).Buy().First()
	calc.Gives(s, "used", "Used of their area", j.used, unit.Share).First()
	calc.Gives(s, "bound", "No plan takes fewer than", unit.Count(j.plan.Bound), unit.Whole1)
}

// spares is the share of pavers that go to waste over the saw: common practice.
const spares = 0.05
