package unit

import "math"

// System is which habit a person measures in.
type System uint8

// The two systems. A unit that both use is Either.
const (
	Either System = iota
	US
	Metric
)

// Unit is one way of counting a kind of quantity.
type Unit struct {
	Kind   Kind
	Symbol string   // as printed
	Also   []string // other spellings that are read, as the reader folds them: lower case, a stroke for per
	Size   float64  // base units in one
	Over   float64  // where Size is a fraction, its denominator: Size*Over is whole; else 0
	Zero   float64  // base value at nought, for temperatures
	System System
}

// fraction is the unit's size as whole top over whole bottom, which 5/9 and 25.4
// are not as one float64, and the number of the unit at which the base is nought
// (32 for degrees Fahrenheit).
func (u *Unit) fraction() (top, bottom, nought float64) {
	if u.Over == 0 {
		return u.Size, 1, -u.Zero / u.Size
	}
	return math.Round(u.Size * u.Over), u.Over, math.Round(-u.Zero / u.Size)
}

// Base turns a number of this unit into the base unit of its kind.
func (u *Unit) Base(n float64) float64 {
	top, bottom, nought := u.fraction()
	return (n - nought) * top / bottom
}

// Of turns a base value into a number of this unit.
func (u *Unit) Of(base float64) float64 {
	top, bottom, nought := u.fraction()
	return base*bottom/top + nought
}

// lb/ft3 in kg/m3, from the exact pound and foot.
const poundPerCubicFoot = 0.45359237 / 0.028316846592

