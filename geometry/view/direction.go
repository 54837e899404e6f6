package view

import (
	"fmt"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Direction points from the rack to the eye, which is so far away that all
// sight lines are parallel. Components are whole numbers from -9 to 9, not all
// zero. A scene with rounds needs Y other than zero, or one component only.
type Direction struct{ X, Y, Z int }

// The usual directions. Isometric looks from the front, right and above;
// IsometricLeft is its mirror image, from the front, left and above.
var (
	Front         = Direction{0, -1, 0}
	Back          = Direction{0, 1, 0}
	Left          = Direction{-1, 0, 0}
	Right         = Direction{1, 0, 0}
	Top           = Direction{0, 0, 1}
	Bottom        = Direction{0, 0, -1}
	Isometric     = Direction{1, -1, 1}
	IsometricLeft = Direction{-1, -1, 1}
)

// On returns the component along a.
func (d Direction) On(a space.Axis) int { return [...]int{d.X, d.Y, d.Z}[a] }

// along reports whether d has one component only.
func (d Direction) along() bool {
	return (d.X == 0 && d.Y == 0) || (d.X == 0 && d.Z == 0) || (d.Y == 0 && d.Z == 0)
}

func (d Direction) mustBeValid(rounds bool) {
	for _, c := range [...]int{d.X, d.Y, d.Z} {
		if c < -9 || c > 9 {
			panic(fmt.Sprintf("view: direction %v has a component beyond 9", d))
		}
	}
	if d == (Direction{}) {
		panic("view: direction is zero")
	}
	if rounds && d.Y == 0 && !d.along() {
		panic(fmt.Sprintf("view: direction %v cannot show round things", d))
	}
}

// vec is a point or a way in a frame, by axis.
type vec [3]int64

// vecf is a vec that need not be whole.
type vecf [3]float64

func (v vec) float() vecf { return vecf{float64(v[0]), float64(v[1]), float64(v[2])} }

// frame turns the room so that no component of the direction is negative, by
// mirroring axes; the eye then sees the upper corner of every box, and one
// formula serves all directions. Mirroring is undone on the way out.
//
// The picture plane is reached along v: a point's place in it is its
// coordinates on axes a and b after sliding along v to where coordinate m is
// zero. With m = y, circles about the y axis stay true circles.
type frame struct {
	sign    vec
	v       vec
	k       int64 // least common multiple of v's components: positions along edges are whole in units of 1/k
	m, a, b int
}

func newFrame(d Direction) frame {
	f := frame{sign: vec{1, 1, 1}, v: vec{int64(d.X), int64(d.Y), int64(d.Z)}, k: 1}
	for i, c := range f.v {
		if c < 0 {
			f.sign[i], f.v[i] = -1, -c
		}
		if c != 0 {
			f.k = f.k / gcd(f.k, f.v[i]) * f.v[i]
		}
	}
	switch {
	case f.v[1] != 0:
		f.m, f.a, f.b = 1, 0, 2
	case f.v[0] != 0:
		f.m, f.a, f.b = 0, 1, 2
	default:
		f.m, f.a, f.b = 2, 0, 1
	}
	return f
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// in takes a point from the room into the frame.
func (f *frame) in(p space.Point) vec {
	return vec{int64(p.X) * f.sign[0], int64(p.Y) * f.sign[1], int64(p.Z) * f.sign[2]}
}

// out takes a point from the frame back into the room.
func (f *frame) out(p vec) space.Point {
	return space.Point{
		X: unit.Length(p[0] * f.sign[0]),
		Y: unit.Length(p[1] * f.sign[1]),
		Z: unit.Length(p[2] * f.sign[2]),
	}
}

// inBox takes a box into the frame.
func (f *frame) inBox(b space.Box) (lo, hi vec) {
	p, q := f.in(b.Min), f.in(b.Max)
	for i := range p {
		lo[i], hi[i] = min(p[i], q[i]), max(p[i], q[i])
	}
	return lo, hi
}

// depth grows towards the eye.
func (f *frame) depth(p vec) int64 { return p[0]*f.v[0] + p[1]*f.v[1] + p[2]*f.v[2] }

// plane returns p's place in the picture plane times v[m], which makes it whole.
func (f *frame) plane(p vec) (int64, int64) {
	return p[f.a]*f.v[f.m] - p[f.m]*f.v[f.a], p[f.b]*f.v[f.m] - p[f.m]*f.v[f.b]
}

// spot is a place in the picture plane, in base units.
type spot struct{ x, y float64 }

func (f *frame) spot(p vec) spot {
	x, y := f.plane(p)
	return spot{float64(x) / float64(f.v[f.m]), float64(y) / float64(f.v[f.m])}
}

// spotf is spot for a point that need not be whole. The conversions keep
// compilers from fusing the operations, so that every machine gets the same.
func (f *frame) spotf(p vecf) spot {
	t := p[f.m] / float64(f.v[f.m])
	return spot{p[f.a] - float64(t*float64(f.v[f.a])), p[f.b] - float64(t*float64(f.v[f.b]))}
}

// shadow returns where on the line through at along axis d the sight lines
// pass through the open box lo..hi, as an open stretch from at in units of 1/k.
// With front set only what lies between the line and the eye counts; without,
// also what lies behind. The line must not be a sight line itself.
//
// Along a sight line p + s v the two axes other than d bound s on their own,
// and the bounds of s bound the place along d. Nothing is rounded.
func (f *frame) shadow(at vec, d int, lo, hi vec, front bool) (u0, u1 int64, ok bool) {
	const far = int64(1) << 55
	s0, s1 := -far, far
	if front {
		s0 = 0
	}
	for i, v := range f.v {
		switch {
		case i == d:
		case v == 0:
			if at[i] <= lo[i] || at[i] >= hi[i] {
				return 0, 0, false
			}
		default:
			n := f.k / v
			s0, s1 = max(s0, (lo[i]-at[i])*n), min(s1, (hi[i]-at[i])*n)
		}
	}
	if s0 >= s1 {
		return 0, 0, false
	}
	return (lo[d]-at[d])*f.k - s1*f.v[d], (hi[d]-at[d])*f.k - s0*f.v[d], true
}

// showsAs reports whether lines along axis d show as lines, not as points.
func (f *frame) showsAs(d int) bool { return f.v[(d+1)%3] != 0 || f.v[(d+2)%3] != 0 }
