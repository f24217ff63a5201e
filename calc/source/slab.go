package source

// The slab: flatness, plane, water, fill, cracks and soundness.
var (
	// SubstrateFlatness gives how flat a slab must be under tile with an edge of 15 in or more.
	SubstrateFlatness = &Source{Title: "ANSI A108.02, as quoted by CTEF in Floor Covering Installer", Edition: Undated, Place: "an edge of 15 in or longer: 1/8 in in 10 ft and 1/16 in in 2 ft; thin-bed mortar is not for flattening",
		URL: "https://www.fcimag.com/articles/91628-ctef-tile-tip-installing-large-thin-tiles-is-the-surface-flat-enough", Basis: Published}
	// SmallTileFlatness gives how flat it must be where every edge is shorter.
	SmallTileFlatness = &Source{Title: "TileLetter, Large format tile, know your numbers", Edition: Undated, Place: "all edges under 15 in: 1/4 in in 10 ft",
		URL: "https://www.tileletter.com/large-format-tile-know-your-numbers-for-installation-success/", Basis: Published}
	// LargeFormat is a newer view of what a large tile is.
	LargeFormat = &Source{Title: "CTEF tile tip in Floor Trends", Edition: "December 2024", Place: "ANSI A108.T: a large tile has a side over 23 in",
		URL: "https://digitaledition.floortrendsmag.com/december-2024/tile-tip", Basis: Published}
	// GermanFlatness gives the most that a surface may stray under a straightedge, by its length.
	GermanFlatness = &Source{Title: "DIN 18202, table 3, as reported by Face Consultants", Edition: Undated, Place: "lines 1 to 4 at 0.1, 1, 4, 10 and 15 m, read to the millimetre between them",
		URL: "https://face-consultants.com/din-18202/", Basis: Published}
	// BritishFlatness gives three classes under a straightedge of 2 m.
	BritishFlatness = &Source{Title: "BS 8204, as reported by The Concrete Society", Edition: Undated, Place: "SR1, SR2, SR3: 3, 5 and 10 mm under a 2 m straightedge resting on the surface",
		URL: "http://www.concrete.org.uk/fingertips-print.asp?docid=1009", Basis: Published}
	// FNumbers defines readings, differences and curvatures of a floor survey. The constant of the F number is from memory.
	FNumbers = &Source{Title: "ASTM E1155, definitions 3.1 and 3.2", Edition: "2014", Place: "readings every 12 in (300 mm); three standard deviations and the mean of the curvatures. The 4.57 in over them is from memory",
		URL: "https://www.scribd.com/document/601707230/E1155-14", Basis: Published}
	// FLevelness says that the levelness number is not for slabs laid to falls.
	FLevelness = &Source{Title: "Concrete Construction, Birdbaths", Edition: Undated, Place: "FL does not apply to a slab laid to falls; FF may be used there",
		URL: "https://www.concreteconstruction.net/how-to/birdbaths_o", Basis: Published}
	// LeastSquares is the normal equations of a plane.
	LeastSquares = &Source{Title: "Mississippi College, Probability and Statistics (J. Travis), least squares for a plane", Edition: Undated, Place: "A = (XᵀX)⁻¹ XᵀZ",
		URL: "https://math.mc.edu/travis/mathbook/Probability/knowl/p-349.html", Basis: Published}
	// PriorityFlood fills hollows inward from the edges with a queue by height.
	PriorityFlood = &Source{Title: "Priority-Flood, an optimal depression-filling algorithm for digital elevation models", Edition: "2014", Place: "abstract",
		URL: "https://discovery.researcher.life/topic/determination-of-flow-directions/993297?page=2", Basis: Published}
	// GridMethod is the volume between a grid of levels and a target: each cell's area by the mean of its corners.
	GridMethod = &Source{Title: "Land development engineering, grid (borrow-pit) method", Edition: Undated, Place: "V = A ÷ 4 × (Σh₁ + 2Σh₂ + 3Σh₃ + 4Σh₄); fill and cut each from its own corners",
		URL: "http://siera104.com/Land_Development_Engineering/gridmethod.html", Basis: Published}
	// FourPoint weighs the corners of a cell that is partly above and partly below its target.
	FourPoint = &Source{Title: "Four-point method of land grading", Edition: Undated, Place: "A ÷ 4 × H² ÷ (H_cut + H_fill)", Basis: Memory}

	// CrackMembrane says what a crack-isolation membrane is for: movement in its own plane.
	CrackMembrane = &Source{Title: "ANSI A118.12, scope quoted in Floor Trends, What are crack isolation membranes", Edition: Undated, Place: "horizontal movement in the plane only; up and down needs an engineer",
		URL: "https://floortrendsmag.com/articles/110994-what-are-crack-isolation-membranes-and-how-are-they-used", Basis: Published}
	// CrackOffset says that sides of a crack at two heights mean stop.
	CrackOffset = &Source{Title: "Tile Magazine, Understanding crack isolation membranes", Edition: Undated, Place: "no membrane where the sides of a crack stand at two heights",
		URL: "https://www.tile-magazine.com/articles/87972-understanding-crack-isolation-membranes", Basis: Published}
	// CrackStrip gives the width of a strip of membrane as three tiles.
	CrackStrip = &Source{Title: "TCNA method F125 partial, as read by CTaSC", Edition: Undated, Place: "about three times the tile's width; soft joints either side of the tile that bridges the crack",
		URL: "https://ctasc.com/tilewisecartoon/crack-suppress/", Basis: Published}
	// CrackStripNarrow is another reading of the same method, by one who was not sure of it.
	CrackStripNarrow = &Source{Title: "An architects' forum (4specs)", Edition: Undated, Place: "one and a half tiles, at least 12 in; the writer was unsure",
		URL: "http://discus.4specs.com/discus/messages/7869/5945.html", Basis: Published}
	// CrackWidths gives guide widths of cracks in reinforced concrete by what it stands in.
	CrackWidths = &Source{Title: "ACI 224R, table 4.1, in the textbook Design of Reinforced Concrete", Edition: Undated, Place: "table 6.3: dry air 0.016 in, moist air or soil 0.012, de-icing salt 0.007, sea water 0.006, water-retaining 0.004",
		URL: "http://what-when-how.com/Tutorial/topic-1556pk5dri/Design-of-Reinforced-Concrete-183.html", Basis: Published}
	// CrackGuide says that those widths are no limits of acceptance.
	CrackGuide = &Source{Title: "Concrete Construction, Crack widths, what's tolerable", Edition: Undated, Place: "guides, not limits of acceptance",
		URL: "http://www.concreteconstruction.net/how-to/repair/crack-widths-whats-tolerable_o", Basis: Published}
	// CrackLimits is how far a membrane lets the sides of a crack move.
	CrackLimits = &Source{Title: "ANSI A118.12, high and standard performance", Edition: Undated, Place: "1/8 in and 1/16 in", Basis: Memory}

	// SheetTest is the plastic-sheet test of a slab for moisture.
	SheetTest = &Source{Title: "ASTM D4263", Edition: "1983 (2012)", Place: "a clear sheet about 4 mil thick taped down, out of the sun; a dry sheet does not prove a dry slab",
		URL: "https://123doc.top/document/13356420-astm-d-4263-83-2012.htm", Basis: Published}
	// SheetHours is how long the sheet stays, and how large it is.
	SheetHours = &Source{Title: "ASTM D4263", Edition: Undated, Place: "at least 16 hours; 18 in square", Basis: Memory}
)
