package lift

import "setbook/calc/unit"

// table is the frequency multiplier: by lifts a minute, for up to 1, 2 and 8 hours, each with the hands
// under 30 in and from 30 in up. Source: source.LiftingTables.
var table = [...]struct {
	rate unit.PerMinute
	by   [3][2]unit.Number
}{
	{0.2, [3][2]unit.Number{{1, 1}, {.95, .95}, {.85, .85}}},
	{0.5, [3][2]unit.Number{{.97, .97}, {.92, .92}, {.81, .81}}},
	{1, [3][2]unit.Number{{.94, .94}, {.88, .88}, {.75, .75}}},
	{2, [3][2]unit.Number{{.91, .91}, {.84, .84}, {.65, .65}}},
	{3, [3][2]unit.Number{{.88, .88}, {.79, .79}, {.55, .55}}},
	{4, [3][2]unit.Number{{.84, .84}, {.72, .72}, {.45, .45}}},
	{5, [3][2]unit.Number{{.80, .80}, {.60, .60}, {.35, .35}}},
	{6, [3][2]unit.Number{{.75, .75}, {.50, .50}, {.27, .27}}},
	{7, [3][2]unit.Number{{.70, .70}, {.42, .42}, {.22, .22}}},
	{8, [3][2]unit.Number{{.60, .60}, {.35, .35}, {.18, .18}}},
	{9, [3][2]unit.Number{{.52, .52}, {.30, .30}, {0, .15}}},
	{10, [3][2]unit.Number{{.45, .45}, {.26, .26}, {0, .13}}},
	{11, [3][2]unit.Number{{.41, .41}, {0, .23}, {0, 0}}},
	{12, [3][2]unit.Number{{.37, .37}, {0, .21}, {0, 0}}},
	{13, [3][2]unit.Number{{0, .34}, {0, 0}, {0, 0}}},
	{14, [3][2]unit.Number{{0, .31}, {0, 0}, {0, 0}}},
	{15, [3][2]unit.Number{{0, .28}, {0, 0}, {0, 0}}},
}

// lookup is a multiplier found in the table: at a row of it, or between two.
type lookup struct {
	multiplier   unit.Number
	below, above unit.PerMinute // the rates of the two rows; the same at a row
	at, next     unit.Number    // what they say
}

// frequency looks the multiplier up. A rate under 0.2 counts as 0.2; between two rows it runs straight; past 15
// it is nought. Sources: source.LiftingTables.
func frequency(rate unit.PerMinute, worked unit.Span, height unit.Length) lookup {
	column, from := 2, 0
	switch {
	case worked <= unit.Hour:
		column = 0
	case worked <= 2*unit.Hour:
		column = 1
	}
	if height >= knuckle {
		from = 1
	}
	if rate > mostOften {
		return lookup{below: rate, above: rate}
	}
	rate = max(rate, seldom)
	last := 0
	for table[last].rate < rate {
		last++
	}
	if table[last].rate == rate {
		said := table[last].by[column][from]
		return lookup{said, rate, rate, said, said}
	}
	l := lookup{below: table[last-1].rate, above: table[last].rate, at: table[last-1].by[column][from], next: table[last].by[column][from]}
	l.multiplier = l.at + (l.next-l.at)*unit.Number((rate-l.below)/(l.above-l.below))
	return l
}

// Frequency is the multiplier for how often and how long. Source: source.LiftingTables, straight in between.
func Frequency(rate unit.PerMinute, worked unit.Span, height unit.Length) unit.Number {
	return frequency(rate, worked, height).multiplier
}
