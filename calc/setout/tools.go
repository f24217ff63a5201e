package setout

import (
	"math"
	"strings"

	"setbook/calc"
	"setbook/calc/paving"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// metric writes texts for fields: every digit, with its unit.
var metric = unit.Style{System: unit.Metric, Decimal: '.'}

// corner is one row of an outline.
func corner(x, y unit.Length) []float64 { return []float64{float64(x), float64(y)} }

// outlined is the texts of an outline with no holes.
func outlined(edged string, corners ...[]float64) calc.Texts {
	return calc.Texts{"outline": outline.WrittenTable(corners, metric), "edges": edged, "holes": ""}
}

const side, sideMost = unit.Foot, 100 * unit.Metre

var (
	boxLong  = calc.Ask("long", "", "Length, along the first edge", far, side, sideMost, "20 ft")
	boxWide  = calc.Ask("wide", "", "Width", far, side, sideMost, "14 ft")
	boxStand = calc.Choose("stands", "The first edge", "building", calc.Option{Name: "building", Label: "Building"}, calc.Option{Name: "wall", Label: "Wall or kerb"}, calc.Option{Name: "open", Label: "Open"})

	rectangle = &calc.Tool{Key: "rectangle", At: "outline", Title: "A rectangle", Inputs: []*calc.Input{boxLong.Input, boxWide.Input, boxStand.Input},
		Write: func(_, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
			l, w := boxLong.Of(own), boxWide.Of(own)
			return outlined(boxStand.Of(own)+",open,open,open", corner(0, 0), corner(l, 0), corner(l, w), corner(0, w)),
				words.Say("{long} by {wide}. Both diagonals are {diagonal}.", words.Is("long", l, far), words.Is("wide", w, far),
					words.Is("diagonal", unit.Length(math.Hypot(float64(l), float64(w))), far)), nil
		}}

	ellLong = calc.Ask("long", "", "Length over all", far, side, sideMost, "24 ft")
	ellWide = calc.Ask("wide", "", "Width over all", far, side, sideMost, "18 ft")
	ellX    = calc.Ask("out_x", "", "Taken out of the far corner, along the length", far, unit.Inch, sideMost, "10 ft")
	ellY    = calc.Ask("out_y", "", "Taken out of it, along the width", far, unit.Inch, sideMost, "8 ft")

	ell = &calc.Tool{Key: "ell", At: "outline", Title: "An L", Inputs: []*calc.Input{ellLong.Input, ellWide.Input, ellX.Input, ellY.Input},
		Write: func(_, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
			l, w, x, y := ellLong.Of(own), ellWide.Of(own), ellX.Of(own), ellY.Of(own)
			if x >= l || y >= w {
				return nil, words.Line{}, []calc.Problem{{Key: "out_x", Says: words.Say("What is taken out of the corner is less than the whole both ways.")}}
			}
			return outlined("open", corner(0, 0), corner(l, 0), corner(l, w-y), corner(l-x, w-y), corner(l-x, w), corner(0, w)),
				words.Say("An L of {area}.", words.Is("area", l.Times(w)-x.Times(y), unit.FootArea)), nil
		}}

	roundX    = calc.Ask("along_x", "", "Along the one wall", far, side, sideMost, "18 ft")
	roundY    = calc.Ask("along_y", "", "Along the other wall", far, side, sideMost, "12 ft")
	roundWide = calc.Ask("wide", "", "Width of the paving", far, side, sideMost/4, "8 ft")

	round = &calc.Tool{Key: "round", At: "outline", Title: "Around a house corner", Inputs: []*calc.Input{roundX.Input, roundY.Input, roundWide.Input},
		Write: func(_, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
			x, y, w := roundX.Of(own), roundY.Of(own), roundWide.Of(own)
			return outlined("open,open,building,building,open,open",
					corner(-w, -w), corner(x, -w), corner(x, 0), corner(0, 0), corner(0, y), corner(-w, y)),
				words.Say("The corner of the house is at nought, the paving {wide} wide on both sides of it.", words.Is("wide", w, far)), nil
		}}
)

var (
	legSide  = calc.Ask("side", "", "Side", far, unit.Inch, sideMost, "20 ft")
	legAngle = calc.Ask("angle", "", "Inside angle at its end", unit.Arc, unit.Angle(1), 359, "90 deg")
	legs     = calc.Tabulate("legs", "Sides and angles, in order", "20 ft, 90 deg; 14 ft, 90 deg; 20 ft, 90 deg; 14 ft, 90 deg", legSide.Input, legAngle.Input).
			Helped("Every side back to the first corner, with the angle inside the paving at its end; over 180° where the edge turns in.")

	traverse = &calc.Tool{Key: "traverse", At: "outline", Title: "By sides and angles", Inputs: []*calc.Input{legs.Input},
		Write: func(_, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) { return walk(legs.Of(own)) }}
)

// closes is the most that a traverse may miss its first corner by, as a share of the way round: beyond it a side or an
// angle is misread. Our own limit.
const closes = 2 * unit.Percent

// walk goes round by sides and inside angles, against the clock. What it misses the first corner by is shared among the
// corners in the measure of the way to each: the compass rule of surveyors, common practice.
func walk(rows [][]float64) (calc.Texts, words.Line, []calc.Problem) {
	if len(rows) < 3 {
		return nil, words.Line{}, []calc.Problem{{Key: "legs", Says: words.Say("Sides and angles: a place has at least three sides.")}}
	}
	sides, angles := make([]unit.Length, len(rows)), make([]unit.Angle, len(rows))
	ways := make([]unit.Length, len(rows)) // to each corner
	var way unit.Length
	var inside unit.Angle
	for i, row := range rows {
		sides[i], angles[i], ways[i] = unit.Length(row[0]), unit.Angle(row[1]), way
		way, inside = way+sides[i], inside+angles[i]
	}
	places, gap := paving.Walk(sides, angles)
	miss := unit.Length(math.Hypot(gap.X, gap.Y))
	corners := make([][]float64, len(rows))
	for i, q := range places {
		share := float64(ways[i] / way)
		corners[i] = []float64{q.X - gap.X*share, q.Y - gap.Y*share}
	}
	said := words.Say("The sides miss the first corner by {miss}, and the inside angles make {angles} where {want} are due.",
		words.Is("miss", miss, size), words.Is("angles", inside, unit.Arc), words.Is("want", unit.Angle(180*(len(rows)-2)), unit.Arc))
	if float64(miss) > float64(closes)*float64(way) {
		return nil, words.Line{}, []calc.Problem{{Key: "legs", Says: words.Say("{said} Measure again: a side or an angle is misread.", words.Also("said", said))}}
	}
	return calc.Texts{"outline": outline.WrittenTable(micro(corners), metric)},
		words.Say("{said} What it misses is shared among the corners. Check the diagonals in the list.", words.Also("said", said)), nil
}

// micro rounds corners to whole micrometres, so that right angles stay right.
func micro(corners [][]float64) [][]float64 {
	for _, c := range corners {
		c[0], c[1] = math.Round(c[0])+0, math.Round(c[1])+0
	}
	return corners
}

var (
	edgeNumber = calc.Ask("edge", "", "Edge", unit.Whole1, unit.Count(1), 1000, "1")
	lineUp     = &calc.Tool{Key: "line_up", At: "turn", Title: "In line with an edge", Inputs: []*calc.Input{edgeNumber.Input},
		Write: func(now, own calc.Entry) (calc.Texts, words.Line, []calc.Problem) {
			o, n := paving.Outline{Corners: points(outline.Of(now))}, int(edgeNumber.Of(own))
			if n > len(o.Corners) {
				return nil, words.Line{}, []calc.Problem{{Key: "edge", Says: words.Say("Edge: read {n}. The paving has {edges}.",
					words.Is("n", unit.Count(n), unit.Whole1), words.Is("edges", unit.Count(len(o.Corners)), unit.Whole1))}}
			}
			return turnedBy(o.Along(n - 1))
		}}
	quarter = &calc.Tool{Key: "quarter", At: "turn", Title: "A quarter further",
		Write: func(now, _ calc.Entry) (calc.Texts, words.Line, []calc.Problem) { return turnedBy(turn.Of(now) + 90) }}
)

// turnedBy writes a turn; half a turn more is the same pattern.
func turnedBy(a unit.Angle) (calc.Texts, words.Line, []calc.Problem) {
	for a > 90 {
		a -= 180
	}
	for a <= -90 {
		a += 180
	}
	return calc.Texts{"turn": turn.Written(float64(a), metric)}, words.Say("Turned by {turn}.", turn.Is("turn", a)), nil
}

// nudged is how far one press moves the pavers.
const nudged = unit.Inch / 4

func nudge(key string, title words.Msg, x, y unit.Length) *calc.Tool {
	return &calc.Tool{Key: key, At: "start", Title: title, Moves: calc.Point{X: x, Y: y}}
}

func tools() []*calc.Tool {
	return []*calc.Tool{rectangle, ell, round, traverse, lineUp, quarter,
		nudge("left", "Left", -nudged, 0), nudge("right", "Right", nudged, 0), nudge("up", "Up", 0, nudged), nudge("down", "Down", 0, -nudged)}
}

// edgeNames gives each edge its kind: one name stands for all.
func edgeNames(e calc.Entry, n int) []string {
	names := edges.Of(e)
	if len(names) == 1 {
		names = strings.Split(strings.TrimSuffix(strings.Repeat(names[0]+",", n), ","), ",")
	}
	return names
}
