// Package mixtemp answers how warm a mix comes out of the bucket, and how warm its
// liquid must be for a mix of a wanted temperature.
package mixtemp

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	powder     = calc.Ask("powder", "P", "Powder", unit.PoundKg, 50*unit.Gram, 250*unit.Kilogram, "25 lb").Usually("50 lb", "25 lb", "25 kg")
	powderTemp = calc.Ask("powder_temp", "T_P", "Temperature of the powder", unit.Warmth, unit.Temperature(-40), 90, "88 F").
			Helped("Push a probe into the middle of the bag. A bag that lay in the sun is hotter than the air.")
	liquid     = calc.Ask("liquid", "L", "Liquid, by mass", unit.PoundKg, 10*unit.Gram, 100*unit.Kilogram, "5.4 lb").Helped("A US quart of water is 2.08 lb, a litre 1 kg.")
	liquidTemp = calc.Ask("liquid_temp", "T_L", "Temperature of the liquid", unit.Warmth, unit.Temperature(-40), 150, "60 F").Usually("40 F", "60 F", "80 F")
	target     = calc.Ask("target", "T_t", "Temperature wanted", unit.Warmth, unit.Temperature(-10), 60, "70 F").Usually("60 F", "70 F", "20 C")
	heatRatio  = calc.Ask("heat_ratio", "h", "Heat that powder holds, against water", unit.Both(unit.Plain), unit.Ratio(0.1), 0.5, "0.22").
			Usually("0.20", "0.22", "0.25").Helped("Mass for mass. 0.22 for cement and sand.")
)

// The liquid is taken to be water: it freezes and boils at these. By definition of the Celsius scale, as near
// as a thermometer on site can tell.
const (
	freezes = unit.Temperature(0)
	boils   = unit.Temperature(100)
)

// trace is what rounding may add to a sum that comes to just a limit, which is allowed.
const trace = unit.Temperature(1e-9)

// The powder's heat against water's may be anywhere between these (source.SolidsHeat).
const (
	leastHeat = unit.Ratio(0.20)
	mostHeat  = unit.Ratio(0.25)
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "mixtemp", Stage: calc.Mixing, Title: "Temperature of the mix",
	Asks: "How warm will this mix be, and how warm must its liquid be to hit a wanted temperature?",
	Inputs: []*calc.Input{powder.Input, powderTemp.Input, liquid.Input, liquidTemp.Input, target.Input,
		heatRatio.Input},
	Work:   work,
	Origin: "Heat that the warm part gives up is what the cold part takes in, with none lost: that balance is solved for the temperature of the mix. Powder holds about 0.22 of the heat that the same mass of water does, hence the weights in the formula.",
	Memory: []words.Msg{
		"Keep bags in the shade in summer and indoors overnight in winter: powder is most of the mass, and most of the heat.",
		"Run the hose until it has emptied of the water that the sun heated.",
		"Chill the liquid with ice if you must, then fish out what has not melted before you measure it.",
		"Put a probe in the first pail. The bag's own limits for mortar, slab and air come before any sum.",
		"Paddle, pail and a long mix add heat of their own: the sum leaves them out.",
	},
}

// Holds is the mass of water that holds as much heat as the powder, degree for degree.
// Source: source.HeatBalance.
func Holds(powder unit.Mass, heat unit.Ratio) unit.Mass { return powder * unit.Mass(heat) }

// Mixed is the temperature of the mix: each part weighs in with the heat that it holds.
// Nothing is lost to pail and air, and no ice melts. Source: source.HeatBalance.
func Mixed(holds unit.Mass, powder unit.Temperature, liquid unit.Mass, at unit.Temperature) unit.Temperature {
	return (unit.Temperature(holds)*powder + unit.Temperature(liquid)*at) / unit.Temperature(holds+liquid)
}

// Wanted is the temperature of the liquid that brings the mix to a target: Mixed solved
// for the liquid. It may lie beyond what a liquid can have.
func Wanted(holds unit.Mass, powder unit.Temperature, liquid unit.Mass, target unit.Temperature) unit.Temperature {
	return (target*unit.Temperature(holds+liquid) - unit.Temperature(holds)*powder) / unit.Temperature(liquid)
}

// liquidAt reports whether water is liquid at a temperature. Ice water at just freezing and water just at the
// boil still are.
func liquidAt(t unit.Temperature) bool { return freezes-trace <= t && t <= boils+trace }

func work(e calc.Entry, s *calc.Sheet) {
	if t := liquidTemp.Of(e); !liquidAt(t) {
		s.Refuse("liquid_temp", "Temperature of the liquid: read {read}. A liquid is from {freezes} to {boils}; past that it is ice or steam, which this sum leaves out.",
			liquidTemp.Is("read", t), words.Both("freezes", freezes, unit.Warmth), words.Both("boils", boils, unit.Warmth))
		return
	}
	holds := Holds(powder.Of(e), heatRatio.Of(e))
	mix, want := at(e, heatRatio.Of(e))
	lowMix, lowWant := at(e, min(leastHeat, heatRatio.Of(e)))
	highMix, highWant := at(e, max(mostHeat, heatRatio.Of(e)))
	from := words.Say("Powders hold from {least} to {most} of the heat that water holds.",
		words.Is("least", min(leastHeat, heatRatio.Of(e)), unit.Both(unit.Plain)), words.Is("most", max(mostHeat, heatRatio.Of(e)), unit.Both(unit.Plain)))

	calc.Gives(s, "mix_temp", "The mix comes out at", mix, unit.Warmth).Between(float64(lowMix), float64(highMix), from).First()
	wanted := calc.Gives(s, "liquid_for_target", "Liquid for the temperature wanted", want, unit.Warmth).First()
	if liquidAt(want) {
		wanted.Between(float64(lowWant), float64(highWant), from)
	} else {
		wanted.Says(words.Say("out of reach of a liquid"))
	}
	steps(s, e, holds, mix, want)
	cautions(s, e, mix, want)
	s.Drawing = drawing(e, holds, mix)
}

// at is the mix, and the liquid for the target, at one heat of the powder.
func at(e calc.Entry, heat unit.Ratio) (mix, want unit.Temperature) {
	holds := Holds(powder.Of(e), heat)
	return Mixed(holds, powderTemp.Of(e), liquid.Of(e), liquidTemp.Of(e)), Wanted(holds, powderTemp.Of(e), liquid.Of(e), target.Of(e))
}
