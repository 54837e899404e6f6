package finish

import (
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/specs/unit"
)

// PartArea is the faces of all pieces of a part, exactly. Coated is Surface
// less Bare.
type PartArea struct {
	Part                  int // into the rack's Parts, -1 for a sum
	Count                 int
	Surface, Bare, Coated unit.Area
}

// Areas returns the areas of every part, in the rack's order. Surface counts
// all six faces of each piece; eased edges are not taken off.
func Areas(r *rack.Rack) []PartArea {
	list := make([]PartArea, len(r.Parts))
	for i, p := range r.Parts {
		box := unit.Rectangle(p.Thickness, p.Width).Plus(unit.Rectangle(p.Width, p.Length)).Plus(unit.Rectangle(p.Length, p.Thickness))
		list[i] = PartArea{Part: i, Count: p.Count, Surface: box.Times(2 * p.Count)}
	}
	for z := range Zones(r) {
		a := &list[r.Pieces[z.Piece].Part]
		a.Bare = a.Bare.Plus(z.Area())
	}
	for i := range list {
		list[i].Coated = list[i].Surface.Minus(list[i].Bare)
	}
	return list
}

// Sum adds areas up.
func Sum(list []PartArea) PartArea {
	sum := PartArea{Part: -1}
	for _, a := range list {
		sum.Count += a.Count
		sum.Surface, sum.Bare, sum.Coated = sum.Surface.Plus(a.Surface), sum.Bare.Plus(a.Bare), sum.Coated.Plus(a.Coated)
	}
	return sum
}

// Area returns the patch's area.
func (z Zone) Area() unit.Area {
	s := z.Patch.Size()
	switch z.Axis {
	case space.X:
		return unit.Rectangle(s.Y, s.Z)
	case space.Y:
		return unit.Rectangle(s.X, s.Z)
	}
	return unit.Rectangle(s.X, s.Y)
}
