package source

// Falls of the slab, lifting, and the look at a lifted paver's back.
var (
	// FallFromBuilding is the least fall of a hard surface beside a building, and of bare ground there.
	FallFromBuilding = &Source{Title: "IBC, quoted at The Building Code Forum", Edition: "2012", Place: "1804.3: hard surfaces within 10 ft fall at least 2 % away; ground 6 in in the first 10 ft",
		URL: "https://thebuildingcodeforum.com", Basis: Published}
	// PatioFall is the fall of a concrete patio that drains.
	PatioFall = &Source{Title: "ACI 302.1R, in an ACI Concrete Q&A, Concrete Patio Slope", Edition: "2004", Place: "1/4 in a foot (20 mm a metre)",
		URL: "https://online.documentine.com/concrete-slab-tolerance/1/concrete-patio-slope-american-concrete-institute.html", Basis: Published}
	// AccessibleSlope gives the steepest running and cross slopes of an accessible walk.
	AccessibleSlope = &Source{Title: "2010 ADA Standards, quoted in an ACI Concrete Q&A, Concrete Patio Slope", Edition: "2010", Place: "403.3: running slope 1:20, cross slope 1:48 at most",
		URL: "https://online.documentine.com/concrete-slab-tolerance/1/concrete-patio-slope-american-concrete-institute.html", Basis: Published}
	// RampSlope gives the steepest run of a ramp.
	RampSlope = &Source{Title: "2010 ADA Standards", Edition: "2010", Place: "405.2: a ramp's run is 1:12 at most",
		URL: "https://www.corada.com/documents/2010ADAStandards/405-2", Basis: Published}
	// LevelChange tells how high a step in a walking surface may be.
	LevelChange = &Source{Title: "2010 ADA Standards, 303, in a levelling contractor's summary", Edition: "2010", Place: "1/4 in upright; up to 1/2 in if bevelled 1:2",
		URL: "http://foamjackgeotech.com/a-d-a-compliance/", Basis: Published}
	// Resultant gives the slope along the way water runs where a slab falls both ways.
	Resultant = &Source{Title: "Concrete Construction, 1/2 plus 1/2 doesn't equal 1", Edition: Undated, Place: "1/2 % and 1/2 % make 0.71 %, not 1 %; at least 1 % against ponds",
		URL: "http://www.concreteconstruction.net/how-to/1-2-plus-1-2-doesnt-equal-1_o", Basis: Published}
	// Birdbaths says that no slab is free of shallow ponds.
	Birdbaths = &Source{Title: "ASCC Position Statement 7, Birdbaths on Concrete Slabs", Edition: Undated, Place: "no birdbaths at all is not realistic",
		URL: "https://ascconline.org/concrete-technical-resources/position-statements/birdbaths-on-concrete-slabs", Basis: Published}

	// LiftingEquation gives the revised lifting equation, its multipliers and where each becomes nought.
	LiftingEquation = &Source{Title: "The revised NIOSH lifting equation, in Fundamentals and Assessment Tools for Occupational Ergonomics (excerpt at what-when-how.com)", Edition: Undated,
		Place: "p. 892, RWL = LC × HM × VM × DM × AM × FM × CM; US form", Basis: Published}
	// LiftingTables gives the multipliers for frequency and grip. The transcription calls itself a draft without a reviewer.
	LiftingTables = &Source{Title: "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation, transcribed in a public repository, ErgonomicTool", Edition: "2021", Place: "tables of the frequency and coupling multipliers, linear in between",
		URL: "https://github.com/nbarr1/ErgonomicTool", Basis: Published}
	// LiftingIndex says what the index is and where NIOSH wants it.
	LiftingIndex = LiftingTables.At("lifting index: load over limit; the goal is 1.0 or less, the glossary takes 1.0 itself as a hazard")
	// LiftingRecovery gives how long other, light work must follow a spell of lifting.
	LiftingRecovery = LiftingTables.At("p. 14, recovery of 1.0 times the work up to 1 h, 0.3 times up to 2 h")
	// LiftingLimits lists work that the lifting equation is not for.
	LiftingLimits = &Source{Title: "The revised NIOSH lifting equation, in Fundamentals and Assessment Tools for Occupational Ergonomics (excerpt at what-when-how.com)", Edition: Undated,
		Place: "46.3: not for one hand, over 8 h, seated or kneeling",
		URL:   "http://what-when-how.com/Tutorial/topic-53604/Fundamentals-and-Assessment-Tools-for-Occupational-Ergonomics-894.html", Basis: Published}
	// LiftingLimitsMore lists the rest of that work, as it is remembered.
	LiftingLimitsMore = &Source{Title: "NIOSH 94-110, task limitations", Edition: "1994", Basis: Memory}
	// TeamLift is the rule of thumb for two and three people.
	TeamLift = &Source{Title: "HSE guidance on manual handling, quoted at Reachback (builtintelligence.com)", Edition: Undated, Place: "two people: two thirds of the sum; three: half; more on slopes and steps falls to the lower end",
		URL: "https://reachback.builtintelligence.com/t/has-hse-published-any-guidelines-on-team-handling/1478", Basis: Published}
	// GroundWork tells what kneeling and stooping do.
	GroundWork = &Source{Title: "NIOSH 2007-122, Simple Solutions: Ergonomics for Construction Workers", Edition: "2007", Place: "floor and ground-level work: a kneeling or stooping person can lift less",
		URL: "https://www.cdc.gov/niosh/docs/2007-122", Basis: Published}

	// ContactMean says that contact is judged as the mean of three lifted tiles or more.
	ContactMean = &Source{Title: "ANSI A108.5, quoted by an installer at floorelf.com", Edition: Undated, Place: "3.3.2 of an older print: the mean of three or more lifted tiles",
		URL: "http://floorelf.com/using-the-proper-trowel", Basis: Published}
	// LiftTiles says to lift tiles through the job.
	LiftTiles = &Source{Title: "CTEF, Troweling a different way (Floor Covering Installer)", Edition: Undated, Place: "lift tiles through the job; ridges along the short side",
		URL: "https://www.fcimag.com/articles/90493-ctef-tile-tip-troweling-a-different-way", Basis: Published}
	// LowCoverage tells how often failed tiles had low coverage.
	LowCoverage = &Source{Title: "NTCA field survey (TileLetter)", Edition: "October 2018", Place: "over 85 % of failed tiles in 80 homes had low coverage; standing ridges give about 50 %",
		URL: "http://tileletter.s3-website-us-east-1.amazonaws.com/201810/inc/html/96.html", Basis: Published}
)
