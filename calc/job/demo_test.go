package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/job"
	"setbook/calc/link"
	"setbook/calc/unit"
)

// demoSums are the demo job's sums worked out, by the name of each.
type demoSums map[string]struct {
	entry calc.Entry
	sheet *calc.Sheet
}

func solveDemo(t *testing.T) demoSums {
	sums := demoSums{}
	for _, e := range job.Demo(noon).Entries {
		c, ok := all.ByID(e.Calculator)
		require.True(t, ok, e.Calculator)
		entry, problems := link.Read(c, e.Link, calc.Habit{})
		require.Empty(t, problems, e.Name)
		s := c.Solve(entry)
		require.Empty(t, s.Problems, e.Name)
		sums[e.Name] = struct {
			entry calc.Entry
			sheet *calc.Sheet
		}{entry, s}
	}
	return sums
}

// typed is what an entry of the demo holds; found, what a sum comes to.
func (d demoSums) typed(t *testing.T, name, key string) float64 {
	require.Contains(t, d, name)
	r := d[name].entry.Reading(key)
	require.False(t, r.Example, "%s: %s is not entered", name, key)
	return r.Base
}

func (d demoSums) found(t *testing.T, name, key string) float64 {
	require.Contains(t, d, name)
	a, ok := d[name].sheet.Answer(key)
	require.True(t, ok, "%s: %s", name, key)
	return a.Is.Base
}

// The demo's sums tell of one slab, one paver, one bag and one width of movement joint, and none of them says that the work should stop.
func TestDemoAgreesWithItself(t *testing.T) {
	d := solveDemo(t)
	for name, sum := range d {
		for _, c := range sum.sheet.Cautions {
			assert.NotEqual(t, calc.Stop, c.Severity, "%s: %s", name, english.Line(c.Says))
		}
	}

	// By hand: 14 columns of 600 mm want 8.4 m, so the slab of 8 m is cut: (8,000 − 12.7 − 12 × 595 − 11 × 5 − 2 × 12.7) ÷ 2 = 383.45 mm each side. The
	// other way 12.7 + 10 × 595 + 8 × 5 + 12.7 = 6,015.4 mm hold whole pavers. The area is 8 × 6.0154 = 48.1232 m², and 140 pavers are laid or cut up.
	assert.EqualValues(t, 20, d.found(t, "Courtyard", "cut"))
	assert.EqualValues(t, 120, d.found(t, "Courtyard", "full"))
	assert.InDelta(t, 383.45, d.found(t, "Courtyard", "narrowest")/float64(unit.Millimetre), 0.01)
	assert.Greater(t, d.found(t, "Courtyard", "narrowest"), d.typed(t, "Courtyard", "paver_w")/2)
	area := 48.1232 * float64(unit.SquareMetre)
	assert.InDelta(t, area, d.typed(t, "Membrane", "area"), area/1000)
	assert.InDelta(t, area, d.typed(t, "All of it", "area"), area/1000)
	assert.InDelta(t, area, d.typed(t, "Terrace", "area")+d.typed(t, "Along the house", "area"), area/1000)

	soft := d.found(t, "Joint grid", "width")
	for name, keys := range map[string][]string{"Courtyard": {"soft", "perimeter"}, "Field joints": {"width"}, "Around the edge": {"width"}} {
		for _, key := range keys {
			assert.InDelta(t, soft, d.typed(t, name, key), 1, "%s: %s, in micrometres", name, key)
		}
	}
	for name, run := range map[string]string{"Field joints": "soft_run", "Around the edge": "perimeter_run"} {
		assert.InEpsilon(t, d.found(t, "Courtyard", run), d.typed(t, name, "run"), 0.001, name)
	}

	paver := d.typed(t, "Courtyard", "paver_l")
	for name, keys := range map[string][]string{"Joint grid": {"paver"}, "Courtyard": {"paver_w"}, "Two setters": {"paver_l", "paver_w"}, "Third paver": {"paver_l", "paver_w"}, "All of it": {"paver_l", "paver_w"}, "The slab": {"edge"}} {
		for _, key := range keys {
			assert.Equal(t, paver, d.typed(t, name, key), "%s: %s", name, key)
		}
	}
	for _, name := range []string{"Joint grid", "Two setters", "All of it"} {
		assert.Equal(t, d.typed(t, "Courtyard", "joint"), d.typed(t, name, "joint"), name)
	}

	// One bag, the one that the order weighs, and what it gives.
	order, ok := all.ByID("takeoff")
	require.True(t, ok)
	bag := d.typed(t, "Mortar", "bag")
	assert.InDelta(t, order.Example().Reading("mortar_bag").Base, bag, 1e-6*bag)
	yield := d.found(t, "Mortar", "yield")
	for _, name := range []string{"Terrace", "Along the house"} {
		assert.InEpsilon(t, yield, d.typed(t, name, "bag_yield"), 0.01, name)
	}
	sawn := d.found(t, "Courtyard", "cut") * paver
	assert.InEpsilon(t, sawn, order.Example().Reading("cuts").Base, 0.05, "20 cuts of 595 mm are 11.9 m")
	assert.InEpsilon(t, d.found(t, "Terrace", "bed"), d.typed(t, "Two setters", "bed"), 0.02)
	assert.InEpsilon(t, d.found(t, "Terrace", "bed"), d.typed(t, "Field joints", "bed"), 0.02)

	// The slab falls 2 % and a tenth more, by the string and by the levels: 132 mm in 6 m are 2.2 %.
	for name, key := range map[string]string{"House to drain": "slope", "The slab": "away"} {
		assert.Greater(t, d.found(t, name, key), 0.021, name)
		assert.InDelta(t, 0.022, d.found(t, name, key), 0.0001, name)
	}
	// 0.595² × 0.02 m of 2,300 kg/m³, as the order takes them, are 16.28 kg.
	assert.InDelta(t, 16.28, d.typed(t, "One paver", "mass")/float64(unit.Kilogram), 0.05)
}
