package unit

import (
	"math"
	"testing"
)

func TestPrintsDecimals(t *testing.T) {
	us, german := Style{Decimal: '.'}, Style{System: Metric, Decimal: ','}
	for _, c := range []struct {
		style  Style
		n      float64
		digits int
		want   string
		half   float64
	}{
		{us, 4.49013, 3, "4.49", 0.005},
		{us, 4.4996, 4, "4.5", 0.0005},
		{us, 0, 4, "0", 0.0005},
		{us, math.Copysign(0, -1), 4, "0", 0.0005},
		{us, -0.00000000001, 4, "0", 0.5e-9},
		{us, -2.5, 4, "−2.5", 0.0005},
		{us, 123_456.7, 4, "123457", 0.5},
		{us, 1e16, 4, "10000000000000000", 50},
		{us, 0.001, 4, "0.001", 0.5e-6},
		{us, 0.00012345678, 4, "0.0001235", 0.5e-7},
		{german, 4.49, 3, "4,49", 0.005},
		{german, 0.001, 4, "0,001", 0.5e-6},
		{german, 1234.5, 5, "1234,5", 0.05},
		// What carries into a new digit has one decimal less.
		{us, 9.9996, 4, "10", 0.005},
		{us, 9.9994, 4, "9.999", 0.0005},
		{us, 99.996, 4, "100", 0.05},
		{us, 0.99996, 4, "1", 0.0005},
		{us, 9999.6, 4, "10000", 0.5},
		{us, 0.000999996, 4, "0.001", 0.5e-6},
		{us, 6e-10, 4, "0.000000001", 0.5e-9},
		// What lies halfway goes away from nought.
		{us, 0.125, 2, "0.13", 0.005},
		{us, -0.125, 2, "−0.13", 0.005},
		{us, 2.5, 1, "3", 0.5},
		{us, 3.5, 1, "4", 0.5},
		{us, 2.675, 3, "2.68", 0.005},
		{us, 2.6749, 3, "2.67", 0.005},
		{us, math.NaN(), 4, "—", 0},
		{us, math.Inf(1), 4, "—", 0},
		{us, math.Inf(-1), 4, "—", 0},
	} {
		got, half := c.style.Number(c.n, Form{Unit: One, Digits: c.digits})
		if got != c.want || math.Abs(half-c.half) > 1e-12*c.half {
			t.Errorf("%v to %d: %q within %v, want %q within %v", c.n, c.digits, got, half, c.want, c.half)
		}
	}
}

func TestPrintsFractionsWithCarry(t *testing.T) {
	for _, c := range []struct {
		inches   float64
		unit     *Unit
		fraction int
		want     string
	}{
		{11.9999, Feet, 64, `1'-0"`},
		{23.99, Feet, 16, `2'-0"`},
		{11.5, Feet, 16, `11 1/2 in`},
		{75.5, Feet, 16, `6'-3 1/2"`},
		{75.5, Inches, 16, `75 1/2 in`},
		{72.25, Feet, 16, `6'-0 1/4"`},
		{-75.5, Feet, 16, `−6'-3 1/2"`},
		{-0.5, Inches, 16, `−1/2 in`},
		{-0.001, Inches, 16, `0 in`},
		{0, Feet, 16, `0 in`},
		{0.5, Inches, 16, `1/2 in`},
		{1. / 32, Inches, 16, `1/16 in`}, // halfway: up
		{-1. / 32, Inches, 16, `−1/16 in`},
		{3. / 10, Inches, 10, `3/10 in`},
		{math.NaN(), Feet, 16, `—`},
		{math.Inf(1), Inches, 16, `—`},
		{1e300, Feet, 16, Style{}.Exact(Inches.Base(1e300), Feet)},
	} {
		got, _ := Style{}.Form(Inches.Base(c.inches), Form{Unit: c.unit, Fraction: c.fraction})
		if got != c.want && c.inches < 1e200 {
			t.Errorf("%v: %q, want %q", c.inches, got, c.want)
		}
	}
}