// The units. Factors are exact, from the yard and pound agreement of 1959 and
// the US gallon of 231 cubic inches (NIST SP 811, appendix B); none is measured.
var (
	One     = &Unit{Kind: KindNumber, Size: 1}
	Piece   = &Unit{Kind: KindCount, Also: []string{"pc", "pcs", "piece", "pieces"}, Size: 1}
	PerCent = &Unit{Kind: KindRatio, Symbol: "%", Also: []string{"percent", "/cent", "pct"}, Size: 0.01, Over: 100}
	Plain   = &Unit{Kind: KindRatio, Size: 1}

	Inches      = &Unit{Kind: KindLength, Symbol: "in", Also: []string{"inch", "inches", "\""}, Size: float64(Inch), System: US}
	Feet        = &Unit{Kind: KindLength, Symbol: "ft", Also: []string{"foot", "feet", "'"}, Size: float64(Foot), System: US}
	Yards       = &Unit{Kind: KindLength, Symbol: "yd", Also: []string{"yard", "yards"}, Size: 3 * float64(Foot), System: US}
	Mils        = &Unit{Kind: KindLength, Symbol: "mil", Also: []string{"mils", "thou"}, Size: float64(Mil), Over: 5, System: US}
	Micrometres = &Unit{Kind: KindLength, Symbol: "µm", Also: []string{"micron", "microns"}, Size: 1, System: Metric}
	Millimetres = &Unit{Kind: KindLength, Symbol: "mm", Also: []string{"millimetre", "millimetres", "millimeter", "millimeters"}, Size: float64(Millimetre), System: Metric}
	Centimetres = &Unit{Kind: KindLength, Symbol: "cm", Also: []string{"centimetre", "centimetres", "centimeter", "centimeters"}, Size: 1e4, System: Metric}
	Metres      = &Unit{Kind: KindLength, Symbol: "m", Also: []string{"metre", "metres", "meter", "meters"}, Size: float64(Metre), System: Metric}

	SquareInches      = &Unit{Kind: KindArea, Symbol: "in²", Also: []string{"in2", "sq in", "sqin"}, Size: float64(SquareInch), System: US}
	SquareFeet        = &Unit{Kind: KindArea, Symbol: "ft²", Also: []string{"ft2", "sq ft", "sqft", "sf", "square foot", "square feet"}, Size: float64(SquareFoot), System: US}
	SquareYards       = &Unit{Kind: KindArea, Symbol: "yd²", Also: []string{"yd2", "sq yd", "sqyd"}, Size: 9 * float64(SquareFoot), System: US}
	SquareMillimetres = &Unit{Kind: KindArea, Symbol: "mm²", Also: []string{"mm2", "sq mm"}, Size: 1e6, System: Metric}
	SquareCentimetres = &Unit{Kind: KindArea, Symbol: "cm²", Also: []string{"cm2", "sq cm"}, Size: 1e8, System: Metric}
	SquareMetres      = &Unit{Kind: KindArea, Symbol: "m²", Also: []string{"m2", "sq m", "sqm"}, Size: float64(SquareMetre), System: Metric}

	CubicInches = &Unit{Kind: KindVolume, Symbol: "in³", Also: []string{"in3", "cu in"}, Size: 16_387_064, System: US}
	CubicFeet   = &Unit{Kind: KindVolume, Symbol: "ft³", Also: []string{"ft3", "cu ft", "cf"}, Size: float64(CubicFoot), System: US}
	CubicYards  = &Unit{Kind: KindVolume, Symbol: "yd³", Also: []string{"yd3", "cu yd"}, Size: 27 * float64(CubicFoot), System: US}
	Gallons     = &Unit{Kind: KindVolume, Symbol: "gal", Also: []string{"gallon", "gallons", "us gal"}, Size: float64(Gallon), System: US}
	Quarts      = &Unit{Kind: KindVolume, Symbol: "qt", Also: []string{"us qt", "quart", "quarts"}, Size: float64(Quart), System: US}
	Pints       = &Unit{Kind: KindVolume, Symbol: "pt", Also: []string{"us pt", "pint", "pints"}, Size: float64(Gallon) / 8, System: US}
	FluidOunces = &Unit{Kind: KindVolume, Symbol: "fl oz", Also: []string{"us fl oz", "floz", "fluid ounce", "fluid ounces"}, Size: float64(FluidOunce), System: US}
	Millilitres = &Unit{Kind: KindVolume, Symbol: "mL", Also: []string{"cc", "cm3", "millilitre", "millilitres", "milliliter", "milliliters"}, Size: float64(Millilitre), System: Metric}
	Litres      = &Unit{Kind: KindVolume, Symbol: "L", Also: []string{"litre", "litres", "liter", "liters", "dm3"}, Size: float64(Litre), System: Metric}
	CubicMetres = &Unit{Kind: KindVolume, Symbol: "m³", Also: []string{"m3", "cu m"}, Size: float64(CubicMetre), System: Metric}

	Pounds    = &Unit{Kind: KindMass, Symbol: "lb", Also: []string{"lbs", "pound", "pounds", "#"}, Size: float64(Pound), System: US}
	Ounces    = &Unit{Kind: KindMass, Symbol: "oz", Also: []string{"ounce", "ounces"}, Size: float64(Ounce), System: US}
	Grams     = &Unit{Kind: KindMass, Symbol: "g", Also: []string{"gram", "grams"}, Size: float64(Gram), System: Metric}
	Kilograms = &Unit{Kind: KindMass, Symbol: "kg", Also: []string{"kilo", "kilos", "kilogram", "kilograms"}, Size: float64(Kilogram), System: Metric}
	Tonnes    = &Unit{Kind: KindMass, Symbol: "t", Also: []string{"tonne", "tonnes"}, Size: 1000 * float64(Kilogram), System: Metric}

	PoundsPerCubicFoot     = &Unit{Kind: KindDensity, Symbol: "lb/ft³", Also: []string{"lb/ft3", "pcf", "lb/cu ft"}, Size: poundPerCubicFoot, Over: 28_316_846_592, System: US}
	PoundsPerGallon        = &Unit{Kind: KindDensity, Symbol: "lb/gal", Also: []string{"ppg"}, Size: 0.45359237 / 0.003785411784, Over: 3_785_411_784, System: US}
	KilogramsPerCubicMetre = &Unit{Kind: KindDensity, Symbol: "kg/m³", Also: []string{"kg/m3"}, Size: 1, System: Metric}
	KilogramsPerLitre      = &Unit{Kind: KindDensity, Symbol: "kg/L", Also: []string{"g/ml", "g/cm3"}, Size: 1000, System: Metric}

	CubicFeetPerPound = &Unit{Kind: KindYield, Symbol: "ft³/lb", Also: []string{"ft3/lb", "cu ft/lb"}, Size: 0.028316846592 / 0.45359237, Over: 453_592_370_000, System: US}
	LitresPerKilogram = &Unit{Kind: KindYield, Symbol: "L/kg", Size: 0.001, Over: 1000, System: Metric}

	Fahrenheit = &Unit{Kind: KindTemperature, Symbol: "°F", Also: []string{"f", "deg f", "degf", "degrees f", "fahrenheit"}, Size: 5.0 / 9, Over: 9, Zero: -160.0 / 9, System: US}
	Celsius    = &Unit{Kind: KindTemperature, Symbol: "°C", Also: []string{"c", "deg c", "degc", "degrees c", "celsius"}, Size: 1, System: Metric}

	FahrenheitDifference = &Unit{Kind: KindDifference, Symbol: "°F", Also: []string{"f", "deg f", "degf", "degrees f", "fahrenheit"}, Size: 5.0 / 9, Over: 9, System: US}
	CelsiusDifference    = &Unit{Kind: KindDifference, Symbol: "°C", Also: []string{"c", "deg c", "degc", "degrees c", "celsius"}, Size: 1, System: Metric}
	Kelvins              = &Unit{Kind: KindDifference, Symbol: "K", Also: []string{"kelvin", "kelvins"}, Size: 1, System: Metric}

	Degrees = &Unit{Kind: KindAngle, Symbol: "°", Also: []string{"deg", "degree", "degrees"}, Size: 1}
	Radians = &Unit{Kind: KindAngle, Symbol: "rad", Also: []string{"radian", "radians"}, Size: 57.29577951308232}

	Seconds = &Unit{Kind: KindSpan, Symbol: "s", Also: []string{"sec", "secs", "second", "seconds"}, Size: 1}
	Minutes = &Unit{Kind: KindSpan, Symbol: "min", Also: []string{"mins", "minute", "minutes"}, Size: 60}
	Hours   = &Unit{Kind: KindSpan, Symbol: "h", Also: []string{"hr", "hrs", "hour", "hours"}, Size: 3600}
	Days    = &Unit{Kind: KindSpan, Symbol: "d", Also: []string{"day", "days"}, Size: 86400}

	MilesPerHour      = &Unit{Kind: KindSpeed, Symbol: "mph", Also: []string{"mi/h"}, Size: 0.44704, Over: 1e5, System: US}
	FeetPerSecond     = &Unit{Kind: KindSpeed, Symbol: "ft/s", Also: []string{"fps"}, Size: 0.3048, Over: 1e4, System: US}
	FeetPerMinute     = &Unit{Kind: KindSpeed, Symbol: "ft/min", Also: []string{"fpm"}, Size: 0.00508, Over: 1e5, System: US}
	KilometresPerHour = &Unit{Kind: KindSpeed, Symbol: "km/h", Also: []string{"kph", "kmh"}, Size: 1 / 3.6, Over: 18, System: Metric}
	MetresPerSecond   = &Unit{Kind: KindSpeed, Symbol: "m/s", Size: 1, System: Metric}

	RPM        = &Unit{Kind: KindPerMinute, Symbol: "rpm", Also: []string{"r/min", "rev/min"}, Size: 1}
	EachMinute = &Unit{Kind: KindPerMinute, Symbol: "/min", Also: []string{"/minute", "a minute"}, Size: 1}
	EachHour   = &Unit{Kind: KindPerMinute, Symbol: "/h", Also: []string{"/hour", "/hr", "an hour"}, Size: 1.0 / 60, Over: 60}
	FramesRate = &Unit{Kind: KindPerSecond, Symbol: "fps", Also: []string{"frames/s", "hz", "/s"}, Size: 1}

	SquareFeetPerHour   = &Unit{Kind: KindAreaRate, Symbol: "ft²/h", Also: []string{"ft2/h", "sq ft/h", "sf/h", "ft2/hr", "ft2/hour", "sq ft/hour"}, Size: 0.09290304 / 3600, Over: 3600e8, System: US}
	SquareMetresPerHour = &Unit{Kind: KindAreaRate, Symbol: "m²/h", Also: []string{"m2/h", "m2/hr", "m2/hour"}, Size: 1.0 / 3600, Over: 3600, System: Metric}

	PSI         = &Unit{Kind: KindPressure, Symbol: "psi", Also: []string{"lb/in2"}, Size: 4.4482216152605 / 0.00064516, Over: 6_451_600_000, System: US}
	Megapascals = &Unit{Kind: KindPressure, Symbol: "MPa", Also: []string{"n/mm2"}, Size: 1e6, System: Metric}
	Hectopascal = &Unit{Kind: KindPressure, Symbol: "hPa", Also: []string{"mbar"}, Size: 100, System: Metric}

	WattsPerSquareMetre = &Unit{Kind: KindIrradiance, Symbol: "W/m²", Also: []string{"w/m2"}, Size: 1}

	PoundsPerSquareFootHour     = &Unit{Kind: KindEvaporation, Symbol: "lb/ft²·h", Also: []string{"lb/ft2 h", "lb/ft2/h", "lb/(ft2 h)"}, Size: 0.45359237 / 0.09290304 / 3600, Over: 9_290_304 * 3600, System: US}
	KilogramsPerSquareMetreHour = &Unit{Kind: KindEvaporation, Symbol: "kg/m²·h", Also: []string{"kg/m2 h", "kg/m2/h", "kg/(m2 h)"}, Size: 1.0 / 3600, Over: 3600, System: Metric}

	MillionthsPerFahrenheit = &Unit{Kind: KindExpansion, Symbol: "10⁻⁶/°F", Also: []string{"e-6/f", "e-6/°f", "1e-6/f", "10-6/f", "10-6/°f", "10^-6/f", "x10^-6/°f", "x 10^-6/°f"}, Size: 1.8e-6, Over: 1e7, System: US}
	MillionthsPerKelvin     = &Unit{Kind: KindExpansion, Symbol: "10⁻⁶/K", Also: []string{"e-6/k", "1e-6/k", "10-6/k", "x10^-6/k", "x 10^-6/k", "um/m/k", "ppm/k", "e-6/c", "1e-6/c", "10-6/c", "10^-6/°c"}, Size: 1e-6, Over: 1e6, System: Metric}

	FahrenheitHours = &Unit{Kind: KindDegreeTime, Symbol: "°F·h", Also: []string{"f h", "f hr"}, Size: 2000, System: US}
	CelsiusHours    = &Unit{Kind: KindDegreeTime, Symbol: "°C·h", Also: []string{"c h", "c hr", "k h"}, Size: 3600, System: Metric}

	CalendarDay = &Unit{Kind: KindDate, Size: 1}
	TimeOfDay   = &Unit{Kind: KindClock, Size: 1}
)

