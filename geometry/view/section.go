package view

import (
	"fmt"

	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Face is what a section plane cuts of one solid: a box without thickness along
// the plane's axis, to be hatched, or a disc for a round.
type Face struct {
	ID   int
	Flat space.Box // around the cut; Min and Max agree on the plane's axis
	Disc bool      // a circle of Radius about the middle of Flat
	// Radius is that of the round at the plane, rounded to base units.
	Radius unit.Length
}

// Section is a scene cut by a plane square to Axis at the coordinate At and
// seen from Direction. What lay between the plane and the eye is gone.
type Section struct {
	Axis      space.Axis
	At        unit.Length
	Direction Direction
	Faces     []Face // in the scene's order
	Behind    Scene  // cut solids end at the plane
}

// Cut cuts s by the plane square to axis at the coordinate at, seen from d. A
// solid that only touches the plane is not cut. Rounds are cut across but not
// along their length, as shafts are in drawings [common practice, no source]: a
// plane along a round leaves it whole, without a face, if its axis lies in the
// plane or behind it, and takes it away if not. Trails stay if they are behind.
//
// Cut panics unless d looks at the plane's front, its component along the axis
// not being zero.
func Cut(s Scene, axis space.Axis, at unit.Length, d Direction) Section {
	d.mustBeValid(len(s.Rounds) > 0)
	toEye := d.On(axis)
	if toEye == 0 {
		panic(fmt.Sprintf("view: direction %v looks along the section plane %s = %d", d, axis, int64(at)))
	}
	c := Section{Axis: axis, At: at, Direction: d}
	behind := func(x unit.Length) bool { return (toEye > 0 && x <= at) || (toEye < 0 && x >= at) }
	for _, b := range s.Boxes {
		if b.Box.Empty() {
			continue
		}
		if lo, hi := b.Box.Min.On(axis), b.Box.Max.On(axis); lo < at && at < hi {
			flat := set(b.Box, axis, at, at)
			c.Faces = append(c.Faces, Face{ID: b.ID, Flat: flat})
			if toEye > 0 {
				b.Box = set(b.Box, axis, lo, at)
			} else {
				b.Box = set(b.Box, axis, at, hi)
			}
		} else if !behind(lo) || !behind(hi) {
			continue
		}
		c.Behind.Boxes = append(c.Behind.Boxes, b)
	}
	for _, r := range s.Rounds {
		if axis == space.Y {
			c.cutRound(r, toEye)
		} else if !r.empty() && behind(space.Point{X: r.X, Z: r.Z}.On(axis)) {
			c.Behind.Rounds = append(c.Behind.Rounds, r)
		}
	}
	for _, t := range s.Trails {
		if behind(t.From.On(axis)) && behind(t.To.On(axis)) {
			c.Behind.Trails = append(c.Behind.Trails, t)
		}
	}
	return c
}

// set returns b between lo and hi along axis.
func set(b space.Box, axis space.Axis, lo, hi unit.Length) space.Box {
	switch axis {
	case space.X:
		b.Min.X, b.Max.X = lo, hi
	case space.Y:
		b.Min.Y, b.Max.Y = lo, hi
	default:
		b.Min.Z, b.Max.Z = lo, hi
	}
	return b
}

// cutRound cuts r across and keeps what lies behind the plane.
func (c *Section) cutRound(r Round, toEye int) {
	if r.empty() {
		return
	}
	if r.Y0 < c.At && c.At < r.Y1 {
		radius := r.at(c.At)
		middle := space.Point{X: r.X, Y: c.At, Z: r.Z}
		reach := space.Point{X: radius, Z: radius}
		c.Faces = append(c.Faces, Face{ID: r.ID, Flat: space.Box{Min: middle.Sub(reach), Max: middle.Add(reach)}, Disc: true, Radius: radius})
		if toEye > 0 {
			r.Y1, r.R1 = c.At, radius
		} else {
			r.Y0, r.R0 = c.At, radius
		}
	} else if (toEye > 0 && r.Y1 > c.At) || (toEye < 0 && r.Y0 < c.At) {
		return
	}
	c.Behind.Rounds = append(c.Behind.Rounds, r)
}

// at returns the radius at y, rounded to base units. Radius and length of a
// bottle are below 2^31 base units, so that the product fits.
func (r Round) at(y unit.Length) unit.Length {
	if r.R0 == r.R1 {
		return r.R0
	}
	long := int64(r.Y1 - r.Y0)
	return r.R0 + unit.Length(roundDiv(int64(r.R1-r.R0)*int64(y-r.Y0), long))
}

// Lines returns the lines of what the section leaves, as [Lines] does. Those
// around cut faces have the kind Sawn; they are always visible.
func (c Section) Lines() []Line {
	cut := map[int]bool{}
	for _, f := range c.Faces {
		cut[f.ID] = true
	}
	lines := Lines(c.Behind, c.Direction)
	for i, l := range lines {
		if cut[l.ID] && !l.Hidden && l.Kind != Way && l.From.On(c.Axis) == c.At && l.To.On(c.Axis) == c.At {
			lines[i].Kind = Sawn
		}
	}
	return lines
}