func TestPrintsWithSymbols(t *testing.T) {
	us, german := Style{System: US}, Style{System: Metric, Decimal: ','}
	for _, c := range []struct {
		style Style
		f     Figure
		one   string
		both  string
	}{
		{us, Fig(Length(4490), InchMM), "0.1768 in", "0.1768 in (4.49 mm)"},
		{german, Fig(Length(4490), InchMM), "4,49 mm", "4,49 mm (0,1768 in)"},
		{us, Fig(Angle(45), Arc), "45°", "45°"},
		{us, Fig(Angle(22.5), &Pair{Form{Unit: Degrees, Fraction: 16}, Form{Unit: Degrees, Fraction: 16}}), "22.5°", "22.5°"},
		{us, Fig(Temperature(-40), Warmth), "−40 °F", "−40 °F (−40 °C)"},
		{us, Fig(Ratio(0.02), Share), "2 %", "2 %"},
		{us, Fig(Count(12), Whole1), "12", "12"},
		{us, Fig(PerMinute(6), Both(EachMinute)), "6/min", "6/min"},
		{us, Fig(Length(math.NaN()), InchMM), "—", "—"},
		{us, Fig(Date(20_625), Both(CalendarDay)), "2026-06-21", "2026-06-21"},
		{us, Fig(Date(math.Inf(1)), Both(CalendarDay)), "—", "—"},
		{us, Fig(Date(1e12), Both(CalendarDay)), "—", "—"},
		{us, Fig(Clock(52_229), Both(TimeOfDay)), "14:30", "14:30"},
		{us, Fig(Clock(52_230), Both(TimeOfDay)), "14:31", "14:31"},
		{us, Fig(Clock(86_390), Both(TimeOfDay)), "00:00", "00:00"},
		{us, Fig(Clock(-3600), Both(TimeOfDay)), "23:00", "23:00"},
		{us, Fig(Clock(math.NaN()), Both(TimeOfDay)), "—", "—"},
		{us, Fig(Clock(1e300), Both(TimeOfDay)), us.Print(Fig(Clock(math.Mod(1e300, 86_400)), Both(TimeOfDay))), ""},
	} {
		if got := c.style.Print(c.f); got != c.one {
			t.Errorf("%+v: %q, want %q", c.f, got, c.one)
		}
		if got := c.style.PrintBoth(c.f); c.both != "" && got != c.both {
			t.Errorf("%+v: %q, want %q", c.f, got, c.both)
		}
	}
}

func TestExactWritesWhatAFieldShows(t *testing.T) {
	german := Style{System: Metric, Decimal: ','}
	for _, c := range []struct {
		style Style
		base  float64
		unit  *Unit
		want  string
	}{
		{Style{}, 12_700, Inches, "1/2 in"},
		{Style{}, 1_917_700, Inches, "75 1/2 in"},
		{Style{}, -88_900, Inches, "−3 1/2 in"},
		{Style{}, 1_917_700, Feet, `6'-3 1/2"`},
		{Style{}, 3_657_600, Feet, "12 ft"},
		{Style{}, 20_000, Inches, "0.7874015748031496 in"},
		{Style{}, 25.4, Mils, "1 mil"},
		{Style{}, 5300, Millimetres, "5.3 mm"},
		{german, 1_917_700, Metres, "1,9177 m"},
		{Style{}, 35, Fahrenheit, "95 °F"},
		{Style{}, -40, Fahrenheit, "−40 °F"},
		{Style{}, math.Copysign(0, -1), Millimetres, "0 mm"},
		{Style{}, 0.02, PerCent, "2 %"},
		{Style{}, 52_220, TimeOfDay, "14:30:20"},
		{Style{}, math.NaN(), Inches, "—"},
		{Style{}, math.Inf(-1), Celsius, "—"},
		{Style{}, math.NaN(), CalendarDay, "—"},
	} {
		if got := c.style.Exact(c.base, c.unit); got != c.want {
			t.Errorf("%v: %q, want %q", c.base, got, c.want)
		}
	}
}
