// Package grout answers how much grout the joints between pavers take, how many
// bags that is, and whether the joint is as wide as the rules want it.
package grout

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var perLitre = unit.In(unit.PoundsPerCubicFoot, unit.KilogramsPerLitre)

var (
	paverL = calc.Ask("paver_l", "L", "Paver length", unit.InchMM, unit.Inch, 2*unit.Metre, "24 in").
		Usually("24 in", "36 in", "48 in").Helped("Measure one. A paver sold as 24 in may be 595 to 610 mm.")
	paverW = calc.Ask("paver_w", "B", "Paver width", unit.InchMM, unit.Inch, 2*unit.Metre, "24 in").
		Usually("12 in", "18 in", "24 in")
	joint = calc.Ask("joint", "w", "Joint width", unit.InchMM, unit.Inch/32, 2*unit.Inch, "3/16 in").
		Usually("1/8 in", "3/16 in", "1/4 in", "3/8 in")
	depth = calc.Ask("depth", "d", "Joint depth to fill", unit.InchMM, unit.Inch/8, 6*unit.Inch, "20 mm").
		Helped("From the face of the paver down to the mortar in the joint: the paver's thickness, less what the bed has pushed up, or more where the joint was raked out into the bed.")
	area = calc.Ask("area", "A", "Area to grout", unit.FootArea, unit.SquareMetre/10, 100_000*unit.SquareMetre, "100 ft2")
	rate = calc.Ask("powder_rate", "ρ", "Powder for the joint's volume", perLitre, unit.Density(500), 3000, "1.6 kg/L").
		Helped("Mass of dry powder that makes one litre of grout in the joint: from the bag. 1.6 kg/L is an assumption.")
	bag       = calc.Ask("bag", "M", "Powder in a bag", unit.PoundKg, unit.Kilogram, 60*unit.Kilogram, "25 lb").Usually("10 lb", "25 lb", "20 kg")
	waste     = calc.Ask("waste", "k", "Waste", unit.Share, 0, unit.Ratio(0.5), "10 %").Usually("5 %", "10 %", "15 %")
	variation = calc.Ask("variation", "v", "Spread of the pavers' face sizes", unit.InchMM, 0, unit.Inch, "1/32 in").
			Helped("Lay ten pavers out and measure: the longest less the shortest.")
	warp = calc.Ask("warp", "u", "Bow of the longest edge", unit.InchMM, 0, unit.Inch/2, "1/32 in").
		Helped("Two pavers face to face, the gap at the middle or the ends, halved.")
	pattern = calc.Choose("pattern", "Pattern", "stack",
		calc.Option{Name: "stack", Label: "Stacked, joints in line"}, calc.Option{Name: "running", Label: "Running bond, joints offset"})
	edges = calc.Choose("edge_finish", "Edges of the paver", "rectified",
		calc.Option{Name: "rectified", Label: "Ground to size (rectified)"}, calc.Option{Name: "calibrated", Label: "Sorted by size (calibrated)"})
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "grout", Stage: calc.Grouting, Title: "Grout in the joints",
	Asks: "How much grout do the joints take, and is the joint wide enough?",
	Inputs: []*calc.Input{paverL.Input, paverW.Input, joint.Input, depth.Input, area.Input, rate.Input, bag.Input,
		waste.Input, variation.Input, warp.Input, pattern.Input, edges.Input},
	Work:   work,
	Origin: "Each paver brings one joint along half of each side, so a square metre holds as much joint as its module has, half a length and half a width on each side. The volume is that length by the width and the depth of the joint, and the bag's own rate turns volume into powder.",
	Memory: []words.Msg{
		"Rake the joints out and vacuum them before the mortar is hard. Mortar standing high shows through the grout.",
		"Damp the pavers and the joints before grouting in heat or wind. No water may stand in the joint.",
		"Pack with the float held at 12 to 15 degrees, and cut off with it near 90 degrees, across the joints.",
		"Work no more than can be washed in time, with little water. A wet sponge takes the colour out.",
		"Leave every movement joint open and clean: no grout and no mortar in it.",
		"Mix whole bags, or weigh a part, and mix every batch with the same water.",
	},
}

