// Package sealant answers how much sealant a movement joint takes, how deep it
// goes, and whether a round backing rod fits under it.
package sealant

import (
	"math"

	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	tube = unit.In(unit.FluidOunces, unit.Millilitres)
	bare = unit.Both(unit.Plain)
)

var (
	width = calc.Ask("width", "W", "Joint width", unit.InchMM, unit.Inch/8, 2*unit.Inch, "1/2 in").
		Usually("3/8 in", "1/2 in", "5/8 in", "3/4 in").Helped("What Movement joints found, measured again on site.")
	depth = calc.Ask("depth", "d_e", "Depth of sealant at the middle", unit.InchMM, 0, 2*unit.Inch, "0 in").
		Usually("0 in", "1/4 in", "3/8 in", "1/2 in").Helped("0 takes the rule: half the width, within 1/4 and 1/2 in.")
	run  = calc.Ask("run", "ℓ", "Length of joint", unit.FootMetre, unit.Metre/10, 10_000*unit.Metre, "100 ft")
	dome = calc.Ask("dome", "h", "Rise of the rod's crown", unit.InchMM, 0, unit.Inch/2, "1/8 in").
		Usually("0 in", "1/16 in", "1/8 in").Helped("How far the crown of the rod stands above where it meets the pavers. 0 for tape or a flat strip.")
	sag = calc.Ask("sag", "s", "Hollow of the tooled face", unit.InchMM, 0, unit.Inch/2, "1/16 in").
		Usually("0 in", "1/16 in", "1/8 in").Helped("How far the middle of the face is tooled below the pavers.")
	cartridge = calc.Ask("cartridge", "V_c", "Sealant in a cartridge", tube, 50*unit.Millilitre, 20*unit.Litre, "10.1 fl oz").
			Usually("10.1 fl oz", "20 fl oz", "300 mL", "600 mL")
	waste    = calc.Ask("waste", "k", "Waste", unit.Share, 0, unit.Ratio(0.5), "10 %").Usually("5 %", "10 %", "20 %")
	rodRatio = calc.Ask("rod_ratio", "q", "Rod to joint", bare, unit.Ratio(1), 2, "1.25").
			Usually("1.25", "1.33", "1.5").Helped("Diameter of the rod over the width of the joint. Closed-cell rods are commonly a quarter over.")
	paver = calc.Ask("paver", "T", "Paver thickness", unit.InchMM, unit.Inch/4, 3*unit.Inch, "20 mm")
	bed   = calc.Ask("bed", "b", "Bed, open at the joint", unit.InchMM, 0, 2*unit.Inch, "3/16 in").
		Helped("0 where mortar stands in the joint up to the back of the paver.")
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "sealant", Stage: calc.Sealing, Title: "Sealant in the movement joints",
	Asks: "How many cartridges do the movement joints take, and does a rod fit under the sealant?",
	Inputs: []*calc.Input{width.Input, depth.Input, run.Input, dome.Input, sag.Input, cartridge.Input, waste.Input,
		rodRatio.Input, paver.Input, bed.Input},
	Work:   work,
	Origin: "Sealant fills the section of the joint above the rod along its whole length. A depth of half the width lets the bead stretch with its edges instead of tearing away from them, which is where the rule comes from.",
	Memory: []words.Msg{
		"Rake, brush and vacuum the joint down to the slab. Both faces clean, dull and dry; prime where the cartridge says so.",
		"Tape both edges, push the rod in to one depth with a blunt roller, and do not tear or stretch it.",
		"Overfill from the bottom up, with no air behind the bead.",
		"Tool at once with a rounded tool wetted with soapy water, so that the bead is pressed against both faces.",
		"Pull the tape while the bead is wet: up, back and across the joint.",
		"Seal at a middling temperature, so that the bead works both ways. Keep feet and rain off as long as the cartridge says.",
	},
}

// The rule of the depth (source.SealantDepth) and the rule of one county for joints under traffic (source.TrafficJoint).
const (
	leastDepth   = unit.Inch / 4
	mostDepth    = unit.Inch / 2
	leastWidth   = unit.Inch / 4
	trafficLeast = 3 * unit.Inch / 8
	trafficMost  = 5 * unit.Inch / 8
	trafficShare = 0.75
)

// How far a job strays from its entry, either way: common practice.
const (
	sizeStrays  = 0.1 // of every size of the section
	wasteStrays = 0.5 // of the waste
	tapeStrays  = 0.1 // of the tape, for laps and ends
)

