// Package movement answers how wide a movement joint is, how far apart such joints
// stand on the module of the pavers, and how many spans a length takes.
package movement

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	expands = unit.In(unit.MillionthsPerFahrenheit, unit.MillionthsPerKelvin)
	// far prints lengths along the paving in full, so that pavers can be counted from what is printed.
	far = &unit.Pair{US: unit.Form{Unit: unit.Feet, Digits: 7}, Metric: unit.Form{Unit: unit.Metres, Digits: 7}}
	// fine prints widths in full: a sixteenth of an inch is 1.5875 mm.
	fine = &unit.Pair{US: unit.Form{Unit: unit.Inches, Digits: 7}, Metric: unit.Form{Unit: unit.Millimetres, Digits: 7}}
	// fahrenheit prints differences in the rule's own unit for everybody.
	fahrenheit = &unit.Pair{US: unit.Form{Unit: unit.FahrenheitDifference, Digits: 6}, Metric: unit.Form{Unit: unit.FahrenheitDifference, Digits: 6}}
)

var (
	span = calc.Ask("span", "ℓ", "Spacing wanted", far, 2*unit.Foot, 120*unit.Foot, "12 ft").
		Usually("8 ft", "10 ft", "12 ft").Helped("From one movement joint to the next.")
	summer = calc.Ask("summer", "T_s", "Hottest surface", unit.Warmth, unit.Temperature(0), 95, "140 F").
		Helped("Of the paver in full sun, not of the air. Dark pavers run hottest: measure.")
	winter = calc.Ask("winter", "T_w", "Coldest surface", unit.Warmth, unit.Temperature(-60), 40, "0 F")
	fit    = calc.Ask("fit", "T_f", "Surface when sealed", unit.Warmth, unit.Temperature(-20), 60, "60 F").
		Helped("Where the day is not known, work it once with the coldest and once with the hottest day that it may be.")
	expansion = calc.Ask("expansion", "α", "Expansion with heat", expands, unit.Expansion(0), 30e-6, "5.5 e-6/F").
			Usually("4 e-6/F", "5.5 e-6/F", "7 e-6/F").Helped("Of what moves most: concrete 5.5 e-6/F (10 e-6/K), porcelain 4 e-6/F (7 e-6/K). Bonded pavers go where the slab goes.")
	capability = calc.Ask("capability", "X", "What the sealant takes", unit.Share, unit.Ratio(0.05), 1, "25 %").
			Usually("12.5 %", "25 %", "50 %").Helped("Movement either way as a share of the joint's width: class 25 takes 25 %.")
	growth = calc.Ask("growth", "g", "Growth that stays", unit.Share, unit.Ratio(0), 0.002, "0 %").
		Helped("One way only, closing the joint, as fired clay grows with damp. Porcelain hardly does.")
	other     = calc.Ask("other", "m", "Other movement", unit.InchMM, 0, unit.Inch, "0 in").Helped("Deflection, creep, settling: both ways.")
	tolerance = calc.Ask("tolerance", "t", "Tolerance of the work", unit.InchMM, 0, unit.Inch/2, "1/16 in").
			Usually("0 in", "1/16 in", "1/8 in")
	structural = calc.Ask("structural", "w_s", "Joint in the slab below", unit.InchMM, 0, 3*unit.Inch, "0 in").
			Helped("Its width where this joint stands over one in the slab; else 0.")
	length = calc.Ask("length", "F", "Length to divide", far, unit.Foot, 3300*unit.Foot, "40 ft").Helped("Of the paving alone, between the edge joints.")
	paver  = calc.Ask("paver", "p", "Paver along the length", fine, unit.Inch, 2*unit.Metre, "23 13/16 in")
	joint  = calc.Ask("joint", "j", "Grout joint", fine, 0, 2*unit.Inch, "3/16 in").Usually("1/8 in", "3/16 in", "1/4 in")
)

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "movement", Stage: calc.SettingOut, Title: "Movement joints",
	Asks: "How wide is the movement joint, and on which paver does it stand?",
	Inputs: []*calc.Input{span.Input, length.Input, paver.Input, joint.Input, summer.Input, winter.Input, fit.Input,
		expansion.Input, capability.Input, growth.Input, other.Input, tolerance.Input, structural.Input},
	Work:   work,
	Origin: "A length grows with its temperature in proportion to both, which is how the coefficient of expansion is defined. A sealant bears only a share of its own width of that movement, so the width is the movement over that share.",
	Memory: []words.Msg{
		"Find every joint in the slab first, and chalk it up the edges: a movement joint stands over each.",
		"Chalk the movement joints on the slab before the first paver, and cut pavers to them, never across them.",
		"Keep the fields near square, and bring a joint to every inside corner of the outline.",
		"Hold the joint open with a strip as you set, and pull the strip before the mortar is hard.",
		"Comb no mortar across the joint: bed and paver both stop at it.",
		"Work both directions: the long one and the short one have joints of their own.",
	},
}

// The rule of the handbook (source.MovementMethod). What it leaves open is settled on the wide side:
// between 8 and 12 ft the joint is that of 12 ft, and a step of 15 °F that has begun counts whole.
const (
	shortSpan  = 8 * unit.Foot
	most       = 12 * unit.Foot
	shortWidth = 3 * unit.Inch / 8
	longWidth  = unit.Inch / 2
	sixteenth  = unit.Inch / 16
)

// kelvins are a difference of so many degrees Fahrenheit.
func kelvins(fahrenheit float64) unit.Difference { return unit.Difference(fahrenheit * 5 / 9) }

