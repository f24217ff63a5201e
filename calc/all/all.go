// Package all lists every calculator, in the order of the work.
package all

import (
	"slices"

	"setbook/calc"
	"setbook/calc/air"
	"setbook/calc/batch"
	"setbook/calc/bed"
	"setbook/calc/chill"
	"setbook/calc/contact"
	"setbook/calc/cracks"
	"setbook/calc/dew"
	"setbook/calc/drying"
	"setbook/calc/film"
	"setbook/calc/filmed"
	"setbook/calc/gohold"
	"setbook/calc/grout"
	"setbook/calc/heat"
	"setbook/calc/kit"
	"setbook/calc/lift"
	"setbook/calc/mixtemp"
	"setbook/calc/movement"
	"setbook/calc/pace"
	"setbook/calc/paddle"
	"setbook/calc/ripen"
	"setbook/calc/sealant"
	"setbook/calc/slope"
	"setbook/calc/sound"
	"setbook/calc/sun"
	"setbook/calc/wait"
)

// questions are the calculators that every program has, in the order of the work.
var questions = []*calc.Calculator{
	&sound.Calculator,
	&cracks.Calculator,
	&slope.Calculator,
	&movement.Calculator,
	&batch.Calculator,
	&kit.Calculator,
	&mixtemp.Calculator,
	&paddle.Calculator,
	&filmed.Calculator,
	&air.Calculator,
	&film.Calculator,
	&pace.Calculator,
	&bed.Calculator,
	&contact.Calculator,
	&grout.Calculator,
	&sealant.Calculator,
	&wait.Calculator,
	&ripen.Calculator,
	&gohold.Calculator,
	&dew.Calculator,
	&drying.Calculator,
	&heat.Calculator,
	&chill.Calculator,
	&sun.Calculator,
	&lift.Calculator,
}

// calculators are these and, in the whole program, the large ones (large.go). Each stands in its stage, the large ones after the others.
var calculators = inOrder(questions, large)

// inOrder puts calculators in the order of the work and leaves those of a stage as they stand.
func inOrder(lists ...[]*calc.Calculator) (all []*calc.Calculator) {
	for stage := range calc.Stages {
		for _, list := range lists {
			for _, c := range list {
				if c.Stage == calc.Stage(stage) {
					all = append(all, c)
				}
			}
		}
	}
	return all
}

// Calculators lists every calculator, in the order of the work.
func Calculators() []*calc.Calculator { return slices.Clone(calculators) }

// ByID finds a calculator.
func ByID(id string) (*calc.Calculator, bool) {
	for _, c := range calculators {
		if c.ID == id {
			return c, true
		}
	}
	return nil, false
}
