// Package sound answers whether a slab is sound enough to bond to, from a short list of looks and knocks.
package sound

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	tap = calc.Choose("tap", "Tapped or dragged with a chain it sounds", "sharp",
		calc.Option{Name: "sharp", Label: "sharp all over"}, calc.Option{Name: "drummy", Label: "dull or hollow in places"}, calc.Option{Name: "untried", Label: "not tried"})
	heave = calc.Choose("heave", "Heaved or settled", "no",
		calc.Option{Name: "no", Label: "no part stands up or has sunk"}, calc.Option{Name: "yes", Label: "a part stands up or has sunk"}, calc.Option{Name: "untried", Label: "not looked"})
	broken = calc.Choose("broken", "Broken, scaling or dusting", "no",
		calc.Option{Name: "no", Label: "whole and hard"}, calc.Option{Name: "yes", Label: "broken, scaling, or dust comes off under a scratch"}, calc.Option{Name: "untried", Label: "not scratched"})
	face = calc.Choose("face", "Its face", "bare",
		calc.Option{Name: "bare", Label: "bare: a drop of water soaks in"}, calc.Option{Name: "sealed", Label: "sealed or cured: a drop stands"}, calc.Option{Name: "painted", Label: "painted, oily or with old adhesive"},
		calc.Option{Name: "untried", Label: "not tried"})
	sheet = calc.Choose("sheet", "Plastic sheet taped down", "dry",
		calc.Option{Name: "dry", Label: "dry under it, and no darker"}, calc.Option{Name: "wet", Label: "drops under it, or the slab darker"}, calc.Option{Name: "untried", Label: "not tried"})
	taped = calc.Ask("taped", "h", "Hours that the sheet was taped", unit.HourSpan, unit.Span(0), 10*unit.Day, "16 h").Usually("16 h", "24 h", "48 h")
)

// least is how long the sheet stays down. Source: source.SheetHours.
const least = 16 * unit.Hour

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "sound", Stage: calc.Slab, Title: "Is the slab sound?",
	Asks:    "Is this slab sound, clean and dry enough to bond pavers to?",
	Inputs:  []*calc.Input{tap.Input, heave.Input, broken.Input, face.Input, sheet.Input, taped.Input},
	Work:    work,
	Checked: "Nothing in print checks this list: what each finding means is common practice, and the sheet's 16 hours are from memory.",
	Origin:  "Pavers hold no better than the weakest layer under them, so one bad finding is enough to hold the work. The plastic sheet shows moisture that the slab gives off, as drops or a darker face, once it has had its hours.",
	Memory: []words.Msg{
		"Drag a chain, or tap with a hammer or a golf ball, every foot: a hollow sounds dull. Chalk round it.",
		"Scratch with a nail. What comes off as dust is not what you bond to.",
		"Put a drop of water down every few feet: it should soak in, not stand.",
		"Tape the sheet on all four sides out of the sun, and look at noon and again next morning.",
		"Photograph the slab and the chalk before you cover it.",
		"Sound, flat and to falls are three questions. This is the first.",
	},
}

// finding is one line of the list.
type finding struct {
	symbol string
	holds  bool // it holds the work
	open   bool // it has not been tried
}

// findings is the list as it was answered.
func findings(e calc.Entry) []finding {
	of := func(symbol string, p calc.Pick, good string) finding {
		got := p.Of(e)
		return finding{symbol, got != good && got != "untried", got == "untried"}
	}
	return []finding{of("a", tap, "sharp"), of("b", heave, "no"), of("c", broken, "no"), of("d", face, "bare"), of("f", sheet, "dry")}
}

func work(e calc.Entry, s *calc.Sheet) {
	holds, open := unit.Count(0), unit.Count(0)
	for _, f := range findings(e) {
		if f.holds {
			holds++
		}
		if f.open {
			open++
		}
	}
	left := max(least-taped.Of(e), 0)
	early := sheet.Of(e) == "dry" && left > 0
	if early {
		open++
	}
	verdict := calc.Gives(s, "verdict", "The slab", holds, unit.Whole1).First()
	switch {
	case holds > 0:
		verdict.Says(words.Say("hold: {holds} of five to put right", words.Is("holds", holds, unit.Whole1)))
	case open > 0:
		verdict.Says(words.Say("hold: {open} of five still to try", words.Is("open", open, unit.Whole1)))
	default:
		verdict.Says(words.Say("go"))
	}
	wait := calc.Gives(s, "sheet_left", "Hours the sheet still needs", left, unit.HourSpan)
	if left > 0 {
		wait.Wait()
	}
	steps(e, s, holds, left)
	cautions(e, s, early)
	s.Drawing = drawing()
}

