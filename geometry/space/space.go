// Package space holds points and solids in the rack's own room: x runs left to
// right seen from the front, y from front to back, z up from the floor. It
// knows no racks and no views; the rack model fills it and the views look at it.
package space

import "slatwright/specs/unit"

// Axis is one of the three directions of the room.
type Axis uint8

// The axes, named as in the package comment.
const (
	X Axis = iota
	Y
	Z
)

// String returns "x", "y" or "z".
func (a Axis) String() string { return [...]string{"x", "y", "z"}[a] }

// Point is a place in the room. The zero value is the left front foot corner
// of the carcase.
type Point struct{ X, Y, Z unit.Length }

// On returns the coordinate along a.
func (p Point) On(a Axis) unit.Length { return [...]unit.Length{p.X, p.Y, p.Z}[a] }

// With returns p with the coordinate along a set to l.
func (p Point) With(a Axis, l unit.Length) Point {
	switch a {
	case X:
		p.X = l
	case Y:
		p.Y = l
	default:
		p.Z = l
	}
	return p
}

// Add returns p moved by q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Sub returns the way from q to p.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Box is an axis-aligned solid between two corners; Min is less than Max on
// every axis unless the box is empty.
type Box struct{ Min, Max Point }

// Size returns the extent of b along each axis.
func (b Box) Size() Point { return b.Max.Sub(b.Min) }

// Moved returns b moved by d.
func (b Box) Moved(d Point) Box { return Box{b.Min.Add(d), b.Max.Add(d)} }

// Empty reports whether b has no volume.
func (b Box) Empty() bool {
	return b.Min.X >= b.Max.X || b.Min.Y >= b.Max.Y || b.Min.Z >= b.Max.Z
}

// Meet returns what a and b share; the result is Empty where they share no
// volume, also where they touch.
func (a Box) Meet(b Box) Box {
	return Box{
		Point{max(a.Min.X, b.Min.X), max(a.Min.Y, b.Min.Y), max(a.Min.Z, b.Min.Z)},
		Point{min(a.Max.X, b.Max.X), min(a.Max.Y, b.Max.Y), min(a.Max.Z, b.Max.Z)},
	}
}

// Join returns the smallest box around a and b. An empty box joins nothing.
func (a Box) Join(b Box) Box {
	switch {
	case a.Empty():
		return b
	case b.Empty():
		return a
	}
	return Box{
		Point{min(a.Min.X, b.Min.X), min(a.Min.Y, b.Min.Y), min(a.Min.Z, b.Min.Z)},
		Point{max(a.Max.X, b.Max.X), max(a.Max.Y, b.Max.Y), max(a.Max.Z, b.Max.Z)},
	}
}

// Cylinder is a round solid lying front to back: its axis runs along y through
// (X, Z), from Y0 to Y1. A bottle is one for the body and one for the neck.
type Cylinder struct {
	X, Z   unit.Length
	Y0, Y1 unit.Length
	Radius unit.Length
}

// Bounds returns the smallest box around c.
func (c Cylinder) Bounds() Box {
	return Box{
		Point{c.X - c.Radius, c.Y0, c.Z - c.Radius},
		Point{c.X + c.Radius, c.Y1, c.Z + c.Radius},
	}
}
