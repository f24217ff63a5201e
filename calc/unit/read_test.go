package unit

import (
	"math"
	"strings"
	"testing"
)

// The habits that entries are read under in these tests.
var (
	unknown = Habit{}
	point   = Habit{Decimal: '.'}
	comma   = Habit{Decimal: ','}
)

func bareIn(u *Unit) Habit { return Habit{Bare: u} }

// What is read: each value follows from the text by the definitions of the units,
// worked out by hand. 25,400 µm are an inch.
func TestReadsWhatABuilderWrites(t *testing.T) {
	const in = 25_400.0
	for _, c := range []struct {
		kind  Kind
		text  string
		habit Habit
		want  float64
	}{
		// Feet and inches.
		{KindLength, `6' 3 1/2"`, unknown, 75.5 * in},
		{KindLength, `6'-3 1/2"`, unknown, 75.5 * in},
		{KindLength, `6' - 3 1/2"`, unknown, 75.5 * in},
		{KindLength, `6'-3-1/2"`, unknown, 75.5 * in},
		{KindLength, `6'3½"`, unknown, 75.5 * in},
		{KindLength, `6 ft 3.5 in`, unknown, 75.5 * in},
		{KindLength, `6ft 3-1/2in`, unknown, 75.5 * in},
		{KindLength, `6ft3in`, unknown, 75 * in},
		{KindLength, `6 ft. 3 in.`, unknown, 75 * in},
		{KindLength, `6 FEET 3 INCHES`, unknown, 75 * in},
		{KindLength, `6' 3`, unknown, 75 * in},
		{KindLength, `6'`, unknown, 72 * in},
		{KindLength, `0' 3"`, unknown, 3 * in},
		{KindLength, `6-3 1/2`, unknown, 75.5 * in},
		{KindLength, `6-3-1/2"`, unknown, 75.5 * in},
		{KindLength, `6-3 1/2`, bareIn(Millimetres), 75.5 * in},
		{KindLength, `−6'-3"`, unknown, -75 * in},
		// Inches and their fractions.
		{KindLength, `75 1/2`, unknown, 75.5 * in},
		{KindLength, `1/2`, unknown, in / 2},
		{KindLength, `3-1/2"`, unknown, 3.5 * in},
		{KindLength, `3-1/2`, unknown, 3.5 * in},
		{KindLength, `½ in`, unknown, in / 2},
		{KindLength, `1½"`, unknown, 1.5 * in},
		{KindLength, `3 ½ in`, unknown, 3.5 * in},
		{KindLength, `3-½ in`, unknown, 3.5 * in},
		{KindLength, `3 / 16 in`, unknown, 3 * in / 16},
		{KindLength, `3/2 in`, unknown, 1.5 * in},
		{KindLength, `⅛"`, unknown, in / 8},
		{KindLength, `1/64 in`, unknown, 396.875},
		{KindLength, `1/1024 in`, unknown, 24.8046875},
		{KindLength, `.5 in`, unknown, in / 2},
		{KindLength, `75 1/2`, bareIn(Inches), 75.5 * in},
		{KindLength, `6 1/2`, bareIn(Feet), 78 * in},
		// Quotation marks, primes, strokes, spaces and signs of typesetting.
		{KindLength, `6′ 3½″`, unknown, 75.5 * in},
		{KindLength, `6’ 3½”`, unknown, 75.5 * in},
		{KindLength, `6‘ 3 1⁄2“`, unknown, 75.5 * in},
		{KindLength, `3''`, unknown, 3 * in},
		{KindLength, `3’’`, unknown, 3 * in},
		{KindLength, `6′–3″`, unknown, 75 * in},
		{KindLength, "75 1∕2 in", unknown, 75.5 * in},
		{KindLength, " 75\u00a01/2\u202fin ", unknown, 75.5 * in},
		{KindLength, "75\u20091/2\tin", unknown, 75.5 * in},
		{KindLength, "\ufeff75 in\u200b", unknown, 75 * in},
		// Other lengths.
		{KindLength, `1.9177 m`, unknown, 1_917_700},
		{KindLength, `5.3 mm`, unknown, 5300},
		{KindLength, `20mm`, unknown, 20_000},
		{KindLength, `19.05 MM`, unknown, 19_050},
		{KindLength, `12 mil`, unknown, 304.8},
		{KindLength, `1 mil`, unknown, 25.4},
		{KindLength, `10 thou`, unknown, 254},
		{KindLength, `7 µm`, unknown, 7},
		{KindLength, `7 μm`, unknown, 7},
		{KindLength, `-5 mm`, unknown, -5000},
		{KindLength, `- 5 mm`, unknown, -5000},
		{KindLength, `+5 mm`, unknown, 5000},
		{KindLength, `-0 mm`, unknown, 0},
		{KindLength, `5`, bareIn(Millimetres), 5000},
		{KindLength, `0.333333333333333333333333333333333 in`, unknown, in / 3},
		{KindLength, `0.0000000000000000000000000000003 in`, unknown, 0},
		{KindLength, `1 1/2 m`, unknown, 1_500_000},
		// Decimal and group marks.
		{KindLength, `12,5 mm`, unknown, 12_500},
		{KindLength, `0,905 m`, unknown, 905_000},
		{KindLength, `12,5 mm`, comma, 12_500},
		{KindLength, `,5 mm`, comma, 500},
		{KindLength, `1,905 m`, comma, 1_905_000},
		{KindLength, `1,905 mm`, point, 1_905_000},
		{KindLength, `1.905 m`, unknown, 1_905_000},
		{KindLength, `1.905 mm`, comma, 1_905_000},
		{KindLength, `1.234,5 mm`, comma, 1_234_500},
		{KindLength, `1,234.5 mm`, point, 1_234_500},
		{KindLength, `1,234.5 mm`, unknown, 1_234_500},
		{KindLength, `1.234,5 mm`, unknown, 1_234_500},
		{KindLength, `1,234,567 mm`, unknown, 1_234_567_000},
		{KindLength, `1.234.567 mm`, unknown, 1_234_567_000},
		{KindLength, `1 905 mm`, unknown, 1_905_000},
		{KindLength, "1\u202f234,5 mm", comma, 1_234_500},
		{KindLength, "12\u00a0345\u00a0678 µm", unknown, 12_345_678},
		// The other kinds.
		{KindArea, `100 ft²`, unknown, 100 * 304_800 * 304_800},
		{KindArea, `100 ft2`, unknown, 100 * 304_800 * 304_800},
		{KindArea, `100 sq. ft.`, unknown, 100 * 304_800 * 304_800},
		{KindArea, `10 m²`, unknown, 10e12},
		{KindVolume, `5.2 qt`, unknown, 4_921_035_319.2},
		{KindVolume, `1 gal 1 pt`, unknown, 3_785_411_784 + 473_176_473},
		{KindVolume, `1 gal 2 qt 1 pt 4 fl oz`, unknown, 3_785_411_784 * (1 + 1./2 + 1./8 + 1./32)},
		{KindVolume, `6 US gal`, unknown, 6 * 3_785_411_784},
		{KindVolume, `1-1/2 gal`, unknown, 1.5 * 3_785_411_784},
		{KindVolume, `5 l`, unknown, 5e9},
		{KindVolume, `500 mL`, unknown, 5e8},
		{KindMass, `1 lb 4 oz`, unknown, 566_990_462.5},
		{KindMass, `50#`, unknown, 50 * 453_592_370},
		{KindMass, `22.68 kg`, unknown, 22.68e9},
		{KindDensity, `1.6 kg/L`, unknown, 1600},
		{KindDensity, `1.6 kg / l`, unknown, 1600},
		{KindDensity, `1.6 kg per L`, unknown, 1600},
		{KindYield, `0.6 L/kg`, unknown, 0.0006},
		{KindSpan, `1 h 30 min`, unknown, 5400},
		{KindSpan, `1h30min`, unknown, 5400},
		{KindSpan, `2 d 3 h`, unknown, 183_600},
		{KindSpan, `1 h 1 min 1.5 s`, unknown, 3661.5},
		{KindSpan, `1/2 h`, unknown, 1800},
		{KindSpan, `-2 h`, unknown, -7200},
		{KindTemperature, `95 F`, unknown, 35},
		{KindTemperature, `95°F`, unknown, 35},
		{KindTemperature, `95 ° f`, unknown, 35},
		{KindTemperature, `95 ºF`, unknown, 35},
		{KindTemperature, `95 deg. F`, unknown, 35},
		{KindTemperature, `95 ℉`, unknown, 35},
		{KindTemperature, `95°`, bareIn(Fahrenheit), 35},
		{KindTemperature, `95`, bareIn(Fahrenheit), 35},
		{KindTemperature, `21°`, bareIn(Celsius), 21},
		{KindTemperature, `−40 °F`, unknown, -40},
		{KindTemperature, `-5 C`, unknown, -5},
		{KindDifference, `18 °F`, unknown, 10},
		{KindDifference, `18°`, bareIn(Fahrenheit), 10},
		{KindDifference, `10 K`, unknown, 10},
		{KindAngle, `45 deg`, unknown, 45},
		{KindAngle, `45°`, unknown, 45},
		{KindAngle, `-22 1/2°`, unknown, -22.5},
		{KindPerMinute, `300 rpm`, unknown, 300},
		{KindPerMinute, `6/min`, unknown, 6},
		{KindPerMinute, `6 per minute`, unknown, 6},
		{KindPerMinute, `90 /h`, unknown, 1.5},
		{KindPerSecond, `30 fps`, unknown, 30},
		{KindSpeed, `30 fps`, unknown, 9.144},
		{KindSpeed, `18 km/h`, unknown, 5},
		{KindExpansion, `5.5 × 10⁻⁶/°F`, unknown, 9.9e-6},
		{KindExpansion, `5.5e-6/F`, unknown, 9.9e-6},
		{KindExpansion, `9 10^-6/K`, unknown, 9e-6},
		{KindEvaporation, `0.36 kg/m²·h`, unknown, 1e-4},
		{KindDegreeTime, `2 °F·h`, unknown, 4000},
		// Ratios.
		{KindRatio, `1:48`, unknown, 1. / 48},
		{KindRatio, `1 : 48`, unknown, 1. / 48},
		{KindRatio, `1/48`, unknown, 1. / 48},
		{KindRatio, `1/48`, bareIn(PerCent), 1. / 48},
		{KindRatio, `1 in 80`, unknown, 1. / 80},
		{KindRatio, `1:12,5`, comma, 0.08},
		{KindRatio, `0.25/12`, unknown, 1. / 48},
		{KindRatio, `2 %`, unknown, 0.02},
		{KindRatio, `2%`, unknown, 0.02},
		{KindRatio, `2 per cent`, unknown, 0.02},
		{KindRatio, `2½ %`, unknown, 0.025},
		{KindRatio, `0.02`, unknown, 0.02},
		{KindRatio, `10`, bareIn(PerCent), 0.1},
		{KindRatio, `1/4 in per ft`, unknown, 1. / 48},
		{KindRatio, `1/4 in/ft`, unknown, 1. / 48},
		{KindRatio, `¼"/ft`, unknown, 1. / 48},
		{KindRatio, `1/4" per 1'`, unknown, 1. / 48},
		{KindRatio, `20 mm/m`, unknown, 0.02},
		{KindRatio, `2" / 8'`, unknown, 1. / 48},
		{KindRatio, `1' 1/2" / 25'`, unknown, 12.5 / 300},
		{KindRatio, `1/8 in in 10 ft`, unknown, 1. / 960},
		{KindRatio, `1 ft 6 in in 20 ft`, unknown, 0.075},
		{KindRatio, `3 mm in 2 m`, unknown, 0.0015},
		{KindRatio, `-0 mm/m`, unknown, 0},
		{KindRatio, `-20 mm/m`, unknown, -0.02},
		// Numbers.
		{KindNumber, `-1.25`, unknown, -1.25},
		{KindNumber, `3/4`, unknown, 0.75},
		{KindCount, `12`, unknown, 12},
		{KindCount, `12 pcs`, unknown, 12},
		{KindCount, `2.5`, unknown, 2.5},
		// Days and times.
		{KindDate, `1970-01-01`, unknown, 0},
		{KindDate, `2024-02-29`, unknown, 19_782},
		{KindDate, ` 2026‑06‑21 `, unknown, 20_625},
		{KindDate, `1900-01-01`, unknown, -25_567},
		{KindClock, `14:30`, unknown, 52_200},
		{KindClock, `2:30 pm`, unknown, 52_200},
		{KindClock, `2:30 p.m.`, unknown, 52_200},
		{KindClock, `7 am`, unknown, 25_200},
		{KindClock, `7AM`, unknown, 25_200},
		{KindClock, `12 am`, unknown, 0},
		{KindClock, `12:15 pm`, unknown, 44_100},
		{KindClock, `00:00`, unknown, 0},
		{KindClock, `6:05:30`, unknown, 21_930},
	} {
		got, fault := Read(c.kind, c.text, c.habit)
		if fault != nil {
			t.Errorf("%q: fault %d, try %q", c.text, fault.Why, fault.Try)
			continue
		}
		// Lengths, volumes and masses are whole or exact fractions and must be
		// so to the bit; the quotients of the others are the nearest float64.
		if got != c.want || math.Signbit(got) != math.Signbit(c.want) {
			t.Errorf("%q: %v, want %v", c.text, got, c.want)
		}
	}
}

