package view

import (
	"math"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Projection maps the room to paper in millimetres, x to the right and y down,
// with the room's origin at the paper's. Num and Den are the scale: 1 and 10
// for 1:10.
//
// A direction whose three components have one size gives the isometric view of
// the drawing standards, in which lengths along the axes keep their true size
// at scale (ISO 5456-3, isometric axonometry; memory, believed 1:1:1 with x and
// y at 30 degrees to the horizontal). Other directions give the plain
// orthographic picture, in which what lies square to the sight line is true.
// The z axis points up; seen from straight above, or below, the y axis does
// so, or the reverse.
type Projection struct {
	Direction Direction
	Num, Den  int64
}

// millimetres is what one base unit at scale is on paper.
func (p Projection) millimetres() float64 {
	return float64(p.Num) / float64(p.Den*int64(unit.Millimetre))
}

// axes returns whole vectors along the paper's right and up as they lie in the
// room, and what to multiply a point's product with each by to get base units.
func (p Projection) axes() (right, up vec, perRight, perUp float64) {
	x, y, z := int64(p.Direction.X), int64(p.Direction.Y), int64(p.Direction.Z)
	if x == 0 && y == 0 {
		s := int64(1)
		if z < 0 {
			s = -1
		}
		return vec{1, 0, 0}, vec{0, s, 0}, 1, 1
	}
	// right = z axis × direction, up = direction × right.
	flat, all := x*x+y*y, x*x+y*y+z*z
	right, up = vec{-y, x, 0}, vec{-x * z, -y * z, flat}
	perRight = p.swell() / math.Sqrt(float64(flat))
	perUp = p.swell() / math.Sqrt(float64(flat*all))
	return right, up, perRight, perUp
}

// swell is how much larger than the orthographic picture the drawing is.
func (p Projection) swell() float64 {
	d := p.Direction
	if d.X*d.X == d.Y*d.Y && d.Y*d.Y == d.Z*d.Z {
		return math.Sqrt(1.5)
	}
	return 1
}

// Point returns where q lies on paper, in millimetres. The products are whole
// up to the last step, so that equal inputs give equal bits on every machine.
func (p Projection) Point(q space.Point) (x, y float64) {
	right, up, perRight, perUp := p.axes()
	v := vecOf(q)
	mm := p.millimetres()
	return float64(inner(right, v)) * perRight * mm, -float64(inner(up, v)) * perUp * mm
}

func inner(a, b vec) int64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// Length returns how long a length l along axis a is on paper, in millimetres.
func (p Projection) Length(l unit.Length, a space.Axis) float64 {
	d := p.Direction
	all := d.X*d.X + d.Y*d.Y + d.Z*d.Z
	rest := all - d.On(a)*d.On(a)
	if p.swell() != 1 {
		return float64(l) * p.millimetres()
	}
	return float64(l) * math.Sqrt(float64(rest)/float64(all)) * p.millimetres()
}

// Ellipse is how a circle in a plane of one y shows on paper: half axes in
// millimetres, RX at least RY, and the turn of the RX axis from the paper's x
// axis in degrees, clockwise as y is down. From the side RY is zero.
type Ellipse struct{ RX, RY, Turn float64 }

// Ellipse returns how a circle of the given radius shows.
func (p Projection) Ellipse(radius unit.Length) Ellipse {
	d := p.Direction
	all := d.X*d.X + d.Y*d.Y + d.Z*d.Z
	y := d.Y
	if y < 0 {
		y = -y
	}
	r := float64(radius) * p.millimetres() * p.swell()
	e := Ellipse{RX: r, RY: r * float64(y) / math.Sqrt(float64(all))}
	if d.X == 0 {
		return e
	}
	// The long axis lies square to the picture of the circle's own axis.
	ax, ay := p.Point(space.Point{Y: unit.Millimetre})
	e.Turn = math.Atan2(-ax, ay) * 180 / math.Pi
	if e.Turn <= -90 {
		e.Turn += 180
	} else if e.Turn > 90 {
		e.Turn -= 180
	}
	return e
}

// PaperArc is an arc on paper: ends, centre and the ellipse it is part of. It
// runs the way of growing angles, clockwise to the eye, if Clockwise is set,
// and is more than half of the ellipse if Large is set; both read as an SVG arc
// does. Full means the whole ellipse.
type PaperArc struct {
	Ellipse
	CX, CY         float64
	X0, Y0, X1, Y1 float64
	Large, Full    bool
	Clockwise      bool
}

// Arc returns the paper's arc for l, which must be one; l must not be seen from
// the side, and lines of [Lines] never are.
func (p Projection) Arc(l Line) PaperArc {
	a := PaperArc{Ellipse: p.Ellipse(l.Radius), Full: l.From == l.To, Clockwise: p.Direction.Y > 0}
	a.CX, a.CY = p.Point(l.Centre)
	a.X0, a.Y0 = p.Point(l.From)
	a.X1, a.Y1 = p.Point(l.To)
	from, to := l.From.Sub(l.Centre), l.To.Sub(l.Centre)
	turn := float64(float64(from.X)*float64(to.Z)) - float64(float64(from.Z)*float64(to.X))
	a.Large = turn < 0 || a.Full
	return a
}

// Extremes returns the four corners of a scene's boxes, rounds counting as the
// boxes around them, that show farthest to the left, to the right, down and up.
// The picture of every solid lies in the box around their pictures, at any
// scale. There are none where the scene has no solids.
func (p Projection) Extremes(s Scene) []space.Point {
	right, up, _, _ := p.axes()
	var far [4]struct {
		at space.Point
		by int64
	}
	some := false
	add := func(b space.Box) {
		for i, w := range [...]vec{right, up} {
			lo, hi := corners(b, w)
			if by := inner(w, vecOf(lo)); !some || by < far[2*i].by {
				far[2*i].at, far[2*i].by = lo, by
			}
			if by := inner(w, vecOf(hi)); !some || by > far[2*i+1].by {
				far[2*i+1].at, far[2*i+1].by = hi, by
			}
		}
		some = true
	}
	for _, b := range s.Boxes {
		add(b.Box)
	}
	for _, r := range s.Rounds {
		add(r.Bounds())
	}
	if !some {
		return nil
	}
	return []space.Point{far[0].at, far[1].at, far[2].at, far[3].at}
}

// corners returns the corners of b that lie least and most far along w.
func corners(b space.Box, w vec) (least, most space.Point) {
	least, most = b.Min, b.Max
	if w[0] < 0 {
		least.X, most.X = most.X, least.X
	}
	if w[1] < 0 {
		least.Y, most.Y = most.Y, least.Y
	}
	if w[2] < 0 {
		least.Z, most.Z = most.Z, least.Z
	}
	return least, most
}

func vecOf(p space.Point) vec { return vec{int64(p.X), int64(p.Y), int64(p.Z)} }
