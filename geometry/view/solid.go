package view

import "math"

// graze is the longest stretch of a sight line inside a solid that does not yet
// hide, in steps of the direction, each a base unit or a few. It is asked only
// where a round takes part. It stands above the noise of the arithmetic, some
// two units where a sight line touches a skin, and what it lets through is less
// than 0.2 µm wide at a corner and far less at a skin.
const graze = 8

// solid is a box or a round in a frame, ready to hide things.
type solid struct {
	place  int // in the scene's order: boxes, then rounds
	lo, hi vec
	near   int64 // no point of the solid is nearer to the eye
	round  *rounded
	bounds window // of its picture
	sides  [][2]spot
	discs  []disc
}

// disc is a circle in the picture plane.
type disc struct {
	centre spot
	radius float64
}

// window is a rectangle in the picture plane with its sides along the axes.
type window struct{ x0, y0, x1, y1 float64 }

func (w *window) add(p spot, r float64) {
	w.x0, w.y0 = min(w.x0, p.x-r), min(w.y0, p.y-r)
	w.x1, w.y1 = max(w.x1, p.x+r), max(w.y1, p.y+r)
}

func (w *window) join(o window) {
	w.x0, w.y0 = min(w.x0, o.x0), min(w.y0, o.y0)
	w.x1, w.y1 = max(w.x1, o.x1), max(w.y1, o.y1)
}

func (w window) meets(o window) bool {
	return w.x0 <= o.x1 && o.x0 <= w.x1 && w.y0 <= o.y1 && o.y0 <= w.y1
}

