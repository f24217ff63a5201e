// Package air answers how much air a mix has taken in, from a cup of it on a scale.
package air

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	thickness = unit.In(unit.PoundsPerGallon, unit.KilogramsPerLitre)
	cupful    = unit.In(unit.FluidOunces, unit.Millilitres)
	fine      = unit.In(unit.Ounces, unit.Grams)
)

var (
	cup = calc.Ask("cup", "V", "Cup, to the rim", cupful, 50*unit.Millilitre, 8*unit.Litre, "400 mL").
		Usually("400 mL", "16 fl oz", "1 L").Helped("Fill it with water and weigh that: a gram is a millilitre.")
	empty       = calc.Ask("empty", "m_0", "Cup, empty", fine, 0, 3*unit.Kilogram, "150 g").Helped("Nought if the scale was set to nought with the cup on it.")
	full        = calc.Ask("full", "m_1", "Cup, full and struck off", fine, 50*unit.Gram, 20*unit.Kilogram, "820 g")
	powder      = calc.Ask("powder", "P", "Powder in the mix", unit.PoundKg, 50*unit.Gram, 250*unit.Kilogram, "25 lb").Usually("50 lb", "25 lb", "25 kg")
	powderHeavy = calc.Ask("powder_density", "ρ_P", "Density of the powder's grains", thickness, unit.Density(1500), 4000, "2.7 kg/L").
			Helped("Of the grains themselves, not of the loose powder in the bag. Cement is 3.15 kg/L, quartz sand 2.65.")
	liquid      = calc.Ask("liquid", "L", "Liquid in the mix, by mass", unit.PoundKg, 10*unit.Gram, 100*unit.Kilogram, "5.4 lb").Helped("A US quart of water is 2.08 lb, a litre 1 kg.")
	liquidHeavy = calc.Ask("liquid_density", "ρ_L", "Density of the liquid", thickness, unit.Density(700), 1500, "1 kg/L").Helped("Water is 1 kg/L.")
)

// believable is the most air that is taken for air. A fault of the measurement shows as more:
// the container's volume put for that of the solids gives 99 %. Common practice.
const believable = 40 * unit.Percent

// struck is how far off a cup is struck off level, either way: common practice.
const struck = 1 * unit.Percent

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "air", Stage: calc.Mixing, Title: "Air in the mix",
	Asks:   "How much air has the paddle beaten into this mix, by the weight of a struck-off cup?",
	Inputs: []*calc.Input{cup.Input, empty.Input, full.Input, powder.Input, powderHeavy.Input, liquid.Input, liquidHeavy.Input},
	Work:   work,
	Origin: "The mix with no air in it has the mass of its parts over the room that they take, each its mass over its own density. What the weighed cup is lighter than that, as a share, is air: the method by which the air of fresh concrete is found by weight.",
	Memory: []words.Msg{
		"Weigh a cup of a good batch first, mixed as the bag says. What a later cup weighs less is air, or too much liquid.",
		"Fill the cup in three lots, tap it after each until no more large bubbles rise, and strike it off level with a straight edge.",
		"Wipe the outside of the cup before it goes on the scale.",
		"A rigid cup with a plain rim: a paper cup bulges, and a bulge counts as air.",
		"Air from a fast paddle does not all come out again while the mix slakes. Throw a frothy mix away.",
	},
}

// Wet is the density of the mix as it is: what fills the cup, over the cup.
// Source: source.Yield (ASTM C138, D = mass ÷ volume of the measure).
func Wet(empty, full unit.Mass, cup unit.Volume) unit.Density {
	return unit.Density(float64(full-empty) * 1e-9 / (float64(cup) * 1e-12))
}

// Airless is the density that the mix would have with no air in it: all that went in
// over the room that grains and liquid take. Source: source.GravimetricAir.
func Airless(powder unit.Mass, grains unit.Density, liquid unit.Mass, of unit.Density) unit.Density {
	room := powder.Fills(grains) + liquid.Fills(of)
	return unit.Density(float64(powder+liquid) * 1e-9 / (float64(room) * 1e-12))
}

// Entrained is the share of air in the mix, below nought where the wet density cannot
// be right. Source: source.GravimetricAir.
func Entrained(wet, airless unit.Density) unit.Ratio {
	return unit.Ratio((airless - wet) / airless)
}

