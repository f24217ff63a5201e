// Package unit holds the quantities of the job as Go types: exact factors, a
// reader of what a builder writes and a printer of what a builder reads.
//
// Lengths are held in micrometres, because an inch is exactly 25,400 of them:
// every halving of an inch and every millimetre to three decimals is then exact
// in a float64, and counting pieces does not gain one from rounding. For the
// same reason areas are square micrometres, volumes nanolitres (a US gallon is
// exactly 3,785,411,784) and masses micrograms (a pound is 453,592,370).
package unit

import "math"

// Kind says what a quantity measures, so that a length cannot be read where a
// ratio belongs, nor a temperature where a difference of temperature does.
type Kind uint8

// The kinds, each with the base unit that its Go type counts.
const (
	KindNumber      Kind = iota // a plain number
	KindCount                   // whole things
	KindRatio                   // 1 = 100 %
	KindLength                  // micrometres
	KindArea                    // square micrometres
	KindVolume                  // nanolitres
	KindMass                    // micrograms
	KindDensity                 // kg/m3
	KindYield                   // m3/kg, wet volume out of a mass of powder
	KindTemperature             // degrees Celsius
	KindDifference              // kelvins
	KindAngle                   // degrees of arc
	KindSpan                    // seconds
	KindSpeed                   // m/s
	KindPerMinute               // turns, lifts or mixes a minute
	KindPerSecond               // frames a second
	KindAreaRate                // m2/s
	KindPressure                // Pa
	KindIrradiance              // W/m2
	KindEvaporation             // kg/(m2 s)
	KindExpansion               // 1/K
	KindDegreeTime              // K s
	KindDate                    // days since 1970-01-01
	KindClock                   // seconds since midnight
)

// The quantities. Each counts the base unit named at its Kind.
type (
	Number      float64
	Count       float64
	Ratio       float64
	Length      float64
	Area        float64
	Volume      float64
	Mass        float64
	Density     float64
	Yield       float64
	Temperature float64
	Difference  float64
	Angle       float64
	Span        float64
	Speed       float64
	PerMinute   float64
	PerSecond   float64
	AreaRate    float64
	Pressure    float64
	Irradiance  float64
	Evaporation float64
	Expansion   float64
	DegreeTime  float64
	Date        float64
	Clock       float64
)

// Quantity is any of the types above.
type Quantity interface {
	~float64
	Kind() Kind
}

func (Number) Kind() Kind      { return KindNumber }
func (Count) Kind() Kind       { return KindCount }
func (Ratio) Kind() Kind       { return KindRatio }
func (Length) Kind() Kind      { return KindLength }
func (Area) Kind() Kind        { return KindArea }
func (Volume) Kind() Kind      { return KindVolume }
func (Mass) Kind() Kind        { return KindMass }
func (Density) Kind() Kind     { return KindDensity }
func (Yield) Kind() Kind       { return KindYield }
func (Temperature) Kind() Kind { return KindTemperature }
func (Difference) Kind() Kind  { return KindDifference }
func (Angle) Kind() Kind       { return KindAngle }
func (Span) Kind() Kind        { return KindSpan }
func (Speed) Kind() Kind       { return KindSpeed }
func (PerMinute) Kind() Kind   { return KindPerMinute }
func (PerSecond) Kind() Kind   { return KindPerSecond }
func (AreaRate) Kind() Kind    { return KindAreaRate }
func (Pressure) Kind() Kind    { return KindPressure }
func (Irradiance) Kind() Kind  { return KindIrradiance }
func (Evaporation) Kind() Kind { return KindEvaporation }
func (Expansion) Kind() Kind   { return KindExpansion }
func (DegreeTime) Kind() Kind  { return KindDegreeTime }
func (Date) Kind() Kind        { return KindDate }
func (Clock) Kind() Kind       { return KindClock }

