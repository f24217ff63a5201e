package levels

import (
	"math"

	"setbook/calc/surface"
	"setbook/calc/unit"
)

const (
	least    = 2 * unit.Percent   // source.FallFromBuilding
	most     = unit.Ratio(1) / 48 // source.AccessibleSlope
	longEdge = 15 * unit.Inch     // source.SubstrateFlatness
	large    = 23 * unit.Inch     // source.LargeFormat
	hair     = 1e-9               // a trace of rounding, so that what is exactly at a limit is within it
)

// limits is how deep a gap may be under 10 ft and under 2 ft, by the longest edge of the pavers; nothing is published for 2 ft where it
// is short. Source: source.SubstrateFlatness, source.SmallTileFlatness.
func limits(edge unit.Length) (ten, two unit.Length, both bool) {
	if edge >= longEdge*(1-hair) {
		return unit.Inch / 8, unit.Inch / 16, true
	}
	return unit.Inch / 4, 0, false
}

// over reports whether a gap is past its limit.
func over(gap float64, limit unit.Length) bool { return gap > float64(limit)*(1+hair) }

// german is the printed columns of table 3, mm, at the distances of germanAt, m.
var (
	germanAt = [...]float64{0.1, 1, 4, 10, 15}
	german   = [...][5]float64{{10, 15, 20, 25, 30}, {5, 8, 12, 15, 20}, {2, 4, 10, 12, 15}, {1, 3, 9, 12, 15}}
)

// German is the most that a surface may stray under a straightedge by a line of DIN 18202, table 3: straight between its
// columns, to the nearest millimetre, half up; the last column beyond it and the first before it. Line 1 is the bare top of a slab,
// 2 one that is to take a bed, 3 one that is to take tile straight on it, 4 the same to a higher demand. Source: source.GermanFlatness;
// that it is straight between the columns is from memory.
func German(line int, long unit.Length) unit.Length {
	row, m := german[line-1], float64(long/unit.Metre)
	for i := 1; i < len(germanAt); i++ {
		if m < germanAt[i] {
			share := math.Max((m-germanAt[i-1])/(germanAt[i]-germanAt[i-1]), 0)
			return unit.Length(math.Floor(row[i-1]+share*(row[i]-row[i-1])+0.5+hair)) * unit.Millimetre
		}
	}
	return unit.Length(row[4]) * unit.Millimetre
}

// british is the classes of BS 8204 under 2 m. Source: source.BritishFlatness.
var british = [...]unit.Length{3 * unit.Millimetre, 5 * unit.Millimetre, 10 * unit.Millimetre}

// flatLine is one row or column that is long enough for an F number.
type flatLine struct {
	row    bool
	number int // from 1
	surface.Flatness
}

const (
	flatScale    = 4.57 * unit.Inch // over the spread and the mean of the curvatures: from memory
	flatReadings = 12               // 11 ft at 12 in: source.FNumbers, by the survey sheet that quotes it
	flatMost     = 1000             // a higher number is finer than any reading
)

// F is the flatness number of a line. It has no end for a straight one: 1,000 is the most that is told. Source: source.FNumbers.
func F(f surface.Flatness) unit.Number {
	return unit.Number(math.Min(float64(flatScale)/math.Max(f.Rough(), 1e-9), flatMost))
}

// Together is the flatness number of several lines: their curvatures weigh. Source: source.FNumbers, from memory.
func Together(lines []surface.Flatness) (f, bends, share unit.Number) {
	for _, l := range lines {
		bends += unit.Number(l.Bends)
		rough := unit.Number(l.Rough()) / unit.Number(flatScale)
		share += unit.Number(l.Bends) * rough * rough
	}
	if bends == 0 {
		return 0, 0, 0
	}
	return unit.Number(math.Min(math.Sqrt(float64(bends/share)), flatMost)), bends, share
}

// every is how many readings make up 12 in or 300 mm, 0 where no whole number does.
func every(step float64) int {
	for n := 1; n <= 12; n++ {
		if d := step * float64(n); math.Abs(d-float64(unit.Foot)) <= hair*d || math.Abs(d-300*float64(unit.Millimetre)) <= hair*d {
			return n
		}
	}
	return 0
}

// flatLines is the rows and columns with twelve readings or more, 12 in or 300 mm apart and none missing between them; the roughest first.
func flatLines(g *surface.Grid) (lines []flatLine) {
	take := func(row bool, number, start, step, n int, long float64) {
		skip := every(long)
		if skip == 0 {
			return
		}
		var run []float64
		add := func() {
			if len(run) >= flatReadings {
				lines = append(lines, flatLine{row, number + 1, surface.Bend(run)})
			}
			run = run[:0]
		}
		for k := 0; k < n; k += skip {
			z := g.Z[start+k*step]
			if z != z {
				add()
				continue
			}
			run = append(run, z)
		}
		add()
	}
	for row := range g.Deep {
		take(true, row, row*g.Wide, 1, g.Wide, g.StepX)
	}
	for col := range g.Wide {
		take(false, col, col, g.Wide, g.Deep, g.StepY)
	}
	for i := range lines { // sorted by hand: they are few, and the library's sort is 6.6 KB of program before compression
		for k := i; k > 0 && lines[k].Rough() > lines[k-1].Rough(); k-- {
			lines[k], lines[k-1] = lines[k-1], lines[k]
		}
	}
	return lines
}