func work(e calc.Entry, s *calc.Sheet) {
	if full.Of(e) <= empty.Of(e) {
		s.Refuse("full", "Cup, full and struck off: read {full}, which is no more than the empty cup, {empty}.",
			full.Is("full", full.Of(e)), empty.Is("empty", empty.Of(e)))
		return
	}
	wet := Wet(empty.Of(e), full.Of(e), cup.Of(e))
	airless := Airless(powder.Of(e), powderHeavy.Of(e), liquid.Of(e), liquidHeavy.Of(e))
	air := Entrained(wet, airless)
	if refused(s, wet, airless, air) {
		return
	}
	air = max(air, 0)
	off := unit.Density(struck) * wet
	calc.Gives(s, "air", "Air in the mix", air, unit.Share).
		Between(max(float64(Entrained(wet+off, airless)), 0), float64(Entrained(wet-off, airless)),
			words.Say("The cup is struck off {share} too full or too low.", words.Is("share", struck, unit.Share))).First()
	calc.Gives(s, "wet_density", "Density of the mix as it is", wet, thickness).First()
	calc.Gives(s, "airless_density", "Density with no air in it", airless, thickness)

	steps(s, e, wet, airless, air)
	cautions(s)
	s.Drawing = drawing(e, air)
}

// refused tells a measurement that cannot be right. A trace of rounding over the airless
// density is none.
func refused(s *calc.Sheet, wet, airless unit.Density, air unit.Ratio) bool {
	w, a := words.Is("wet", wet, thickness), words.Is("airless", airless, thickness)
	switch {
	case air < -1e-9:
		s.Refuse("full", "The cup gives {wet}, heavier than the mix could be with no air at all, {airless}. Check the cup's volume and both weights, the powder and the liquid, and that the powder's density is that of its grains, not of the loose powder.", w, a)
	case air > believable+1e-9:
		s.Refuse("full", "The cup gives {wet} against {airless} with no air: that would be {air} of air. More than about {most} is a fault of the measurement: check the cup's volume, both weights, and what went into the mix.",
			w, a, words.Is("air", air, unit.Share), words.Is("most", believable, unit.Share))
	default:
		return false
	}
	return true
}

func steps(s *calc.Sheet, e calc.Entry, wet, airless unit.Density, air unit.Ratio) {
	calc.WorksUS(s, "The mix as it is: what fills the cup, over the cup.",
		"D", wet, thickness, "(m_1 - m_0) / V", "(m_1 - m_0) / 16 / V * 128", source.Yield)
	calc.Works(s, "Room that the powder's grains take.",
		"V_P", powder.Of(e).Fills(powderHeavy.Of(e)), unit.GallonL, "P / ρ_P", source.GravimetricAir)
	calc.Works(s, "Room that the liquid takes.",
		"V_L", liquid.Of(e).Fills(liquidHeavy.Of(e)), unit.GallonL, "L / ρ_L", source.GravimetricAir)
	calc.Works(s, "The mix with no air in it: all that went in, over the room that it takes.",
		"T", airless, thickness, "(P + L) / (V_P + V_L)", source.GravimetricAir)
	calc.Works(s, "Air: what the mix is lighter by, as a share.",
		"A", air, unit.Share, "(T - D) / T * 100", source.GravimetricAir)
}

func cautions(s *calc.Sheet) {
	s.Warn(calc.Note, source.GravimetricAir, "The sum can only be as good as the density of the grains. If that is a guess, trust the change from cup to cup and not the figure itself.")
	s.Warn(calc.Note, source.CommonPractice, "No neutral figure for the air in a paver mortar has been found in print, so none is judged here. Mortars with polymer hold air by design: ask the maker what the wet density should be.")
	s.Warn(calc.Note, source.AirPeak, "Of the ways to measure air the density repeats best. In tests the air peaked after about two minutes of mixing and then fell.")
	s.Warn(calc.Note, source.MixingSpeed, "A paddle faster than about 300 rpm beats air in, and air weakens the bed: see Speed of the paddle.")
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves when you fill and strike off the cup, and wash splashes off at once.")
}
