package rack

import (
	"testing"

	"slatwright/geometry/space"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// Nails of slats stand a quarter in, down to whole millimetres or sixteenths, on a diagonal, the other one on the other
// face; those of aprons on the leg's middle line, so that the outermost is as far
// from the apron's end as the leg allows.
func TestNailPlaces(t *testing.T) {
	mm := func(x, y, z unit.Length) space.Point {
		return space.Point{X: x * unit.Millimetre, Y: y * unit.Millimetre, Z: z * unit.Millimetre}
	}
	metric := &Rack{Design: &design.Design{Units: unit.Metric}}
	for _, c := range []struct {
		name   string
		patch  space.Box
		normal space.Axis
		other  bool
		want   [2]space.Point
	}{
		{"slat, left face", space.Box{Min: mm(20, 0, 100), Max: mm(20, 40, 120)}, space.X, false, [2]space.Point{mm(20, 10, 105), mm(20, 30, 115)}},
		{"slat, right face", space.Box{Min: mm(20, 0, 100), Max: mm(20, 40, 120)}, space.X, true, [2]space.Point{mm(20, 10, 115), mm(20, 30, 105)}},
		{"apron", space.Box{Min: mm(0, 20, 0), Max: mm(20, 20, 64)}, space.Y, false, [2]space.Point{mm(10, 20, 16), mm(10, 20, 48)}},
		{"slat, quarters no rule shows", space.Box{Min: mm(20, 0, 100), Max: mm(20, 45, 125)}, space.X, false, [2]space.Point{mm(20, 11, 106), mm(20, 34, 119)}},
		{"apron, the same", space.Box{Min: mm(0, 20, 0), Max: mm(20, 20, 65)}, space.Y, false, [2]space.Point{mm(10, 20, 16), mm(10, 20, 49)}},
	} {
		got := metric.NailPlaces(c.patch, c.normal, c.other)
		if len(got) != 2 || got[0] != c.want[0] || got[1] != c.want[1] {
			t.Errorf("%s: %v; want %v", c.name, got, c.want)
		}
	}
}

// In inches nails stand in sixteenths; a piece too narrow for that keeps its quarter.
func TestNailIn(t *testing.T) {
	imperial := &Rack{Design: &design.Design{Units: unit.Imperial}}
	for _, c := range []struct{ wide, want unit.Length }{
		{unit.Inch, unit.Inch / 4}, {unit.Inch * 7 / 8, unit.Inch * 3 / 16}, {unit.Inch * 13 / 8, unit.Inch * 3 / 8}, {unit.Inch / 8, unit.Inch / 32},
	} {
		if got := imperial.NailIn(c.wide); got != c.want {
			t.Errorf("nails of %v stand %v in, want %v", c.wide, got, c.want)
		}
	}
}
