package sheet

import (
	"fmt"
	"slices"

	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// The back upper apron is made as the lower one is and then bored for the screws
// into the blocks under the top: its outer face is drawn by itself, with these
// holes and the nails.

// holeFigure is what the figure from the apron's top edge to its holes takes over
// the view, where it stands outside its arrowheads.
const holeFigure = 16 * drawing.MM

// newBoredBlock draws the outer face of the back upper apron; ok is false where
// no block is screwed to it.
func newBoredBlock(in Input, part int) (b partBlock, ok bool) {
	r := in.Rack
	hold, _ := fixing.Of(r)
	if len(hold.Middles) == 0 {
		return b, false
	}
	upper := slices.IndexFunc(r.Pieces, func(p rack.Piece) bool {
		return p.Part == part && p.Box.Min.Y > 0 && p.Box.Max.Z == r.Len("leg.length")
	})
	b = newPartBlock(in, upper)
	b.face, b.hold, b.pair, b.off = view.Back, hold, "back upper", 1
	return b, true
}

// bored reports whether the block is that of the apron bored for the blocks.
func (b partBlock) bored() bool { return b.name == "apron" && len(b.hold.Middles) > 0 }

// holes are the places of the screws through the apron, from the left.
func (b partBlock) holes(r *rack.Rack) (out []space.Point) {
	for _, x := range b.hold.Middles {
		at := b.hold.HolesAt(r, x)
		out = append(out, at[:]...)
	}
	return out
}

// drawHoles draws the holes, in the parts of the apron that are shown.
func (b partBlock) drawHoles(p *page, v picture) {
	if !b.bored() {
		return
	}
	wide := onPaper(fixing.BitsOf(p.in.Rack).Clear, b.scale)
	for _, q := range b.holes(p.in.Rack) {
		x, shown := b.gap.shift(q.X)
		q.X = x
		if !shown {
			continue
		}
		p.sheet.Add(drawing.Disc(drawing.Thin, 0, drawing.White, v.point(q), max(wide/2, drawing.MM/2)))
	}
}

// holesAlong are the places of the holes from the apron's left end, of each block's
// two the nearer one's alone; none where they are too many to go under the view.
func (b partBlock) holesAlong(r *rack.Rack, v picture, out drawing.Rect) (origin string, stops []dim.Stop) {
	blocks := b.hold.Middles
	if !b.gap.none() || dim.RunningRow*drawing.Um(len(blocks)+2) > out.W() {
		return "", nil
	}
	left := b.piece.Box.Min
	stops = []dim.Stop{{At: v.point(left).X, From: out.Max.Y}}
	for _, x := range blocks {
		q := b.hold.HolesAt(r, x)[0]
		stops = append(stops, dim.Stop{At: v.point(q).X, Value: q.X - left.X, From: out.Max.Y})
	}
	return "LEFT", inOrderOf(stops, func(s dim.Stop) length { return s.Value })
}

// boredNote says what the holes are.
func (b partBlock) boredNote(in Input, figures bool) string {
	r, f := in.Rack, in.Rack.Format
	bits := fixing.BitsOf(r)
	alike := "the back lower one"
	if legsAlike(r) {
		alike = "the others"
	}
	pair := b.hold.HolesAt(r, b.hold.Middles[0])
	text := fmt.Sprintf("Outer face, seen from behind, top edge up; made as %s, then bored. Circles: %d holes %s, countersunk, in pairs %s apart",
		alike, len(b.holes(r)), f.Unit(bits.Clear), f.Unit(pair[1].X-pair[0].X))
	if figures {
		text += ", figures to the one nearer LEFT"
	} else {
		text += " about the blocks' middles"
	}
	return text + ": " + sheetRef("top") + ". Crosses: nails."
}
