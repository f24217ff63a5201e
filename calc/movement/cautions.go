package movement

import (
	"setbook/calc"
	"setbook/calc/source"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const (
	concrete    = unit.Expansion(5.5 * 1.8e-6) // source.ConcreteExpansion: 5.5 millionths per °F
	britishMost = 5 * unit.Metre               // source.BritishBays
	edgeLeast   = unit.Inch / 4                // source.EdgeJoint
	broad       = unit.Inch                    // source.SealantDepth: 1 to 2 in, as far as the sealant does not sag
)

func cautions(s *calc.Sheet, e calc.Entry, p parts) {
	if l := span.Of(e); l > most {
		s.Warn(calc.Stop, source.MovementMethod, "{span} is too far: outdoors movement joints stand at most {most} apart, both ways. The rule has no width for more; what is shown is that of {most}.",
			span.Is("span", l), words.Both("most", unit.Length(most), unit.FootMetre))
	}
	if l := span.Of(e); l > britishMost {
		s.Warn(calc.Care, source.BritishBays, "The British standard for outdoor floors would not have {span} either: it has joints at 3 to 5 m.", span.Is("span", l))
	}
	if α := expansion.Of(e); α < concrete {
		s.Warn(calc.Care, source.ConcreteExpansion, "{expansion} is less than concrete moves, {concrete}. Pavers bonded to a slab go where it goes: work it with the larger figure as well.",
			expansion.Is("expansion", α), words.Both("concrete", concrete, expands))
	}
	if p.width > broad {
		s.Warn(calc.Care, source.SealantDepth.At("joints of 1 to 2 in, as far as the sealant does not sag"), "{width} is a broad joint. Above {broad} a sealant must be one that does not sag before it cures; nearer joints are narrower.",
			words.Is("width", p.width, unit.InchMM), words.Both("broad", unit.Length(broad), unit.InchMM))
	}
	if w := structural.Of(e); w > 0 {
		s.Warn(calc.Care, source.MovementMethod, "The joint in the slab is carried up through bed and paving in its own line, and is never narrower there than {below}.", structural.Is("below", w))
	} else {
		s.Warn(calc.Note, source.MovementMethod, "Every joint in the slab is carried up through bed and paving in its own line, never narrower than it is below. Enter its width here.")
	}
	s.Warn(calc.Care, source.MovementMethod, "Joints of this width stand also wherever the paving meets walls, kerbs, columns, pipes, steps, other floors or another backing. Drain strainers need none.")
	s.Warn(calc.Care, source.PlaneChange, "Outdoors a joint stands at every change of plane, at inside and outside corners alike.")
	s.Warn(calc.Care, source.MovementMethod, "The range is that of the paver's surface, which sun drives far above the air and a clear night below it. Measure it on the hottest and the coldest day that you can.")
	s.Warn(calc.Care, source.Silica, "Sawing pavers or joints raises dust that may hold silica. Saw wet or draw the dust off, and wear the respirator that your exposure plan calls for.")
	s.Warn(calc.Note, source.MovementDesigner, "Where the joints stand and how wide they are is for the designer of the job to say. Take this sum to them; local codes come first.")
	if p.centres > most {
		s.Warn(calc.Note, source.ByDefinition, "The pavers come to no more than {most}, but each movement joint is wider than the grout joint in whose place it stands, and its centres are {centres} apart. Where the job holds {most} to the centres, take one paver fewer.",
			words.Both("most", unit.Length(most), unit.FootMetre), words.Is("centres", p.centres, unit.FootMetre))
	}
	s.Warn(calc.Note, source.EdgeJoint, "At edges and changes of plane one reading of the handbook is content with {least}. The outdoor least of {outdoor} is the more careful one.",
		words.Both("least", unit.Length(edgeLeast), unit.InchMM), words.Both("outdoor", unit.Length(shortWidth), unit.InchMM))
	s.Warn(calc.Note, source.BritishBays, "In the United Kingdom joints in outdoor floors stand at 3 to 5 m, nearer where there is sun, dark colour or movement below.")
	s.Warn(calc.Note, source.PorcelainExpansion, "Porcelain itself moves less than concrete, about {porcelain}.", words.Both("porcelain", porcelain, expands))
	s.Warn(calc.Note, source.SealantClass, "The class on the cartridge is the share of the width that it takes either way: class 25 takes 25 %.")
}

// porcelain is how pavers move with heat. Source: source.PorcelainExpansion.
const porcelain = unit.Expansion(4 * 1.8e-6)
