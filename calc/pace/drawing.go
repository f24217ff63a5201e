package pace

import (
	"setbook/calc"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// The most lanes and rows that are drawn, so that a paver stays large enough to see.
const mostLanes, mostRows = 3, 8

// drawing is a plan to scale: behind the chalk line the last row set, ahead of it the rows to
// comb, a lane for each setter. The dashed line is where the open time runs out.
func drawing(e calc.Entry, p parts) calc.Drawing {
	l, w, j := paverL.Of(e), paverW.Of(e), joint.Of(e)
	lanes := min(int(unit.Whole(float64(crew.Of(e)))), mostLanes)
	rows := min(int(p.rows), mostRows)
	wide := unit.Length(lanes) * (w + j)
	d := calc.Drawing{Title: "The chalk line and what to comb ahead of it"}
	told, deep := words.Is("rows", p.rows, unit.Whole1), words.Is("ahead", p.ahead, unit.FootMetre)
	cut := rows < int(p.rows)
	if cut {
		d.Says = words.Say("A plan to scale, no more than three lanes and eight rows of it. Behind the chalk line the last row of pavers set; ahead of it a lane for each setter to comb, {rows} rows of whole pavers and {ahead} deep in all.", told, deep)
	} else {
		d.Says = words.Say("A plan to scale, no more than three lanes of it. Behind the chalk line the last row of pavers set; ahead of it a lane for each setter to comb, {rows} rows of whole pavers and {ahead} deep. The open time would run out at the dashed line.", told, deep)
	}
	for i := range lanes {
		x := unit.Length(i) * (w + j)
		d.Box(calc.Paver, x, -l-j, w, l)
		for k := range rows {
			d.Box(calc.Mortar, x, unit.Length(k)*(l+j), w, l)
		}
	}
	end := unit.Length(rows) * (l + j)
	chalk(&d, wide, 0)
	d.Note(calc.Point{X: 1.08 * wide, Y: 0}, calc.Start, words.Say("chalk line"))
	if rows > 0 {
		chalk(&d, wide, end)
		snap := words.Say("comb to here")
		if cut {
			snap = words.Say("and on to row {rows}", told)
		}
		d.Note(calc.Point{X: 1.08 * wide, Y: end}, calc.Start, snap)
	}
	if !cut {
		runsOut := (l + j) * unit.Length(p.lane)
		d.Line(calc.Hidden, calc.Point{X: -0.05 * wide, Y: runsOut}, calc.Point{X: 1.05 * wide, Y: runsOut})
		d.Dim(calc.Point{X: 0, Y: 0}, calc.Point{X: 0, Y: end}, 1.4, unit.Fig(p.ahead, unit.FootMetre))
	}
	return d
}

// chalk snaps a line across the lanes.
func chalk(d *calc.Drawing, wide, y unit.Length) {
	d.Line(calc.Strong, calc.Point{X: -0.05 * wide, Y: y}, calc.Point{X: 1.05 * wide, Y: y})
}
