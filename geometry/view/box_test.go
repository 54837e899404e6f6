package view

import (
	"fmt"
	"math/rand"
	"os"
	"slices"
	"testing"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// The referee for boxes knows nothing of edges, frames or intervals along them:
// it follows the sight line from one point and asks each box by itself. All its
// figures are quarters and halves, so that float64 holds them exactly.

type pt [3]float64

func ptOf(p space.Point) pt { return pt{float64(p.X), float64(p.Y), float64(p.Z)} }

func coords(d Direction) pt { return pt{float64(d.X), float64(d.Y), float64(d.Z)} }

// blocked reports whether the open inside of a box lies on the way from p to the eye.
func blocked(boxes []Solid, p, v pt) bool {
	for _, b := range boxes {
		lo, hi := ptOf(b.Box.Min), ptOf(b.Box.Max)
		s0, s1, miss := 0.0, 1e18, false
		for i := range v {
			if v[i] == 0 {
				miss = miss || p[i] <= lo[i] || p[i] >= hi[i]
				continue
			}
			a, b := (lo[i]-p[i])/v[i], (hi[i]-p[i])/v[i]
			s0, s1 = max(s0, min(a, b)), min(s1, max(a, b))
		}
		if !miss && s0 < s1 {
			return true
		}
	}
	return false
}

// seen returns p's place in the picture: what is left of it across the direction.
func seen(p, v pt) pt {
	return pt{p[1]*v[2] - p[2]*v[1], p[2]*v[0] - p[0]*v[2], p[0]*v[1] - p[1]*v[0]}
}

// covers reports whether the straight line l shows at the place q.
func covers(l Line, q, v pt) bool {
	a, b := seen(ptOf(l.From), v), seen(ptOf(l.To), v)
	var along, long, off float64
	d := pt{b[0] - a[0], b[1] - a[1], b[2] - a[2]}
	e := pt{q[0] - a[0], q[1] - a[1], q[2] - a[2]}
	for i := range d {
		along += d[i] * e[i]
		long += d[i] * d[i]
	}
	for i := range d {
		j := (i + 1) % 3
		off += max(d[i]*e[j]-d[j]*e[i], d[j]*e[i]-d[i]*e[j])
	}
	return off == 0 && along >= 0 && along <= long
}

// disjointBoxes fills a small cube with random boxes that share no volume, many
// of them touching. The scale makes quarters of the small units whole.
func disjointBoxes(rng *rand.Rand, count int, scale unit.Length) []Solid {
	var out []Solid
	for range 40 * count {
		var lo, hi [3]unit.Length
		for i := range lo {
			lo[i] = unit.Length(rng.Intn(8)) * scale
			hi[i] = lo[i] + unit.Length(1+rng.Intn(4))*scale
		}
		b := space.Box{Min: space.Point{X: lo[0], Y: lo[1], Z: lo[2]}, Max: space.Point{X: hi[0], Y: hi[1], Z: hi[2]}}
		if slices.ContainsFunc(out, func(o Solid) bool { return !o.Box.Meet(b).Empty() }) {
			continue
		}
		if out = append(out, Solid{len(out), b}); len(out) == count {
			break
		}
	}
	return out
}

// edgePoints returns points on the edges of b, none of them at a place where a
// hidden stretch can begin in a picture with components of one and two.
func edgePoints(b space.Box, scale unit.Length) []pt {
	lo, hi := ptOf(b.Min), ptOf(b.Max)
	var out []pt
	step := float64(scale) / 4
	for d := range 3 {
		for n := range 4 {
			p := lo
			if n&1 != 0 {
				p[(d+1)%3] = hi[(d+1)%3]
			}
			if n&2 != 0 {
				p[(d+2)%3] = hi[(d+2)%3]
			}
			for p[d] = lo[d] + step; p[d] < hi[d]; p[d] += 2 * step {
				out = append(out, p)
			}
		}
	}
	return out
}

// compareBoxes holds Lines against the referee.
func compareBoxes(t *testing.T, boxes []Solid, d Direction, scale unit.Length) {
	t.Helper()
	v := coords(d)
	lines := Lines(Scene{Boxes: boxes}, d)
	for _, b := range boxes {
		for _, p := range edgePoints(b.Box, scale) {
			want := blocked(boxes, p, v)
			shown, any := false, false
			for _, l := range lines {
				if covers(l, seen(p, v), v) {
					any = true
					shown = shown || !l.Hidden
				}
			}
			if !any {
				t.Fatalf("%v: point %v of box %d has no line", d, p, b.ID)
			}
			if !want && !shown {
				t.Fatalf("%v: point %v of box %d is in sight but not drawn", d, p, b.ID)
			}
		}
	}
	for i, l := range lines {
		if l.From == l.To {
			t.Fatalf("%v: line %d has no length: %+v", d, i, l)
		}
		for n := 1; n < 16; n += 2 {
			p, q := ptOf(l.From), ptOf(l.To)
			for k := range p {
				p[k] += (q[k] - p[k]) * float64(n) / 16
			}
			if got := blocked(boxes, p, v); got != l.Hidden {
				t.Fatalf("%v: line %+v hidden = %v at %v, want %v", d, l, l.Hidden, p, got)
			}
		}
	}
	noOverlap(t, lines, d)
}

// noOverlap checks that no straight line lies on another: that no two
// neighbouring points of one lie on another. Outlines of cones may by chance.
func noOverlap(t *testing.T, lines []Line, d Direction) {
	t.Helper()
	v := coords(d)
	for i, l := range lines {
		if l.Arc || ofCone(l) {
			continue
		}
		a, b := seen(ptOf(l.From), v), seen(ptOf(l.To), v)
		on := func(m Line, n int) bool {
			var q pt
			for k := range q {
				q[k] = a[k] + (b[k]-a[k])*float64(n)/16
			}
			return covers(m, q, v)
		}
		for j, m := range lines {
			for n := 1; n < 16 && j != i && !m.Arc && !ofCone(m); n += 2 {
				if on(m, n) && (on(m, n-1) || on(m, n+1)) {
					t.Fatalf("%v: lines lie on each other: %+v and %+v", d, l, m)
				}
			}
		}
	}
}

func ofCone(l Line) bool {
	return l.Kind == Outline && (l.From.X != l.To.X || l.From.Z != l.To.Z)
}

var everyDirection = []Direction{
	Front, Back, Left, Right, Top, Bottom,
	Isometric, IsometricLeft, {1, 1, 1}, {-1, 1, -1},
	{2, -1, 1}, {-1, -2, 1}, {0, -1, 1}, {1, 0, 2}, {-1, 1, 0},
}

func TestBoxesAgainstSightLines(t *testing.T) {
	rng := rand.New(rand.NewSource(20))
	const scale = 64
	scenes := 200
	if os.Getenv("SLATWRIGHT_LONG") == "1" {
		scenes = 1000
	}
	for n := range scenes {
		boxes := disjointBoxes(rng, 3+rng.Intn(12), scale)
		for k := range 4 {
			compareBoxes(t, boxes, everyDirection[(n*4+k)%len(everyDirection)], scale)
		}
	}
}

func TestBoxesFlush(t *testing.T) {
	box := func(x0, y0, z0, x1, y1, z1 unit.Length) space.Box {
		return space.Box{Min: space.Point{X: x0, Y: y0, Z: z0}, Max: space.Point{X: x1, Y: y1, Z: z1}}
	}
	for _, c := range []struct {
		name  string
		boxes []space.Box
	}{
		{"one", []space.Box{box(0, 0, 0, 64, 128, 64)}},
		{"side by side", []space.Box{box(0, 0, 0, 64, 64, 64), box(64, 0, 0, 128, 64, 64)}},
		{"one behind the other", []space.Box{box(0, 0, 0, 64, 64, 64), box(0, 64, 0, 64, 128, 64)}},
		{"seam before an edge", []space.Box{box(0, 0, 0, 64, 64, 64), box(64, 0, 0, 128, 64, 64), box(64, 128, 0, 192, 192, 64)}},
		{"a ring of three that hide each other", []space.Box{
			box(5*64, 6*64, 9*64, 11*64, 8*64, 11*64), box(7*64, 6*64, 6*64, 9*64, 17*64, 8*64), box(4*64, 8*64, 4*64, 6*64, 9*64, 15*64),
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var boxes []Solid
			for i, b := range c.boxes {
				boxes = append(boxes, Solid{i, b})
			}
			for _, d := range everyDirection {
				compareBoxes(t, boxes, d, 64)
			}
		})
	}
}

func TestOneBoxHasItsLines(t *testing.T) {
	b := []Solid{{7, space.Box{Max: space.Point{X: 100, Y: 200, Z: 300}}}}
	for _, c := range []struct {
		d               Direction
		visible, hidden int
	}{{Front, 4, 0}, {Right, 4, 0}, {Top, 4, 0}, {Isometric, 9, 3}, {IsometricLeft, 9, 3}, {Direction{0, -1, 1}, 7, 1}} {
		lines := Lines(Scene{Boxes: b}, c.d)
		v := len(Visible(lines))
		if v != c.visible || len(lines)-v != c.hidden {
			t.Errorf("%v: %d visible and %d hidden lines, want %d and %d", c.d, v, len(lines)-v, c.visible, c.hidden)
		}
	}
}

// Far out, where a product of two coordinates would not fit, nothing changes.
func TestFarOut(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	far := space.Point{X: 1 << 39, Y: -1 << 39, Z: 1 << 38}
	for range 20 {
		boxes := disjointBoxes(rng, 8, 64)
		var moved []Solid
		for _, b := range boxes {
			moved = append(moved, Solid{b.ID, b.Box.Moved(far)})
		}
		for _, d := range []Direction{Isometric, {9, -8, 7}, {-5, 7, 9}, Front} {
			near, out := Lines(Scene{Boxes: boxes}, d), Lines(Scene{Boxes: moved}, d)
			for i := range near {
				near[i].From, near[i].To = near[i].From.Add(far), near[i].To.Add(far)
			}
			if got, want := fmt.Sprint(out), fmt.Sprint(near); got != want {
				t.Fatalf("%v: far lines differ\n got %s\nwant %s", d, got, want)
			}
		}
	}
}
