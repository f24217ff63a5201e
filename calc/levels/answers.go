package levels

import (
	"setbook/calc"
	"setbook/calc/surface"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// ways names the eighths of a turn in the drawing, where the first row is at the top.
var ways = [...]words.Msg{
	"{angle}, to the right of the drawing", "{angle}, to its bottom right corner", "{angle}, to the bottom of the drawing", "{angle}, to its bottom left corner",
	"{angle}, to the left of the drawing", "{angle}, to its top left corner", "{angle}, to the top of the drawing", "{angle}, to its top right corner",
}

func (v *survey) answers(e calc.Entry, s *calc.Sheet) {
	calc.Gives(s, "slope", "Slope of the best plane", v.slope(), unit.Share).First()
	way, _ := Direction(v.plane.B, v.plane.C)
	towards := words.Say(ways[int(unit.Whole(float64(way)/45-0.5))%len(ways)], words.Is("angle", way, unit.Arc))
	if v.slope() < isLevel {
		way, towards = 0, words.Say("level: water runs no way")
	}
	calc.Gives(s, "direction", "The way water runs", way, unit.Arc).Says(towards)
	if away, _, ok := v.away(e); ok {
		calc.Gives(s, "away", "Fall away from the building", away, unit.Share)
		calc.Gives(s, "margin", "Margin over 2 %", away-least, unit.Share)
	}
	v.gap(s, "gap_10ft", "Worst gap under 10 ft", underTen).First()
	v.gap(s, "gap_2ft", "Worst gap under 2 ft", underTwo)
	v.gap(s, "gap", "Worst gap under your straightedge", underOwn)
	calc.Gives(s, "pond_volume", "Water that will stand", v.pondVolume(), unit.CubicFootL)
	calc.Gives(s, "pond_depth", "Deepest water", unit.Length(v.ponds.Deepest), unit.InchMM)

	spread := words.Say("Readings are good to about {finest}: every hollow that much shallower, with mixed cells the nearer way, or that much deeper.", words.Is("finest", finest, unit.InchMM))
	fill, least, most := litres(v.fill.Fill), litres(v.less.NetFill), litres(v.more.Fill)
	patch := calc.Gives(s, "fill", "Patch", fill, unit.CubicFootL)
	bags := func(fill unit.Volume) float64 { return float64(unit.Whole(float64(fill / bagYield.Of(e)))) }
	buy := calc.Gives(s, "buy", "Bags of patch", unit.Count(bags(fill)), unit.Whole1).Buy().First().
		Of(&calc.Supply{Of: calc.BuyPatch, In: "bags", Pack: unit.Fig(bagYield.Of(e), unit.CubicFootL),
			Likely: float64(fill / bagYield.Of(e)), Low: float64(least / bagYield.Of(e)), High: float64(most / bagYield.Of(e))})
	if v.fill.Area > 0 {
		patch.Between(float64(least), float64(most), spread)
		buy.Between(bags(least), bags(most), spread)
	} else {
		none := words.Say("not found: it takes two rows of readings, side by side")
		patch.Says(none)
		buy.Says(none)
	}

	f, _, _ := Together(v.bends())
	flat := calc.Gives(s, "f_flat", "Flatness number FF", f, unit.Bare)
	switch {
	case len(v.flat) == 0:
		flat.Says(words.Say("not found: it takes lines of 12 readings, 12 in or 300 mm apart"))
	case f >= flatMost:
		flat.Says(words.Say("over {most}: straight, as far as readings tell", words.Is("most", unit.Number(flatMost), unit.Bare)))
	}
}

// gap answers the worst gap under one straightedge.
func (v *survey) gap(s *calc.Sheet, key string, label words.Msg, which int) *calc.Answer {
	a := calc.Gives(s, key, label, unit.Length(v.gaps[which].Depth), unit.InchMM)
	if v.gaps[which].Span == 0 {
		a.Says(words.Say("not seen: the readings are too far apart"))
	}
	return a
}

// bends is the flatness of each line.
func (v *survey) bends() (all []surface.Flatness) {
	for _, l := range v.flat {
		all = append(all, l.Flatness)
	}
	return all
}

// litres turns cubic micrometres into a volume.
func litres(cubed float64) unit.Volume { return unit.Volume(cubed / 1e6) }

// pondVolume is the water that stands: each reading's depth over one step by one step.
func (v *survey) pondVolume() unit.Volume {
	return litres(v.ponds.Sum * v.grid.StepX * v.grid.StepY)
}
