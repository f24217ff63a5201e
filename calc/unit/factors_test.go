package unit

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"testing"
)

// Each factor is stated twice, independently of units.go: exactly, from the
// definitions (yard and pound agreement of 1959, gallon of 231 in3; the list in
// shared/references/safety-units.md, 4.1), and, where NIST SP 811 (2008), appendix
// B.8 prints one, to its seven digits. The SP 811 figures are typed from memory:
// the table itself could not be opened.
var factors = []struct {
	unit  *Unit
	exact string // SI (contract) units in one, as a fraction of decimals
	sp811 string
}{
	{One, "1", ""}, {Piece, "1", ""}, {PerCent, "0.01", ""}, {Plain, "1", ""},
	{Inches, "0.0254", "2.54E-02"},
	{Feet, "0.3048", "3.048E-01"},
	{Yards, "0.9144", "9.144E-01"},
	{Mils, "0.0000254", "2.54E-05"},
	{Micrometres, "0.000001", "1.0E-06"},
	{Millimetres, "0.001", ""}, {Centimetres, "0.01", ""}, {Metres, "1", ""},
	{SquareInches, "0.00064516", "6.4516E-04"},
	{SquareFeet, "0.09290304", "9.290304E-02"},
	{SquareYards, "0.83612736", "8.361274E-01"},
	{SquareMillimetres, "0.000001", ""}, {SquareCentimetres, "0.0001", ""}, {SquareMetres, "1", ""},
	{CubicInches, "0.000016387064", "1.638706E-05"},
	{CubicFeet, "0.028316846592", "2.831685E-02"},
	{CubicYards, "0.764554857984", "7.645549E-01"},
	{Gallons, "0.003785411784", "3.785412E-03"},
	{Quarts, "0.000946352946", "9.463529E-04"},
	{Pints, "0.000473176473", "4.731765E-04"},
	{FluidOunces, "0.0000295735295625", "2.957353E-05"},
	{Millilitres, "0.000001", ""}, {Litres, "0.001", "1.0E-03"}, {CubicMetres, "1", ""},
	{Pounds, "0.45359237", "4.535924E-01"},
	{Ounces, "0.028349523125", "2.834952E-02"},
	{Grams, "0.001", ""}, {Kilograms, "1", ""}, {Tonnes, "1000", "1.0E+03"},
	{PoundsPerCubicFoot, "0.45359237/0.028316846592", "1.601846E+01"},
	{PoundsPerGallon, "0.45359237/0.003785411784", "1.198264E+02"},
	{KilogramsPerCubicMetre, "1", ""}, {KilogramsPerLitre, "1000", "1.0E+03"},
	{CubicFeetPerPound, "0.028316846592/0.45359237", ""},
	{LitresPerKilogram, "0.001", ""},
	{Fahrenheit, "5/9", "5.555556E-01"},
	{Celsius, "1", ""},
	{FahrenheitDifference, "5/9", "5.555556E-01"},
	{CelsiusDifference, "1", ""}, {Kelvins, "1", ""},
	{Seconds, "1", ""}, {Minutes, "60", "6.0E+01"}, {Hours, "3600", "3.6E+03"}, {Days, "86400", "8.64E+04"},
	{MilesPerHour, "0.44704", "4.4704E-01"},
	{FeetPerSecond, "0.3048", "3.048E-01"},
	{FeetPerMinute, "0.00508", "5.08E-03"},
	{KilometresPerHour, "1/3.6", "2.777778E-01"},
	{MetresPerSecond, "1", ""},
	{RPM, "1", ""}, {EachMinute, "1", ""}, {EachHour, "1/60", ""}, {FramesRate, "1", ""},
	{SquareFeetPerHour, "0.09290304/3600", ""}, {SquareMetresPerHour, "1/3600", ""},
	{PSI, "4.4482216152605/0.00064516", "6.894757E+03"},
	{Megapascals, "1000000", ""}, {Hectopascal, "100", ""},
	{WattsPerSquareMetre, "1", ""},
	{PoundsPerSquareFootHour, "0.45359237/334.450944", "1.356230E-03"},
	{KilogramsPerSquareMetreHour, "1/3600", ""},
	{MillionthsPerFahrenheit, "0.0000018", ""}, {MillionthsPerKelvin, "0.000001", ""},
	{FahrenheitHours, "2000", ""}, {CelsiusHours, "3600", ""},
	{CalendarDay, "1", ""}, {TimeOfDay, "1", ""},
}

// The base units of the kinds that are not counted in SI units, in SI units.
var bases = map[Kind]string{KindLength: "0.000001", KindArea: "0.000000000001", KindVolume: "0.000000000001", KindMass: "0.000000001"}

