// Package view looks at solids in space. In go boxes and bottles with the
// caller's numbers on them; out come the lines a drawing of them has, each
// either visible or hidden, and where exploded groups stand. The sheets map the
// lines to paper with a [Projection] and ink them.
//
// Hidden lines are removed analytically, pair by pair and without any order of
// depth, so solids that hide each other in a ring come out right. Box edges
// against boxes are decided in whole numbers: faces in contact and flush
// joints need no tolerance. Round things are computed in floating point, with
// the one tolerance [graze], and end within a base unit of the true place.
//
// The solids of one scene must not share volume; touching is fine, and so is
// the overlap of a base unit that rounding a bottle's seat can leave.
package view

import (
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// Solid is a box, with the number its lines carry.
type Solid struct {
	ID  int
	Box space.Box
}

// Round is a cylinder or a cone frustum lying front to back: its axis runs
// along y through (X, Z), and its radius goes from R0 at Y0 to R1 at Y1. Y0 is
// less than Y1. Several rounds with one ID make a bottle.
type Round struct {
	ID     int
	X, Z   unit.Length
	Y0, Y1 unit.Length
	R0, R1 unit.Length
}

// Bounds returns the smallest box around r.
func (r Round) Bounds() space.Box {
	return space.Cylinder{X: r.X, Z: r.Z, Y0: r.Y0, Y1: r.Y1, Radius: max(r.R0, r.R1)}.Bounds()
}

func (r Round) empty() bool {
	return r.Y0 >= r.Y1 || min(r.R0, r.R1) < 0 || max(r.R0, r.R1) == 0
}

// Trail is a thin straight line between two parts that belong together in an
// exploded view. It can be hidden but hides nothing.
type Trail struct {
	ID       int
	From, To space.Point
}

// Scene is what a view looks at. Coordinates reach 2^40 base units, some 13 km,
// either way; empty solids are not drawn.
type Scene struct {
	Boxes  []Solid
	Rounds []Round
	Trails []Trail
}

// Bottle returns a bottle's body, its shoulder and its neck as rounds that touch
// and do not overlap. The neck may lie before or behind the body; what of it
// reaches into the body is cut off, and a frustum fills the gap between them.
func Bottle(id int, body, neck space.Cylinder) []Round {
	rounds := []Round{{id, body.X, body.Z, body.Y0, body.Y1, body.Radius, body.Radius}}
	shoulder := Round{ID: id, X: body.X, Z: body.Z}
	if neck.Y0+neck.Y1 < body.Y0+body.Y1 {
		neck.Y1 = min(neck.Y1, body.Y0)
		shoulder.Y0, shoulder.Y1 = neck.Y1, body.Y0
		shoulder.R0, shoulder.R1 = neck.Radius, body.Radius
	} else {
		neck.Y0 = max(neck.Y0, body.Y1)
		shoulder.Y0, shoulder.Y1 = body.Y1, neck.Y0
		shoulder.R0, shoulder.R1 = body.Radius, neck.Radius
	}
	if !shoulder.empty() {
		rounds = append(rounds, shoulder)
	}
	if n := (Round{id, neck.X, neck.Z, neck.Y0, neck.Y1, neck.Radius, neck.Radius}); !n.empty() {
		rounds = append(rounds, n)
	}
	return rounds
}

// Moved returns s with each solid moved by what by says for its ID. Trails stay.
func (s Scene) Moved(by func(id int) space.Point) Scene {
	out := Scene{
		Boxes:  make([]Solid, len(s.Boxes)),
		Rounds: make([]Round, len(s.Rounds)),
		Trails: s.Trails,
	}
	for i, b := range s.Boxes {
		out.Boxes[i] = Solid{b.ID, b.Box.Moved(by(b.ID))}
	}
	for i, r := range s.Rounds {
		d := by(r.ID)
		r.X, r.Z, r.Y0, r.Y1 = r.X+d.X, r.Z+d.Z, r.Y0+d.Y, r.Y1+d.Y
		out.Rounds[i] = r
	}
	return out
}

// Bounds returns the smallest box around all solids of s.
func (s Scene) Bounds() space.Box {
	var all space.Box
	for _, b := range s.Boxes {
		all = all.Join(b.Box)
	}
	for _, r := range s.Rounds {
		all = all.Join(r.Bounds())
	}
	return all
}
