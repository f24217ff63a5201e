package unit

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
	"time"
)

// bareFor is the habit that reads back what a unit without a symbol prints.
func bareFor(u *Unit, decimal byte) Habit {
	h := Habit{Decimal: decimal}
	if u.Symbol == "" {
		h.Bare = u
	}
	return h
}

// exactly tells how far an exact print may come back from its base value. The two
// allowances are those that Exact names.
func exactly(u *Unit, base float64) float64 {
	n := math.Abs(u.Of(base))
	switch {
	case u == TimeOfDay || u == CalendarDay:
		return 0.5
	case u == Fahrenheit && math.Abs(base) < 1:
		return 1e-15
	case n < 1e-4:
		return 1e-22 * u.Size
	}
	return 0
}

// comesBack prints a base value exactly and reads it again.
func comesBack(t *testing.T, u *Unit, base float64, decimal byte) {
	t.Helper()
	text := Style{Decimal: decimal}.Exact(base, u)
	got, fault := Read(u.Kind, text, bareFor(u, decimal))
	if fault != nil {
		t.Errorf("%v in %s is printed %q, which is refused: %+v", base, name(u), text, *fault)
		return
	}
	if off := math.Abs(got - base); !(off <= exactly(u, base)) {
		t.Errorf("%v in %s is printed %q and read back as %v, off by %v", base, name(u), text, got, off)
	}
}

// formComesBack prints a base value rounded and reads it again.
func formComesBack(t *testing.T, f Form, base float64, decimal byte) {
	t.Helper()
	text, half := Style{Decimal: decimal}.Form(base, f)
	got, fault := Read(f.Unit.Kind, text, bareFor(f.Unit, decimal))
	if fault != nil {
		t.Errorf("%v in %s is printed %q, which is refused: %+v", base, name(f.Unit), text, *fault)
		return
	}
	off := math.Abs(got - base)
	if f.Unit == TimeOfDay { // a clock goes round
		off = math.Min(off, 86_400-off)
	}
	// 1e-14 of the value is what changing units and trusting fifteen digits cost.
	slack := 1e-14 * (math.Abs(base) + math.Abs(f.Unit.Zero))
	if !(off <= half+slack) {
		t.Errorf("%v in %s is printed %q and read back as %v, off by %v, over %v", base, name(f.Unit), text, got, off, half)
	}
}

// values are base values of a unit such as turn up on site and such as do not.
func values(u *Unit, r *rand.Rand) (all []float64) {
	if u == CalendarDay {
		return []float64{-25_567, 0, 20_625, 84_370}
	}
	if u == TimeOfDay {
		return []float64{0, 60, 52_220, 86_399}
	}
	for _, n := range []float64{0, 1, 2, 0.1, 0.3, 0.5, 0.75, 1. / 3, 1. / 16, 1. / 64, 3.4, 5.2, 12.7, 19.05, 22.68, 31.8, 50, 73, 75.5, 100, 304.8, 1905, 99_999.5, 1e-7} {
		all = append(all, u.Base(n), -u.Base(n))
	}
	for range 500 {
		n := math.Exp(r.Float64()*30-12) * (1 + r.Float64())
		all = append(all, u.Base(n), u.Base(math.Round(n*1000)/1000), -u.Base(n), math.Nextafter(u.Base(n), 0))
	}
	kept := all[:0]
	for _, v := range all {
		if math.Abs(v) < 0.9*limit(u.Kind) && (v >= 0 || signs(u.Kind)) {
			kept = append(kept, v)
		}
	}
	return kept
}

func TestEveryUnitPrintsAndReadsBack(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, u := range All {
		for _, v := range values(u, r) {
			for _, decimal := range []byte{'.', ','} {
				comesBack(t, u, v, decimal)
				for _, digits := range []int{0, 1, 3, 6, 12} {
					formComesBack(t, Form{Unit: u, Digits: digits}, v, decimal)
				}
			}
			if u == Inches || u == Feet {
				for _, fraction := range []int{1, 2, 4, 8, 16, 32, 64, 10} {
					formComesBack(t, Form{Unit: u, Fraction: fraction}, v, '.')
				}
			}
			if t.Failed() {
				return
			}
		}
	}
}

// A length is the same number in whichever unit it was typed.
func TestEvery1024thOfAnInchIsExact(t *testing.T) {
	for n := int64(1); n <= 144*1024; n += 7 {
		want := float64(n*25_400) / 1024 // a power of two divides exactly
		whole, part := n/1024, n%1024
		text := strconv.FormatInt(part, 10) + "/1024 in"
		if whole > 0 {
			text = strconv.FormatInt(whole, 10) + " " + text
		}
		got, fault := Read(KindLength, text, unknown)
		if fault != nil || got != want {
			t.Fatalf("%s: %v, want %v (%v)", text, got, want, fault)
		}
		// All 1024ths are finite decimals of an inch and of a metre.
		for _, u := range []*Unit{Inches, Feet, Millimetres, Metres} {
			comesBack(t, u, want, '.')
		}
		if t.Failed() {
			return
		}
	}
}

func TestEveryMicrometreIsExactInMillimetresAndMetres(t *testing.T) {
	for um := int64(1); um < 40_000_000; um += 997 {
		mm := strconv.FormatInt(um/1000, 10) + "." + strconv.FormatInt(1000+um%1000, 10)[1:] + " mm"
		m := strconv.FormatInt(um/1_000_000, 10) + "." + strconv.FormatInt(1_000_000+um%1_000_000, 10)[1:] + " m"
		for _, text := range []string{mm, m} {
			if got, fault := Read(KindLength, text, unknown); fault != nil || got != float64(um) {
				t.Fatalf("%s: %v (%v)", text, got, fault)
			}
		}
	}
}

