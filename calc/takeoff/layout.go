package takeoff

import (
	"math"
	"strconv"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// layout is a plan among the entries: it counts the joints that take grout, where a sheet of grout takes every joint of an area.
type layout struct {
	from entry
	area float64 // of its outline, in base units
	run  float64 // of joint that takes grout
	used bool    // by a sheet of grout
}

// The keys of other calculators that are read here, as the contract has them.
const (
	groutRun = "grout_run" // of a plan
	allRun   = "run"       // of a sheet of grout
)

// How near a plan and a sheet of grout must come to be of one place: our own convention.
const (
	sameArea  = 0.05 // of the area
	sameJoint = float64(unit.Millimetre) / 10
	samePaver = float64(unit.Millimetre)
)

// plan keeps a sheet's layout, where it has one.
func (o *order) plan(from entry, s *calc.Sheet) {
	run, ok := s.Answer(groutRun)
	if !ok {
		return
	}
	twice := 0.0
	corners := from.read.Reading("outline").Rows
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		twice += a[0]*b[1] - b[0]*a[1]
	}
	o.layouts = append(o.layouts, &layout{from: from, area: math.Abs(twice) / 2, run: run.Is.Base})
}

// pavesAs reports whether a plan has the pavers and the joint of a sheet of grout.
func (l *layout) pavesAs(grout entry) bool {
	near := func(a, b string, within float64) bool {
		return math.Abs(l.from.read.Reading(a).Base-grout.read.Reading(b).Base) <= within
	}
	straight := near("paver_l", "paver_l", samePaver) && near("paver_w", "paver_w", samePaver)
	turned := near("paver_l", "paver_w", samePaver) && near("paver_w", "paver_l", samePaver)
	return near("joint", "joint", sameJoint) && (straight || turned)
}

// plansOf finds the plans that a sheet of grout is of: all with its pavers and its joint that no other sheet has taken, or else one of them, where
// they come to its area.
func (o *order) plansOf(grout entry) []*layout {
	var alike []*layout
	sum := 0.0
	for _, l := range o.layouts {
		if !l.used && l.pavesAs(grout) {
			alike, sum = append(alike, l), sum+l.area
		}
	}
	area := grout.read.Reading("area").Base
	comes := func(to float64) bool { return math.Abs(to-area) <= sameArea*area }
	if len(alike) > 0 && comes(sum) {
		return alike
	}
	for _, l := range alike {
		if comes(l.area) {
			return []*layout{l}
		}
	}
	return nil
}

// byPlan adds a sheet of grout by the joints of its plans, and reports whether it has any. What grout takes is in proportion to the length of joint.
func (o *order) byPlan(from entry, s *calc.Sheet, a *calc.Answer, rests words.Line) bool {
	all, ok := s.Answer(allRun)
	plans := o.plansOf(from)
	if !ok || len(plans) == 0 {
		return false
	}
	run := 0.0
	for _, l := range plans {
		l.used = true
		run += l.run
		rests = words.Say("{before}, {next}", words.Also("before", rests), words.Also("next", l.from.called()))
	}
	was, by := *a.Supply, run/all.Is.Base
	now := was
	now.Likely, now.Low, now.High = was.Likely*by, was.Low*by, was.High*by
	p := o.add(&now, "", a.Is, from.of.ID, rests)
	n := strconv.Itoa(o.parts)
	half := calc.Sym("h_"+n, unit.Number(max(0, was.High-was.Likely)), unit.Bare)
	p.given = []calc.Term{calc.Sym("g_"+n, unit.Number(was.Likely), unit.Bare), half,
		calc.Sym("J_"+n, unit.Length(run), unit.FootMetre), calc.Sym("K_"+n, unit.Length(all.Is.Base), unit.FootMetre)}
	p.says = "Grout: the sheet's figure by the joints that the plan leaves for grout, over every joint of the area, which the sheet counts."
	p.likelyExpr, p.spreadExpr = "g_"+n+" * J_"+n+" / K_"+n, "h_"+n+" * J_"+n+" / K_"+n
	return true
}
