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
	"setbook/calc/levels"
	"setbook/calc/lift"
	"setbook/calc/mixtemp"
	"setbook/calc/movement"
	"setbook/calc/nest"
	"setbook/calc/pace"
	"setbook/calc/paddle"
	"setbook/calc/ripen"
	"setbook/calc/sealant"
	"setbook/calc/setout"
	"setbook/calc/slope"
	"setbook/calc/sound"
	"setbook/calc/sun"
	"setbook/calc/takeoff"
	"setbook/calc/wait"
)

// questions are the calculators that stand alone, in the order of the work.
var questions = []*calc.Calculator{
	&sound.Calculator,
	&cracks.Calculator,
	&slope.Calculator,
	&levels.Calculator,
	&nest.Calculator,
	&movement.Calculator,
	&setout.Calculator,
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

// calculators has the one that orders from the others' entries in its place. They are handed to it, so that it knows none of them.
var calculators = placed(takeoff.Of(questions))

func placed(c *calc.Calculator) []*calc.Calculator {
	at := slices.IndexFunc(questions, func(q *calc.Calculator) bool { return q.Stage > c.Stage })
	return slices.Insert(slices.Clone(questions), at, c)
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
