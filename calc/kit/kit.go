// Package kit answers how much of each part of a two-part product makes a smaller
// mix, and how fine a scale must be to keep the ratio.
package kit

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

var (
	fine = unit.In(unit.Ounces, unit.Grams)
	six  = &unit.Pair{US: unit.Form{Unit: unit.One, Digits: 6}, Metric: unit.Form{Unit: unit.One, Digits: 6}}
)

var (
	partA = calc.Ask("part_a", "A", "Part A in a full kit", unit.PoundKg, 10*unit.Gram, 250*unit.Kilogram, "8 lb").
		Helped("Net mass, as printed on its pail. Parts given by volume cannot be split by weighing.")
	partB = calc.Ask("part_b", "B", "Part B in a full kit", unit.PoundKg, 10*unit.Gram, 250*unit.Kilogram, "2 lb")
	need  = calc.Ask("need", "M", "Mixed mass wanted", unit.PoundKg, 10*unit.Gram, 1000*unit.Kilogram, "2.5 lb")
)

// slack is how far the ratio may be out: common practice where the maker gives no figure.
const slack = 2 * unit.Percent

// left is what stays on pail, paddle and trowel at the most: common practice.
const left = 5 * unit.Percent

// Calculator is the question.
var Calculator = calc.Calculator{
	ID: "kit", Stage: calc.Mixing, Title: "Split a kit",
	Asks:   "How much of part A and part B makes this much, and which scale keeps the ratio?",
	Inputs: []*calc.Input{partA.Input, partB.Input, need.Input},
	Work:   work,
	Origin: "A two-part product hardens only in its own ratio, so both parts of the kit are scaled by one and the same fraction. The fraction is what is needed over what the whole kit weighs.",
	Memory: []words.Msg{
		"Mix whole kits wherever the job allows it: the maker has weighed them.",
		"Stir each part in its own pail before any is taken out. What has settled is part of the ratio.",
		"Set the empty pail on the scale, bring it to nought, and pour the larger part first.",
		"Scrape walls and bottom, pour into a clean pail and mix again: what clings to the first pail stays unmixed.",
		"Close the parts at once, and write the date and what was taken on both lids.",
	},
}

// Share is what one part gives to a mix, so that the split keeps the kit's ratio.
// By definition of the ratio.
func Share(need, part, other unit.Mass) unit.Mass {
	return unit.Mass(float64(need) * float64(part) / float64(part+other))
}

// Kits is how many kits, and what part of one, a mix takes.
func Kits(need, a, b unit.Mass) unit.Number { return unit.Number(need / (a + b)) }

// Out is how far a scale with such steps can put the ratio out at the worst: one part
// is read half a step too high and the smaller half a step too low. It holds for steps
// below twice the smaller part: a coarser scale does not show that part at all.
// Arithmetic of rounding.
func Out(a, b, step unit.Mass) unit.Ratio {
	half := float64(step) / 2
	return unit.Ratio((1/float64(a) + 1/float64(b)) * half / (1 - half/float64(min(a, b))))
}

// Coarsest is the step of a scale at which Out comes to just the slack. Out solved for
// the step.
func Coarsest(a, b unit.Mass, slack unit.Ratio) unit.Mass {
	k := float64(slack)
	return unit.Mass(2 * k / (1/float64(a) + 1/float64(b) + k/float64(min(a, b))))
}

// split is the part of a kit that has to be weighed out: how many kits are opened, what
// share of the last one is used, and its two parts. Whole kits need no scale.
type split struct {
	kits   unit.Number
	opened unit.Count
	last   unit.Number
	a, b   unit.Mass
	whole  bool
}

func splitOf(a, b, need unit.Mass) split {
	n := Kits(need, a, b)
	p := split{kits: n, opened: unit.Whole(float64(n))}
	p.whole = float64(p.opened) <= float64(n)*(1+2e-9)
	p.last = 1
	if !p.whole {
		p.last = n - unit.Number(p.opened-1)
	}
	p.a, p.b = a*unit.Mass(p.last), b*unit.Mass(p.last)
	return p
}

func work(e calc.Entry, s *calc.Sheet) {
	a, b, m := partA.Of(e), partB.Of(e), need.Of(e)
	p := splitOf(a, b, m)
	aNow, bNow := Share(m, a, b), Share(m, b, a)

	calc.Gives(s, "a_now", "Part A now", aNow, unit.PoundKg).First()
	calc.Gives(s, "b_now", "Part B now", bNow, unit.PoundKg).First()
	calc.Gives(s, "kits", "Kits", p.kits, six).
		Between(float64(p.kits), float64(p.kits)*(1+float64(left)),
			words.Say("Up to {left} of a mix stays on pail, paddle and trowel.", words.Is("left", left, unit.Share))).Buy().
		Of(&calc.Supply{Of: calc.BuyKits, In: "kits", Pack: unit.Fig(a+b, unit.PoundKg), Grade: float64(a / b),
			Likely: float64(p.kits), Low: float64(p.kits), High: float64(p.kits) * (1 + float64(left))})

	steps(s, e, p, aNow, bNow)
	cautions(s, p)
	s.Drawing = drawing(a, b, p)
}

func steps(s *calc.Sheet, e calc.Entry, p split, aNow, bNow unit.Mass) {
	calc.Works(s, "Part A now: the mix shared out in the kit's ratio.",
		"A_now", aNow, unit.PoundKg, "M * A / (A + B)", source.ByDefinition)
	calc.Works(s, "Part B now, in the same way.",
		"B_now", bNow, unit.PoundKg, "M * B / (A + B)", source.ByDefinition)
	calc.Works(s, "Kits: the mix over one kit.",
		"n", p.kits, six, "M / (A + B)", source.ByDefinition)
	calc.Works(s, "Kits to open.",
		"N", p.opened, unit.Whole1, "ceil(n)", source.ByDefinition)
	if p.whole {
		return
	}

	calc.Works(s, "Share of the last kit that is used. Whole kits before it are mixed unweighed.",
		"f", p.last, six, "n - (N - 1)", source.ByDefinition)
	calc.WorksUS(s, "Part A to weigh out of the last kit.",
		"a", p.a, fine, "f * A * 1000", "f * A * 16", source.ByDefinition)
	calc.WorksUS(s, "Part B to weigh out of the last kit.",
		"b", p.b, fine, "f * B * 1000", "f * B * 16", source.ByDefinition)
	calc.Let(s, "k", slack, unit.Share)
	s.Step(words.Say("Coarsest step of a scale that keeps the ratio within {slack}, one part read half a step high and the other half a step low.",
		words.Is("slack", slack, unit.Share)),
		calc.Sym("G", Coarsest(p.a, p.b, slack), fine), "2 * k / 100 / (1 / a + 1 / b + k / 100 / min(a, b))", source.CommonPractice)
	for _, g := range scales {
		if !shows(p, g) {
			continue
		}
		calc.Let(s, "g", g.step, fine)
		s.Step(words.Say("How far a scale in {step} steps can put the ratio out.", g.Is("step")),
			calc.Sym("E", Out(p.a, p.b, g.step), unit.Share), "(1 / a + 1 / b) * g / 2 / (1 - g / 2 / min(a, b)) * 100", source.ByDefinition)
	}
}
