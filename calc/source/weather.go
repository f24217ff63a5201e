package source

// Weather: dew, drying, heat, cold and the sun.
var (
	// SaturationVapour gives the pressure of saturated vapour over water.
	SaturationVapour = &Source{Title: "Improved Magnus Form Approximation of Saturation Vapor Pressure", Edition: "1996",
		Place: "J. Appl. Meteor. 35, 601; constants as in the xclim library", Basis: Published,
		URL: "https://journals.ametsoc.org/view/journals/apme/35/4/1520-0450_1996_035_0601_imfaos_2_0_co_2.xml"}
	// HumidityRule is the rule of thumb for a slip in the humidity.
	HumidityRule = &Source{Title: "The Relationship between Relative Humidity and the Dewpoint Temperature in Moist Air", Edition: "2005",
		Place: "Bull. Amer. Meteor. Soc. 86: the dew point falls about 1 °C for each 5 % of humidity, above 50 %", Basis: Published}
	// OverDewPoint is the least that a surface must stand over the dew point, and how often to measure.
	OverDewPoint = &Source{Title: "MIL-HDBK-1110 (UFC 3-190-06), Paints and Protective Coatings", Edition: "2004",
		Place: "9.6.6: 5 °F above the dew point and rising; measured at the work, about every 4 h", Basis: Published,
		URL: "https://ufgscriteria.tpub.com/3_190_06/3_190_060170.htm"}

	// EvaporationRate is the equation behind the evaporation chart of concrete work. It could not be read in print.
	EvaporationRate = &Source{Title: "Menzel's equation, behind the evaporation chart of ACI 305R", Edition: "1954", Basis: Memory}
	// EvaporationSpread tells how far the estimate may be out.
	EvaporationSpread = &Source{Title: "After Two Hundred Years of Estimating Evaporation, It Is Still a Mystery (ACI SP-338)", Edition: "2020",
		Place: "abstract: actual and estimated can differ by ±40 %", Basis: Published,
		URL: "https://concrete.org/publications/internationalconcreteabstractsportal.aspx?id=51724723&m=details"}
	// EvaporationLine is the rate at which concrete must be protected.
	EvaporationLine = &Source{Title: "UFGS 03300N, Cast-in-Place Concrete", Edition: Undated, Place: "page 37: 0.2 lb/ft²·h", Basis: Published}
	// EvaporationLatex is the rate for latex-modified concrete, which bleeds little.
	EvaporationLatex = &Source{Title: "Concrete Construction, latex-modified concrete", Edition: Undated, Place: "0.1 lb/ft²·h; that it also suits tile mortar is our judgement", Basis: Published}
	// EvaporationBands are the bands of evaporation, and where to measure.
	EvaporationBands = &Source{Title: "Universitat Politècnica de València, on Menzel's chart (after ACI 305R)", Edition: "2023",
		Place: "0.5, 1.0 and 1.5 kg/m²·h; wind at 0.5 m, air at 1.2 to 1.8 m in the shade", Basis: Published,
		URL: "https://victoryepes.blogs.upv.es/2023/01/02/agrietamiento-plastico-durante-el-fraguado-del-hormigon-nomograma-de-menzel/"}
	// WindProfile brings a wind from one height to another.
	WindProfile = &Source{Title: "Log profile of the wind over short ground, as in the thermofeel library", Edition: Undated, Place: "roughness 0.01 m", Basis: Published}
	// SkinsOver tells what heat and wind do to a combed mortar.
	SkinsOver = &Source{Title: "CTEF tile tip (FLOOR Trends)", Edition: "October 2025", Place: "heat and wind skin over thin-set and destroy its bond", Basis: Published}
	// WorkInShade tells how to work outdoors in the heat.
	WorkInShade = &Source{Title: "TileLetter, Ask the Experts", Edition: "May 2023", Place: "shade the work, follow the shade, cool the mixing water", Basis: Published,
		URL: "https://digital.tileletter.com/ask-the-experts-may-2023"}

	// HeatIndex is the heat index: a simple sum below 80 °F, a regression with two adjustments above.
	HeatIndex = &Source{Title: "NOAA Weather Prediction Center, The Heat Index Equation", Edition: Undated, Place: "Rothfusz's regression and its adjustments", Basis: Published,
		URL: "https://www.wpc.ncep.noaa.gov/html/heatindex_equation.shtml"}
	// HeatChart is the printed chart of the heat index.
	HeatChart = &Source{Title: "NOAA heat index chart, as shown at rfcafe.com", Edition: Undated, Place: "from 80 to 137 °F", Basis: Published}
	// HeatBands are the bands of the heat index for people at work.
	HeatBands = &Source{Title: "OSHA, Protective Measures to Take at Each Risk Level", Edition: Undated, Place: "heat index under 91, to 103, to 115 °F and above", Basis: Published,
		URL: "https://www.osha.gov/heat/heat-index/protective-measures"}
	// HeatInSun is what full sun adds.
	HeatInSun = &Source{Title: "National Weather Service, as quoted by Wichita State University", Edition: Undated, Place: "full sun can add up to 15 °F to the heat index", Basis: Published}

	// WindChill is the wind chill index of 2001.
	WindChill = &Source{Title: "National Weather Service, wind chill chart and formula (crh.noaa.gov/arx)", Edition: "2001",
		Place: "at or below 50 °F, from 3 mph", Basis: Published}
	// Frostbite tells from which wind chill bare skin freezes within half an hour.
	Frostbite = &Source{Title: "National Weather Service wind chill chart, as reported by 10tv.com", Edition: "2013",
		Place: "−19 °F: bare skin can freeze in 30 minutes; another copy of the chart draws the line at −18 °F", Basis: Published,
		URL: "http://www.10tv.com/content/stories/2014/01/03/windchill-chart-story.html"}
	// ColdWork is where cold weather begins for cement.
	ColdWork = &Source{Title: "American Concrete Institute, cold weather concreting (concrete.org)", Edition: Undated, Place: "air below 40 °F now or expected while it must be protected", Basis: Published}
	// FreezeAhead is the rule on frost within a day.
	FreezeAhead = &Source{Title: "UFGS 03300N, Cast-in-Place Concrete", Edition: Undated, Place: "page 37: below 40 °F, or frost within 24 h, cover and hold at 50 °F or more", Basis: Published}
	// FrozenEarly tells what freezing does to fresh cement.
	FrozenEarly = &Source{Title: "Portland Cement Association, chapter on cold-weather concreting", Edition: Undated, Place: "page 1: freezing in the first hours can cost up to half of the strength", Basis: Published}
	// NoSettingInFrost is the trade's advice on frost.
	NoSettingInFrost = &Source{Title: "TileLetter (NTCA)", Edition: "January 2017", Place: "best at 50 to 70 °F before and for 48 h after; no setting where frost is near", Basis: Published}
	// UsualWindow is the usual window of setting materials.
	UsualWindow = &Source{Title: "Ceramic Tile and Stone Consultants, expert answer", Edition: Undated, Place: "setting materials, tile and substrate typically 40 to 90 °F; the maker's range rules", Basis: Published}

	// SunPosition is the way of finding the sun.
	SunPosition = &Source{Title: "NOAA Global Monitoring Laboratory, Solar Calculation Details (after Astronomical Algorithms)", Edition: Undated,
		Place: "spreadsheet; its terms as in the astral library", Basis: Published, URL: "https://gml.noaa.gov/grad/solcalc/calcdetails.html"}
	// Sunrise is where the sun's edge stands on a level horizon.
	Sunrise = &Source{Title: "NOAA, General Solar Position Calculations", Edition: Undated, Place: "sunrise and sunset at a zenith of 90.833°", Basis: Published,
		URL: "http://www.jgiesen.de/astro/suncalc/calculations.htm"}
	// ClearSky is the most that the sun gives a level surface.
	ClearSky = &Source{Title: "Haurwitz's clear-sky formula, as in the pvlib library", Edition: Undated, Place: "found the best of its kind by Sandia report SAND2012-2389", Basis: Published}
)
