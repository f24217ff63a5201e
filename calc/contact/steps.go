package contact

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// shown is how many patches the working writes out. The rest are one term.
const shown = 4

// fine shows a share to the digits that its margin needs.
var fine = &unit.Pair{US: unit.Form{Unit: unit.PerCent, Digits: 6}, Metric: unit.Form{Unit: unit.PerCent, Digits: 6}}

func steps(s *calc.Sheet, e calc.Entry, back, bare unit.Area, contact unit.Ratio) {
	patches := calc.Sym("U", bare, unit.InchArea)

	calc.Works(s, "Back of the paver: length by width.",
		"A", back, unit.InchArea, "l * w", source.ByDefinition)
	expr, terms := patchSum(voids.Of(e))
	s.Step(words.Say("Bare patches: each its length by its width, all together."), patches, expr, source.ByDefinition, terms...)
	calc.Let(s, "U", bare, unit.InchArea)
	calc.Works(s, "Contact: the share of the back that is not bare.",
		"C", contact, fine, "(1 - U / A) * 100", source.ByDefinition)
	calc.Let(s, "C_least", least, fine)
	calc.Works(s, "Over or under the least outdoors.",
		"m", contact-least, fine, "C - C_least", source.Contact)
}

// patchSum is the sum of the patches as an expression and its terms.
func patchSum(rows [][]float64) (string, []calc.Term) {
	var parts []string
	var terms []calc.Term
	for i, row := range rows[:min(len(rows), shown)] {
		n := strconv.Itoa(i + 1)
		parts = append(parts, "a_"+n+" * b_"+n)
		terms = append(terms, calc.Sym("a_"+n, voidLong.At(row, 0), unit.InchMM), calc.Sym("b_"+n, voidWide.At(row, 1), unit.InchMM))
	}
	if len(rows) > shown {
		parts = append(parts, "U_rest")
		terms = append(terms, calc.Sym("U_rest", Bare(rows[shown:]), unit.InchArea))
	}
	return strings.Join(parts, " + "), terms
}

func cautions(s *calc.Sheet, contact unit.Ratio, bareCorners unit.Count) {
	if contact < least-hair {
		s.Warn(calc.Stop, source.Contact, "{contact} is under {least}, the least outdoors. Reset this paver, lift its neighbours, and change the trowel or the way it is worked in.",
			words.Is("contact", contact, unit.Share), words.Is("least", least, unit.Share))
	}
	if bareCorners > 0 {
		s.Warn(calc.Stop, source.Contact, "A corner is bare ({corners} of 4). Every corner and edge must be supported, whatever the mean: reset the paver and butter its edges.",
			words.Is("corners", bareCorners, unit.Whole1))
	}
	s.Warn(calc.Note, source.ContactMean, "One paver is no proof. Contact is judged as the mean of three lifted pavers or more, and of each one's corners and edges.")
	s.Warn(calc.Note, source.LiftTiles, "Go on lifting a paver now and then to the end of the job.")
	s.Warn(calc.Care, source.Contact, "A bare edge fails as a bare corner does: look along all four. Patches that reach an edge are counted here by their area alone.")
	s.Warn(calc.Note, source.LowCoverage, "Low contact is the commonest finding under pavers that failed. Lines left standing give about half.")
	s.Warn(calc.Care, source.CommonPractice, "A wet bed holds a paver fast. Lift it with two suction cups or a bar at the edge, two people to a large one, fingers clear.")
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves and kneepads, and wash splashes off at once.")
}