// All lists every unit, for the reader and its tests.
var All = []*Unit{
	One, Piece, PerCent, Plain,
	Inches, Feet, Yards, Mils, Micrometres, Millimetres, Centimetres, Metres,
	SquareInches, SquareFeet, SquareYards, SquareMillimetres, SquareCentimetres, SquareMetres,
	CubicInches, CubicFeet, CubicYards, Gallons, Quarts, Pints, FluidOunces, Millilitres, Litres, CubicMetres,
	Pounds, Ounces, Grams, Kilograms, Tonnes,
	PoundsPerCubicFoot, PoundsPerGallon, KilogramsPerCubicMetre, KilogramsPerLitre,
	CubicFeetPerPound, LitresPerKilogram,
	Fahrenheit, Celsius, FahrenheitDifference, CelsiusDifference, Kelvins,
	Degrees, Radians, Seconds, Minutes, Hours, Days,
	MilesPerHour, FeetPerSecond, FeetPerMinute, KilometresPerHour, MetresPerSecond,
	RPM, EachMinute, EachHour, FramesRate, SquareFeetPerHour, SquareMetresPerHour,
	PSI, Megapascals, Hectopascal, WattsPerSquareMetre,
	PoundsPerSquareFootHour, KilogramsPerSquareMetreHour,
	MillionthsPerFahrenheit, MillionthsPerKelvin, FahrenheitHours, CelsiusHours,
	CalendarDay, TimeOfDay,
}