// Depth is how deep the sealant goes by the rule: half the width, within a quarter
// and half an inch. Source: source.SealantDepth. Other handbooks differ: source.SealantDepths.
func Depth(width unit.Length) unit.Length {
	return min(max(width/2, leastDepth), mostDepth)
}

// TrafficDepth is the depth by one county's rule for joints that are walked or
// driven on. Source: source.TrafficJoint.
func TrafficDepth(width unit.Length) unit.Length {
	return min(max(trafficShare*width, trafficLeast), trafficMost)
}

// Radius is that of the arc that rises so far over a chord. The rise is above nought and at most half the chord.
func Radius(chord, rise unit.Length) unit.Length {
	return (chord*chord/4 + rise*rise) / (2 * rise)
}

// Opens is the angle that the arc takes up at its centre.
func Opens(chord, rise unit.Length) unit.Angle {
	return unit.Angle(4 * math.Atan(float64(2*rise/chord)) * 180 / math.Pi)
}

// Beside is the area left between an arc and the straight line across its crown:
// what sealant fills at either side of a rod's crown or of a tooled hollow. The
// segment under the arc is that of source.Segment.
func Beside(chord, rise unit.Length) unit.Area {
	if rise == 0 {
		return 0
	}
	r, θ := float64(Radius(chord, rise)), Opens(chord, rise)
	return chord.Times(rise) - unit.Area(r*r/2*(float64(θ)*math.Pi/180-θ.Sin()))
}

// parts are what the work has found.
type parts struct {
	depth, room, rod, spare, tape unit.Length
	crown                         unit.Length // that of the rod; 0 where none fits, since tape and strips are flat
	underRod, overFace, section   unit.Area
	volume                        unit.Volume
	cartridges                    unit.Number
}

func work(e calc.Entry, s *calc.Sheet) {
	p := found(e)
	if !possible(s, e, p) {
		return
	}
	answers(s, e, p)
	steps(s, e, p)
	cautions(s, e, p)
	s.Drawing = drawing(e, p)
}

func found(e calc.Entry) parts {
	w, f := width.Of(e), sag.Of(e)
	p := parts{depth: depth.Of(e)}
	if p.depth == 0 {
		p.depth = Depth(w)
	}
	p.rod = w * unit.Length(rodRatio.Of(e))
	p.room = paver.Of(e) + bed.Of(e) - f - p.depth
	p.spare = p.room - p.rod
	if p.spare >= 0 {
		p.crown = dome.Of(e)
	}
	p.underRod, p.overFace = Beside(w, p.crown), Beside(w, f)
	p.section = w.Times(p.depth) + p.underRod + p.overFace
	p.volume = p.section.Deep(run.Of(e))
	p.cartridges = Cartridges(p.volume, waste.Of(e), cartridge.Of(e))
	p.tape = 2 * run.Of(e)
	return p
}

// Cartridges is how many a volume takes, its waste on top.
func Cartridges(volume unit.Volume, waste unit.Ratio, cartridge unit.Volume) unit.Number {
	return unit.Number(float64(volume) * (1 + float64(waste)) / float64(cartridge))
}

// possible refuses what no joint can be: a crown or a hollow past a half circle, or sealant or a crown deeper than the joint.
func possible(s *calc.Sheet, e calc.Entry, p parts) bool {
	half := width.Of(e) / 2
	if h := dome.Of(e); h > half {
		s.Refuse("dome", "Rise of the rod's crown: read {read}. In a joint {width} wide a round crown rises by half of that at most.",
			dome.Is("read", h), width.Is("width", width.Of(e)))
	}
	if f := sag.Of(e); f > half {
		s.Refuse("sag", "Hollow of the tooled face: read {read}. In a joint {width} wide a round hollow is half of that at most.",
			sag.Is("read", f), width.Is("width", width.Of(e)))
	}
	switch {
	case p.room < 0:
		s.Refuse("depth", "Depth of sealant: {depth} under a hollow of {sag} is more than the joint has, {deep} through paver and bed.",
			depth.Is("depth", p.depth), sag.Is("sag", sag.Of(e)), paver.Is("deep", paver.Of(e)+bed.Of(e)))
	case dome.Of(e) > p.room:
		s.Refuse("dome", "Rise of the rod's crown: read {read}, which is more than the {room} left under the sealant. Over tape or a flat strip it is 0.",
			dome.Is("read", dome.Of(e)), dome.Is("room", p.room))
	}
	return len(s.Problems) == 0
}

