package rack

import (
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// NailPlaces returns the places of the two nails in the patch where a bar is fixed
// across another: a quarter in from either side, down to what a rule shows, on one
// diagonal, or on the other where other is set. Nails that come from both faces of
// a leg at one height so stand apart. Aprons, whose patches face y, have theirs on
// the leg's middle line: a quarter in would be too near the ends of the outermost
// (common practice, no source).
func (r *Rack) NailPlaces(patch space.Box, normal space.Axis, other bool) []space.Point {
	u, w := space.Y, space.Z
	switch normal {
	case space.Y:
		u = space.X
	case space.Z:
		u, w = space.X, space.Y
	}
	size := patch.Size()
	first, last := r.NailIn(size.On(u)), size.On(u)-r.NailIn(size.On(u))
	if normal == space.Y {
		first, last = size.On(u)/2, size.On(u)/2
	}
	low, high := r.NailIn(size.On(w)), size.On(w)-r.NailIn(size.On(w))
	if other {
		low, high = high, low
	}
	at := func(along, across unit.Length) space.Point {
		p := patch.Min
		return p.With(u, p.On(u)+along).With(w, p.On(w)+across)
	}
	return []space.Point{at(first, low), at(last, high)}
}

// NailIn is how far in from either side of a piece so wide its nails stand: a
// quarter, down to the next 1/16 in or millimetre, unless that leaves nothing.
func (r *Rack) NailIn(wide unit.Length) unit.Length {
	step := unit.Inch / 16
	if r.Design.Units == unit.Metric {
		step = unit.Millimetre
	}
	if in := (wide / 4).Down(step); in > 0 {
		return in
	}
	return wide / 4
}
