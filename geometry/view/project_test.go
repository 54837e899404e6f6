package view

import (
	"math"
	"testing"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

func TestPointOnPaper(t *testing.T) {
	const mm = unit.Millimetre
	x, y, z := space.Point{X: 100 * mm}, space.Point{Y: 100 * mm}, space.Point{Z: 100 * mm}
	cos := 10 * math.Sqrt(3) / 2
	for _, c := range []struct {
		d       Direction
		x, y, z [2]float64 // where 100 mm along each axis lies, at 1:10
	}{
		{Front, [2]float64{10, 0}, [2]float64{0, 0}, [2]float64{0, -10}},
		{Back, [2]float64{-10, 0}, [2]float64{0, 0}, [2]float64{0, -10}},
		{Right, [2]float64{0, 0}, [2]float64{10, 0}, [2]float64{0, -10}},
		{Left, [2]float64{0, 0}, [2]float64{-10, 0}, [2]float64{0, -10}},
		{Top, [2]float64{10, 0}, [2]float64{0, -10}, [2]float64{0, 0}},
		{Bottom, [2]float64{10, 0}, [2]float64{0, 10}, [2]float64{0, 0}},
		{Isometric, [2]float64{cos, 5}, [2]float64{cos, -5}, [2]float64{0, -10}},
		{IsometricLeft, [2]float64{cos, -5}, [2]float64{-cos, -5}, [2]float64{0, -10}},
	} {
		p := Projection{c.d, 1, 10}
		for i, q := range []space.Point{x, y, z} {
			want := [...][2]float64{c.x, c.y, c.z}[i]
			gx, gy := p.Point(q)
			if math.Abs(gx-want[0]) > 1e-9 || math.Abs(gy-want[1]) > 1e-9 {
				t.Errorf("%v: %s axis ends at %v, %v, want %v", c.d, space.Axis(i), gx, gy, want)
			}
			if got := p.Length(100*mm, space.Axis(i)); math.Abs(got-math.Hypot(want[0], want[1])) > 1e-9 {
				t.Errorf("%v: 100 mm along %s is %v long", c.d, space.Axis(i), got)
			}
		}
	}
}

func TestIsometricEllipse(t *testing.T) {
	got := Projection{Isometric, 1, 1}.Ellipse(10 * unit.Millimetre)
	// The long axis of a circle of diameter d is 1.22 d, the short one 0.71 d
	// (memory, believed ISO 5456-3, isometric axonometry).
	if math.Abs(got.RX-12.2474) > 1e-4 || math.Abs(got.RY-7.0711) > 1e-4 || math.Abs(got.Turn-60) > 1e-9 {
		t.Errorf("got %+v, want 12.2474, 7.0711 at 60", got)
	}
}

// Points of the room's arc must lie on the paper's, in the sense its flags say.
func TestArcOnPaper(t *testing.T) {
	const r = 30 * unit.Millimetre
	for _, d := range []Direction{Isometric, IsometricLeft, Front, Back, {1, 1, 1}, {-1, 2, -3}, {0, -1, 1}, {1, -1, 0}} {
		p := Projection{d, 1, 2}
		for _, c := range [][2]float64{{10, 60}, {200, 30}, {350, 200}, {0, 270}} {
			at := func(deg float64) space.Point {
				s, k := math.Sincos(deg * math.Pi / 180)
				return space.Point{X: 5*unit.Millimetre + unit.Length(k*float64(r)), Y: 7, Z: 9 + unit.Length(s*float64(r))}
			}
			if c[1] < c[0] {
				c[1] += 360
			}
			l := Line{Arc: true, From: at(c[0]), To: at(c[1]), Centre: space.Point{X: 5 * unit.Millimetre, Y: 7, Z: 9}, Radius: r}
			a := p.Arc(l)
			angle := func(x, y float64) float64 { // on the ellipse, which must hold the point
				s, k := math.Sincos(a.Turn * math.Pi / 180)
				u, v := ((x-a.CX)*k+(y-a.CY)*s)/a.RX, ((y-a.CY)*k-(x-a.CX)*s)/a.RY
				if math.Abs(math.Hypot(u, v)-1) > 1e-5 {
					t.Errorf("%v: %v, %v is off the ellipse by %v", d, x, y, math.Hypot(u, v)-1)
				}
				return math.Atan2(v, u)
			}
			sense := 1.0
			if !a.Clockwise {
				sense = -1
			}
			on := func(to float64) float64 { return math.Mod(sense*(to-angle(a.X0, a.Y0))+4*math.Pi, 2*math.Pi) }
			mx, my := p.Point(at((c[0] + c[1]) / 2))
			if sweep := on(angle(a.X1, a.Y1)); on(angle(mx, my)) > sweep || (sweep > math.Pi) != a.Large {
				t.Errorf("%v: arc %v runs the wrong way: %+v", d, c, a)
			}
		}
	}
}
