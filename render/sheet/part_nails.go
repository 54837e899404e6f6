package sheet

import (
	"cmp"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// nailFigure is how far the figure from an edge to a nail may stand out under a
// view that has none along it.
const nailFigure = 12 * drawing.MM

// nails are the places of all nails through the outer face.
func (b partBlock) nails(r *rack.Rack) (out []space.Point) {
	for _, c := range b.piece.Fixed {
		if b.against(c) {
			out = append(out, r.NailPlaces(c.Patch, c.Axis, b.other)...)
		}
	}
	return out
}

// nailBoard returns the dimensions of the outer face, not yet drawn: along it
// from an end to each nail, and of an apron across it from the edge drawn at the
// top to the nails next to it.
func (b partBlock) nailBoard(p *page, v picture) *dim.Board {
	board := dim.New(p.sheet, p.in.Rack.Format, drawing.Ratio{Num: v.proj.Num, Den: v.proj.Den})
	out := v.extent(b.scene)
	if origin, stops := b.nailsAlong(p.in.Rack, v, out); len(stops) > 0 {
		board.Running(dim.Below, origin, stops, dim.Options{})
	}
	if b.name == "apron" {
		board.Chain(dim.LeftOf, b.nailsAcross(p.in.Rack, v, out), dim.Options{})
	}
	return board
}

// nailsAlong are the places of the nails along the part, of an apron from its
// left end, of a slat from the end drawn at the left, since either will do; none
// where they are too many to go under the view.
func (b partBlock) nailsAlong(r *rack.Rack, v picture, out drawing.Rect) (origin string, stops []dim.Stop) {
	if !b.gap.none() {
		return "", nil
	}
	origin, from := "LEFT", b.piece.Box.Min
	if b.name == "slat" {
		origin = "END"
		if b.startsRight(v) {
			from = b.piece.Box.Max
		}
	}
	at := func(q space.Point) dim.Stop {
		along := (q.On(b.piece.Grain) - from.On(b.piece.Grain)).Abs()
		return dim.Stop{At: v.point(q).X, Value: along, From: out.Max.Y}
	}
	stops = []dim.Stop{at(from)}
	for _, n := range b.nails(r) {
		stops = append(stops, at(n))
	}
	stops = inOrderOf(stops, func(s dim.Stop) length { return s.Value })
	if dim.RunningRow*drawing.Um(len(stops)) > out.W() {
		return "", nil
	}
	return origin, stops
}

// nailsAcross are the places of an apron's edge that is drawn at the top and of
// the nails next to it.
func (b partBlock) nailsAcross(r *rack.Rack, v picture, out drawing.Rect) []dim.Stop {
	edge := b.piece.Box.Max
	if v.point(b.piece.Box.Min).Y < v.point(edge).Y {
		edge = b.piece.Box.Min
	}
	return b.acrossTo(v, out, edge, b.nails(r))
}

// acrossTo are the places of an edge and of the nearest of some places to it.
func (b partBlock) acrossTo(v picture, out drawing.Rect, edge space.Point, places []space.Point) []dim.Stop {
	var stops []dim.Stop
	for _, q := range append(places, edge) {
		stops = append(stops, dim.Stop{At: v.point(q).Y, Value: (q.On(b.width) - edge.On(b.width)).Abs(), From: out.Min.X})
	}
	return inOrderOf(stops, func(s dim.Stop) length { return s.Value })[:2]
}

// inOrderOf sorts stops by a length and leaves out those that are alike in it.
func inOrderOf(stops []dim.Stop, of func(dim.Stop) length) []dim.Stop {
	slices.SortFunc(stops, func(x, y dim.Stop) int { return cmp.Compare(of(x), of(y)) })
	return slices.CompactFunc(stops, func(x, y dim.Stop) bool { return of(x) == of(y) })
}

// nailFigures reports whether the nails' places along the part stand as figures.
func (b partBlock) nailFigures(p *page) bool {
	v := b.picture(p)
	v = b.outside(v, drawing.Point{})
	_, stops := b.nailsAlong(p.in.Rack, v, v.extent(b.scene))
	return len(stops) > 0
}

// frontEdge is what the word at a leg's upper edge takes, or that at a top's.
const frontEdge = 7 * drawing.MM

// frontWord letters which of a leg's edges lies at the top of its view.
func (b partBlock) frontWord(p *page, v picture, out drawing.Rect) {
	if b.name != "leg" {
		return
	}
	word := "BACK EDGE"
	if b.frontUp(v) {
		word = "FRONT EDGE"
	}
	note(p, word, drawing.Pt(out.Min.X+3*drawing.MM, out.Min.Y-2*drawing.MM)) // clear of a break
}

// frontUp reports whether the edge to the front of the rack lies uppermost.
func (b partBlock) frontUp(v picture) bool {
	back := b.piece.Box.Min
	back.Y = b.piece.Box.Max.Y
	return v.point(b.piece.Box.Min).Y < v.point(back).Y
}

// otherHand says how the faces that are not drawn differ from the one that is:
// turned so that its foot lies to the left, a face to the other side shows its
// front edge at the other edge, and its nails, on the other diagonal, where they
// are drawn.
func (b partBlock) otherHand() string {
	edge := "down"
	if b.face == view.Left {
		edge = "up"
	}
	return "Front and back legs alike; " + handed(b.face != view.Right) + " faces look the same with FRONT " + edge + "."
}
