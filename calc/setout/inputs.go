package setout

import (
	"setbook/calc"
	"setbook/calc/unit"
)

var (
	// far prints places and sides so that they can be measured out: to a sixteenth of an inch, or to the millimetre and better.
	far = &unit.Pair{US: unit.Form{Unit: unit.Feet, Fraction: 16}, Metric: unit.Form{Unit: unit.Metres, Digits: 5}}
	// size prints cuts as they are marked on a paver.
	size = &unit.Pair{US: unit.Form{Unit: unit.Inches, Fraction: 16}, Metric: unit.Form{Unit: unit.Millimetres}}
	// fine and long print what is reckoned with in full.
	fine = &unit.Pair{US: unit.Form{Unit: unit.Inches, Digits: 9}, Metric: unit.Form{Unit: unit.Millimetres, Digits: 9}}
	long = &unit.Pair{US: unit.Form{Unit: unit.Feet, Digits: 9}, Metric: unit.Form{Unit: unit.Metres, Digits: 9}}
	wide = &unit.Pair{US: unit.Form{Unit: unit.SquareFeet, Digits: 9}, Metric: unit.Form{Unit: unit.SquareMetres, Digits: 9}}
)

// reach is how far a corner may lie from nought.
const reach = 30 * unit.Metre

var (
	cornerX = calc.Ask("x", "", "Across", far, -reach, reach, "20 ft")
	cornerY = calc.Ask("y", "", "Up", far, -reach, reach, "14 ft")

	outline = calc.Tabulate("outline", "Corners of the paving", "0 ft, 0 ft; 20 ft, 0 ft; 20 ft, 14 ft; 0 ft, 14 ft", cornerX.Input, cornerY.Input).
		Helped("One corner a row, in order round the edge, from any point and any straight line. The buttons below write them for you.")
	holes = calc.Tabulate("holes", "Posts, drains and other holes", "", cornerX.Input, cornerY.Input).Grouped().MayBeEmpty().
		Helped("Corners as above. Two corners alone are those of a box. An empty row parts one hole from the next.")
	edges = calc.ChooseEach("edges", "Edges", "open", calc.Option{Name: "open", Label: "Open"}, calc.Option{Name: "wall", Label: "Wall or kerb"}, calc.Option{Name: "building", Label: "Building"}).
		Helped("One for all, or one for each edge: the first runs from the first corner to the second. A wall and a building get a soft joint; work starts at the building.")
	structural = calc.Tabulate("structural", "Joints in the slab below", "", cornerX.Input, cornerY.Input, cornerX.Input, cornerY.Input).MayBeEmpty().
			Helped("Both ends of each: across, up, across, up. A soft joint is carried through over every one.")

	paverL = calc.Ask("paver_l", "l", "Paver, length", size, 100*unit.Millimetre, 1.8*unit.Metre, "600 mm").Usually("600 mm", "900 mm", "1200 mm").
		Helped("Measure a few: the size as made, not the size as named. It lies across the plan; turn it below.")
	paverW  = calc.Ask("paver_w", "b", "Paver, width", size, 100*unit.Millimetre, 1.8*unit.Metre, "600 mm").Usually("300 mm", "600 mm", "900 mm")
	joint   = calc.Ask("joint", "j", "Grout joint", size, unit.Millimetre, 20*unit.Millimetre, "3/16 in").Usually("1/8 in", "3/16 in", "1/4 in", "5 mm")
	pattern = calc.Choose("pattern", "Pattern", "stack", calc.Option{Name: "stack", Label: "Stacked"}, calc.Option{Name: "third", Label: "Offset"}).
		Helped("Stacked has every joint in line. Offset moves each course along, as far as is said below.")
	offset = calc.Ask("offset", "o", "Offset of each course", unit.Share, unit.Ratio(0.05), 0.5, "33 %").Usually("25 %", "33 %").
		Helped("As a share of the paver’s length and joint; where the pattern is offset. 33 % is taken as a third.")
	turn = calc.Ask("turn", "θ", "Turned by", unit.Arc, unit.Angle(-180), 180, "0 deg").Usually("0 deg", "45 deg", "90 deg").
		Helped("Against the clock, from lines that run straight across the plan.")
	most = calc.Ask("movement_max", "ℓ", "Movement joints at most so far apart", far, 6*unit.Foot, 12*unit.Foot, "12 ft").Usually("8 ft", "10 ft", "12 ft").
		Helped("Both ways. They stand where a grout joint would.")
	soft = calc.Ask("soft", "w", "Movement joint", size, 3*unit.Millimetre, 40*unit.Millimetre, "1/2 in").Usually("3/8 in", "1/2 in", "5/8 in").
		Helped("Its width, from Movement joints.")
	perimeter = calc.Ask("perimeter", "w_p", "Joint at walls and holes", size, 0, 40*unit.Millimetre, "3/8 in").Usually("1/4 in", "3/8 in", "1/2 in")
	kerf      = calc.Ask("kerf", "k", "Saw cut", size, 0, 10*unit.Millimetre, "1/8 in").Usually("1/16 in", "1/8 in", "3 mm").
			Helped("What the blade takes away.")
	start  = calc.Choose("start", "Where to start", "search", calc.Option{Name: "search", Label: "Find the best"}, calc.Option{Name: "fixed", Label: "As given below"})
	startX = calc.Ask("start_x", "x_0", "A paver’s corner, across", far, -3*reach, 3*reach, "0 ft").
		Helped("Where the start is given. A drag of the plan, a nudge or “Use this” fills it in.")
	startY = calc.Ask("start_y", "y_0", "A paver’s corner, up", far, -3*reach, 3*reach, "0 ft")
	spares = calc.Ask("spares", "s", "Spares", unit.Share, unit.Ratio(0), 0.3, "5 %").Usually("3 %", "5 %", "10 %").
		Helped("For breakage, faults and repairs to come: a later batch may not match.")
	mix = calc.Ask("mix", "A_m", "Area that a mix covers", unit.FootArea, unit.SquareFoot, 1000*unit.SquareFoot, "20 ft2").
		Helped("From How far to comb, how much to mix.")
)