// What is refused, why, and what is offered instead.
func TestRefusesWhatCouldMeanSomethingElse(t *testing.T) {
	for _, c := range []struct {
		kind  Kind
		text  string
		habit Habit
		why   Why
		try   []string
	}{
		{KindLength, ``, unknown, Empty, nil},
		{KindLength, " \t\u00a0\u200b", unknown, Empty, nil},
		{KindDate, ` `, unknown, Empty, nil},
		// No number.
		{KindLength, `mm`, unknown, NotNumber, nil},
		{KindLength, `—`, unknown, NotNumber, nil},
		{KindLength, `-`, unknown, NotNumber, nil},
		{KindLength, `--5 mm`, unknown, NotNumber, nil},
		{KindLength, `five mm`, unknown, NotNumber, nil},
		{KindNumber, `Inf`, unknown, NotNumber, nil},
		{KindNumber, `NaN`, unknown, NotNumber, nil},
		{KindNumber, `1e3`, unknown, NotNumber, nil},
		{KindLength, `1E3 mm`, unknown, NotNumber, nil},
		{KindLength, `1e+3 mm`, unknown, NotNumber, nil},
		{KindLength, `5. mm`, unknown, NotNumber, nil},
		{KindLength, `1.2.3 mm`, unknown, NotNumber, nil},
		{KindLength, `1,23,456 mm`, unknown, NotNumber, nil},
		{KindLength, `1.2.3 mm`, point, NotNumber, nil},
		{KindLength, `75 12`, unknown, NotNumber, nil},
		{KindLength, `6² mm`, unknown, NotNumber, nil},
		{KindLength, `½½ in`, unknown, NotNumber, nil},
		{KindLength, `½2 in`, unknown, NotNumber, nil},
		{KindLength, `1/2/3 in`, unknown, NotNumber, nil},
		{KindLength, `1/1234567890 in`, unknown, NotNumber, nil},
		{KindLength, `5-1/0 in`, unknown, ZeroDenominator, nil},
		{KindLength, `6-9999999999999999999 in`, unknown, TooBig, nil},
		{KindRatio, `x`, unknown, NotNumber, nil},
		{KindVolume, `1 uk ton`, unknown, UnknownUnit, nil},
		{KindLength, `1.5/2 in`, unknown, NotNumber, nil},
		{KindLength, `1/2.5 in`, unknown, NotNumber, nil},
		{KindLength, `75 11/2 in`, unknown, NotNumber, nil},
		{KindLength, `3.5 1/2 in`, unknown, NotNumber, nil},
		{KindLength, `6.3 ft 3 in`, unknown, NotNumber, nil},
		{KindLength, `3 in 6 ft`, unknown, NotNumber, nil},
		{KindLength, `6 ft 3 in 2`, unknown, NotNumber, nil},
		{KindLength, `6' 5-3 1/2"`, unknown, NotNumber, nil},
		{KindLength, `6'-`, unknown, NotNumber, nil},
		{KindLength, `6-12 1/2"`, unknown, NotNumber, nil},
		{KindVolume, `1 gal - 1 pt`, unknown, NotNumber, nil},
		{KindMass, `1 oz 4 lb`, unknown, NotNumber, nil},
		{KindMass, `1-2 1/2 lb`, unknown, NotNumber, nil},
		{KindLength, `1 m 20 cm`, unknown, NotNumber, nil},
		{KindLength, strings.Repeat("0", 37) + ` 5 mm`, unknown, NotNumber, nil},
		{KindSpan, `1:30`, unknown, NotNumber, []string{`1 h 30 min`, `1 min 30 s`}},
		{KindRatio, `1:2:3`, unknown, NotNumber, nil},
		{KindRatio, `1/2/3`, unknown, NotNumber, nil},
		{KindRatio, `1 foo/ft`, unknown, UnknownUnit, nil},
		{KindRatio, `1 in in`, unknown, UnknownUnit, nil},
		{KindRatio, `1 in/`, unknown, UnknownUnit, nil},
		{KindRatio, `1 in/ft/ft`, unknown, UnknownUnit, nil},
		// Units.
		{KindLength, `5 foo`, unknown, UnknownUnit, nil},
		{KindLength, `5 mm thick`, unknown, UnknownUnit, nil},
		{KindLength, `0x10 mm`, unknown, UnknownUnit, nil},
		{KindLength, `6 ft, 3 in`, unknown, UnknownUnit, nil},
		{KindLength, `5 ft.5 in`, unknown, UnknownUnit, nil},
		{KindVolume, `1 UK gal`, unknown, UnknownUnit, []string{`4.54609 L`}},
		{KindVolume, `2 imp gal`, comma, UnknownUnit, []string{`9,09218 L`}},
		{KindVolume, `8 imperial pt`, unknown, UnknownUnit, []string{`4.54609 L`}},
		{KindLength, `5 kg`, unknown, WrongKind, nil},
		{KindLength, `5 m²`, unknown, WrongKind, nil},
		{KindLength, `6 ft 3 lb`, unknown, WrongKind, nil},
		{KindNumber, `5 mm`, unknown, WrongKind, nil},
		{KindSpan, `5 m`, unknown, WrongKind, nil},
		{KindRatio, `5 W/m²`, unknown, WrongKind, nil},
		{KindRatio, `5 mm/kg`, unknown, WrongKind, nil},
		{KindLength, `5`, unknown, NoUnit, nil},
		{KindLength, `5`, bareIn(Kilograms), NoUnit, nil},
		{KindLength, `1/2`, bareIn(Millimetres), NoUnit, []string{`1/2 in`, `1/2 mm`}},
		{KindMass, `1/2`, unknown, NoUnit, nil},
		{KindTemperature, `73`, unknown, NoUnit, nil},
		{KindTemperature, `73°`, unknown, NoUnit, []string{`73 °F`, `73 °C`}},
		{KindSpan, `1 h 30`, unknown, NoUnit, []string{`1 h 30 min`}},
		{KindMass, `1 lb 4`, unknown, NoUnit, []string{`1 lb 4 oz`}},
		// Hyphens.
		{KindLength, `6-3`, unknown, AmbiguousHyphen, []string{`6' 3"`, `6 3/16 in`}},
		{KindLength, `6-3"`, unknown, AmbiguousHyphen, []string{`6' 3"`, `6 3/16 in`}},
		{KindLength, `6 - 3 in`, unknown, AmbiguousHyphen, []string{`6' 3"`, `6 3/16 in`}},
		{KindLength, `10–20 mm`, unknown, AmbiguousHyphen, []string{`10 mm`, `20 mm`}},
		{KindLength, `6-3 1/2 ft`, unknown, AmbiguousHyphen, []string{`6' 3 1/2"`}},
		{KindLength, `6-1/2`, bareIn(Feet), AmbiguousHyphen, []string{`6-1/2 in`, `6-1/2 ft`}},
		{KindVolume, `5.2-5.6 qt`, unknown, AmbiguousHyphen, []string{`5.2 qt`, `5.6 qt`}},
		{KindTemperature, `50 - 90 °F`, unknown, AmbiguousHyphen, []string{`50 °F`, `90 °F`}},
		{KindMass, `5-6`, unknown, NotNumber, nil},
		// Marks.
		{KindLength, `1,905 m`, unknown, AmbiguousComma, []string{`1905 m`, `1.905 m`}},
		{KindLength, `1,905`, bareIn(Millimetres), AmbiguousComma, []string{`1905`, `1.905`}},
		{KindLength, `12,5 mm`, point, WrongMark, []string{`12.5 mm`}},
		{KindLength, `0,905 m`, point, WrongMark, []string{`0.905 m`}},
		{KindLength, `1.234,5 mm`, point, WrongMark, []string{`1,234.5 mm`}},
		{KindLength, `12.5 mm`, comma, WrongMark, []string{`12,5 mm`}},
		{KindLength, `1,234.5 mm`, comma, WrongMark, []string{`1.234,5 mm`}},
		// Amounts.
		{KindLength, `1/0 in`, unknown, ZeroDenominator, nil},
		{KindLength, `3 1/0 in`, unknown, ZeroDenominator, nil},
		{KindRatio, `1:0`, unknown, ZeroDenominator, nil},
		{KindRatio, `1 in/0 ft`, unknown, ZeroDenominator, nil},
		{KindMass, `-5 kg`, unknown, Negative, nil},
		{KindArea, `−1 m²`, unknown, Negative, nil},
		{KindCount, `-1`, unknown, Negative, nil},
		{KindPerMinute, `-1 rpm`, unknown, Negative, nil},
		{KindLength, `1000000001 m`, unknown, TooBig, nil},
		{KindNumber, `9999999999999999999999`, unknown, TooBig, nil},
		// Days and times.
		{KindDate, `2026-02-29`, unknown, NoSuchDate, nil},
		{KindDate, `2100-02-29`, unknown, NoSuchDate, nil},
		{KindDate, `2026-13-01`, unknown, NoSuchDate, nil},
		{KindDate, `2026-00-10`, unknown, NoSuchDate, nil},
		{KindDate, `2026-04-31`, unknown, NoSuchDate, nil},
		{KindDate, `2026-06-00`, unknown, NoSuchDate, nil},
		{KindDate, `1899-12-31`, unknown, NoSuchDate, nil},
		{KindDate, `2201-01-01`, unknown, NoSuchDate, nil},
		{KindDate, `21/06/2026`, unknown, NoSuchDate, nil},
		{KindDate, `2026-6-21`, unknown, NoSuchDate, nil},
		{KindDate, `2026-06-21 x`, unknown, NoSuchDate, nil},
		{KindClock, `24:00`, unknown, NoSuchTime, nil},
		{KindClock, `12:60`, unknown, NoSuchTime, nil},
		{KindClock, `13 pm`, unknown, NoSuchTime, nil},
		{KindClock, `0 am`, unknown, NoSuchTime, nil},
		{KindClock, `14`, unknown, NoSuchTime, nil},
		{KindClock, `7:5`, unknown, NoSuchTime, nil},
		{KindClock, `noonish`, unknown, NoSuchTime, nil},
	} {
		got, fault := Read(c.kind, c.text, c.habit)
		if fault == nil {
			t.Errorf("%q is read as %v, want fault %d", c.text, got, c.why)
			continue
		}
		if fault.Why != c.why || strings.Join(fault.Try, "|") != strings.Join(c.try, "|") {
			t.Errorf("%q: fault %d, try %q, want %d, %q", c.text, fault.Why, fault.Try, c.why, c.try)
		}
		switch fault.Why {
		case UnknownUnit, WrongKind, NoUnit:
			if strings.Join(fault.Units, "|") != strings.Join(Symbols(c.kind), "|") {
				t.Errorf("%q: offers %q", c.text, fault.Units)
			}
		}
	}
}

