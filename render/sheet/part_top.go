package sheet

import (
	"fmt"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// slotted reports whether the part is a top held behind by screws in slots.
func (b partBlock) slotted() bool { return b.name == "top" && len(b.hold.Middles) > 0 }

// blocks outlines on a top the blocks and their slots, marks where screws go into
// it, and returns the blocks on the sheet.
func (b partBlock) blocks(p *page, v picture) (out []drawing.Rect) {
	if !b.slotted() || !b.gap.none() {
		return nil
	}
	for _, x := range b.hold.Middles {
		slot, screw := b.hold.SlotAt(p.in.Rack, x)
		block := v.around(b.hold.BlockAt(p.in.Rack, x))
		p.sheet.Add(drawing.Rectangle(drawing.Thin, 0, drawing.NoFill, block))
		p.sheet.Add(drawing.Rectangle(drawing.Thin, 0, drawing.NoFill, v.around(slot)))
		p.sheet.Add(drawing.Cross(drawing.Thin, 0, v.point(screw), max(min(nailCross, min(block.W(), block.H())/3), drawing.MM/2))...)
		out = append(out, block)
	}
	return out
}

// fromLeft are the places of the screws into a top from its left end; none where
// they are too many to go under it.
func (b partBlock) fromLeft(v picture, out drawing.Rect) (origin string, stops []dim.Stop) {
	if !b.slotted() || !b.gap.none() || dim.RunningRow*drawing.Um(len(b.hold.Middles)+1) > out.W() {
		return "", nil
	}
	left := b.piece.Box.Min.X
	stops = []dim.Stop{{At: out.Min.X, From: out.Max.Y}}
	for _, x := range b.hold.Middles {
		stops = append(stops, dim.Stop{At: v.point(space.Point{X: x}).X, Value: x - left, From: out.Max.Y})
	}
	return "LEFT", stops
}

// fromFront are the places, from a top's front edge, of the seat of the front
// apron, of the screws and of the seat of the back apron.
func (b partBlock) fromFront(r *rack.Rack, v picture, out drawing.Rect) []dim.Stop {
	if !b.slotted() || !b.gap.none() {
		return nil
	}
	front := b.piece.Box.Min
	stop := func(c coord, y length) dim.Stop {
		return c.stop(v.point(space.Point{X: front.X, Y: y}).Y, out.Min.X)
	}
	edge := coordOf(r, "overhang.front")
	seat := edge.plus(r, "apron.thickness")
	_, screw := b.hold.SlotAt(r, b.hold.Middles[0])
	behind := seat.plus(r, "slat.length")
	return []dim.Stop{
		stop(coord{}, front.Y), stop(edge, 0), stop(seat, seat.l+front.Y),
		stop(coord{l: screw.Y - front.Y}, screw.Y), stop(behind, behind.l+front.Y),
	}
}

// beside returns how far the figures from a top's front edge stand out over and
// under a view that is too low for them.
func (b partBlock) beside(r *rack.Rack, v picture, out drawing.Rect) drawing.Um {
	n := len(b.fromFront(r, v, out))
	if n == 0 {
		return 0
	}
	return max(0, dim.RunningRow*drawing.Um(n)/2+partBelow-out.H()/2)
}

// slotNote says what the marks on the underside of a top are that blocks hold.
func (b partBlock) slotNote(r *rack.Rack, figures bool) string {
	text := fmt.Sprintf("Underside. Outlined: aprons, %s from either end, legs, blocks. Hatched: glued. Arrow: grain. Crosses: screws through the blocks' slots", r.Format.Unit(r.Len("overhang.side")))
	if !figures {
		text += ", in the middle of the blocks"
	}
	bore := fixing.BitsOf(r).Pilot
	return text + fmt.Sprintf("; bore %s wide, %s deep; for wood of %s %%, else %s.",
		r.Format.Unit(bore), r.Format.Unit(b.hold.Up.Into), moistureText(b.hold.Today()), partRef("top", assembly.Places))
}
