package sheet

import (
	"fmt"
	"slices"
	"strings"

	"slatwright/geometry/assembly"
	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/drawing"
	"slatwright/specs/word"
)

// ladderNotes are the words under the faces of a ladder, on its sheet k of n,
// counted from 0. The title is what the sheet adds to the ladder's: a face.
func ladderNotes(in Input, shape, k, n int, title string) []string {
	r := in.Rack
	diagonal := assembly.Diagonals(r)[0].Text(r.Format.System)
	notes := []string{
		whichLadders(r, shape, k, n, title),
		"Figures along the legs: from the foot to each slat's lower edge.",
		fmt.Sprintf("Square when both diagonals over the legs, from foot to top, are %s %s.", diagonal, r.Format.System),
		crossesNote(r, shape),
	}
	if c := clashesOf(r, shape); len(c.pairs) > 0 {
		notes = append(notes, c.note(r))
	}
	if r.Design.Joint.Glue {
		notes = append(notes, "Keep bare of finish for glue: where slats cross legs, and the outer edges of the legs where aprons sit.")
	}
	return notes
}

// whichLadders says which ladders of the row a sheet is for, how many to make in
// all, and of what. Only the first of several sheets says to make them.
func whichLadders(r *rack.Rack, shape, k, n int, title string) string {
	s := r.Shapes[shape]
	slat, _ := r.PartNamed("slat")
	leg, _ := r.PartNamed("leg")
	what := fmt.Sprintf("%s of %d from the left", rack.Places("ladder", r.LaddersOf(shape)), len(r.Ladders))
	text := fmt.Sprintf("Make %d: %s", s.Count, what)
	if k > 0 {
		same := "ladder"
		if s.Count > 1 {
			same = fmt.Sprintf("%d ladders", s.Count)
		}
		text = fmt.Sprintf("The same %s once more, no more to make: %s", same, what)
	}
	if rest, ok := strings.CutPrefix(s.Name, s.Role.String()+" "); ok {
		text += fmt.Sprintf(" (%s: number %s of the kinds of %s ladder)", s.Name, rest, s.Role)
	}
	if n > 1 {
		text += fmt.Sprintf("; sheet %d of %d%s", k+1, n, title)
	}
	return fmt.Sprintf("%s. Each: 2 legs %s, %s; %s %s, %s.", text, leg.Mark, sizeText(r.Format, leg),
		word.Count(len(s.Left)+len(s.Right), "slat"), slat.Mark, sizeText(r.Format, slat))
}

// crossesNote says where the nails of a crossing stand.
func crossesNote(r *rack.Rack, shape int) string {
	text := fmt.Sprintf("Crosses: two nails to a crossing, %s from the slat's edge and %s from the leg's (a quarter of the crossing's height and width). Bore first.",
		r.Format.Unit(r.Len("slat.height")/4), r.Format.Unit(r.Len("leg.width")/4))
	if s := r.Shapes[shape]; len(s.Left) > 0 && len(s.Right) > 0 {
		text += " On the other face they stand on the other diagonal."
	}
	return text
}

// clashes are the crossings of a ladder whose nails would meet others in the leg.
type clashes struct {
	pairs []check.Meet
	aside length // how far those of the right face go towards the leg's middle
}

// clashesOf returns the clashes in the first ladder of a shape.
func clashesOf(r *rack.Rack, shape int) clashes {
	first := r.LaddersOf(shape)[0] - 1
	c := clashes{pairs: check.Meets(r), aside: check.NailAside(r)}
	c.pairs = slices.DeleteFunc(c.pairs, func(m check.Meet) bool { return r.Pieces[m.Leg].Ladder != first })
	return c
}

// of reports whether the nails of a slat in a leg meet others, and whether those
// are a slat's.
func (c clashes) of(r *rack.Rack, slat, leg int) (meets, slats bool) {
	for _, m := range c.pairs {
		if m.Leg == leg && (m.A == slat || m.B == slat) {
			meets, slats = true, slats || c.slats(r, m)
		}
	}
	return meets, slats
}

// slats reports whether both pieces of a pair are slats.
func (c clashes) slats(r *rack.Rack, m check.Meet) bool {
	return r.Pieces[m.A].Ladder >= 0 && r.Pieces[m.B].Ladder >= 0
}

// note says where the nails of the ringed crossings go.
func (c clashes) note(r *rack.Rack) string {
	slats, aprons := false, false
	for _, m := range c.pairs {
		both := c.slats(r, m)
		slats, aprons = slats || both, aprons || !both
	}
	text := "Ringed: here nails would meet in the leg."
	switch {
	case slats && c.aside > 0:
		text += fmt.Sprintf(" Of two slats: set those of the right face %s nearer to the middle of the leg's width than elsewhere, as drawn here (a template has them not shifted).", r.Format.Unit(c.aside))
	case slats:
		text += " Of two slats: the leg is too narrow to set them aside; take shorter ones (joint.slat_nail)."
	}
	if aprons {
		text += " Of a slat and an apron: set the apron's aside, up or down, clear of the slat's."
	}
	return text
}

// shifted moves the two nails of a crossing towards each other along y.
func shifted(nails []space.Point, aside length) []space.Point {
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

// ringed draws a ring round a crossing.
func ringed(s *drawing.Sheet, v picture, patch space.Box) {
	e := v.around(patch)
	s.Add(drawing.Disc(drawing.Thin, 0, drawing.NoFill, e.Centre(), max(e.W(), e.H())/2+drawing.MM/2))
}