// Against the calendar of the time package, for every day that is read.
func TestEveryDayFrom1900To2200(t *testing.T) {
	first, last := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC), time.Date(2200, 12, 31, 0, 0, 0, 0, time.UTC)
	days := 0
	for day := first; !day.After(last); day = day.AddDate(0, 0, 1) {
		want := float64(day.Unix() / 86_400)
		text := day.Format("2006-01-02")
		got, fault := Read(KindDate, text, unknown)
		if fault != nil || got != want {
			t.Fatalf("%s is read as %v, want %v (%v)", text, got, want, fault)
		}
		if printed := (Style{}).Exact(want, CalendarDay); printed != text {
			t.Fatalf("%v is printed %s, want %s", want, printed, text)
		}
		if y, m, d := Date(want).Civil(); y != int64(day.Year()) || m != int64(day.Month()) || d != int64(day.Day()) {
			t.Fatalf("%s is %d-%d-%d", text, y, m, d)
		}
		days++
	}
	if days != 109_938 { // 301 years, of which 73 are leap: 1900, 2100 and 2200 are not
		t.Errorf("%d days", days)
	}
}

func TestTheCalendarGoesOnBeforeTheEpochOfItsEra(t *testing.T) {
	for _, day := range []time.Time{time.Date(-1, 2, 28, 0, 0, 0, 0, time.UTC), time.Date(0, 2, 29, 0, 0, 0, 0, time.UTC), time.Date(1582, 10, 15, 0, 0, 0, 0, time.UTC), time.Date(9999, 12, 31, 0, 0, 0, 0, time.UTC)} {
		n := DayNumber(int64(day.Year()), int64(day.Month()), int64(day.Day()))
		if float64(n) != float64(day.Unix()/86_400) {
			t.Errorf("%v: day %v", day, n)
		}
		if y, m, d := n.Civil(); y != int64(day.Year()) || m != int64(day.Month()) || d != int64(day.Day()) {
			t.Errorf("%v: %d-%d-%d", day, y, m, d)
		}
	}
}

func TestEveryMinuteOfTheDay(t *testing.T) {
	midnight := time.Date(2026, 6, 21, 0, 0, 0, 0, time.UTC)
	for m := range 24 * 60 {
		at := midnight.Add(time.Duration(m) * time.Minute)
		for _, layout := range []string{"15:04", "3:04 pm", "3:04PM", "15:04:05"} {
			got, fault := Read(KindClock, at.Format(layout), unknown)
			if fault != nil || got != float64(m*60) {
				t.Fatalf("%s: %v (%v)", at.Format(layout), got, fault)
			}
		}
		if printed := (Style{}).Exact(float64(m*60), TimeOfDay); printed != at.Format("15:04") {
			t.Fatalf("%d min is printed %s", m, printed)
		}
	}
}

// n pieces of a size make a run of which exactly n are needed, and a hair more
// needs one more. The sizes are typed, the run is typed in metres or in inches, so
// that reading and counting are tried together.
func TestCountingPiecesGainsNoneFromRounding(t *testing.T) {
	read := func(text string) Length {
		l, fault := Read(KindLength, text, unknown)
		if fault != nil {
			t.Fatalf("%q: %+v", text, *fault)
		}
		return Length(l)
	}
	tried := 0
	count := func(n int, run, piece Length) {
		tried++
		if got := Whole(float64(run / piece)); got != Count(n) {
			t.Fatalf("%d pieces of %v µm: %v", n, piece, got)
		}
		if got := Whole(float64((run + 10) / piece)); got != Count(n+1) {
			t.Fatalf("%d pieces of %v µm and 10 µm: %v", n, piece, got)
		}
	}
	for _, paver := range []int{298, 300, 395, 400, 450, 500, 595, 597, 600, 750, 795, 800, 895, 900, 1195, 1200} {
		for joint := 2; joint <= 10; joint++ {
			piece := read(strconv.Itoa(paver)+" mm") + read(strconv.Itoa(joint)+" mm")
			for n := 1; n <= 2000; n++ {
				mm := n * (paver + joint)
				count(n, read(strconv.Itoa(mm/1000)+"."+strconv.Itoa(1000 + mm%1000)[1:]+" m"), piece)
			}
		}
	}
	for _, paver := range []int{188, 192, 252, 256, 284, 288, 376, 380, 384, 768} { // sixteenths of an inch
		for joint := 2; joint <= 8; joint++ {
			piece := read(strconv.Itoa(paver)+"/16 in") + read(strconv.Itoa(joint)+"/16 in")
			for n := 1; n <= 2000; n++ {
				s := n * (paver + joint)
				text := strconv.Itoa(s/192) + "' " + strconv.Itoa(s%192/16) + " " + strconv.Itoa(s%16) + "/16\""
				count(n, read(text), piece)
			}
		}
	}
	if tried < 400_000 {
		t.Errorf("only %d cases", tried)
	}
}

func TestWholeRoundsUpButNotForATrace(t *testing.T) {
	for _, c := range []struct{ x, want float64 }{
		{0, 0}, {0.001, 1}, {1, 1}, {1.001, 2}, {3.0000000001, 3}, {2.9999999999, 3}, {1e6 + 0.01, 1e6 + 1},
		// Bags of 50 lb for 600 lb, 600.1 lb and a trace under 600 lb.
		{600.0 / 50, 12}, {600.1 / 50, 13}, {599.9999999999 / 50, 12},
		{0.1 * 3 / 0.1, 3}, {-0.5, 0}, {-1.5, -1},
	} {
		got := float64(Whole(c.x))
		if got != c.want || math.Signbit(got) && got == 0 {
			t.Errorf("%v: %v, want %v", c.x, got, c.want)
		}
	}
}
