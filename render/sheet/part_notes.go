package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/render/drawing"
)

// below returns how much room the notes under the view take.
func (b partBlock) below(p *page) drawing.Um {
	part := p.in.Rack.Parts[b.part]
	notes := []string{partNote(p.in.Rack, part.Name)}
	if len(part.After) > 0 {
		notes = append(notes, cutAfter(p.in.Rack, part))
	}
	return needed(notes, p.area.W(), 0)
}

// cutAfter says what is measured before a part is cut, and whether it was.
func cutAfter(r *rack.Rack, part rack.Part) string {
	text := "Cut after measuring " + strings.Join(part.After, ", ")
	if r.Waits(part) {
		return text + ": until then the size drawn here is not the one to cut to."
	}
	return text + ": measured, and the size drawn here follows from it."
}

// partNote says what the marks on a part's face mean, and where nails stand.
func partNote(r *rack.Rack, name string) string {
	quarter := func(of string) string { return r.Format.Unit(r.Len(of) / 4) }
	hatched := "where it sits"
	if r.Design.Joint.Glue {
		hatched = "bare for glue"
	}
	switch name {
	case "slat":
		return fmt.Sprintf("Face against the legs. Hatched: %s. Crosses: nails, from the other face, %s from the edge, the outer %s from the end. Arrow: grain.",
			hatched, quarter("slat.height"), quarter("leg.width"))
	case "leg":
		if r.Design.Joint.Glue {
			hatched += ", as is the outer edge under aprons"
		} else {
			hatched = "where slats sit"
		}
		return "One face; heights of the slats: ladder sheets. Hatched: " + hatched + ". Crosses: nails. Arrow: grain."
	case "apron":
		return fmt.Sprintf("Face against the legs. Hatched: %s. Crosses: nails, from the other face, on the legs' middle, %s from the edge. Arrow: grain.",
			hatched, quarter("apron.height"))
	}
	text := fmt.Sprintf("Underside. Outlined: where it sits, %s from the front edge, %s from either end. Hatched: glued. Arrow: grain.",
		r.Format.Unit(r.Len("overhang.front")), r.Format.Unit(r.Len("overhang.side")))
	if !r.Design.Joint.TopGlued {
		text += " Fix it so that it can swell and shrink."
	}
	return text
}