// Module is the area that one paver takes up with its joint: half a joint all
// round, which is one joint on two of its sides. Geometry; source.ModuleGeometry
// counts masonry in the same way. It holds for stacked and for running bond.
func Module(length, width, joint unit.Length) unit.Area {
	return (length + joint).Times(width + joint)
}

// Run is the length of joint in an area: each paver brings its length, its width
// and the square in which the two cross, which is counted once. The short form,
// (L + B) ÷ (L B), leaves the joint out of the module and gives too much.
func Run(area unit.Area, length, width, joint unit.Length) unit.Length {
	return unit.Length(float64(area) * float64(length+width+joint) / float64(Module(length, width, joint)))
}

// Volume is what a run of joint holds.
func Volume(run, joint, depth unit.Length) unit.Volume {
	return joint.Times(depth).Deep(run)
}

// Powder is the dry mass for a volume of joint, its waste on top.
func Powder(volume unit.Volume, rate unit.Density, waste unit.Ratio) unit.Mass {
	return unit.Mass(float64(volume.Weighs(rate)) * (1 + float64(waste)))
}

// How far a job strays from its entry, either way: common practice.
const (
	jointStrays = 0.1 // of the joint's width
	rateStrays  = 0.1 // of the powder a litre: 1.5 to 1.8 kg/L are met, from memory
	wasteStrays = 0.5 // of the waste
)

// parts are what the work has found.
type parts struct {
	module unit.Area
	run    unit.Length
	volume unit.Volume
	powder unit.Mass
	bags   unit.Number
}

func work(e calc.Entry, s *calc.Sheet) {
	found := at(e, 0)
	r := rules(e)
	answers(s, e, found, r)
	steps(s, e, found)
	ruleSteps(s, e, r)
	cautions(s, e, r)
	s.Drawing = drawing(joint.Of(e), depth.Of(e), pattern.Of(e))
}

// at works the sum as entered (0), or with all that strays at its low (-1) or its high (+1) end.
func at(e calc.Entry, end float64) parts {
	l, b := paverL.Of(e), paverW.Of(e)
	w := joint.Of(e) * unit.Length(1+end*jointStrays)
	p := parts{module: Module(l, b, w), run: Run(area.Of(e), l, b, w)}
	p.volume = Volume(p.run, w, depth.Of(e))
	p.powder = Powder(p.volume, rate.Of(e)*unit.Density(1+end*rateStrays), waste.Of(e)*unit.Ratio(1+end*wasteStrays))
	p.bags = unit.Number(p.powder / bag.Of(e))
	return p
}

func answers(s *calc.Sheet, e calc.Entry, p parts, r rule) {
	low, high := at(e, -1), at(e, +1)
	joints := words.Say("Joints come out a tenth narrower or wider.")
	all := words.Say("Joints come out a tenth narrower or wider, a litre takes a tenth less or more powder, and waste comes to half as much or half as much again.")
	calc.Gives(s, "buy", "Bags to buy", unit.Whole(float64(p.bags)), unit.Whole1).
		Between(float64(unit.Whole(float64(low.bags))), float64(unit.Whole(float64(high.bags))), all).Buy().First().
		Of(&calc.Supply{Of: calc.BuyGrout, In: "bags", Pack: unit.Fig(bag.Of(e), unit.PoundKg),
			Likely: float64(p.bags), Low: float64(low.bags), High: float64(high.bags)})
	calc.Gives(s, "powder", "Grout powder", p.powder, unit.PoundKg).Between(float64(low.powder), float64(high.powder), all).First()
	calc.Gives(s, "bags", "Bags", p.bags, unit.Bare).Between(float64(low.bags), float64(high.bags), all)
	calc.Gives(s, "run", "Length of all joints, movement joints too", p.run, unit.FootMetre)
	calc.Gives(s, "volume", "Grout in the joints, before waste", p.volume, unit.CubicFootL).Between(float64(low.volume), float64(high.volume), joints)
	calc.Gives(s, "least_joint", "Narrowest joint that the rules allow", r.least, unit.InchMM)
	calc.Gives(s, "lippage", "Most that one edge may stand above the next", r.lippage, unit.InchMM)
}
