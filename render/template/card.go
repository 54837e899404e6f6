package template

import (
	"slices"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// Cards for nails are as large as what two parts share, to be laid on the outer
// face of the part that is nailed. Their nails are the same when a card is turned
// round, but not when it is turned over.

// cards returns a card for the crossings of slats and legs, one for those whose
// nails are set aside, and one for aprons on legs.
func (p *packet) cards() []gauge {
	r := p.rack
	all := check.Crossings(r)
	var out []gauge
	add := func(ok func(check.Crossing) bool, name, says string, more ...string) {
		i := slices.IndexFunc(all, ok)
		if i < 0 {
			return
		}
		c := all[i]
		g := gauge{says: says, more: more, name: name, wide: r.Len("leg.width"), tall: r.Len("slat.height"), down: "FOOT"}
		for _, n := range c.Nails {
			at := nail{along: n.Y - c.Patch.Min.Y, across: n.Z - c.Patch.Min.Z}
			if !c.Right { // seen from the left the front is at the right
				at.along = g.wide - at.along
			}
			g.nails = append(g.nails, at)
		}
		out = append(out, g)
	}
	add(func(c check.Crossing) bool { return c.Aside == 0 }, "slat", "Nails of a slat's end on a leg",
		"On the slat's outer face, end flush, FOOT", "down, lettering up: so it serves front and", "back, right faces and left ones.")
	add(func(c check.Crossing) bool { return c.Aside != 0 }, "ringed", "Nails of a ringed crossing",
		"Where the sheet of a ladder's right face", "has a ring; laid as the other card.")
	return append(out, p.apronCards()...)
}

// apronCards returns the card for the nails of aprons.
func (p *packet) apronCards() []gauge {
	r := p.rack
	first := r.Pieces[slices.IndexFunc(r.Pieces, func(q rack.Piece) bool { return r.Parts[q.Part].Name == "apron" })]
	for _, c := range first.Fixed {
		if c.Axis != space.Y {
			continue
		}
		g := gauge{says: "Nails of an apron on a leg", name: "apron", wide: r.Len("leg.thickness"), tall: r.Len("apron.height"),
			more: []string{"On the outer face, over the leg: carry its", "lines round from the inner face."}}
		for _, n := range r.NailPlaces(c.Patch, c.Axis, c.Far) {
			g.nails = append(g.nails, nail{along: n.X - c.Patch.Min.X, across: n.Z - c.Patch.Min.Z})
		}
		return []gauge{g}
	}
	return nil
}

// card draws a card's outline and its nails, and which edge is down where
// there is room for it.
func (g placedGauge) card() []drawing.Mark {
	w, h := um(g.wide), um(g.tall)
	out := []drawing.Mark{drawing.Rectangle(drawing.TemplateCut, 0, drawing.NoFill, drawing.Box(g.at.X, g.at.Y, w, h))}
	for _, n := range g.nails {
		at := g.at.Add(drawing.Pt(um(n.along), h-um(n.across)))
		out = append(out, drawing.Disc(drawing.Register, 0, drawing.NoFill, at, nailRing))
		out = append(out, drawing.Cross(drawing.Register, 0, at, min(3*nailRing, w/4, h/4))...)
	}
	if g.down != "" && w >= 30*mm && h >= 20*mm { // in the quarter that has no nail
		t := note(drawing.Pt(0, 0), g.down)
		t.Bold = true
		out = append(out, t.CentredOn(g.at.Add(drawing.Pt(w/4, h*5/8))))
		tail, tip := g.at.Add(drawing.Pt(w/4, h*5/8+3*mm)), g.at.Add(drawing.Pt(w/4, h-mm))
		out = append(out, drawing.Line(drawing.Symbol, 0, tip, tail), drawing.Arrow(0, tip, tail))
	}
	return out
}

// tallOf is a length on paper, or the height of a bar.
func tallOf(l unit.Length) drawing.Um {
	if l > 0 {
		return um(l)
	}
	return 20 * mm
}
