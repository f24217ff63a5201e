package lift

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// drawing shows the lift from the side: where the hands are, and the reach and height past which no load is
// acceptable. The person is a line figure 68 in tall, for scale alone.
func drawing(reach, height unit.Length) calc.Drawing {
	d := calc.Drawing{
		Title: "The lift from the side",
		Says: words.Say("To scale, from the side: the hands {reach} out from the ankles and {height} over the floor. Dashed lines stand {far} out and {high} up, past which no load is acceptable; a chain line stands at {best}, the best height.",
			words.Is("reach", reach, inchCM), words.Is("height", height, inchCM), words.Is("far", farthest, inchCM), words.Is("high", highest, inchCM), words.Is("best", knuckle, inchCM)),
	}
	wide := max(farthest, reach) + 12*unit.Inch
	d.Line(calc.Outline, calc.Point{X: -12 * unit.Inch}, calc.Point{X: wide})
	d.Line(calc.Hidden, calc.Point{X: farthest}, calc.Point{X: farthest, Y: highest})
	d.Line(calc.Hidden, calc.Point{X: -12 * unit.Inch, Y: highest}, calc.Point{X: farthest, Y: highest})
	d.Line(calc.Axis, calc.Point{X: -12 * unit.Inch, Y: knuckle}, calc.Point{X: farthest, Y: knuckle})
	hands := calc.Point{X: reach, Y: height}
	figure(&d, hands)
	under := min(height, 4*unit.Inch) // a load gripped near the floor stands on it
	d.Box(calc.Paver, reach-unit.Inch, height-under, 2*unit.Inch, 4*unit.Inch+under)
	d.Dim(calc.Point{}, calc.Point{X: reach}, -1.2, unit.Fig(reach, inchCM))
	d.Dim(calc.Point{X: wide, Y: height}, calc.Point{X: wide}, 0.4, unit.Fig(height, inchCM))
	return d
}

// figure draws a person as lines: legs, back, head, and an arm to the hands. The back leans forward for low hands.
func figure(d *calc.Drawing, hands calc.Point) {
	const hip, shoulder, head = 36 * unit.Inch, 21 * unit.Inch, 5 * unit.Inch
	lean := unit.Angle(min(max(float64((40*unit.Inch-hands.Y)/unit.Inch)*2.2, 0), 80))
	neck := calc.Point{X: unit.Length(lean.Sin()) * shoulder, Y: hip + unit.Length(lean.Cos())*shoulder}
	d.Line(calc.Outline, calc.Point{}, calc.Point{Y: hip}, neck)
	d.Line(calc.Strong, neck, hands)
	crown := calc.Point{X: neck.X + unit.Length(lean.Sin())*6*unit.Inch, Y: neck.Y + unit.Length(lean.Cos())*6*unit.Inch}
	var round []calc.Point
	for i := range 16 {
		turn := unit.Angle(i) * 22.5
		round = append(round, calc.Point{X: crown.X + unit.Length(turn.Cos())*head*0.8, Y: crown.Y + unit.Length(turn.Sin())*head*0.8})
	}
	d.Area(calc.Outline, round...)
}
