package sheet

import (
	"fmt"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/view"
	"slatwright/render/drawing"
)

// below returns how much room the notes under the view take.
func (b partBlock) below(p *page) drawing.Um {
	return needed(b.notes(p), p.area.W(), 0)
}

// note says what the marks on a part's faces mean, and where nails stand.
func (b partBlock) note(p *page, figures bool) string {
	r := p.in.Rack
	in := func(of string) string { return r.Format.Unit(r.NailIn(r.Len(of))) }
	hatched := "where it sits"
	if r.Design.Joint.Glue {
		hatched = "bare for glue"
	}
	switch b.name {
	case "slat":
		places := "figures from an end"
		if !b.nailFigures(p) {
			leg := r.Len("leg.width")
			places = fmt.Sprintf("the outer %s, the inner %s from the end", in("leg.width"), r.Format.Unit(leg-r.NailIn(leg)))
		}
		return fmt.Sprintf("Never over length, at most %s under. Above: face against the legs. Hatched: %s. Below: outer face. Crosses: nails, %s from the edge, %s. Alike turned end for end. Arrow: grain.",
			r.Format.Unit(shortSlat(r)), hatched, in("slat.height"), places)
	case "leg":
		hatched = "where slats sit"
		if r.Design.Joint.Glue {
			hatched = "bare for glue, as is the outer edge under aprons"
		}
		text := fmt.Sprintf("Drawn: ladder %d, %s face", b.piece.Ladder+1, handed(b.face == view.Right))
		if figures {
			text += ", figures from the foot to slats' lower edges"
		}
		if len(r.Kinds) > 1 || !figures {
			text += "; other heights: " + sheetRef("ladder")
		}
		text += ". " + b.otherHand()
		return text + " Hatched: " + hatched + ". Crosses: where the slats' nails come in. Arrow: grain."
	case "apron":
		if b.bored() {
			return b.boredNote(p.in, figures)
		}
		return b.apronNote(p, hatched, figures)
	}
	if b.slotted() {
		return b.slotNote(r, figures)
	}
	text := fmt.Sprintf("Underside. Outlined: where it sits, %s from the front edge, %s from either end. Hatched: glued. Arrow: grain.",
		r.Format.Unit(r.Len("overhang.front")), r.Format.Unit(r.Len("overhang.side")))
	if !r.Design.Joint.TopGlued {
		text += " Fix it so that it can swell and shrink."
	}
	return text
}

// apronNote says from where an apron is seen and what its figures are.
func (b partBlock) apronNote(p *page, hatched string, figures bool) string {
	r := p.in.Rack
	inside, outside := "the front", "behind"
	if b.face == view.Back {
		inside, outside = outside, inside
	}
	text := fmt.Sprintf("Above: face against the legs, seen from %s, top edge up", inside)
	if figures {
		text += "; figures to each leg's left face"
	} else {
		text += "; places of the legs: " + sheetRef("carcase")
	}
	text += fmt.Sprintf(". Hatched: %s. Below: outer face, seen from %s. Crosses: nails, on the legs' middle, as far from either edge. Arrow: grain.", hatched, outside)
	switch {
	case b.pair == "":
		text += " Drawn: a back one. The legs stand alike from either end, so all four are alike."
	case legsAlike(r):
		text += " Drawn: the back lower one. The legs stand alike from either end, so the front ones are as this."
	}
	return text
}

// panelNote says how the plan makes up a top in width, "" where it does not.
func (b partBlock) panelNote(in Input) string {
	panel := in.Cutting.Panel()
	if b.name != "top" || panel.Staves == 0 {
		return ""
	}
	stave := in.Rack.Parts[b.part]
	stave.Width, stave.Length = panel.StaveWidth, panel.Length
	return fmt.Sprintf("Glued up of %d staves %s, then cut to size: see %s.", panel.Staves, sizeText(in.Rack.Format, stave), sheetRef("cutting"))
}

// notes are the lines under a part's views.
func (b partBlock) notes(p *page) []string {
	v := b.picture(p)
	_, figures := b.stops(p, v, v.extent(b.scene))
	out := []string{b.note(p, len(figures) > 0)}
	if text := b.panelNote(p.in); text != "" {
		out = append(out, text)
	}
	if part := p.in.Rack.Parts[b.part]; len(part.After) > 0 && !b.bored() {
		out = append(out, cutAfter(p.in.Rack, part))
	}
	return out
}

// cutAfter says what is measured before a part is cut, and whether it was.
func cutAfter(r *rack.Rack, part rack.Part) string {
	if waits := r.Awaits(part); len(waits) > 0 {
		return "Cut after measuring " + strings.Join(waits, ", ") + ": until then the size drawn here is not the one to cut to."
	}
	return "Follows from what was measured of " + strings.Join(part.After, ", ") + ": cut to this size."
}

// shortSlat is how much shorter than drawn a slat may come off the saw, by what its
// ends fall short: no more than the shop's tolerance. A longer one keeps the aprons
// off the legs.
func shortSlat(r *rack.Rack) length { return r.Design.Shop.Tolerance }
