package source

// Setting out: the layout of pavers, squaring up, cutting.
var (
	// BalancedCuts has cuts balanced, none under half, and all at the edges.
	BalancedCuts = &Source{Title: "ANSI A108.02, as quoted by CTEF in Floor Covering Installer (a balanced tile layout)", Edition: Undated, Place: "4.3.1: center and balance, if possible; 4.3.2: no excess of cuts, usually none smaller than half size, all at the outer edges",
		URL: "https://www.fcimag.com/articles/95138-ctef-tile-tip-is-a-balanced-tile-layout-really-difficult-to-achieve", Basis: Published}
	// HalfTile is the rule that makes two narrow cuts into two wide ones: what is left of the length, and one more unit, halved.
	HalfTile = &Source{Title: "US Navy training manual Builder (14044)", Edition: Undated, Place: "page 7-23, half-tile rule: length less the full tiles, and one tile more, divided by 2",
		URL: "http://constructionmanuals.tpub.com/14044/css/Figure-7-26-Layout-for-installing-ceramic-wall-tile-233.htm", Basis: Published}
	// OffsetPattern limits how far one course may be offset from the next.
	OffsetPattern = &Source{Title: "ANSI A108.02, as quoted by CTEF in Floor Covering Installer (offset patterns)", Edition: Undated, Place: "an edge over 15 in: offset at most 33 % unless the maker says otherwise; more needs a mock-up that specifier and owner approve",
		URL: "https://www.fcimag.com/articles/94659-ctef-tile-tip-balance-and-common-sense-in-offset-patterns", Basis: Published}
	// SquareUp squares a corner by a triangle of 3, 4 and 5 and proves a rectangle by its diagonals.
	SquareUp = &Source{Title: "Checking reference lines (excerpt of a framing handbook at boulderlibrary.net)", Edition: Undated, Place: "equal diagonals; a triangle of 3, 4 and 5, the longer the better: 15, 20 and 25 ft",
		URL: "http://boulderlibrary.net/framing/checking-reference.html", Basis: Published}
)
