package source

// Waiting for mortar, grout and membrane, and cement maturity.
var (
	// ColdDoubling is the trade's rule that cement takes twice as long for each 18 °F of cold. The print has its directions the wrong way round.
	ColdDoubling = &Source{Title: "Tile Magazine, Climate-related tiling concerns", Edition: Undated, Place: "cure time doubles for each 18 °F below 70 °F, of air and of surface (printed the wrong way round)",
		URL: "https://www.tile-magazine.com/articles/84555-climate-related-tiling-concerns-too-hot-too-cold-too-wet-just-right", Basis: Published}
	// ColdDoublingSlower is the same rule with a longer step.
	ColdDoublingSlower = &Source{Title: "NFBA magazine", Edition: "October 2020", Place: "time to finish concrete doubles for each 20 °F", Basis: Published}
	// TestClimate is the climate in which mortars are tested, for which a bag's times are given.
	TestClimate = &Source{Title: "EN 1347", Edition: "2007", Place: "test conditions 23 ± 2 °C, 50 ± 5 % humidity",
		URL: "https://www.freestandardsdocuments.com/en-13472007-adhesives-for-tiles-determination-of-wetting-capability.html", Basis: Published}

	// EquivalentAge gives the age at one temperature that has ripened a Portland mix as much as its history did.
	EquivalentAge = &Source{Title: "EN 1992-1-1, B.10, as in fib-international/structuralcodes", Edition: "2004", Place: "sum of exp(13.65 − 4,000 ÷ (273 + T)) × Δt, of the same form",
		URL: "https://github.com/fib-international/structuralcodes", Basis: Published}
	// ActivationC1074 is the common activation energy of Portland cement, over the gas constant.
	ActivationC1074 = &Source{Title: "ASTM C1074", Edition: Undated, Place: "Q = 5,000 K and a datum of 0 °C for Type I cement from 0 to 40 °C", Basis: Memory}
	// ActivationSpread tells that published activation energies contradict one another.
	ActivationSpread = &Source{Title: "ACI Materials Journal 101-M09 (abstract)", Edition: "2004", Place: "this form is the usual one; published activation energies contradict each other", Basis: Published}
	// ActivationFits tells how far fitted datum temperatures and activation energies lie from the usual ones.
	ActivationFits = &Source{Title: "ACI Materials Journal 112(6) (abstract)", Edition: "2015", Place: "best fits ran from near the usual values to far above or below", Basis: Published}
	// NurseSaul gives the degree-hours of a temperature history above a datum.
	NurseSaul = &Source{Title: "Civinnovate, maturity of concrete", Edition: "June 2026", Place: "M = Σ Δt × (T − T₀); 28 d at 15 °C from −11 °C is 728 °C·d",
		URL: "https://civinnovate.com/2026/06/22/quality-control-of-concrete-explanation-10/", Basis: Published}

	// RapidKinetics tells that a calcium aluminate sets slower as it warms to 30 °C, so that no one factor describes it.
	RapidKinetics = &Source{Title: "The hydration of monocalcium aluminate at different temperatures (abstract)", Edition: Undated, Place: "slower as it warms, up to 30 °C; rapid at 40 °C", Basis: Published}
	// RapidMixes tells that fast-setting mortars are mixed binders with retarders and accelerators.
	RapidMixes = &Source{Title: "ZKG, Principles of fast-setting mortars and concretes (abstract)", Edition: Undated, Place: "mixed binders; strength over temperature is a matter of the recipe", Basis: Published}
	// RapidCSA tells that a calcium sulfoaluminate has no one activation energy.
	RapidCSA = &Source{Title: "Materials 14(22), 7011 (abstract)", Edition: "2021", Place: "activation energy of calcium sulfoaluminate cement varies with water and temperature", Basis: Published}

	// SettingWindow is the range of temperatures that setting materials, tile and slab commonly want.
	SettingWindow = &Source{Title: "CTaSC (tile consultants), expert answer", Edition: Undated, Place: "setting materials, tile and substrate typically 40 to 90 °F; the bag says", Basis: Published}
	// BestWindow is the range in which tile is best set and kept.
	BestWindow = &Source{Title: "TileLetter (NTCA)", Edition: "January 2017", Place: "best 50 to 70 °F before and for 48 h after; none where frost is near", Basis: Published}
	// EarlyFrost tells what frost in the first hours costs.
	EarlyFrost = &Source{Title: "Portland Cement Association, chapter on cold-weather concreting", Edition: Undated, Place: "page 1: freezing in the first hours can cost up to about half of the strength", Basis: Published}
	// HeatSkins tells that heat and wind skin a mortar over.
	HeatSkins = &Source{Title: "CTEF tile tip (Floor Trends)", Edition: "October 2025", Place: "heat and wind skin over thin-set and destroy its bond", Basis: Published}
)