func rational(t *testing.T, text string) *big.Rat {
	t.Helper()
	over, under, found := strings.Cut(text, "/")
	r, ok := new(big.Rat).SetString(over)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	if !found {
		return r
	}
	d, ok := new(big.Rat).SetString(under)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return r.Quo(r, d)
}

func TestFactorsAgreeWithTheDefinitionsAndWithSP811(t *testing.T) {
	stated := map[*Unit]bool{Degrees: true, Radians: true}
	for _, f := range factors {
		u := f.unit
		stated[u] = true
		want := rational(t, f.exact)
		if b, ok := bases[u.Kind]; ok {
			want.Quo(want, rational(t, b))
		}
		top, bottom, _ := u.fraction()
		got := new(big.Rat).Quo(new(big.Rat).SetFloat64(top), new(big.Rat).SetFloat64(bottom))
		if got.Cmp(want) != 0 {
			t.Errorf("%s: one is %v base units, by definition %v", name(u), got, want)
		}
		if near, _ := want.Float64(); math.Abs(u.Size-near) > 4e-16*near {
			t.Errorf("%s: Size is %v, by definition %v", name(u), u.Size, near)
		}
		if f.sp811 == "" {
			continue
		}
		si, _ := u.Kind.SI(u.Size)
		digits := len(strings.Trim(f.sp811[:strings.Index(f.sp811, "E")], "0")) - 1 // without the point
		printed, err := strconv.ParseFloat(f.sp811, 64)
		if err != nil {
			t.Fatal(err)
		}
		half := math.Pow(10, math.Floor(math.Log10(printed))) * math.Pow(10, float64(1-max(digits, 7))) / 2
		if math.Abs(si-printed) > half*(1+1e-9) {
			t.Errorf("%s: %v in SI, SP 811 prints %s", name(u), si, f.sp811)
		}
	}
	for _, u := range All {
		if !stated[u] {
			t.Errorf("%s: no independent factor stands in this test", name(u))
		}
	}
}

func TestRadianIsHalfATurnOverPi(t *testing.T) {
	// 180/π to 32 digits, from π = 3.14159265358979323846264338327950288.
	if want := 57.295779513082320876798154814105; Radians.Size != want {
		t.Errorf("%v", Radians.Size)
	}
	if Degrees.Size != 1 {
		t.Error("the degree is the base")
	}
}

func TestTheTypedConstantsAreTheUnits(t *testing.T) {
	for _, c := range []struct {
		constant float64
		unit     *Unit
	}{
		{float64(Micrometre), Micrometres}, {float64(Millimetre), Millimetres}, {float64(Metre), Metres},
		{float64(Mil), Mils}, {float64(Inch), Inches}, {float64(Foot), Feet},
		{float64(SquareMetre), SquareMetres}, {float64(SquareInch), SquareInches}, {float64(SquareFoot), SquareFeet},
		{float64(Millilitre), Millilitres}, {float64(Litre), Litres}, {float64(CubicMetre), CubicMetres},
		{float64(FluidOunce), FluidOunces}, {float64(Quart), Quarts}, {float64(Gallon), Gallons}, {float64(CubicFoot), CubicFeet},
		{float64(Gram), Grams}, {float64(Kilogram), Kilograms}, {float64(Pound), Pounds}, {float64(Ounce), Ounces},
		{float64(Second), Seconds}, {float64(Minute), Minutes}, {float64(Hour), Hours}, {float64(Day), Days},
		{float64(Percent), PerCent},
	} {
		if c.constant != c.unit.Base(1) {
			t.Errorf("%s: %v and %v", name(c.unit), c.constant, c.unit.Base(1))
		}
	}
}

func TestEverySpellingIsReadAsItsUnit(t *testing.T) {
	type in struct {
		kind     Kind
		spelling string
	}
	whose := map[in]*Unit{}
	for _, u := range All {
		for i, s := range append([]string{u.Symbol}, u.Also...) {
			if s == "" {
				continue
			}
			var r reader
			r.fold(s)
			folded := string(r.rest())
			if i > 0 && folded != s {
				t.Errorf("%s: %q is folded to %q before it is compared, so it can never be read", name(u), s, folded)
			}
			if other := whose[in{u.Kind, folded}]; other != nil && other != u {
				t.Errorf("%q is both %s and %s", s, name(u), name(other))
			}
			whose[in{u.Kind, folded}] = u
			for _, text := range []string{"1 " + s, "1 " + strings.ToUpper(s)} {
				base, fault := Read(u.Kind, text, Habit{})
				if fault != nil || base != u.Base(1) {
					t.Errorf("%q is read as %v, %+v, want %v", text, base, fault, u.Base(1))
				}
			}
		}
	}
}

func name(u *Unit) string {
	if u.Symbol == "" {
		return "unit of kind " + strconv.Itoa(int(u.Kind))
	}
	return u.Symbol
}
