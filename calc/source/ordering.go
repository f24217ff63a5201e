package source

// Adding up quantities that are not known exactly, and what a load weighs.
var (
	// RootSumSquares says that independent spreads combine as the root of the sum of their squares.
	RootSumSquares = &Source{Title: "JCGM 100:2008 (GUM), example H.1, as worked in the documentation of the GTC library (MSLNZ)", Edition: "2008", Place: "25, 9.7, 2.9 and 16.6 nm come to 32 nm",
		URL: "https://github.com/MSLNZ/GTC/blob/v1.4.1/docs/API/GUM_H1.rst", Basis: Published}
	// SharedAdds says that spreads from one shared cause add straight, and that the sum is then combined with what is independent. JCGM 100:2008,
	// 5.2.2, has the same with ten resistors checked against one standard, as we remember it: 1 Ω, not 0.32 Ω.
	SharedAdds = &Source{Title: "Quametec Institute, Measurement Uncertainty Forum, Adding Uncertainties", Edition: Undated, Place: "correlated at +1: add them straight, then the root of the squares with the independent ones",
		URL: "https://www.qimtonline.com/mod/forum/discuss.php?d=115&parent=185", Basis: Published}
	// OneInTwenty gives how many standard deviations nine tenths of a normal spread lie within, so that one in twenty lies above.
	OneInTwenty = &Source{Title: "quantity, a library of quantities and units (pub.dev), expanded uncertainty", Edition: Undated, Place: "90 % lie within k = 1.645, so 5 % lie above it",
		URL: "https://pub.dev/documentation/quantity/latest/quantity/Quantity/calcExpandedUncertainty.html", Basis: Published}
	// TwoDeviations gives what k = 2 stands for.
	TwoDeviations = OneInTwenty.At("95.45 % lie within k = 2")
	// PorcelainDensity is that of a porcelain tile as it was measured for a facade.
	PorcelainDensity = &Source{Title: "Applied Adhesion Science, research on facade tiles", Edition: Undated, Place: "table 1: a porcelain tile of 2,200 kg/m³",
		URL: "https://appliedadhesionscience.springeropen.com/articles/10.1186/s40563-018-0114-3/tables/1", Basis: Published}
)
