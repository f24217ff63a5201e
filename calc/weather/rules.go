package weather

import (
	"setbook/calc/unit"
	"setbook/calc/words"
)

// Verdict is what one look at the weather says of going on.
type Verdict uint8

// The verdicts, the best first, so that the largest is the worst.
const (
	Go Verdict = iota
	WithCare
	Hold
)

// Says names the verdict.
func (v Verdict) Says() words.Msg {
	return [...]words.Msg{Go: "Go", WithCare: "Go with care", Hold: "Hold"}[v]
}

// slack keeps a value that stands exactly on a line from falling to either side of it by its last bits.
const slack = 1e-9

// The lines between the verdicts. Each is cited where it is told, beside the answer.
var (
	// DewLeast is the least that a surface stands over the dew point (source.OverDewPoint).
	DewLeast = unit.Difference(unit.FahrenheitDifference.Base(5))
	// DewSpare is twice that: near enough to measure again before each mix. Common practice.
	DewSpare = 2 * DewLeast

	// DryingCare is the line for mixes that hardly bleed (source.EvaporationLatex), DryingHold that for
	// concrete (source.EvaporationLine). DryingCracks is where cracks are almost certain (source.EvaporationBands).
	DryingCare   = unit.Evaporation(unit.PoundsPerSquareFootHour.Base(0.1))
	DryingHold   = unit.Evaporation(unit.PoundsPerSquareFootHour.Base(0.2))
	DryingCracks = unit.Evaporation(unit.KilogramsPerSquareMetreHour.Base(1.5))

	// The heat index bands of source.HeatBands. The source prints each edge in both bands; the stricter counts.
	HeatModerate = unit.Temperature(unit.Fahrenheit.Base(91))
	HeatHigh     = unit.Temperature(unit.Fahrenheit.Base(103))
	HeatExtreme  = unit.Temperature(unit.Fahrenheit.Base(115))
	// HeatSun is the most that full sun adds to the index (source.HeatInSun).
	HeatSun = unit.Difference(unit.FahrenheitDifference.Base(15))

	// ChillFrostbite is the wind chill from which bare skin freezes in 30 minutes (source.Frostbite).
	ChillFrostbite = unit.Temperature(unit.Fahrenheit.Base(-18))
	// Freezing is where water freezes, ColdAir where cold weather begins for cement (source.ColdWork).
	Freezing = unit.Temperature(0)
	ColdAir  = unit.Temperature(unit.Fahrenheit.Base(40))
)

// JudgeDew judges how far a surface stands over the dew point.
func JudgeDew(margin unit.Difference) Verdict {
	return under(float64(margin), float64(DewLeast), float64(DewSpare))
}

// JudgeDrying judges a rate of evaporation.
func JudgeDrying(rate unit.Evaporation) Verdict {
	return from(float64(rate), float64(DryingCare), float64(DryingHold))
}

// JudgeHeat judges a heat index in the shade.
func JudgeHeat(index unit.Temperature) Verdict {
	return from(float64(index), float64(HeatModerate), float64(HeatHigh))
}

// JudgeCold judges the wind chill for the crew, and the coldest air of the next day for the mortar.
func JudgeCold(coldest, chill unit.Temperature) Verdict {
	switch {
	case coldest <= Freezing+slack: // frostbite asks for far colder air than that
		return Hold
	case coldest < ColdAir-slack || chill <= Freezing+slack:
		return WithCare
	}
	return Go
}

// under is Hold under the first line and WithCare under the second; on a line counts as over it.
func under(x, hold, care float64) Verdict {
	switch {
	case x < hold-slack:
		return Hold
	case x < care-slack:
		return WithCare
	}
	return Go
}

// from is WithCare from the first line on and Hold from the second; on a line counts as over it. The slack
// is a share, because rates of evaporation are small numbers of kg/m²·s.
func from(x, care, hold float64) Verdict {
	switch {
	case x >= hold-slack*hold:
		return Hold
	case x >= care-slack*care:
		return WithCare
	}
	return Go
}