func TestAFaultShowsWhatWasTypedCutShort(t *testing.T) {
	for text, want := range map[string]string{
		"  5 foo ":              "5 foo",
		strings.Repeat("½", 60): strings.Repeat("½", 40),
		strings.Repeat("½", 30): strings.Repeat("½", 30),
		strings.Repeat("x", 41): strings.Repeat("x", 40),
	} {
		_, fault := Read(KindLength, text, unknown)
		if fault == nil || fault.Read != want {
			t.Errorf("%q: %+v", text, fault)
		}
	}
}

func TestABareTemperatureDoesNotLendItsNoughtToADifference(t *testing.T) {
	if got, fault := Read(KindDifference, "20°", bareIn(Fahrenheit)); fault != nil || math.Abs(got-100./9) > 1e-12 {
		t.Errorf("%v %+v", got, fault)
	}
}

func BenchmarkRead(b *testing.B) {
	for _, c := range []struct {
		name string
		kind Kind
		text string
	}{
		{"feet and inches", KindLength, `6' 3 1/2"`},
		{"millimetres", KindLength, `19.05 mm`},
		{"ratio", KindRatio, `1/4 in per ft`},
		{"evaporation", KindEvaporation, `0.2 lb/ft²·h`},
		{"refused", KindLength, `5 foo`},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Read(c.kind, c.text, Habit{Decimal: '.'})
			}
		})
	}
}

func TestSymbolsAreThoseOfTheKind(t *testing.T) {
	for kind, want := range map[Kind]string{KindMass: "lb oz g kg t", KindRatio: "%", KindTemperature: "°F °C", KindNumber: "", KindDate: ""} {
		if got := strings.Join(Symbols(kind), " "); got != want {
			t.Errorf("kind %d: %q, want %q", kind, got, want)
		}
	}
}

// The vulgar fractions of Unicode, by their character names.
func TestEveryVulgarFraction(t *testing.T) {
	for text, want := range map[string]float64{
		"½": 1. / 2, "¼": 1. / 4, "¾": 3. / 4, "⅛": 1. / 8, "⅜": 3. / 8, "⅝": 5. / 8, "⅞": 7. / 8, "⅓": 1. / 3, "⅔": 2. / 3,
		"⅕": 1. / 5, "⅖": 2. / 5, "⅗": 3. / 5, "⅘": 4. / 5, "⅙": 1. / 6, "⅚": 5. / 6, "⅐": 1. / 7, "⅑": 1. / 9, "⅒": 1. / 10,
	} {
		if got, fault := Read(KindNumber, text, unknown); fault != nil || got != want {
			t.Errorf("%s: %v %+v", text, got, fault)
		}
	}
}
