package sheet

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// A part that is nailed is drawn twice: at the face against the legs, and under
// it at the outer face, where its nails go in.

// partSecond is the clear between the two views.
const partSecond = 7 * drawing.MM

// nailed reports whether the part has a view of its outer face.
func (b partBlock) nailed() bool { return (b.name == "slat" || b.name == "apron") && !b.bored() }

// newPartBlocks returns the drawings of a part: one, or of aprons one for the
// front and one for the back ones where the legs stand otherwise from the left
// than from the right; and one more of the back upper apron's outer face, where it
// alone is bored.
func newPartBlocks(in Input, part int) []partBlock {
	r := in.Rack
	pieces := func(back bool) int {
		return slices.IndexFunc(r.Pieces, func(p rack.Piece) bool {
			return p.Part == part && (!back || p.Box.Min.Y > 0)
		})
	}
	if r.Parts[part].Name != "apron" {
		return []partBlock{newPartBlock(in, pieces(false))}
	}
	back := newPartBlock(in, pieces(true))
	all := []partBlock{back}
	if !legsAlike(r) {
		front := newPartBlock(in, pieces(false))
		front.pair, back.pair = "front pair", "back pair"
		front.off, back.off = front.off/2, back.off/2
		all = []partBlock{front, back}
	}
	bored, ok := newBoredBlock(in, part)
	if !ok {
		return all
	}
	last := &all[len(all)-1]
	if last.off--; last.pair != "" {
		last.pair = "back lower"
	} else {
		last.pair = "all but the back upper"
	}
	return append(all, bored)
}

// legsAlike reports whether the ladders stand the same from either end.
func legsAlike(r *rack.Rack) bool {
	n := len(r.Ladders)
	for i, l := range r.Ladders {
		if l.X != r.Len("carcase.width")-r.Len("leg.thickness")-r.Ladders[n-1-i].X {
			return false
		}
	}
	return true
}

// outside returns the view of the outer face, its left top corner at a place.
func (b partBlock) outside(v picture, at drawing.Point) picture {
	d := v.proj.Direction
	v.proj.Direction = view.Direction{X: -d.X, Y: -d.Y, Z: -d.Z}
	v.at = drawing.Point{}
	v.at = at.Sub(v.extent(b.scene).Min)
	return v
}

// drawOutside draws the outer face below a height, and its nails.
func (b partBlock) drawOutside(p *page, v picture, at drawing.Point) {
	v = b.outside(v, at)
	v.draw(p.sheet, view.Visible(view.Lines(b.scene, v.proj.Direction)), func(l view.Line) (drawing.Class, bool) {
		return drawing.Visible, !b.atBreak(l)
	})
	out := v.extent(b.scene)
	b.breaks(p.sheet, v, out)
	b.drawNails(p, v)
	b.endWord(p, v, out)
	b.nailBoard(p, v).Draw(out)
}

// drawNails marks the nails through the outer face.
func (b partBlock) drawNails(p *page, v picture) {
	for _, c := range b.piece.Fixed {
		if patch, ok := b.shifted(c); ok && b.against(c) {
			e := v.around(patch)
			for _, n := range p.in.Rack.NailPlaces(patch, c.Axis, b.other) {
				p.sheet.Add(drawing.Cross(drawing.Thin, 0, v.point(n), max(min(2*nailCross, min(e.W(), e.H())/3), drawing.MM/2))...)
			}
		}
	}
}

// against reports whether a contact is one of the face that sits on others: of the
// face drawn, but of the bored apron's, which is drawn from outside.
func (b partBlock) against(c rack.Contact) bool {
	return c.Axis == b.thick && c.Far == (b.face.On(b.thick) > 0 != b.bored())
}

// endWord letters which end of an apron or a leg lies to the right.
func (b partBlock) endWord(p *page, v picture, out drawing.Rect) {
	words := map[string][2]string{"apron": {"LEFT", "RIGHT"}, "leg": {"FOOT", "TOP"}}[b.name]
	if words[0] == "" {
		return
	}
	word := words[1]
	if b.startsRight(v) {
		word = words[0]
	}
	note(p, word, drawing.Pt(out.Max.X+3*drawing.MM, out.Centre().Y+drawing.FigureHeight/2))
}

// startsRight reports whether the part's start, its left end or its foot, lies to
// the right in a view.
func (b partBlock) startsRight(v picture) bool {
	end := b.piece.Box.Min
	end = end.With(b.piece.Grain, b.piece.Box.Max.On(b.piece.Grain))
	return v.point(end).X < v.point(b.piece.Box.Min).X
}

// stops are the places of the legs on an apron, of the slats on a leg, of the
// screws into a top, from the named end; none where they are too many to go beside the view.
func (b partBlock) stops(p *page, v picture, out drawing.Rect) (origin string, stops []dim.Stop) {
	r := p.in.Rack
	list := []coord{{}}
	switch b.name {
	case "apron":
		if b.bored() {
			return b.holesAlong(r, v, out)
		}
		origin, list = "LEFT", ladderFaces(r)
	case "leg":
		origin = "FOOT"
		list = append(list, undersides(r, r.Columns[b.column(r)].Kind)...)
	case "top":
		return b.fromLeft(v, out)
	default:
		return "", nil
	}
	if !b.gap.none() || dim.RunningRow*drawing.Um(len(list)+1) > out.W() {
		return "", nil
	}
	for _, c := range list {
		q := b.piece.Box.Min
		q = q.With(b.piece.Grain, q.On(b.piece.Grain)+c.l)
		stops = append(stops, c.stop(v.point(q).X, out.Max.Y))
	}
	return origin, stops
}

// column is the column that the drawn face of a leg looks to.
func (b partBlock) column(r *rack.Rack) int {
	if b.face == view.Right {
		return b.piece.Ladder
	}
	return b.piece.Ladder - 1
}
