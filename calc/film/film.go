// Package film answers how much primer or membrane an area takes, and how thick it
// is when dry.
package film

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var thin = unit.In(unit.Mils, unit.Millimetres)

var (
	area   = calc.Ask("area", "A", "Area to coat", unit.FootArea, unit.SquareMetre/10, 100_000*unit.SquareMetre, "100 ft2")
	wet    = calc.Ask("wet", "w", "Wet film, each coat", thin, 10*unit.Micrometre, 6*unit.Millimetre, "20 mil").Usually("5 mil", "20 mil", "30 mil").Helped("From the label. Check it with a wet film comb.")
	coats  = calc.Ask("coats", "c", "Coats", unit.Whole1, unit.Count(1), 10, "2").Usually("1", "2")
	solids = calc.Ask("solids", "v", "Solids, by volume", unit.Share, unit.Ratio(0.05), 1, "60 %").Helped("From the data sheet. Solids by mass are another, mostly larger, figure.")
	waste  = calc.Ask("waste", "k", "Waste", unit.Share, 0, unit.Ratio(0.5), "10 %").Usually("5 %", "10 %", "15 %").Helped("What roller, tray and pail keep, and what a rough slab drinks.")
	pail   = calc.Ask("pail", "V_p", "Pail", unit.GallonL, unit.Litre/10, 1000*unit.Litre, "3.5 gal").Usually("1 gal", "3.5 gal", "5 gal")
)

// hand is how far a film strays from what was meant, either way: common practice.
const hand = 10 * unit.Percent

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "film", Stage: calc.Setting, Title: "Primer and membrane",
	Asks:   "How many pails does this film take, and how thick is it when dry?",
	Inputs: []*calc.Input{area.Input, wet.Input, coats.Input, solids.Input, waste.Input, pail.Input},
	Work:   work,
	Origin: "A film is an area times a thickness, which is the volume that the pail must hold. Only the solids stay when it has dried, so the dry film is the wet one times their share.",
	Memory: []words.Msg{
		"Clean and sound first: a film holds to dust and to a weak skin of cement, and comes off with them.",
		"Set the comb into the wet film here and there: the last tooth that comes out wet is the thickness.",
		"Second coat across the first, once the first is dry to the touch all over. Hold it to the light for pinholes.",
		"Mark out what one pail must cover, and see that it does.",
		"Lap on to upstands and into corners with the fabric that the system calls for. Structural and movement joints come through.",
	},
}

// Volume is the wet film over an area, all coats, its waste on top. By definition; in US units source.FilmSpread.
func Volume(area unit.Area, wet unit.Length, coats unit.Count, waste unit.Ratio) unit.Volume {
	return unit.Volume(float64(area.Deep(wet)) * float64(coats) * (1 + float64(waste)))
}

// Dry is what is left of a wet film when all but its solids has gone. Source: source.FilmSpread.
func Dry(wet unit.Length, solids unit.Ratio) unit.Length { return wet * unit.Length(solids) }

// parts are what the work has found.
type parts struct {
	volume   unit.Volume
	one, dry unit.Length // one coat, and all of them, dry
	pails    unit.Number
}

// at works the sum with a film and a waste that are so many times what was entered.
func at(e calc.Entry, thickness, wasted float64) parts {
	w := wet.Of(e) * unit.Length(thickness)
	p := parts{volume: Volume(area.Of(e), w, coats.Of(e), waste.Of(e)*unit.Ratio(wasted)), one: Dry(w, solids.Of(e))}
	p.dry = p.one * unit.Length(coats.Of(e))
	p.pails = unit.Number(p.volume / pail.Of(e))
	return p
}

func work(e calc.Entry, s *calc.Sheet) {
	if n := coats.Of(e); unit.Whole(float64(n)) != n {
		s.Refuse("coats", "{field}: read {read}. It takes a whole number from {low} to {high}.", words.Named("field", coats.Label),
			coats.Is("read", n), coats.Is("low", unit.Count(coats.Min)), coats.Is("high", unit.Count(coats.Max)))
		return
	}
	p, low, high := at(e, 1, 1), at(e, 1-float64(hand), 0.5), at(e, 1+float64(hand), 1.5)
	fromHand := words.Say("The film strays {share} either way.", words.Is("share", hand, unit.Share))
	fromAll := words.Say("The film strays {share} either way; waste comes to half as much or half as much again.", words.Is("share", hand, unit.Share))

	calc.Gives(s, "buy", "Pails to buy", unit.Whole(float64(p.pails)), unit.Whole1).
		Between(float64(unit.Whole(float64(low.pails))), float64(unit.Whole(float64(high.pails))), fromAll).Buy().First().
		Of(&calc.Supply{Of: calc.BuyFilm, In: "pails", Pack: unit.Fig(pail.Of(e), unit.GallonL), Grade: float64(wet.Of(e)) * float64(solids.Of(e)),
			Likely: float64(p.pails), Low: float64(low.pails), High: float64(high.pails)})
	calc.Gives(s, "dry", "Dry film, all coats", p.dry, thin).Between(float64(low.dry), float64(high.dry), fromHand).First()
	calc.Gives(s, "wet_volume", "Wet, all coats", p.volume, unit.GallonL).Between(float64(low.volume), float64(high.volume), fromAll)
	calc.Gives(s, "pails", "Pails", p.pails, unit.Bare).Between(float64(low.pails), float64(high.pails), fromAll)

	steps(s, e, p)
	cautions(s, e, p)
	s.Drawing = drawing(e, p)
}