// LeastWidth is the joint at a spacing, before the range of temperature is looked
// at: 3/8 in up to 8 ft, 1/2 in beyond. Source: source.MovementMethod.
func LeastWidth(span unit.Length) unit.Length {
	if span <= shortSpan {
		return shortWidth
	}
	return longWidth
}

// Increments is how many steps of 15 °F the range of the surface has begun above
// 100 °F, each of which adds a sixteenth of an inch. Source: source.MovementMethod.
func Increments(surface unit.Difference) unit.Count {
	return unit.Whole(float64(max(surface-kelvins(100), 0) / kelvins(15)))
}

// Heat is how far a length moves with a difference of temperature. Source: source.JointWidth.
func Heat(expansion unit.Expansion, length unit.Length, difference unit.Difference) unit.Length {
	return unit.Length(float64(expansion) * float64(length) * float64(difference))
}

// Width is the joint that keeps a movement within what its sealant takes, and the
// tolerance of the work. Source: source.JointWidth.
func Width(movement unit.Length, capability unit.Ratio, tolerance unit.Length) unit.Length {
	return unit.Length(float64(movement)/float64(capability)) + tolerance
}

// ToSixteenth is a width up to the next sixteenth of an inch: our own convention,
// because the rule counts in sixteenths.
func ToSixteenth(width unit.Length) unit.Length {
	return unit.Length(unit.Whole(float64(width/sixteenth))) * sixteenth
}

// PaversAcross is how many whole pavers, each with its joint, go into a spacing.
func PaversAcross(spacing, module unit.Length) unit.Count {
	return -unit.Whole(-float64(spacing / module)) // down, by the same guard as up
}

// Spans is how many spans a length between edge joints takes, where movement joints stand at these centres: between n spans stand
// n - 1 joints, so that they reach n centres less one joint. By definition; the last span may be short.
func Spans(length, centres, joint unit.Length) unit.Count {
	return unit.Whole(float64((length + joint) / centres))
}

// parts are what the work has found.
type parts struct {
	least, rule, closing, opening, calculated, larger, width unit.Length
	surface                                                  unit.Difference
	increments                                               unit.Count
	module, spacing, centres                                 unit.Length
	pavers, spans                                            unit.Count
}

func work(e calc.Entry, s *calc.Sheet) {
	if !sensible(s, e) {
		return
	}
	p := found(e)
	answers(s, p)
	widthSteps(s, e, p)
	spacingSteps(s, e, p)
	cautions(s, e, p)
	s.Drawing = drawing(p)
}

// sensible refuses temperatures out of order and a paver longer than the spacing.
func sensible(s *calc.Sheet, e calc.Entry) bool {
	hot, cold, sealed := summer.Of(e), winter.Of(e), fit.Of(e)
	switch {
	case hot < cold:
		s.Refuse("summer", "Hottest surface: read {hot}, which is colder than the coldest, {cold}.", summer.Is("hot", hot), winter.Is("cold", cold))
	case sealed < cold || sealed > hot:
		s.Refuse("fit", "Surface when sealed: read {fit}. It lies between the coldest, {cold}, and the hottest, {hot}.",
			fit.Is("fit", sealed), winter.Is("cold", cold), summer.Is("hot", hot))
	}
	if module := paver.Of(e) + joint.Of(e); module > min(span.Of(e), most) {
		s.Refuse("paver", "Paver along the length: {paver} and its joint are longer than the spacing, {span}.",
			paver.Is("paver", paver.Of(e)), span.Is("span", min(span.Of(e), most)))
	}
	return len(s.Problems) == 0
}

func found(e calc.Entry) parts {
	l := span.Of(e)
	p := parts{least: LeastWidth(l), surface: unit.Difference(summer.Of(e) - winter.Of(e))}
	p.increments = Increments(p.surface)
	p.rule = p.least + unit.Length(p.increments)*sixteenth
	p.closing = Heat(expansion.Of(e), l, unit.Difference(summer.Of(e)-fit.Of(e))) + l*unit.Length(growth.Of(e)) + other.Of(e)
	p.opening = Heat(expansion.Of(e), l, unit.Difference(fit.Of(e)-winter.Of(e))) + other.Of(e)
	p.calculated = Width(max(p.closing, p.opening), capability.Of(e), tolerance.Of(e))
	p.larger = max(p.rule, p.calculated, structural.Of(e))
	p.width = ToSixteenth(p.larger)

	p.module = paver.Of(e) + joint.Of(e)
	p.pavers = PaversAcross(min(l, most), p.module)
	p.spacing = unit.Length(p.pavers) * p.module
	p.centres = p.spacing + p.width - joint.Of(e)
	p.spans = Spans(length.Of(e), p.centres, p.width)
	return p
}

func answers(s *calc.Sheet, p parts) {
	calc.Gives(s, "width", "Movement joint", p.width, fine).First()
	calc.Gives(s, "pavers", "Pavers from one to the next", p.pavers, unit.Whole1).First()
	calc.Gives(s, "spans", "Spans in the length", p.spans, unit.Whole1).First()
	calc.Gives(s, "spacing", "Spacing on the pavers", p.spacing, unit.FootMetre)
	calc.Gives(s, "centres", "Centres of the movement joints", p.centres, unit.FootMetre)
	calc.Gives(s, "rule_width", "Width by the rule", p.rule, fine)
	calc.Gives(s, "calc_width", "Width by the sum", p.calculated, unit.InchMM)
	calc.Gives(s, "closing", "It closes by", p.closing, unit.InchMM)
	calc.Gives(s, "opening", "It opens by", p.opening, unit.InchMM)
}
