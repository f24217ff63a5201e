package kit

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// scale is a scale by the least step that it shows, written as its dial writes it.
type scale struct {
	step unit.Mass
	dial *unit.Pair
}

// Is fills a placeholder with the step.
func (g scale) Is(name string) *words.Arg { return words.Is(name, g.step, g.dial) }

// scales are those found on site, the finest first: a pocket scale, a kitchen scale, and
// two platform scales. Common practice.
var scales = [...]scale{
	{unit.Gram, unit.Both(unit.Grams)}, {5 * unit.Gram, unit.Both(unit.Grams)},
	{unit.Pound / 10, unit.Both(unit.Pounds)}, {50 * unit.Gram, unit.Both(unit.Grams)},
}

// shows reports whether a scale's step is at most the smaller part, so that the scale shows
// the part at all. Beyond that its error passes the part itself.
func shows(p split, g scale) bool { return g.step <= min(p.a, p.b) }

// breaks is the finest of the scales that can put the ratio out by more than the slack.
func breaks(p split) (at int, found bool) {
	coarsest := Coarsest(p.a, p.b, slack)
	for i, g := range scales {
		if g.step > coarsest*(1+1e-9) {
			return i, true
		}
	}
	return 0, false
}

func cautions(s *calc.Sheet, p split) {
	if p.whole {
		s.Warn(calc.Note, source.ByDefinition, "This is a whole number of kits, {kits}: mix them whole and leave the scale alone.", words.Is("kits", p.opened, unit.Whole1))
	} else {
		scaleCaution(s, p)
	}
	s.Warn(calc.Care, source.CommonPractice, "Never change the ratio to hurry or slow the set: what has no partner never hardens.")
	s.Warn(calc.Care, source.CommonPractice, "Resins and hardeners burn and sensitise skin, and a rash stays for life. Wear the gloves and eye protection that the data sheets call for, and keep the air moving.")
	s.Warn(calc.Care, source.CommonPractice, "A deep pail of mixed resin heats itself, sets early and may smoke. Mix what can be spread in its pot life, and spread it out at once.")
	s.Warn(calc.Note, source.CommonPractice, "The maker's own tolerance on the ratio comes before the {slack} taken here. Some kits may not be split at all: read the label.", words.Is("slack", slack, unit.Share))
}

// scaleCaution says which scale keeps the ratio of this split and which breaks it.
func scaleCaution(s *calc.Sheet, p split) {
	at, found := breaks(p)
	if !found {
		s.Warn(calc.Note, source.CommonPractice, "Any scale in steps of {step} or finer keeps the ratio of this split within {slack}.",
			scales[len(scales)-1].Is("step"), words.Is("slack", slack, unit.Share))
		return
	}
	out := words.Named("out", "more than the part itself")
	if g := scales[at]; shows(p, g) {
		out = words.Is("out", Out(p.a, p.b, g.step), unit.Share)
	}
	step, coarsest := scales[at].Is("step"), words.Both("coarsest", Coarsest(p.a, p.b, slack), fine)
	switch at {
	case 0:
		s.Warn(calc.Stop, source.CommonPractice, "Too small a split: even a scale in {step} steps can put the ratio out by {out}. Mix more, or a whole kit.", step, out)
	case 1:
		s.Warn(calc.Care, source.CommonPractice, "A kitchen scale in {step} steps breaks the ratio of so small a split: it can put it out by {out}. Take one in steps of {coarsest} or finer.", step, out, coarsest)
	default:
		s.Warn(calc.Care, source.CommonPractice, "A platform scale in {step} steps is too coarse for this split: it can put the ratio out by {out}. Take one in steps of {coarsest} or finer.", step, out, coarsest)
	}
}
