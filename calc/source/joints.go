package source

// Grout joints, sealant joints and movement joints.
var (
	// ModuleGeometry counts masonry units and the mortar between them from the unit and its joint taken together.
	ModuleGeometry = &Source{Title: "US Navy training manual Builder (14045)", Edition: Undated, Place: "brick estimating, table 4-5: 23.38 in² a unit with its joint, 11.7 ft³ of joint for 1,000 units",
		URL: "http://constructionmanuals.tpub.com/14045/css/Structural-Clay-Tile-159.htm", Basis: Published}
	// LeastJoint gives the least grout joint: three times the variation of the faces, and never under a sixteenth of an inch.
	LeastJoint = &Source{Title: "ANSI A108.02, as quoted in TileLetter", Edition: "2017, quoted February 2019", Place: "4.3.8: three times the actual facial variation, never under 1/16 in",
		URL: "https://www.tileletter.com/what-is-minimum-grout-joint/", Basis: Published}
	// RunningBond gives the least joint of long edges laid in running bond.
	RunningBond = &Source{Title: "ANSI A108.02, as quoted in Floor Covering Installer", Edition: Undated, Place: "running bond, an edge over 15 in: 1/8 in for rectified tile, 3/16 in for calibrated; offset at most 33 %",
		URL: "https://www.fcimag.com/articles/96103-this-time-the-tile-install-worked-but-beware", Basis: Published}
	// WarpJoint adds the warpage of the edge to the least joint of a running bond.
	WarpJoint = &Source{Title: "ANSI A108.02, as quoted by CTaSC", Edition: Undated, Place: "4.3.8.1: 1/8 in and 1/32 in of warpage make 5/32 in",
		URL: "https://ctasc.com/expert-answers/what-is-the-allowable-tolerance-for-tile-grout-head-joint-widths/", Basis: Published}
	// Lippage gives how far one edge may stand above the next.
	Lippage = &Source{Title: "ANSI A108.02, as quoted in TileLetter", Edition: "2013, quoted February 2016", Place: "4.3.7: 1/32 in for joints under 1/4 in, 1/16 in from 1/4 in, and the warpage of the tile",
		URL: "https://tileletter.com/2016/02/7950/", Basis: Published}
	// ActualWarp says that it is the warpage measured, not the warpage allowed, that adds to lippage.
	ActualWarp = &Source{Title: "Tile Council of North America, questions on lippage", Edition: Undated, Place: "actual warpage, not allowable",
		URL: "http://www.tileusa.com/lippage_faq.htm", Basis: Published}
	// HouseTiling is the British house-building council's rule for tile joints and lippage.
	HouseTiling = &Source{Title: "NHBC Standards", Edition: "January 2025", Place: "9.1.7: floor joints of 3 mm or more and not wider than the tile is thick; 1 mm between tiles up to 6 mm of joint, 2 mm above",
		URL: "https://nhbc-standards.co.uk/9-finishes/9-1-a-consistent-approach-to-finishes/9-1-7-ceramic-concrete-terrazzo-and-similar-tile-finishes/", Basis: Published}

	// MovementMethod is the handbook's method for movement joints in tile work.
	MovementMethod = &Source{Title: "TCNA Handbook, method EJ171", Edition: "2009", Place: "8 to 12 ft each way outdoors; 3/8 in at 8 ft, 1/2 in at 12 ft, and 1/16 in for each 15 °F of surface range above 100 °F",
		URL: "https://www.scribd.com/document/517234345/EJ-171-MovementJointDesign", Basis: Published}
	// MovementWidth answers how wide and how far apart movement joints outdoors are.
	MovementWidth = &Source{Title: "TileLetter, Expansion joints, width and spacing", Edition: Undated, Place: "3/8 in at 8 ft, 1/2 in at 12 ft, 1/16 in for every 15 °F above 100 °F",
		URL: "https://www.tileletter.com/expansion-joints-width-and-spacing/", Basis: Published}
	// PlaneChange puts a joint at every change of plane outdoors.
	PlaneChange = &Source{Title: "TCNA Handbook, method EJ171, as reported in TileLetter", Edition: "2018, reported August 2018", Place: "page 24: all inside and outside corners outdoors",
		URL: "http://tileletter.s3-website-us-east-1.amazonaws.com/201808/inc/html/26.html", Basis: Published}
	// EdgeJoint is the least width at walls and other restraints.
	EdgeJoint = &Source{Title: "TCNA Handbook, method EJ171, as read by CTaSC", Edition: Undated, Place: "at restraining surfaces and changes of plane, at least 1/4 in",
		URL: "https://ctasc.com/expert-answers/how-should-movement-joints-expansion-joints-be-installed-in-tile-installations/", Basis: Published}
	// MovementDesigner says who places and sizes movement joints.
	MovementDesigner = &Source{Title: "NTCA Reference Manual", Edition: "2024/25", Place: "page 23: the designer locates and sizes movement joints",
		URL: "https://user-69113096.cld.bz/2024-25-NTCA-Reference-Manual-dig-dwnld/21", Basis: Published}
	// BritishBays is the British spacing outdoors.
	BritishBays = &Source{Title: "BS 5385-3, as reported by The Tile Association (Tilezine)", Edition: "2024", Place: "external floors, movement joints at 3 to 5 m",
		URL: "https://tilezine.tiles.org.uk/?p=8563", Basis: Published}
	// JointWidth gives the width of a sealant joint from its movement and the sealant's capability.
	JointWidth = &Source{Title: "Cornell University, ARCH 262, solutions to assignment 2", Edition: "2003", Place: "W = (100 ÷ X) (α L ΔT + M) + t",
		URL: "http://courses.cit.cornell.edu/arch262/arch262f03/assign2-solutions.html", Basis: Published}
	// TwoWayMovement works closing and opening apart, each from the temperature at sealing.
	TwoWayMovement = &Source{Title: "Cornell University, ARCH 262, solutions to assignment 3", Edition: "2007", Place: "closing and opening apart, from the temperature at sealing",
		URL: "http://courses.cit.cornell.edu/arch262/arch262f07/assign03solutions.html", Basis: Published}
	// ConcreteExpansion gives how concrete moves with heat.
	ConcreteExpansion = &Source{Title: "Concrete Construction, thermal expansion and contraction of slabs on grade", Edition: Undated, Place: "5.5 millionths per °F; 3.8 with limestone to about 7 with quartz",
		URL: "http://www.concreteconstruction.net/how-to/thermal-expansion-and-contraction-of-slabs-on-grade_o", Basis: Published}
	// PorcelainExpansion gives how porcelain moves with heat.
	PorcelainExpansion = &Source{Title: "Ceramic Tile Distributors Association, It All Moves, Plan on It", Edition: "November 2008", Place: "porcelain tile, about 4 millionths per °F",
		URL: "http://ceramictiledistributors.org/2008/11/it-all-moves-plan-on-it/", Basis: Published}

	// SealantDepth gives the depth of sealant in a joint of a width.
	SealantDepth = &Source{Title: "Architectural Detailing (Wiley), sealant joints", Edition: Undated, Place: "half the width, not under 1/4 in nor over 1/2 in; no joint narrower than 1/4 in",
		URL: "https://www.northernarchitecture.us/architectural-detailing-2/j-jze.html", Basis: Published}
	// SealantDepths is another view of the depth: as deep as wide up to half an inch.
	SealantDepths = &Source{Title: "Construction Waterproofing Handbook (McGraw-Hill)", Edition: Undated, Place: "pages 5.6 and 5.8: as deep as wide up to 1/2 in, half the width above",
		URL: "https://digilib.universitaspertamina.ac.id/ebook/Construction%20Waterproofing%20Handbook/files/basic-html/page247.html", Basis: Published}
	// TrafficJoint gives depths for joints that are walked or driven on, and for others.
	TrafficJoint = &Source{Title: "Orange County, North Carolina, public works specification 07 92 00", Edition: Undated, Place: "joints under traffic: 75 % of the width, 3/8 to 5/8 in; others 50 %, 1/4 to 1/2 in",
		URL: "http://server3.co.orange.nc.us:8088/WebLink/0/doc/64824/Page42.aspx", Basis: Published}
	// SealantTooling says where the depth is measured and how soon a joint is tooled.
	SealantTooling = &Source{Title: "Orange County, North Carolina, public works specification", Edition: "2016", Place: "3.06: depth at the middle of the joint, never deeper than wide; tooled within ten minutes",
		URL: "http://server3.co.orange.nc.us:8088/WebLink/0/doc/43886/Page162.aspx", Basis: Published}
	// Segment gives the area between an arc and its chord.
	Segment = &Source{Title: "CRC Concise Encyclopedia of Mathematics, circular segment", Edition: Undated, Place: "A = r² (θ − sin θ) ÷ 2",
		URL: "https://archive.lib.msu.edu/crcmath/math/math/s/s141.htm", Basis: Published}
	// Backing says what backing is for, and its kinds.
	Backing = &Source{Title: "ASTM C1330, opening pages", Edition: "2002", Place: "backing sets the depth, shapes the sealant and keeps it from bonding behind",
		URL: "https://tr.scribd.com/document/408283549/C13330-PDF", Basis: Published}
	// RodSize is one specimen's rod: a quarter wider than its joint.
	RodSize = &Source{Title: "Durability of Building and Construction Sealants, test specimen", Edition: Undated, Place: "a 25 mm closed-cell rod in a 20 mm joint",
		URL: "http://zhclg.com/durability-of-building-and-construction-sealants-and-adhesives/test-specimen.htm", Basis: Published}
	// BackingStrips are the details with a flat strip or tape in place of a round rod.
	BackingStrips = &Source{Title: "TCNA Handbook, method EJ171, as reported in TileLetter", Edition: "2024, reported November 2024", Place: "bond-breaker tape and backing strip as alternatives",
		URL: "https://digital.tileletter.com/ask-the-experts-noviembre-24", Basis: Published}
	// SealantClass gives the classes and the use of sealants, and the hottest at which they go in.
	SealantClass = &Source{Title: "UFGS 07920 (US military guide specification)", Edition: Undated, Place: "page 6: class 25 takes 25 % either way; use T for walks and plazas; not above 90 °F",
		URL: "https://ufgscriteriadocreport.tpub.com/07920/079200006.htm", Basis: Published}
	// DryJoint says how a joint is before it is sealed.
	DryJoint = &Source{Title: "CTEF, tips on expansion joints (Floor Covering Installer)", Edition: Undated, Place: "free of grout and mortar, and completely dry",
		URL: "https://www.fcimag.com/articles/94247-ctef-tile-tip-expansion-joints-tips-and-tricks", Basis: Published}
	// GallonInches gives the gallon in cubic inches.
	GallonInches = &Source{Title: "NIST Handbook 44, appendix C", Edition: Undated, Place: "1 US gallon = 231 in³ = 128 fl oz",
		URL: "https://yumpu.com/en/document/view/67962081/vdoc/461", Basis: Published}
)
