package view

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// The referee for round things walks along the sight line in small steps and
// asks each solid how deep the place is inside. It says nothing where the
// answer hangs on a few base units.

type verdict int

const (
	clear verdict = iota
	covered
	unsure
)

// inside returns how deep p is in the solid, at most; negative outside.
func insideBox(b space.Box, p pt) float64 {
	lo, hi := ptOf(b.Min), ptOf(b.Max)
	deep := math.Inf(1)
	for i := range p {
		deep = min(deep, p[i]-lo[i], hi[i]-p[i])
	}
	return deep
}

func insideRound(r Round, p pt) float64 {
	t := (p[1] - float64(r.Y0)) / float64(r.Y1-r.Y0)
	radius := float64(r.R0) + t*float64(r.R1-r.R0)
	return min(p[1]-float64(r.Y0), float64(r.Y1)-p[1], radius-math.Hypot(p[0]-float64(r.X), p[2]-float64(r.Z)))
}

const (
	stride = 20  // of the walk, base units
	about  = 400 // how far p's own surface lies along the sight line
)

// walk tells whether p is in sight. It counts as clear if no solid comes nearer
// than a stride, so that no corner is stepped over; only about p itself, where
// the surface that p lies on is near, must it do with less.
func walk(s Scene, p, v pt) verdict {
	long := math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2])
	deepest, close := math.Inf(-1), false
	try := func(b space.Box, deep func(pt) float64) {
		lo, hi := ptOf(b.Min), ptOf(b.Max)
		s0, s1 := 2*stride/long, 1e9
		for i := range v {
			if v[i] != 0 {
				a, b := (lo[i]-stride-p[i])/v[i], (hi[i]+stride-p[i])/v[i]
				s0, s1 = max(s0, min(a, b)), min(s1, max(a, b))
			} else if p[i] < lo[i]-stride || p[i] > hi[i]+stride {
				return
			}
		}
		for at := 2.0; at < about; at += 2 { // a corner of what touches p
			close = close || deep(pt{p[0] + at/long*v[0], p[1] + at/long*v[1], p[2] + at/long*v[2]}) > 0.3
		}
		for at := s0; at <= s1 && deepest < 5; at += stride / long {
			d := deep(pt{p[0] + at*v[0], p[1] + at*v[1], p[2] + at*v[2]})
			deepest = max(deepest, d)
			close = close || d > -0.3 || (at*long > about && d > -stride)
		}
	}
	for _, b := range s.Boxes {
		try(b.Box, func(q pt) float64 { return insideBox(b.Box, q) })
	}
	for _, r := range s.Rounds {
		try(r.Bounds(), func(q pt) float64 { return insideRound(r, q) })
	}
	switch {
	case deepest >= 5:
		return covered
	case !close:
		return clear
	}
	return unsure
}

// mixedScene fills a small room with boxes, cylinders, cones and bottles.
func mixedScene(rng *rand.Rand, count int) Scene {
	const scale = 1000
	var s Scene
	for _, b := range disjointBoxes(rng, count, scale) {
		size, mid := b.Box.Size(), space.Point{X: (b.Box.Min.X + b.Box.Max.X) / 2, Z: (b.Box.Min.Z + b.Box.Max.Z) / 2}
		r := min(size.X, size.Z) / 2
		y0, y1 := b.Box.Min.Y, b.Box.Max.Y
		switch rng.Intn(4) {
		case 0:
			s.Boxes = append(s.Boxes, b)
		case 1:
			s.Rounds = append(s.Rounds, Round{b.ID, mid.X, mid.Z, y0, y1, r, r})
		case 2:
			s.Rounds = append(s.Rounds, Round{b.ID, mid.X, mid.Z, y0, y1, r, r * unit.Length(rng.Intn(4)) / 4})
		default:
			body := space.Cylinder{X: mid.X, Z: mid.Z, Y0: y0, Y1: y0 + size.Y/2, Radius: r}
			neck := space.Cylinder{X: mid.X, Z: mid.Z, Y0: y0 + size.Y/2 + size.Y*unit.Length(rng.Intn(2))/8, Y1: y1, Radius: r / 3}
			s.Rounds = append(s.Rounds, Bottle(b.ID, body, neck)...)
		}
	}
	return s
}

// along returns points of l spread over its way: of an even number of parts none
// at its middle or an even share of its turn, where by symmetry an arc may just
// touch something.
func along(l Line, parts int) []pt {
	var out []pt
	p, q, c := ptOf(l.From), ptOf(l.To), ptOf(l.Centre)
	a0 := math.Atan2(p[2]-c[2], p[0]-c[0])
	a1 := math.Atan2(q[2]-c[2], q[0]-c[0])
	if a1 <= a0 {
		a1 += 2 * math.Pi
	}
	for n := 1; n < 2*parts; n += 2 {
		t := (float64(n) + 0.13) / float64(2*parts)
		if l.Arc {
			a := a0 + (a1-a0)*t
			out = append(out, pt{c[0] + float64(l.Radius)*math.Cos(a), c[1], c[2] + float64(l.Radius)*math.Sin(a)})
			continue
		}
		var m pt
		for i := range m {
			m[i] = p[i] + (q[i]-p[i])*t
		}
		out = append(out, m)
	}
	return out
}

