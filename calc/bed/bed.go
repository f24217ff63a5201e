// Package bed answers how thick a bed a notched trowel leaves, and how many bags
// of mortar that asks for.
package bed

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	notch = calc.Choose("notch", "Notch shape", "square",
		calc.Option{Name: "square", Label: "Square"}, calc.Option{Name: "round", Label: "Round-bottomed"},
		calc.Option{Name: "vee", Label: "Vee"}, calc.Option{Name: "slanted", Label: "Slanted"})
	width = calc.Ask("width", "w", "Notch width", unit.InchMM, unit.Inch/16, 3*unit.Inch, "1/2 in").
		Usually("1/4 in", "3/8 in", "1/2 in", "3/4 in")
	depth = calc.Ask("depth", "d", "Notch depth", unit.InchMM, unit.Inch/16, 3*unit.Inch, "1/2 in").
		Usually("1/4 in", "3/8 in", "1/2 in", "3/4 in")
	land = calc.Ask("land", "g", "Land between notches", unit.InchMM, 0, 3*unit.Inch, "1/2 in").
		Helped("The steel left standing between two notches. Vee notches have none.")
	hold = calc.Ask("hold", "θ", "Angle of the trowel to the slab", unit.Arc, unit.Angle(10), 90, "45 deg").
		Usually("45 deg", "60 deg", "90 deg")
	skim    = calc.Ask("skim", "s", "Skim on the paver's back", unit.InchMM, 0, unit.Inch/2, "0 mm")
	hollow  = calc.Ask("hollow", "h", "Mean hollow to take up", unit.InchMM, 0, unit.Inch, "0 mm").Helped("The mean depth of hollows in slab and paver that the mortar must fill.")
	area    = calc.Ask("area", "A", "Area to set", unit.FootArea, 0, 100_000*unit.SquareMetre, "100 ft2")
	waste   = calc.Ask("waste", "k", "Waste", unit.Share, 0, unit.Ratio(0.5), "10 %").Usually("5 %", "10 %", "15 %")
	bagWets = calc.Ask("bag_yield", "Y", "Wet mortar a bag", unit.CubicFootL, unit.Litre, 100*unit.Litre, "0.6 ft3").
		Helped("Printed on the bag, or weigh and work it out under Bag to bucket.")
)

// thinnest and thickest are the limits of the bed after embedding (source.BedLimits).
const (
	thinnest     = 3 * unit.Inch / 32
	thinBedMost  = unit.Inch / 4
	thickBedMost = unit.Inch / 2
	holdSpread   = unit.Angle(10) // how far a hand strays from its angle: common practice
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "bed", Stage: calc.Setting, Title: "Notch to bed",
	Asks: "How thick a bed does this notch leave, and how many bags is that?",
	Inputs: []*calc.Input{notch.Input, width.Input, depth.Input, land.Input, hold.Input, skim.Input, hollow.Input,
		area.Input, waste.Input, bagWets.Input},
	Work:   work,
	Origin: "Each notch leaves a ridge of its own cross-section, once in every notch and land. Pressed flat, the same mortar is spread over the whole pitch, so the bed is that section over the pitch, less what the tilt of the trowel takes away.",
	Memory: []words.Msg{
		"Key the mortar into the slab with the flat of the trowel first, then comb.",
		"Comb straight, parallel lines, along the short side of the paver, so that air has the short way out.",
		"Wipe kiln release and dust off the back of the paver before it is skimmed.",
		"Press the paver and push and pull it across the lines of a square notch until the lines fall in.",
		"Lift a paver now and then and look: back, edges and all four corners must be bedded.",
		"Clean the joints and the faces as you go.",
	},
}

// Section is the area of mortar that one notch lets through, held upright: its own
// cross-section. A round-bottomed notch is a half circle under a slot and is at
// least half as deep as it is wide. A slanted notch is a parallelogram of the same
// area as a square one. Geometry.
func Section(shape string, width, depth unit.Length) unit.Area {
	switch shape {
	case "round":
		return width.Times(depth-width/2) + unit.Area(math.Pi/8)*width.Times(width)
	case "vee":
		return width.Times(depth) / 2
	}
	return width.Times(depth)
}

// Ridge is the height of the combed ridge: the notch's depth foreshortened by the
// angle at which the trowel is held to the slab.
// Source: source.NotchGeometry in words; the sine is geometry.
func Ridge(depth unit.Length, hold unit.Angle) unit.Length {
	return unit.Length(float64(depth) * hold.Sin())
}

// Combed is the mean thickness of the combed mortar once its ridges have fallen in:
// the section of one notch, foreshortened, spread over its pitch.
func Combed(section unit.Area, hold unit.Angle, pitch unit.Length) unit.Length {
	return unit.Length(float64(section) * hold.Sin() / float64(pitch))
}