func answers(s *calc.Sheet, e calc.Entry, p parts) {
	from := words.Say("The joint comes out a tenth narrower and shallower or wider and deeper, and waste comes to half as much or half as much again.")
	size := words.Say("The joint comes out a tenth narrower and shallower or wider and deeper.")
	end := func(share float64) (unit.Area, unit.Volume, unit.Number) {
		by := 1 + share*sizeStrays
		volume := p.volume * unit.Volume(by*by)
		return p.section * unit.Area(by*by), volume, Cartridges(volume, waste.Of(e)*unit.Ratio(1+share*wasteStrays), cartridge.Of(e))
	}
	lowS, lowV, low := end(-1)
	highS, highV, high := end(+1)
	calc.Gives(s, "buy", "Cartridges to buy", unit.Whole(float64(p.cartridges)), unit.Whole1).
		Between(float64(unit.Whole(float64(low))), float64(unit.Whole(float64(high))), from).Buy().First().
		Of(&calc.Supply{Of: calc.BuySealant, In: "cartridges", Pack: unit.Fig(cartridge.Of(e), tube),
			Likely: float64(p.cartridges), Low: float64(low), High: float64(high)})
	calc.Gives(s, "depth_used", "Depth of sealant at the middle", p.depth, unit.InchMM).First()
	spare := calc.Gives(s, "rod_spare", "Depth left under the rod", p.spare, unit.InchMM).First()
	if p.spare < 0 {
		spare.Says(words.Say("none: the rod is {short} too high", words.Is("short", -p.spare, unit.InchMM)))
	}
	calc.Gives(s, "rod", "Rod diameter", p.rod, unit.InchMM)
	calc.Gives(s, "section", "Section of the sealant", p.section, unit.InchArea).Between(float64(lowS), float64(highS), size)
	calc.Gives(s, "volume", "Sealant in the joints, before waste", p.volume, tube).Between(float64(lowV), float64(highV), size)
	calc.Gives(s, "cartridges", "Cartridges", p.cartridges, unit.Bare).Between(float64(low), float64(high), from)
	calc.Gives(s, "tape", "Masking tape, both edges", p.tape, unit.FootMetre).
		Between(float64(p.tape), float64(p.tape)*(1+tapeStrays), words.Say("Up to a tenth more for laps and ends.")).Buy().
		Of(&calc.Supply{Of: calc.BuyTape, Likely: float64(p.tape), Low: float64(p.tape), High: float64(p.tape) * (1 + tapeStrays)})
	calc.Gives(s, "backing", "Rod, or tape where none fits, along every joint", run.Of(e), unit.FootMetre).
		Between(float64(run.Of(e)), float64(run.Of(e))*(1+tapeStrays), words.Say("Up to a tenth more for laps and ends.")).Buy().
		Of(p.backs(e))
}

// backs is what an order buys to stand under the sealant: the rod where it fits, else what the caution tells of.
func (p parts) backs(e calc.Entry) *calc.Supply {
	l := float64(run.Of(e))
	s := &calc.Supply{Of: calc.BuyBacking, In: "backing rod", Pack: unit.Fig(p.rod, unit.InchMM), Likely: l, Low: l, High: l * (1 + tapeStrays)}
	if p.spare < 0 {
		s.In, s.Pack = "bond-breaker tape", unit.Fig(width.Of(e), unit.InchMM)
		if p.room >= thin {
			s.In, s.Grade = "bond-breaker tape on a flat strip of soft foam", float64(p.room)
		}
	}
	return s
}

