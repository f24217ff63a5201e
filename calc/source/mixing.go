package source

// Mix temperature, paddle speed, entrained air and films.
var (
	// HeatBalance gives the temperature of a mix from its parts, the solids' heat taken as 0.22 of water's.
	HeatBalance = &Source{Title: "TM 5-852-4 (UFC 3-130-04)", Edition: Undated, Place: "equation 16; 0.22 for solids, 0.2 allowed for quick field work", Basis: Published}
	// HotWater says that hot water is not to meet the cement first.
	HotWater = &Source{Title: "TM 5-852-4 (UFC 3-130-04)", Edition: Undated, Place: "water above 100 °F meets the aggregate before the cement, against flash set", Basis: Published}
	// SolidsHeat gives the range of the specific heat of solids.
	SolidsHeat = &Source{Title: "Concrete Construction (concreteconstruction.net)", Edition: Undated, Place: "specific heat of solids, 0.20 to 0.25 of water's", Basis: Published}
	// HotPlacing is the hottest at which concrete is placed in hot weather.
	HotPlacing = &Source{Title: "TM 5-822-7", Edition: Undated, Place: "hot weather: concrete placed at not above 90 °F", Basis: Published}
	// Melting is the heat that melts ice.
	Melting = &Source{Title: "CRD-C 307-91 (US Army)", Edition: "1991", Place: "heat of fusion of ice, 143.5 Btu/lb", Basis: Published}

	// MixingDrills says that a thin-set mortar is typically mixed at about 300 rpm, some products and levellers faster.
	MixingDrills = &Source{Title: "NTCA, Proper mixing speeds (TileLetter)", Edition: Undated, Place: "typically about 300 rpm; some products and levellers faster",
		URL: "https://www.tileletter.com/proper-mixing-speeds-and-selecting-the-right-mixing-drill-for-the-job/", Basis: Published}
	// TipSpeed gives the speed of the tip of an impeller.
	TipSpeed = &Source{Title: "My Engineering Tools, impeller tip speed", Edition: Undated, Place: "v = π D N ÷ 60",
		URL: "https://myengineeringtools.com/references/pages/impeller_tip_speed_calculation.html", Basis: Published}
	// Stroboscope tells at what rate a turning thing seems to turn when it is seen by flashes.
	Stroboscope = &Source{Title: "Science on Stage, stroboscopic effect", Edition: "2022", Place: "60 turns a second seen at 59, 60 and 61 flashes a second",
		URL: "https://sites.google.com/view/scienceonstage2022/teachers-lounge/theory/stroboscopic-effect", Basis: Published}

	// GravimetricAir gives the density with no air and the air content by mass.
	GravimetricAir = Yield.At("T = M ÷ V of the solids and liquid; A = 100 (T − D) ÷ T")
	// AirPeak tells that entrained air peaks early in the mixing and that density is the most repeatable measure of it.
	AirPeak = &Source{Title: "Air-entrained mortars, a thesis at London South Bank University", Edition: "1987", Place: "the density method repeats best; air peaks at about 2 minutes of mixing",
		URL: "https://openresearch.lsbu.ac.uk/item/95673", Basis: Published}

	// OpenTimeTest gives the climate in which open time is tested.
	OpenTimeTest = TestTrowel.At("tested at 23 °C and 50 % humidity, air below 0.2 m/s")

	// FilmSpread gives the spread of a gallon at a thickness, and the dry film from the solids by volume.
	FilmSpread = &Source{Title: "Paints and Coatings Resource Center", Edition: "December 2007", Place: "1,604 ft² a gallon at 1 mil; dry film = wet film × solids by volume",
		URL: "https://paintcenter.org/rj/dec07n.php", Basis: Published}
)