func noWindow() window {
	return window{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

// around returns the outline of the box lo..hi: six corners in turn, all but the
// nearest and the farthest. Some coincide when the eye looks along a face.
func (f *frame) around(lo, hi vec) [6]spot {
	return [6]spot{
		f.spot(vec{hi[0], lo[1], lo[2]}), f.spot(vec{hi[0], hi[1], lo[2]}),
		f.spot(vec{lo[0], hi[1], lo[2]}), f.spot(vec{lo[0], hi[1], hi[2]}),
		f.spot(vec{lo[0], lo[1], hi[2]}), f.spot(vec{hi[0], lo[1], hi[2]}),
	}
}

func (f *frame) boxSolid(place int, lo, hi vec) solid {
	o := solid{place: place, lo: lo, hi: hi, near: f.depth(hi), bounds: noWindow()}
	corners := f.around(lo, hi)
	for i, p := range corners {
		o.bounds.add(p, 0)
		if q := corners[(i+1)%6]; p != q {
			o.sides = append(o.sides, [2]spot{p, q})
		}
	}
	return o
}

// rounded is a Round in a frame: y0 is the end away from the eye.
type rounded struct {
	x, z, y0, y1, r0, r1 int64
	tangents             []spot // unit normals of the two outlines, none where one end covers the other
}

func (f *frame) inRound(r Round) *rounded {
	o := &rounded{
		x: int64(r.X) * f.sign[0], z: int64(r.Z) * f.sign[2],
		y0: int64(r.Y0), y1: int64(r.Y1), r0: int64(r.R0), r1: int64(r.R1),
	}
	if f.sign[1] < 0 {
		o.y0, o.y1, o.r0, o.r1 = -o.y1, -o.y0, o.r1, o.r0
	}
	if f.m == 1 {
		o.tangents = f.normals(o)
	}
	return o
}

// normals returns the normals of the tangents that two end circles share in the
// picture: for a normal n, n·(c1-c0) = r0-r1. The first lies counterclockwise
// of the way from the far to the near centre, the second clockwise.
func (f *frame) normals(o *rounded) []spot {
	c0, c1 := f.spot(vec{o.x, o.y0, o.z}), f.spot(vec{o.x, o.y1, o.z})
	dx, dy := c1.x-c0.x, c1.y-c0.y
	d := math.Sqrt(squared(dx) + squared(dy))
	fall := float64(o.r0 - o.r1)
	if d <= math.Abs(fall) {
		return nil
	}
	ex, ey, c := dx/d, dy/d, fall/d
	s := math.Sqrt(float64(1-c) * float64(1+c))
	return []spot{
		{float64(ex*c) - float64(ey*s), float64(ey*c) + float64(ex*s)},
		{float64(ex*c) + float64(ey*s), float64(ey*c) - float64(ex*s)},
	}
}

// radius returns the radius at y.
func (o *rounded) radius(y float64) float64 {
	if o.r0 == o.r1 {
		return float64(o.r0)
	}
	t := (y - float64(o.y0)) / float64(o.y1-o.y0)
	return float64(o.r0) + float64(t*float64(o.r1-o.r0))
}

func (f *frame) roundSolid(place int, o *rounded) solid {
	r := max(o.r0, o.r1)
	s := solid{place: place, round: o, bounds: noWindow(), lo: vec{o.x - r, o.y0, o.z - r}, hi: vec{o.x + r, o.y1, o.z + r}}
	s.near = f.depth(s.hi)
	if f.m != 1 {
		corners := f.bar(o)
		for i, p := range corners {
			s.bounds.add(p, 0)
			s.sides = append(s.sides, [2]spot{p, corners[(i+1)%4]})
		}
		return s
	}
	s.discs = []disc{
		{f.spot(vec{o.x, o.y0, o.z}), float64(o.r0)},
		{f.spot(vec{o.x, o.y1, o.z}), float64(o.r1)},
	}
	for _, d := range s.discs {
		s.bounds.add(d.centre, d.radius)
	}
	for _, n := range o.tangents {
		s.sides = append(s.sides, [2]spot{s.discs[0].at(n), s.discs[1].at(n)})
	}
	return s
}

// at returns the point of the circle in the direction of the unit vector n.
func (d disc) at(n spot) spot {
	return spot{d.centre.x + float64(d.radius*n.x), d.centre.y + float64(d.radius*n.y)}
}

// bar returns the outline of a round seen square to its axis, a trapezoid.
func (f *frame) bar(o *rounded) [4]spot {
	at := func(y, r int64) spot {
		if f.m == 0 {
			return f.spot(vec{o.x, y, o.z + r})
		}
		return f.spot(vec{o.x + r, y, o.z})
	}
	return [4]spot{at(o.y0, -o.r0), at(o.y1, -o.r1), at(o.y1, o.r1), at(o.y0, o.r0)}
}

// hides reports whether o lies on the sight line from p to the eye. As p is not
// inside of o, the whole stretch inside lies on one side of p, so that its
// middle tells, however p sits on the surface.
func (f *frame) hides(o *solid, p vecf) bool {
	s0, s1 := math.Inf(-1), math.Inf(1)
	for i, v := range f.v {
		lo, hi := float64(o.lo[i])-p[i], float64(o.hi[i])-p[i]
		switch {
		case v != 0:
			s0, s1 = max(s0, lo/float64(v)), min(s1, hi/float64(v))
		case lo > -tight || hi < tight:
			return false
		}
	}
	if o.round != nil && s1-s0 > graze {
		// From where the sight line enters the bounds the figures are small.
		for i, v := range f.v {
			p[i] += float64(s0 * float64(v))
		}
		t0, t1 := f.within(o.round, p, 0, s1-s0)
		s0, s1 = s0+t0, s0+t1
	}
	return s1-s0 > graze && s0+s1 > 0
}

// tight is how far inside an outline a sight line along it must run to count as
// inside, in base units.
const tight = 1e-3

// within narrows the stretch s0..s1 of the sight line from p, which lies between
// the ends of o, to what is inside of its skin:
// |(p + s v) - axis| <= radius, both sides squared, is quadratic in s.
func (f *frame) within(o *rounded, p vecf, s0, s1 float64) (float64, float64) {
	dx, dz := p[0]-float64(o.x), p[2]-float64(o.z)
	vx, vz := float64(f.v[0]), float64(f.v[2])
	r := o.radius(p[1])
	slope := 0.0 // of the radius along the sight line
	if o.r0 != o.r1 {
		slope = float64(o.r1-o.r0) * float64(f.v[1]) / float64(o.y1-o.y0)
	}
	a := float64(vx*vx) + float64(vz*vz) - float64(slope*slope)
	b := float64(dx*vx) + float64(dz*vz) - float64(r*slope)
	c := float64(dx*dx) + float64(dz*dz) - float64(r*r)
	if a == 0 && b == 0 {
		if math.Sqrt(squared(dx)+squared(dz)) > r-tight {
			return 0, 0
		}
		return s0, s1
	}
	if a == 0 {
		if s := -c / (2 * b); b > 0 {
			return s0, min(s1, s)
		} else {
			return max(s0, s), s1
		}
	}
	root := float64(b*b) - float64(a*c)
	if root <= 0 {
		if a > 0 {
			return 0, 0
		}
		return s0, s1
	}
	root = math.Sqrt(root)
	q0, q1 := (-b-root)/a, (-b+root)/a
	switch {
	case a > 0:
		return max(s0, q0), min(s1, q1)
	case slope > 0: // steeper than the cone: inside beyond the later root
		return max(s0, max(q0, q1)), s1
	default:
		return s0, min(s1, min(q0, q1))
	}
}
