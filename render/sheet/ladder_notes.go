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

// ladderNotes are the words of a ladder's sheet k of n, counted from 0.
func ladderNotes(in Input, shape, k, n int) []string {
	r := in.Rack
	diagonal := assembly.Diagonals(r)[0].Text(r.Format.System)
	notes := []string{
		whichLadders(r, shape, k, n),
		fmt.Sprintf("Figures along the legs: from the foot to each slat's lower edge. Square when both diagonals are %s %s.", diagonal, r.Format.System),
		flushNote(r, shape),
		nailsNote(r, shape),
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
func whichLadders(r *rack.Rack, shape, k, n int) string {
	s := r.Shapes[shape]
	slat, _ := r.PartNamed("slat")
	leg, _ := r.PartNamed("leg")
	what := fmt.Sprintf("%s of %d from the left", rack.Places("ladder", r.LaddersOf(shape)), len(r.Ladders))
	text := fmt.Sprintf("Make %d: %s", s.Count, what)
	if k > 0 {
		text = "The other face of " + what + "; no more to make"
	}
	if n > 1 {
		text += fmt.Sprintf("; sheet %d of %d", k+1, n)
	}
	if k > 0 {
		return text + "."
	}
	return fmt.Sprintf("%s. Each: 2 legs %s, %s; %s %s, %s.", text, leg.Mark, sizeText(r.Format, leg),
		word.Count(len(s.Left)+len(s.Right), "slat"), slat.Mark, sizeText(r.Format, slat))
}

// flushNote says how far slats reach: their ends lie in the plane on which the
// aprons sit, and those that aprons cover must not keep them off the legs.
func flushNote(r *rack.Rack, shape int) string {
	s := r.Shapes[shape]
	low, high := r.Len("apron.lift"), r.Len("leg.length")-r.Len("apron.height")
	var behind []string
	for _, a := range []struct {
		from length
		name string
	}{{low, "lower"}, {high, "upper"}} {
		var rows []int
		for _, under := range [][]length{s.Left, s.Right} {
			for i, z := range under {
				if z < a.from+r.Len("apron.height") && z+r.Len("slat.height") > a.from {
					rows = append(rows, i+1)
				}
			}
		}
		slices.Sort(rows)
		if rows = slices.Compact(rows); len(rows) > 0 {
			behind = append(behind, passing(rack.Places("row", rows), len(rows))+" behind the "+a.name+" aprons")
		}
	}
	text := "Slats flush with the legs' outer edges, never proud"
	if len(behind) == 0 {
		return text + "."
	}
	return text + ": " + strings.Join(behind, ", ") + "."
}

// passing puts a verb to rows.
func passing(what string, n int) string {
	if n == 1 {
		return what + " passes"
	}
	return what + " pass"
}

// nailsNote says from where nails go in, and which diagonal they stand on.
func nailsNote(r *rack.Rack, shape int) string {
	text := fmt.Sprintf("Crosses: two nails, %s, as in the detail; bore and nail from the slat's outer face", r.Design.Joint.SlatNail.Text)
	if s := r.Shapes[shape]; len(s.Left) > 0 && len(s.Right) > 0 {
		return text + ", each face as its own picture shows. Seen through the leg, the other face's nails stand on the other diagonal and pass."
	}
	text += "."
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
		text += fmt.Sprintf(" Of two slats: set those of the right face %s nearer to the middle of the leg's width than elsewhere, as drawn here.", r.Format.Unit(c.aside))
	case slats:
		text += " Of two slats: the leg is too narrow to set them aside; take shorter ones (joint.slat_nail)."
	}
	if aprons {
		text += " Of a slat and an apron: set the apron's aside, up or down, clear of the slat's."
	}
	return text
}

// ringed draws a ring round a crossing.
func ringed(s *drawing.Sheet, v picture, patch space.Box) {
	e := v.around(patch)
	s.Add(drawing.Disc(drawing.Thin, 0, drawing.NoFill, e.Centre(), max(e.W(), e.H())/2+drawing.MM/2))
}