func steps(e calc.Entry, s *calc.Sheet, holds unit.Count, left unit.Span) {
	for _, f := range findings(e) {
		one := unit.Count(0)
		if f.holds {
			one = 1
		}
		calc.Let(s, f.symbol, one, unit.Whole1)
	}
	calc.Works(s, "What holds the work, one for each: tap a, heave b, broken c, face d, sheet f.", "n", holds, unit.Whole1, "a + b + c + d + f", source.CommonPractice)
	calc.Let(s, "h_least", least, unit.HourSpan)
	calc.Works(s, "Hours that the sheet still needs.", "h_left", left, unit.HourSpan, "max(h_least - h, 0)", source.SheetHours)
}

func cautions(e calc.Entry, s *calc.Sheet, early bool) {
	if tap.Of(e) == "drummy" {
		s.Warn(calc.Stop, source.CommonPractice, "A dull sound is concrete that has come loose, or a topping off its base. What is loose comes out, and the hole is patched, before anything is bonded there.")
	}
	if heave.Of(e) == "yes" {
		s.Warn(calc.Stop, source.CommonPractice, "A slab that heaves or settles goes on moving: frost, roots, clay or a washed-out base. Ask an engineer. No mortar holds it.")
	}
	if broken.Of(e) == "yes" {
		s.Warn(calc.Stop, source.CommonPractice, "A broken, scaling or dusting face lets go. Grind or blast to sound concrete; where it goes deep, the slab is to be replaced.")
	}
	switch face.Of(e) {
	case "sealed":
		s.Warn(calc.Stop, source.CommonPractice, "Sealer or curing compound keeps mortar from wetting the slab. Take it off by grinding or blasting, and try a drop of water again.")
	case "painted":
		s.Warn(calc.Stop, source.CommonPractice, "Mortar would hold to the paint or the oil, and they hold to nothing. Take them off to bare concrete. Old adhesive may hold asbestos: have it tested before it is ground.")
	}
	if sheet.Of(e) == "wet" {
		s.Warn(calc.Stop, source.SheetTest, "The slab gives off moisture. Find where it comes from, and ask whoever makes the mortar and any membrane what they stand.")
	}
	if early {
		s.Warn(calc.Care, source.SheetHours, "The sheet has been down too short a time to tell: leave it for {h_left} more.")
	}
	for _, f := range findings(e) {
		if f.open {
			s.Warn(calc.Care, source.CommonPractice, "Something on the list has not been tried. Not tried is not passed.")
			break
		}
	}
	s.Warn(calc.Note, source.SheetTest, "A dry sheet does not prove a dry slab: it shows what came up in those hours. Clear sheet about 4 mil (0.1 mm) thick, taped all round, out of the sun.")
	s.Warn(calc.Note, source.SheetHours, "The sheet is 18 in square and stays down for {h_least} at the least.")
	s.Warn(calc.Care, source.Silica, "Grinding and blasting make silica dust: a shroud with a vacuum, or water, and a respirator where the rule asks for one.")
	s.Warn(calc.Note, source.CommonPractice, "How well a patch of the slab holds is measured by pulling a glued disk off it. Where much hangs on it, have that done.")
}

// drawing shows the sheet on the slab from above.
func drawing() calc.Drawing {
	const side, tape, slab = 18 * unit.Inch, 2 * unit.Inch, 26 * unit.Inch
	d := calc.Drawing{
		Title: "The plastic sheet, from above",
		Says: words.Say("A clear plastic sheet {side} square lies on the slab, out of the sun. Tape {tape} wide, hatched, holds it down along all four edges without a gap.",
			words.Is("side", side, unit.InchMM), words.Is("tape", tape, unit.InchMM)),
	}
	const edge = (slab - side) / 2
	d.Box(calc.Outline, 0, 0, slab, slab)
	d.Box(calc.Outline, edge, edge, side, side)
	for _, at := range []unit.Length{edge - tape/2, edge + side - tape/2} { // tape, half on the sheet and half on the slab
		d.Box(calc.Membrane, edge-tape/2, at, side+tape, tape)
		d.Box(calc.Membrane, at, edge+tape/2, tape, side-tape)
	}
	d.Note(calc.Point{X: slab / 2, Y: slab * 0.53}, calc.Middle, words.Say("drops, or a darker slab:"))
	d.Note(calc.Point{X: slab / 2, Y: slab * 0.47}, calc.Middle, words.Say("moisture"))
	d.Dim(calc.Point{X: edge, Y: slab}, calc.Point{X: edge + side, Y: slab}, 1.2, unit.Fig(side, unit.InchMM))
	return d
}
