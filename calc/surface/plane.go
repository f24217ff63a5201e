package surface

import "math"

// Plane is z = Mean + B (x − X) + C (y − Y), with the sums that it was found from.
type Plane struct {
	X, Y, Mean float64 // the middle of the readings
	B, C       float64 // rise along x and along y, a length by a length
	Count      int     // readings

	// Sums over the readings of the products of x, y and z, each measured from its mean.
	XX, XY, YY, XZ, YZ float64

	// InLine is true where all readings stand in one line. No plane is fixed by those: this one is the best
	// line, level square to itself.
	InLine bool
}

// At is the height of the plane.
func (p *Plane) At(x, y float64) float64 { return p.Mean + p.B*(x-p.X) + p.C*(y-p.Y) }

// Slope is how steeply the plane falls where it falls most, a length by a length.
func (p *Plane) Slope() float64 { return math.Hypot(p.B, p.C) }

// Fit is the plane with the least sum of squared upright distances, by the normal equations. It reports false
// where there are not two readings. Source: source.LeastSquares.
//
// A library for linear algebra is not used. Measured from the means the equations are two by two and solved in one
// line, and no worse conditioned than the layout of the readings; gonum's mat.Dense and its solver would add 85 KB
// to the program after brotli.
func (g *Grid) Fit() (*Plane, bool) {
	p := &Plane{}
	var cols, rows, sum float64
	for row := range g.Deep {
		n, c, s := 0, 0, 0.0
		for col, z := range g.Z[row*g.Wide : (row+1)*g.Wide] {
			if z == z {
				n, c, s = n+1, c+col, s+z
			}
		}
		p.Count += n
		cols, rows, sum = cols+float64(c), rows+float64(row)*float64(n), sum+s
	}
	if p.Count < 2 {
		return nil, false
	}
	n := float64(p.Count)
	midCol, midRow := cols/n, rows/n
	p.X, p.Y, p.Mean = midCol*g.StepX, midRow*g.StepY, sum/n
	for row := range g.Deep {
		y := float64(row) - midRow
		for col, z := range g.Z[row*g.Wide : (row+1)*g.Wide] {
			if z == z {
				x := float64(col) - midCol
				z -= p.Mean
				p.XX, p.XY, p.YY = p.XX+x*x, p.XY+x*y, p.YY+y*y
				p.XZ, p.YZ = p.XZ+x*z, p.YZ+y*z
			}
		}
	}
	p.XX, p.XY, p.YY = p.XX*g.StepX*g.StepX, p.XY*g.StepX*g.StepY, p.YY*g.StepY*g.StepY
	p.XZ, p.YZ = p.XZ*g.StepX, p.YZ*g.StepY
	p.solve()
	return p, true
}

// solve finds the two rises from the sums.
func (p *Plane) solve() {
	det := p.XX*p.YY - p.XY*p.XY
	if p.InLine = det <= 1e-9*p.XX*p.YY; !p.InLine {
		p.B = (p.XZ*p.YY - p.YZ*p.XY) / det
		p.C = (p.YZ*p.XX - p.XZ*p.XY) / det
		return
	}
	ux, uy := p.Along()
	rise := (ux*p.XZ + uy*p.YZ) / (p.XX + p.YY)
	p.B, p.C = rise*ux, rise*uy
}

// Along is the way that readings in one line stand, as a step of length 1.
func (p *Plane) Along() (ux, uy float64) {
	all := p.XX + p.YY
	return math.Sqrt(p.XX / all), math.Copysign(math.Sqrt(p.YY/all), p.XY)
}

// Over is how far each reading stands above the plane.
func (g *Grid) Over(p *Plane) []float64 {
	over := make([]float64, len(g.Z))
	for row := range g.Deep {
		at := p.At(0, float64(row)*g.StepY)
		for col := range g.Wide {
			i := row*g.Wide + col
			over[i] = g.Z[i] - at - p.B*float64(col)*g.StepX
		}
	}
	return over
}