// Exact sizes, for writing limits and constants: 2*unit.Inch, 90*unit.Minute.
const (
	Micrometre Length = 1
	Millimetre Length = 1e3
	Metre      Length = 1e6
	Mil        Length = 25.4
	Inch       Length = 25_400
	Foot       Length = 12 * Inch

	SquareMetre Area = 1e12
	SquareInch  Area = Area(Inch * Inch)
	SquareFoot  Area = Area(Foot * Foot)

	Millilitre Volume = 1e6
	Litre      Volume = 1e9
	CubicMetre Volume = 1e12
	FluidOunce Volume = Gallon / 128
	Quart      Volume = Gallon / 4
	Gallon     Volume = 3_785_411_784 // 231 cubic inches
	CubicFoot  Volume = 28_316_846_592

	Gram     Mass = 1e6
	Kilogram Mass = 1e9
	Pound    Mass = 453_592_370
	Ounce    Mass = Pound / 16

	Second Span = 1
	Minute Span = 60
	Hour   Span = 3600
	Day    Span = 24 * Hour

	Percent Ratio = 0.01
)

// si is what one base unit of the kind is in the SI unit of the contract.
func (k Kind) si() (factor float64, symbol string) {
	switch k {
	case KindLength:
		return 1e-6, "m"
	case KindArea:
		return 1e-12, "m2"
	case KindVolume:
		return 1e-12, "m3"
	case KindMass:
		return 1e-9, "kg"
	case KindAngle:
		return math.Pi / 180, "rad"
	case KindDensity:
		return 1, "kg/m3"
	case KindYield:
		return 1, "m3/kg"
	case KindTemperature:
		return 1, "degC"
	case KindDifference:
		return 1, "K"
	case KindSpan, KindClock:
		return 1, "s"
	case KindSpeed:
		return 1, "m/s"
	case KindPerMinute:
		return 1, "1/min"
	case KindPerSecond:
		return 1, "1/s"
	case KindAreaRate:
		return 1, "m2/s"
	case KindPressure:
		return 1, "Pa"
	case KindIrradiance:
		return 1, "W/m2"
	case KindEvaporation:
		return 1, "kg/(m2 s)"
	case KindExpansion:
		return 1, "1/K"
	case KindDegreeTime:
		return 1, "K s"
	case KindDate:
		return 1, "d"
	}
	return 1, "1"
}

// SI gives a base value of kind k in the SI unit named beside it: metres for
// lengths, kilograms for masses, radians for angles, degrees Celsius for
// temperatures.
func (k Kind) SI(base float64) (value float64, symbol string) {
	f, s := k.si()
	return base * f, s
}

// Times is the area of a rectangle.
func (l Length) Times(m Length) Area { return Area(l * m) }

// Deep is the volume of an area at a depth. A square micrometre by a micrometre
// is a millionth of a nanolitre.
func (a Area) Deep(l Length) Volume { return Volume(float64(a) * float64(l) / 1e6) }

// Sin is the sine of the angle.
func (a Angle) Sin() float64 { return math.Sin(float64(a) * math.Pi / 180) }

// Cos is the cosine of the angle.
func (a Angle) Cos() float64 { return math.Cos(float64(a) * math.Pi / 180) }

// Fills is the volume that a mass takes up at a density.
func (m Mass) Fills(d Density) Volume { return Volume(float64(m) * 1e-9 / float64(d) * 1e12) }

// Weighs is the mass of a volume at a density.
func (v Volume) Weighs(d Density) Mass { return Mass(float64(v) * 1e-12 * float64(d) * 1e9) }

// Whole turns a fraction of something into the whole number of them that must
// be bought or cut: up, but not for a trace of rounding (a relative 1e-9). It is
// the only place in Setbook that calls math.Ceil.
func Whole(x float64) Count {
	near := math.Round(x)
	if math.Abs(x-near) <= 1e-9*math.Max(1, math.Abs(x)) {
		return Count(near)
	}
	return Count(math.Ceil(x) + 0) // and −0 is 0
}
