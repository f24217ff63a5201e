package jobpage

import (
	"slices"
	"strings"

	"setbook/calc"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// daysMix is what was mixed on one day of the phone's calendar.
type daysMix struct {
	first        countdown.Instant
	mixes        int
	mass         unit.Mass
	bags         unit.Number
	air, surface spread
	lots         []string
}

// spread is the least and the most of what was measured.
type spread struct {
	low, high float64
	any       bool
}

func (s *spread) take(in *calc.Input, text string) {
	base, ok := in.Value(text, calc.Habit{})
	switch {
	case text == "" || !ok:
	case !s.any:
		s.low, s.high, s.any = base, base, true
	default:
		s.low, s.high = min(s.low, base), max(s.high, base)
	}
}

// said prints a spread, or nothing where nothing was measured.
func (s *spread) said(v *View, in *calc.Input) string {
	figure := func(base float64) string {
		return v.Reader.Style.Print(unit.Figure{Kind: in.Kind, Base: base, As: in.As})
	}
	switch {
	case !s.any:
		return ""
	case s.low == s.high:
		return figure(s.low)
	}
	return v.Reader.Line(words.Say("{low} to {high}", words.Text("low", figure(s.low)), words.Text("high", figure(s.high))))
}

// days sums up the log of mixes by the day on the phone's calendar.
func (v *View) days() (days []*daysMix) {
	byDate := map[unit.Date]*daysMix{}
	for i := range v.Job.Mixes {
		m := &v.Job.Mixes[i]
		date := m.When.At(v.West(m.When)).Date
		d := byDate[date]
		if d == nil {
			d = &daysMix{first: m.When}
			byDate[date] = d
			days = append(days, d)
		}
		d.mixes++
		if mass, ok := m.Mass(); ok {
			d.mass += mass
		}
		if count, ok := m.Bags(); ok {
			d.bags += count
		}
		d.air.take(job.Air.Input, m.Air)
		d.surface.take(job.Surface.Input, m.Surface)
		if m.Lot != "" && !slices.Contains(d.lots, m.Lot) {
			d.lots = append(d.lots, m.Lot)
		}
	}
	return days
}

// powder is what was weighed on a day and what was counted in bags: a bag's mass is not in the log.
func (d *daysMix) powder(v *View) string {
	var mass, bags string
	if d.mass > 0 {
		mass = v.Reader.Style.Print(unit.Fig(d.mass, unit.PoundKg))
	}
	if d.bags > 0 {
		bags = v.bags(d.bags)
	}
	return join(mass, bags)
}

// lotted is one product of the log with its lots.
type lotted struct {
	product string
	lots    []string
}

// logged is what the log of mixes names and the materials of the hand-over do not.
func (v *View) logged() (list []lotted) {
	for _, m := range v.Job.Mixes {
		if m.Lot == "" || slices.ContainsFunc(v.Job.HandOver.Materials, func(have job.Material) bool { return holds(have.Lots, m.Lot) }) {
			continue
		}
		i := slices.IndexFunc(list, func(l lotted) bool { return l.product == m.Product })
		if i < 0 {
			i = len(list)
			list = append(list, lotted{product: m.Product})
		}
		if !slices.Contains(list[i].lots, m.Lot) {
			list[i].lots = append(list[i].lots, m.Lot)
		}
	}
	return list
}

// holds reports whether a list of lots, as somebody typed it, has a lot in it.
func holds(lots, lot string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(lots, func(r rune) bool { return r == ',' || r == ';' || r == ' ' }), func(l string) bool { return l == lot })
}
