package unit

import (
	"math"
	"testing"
	"unicode/utf8"
)

// habits are those that FuzzRead tries every text under.
func habits(k Kind) []Habit {
	all := []Habit{unknown, point, comma}
	for _, u := range All {
		if u.Kind == k {
			all = append(all, Habit{Bare: u}, Habit{Decimal: ',', Bare: u})
		}
	}
	return all
}

// Nothing that can be typed stops the reader. What reads is finite and within its
// kind, comes back from an exact print to the bit (but for what Exact names) and
// from a rounded one within half a unit of the last digit. What is refused says
// why, and every hint reads.
func FuzzRead(f *testing.F) {
	for _, s := range []struct {
		kind Kind
		text string
	}{
		{KindLength, `6' 3 1/2"`}, {KindLength, `6'-3-1/2"`}, {KindLength, `6-3 1/2`}, {KindLength, `6-3`}, {KindLength, `75 1/2`},
		{KindLength, `1½″`}, {KindLength, `6′ 3⁄4″`}, {KindLength, `1.9177 m`}, {KindLength, `1 905,5 mm`}, {KindLength, `1,905 m`},
		{KindLength, `12 mil`}, {KindLength, `−5.3 mm`}, {KindLength, `1e3 mm`}, {KindLength, `1/0 in`}, {KindLength, `5 kg`},
		{KindLength, "7\u202fµm"}, {KindLength, `0.0000000000000000000001 mil`}, {KindLength, "\xff1 \xf0in"},
		{KindArea, `100 sq. ft.`}, {KindVolume, `1 gal 2 qt 1 pt 4 fl oz`}, {KindVolume, `1 uk gal`}, {KindMass, `1 lb 4 oz`},
		{KindDensity, `1.6 kg per L`}, {KindYield, `0.6 L/kg`}, {KindTemperature, `73°`}, {KindTemperature, `32 °F`}, {KindTemperature, `32.00000000018 F`},
		{KindDifference, `10 K`}, {KindAngle, `45°`}, {KindAngle, `0.785398 rad`}, {KindSpan, `1 d 1 h 30 min`}, {KindSpan, `1:30`},
		{KindSpeed, `5 mph`}, {KindPerMinute, `6/min`}, {KindPerMinute, `90 per hour`}, {KindPerSecond, `30 fps`}, {KindAreaRate, `40 sq ft/h`},
		{KindPressure, `200 psi`}, {KindIrradiance, `1000 W/m²`}, {KindEvaporation, `0.2 lb/ft²·h`}, {KindExpansion, `5.5 × 10⁻⁶/°F`},
		{KindDegreeTime, `2 °F·h`}, {KindRatio, `1/4 in per ft`}, {KindRatio, `1:48`}, {KindRatio, `1 in 80`}, {KindRatio, `2" / 8'`}, {KindRatio, `2 per cent`},
		{KindNumber, `-1.25`}, {KindCount, `12 pcs`}, {KindDate, `2026-06-21`}, {KindClock, `2:30 p.m.`},
	} {
		f.Add(uint8(s.kind), s.text)
	}
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		k := Kind(kind % uint8(KindClock+1))
		for _, h := range habits(k) {
			base, fault := Read(k, text, h)
			if fault != nil {
				if fault.Why == 0 || base != 0 || utf8.RuneCountInString(fault.Read) > longest {
					t.Fatalf("%q: %v %+v", text, base, fault)
				}
				for _, hint := range fault.Try {
					if _, again := Read(k, hint, h); again != nil {
						t.Fatalf("%q: the hint %q is refused: %+v", text, hint, again)
					}
				}
				if len(fault.Try) == 0 && (fault.Why == AmbiguousHyphen || fault.Why == AmbiguousComma) {
					t.Fatalf("%q: fault %d without a hint", text, fault.Why)
				}
				continue
			}
			if math.IsNaN(base) || math.Abs(base) > limit(k) || base < 0 && !signs(k) || base == 0 && math.Signbit(base) {
				t.Fatalf("%q is read as %v", text, base)
			}
			if math.Abs(base) > 0.9*limit(k) {
				continue // a print of it may be rounded past the limit
			}
			for _, u := range All {
				if u.Kind == k {
					comesBack(t, u, base, '.')
					comesBack(t, u, base, ',')
					formComesBack(t, Form{Unit: u}, base, '.')
					formComesBack(t, Form{Unit: u, Digits: 2}, base, ',')
				}
			}
			if k == KindLength {
				formComesBack(t, Form{Unit: Feet, Fraction: 16}, base, '.')
				formComesBack(t, Form{Unit: Inches, Fraction: 64}, base, '.')
			}
		}
	})
}

// Any float64 that a calculation may give prints, exactly and rounded, as something
// that reads back, in every unit; what is not finite prints as a dash.
func FuzzPrint(f *testing.F) {
	for _, base := range []float64{0, 1, 25.4, 1587.5, 1_917_700, -88_900, 22.77777777777778, 1. / 3, 9.9996, 99_999.5, 6.80818531503093e6, 1e-9, 5e-324, 1e15, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)} {
		f.Add(base, uint8(4), uint8(16))
	}
	f.Fuzz(func(t *testing.T, base float64, digits, fraction uint8) {
		for _, u := range All {
			if math.IsNaN(base) || math.IsInf(base, 0) {
				exact := Style{}.Exact(base, u)
				text, half := Style{}.Form(base, Form{Unit: u, Digits: int(digits), Fraction: int(fraction)})
				if exact != none || text != none || half != 0 {
					t.Fatalf("%v in %s is printed %q and %q within %v", base, name(u), exact, text, half)
				}
				continue
			}
			v := base
			switch {
			case u == CalendarDay:
				v = math.Mod(math.Round(v), 84_000)
				if v < -25_567 {
					v = -v
				}
			case u == TimeOfDay:
				v = onClock(v)
			case !signs(u.Kind):
				v = math.Abs(v)
			}
			if math.Abs(v) > 0.9*limit(u.Kind) {
				Style{}.Form(v, Form{Unit: u, Digits: int(digits), Fraction: int(fraction)}) // does not stop
				Style{}.Exact(v, u)
				continue
			}
			if u != TimeOfDay || v < 86_399.5 { // half a second before midnight is 00:00
				comesBack(t, u, v, ',')
			}
			formComesBack(t, Form{Unit: u, Digits: int(digits)}, v, '.')
			if (u == Inches || u == Feet) && fraction > 0 {
				formComesBack(t, Form{Unit: u, Fraction: int(fraction)}, v, ',')
			}
		}
	})
}
