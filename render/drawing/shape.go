package drawing

import "math"

// Line returns the straight line from a to b.
func Line(c Class, group int, a, b Point) Path { return Polyline(c, group, a, b) }

// Polyline returns the open line through the points; a point equal to the one
// before it is left out. With fewer than two different points the path is
// Empty. It panics without a point.
func Polyline(c Class, group int, pts ...Point) Path {
	p := Path{Class: c, Group: group, Start: pts[0]}
	last := pts[0]
	for _, q := range pts[1:] {
		if q != last {
			p.Segs = append(p.Segs, Seg{To: q})
			last = q
		}
	}
	return p
}

// Polygon returns the closed outline through the points, filled with fill.
func Polygon(c Class, group int, fill Fill, pts ...Point) Path {
	p := Polyline(c, group, pts...)
	if n := len(p.Segs); n > 0 && p.Segs[n-1].To == p.Start {
		p.Segs = p.Segs[:n-1]
	}
	p.Closed, p.Fill = true, fill
	return p
}

// Rectangle returns the outline of a box, filled with fill.
func Rectangle(c Class, group int, fill Fill, r Rect) Path {
	return Polygon(c, group, fill, r.Min, Pt(r.Max.X, r.Min.Y), r.Max, Pt(r.Min.X, r.Max.Y))
}

// Disc returns a full circle, filled with fill.
func Disc(c Class, group int, fill Fill, centre Point, r Um) Circle {
	return Circle{Class: c, Group: group, Centre: centre, R: r, Fill: fill}
}

// Arc returns the arc of a circle from the angle from over sweep, both in
// degrees and counter-clockwise as seen, 0 pointing right; a negative sweep
// runs clockwise. The curve keeps within 0.0003 of the radius, its points to
// the nearest micrometre.
func Arc(c Class, group int, centre Point, r Um, from, sweep float64) Path {
	return EllipseArc(c, group, centre, Pt(r, 0), Pt(0, -r), from, sweep)
}

// Ellipse returns the closed ellipse around centre that touches the sides of
// the parallelogram centre ± u ± v in their middles: a circle in an
// axonometric view, u and v being its half diameters along two axes.
func Ellipse(c Class, group int, fill Fill, centre, u, v Point) Path {
	p := EllipseArc(c, group, centre, u, v, 0, 360)
	p.Closed, p.Fill = true, fill
	return p
}

// EllipseArc returns the part of Ellipse from the angle from over sweep, in
// degrees as on the circle that the ellipse shows: 0 is at u, 90 at v.
func EllipseArc(c Class, group int, centre, u, v Point, from, sweep float64) Path {
	n := int(math.Ceil(math.Abs(sweep) / 90))
	n = max(n, 1)
	step := sweep / float64(n) * math.Pi / 180
	start := from * math.Pi / 180
	// The usual cubic for an arc: tangents of 4/3 tan(angle/4).
	k := 4.0 / 3 * math.Tan(step/4)
	at := func(cos, sin float64) Point {
		x := float64(cos*float64(u.X)) + float64(sin*float64(v.X))
		y := float64(cos*float64(u.Y)) + float64(sin*float64(v.Y))
		return centre.Add(Pt(round(x), round(y)))
	}
	p := Path{Class: c, Group: group}
	s0, c0 := math.Sincos(start)
	p.Start = at(c0, s0)
	for i := range n {
		s1, c1 := math.Sincos(start + float64(step*float64(i+1)))
		p.Segs = append(p.Segs, Seg{
			Curve: true,
			C1:    at(c0-float64(k*s0), s0+float64(k*c0)),
			C2:    at(c1+float64(k*s1), s1-float64(k*c1)),
			To:    at(c1, s1),
		})
		s0, c0 = s1, c1
	}
	if math.Abs(sweep) >= 360 {
		p.Segs[n-1].To = p.Start
	}
	return p
}

// round returns the nearest micrometre. A value just short of a half may be
// computed a bit differently where products are fused, which moves nothing:
// sines and cosines do not fall on halves.
func round(x float64) Um { return Um(math.Round(x)) }

// along returns the point d from a in the direction of b, aside further to the
// left of that direction as seen. It panics where a and b coincide.
func along(a, b Point, d, aside Um) Point {
	step := b.Sub(a)
	if step.X == 0 && step.Y == 0 {
		panic("drawing: no direction from a point to itself")
	}
	length := math.Hypot(float64(step.X), float64(step.Y))
	ux, uy := float64(step.X)/length, float64(step.Y)/length
	x := float64(ux*float64(d)) + float64(uy*float64(aside))
	y := float64(uy*float64(d)) - float64(ux*float64(aside))
	return a.Add(Pt(round(x), round(y)))
}

// Distance returns how far apart two points are, to the nearest micrometre.
func Distance(a, b Point) Um {
	d := b.Sub(a)
	return round(math.Hypot(float64(d.X), float64(d.Y)))
}

// Crossing reports whether the lines a b and c d cross, or lie on each other for
// some length; lines that only touch at an end do not. It is exact.
func Crossing(a, b, c, d Point) bool { return meet(a, b, c, d) }

// Through reports whether the lines a b and c d cross at one point inside both.
// It is exact.
func Through(a, b, c, d Point) bool {
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
