package rack

import (
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// NailPlaces returns the places of the two nails in the patch where a bar is fixed
// across another: a quarter in from either side, on one diagonal, or on the
// other where other is set. Nails that come from both faces of a leg at one
// height so stand apart. Aprons, whose patches face y, have theirs on the leg's
// middle line: a quarter in would be too near the ends of the outermost
// (common practice, no source).
func NailPlaces(patch space.Box, normal space.Axis, other bool) []space.Point {
	size := patch.Size()
	u, w := space.Y, space.Z
	switch normal {
	case space.Y:
		u = space.X
	case space.Z:
		u, w = space.X, space.Y
	}
	at := func(i, j unit.Length) space.Point {
		p := patch.Min
		move := func(a space.Axis, d unit.Length) {
			switch a {
			case space.X:
				p.X += d
			case space.Y:
				p.Y += d
			default:
				p.Z += d
			}
		}
		move(u, size.On(u)*i/4)
		move(w, size.On(w)*j/4)
		return p
	}
	if normal == space.Y {
		return []space.Point{at(2, 1), at(2, 3)}
	}
	if other {
		return []space.Point{at(1, 3), at(3, 1)}
	}
	return []space.Point{at(1, 1), at(3, 3)}
}
