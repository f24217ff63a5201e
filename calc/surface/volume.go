package surface

// Volumes is what lies between a grid and its target, by the grid method (borrow pit): each cell between four readings
// is its area by the mean of its corners. A cell with one reading missing is a triangle of three; with more missing it is left out.
type Volumes struct {
	// Where a cell has corners above and corners below the target, two ways are in use. Fill and Cut take each sort of corner for
	// itself, as if the rest were at the target, which is never too little; NetFill and NetCut weigh by the squares
	// of their sums, which is nearer. Source: source.GridMethod, source.FourPoint.
	Fill, Cut       float64
	NetFill, NetCut float64
	Area            float64 // of the cells counted
	FillSum, CutSum float64 // of heights by weights, a full corner of one cell counting 1/4
}

// To is the volumes between the grid and a target: how far each reading lies below it.
func (g *Grid) To(below []float64) Volumes {
	var v Volumes
	cell := g.StepX * g.StepY
	for row := 1; row < g.Deep; row++ {
		for col := 1; col < g.Wide; col++ {
			i := row*g.Wide + col
			v.add([4]float64{below[i], below[i-1], below[i-g.Wide], below[i-g.Wide-1]})
		}
	}
	v.Fill, v.Cut = v.FillSum*cell, v.CutSum*cell
	v.NetFill, v.NetCut, v.Area = v.NetFill*cell, v.NetCut*cell, v.Area*cell
	return v
}

// add counts one cell, in units of its area.
func (v *Volumes) add(corners [4]float64) {
	var fill, cut float64
	n := 0
	for _, d := range corners {
		switch {
		case d > 0:
			fill += d
			n++
		case d <= 0:
			cut -= d
			n++
		}
	}
	if n < 3 {
		return
	}
	share := 0.25 // of the cell's area, for each corner
	if n == 3 {
		share = 1.0 / 6
	}
	fill, cut = fill*share, cut*share
	v.FillSum, v.CutSum, v.Area = v.FillSum+fill, v.CutSum+cut, v.Area+share*float64(n)
	if all := fill + cut; all > 0 {
		v.NetFill += fill * fill / all
		v.NetCut += cut * cut / all
	}
}