// near reports whether l shows within two base units of the place of p.
func near(l Line, p, v pt) bool {
	const reach = 2
	if l.Arc {
		// Slide p along the sight line into the arc's plane.
		c := ptOf(l.Centre)
		s := (c[1] - p[1]) / v[1]
		x, z := p[0]+s*v[0]-c[0], p[2]+s*v[2]-c[2]
		if math.Abs(math.Hypot(x, z)-float64(l.Radius)) > reach {
			return false
		}
		if l.From == l.To {
			return true
		}
		from, to := l.From.Sub(l.Centre), l.To.Sub(l.Centre)
		turn := func(x, z float64) float64 {
			a := math.Atan2(z, x) - math.Atan2(float64(from.Z), float64(from.X))
			return math.Mod(a+4*math.Pi, 2*math.Pi)
		}
		a, hair := turn(x, z), reach/float64(l.Radius)
		return a <= turn(float64(to.X), float64(to.Z))+hair || a >= 2*math.Pi-hair
	}
	a, b, q := seen(ptOf(l.From), v), seen(ptOf(l.To), v), seen(p, v)
	var dd, de, off float64
	for i := range a {
		dd += (b[i] - a[i]) * (b[i] - a[i])
		de += (b[i] - a[i]) * (q[i] - a[i])
	}
	t := min(max(de/dd, 0), 1)
	for i := range a {
		off += (a[i] + t*(b[i]-a[i]) - q[i]) * (a[i] + t*(b[i]-a[i]) - q[i])
	}
	return math.Sqrt(off) <= reach*math.Sqrt(v[0]*v[0]+v[1]*v[1]+v[2]*v[2])
}

// borders returns points on the rims and the edges of s.
func borders(s Scene, d Direction) []pt {
	var out []pt
	for _, b := range s.Boxes {
		out = append(out, edgePoints(b.Box, 997)...)
	}
	for _, r := range s.Rounds {
		for n := range 16 {
			a := (float64(n) + 0.37) * math.Pi / 8
			rim := func(y, radius unit.Length) {
				if d.Y != 0 && radius > 0 { // from the side rims show as straight lines, a tip as a point
					out = append(out, pt{float64(r.X) + float64(radius)*math.Cos(a), float64(y), float64(r.Z) + float64(radius)*math.Sin(a)})
				}
			}
			rim(r.Y0, r.R0)
			rim(r.Y1, r.R1)
		}
	}
	return out
}

func TestRoundsAgainstSightLines(t *testing.T) {
	rng := rand.New(rand.NewSource(9))
	directions := []Direction{Isometric, IsometricLeft, {1, 1, 1}, Front, Back, Left, Right, Top, Bottom, {2, -1, 1}, {0, -1, 1}, {1, -1, 0}, {-1, 3, -2}}
	asked, told := 0, 0
	for n := range 208 {
		s := mixedScene(rng, 3+rng.Intn(9))
		d := directions[n%len(directions)]
		v := coords(d)
		lines := Lines(s, d)
		for _, l := range lines {
			for _, p := range along(l, 4) {
				asked++
				switch got := walk(s, p, v); {
				case got == unsure:
				case (got == covered) != l.Hidden:
					t.Fatalf("scene %d, %v: %+v at %v is %v", n, d, l, p, got)
				default:
					told++
				}
			}
		}
		visible := Visible(lines)
		for _, p := range borders(s, d) {
			if walk(s, p, v) == clear && !slices.ContainsFunc(visible, func(l Line) bool { return near(l, p, v) }) {
				t.Fatalf("scene %d, %v: %v is in sight but not drawn", n, d, p)
			}
		}
		noOverlap(t, lines, d)
	}
	if told*10 < asked*7 {
		t.Errorf("the referee judged only %d of %d places", told, asked)
	}
	t.Logf("%d of %d places judged", told, asked)
}

// Bottles above, behind or beside each other share their lines where they look alike.
func TestBottlesOnOneAnother(t *testing.T) {
	for _, c := range []struct {
		d    Direction
		step space.Point
	}{{Top, space.Point{Z: 5000}}, {Right, space.Point{X: 5000}}, {Front, space.Point{Y: 9000}}, {Isometric, space.Point{X: 5000, Y: -5000, Z: 5000}}} {
		var one, two Scene
		for i := range 2 {
			d := space.Point{X: c.step.X * unit.Length(i), Y: c.step.Y * unit.Length(i), Z: c.step.Z * unit.Length(i)}
			b := Bottle(i, space.Cylinder{X: d.X, Z: d.Z, Y0: d.Y + 3000, Y1: d.Y + 8000, Radius: 1000}, space.Cylinder{X: d.X, Z: d.Z, Y0: d.Y, Y1: d.Y + 2000, Radius: 300})
			if len(b) != 3 {
				t.Fatalf("a bottle of %d rounds, want body, shoulder and neck", len(b))
			}
			if two.Rounds = append(two.Rounds, b...); i == 0 {
				one.Rounds = b
			}
		}
		if got, want := len(Visible(Lines(two, c.d))), len(Visible(Lines(one, c.d))); got != want {
			t.Errorf("%v: two bottles on one another have %d visible lines, one has %d", c.d, got, want)
		}
	}
}

// A bottle's seat is rounded and may sink by a base unit or two into the corner
// of a slat; the corner's edge shows all the same where it faces the eye.
func TestSunkSeat(t *testing.T) {
	s := Scene{
		Boxes:  []Solid{{0, space.Box{Min: space.Point{X: -1600, Z: -1800}, Max: space.Point{X: -599, Y: 5000, Z: -799}}}},
		Rounds: []Round{{1, 0, 0, 500, 4500, 1000, 1000}},
	}
	seen := 0
	for _, l := range Visible(Lines(s, Direction{1, -1, -1})) {
		if l.ID == 0 && l.From.X == -599 && l.From.Z == -799 && l.To.X == -599 && l.To.Z == -799 {
			seen += int((l.To.Y - l.From.Y).Abs())
		}
	}
	if seen != 5000 {
		t.Errorf("%d of the edge's 5000 base units in sight", seen)
	}
}