// Form is how a number is shown: in which unit, and to how many significant
// digits (at least all of its whole part) or, for inches and feet, to which
// fraction of an inch.
type Form struct {
	Unit     *Unit
	Digits   int // significant digits; 0 means 4
	Fraction int // 16 means the nearest sixteenth of an inch; 0 means decimals
}

// Pair is how one quantity is shown to each habit. It is handed on by its address:
// figures are many, and copying two forms into each made the wasm a sixth larger.
type Pair struct{ US, Metric Form }

// Both is a pair whose two habits share one form.
func Both(u *Unit) *Pair { return &Pair{Form{Unit: u}, Form{Unit: u}} }

// In is the pair of two units, each to four significant digits.
func In(us, metric *Unit) *Pair { return &Pair{Form{Unit: us}, Form{Unit: metric}} }

// For is the form that a system calls for.
func (p *Pair) For(s System) Form {
	if s == Metric {
		return p.Metric
	}
	return p.US
}

// The pairs that most questions need.
var (
	InchMM     = In(Inches, Millimetres)
	FootMetre  = In(Feet, Metres)
	FootArea   = In(SquareFeet, SquareMetres)
	InchArea   = In(SquareInches, SquareMillimetres)
	CubicFootL = In(CubicFeet, Litres)
	QuartL     = In(Quarts, Litres)
	GallonL    = In(Gallons, Litres)
	PoundKg    = In(Pounds, Kilograms)
	Warmth     = In(Fahrenheit, Celsius)
	Warmer     = In(FahrenheitDifference, CelsiusDifference)
	Wind       = In(MilesPerHour, KilometresPerHour)
	Share      = Both(PerCent)
	Whole1     = Both(Piece)
	Bare       = Both(One)
	Arc        = Both(Degrees)
	HourSpan   = Both(Hours)
	MinSpan    = Both(Minutes)
)

// Figure is a quantity together with how it is shown.
type Figure struct {
	Kind Kind
	Base float64
	As   *Pair
}

// Fig pairs a typed quantity with how it is shown.
func Fig[T Quantity](q T, as *Pair) Figure { return Figure{Kind: q.Kind(), Base: float64(q), As: as} }
