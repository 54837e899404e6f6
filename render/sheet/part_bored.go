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

// The back upper apron is made as the others are and then bored for the screws
// into the blocks under the top: its outer face is drawn by itself.

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

// boredFirst returns blocks with the bored apron's, which is low, before those of
// the others, so that it can share the leg's sheet.
func boredFirst(blocks []partBlock) []partBlock {
	out := slices.Clone(blocks)
	from := slices.IndexFunc(out, func(b partBlock) bool { return b.name == "apron" })
	if at := slices.IndexFunc(out, partBlock.bored); at > from {
		b := out[at]
		out = slices.Insert(slices.Delete(out, at, at+1), from, b)
	}
	return out
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

// underEdge gives the way from the apron's top edge to the holes.
func (b partBlock) underEdge(p *page, v picture, out drawing.Rect) {
	if !b.bored() {
		return
	}
	board := dim.New(p.sheet, p.in.Rack.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})
	board.Chain(dim.LeftOf, b.acrossTo(v, out, b.piece.Box.Max, b.holes(p.in.Rack)), dim.Options{})
	board.Draw(out)
}

// holesAlong are the places of the holes from the apron's left end; none where
// they are too many to go under the view.
func (b partBlock) holesAlong(r *rack.Rack, v picture, out drawing.Rect) (origin string, stops []dim.Stop) {
	holes := b.holes(r)
	if !b.gap.none() || dim.RunningRow*drawing.Um(len(holes)+1) > out.W() {
		return "", nil
	}
	left := b.piece.Box.Min
	stops = []dim.Stop{{At: v.point(left).X, From: out.Max.Y}}
	for _, q := range holes {
		stops = append(stops, dim.Stop{At: v.point(q).X, Value: q.X - left.X, From: out.Max.Y})
	}
	return "LEFT", inOrderOf(stops, func(s dim.Stop) length { return s.Value })
}

// boredNote says what the holes are.
func (b partBlock) boredNote(in Input, figures bool) string {
	r, f := in.Rack, in.Rack.Format
	bits := fixing.BitsOf(r)
	text := fmt.Sprintf("As the others, and bored. Outer face, seen from behind. Circles: %d holes %s, countersunk", len(b.holes(r)), f.Unit(bits.Clear))
	if !figures {
		text += ", " + fmt.Sprintf("%s to either side of the blocks' middles", f.Unit(b.hold.Block.X/4))
	}
	return text + ": " + sheetRef("top") + "."
}
