package drawing

import "math"

// A cubic is a Bézier curve by its four points.
type cubic [4]Point

func (c cubic) box() Rect {
	return Path{Start: c[0], Segs: []Seg{{Curve: true, C1: c[1], C2: c[2], To: c[3]}}}.Bounds()
}

// at returns the point of the curve at t, 0 .. 1, to the micrometre, by de
// Casteljau's construction.
func (c cubic) at(t float64) Point {
	var x, y [4]float64
	for i, p := range c {
		x[i], y[i] = float64(p.X), float64(p.Y)
	}
	for k := range 3 {
		for i := range 3 - k {
			x[i] = float64((1-t)*x[i]) + float64(t*x[i+1])
			y[i] = float64((1-t)*y[i]) + float64(t*y[i+1])
		}
	}
	return Pt(Um(math.Round(x[0])), Um(math.Round(y[0])))
}

// into returns the point of r nearest to p.
func into(p Point, r Rect) Point {
	return Pt(min(max(p.X, r.Min.X), r.Max.X), min(max(p.Y, r.Min.Y), r.Max.Y))
}

// flatten returns the corners of a path, its curves replaced by chords that
// stray by no more than 0.02 mm from any arc up to a quarter circle.
func flatten(p Path) []Point {
	pts := []Point{p.Start}
	from := p.Start
	for _, s := range p.Segs {
		if s.Curve {
			c := cubic{from, s.C1, s.C2, s.To}
			n := chords(c)
			for i := 1; i < n; i++ {
				pts = append(pts, c.at(float64(i)/float64(n)))
			}
		}
		pts = append(pts, s.To)
		from = s.To
	}
	return pts
}

// chords returns how many chords stand for a curve. An arc of a quarter circle
// of radius R strays R (pi/2)^2 / (8 n^2) from n of them; its box is R by R.
func chords(c cubic) int {
	b := c.box()
	return max(2, int(math.Ceil(math.Sqrt(float64(b.W()+b.H())/60))))
}
