// Package batch answers how much liquid a part of a bag wants, and whether the mix
// fits its bucket.
package batch

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var thickness = unit.In(unit.PoundsPerGallon, unit.KilogramsPerLitre)

var (
	bag = calc.Ask("bag", "B", "Powder in a full bag", unit.PoundKg, unit.Kilogram, 60*unit.Kilogram, "50 lb").
		Usually("50 lb", "25 kg", "20 kg")
	liquid      = calc.Ask("liquid", "L", "Liquid for a full bag", unit.QuartL, unit.Litre/10, 60*unit.Litre, "5.2 qt").Helped("Water, or the liquid that the bag calls for.")
	liquidMin   = calc.Ask("liquid_min", "L_min", "Least liquid on the bag", unit.QuartL, unit.Litre/10, 60*unit.Litre, "4.8 qt")
	liquidMax   = calc.Ask("liquid_max", "L_max", "Most liquid on the bag", unit.QuartL, unit.Litre/10, 60*unit.Litre, "5.5 qt")
	powder      = calc.Ask("powder", "P", "Powder to mix now", unit.PoundKg, 50*unit.Gram, 250*unit.Kilogram, "25 lb").Usually("50 lb", "25 lb", "12.5 lb")
	liquidHeavy = calc.Ask("liquid_density", "ρ_L", "Density of the liquid", thickness, unit.Density(700), 1500, "1 kg/L").
			Helped("Water is 1 kg/L.")
	wetHeavy = calc.Ask("wet_density", "ρ_m", "Density of the wet mix", thickness, unit.Density(600), 2600, "1.6 kg/L").
			Helped("On the bag, or weigh a struck-off cup.")
	bucket = calc.Ask("bucket", "V_b", "Bucket, to the rim", unit.GallonL, unit.Litre, 500*unit.Litre, "5 gal").
		Usually("5 gal", "20 L", "30 L")
)

// headroom is how full a bucket may be before a paddle throws the mix over its rim: common practice.
const headroom = unit.Ratio(0.75)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "batch", Stage: calc.Mixing, Title: "Bag to bucket",
	Asks: "How much liquid does this much powder want, and does the mix fit the bucket?",
	Inputs: []*calc.Input{powder.Input, bag.Input, liquid.Input, liquidMin.Input, liquidMax.Input, liquidHeavy.Input,
		wetHeavy.Input, bucket.Input},
	Work:   work,
	Origin: "A bag and its water are mixed in one fixed ratio by mass, so a part of the bag takes the same part of the water. The volume that comes out is the whole mass over its density, because nothing is lost in the bucket.",
	Memory: []words.Msg{
		"Liquid first, then powder: less dust, and no dry pocket under the paddle.",
		"Mix slowly, let it slake as long as the bag says, and mix again without more liquid.",
		"Rinse pail and paddle between mixes.",
		"Weigh a part bag. A bag settles on its way, so half its height is not half its mass.",
	},
}

// Share is the liquid for a part of a bag: in proportion to the powder. Common
// practice; it holds because the bag gives its liquid by the mass of powder.
func Share(perBag unit.Volume, powder, bag unit.Mass) unit.Volume {
	return unit.Volume(float64(perBag) * float64(powder) / float64(bag))
}

// Ratio is liquid to powder by mass.
func Ratio(liquid unit.Volume, density unit.Density, powder unit.Mass) unit.Ratio {
	return unit.Ratio(liquid.Weighs(density) / powder)
}

// Yield is the wet volume of a mix: all that went in over its density.
// Source: source.Yield (ASTM C138, Y = M ÷ D).
func Yield(powder, liquid unit.Mass, wet unit.Density) unit.Volume {
	return (powder + liquid).Fills(wet)
}

