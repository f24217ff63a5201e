package wait

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows two bars of time: what the bag says, and what to wait. A second is drawn as a
// micrometre, so the bars are true to one another. A wait that is only a floor is left open at its end.
func drawing(t, time unit.Span, bag, now unit.Temperature, floor bool) calc.Drawing {
	long := unit.Length(time)
	high, gap := long/9, long/12
	d := calc.Drawing{
		Title: "The bag's time, and the wait",
		Says: words.Say("Two bars of time on one scale. Above: {time} at {bag}, as on the bag. Below: {wait} at {temp}, the part beyond the bag's time left open.",
			bagTime.Is("time", t), bagTemp.Is("bag", bag), words.Is("wait", time, unit.HourSpan), temp.Is("temp", now)),
	}
	top := high + gap
	d.Box(calc.Mortar, 0, top, unit.Length(t), high)
	d.Note(calc.Point{X: 0, Y: top + high + long/18}, calc.Start, words.Say("on the bag: {time} at {bag}", bagTime.Is("time", t), bagTemp.Is("bag", bag)))
	d.Box(calc.Outline, 0, 0, long, high)
	d.Box(calc.Mortar, 0, 0, unit.Length(t), high)
	d.Line(calc.Hidden, calc.Point{X: unit.Length(t), Y: top}, calc.Point{X: unit.Length(t), Y: 0})
	said := words.Msg("wait: {wait} at {temp}")
	if floor {
		said = "at {temp}: more than {wait}, see the bag"
		d.Line(calc.Hidden, calc.Point{X: long, Y: 0}, calc.Point{X: long * 5 / 4, Y: 0})
		d.Line(calc.Hidden, calc.Point{X: long, Y: high}, calc.Point{X: long * 5 / 4, Y: high})
		d.Says = words.Say("Two bars of time on one scale. Above: {time} at {bag}, as on the bag. Below: the wait at {temp}, left open at its end, because only the bag knows it.",
			bagTime.Is("time", t), bagTemp.Is("bag", bag), temp.Is("temp", now))
	} else {
		d.Line(calc.Strong, calc.Point{X: long, Y: -high / 3}, calc.Point{X: long, Y: high * 4 / 3})
	}
	d.Note(calc.Point{X: 0, Y: -long / 9}, calc.Start, words.Say(said, words.Is("wait", time, unit.HourSpan), temp.Is("temp", now)))
	return d
}
