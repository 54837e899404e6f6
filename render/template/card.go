package template

import (
	"fmt"
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// Cards for nails are, left of their words, as large as what two parts share, to be
// laid on the outer face of the part that is nailed. Seen there all slats have their
// nails alike, whichever face of a ladder they are on; the nails are the same when a
// card is turned half round, but not when it is turned over.

// cards returns a card for the crossings of slats and legs, one for those whose
// nails are set aside, and one for aprons on legs.
func (p *packet) cards() []gauge {
	r := p.rack
	all := check.Crossings(r)
	var out []gauge
	add := func(ok func(check.Crossing) bool, says string, how string) {
		i := slices.IndexFunc(all, ok)
		if i < 0 {
			return
		}
		c := all[i]
		g := gauge{says: says, wide: r.Len("leg.width"), tall: r.Len("slat.height")}
		g.words, g.short = p.nailWords(g, how), says+", "+p.step(assembly.StepMark)
		for _, n := range c.Nails {
			at := nail{along: n.Y - c.Patch.Min.Y, across: n.Z - c.Patch.Min.Z}
			if !c.Right { // seen from the left the front is at the right
				at.along = g.wide - at.along
			}
			g.nails = append(g.nails, at)
		}
		out = append(out, g)
	}
	add(func(c check.Crossing) bool { return c.Aside == 0 }, "Nails of a slat's end",
		"On the slat's outer face, left end flush with the slat's end. Other end: turn half round. Same for left and right faces.")
	add(func(c check.Crossing) bool { return c.Aside != 0 }, "Nails of a ringed crossing",
		"Only where the sheet of a ladder's right face has a ring; laid as the other card.")
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
		g := gauge{says: "Nails of an apron", wide: r.Len("leg.thickness"), tall: r.Len("apron.height")}
		g.words = p.nailWords(g, "On the apron's outer face, nails over the leg: carry the leg's lines round from the inner face. At the right end turn half round.")
		for _, n := range r.NailPlaces(c.Patch, c.Axis, c.Far) {
			g.nails = append(g.nails, nail{along: n.X - c.Patch.Min.X, across: n.Z - c.Patch.Min.Z})
		}
		return []gauge{g}
	}
	return nil
}

// nailWords are the words inside a card for nails, with its size to check it by.
func (p *packet) nailWords(g gauge, how string) []string {
	f := p.rack.Format
	return []string{g.says, fmt.Sprintf("%s Printed side always up. %s × %s left of the line. %s.",
		how, whole(f.Text(g.wide)), whole(f.Unit(g.tall)), word.Capital(p.step(assembly.StepMark)))}
}

// nailMarks draws the nails of a card and the line between them and its words.
func (f format) nailMarks(g gauge, s shape) []drawing.Mark {
	var out []drawing.Mark
	if s.w > s.zone {
		out = append(out, drawing.Line(drawing.TemplateCut, 0, drawing.Pt(s.zone, 0), drawing.Pt(s.zone, s.h)))
	}
	for _, n := range g.nails {
		at := drawing.Pt(f.along.Of(um(n.along)), s.h-f.across.Of(um(n.across)))
		out = append(out, drawing.Disc(drawing.Register, 0, drawing.NoFill, at, nailRing))
		out = append(out, drawing.Cross(drawing.Register, 0, at, min(3*nailRing, s.zone/4, s.h/4))...)
	}
	return out
}
