package surface

import "math"

// line is one row, column or diagonal of a grid: its readings without the gaps.
type line struct {
	x     []float64 // place, in steps from the line's first reading
	z     []float64 // height
	start int       // index in the grid of step 0
	step  int       // in the index, a step along the line
	long  float64   // a step along the line, a length
}

// index is the index in the grid of a reading of the line.
func (l *line) index(k int) int { return l.start + int(l.x[k])*l.step }

// take reads a line of n steps from the grid.
func (l *line) take(g *Grid, start, step, n int, long float64) {
	l.start, l.step, l.long = start, step, long
	if cap(l.x) < n {
		l.x, l.z = make([]float64, n), make([]float64, n)
	}
	x, z := l.x[:n], l.z[:n]
	read := 0
	for k, i := 0, start; k < n; k, i = k+1, i+step {
		if h := g.Z[i]; h == h {
			x[read], z[read] = float64(k), h
			read++
		}
	}
	l.x, l.z = x[:read], z[:read]
}

// lines calls each with every row, column and diagonal, both ways, that has three readings, until it reports false.
func (g *Grid) lines(each func(*line) bool) {
	var l line
	take := func(start, step, n int, long float64) bool {
		if n < 3 {
			return true
		}
		l.take(g, start, step, n, long)
		return len(l.x) < 3 || each(&l)
	}
	w, d := g.Wide, g.Deep
	across := math.Hypot(g.StepX, g.StepY)
	for row := range d {
		if !take(row*w, 1, w, g.StepX) {
			return
		}
	}
	for col := range w {
		if !take(col, w, d, g.StepY) {
			return
		}
	}
	for from := 1 - d; from < w; from++ { // the column at which a diagonal meets the first row
		row, col := max(-from, 0), max(from, 0)
		n := min(w-col, d-row)
		if !take(row*w+col, w+1, n, across) || !take(row*w+w-1-col, w-1, n, across) {
			return
		}
	}
}
