package source

// Mortar, notches, mixing and contact.
var (
	// NotchGeometry says in words that a notch's section and the angle it is held at set the quantity. The sine is geometry.
	NotchGeometry = &Source{Title: "TKB-Merkblatt 6, notched blades (German adhesives association, summary)", Edition: "2013", Place: "quantity set by notch section and holding angle",
		URL: "https://lifepr.de/pressemitteilung/industrieverband-klebstoffe-ev/tkb-merkblatt-6-spachtelzahnungen-fuer-bodenbelag-parkett-und-fliesenarbeiten/boxid/10692", Basis: Published}
	// TestTrowel gives the notches of the standard test trowel.
	TestTrowel = &Source{Title: "EN 1347", Edition: "2007", Place: "5.4, trowel of 6 mm × 6 mm notches at 12 mm centres",
		URL: "https://www.freestandardsdocuments.com/en-13472007-adhesives-for-tiles-determination-of-wetting-capability.html", Basis: Published}
	// HoldAngle is the angle at which a notched trowel is to be held.
	HoldAngle = &Source{Title: "ANSI A108.19 and A108.20, as quoted in Floor Trends", Edition: Undated, Place: "13.7, “at least a constant 45” degrees",
		URL: "https://floortrendsmag.com/articles/112792-how-to-angle-your-tile-trowel-its-all-in-the-wrist", Basis: Published}
	// BedLimits gives the least and the most thickness of the bed after embedding.
	BedLimits = &Source{Title: "CTEF, Which trowel notch is best (Floor Trends)", Edition: Undated, Place: "3/32 in least; 1/4 in most, 1/2 in for large and heavy tile mortar",
		URL: "https://www.floortrendsmag.com/articles/111379-ctef-tile-tip-which-trowel-notch-is-best", Basis: Published}
	// Contact is the share of the back that must be bedded.
	Contact = &Source{Title: "ANSI A108.5, as quoted in Floor Trends", Edition: Undated, Place: "2.2.3, 95 % outdoors with corners and edges supported",
		URL: "https://floortrendsmag.com/articles/112792-how-to-angle-your-tile-trowel-its-all-in-the-wrist", Basis: Published}
	// CoverageTable gives areas a bag by notch, from a general article with no data behind it.
	CoverageTable = &Source{Title: "EngineerFix, How much thinset do I need per square foot", Edition: Undated, Place: "table by notch",
		URL: "https://engineerfix.com/how-much-thinset-do-i-need-per-square-foot", Basis: Published}
	// Yield gives yield from mass and density.
	Yield = &Source{Title: "ASTM C138, in an ACI field-testing study guide", Edition: Undated, Place: "Y = M ÷ D",
		URL: "https://open-exam-prep.com/study-guides/aci-field-testing-grade-i/astm-c138-density-unit-weight-yield-and-gravimetric-air/gravimetric-air-and-theoretical-density", Basis: Published}
	// MixingSpeed is the trade's ceiling for the mixing paddle.
	MixingSpeed = &Source{Title: "CTEF, Improving at grout and mortar mixing (Floor Covering Installer)", Edition: Undated, Place: "about 300 rpm",
		URL: "https://www.fcimag.com/articles/93312-ctef-tile-tip-improving-at-grout-and-mortar-mixing", Basis: Published}
	// WetCement tells what wet cement does to skin.
	WetCement = &Source{Title: "OSHA 3351, Preventing Skin Problems from Working with Portland Cement", Edition: "2008", Basis: Published}
	// Silica is the rule on silica dust in construction.
	Silica = &Source{Title: "29 CFR 1926.1153, respirable crystalline silica", Edition: Undated, Place: "Table 1; as in 8 CCR 1532.3",
		URL: "https://www.dir.ca.gov/title8/1532_3.html", Basis: Published}
)