// Mortar is the wet volume for an area, its waste on top.
func Mortar(area unit.Area, thick unit.Length, waste unit.Ratio) unit.Volume {
	return unit.Volume(float64(area.Deep(thick)) * (1 + float64(waste)))
}

func work(e calc.Entry, s *calc.Sheet) {
	shape, w, d, g, θ := notch.Of(e), width.Of(e), depth.Of(e), land.Of(e), hold.Of(e)
	if shape == "round" && d < w/2 {
		s.Refuse("depth", "Notch depth: read {depth}. A round-bottomed notch {width} wide is at least {least} deep.",
			depth.Is("depth", d), width.Is("width", w), depth.Is("least", w/2))
		return
	}
	if shape == "vee" {
		g = 0
	}
	section, pitch := Section(shape, w, d), w+g
	combed := Combed(section, θ, pitch)
	thick := combed + skim.Of(e)
	filled := thick + hollow.Of(e)

	ridge := Ridge(d, θ)
	perBag := unit.Area(float64(bagWets.Of(e)) * 1e6 / float64(filled))
	mortar := Mortar(area.Of(e), filled, waste.Of(e))
	bags := unit.Number(mortar / bagWets.Of(e))

	p := parts{shape, g, section, pitch, combed, thick, filled, ridge, perBag, mortar, bags}
	low, high := spread(e, section, pitch)
	answers(s, e, p, low, high)
	steps(s, p)
	cautions(s, thick, filled, hollow.Of(e), θ)
	s.Drawing = drawing(shape, w, g, ridge, thick)
}

// parts are what the work has found, for the steps and the answers to tell.
type parts struct {
	shape                        string
	land                         unit.Length
	section                      unit.Area
	pitch, combed, thick, filled unit.Length
	ridge                        unit.Length
	perBag                       unit.Area
	mortar                       unit.Volume
	bags                         unit.Number
}

// swing is a bed and its bags at one end of the spread.
type swing struct {
	bed    unit.Length
	mortar unit.Volume
	bags   unit.Number
}

// spread works the sum at both ends: the hand holds the trowel 10 degrees flatter
// or steeper, and the waste and the hollow turn out half as much or half as much again. How far each strays is common practice.
func spread(e calc.Entry, section unit.Area, pitch unit.Length) (low, high swing) {
	at := func(hold unit.Angle, share float64) swing {
		bed := Combed(section, hold, pitch) + skim.Of(e)
		filled := bed + unit.Length(share)*hollow.Of(e)
		mortar := Mortar(area.Of(e), filled, unit.Ratio(share)*waste.Of(e))
		return swing{bed, mortar, unit.Number(mortar / bagWets.Of(e))}
	}
	θ := hold.Of(e)
	return at(max(θ-holdSpread, 0), 0.5), at(min(θ+holdSpread, 90), 1.5)
}

func answers(s *calc.Sheet, e calc.Entry, p parts, low, high swing) {
	fromHold := words.Say("The hand strays {angle} either way.", words.Is("angle", holdSpread, unit.Arc))
	fromAll := words.Say("The hand strays {angle} either way; waste and hollows come to half as much or half as much again.", words.Is("angle", holdSpread, unit.Arc))
	calc.Gives(s, "buy", "Bags to buy", unit.Whole(float64(p.bags)), unit.Whole1).
		Between(float64(unit.Whole(float64(low.bags))), float64(unit.Whole(float64(high.bags))), fromAll).Buy().First().
		Of(&calc.Supply{Of: calc.BuyMortar, In: "bags", Pack: unit.Fig(bagWets.Of(e), unit.CubicFootL),
			Likely: float64(p.bags), Low: float64(low.bags), High: float64(high.bags)})
	calc.Gives(s, "bed", "Bed after the ridges fall in", p.thick, unit.InchMM).Between(float64(low.bed), float64(high.bed), fromHold).First()
	calc.Gives(s, "ridge", "Height of the combed ridge", p.ridge, unit.InchMM).
		Between(float64(Ridge(depth.Of(e), max(hold.Of(e)-holdSpread, 0))), float64(Ridge(depth.Of(e), min(hold.Of(e)+holdSpread, 90))), fromHold)
	calc.Gives(s, "per_bag", "Area a bag, before waste", p.perBag, unit.FootArea)
	calc.Gives(s, "mortar", "Wet mortar", p.mortar, unit.CubicFootL).Between(float64(low.mortar), float64(high.mortar), fromAll)
	calc.Gives(s, "bags", "Bags", p.bags, unit.Bare).Between(float64(low.bags), float64(high.bags), fromAll)
}
