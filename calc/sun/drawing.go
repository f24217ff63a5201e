package sun

import (
	"math"

	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/weather"
	"setbook/calc/words"
)

// Sizes of the drawing, a millimetre for each CSS px of the page.
const (
	perHour   = 12.5 * unit.Millimetre
	perDegree = 1.6 * unit.Millimetre
	twilight  = unit.Angle(-6) // below it the curve is not drawn, to leave room for words
)

// at is a place of the drawing: hours of the clock to the right, elevation up.
func at(clock unit.Span, elevation unit.Angle) calc.Point {
	return calc.Point{X: perHour * unit.Length(clock/unit.Hour), Y: perDegree * unit.Length(elevation)}
}

// drawing shows the sun's way over the day on the clock, with now marked on it.
func drawing(p weather.Place, e calc.Entry, sky weather.Sky, day weather.Day) calc.Drawing {
	now := weather.Clock.Of(e)
	time := func(name string, c unit.Clock) *words.Arg { return words.Is(name, c, weather.TimePair) }
	d := calc.Drawing{
		Title: "The sun over the day",
		Says: words.Say("Hours of the clock to the right and degrees over the horizon up, each to a length. The sun is up from {rise} to {set}. Now, at {now}, it stands at {elevation}.",
			time("rise", day.Rise.Clock), time("set", day.Set.Clock), time("now", now), words.Is("elevation", sky.Elevation, brief)),
	}
	switch {
	case day.Rise.Stay == weather.StaysUp && day.Set.Stay == weather.StaysUp:
		d.Says = words.Say("Hours of the clock to the right and degrees over the horizon up, each to a length. The sun does not set. Now, at {now}, it stands at {elevation}.",
			time("now", now), words.Is("elevation", sky.Elevation, brief))
	case day.Rise.Stay == weather.StaysDown && day.Set.Stay == weather.StaysDown:
		d.Says = words.Say("Hours of the clock to the right and degrees over the horizon up, each to a length. The sun does not rise. Now, at {now}, it stands at {elevation}.",
			time("now", now), words.Is("elevation", sky.Elevation, brief))
	}
	d.Line(calc.Outline, at(0, 0), at(unit.Day, 0))
	for clock := unit.Span(0); clock <= unit.Day; clock += 6 * unit.Hour {
		d.Line(calc.Outline, at(clock, 0), at(clock, -2))
	}
	labels(&d, now, sky, day, way(&d, p, weather.Date.Of(e)))
	return d
}

// way draws the sun's way, a line over the horizon and dashed in the dusk below it, and tells its highest point.
func way(d *calc.Drawing, p weather.Place, date unit.Date) (highest unit.Angle) {
	var points []calc.Point
	over := true
	end := func() {
		if len(points) > 1 {
			of := calc.Hidden
			if over {
				of = calc.Outline
			}
			d.Line(of, points...)
		}
		points = nil
	}
	const step = 10 * unit.Minute
	for clock := unit.Span(0); clock <= unit.Day; clock += step {
		h := p.Sky(weather.SunAt(date, clock, p.Zone), clock).Elevation
		highest = max(highest, h)
		if h < twilight {
			end()
			continue
		}
		if len(points) > 0 && over != (h >= 0) {
			last := points[len(points)-1]
			end()
			points = append(points, last)
		}
		over = h >= 0
		points = append(points, at(clock, h))
	}
	end()
	return highest
}

// labels writes sunrise and sunset outward of their places under the horizon, and now over all, so that
// none lies on another.
func labels(d *calc.Drawing, now unit.Clock, sky weather.Sky, day weather.Day, highest unit.Angle) {
	const under, reach, beside = 24 * unit.Millimetre, 30 * unit.Millimetre, 4 * unit.Millimetre
	time := func(name string, c unit.Clock) *words.Arg { return words.Is(name, c, weather.TimePair) }
	edge := func(e weather.Edge, left bool, l words.Line) {
		if e.Stay != weather.Crosses {
			return
		}
		x, anchor, shift := at(unit.Span(e.Clock), 0).X, calc.Start, beside
		if left {
			anchor, shift = calc.End, -beside
		}
		d.Line(calc.Hidden, calc.Point{X: x, Y: 0}, calc.Point{X: x, Y: -reach})
		d.Note(calc.Point{X: x + shift, Y: -under}, anchor, l)
	}
	risesFirst := day.Rise.Clock < day.Set.Clock
	edge(day.Rise, risesFirst, words.Say("rises {rise}", time("rise", day.Rise.Clock)))
	edge(day.Set, !risesFirst, words.Say("sets {set}", time("set", day.Set.Clock)))

	here := at(unit.Span(now), max(sky.Elevation, 0))
	top := at(0, highest).Y + under
	d.Line(calc.Hidden, here, calc.Point{X: here.X, Y: top - under/3})
	says := words.Say("now {now}, {elevation} up", time("now", now), words.Is("elevation", sky.Elevation, brief))
	if sky.Elevation < 0 {
		says = words.Say("now {now}, sun down", time("now", now))
	}
	d.Note(calc.Point{X: min(max(here.X, 70*unit.Millimetre), at(unit.Day, 0).X-70*unit.Millimetre), Y: top}, calc.Middle, says)
	if sky.Elevation >= twilight {
		disc(d, at(unit.Span(now), sky.Elevation), 6*unit.Millimetre)
	}
}

// disc draws the sun itself.
func disc(d *calc.Drawing, middle calc.Point, radius unit.Length) {
	var points []calc.Point
	for i := range 24 {
		a := math.Pi * float64(i) / 12
		points = append(points, calc.Point{X: middle.X + radius*unit.Length(math.Cos(a)), Y: middle.Y + radius*unit.Length(math.Sin(a))})
	}
	d.Area(calc.Strong, points...)
	d.Line(calc.Strong, calc.Point{X: middle.X, Y: 0}, calc.Point{X: middle.X, Y: middle.Y - radius})
}