func cautions(s *calc.Sheet, e calc.Entry, p parts) {
	widthAndDepth(s, e, p)
	backing(s, e, p)
	s.Warn(calc.Care, source.Backing, "Sealant holds to the two faces of the joint and to nothing behind it. Rod, tape or strip keep it off the bed and the slab.")
	s.Warn(calc.Care, source.DryJoint, "The joint is free of grout and mortar and dry all through before the rod goes in. Wait for the bed and the grout as long as their bags say.")
	s.Warn(calc.Care, source.SealantClass, "Use a sealant for traffic (use T of ASTM C920), of the class that the joint's width was worked for, and apply none above {most}.", words.Both("most", unit.Temperature(hottest), unit.Warmth))
	s.Warn(calc.Care, source.Silica, "Grinding or sawing a joint out raises dust that may hold silica. Wet it or draw it off, and wear the respirator that your exposure plan calls for.")
	s.Warn(calc.Care, source.CommonPractice, "Sealants, primers and cleaners give off vapours, some of which burn. Read their labels, keep flames away, and wear gloves and eye protection.")
	s.Warn(calc.Note, source.SealantTooling, "Tool within ten minutes, sooner in heat. The depth is measured at the middle of the joint.")
	s.Warn(calc.Note, source.TrafficJoint, "One county takes joints under traffic, walks among them, to three quarters of their width within {least} and {most}: {depth} here. Enter it as the depth where the job asks for it.",
		words.Both("least", unit.Length(trafficLeast), unit.InchMM), words.Both("most", unit.Length(trafficMost), unit.InchMM), words.Is("depth", TrafficDepth(width.Of(e)), unit.InchMM))
	s.Warn(calc.Note, source.SealantDepths, "Handbooks differ: this one goes as deep as the joint is wide up to {most}, and half the width above.", words.Both("most", unit.Length(mostDepth), unit.InchMM))
	s.Warn(calc.Note, source.RodSize, "How far a rod is over its joint is common practice from one specimen and from memory; the rod's height once squeezed is taken as its own diameter. Push one in and measure.")
}

// hottest is the temperature up to which sealant goes in: 90 °F, 32.2 °C. Source: source.SealantClass.
const hottest = unit.Temperature((90.0 - 32) * 5 / 9)

func widthAndDepth(s *calc.Sheet, e calc.Entry, p parts) {
	w := width.Of(e)
	least := words.Both("least", unit.Length(leastWidth), unit.InchMM)
	if w < leastWidth {
		s.Warn(calc.Stop, source.SealantDepth, "A joint of {width} is too narrow to seal: {least} is the least. It can hardly be filled and takes little movement.", width.Is("width", w), least)
	}
	read := words.Is("depth", p.depth, unit.InchMM)
	switch {
	case p.depth > w:
		s.Warn(calc.Stop, source.SealantTooling, "{depth} is deeper than the joint is wide, {width}. So deep a bead tears itself off the faces.", read, width.Is("width", w))
	case p.depth < leastDepth:
		s.Warn(calc.Stop, source.SealantDepth, "{depth} is shallower than {least}, the least that holds to a face.", read, least)
	case p.depth > mostDepth:
		s.Warn(calc.Care, source.SealantDepth, "{depth} is deeper than {most}, the most by the rule. A deep bead is stiff and pulls at the faces.", read, words.Both("most", unit.Length(mostDepth), unit.InchMM))
	}
	if depth.Of(e) == 0 && leastWidth <= w && w/2 < leastDepth {
		s.Warn(calc.Note, source.MovementMethod, "The handbook's half of the width would be {half} here. Less than {least} hardly holds to a face, so the rule gives {least}.",
			words.Is("half", w/2, unit.InchMM), words.Both("least", unit.Length(leastDepth), unit.InchMM))
	}
	if bite := p.depth + p.crown + sag.Of(e); bite > paver.Of(e) {
		s.Warn(calc.Care, source.ByDefinition, "At the faces the bead is {bite} deep, more than the paver is thick: it would hold to the bed as well.", words.Is("bite", bite, unit.InchMM))
	}
}

// thin is the room under which a strip has no place and tape lies on the slab.
const thin = 2 * unit.Millimetre

func backing(s *calc.Sheet, e calc.Entry, p parts) {
	switch rod, room := words.Is("rod", p.rod, unit.InchMM), words.Is("room", p.room, unit.InchMM); {
	case p.spare >= 0:
		s.Warn(calc.Note, source.RodSize, "A rod of {rod} fits: {room} is left under the sealant. It takes {run} of rod, set to one depth.", rod, room, run.Is("run", run.Of(e)))
	case p.room < thin:
		s.Warn(calc.Care, source.BackingStrips, "A rod of {rod} does not fit: only {room} is left under the sealant. Lay {run} of bond-breaker tape, as wide as the joint, on the slab. The sum counts no crown.",
			rod, room, run.Is("run", run.Of(e)))
	default:
		s.Warn(calc.Care, source.BackingStrips, "A rod of {rod} does not fit: only {room} is left under the sealant. Fill that with a flat strip of soft foam, and lay {run} of bond-breaker tape on it as wide as the joint. The sum counts no crown. Do not squeeze a rod flat or cut it in half.",
			rod, room, run.Is("run", run.Of(e)))
	}
}
