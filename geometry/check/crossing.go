package check

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// A Crossing is a slat on a leg with the places of its nails, as every sheet and
// template shows them.
type Crossing struct {
	Ladder    int // into Ladders
	Slat, Leg int // into Pieces
	Right     bool
	Patch     space.Box // what the two share
	Nails     []space.Point
	Meets     bool        // a nail here would meet another in the leg
	Aside     unit.Length // how far the nails are shifted towards the middle of the leg's width
}

// Crossings lists the crossings of the first ladder of each shape, slat by slat.
// Where nails of two slats would meet, those of the right face are shifted.
func Crossings(r *rack.Rack) []Crossing {
	meets, aside := Meets(r), NailAside(r)
	var out []Crossing
	for i, p := range r.Pieces {
		if r.Parts[p.Part].Name != "slat" || !firstOfShape(r, p.Ladder) {
			continue
		}
		for _, c := range p.Fixed {
			if r.Parts[r.Pieces[c.Piece].Part].Name != "leg" {
				continue
			}
			x := Crossing{Ladder: p.Ladder, Slat: i, Leg: c.Piece, Right: !c.Far, Patch: c.Patch}
			for _, m := range meets {
				if m.Leg != c.Piece || m.A != i && m.B != i {
					continue
				}
				x.Meets = true
				if x.Right && r.Pieces[m.A].Ladder >= 0 && r.Pieces[m.B].Ladder >= 0 {
					x.Aside = aside
				}
			}
			x.Nails = inward(r.NailPlaces(c.Patch, c.Axis, x.Right), x.Aside)
			out = append(out, x)
		}
	}
	return slices.Clip(out)
}

// inward moves the two nails of a crossing towards each other along y.
func inward(nails []space.Point, aside unit.Length) []space.Point {
	if len(nails) != 2 || aside == 0 {
		return nails
	}
	a, b := nails[0], nails[1]
	if a.Y > b.Y {
		aside = -aside
	}
	a.Y += aside
	b.Y -= aside
	return []space.Point{a, b}
}
