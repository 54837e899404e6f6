package drawing

import "math"

// A cubic is a Bézier curve by its four points.
type cubic [4]Point

func (c cubic) box() Rect {
	return Path{Start: c[0], Segs: []Seg{{Curve: true, C1: c[1], C2: c[2], To: c[3]}}}.Bounds()
}

// at returns the point of the curve at t, 0 .. 1, to the micrometre.
func (c cubic) at(t float64) Point { return c.blossom(t, t, t) }

// sub returns the part of the curve from t0 to t1. It is taken from the whole
// curve each time, so that roundings do not add up.
func (c cubic) sub(t0, t1 float64) cubic {
	return cubic{c.blossom(t0, t0, t0), c.blossom(t0, t0, t1), c.blossom(t0, t1, t1), c.blossom(t1, t1, t1)}
}

// blossom returns the curve's polar form at three parameters: its value at t
// where all are t, and else the control points of its parts.
func (c cubic) blossom(ts ...float64) Point {
	var x, y [4]float64
	for i, p := range c {
		x[i], y[i] = float64(p.X), float64(p.Y)
	}
	for k, t := range ts {
		for i := range 3 - k {
			x[i] = float64((1-t)*x[i]) + float64(t*x[i+1])
			y[i] = float64((1-t)*y[i]) + float64(t*y[i+1])
		}
	}
	return Pt(Um(math.Round(x[0])), Um(math.Round(y[0])))
}

// clip calls add with the pieces of the curve within r, in order.
func (c cubic) clip(r Rect, add func(Point, Seg)) {
	var spans [][2]float64
	c.spans(r, 0, 1, func(t0, t1 float64) {
		if n := len(spans); n > 0 && spans[n-1][1] == t0 {
			spans[n-1][1] = t1
			return
		}
		spans = append(spans, [2]float64{t0, t1})
	})
	for _, s := range spans {
		p := c.sub(s[0], s[1])
		p[0], p[3] = into(p[0], r), into(p[3], r)
		if b := p.box(); b.Min != b.Max {
			add(p[0], Seg{Curve: true, C1: p[1], C2: p[2], To: p[3]})
		}
	}
}

// spans calls found with the stretches of t0 .. t1 where the curve lies within
// r, in order. A stretch that crosses the edge is halved until it is no longer
// than a micrometre or two and then goes by its middle.
func (c cubic) spans(r Rect, t0, t1 float64, found func(t0, t1 float64)) {
	b := c.sub(t0, t1).box()
	mid := (t0 + t1) / 2
	switch {
	case b.Max.X < r.Min.X || b.Min.X > r.Max.X || b.Max.Y < r.Min.Y || b.Min.Y > r.Max.Y:
	case r.Holds(b):
		found(t0, t1)
	case b.W() <= 2 && b.H() <= 2:
		if c.at(mid).In(r) {
			found(t0, t1)
		}
	default:
		c.spans(r, t0, mid, found)
		c.spans(r, mid, t1, found)
	}
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