func work(e calc.Entry, s *calc.Sheet) {
	if liquidMin.Of(e) > liquidMax.Of(e) {
		s.Refuse("liquid_min", "Least liquid on the bag: read {L_min}, which is more than the most, {L_max}.")
		return
	}
	p, b := powder.Of(e), bag.Of(e)
	now := Share(liquid.Of(e), p, b)
	least, most := Share(liquidMin.Of(e), p, b), Share(liquidMax.Of(e), p, b)
	weighs := now.Weighs(liquidHeavy.Of(e))
	yield := Yield(p, weighs, wetHeavy.Of(e))
	fill := unit.Ratio(yield / bucket.Of(e))
	whole := Yield(b, liquid.Of(e).Weighs(liquidHeavy.Of(e)), wetHeavy.Of(e))

	calc.Gives(s, "liquid_now", "Liquid now", now, unit.QuartL).First()
	calc.Gives(s, "least", "Not less than", least, unit.QuartL)
	calc.Gives(s, "most", "Not more than", most, unit.QuartL)
	calc.Gives(s, "ratio", "Liquid to powder, by mass", Ratio(now, liquidHeavy.Of(e), p), unit.Share)
	calc.Gives(s, "yield", "Wet mix", yield, unit.GallonL)
	calc.Gives(s, "fill", "Bucket filled", fill, unit.Share).First()

	calc.Works(s, "Liquid now: the bag's liquid in proportion to the powder.", "L_now", now, unit.QuartL, "L * P / B", source.CommonPractice)
	calc.Works(s, "Not less than, in the same proportion.", "L_least", least, unit.QuartL, "L_min * P / B", source.CommonPractice)
	calc.Works(s, "Not more than, in the same proportion.", "L_most", most, unit.QuartL, "L_max * P / B", source.CommonPractice)
	calc.WorksUS(s, "Mass of that liquid.", "M_L", weighs, unit.PoundKg, "L_now * ρ_L", "L_now / 4 * ρ_L", source.ByDefinition)
	calc.Works(s, "Liquid to powder, by mass.", "R", Ratio(now, liquidHeavy.Of(e), p), unit.Share, "M_L / P * 100", source.ByDefinition)
	calc.Works(s, "Wet mix: all that went in, over the density of the mix.", "V", yield, unit.GallonL, "(P + M_L) / ρ_m", source.Yield)
	calc.Works(s, "How full the bucket is.", "F", fill, unit.Share, "V / V_b * 100", source.ByDefinition)

	cautions(s, e, fill, whole)
	s.Drawing = drawing(now, yield, bucket.Of(e))
}

func cautions(s *calc.Sheet, e calc.Entry, fill unit.Ratio, whole unit.Volume) {
	l := liquid.Of(e)
	switch {
	case l < liquidMin.Of(e):
		s.Warn(calc.Stop, source.CommonPractice, "{L} a bag is less than the bag allows, {L_min}. Too dry a mix does not wet the paver.")
	case l > liquidMax.Of(e):
		s.Warn(calc.Stop, source.CommonPractice, "{L} a bag is more than the bag allows, {L_max}. Too wet a mix is weak and shrinks.")
	}
	switch {
	case fill > 1:
		s.Warn(calc.Stop, source.ByDefinition, "This mix overflows the bucket: it fills {F} of it. Mix less, or take a larger one.")
	case fill > headroom:
		s.Warn(calc.Care, source.CommonPractice, "The mix fills {F} of the bucket. Above {room} a paddle throws it over the rim.",
			words.Is("room", headroom, unit.Share))
	}
	if b := bucket.Of(e); whole > b {
		s.Warn(calc.Care, source.ByDefinition, "A full bag makes {whole} and overflows this bucket of {V_b}.", words.Is("whole", whole, unit.GallonL))
	}
	s.Warn(calc.Care, source.CommonPractice, "Never add water or liquid to a mix that has begun to set. Throw it out and mix a new pail.")
	s.Warn(calc.Care, source.CommonPractice, "Rinse the pail between mixes: what is left of an old mix speeds the new one.")
	s.Warn(calc.Care, source.Silica, "Pouring powder raises dust that may hold silica. Keep upwind, pour low, and wear the respirator that your exposure plan and the bag call for.")
	s.Warn(calc.Care, source.WetCement, "Wet cement burns, and the burn is felt late. Wear gloves and eye protection, and wash splashes off at once.")
}
