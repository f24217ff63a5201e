package source

// Cutting pavers, and nesting pieces into sheets.
var (
	// AreaBound is the least number of sheets that hold an area.
	AreaBound = &Source{Title: "A general framework for bounds for higher-dimensional orthogonal packing problems", Edition: "2004", Place: "bounds of volume",
		URL: "https://arxiv.org/abs/cs/0402044", Basis: Published}
	// FeasibleBound bounds the sheets from below by weighing each side of a piece by a dual feasible function.
	FeasibleBound = AreaBound.At("dual feasible functions: weights of pieces over the weight of the sheet")
	// WetSaw is the table of tools and what keeps their dust down.
	WetSaw = Silica.At("Table 1: saws with water fed to the blade")
)
