package sheet

import (
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// sideView is the elevation from the right: depth and heights, with the end
// ladder's slats hidden behind its legs dashed, and the necks of the right end
// column's bottles standing out at the front; those of others would only blur them.
func sideView(in Input) *page {
	r := in.Rack
	return elevated(in, "side", "Side elevation", withBottles(r, inLastColumn(r)), view.Right, "Seen from the right", len(r.Pieces), func(e *elevation) {
		y := func(c coord) drawing.Um { return e.v.point(space.Point{Y: c.l}).X }
		stops := e.depths(func(c coord) dim.Stop { return c.stop(y(c), e.v.point(space.Point{}).Y) })
		e.dim.Chain(dim.Below, stops, dim.Options{})
		e.dim.Overall(dim.Below, stops[0], stops[len(stops)-1], dim.Options{})
		e.heights(dim.RightOf)
		left := e.out.Min.X
		if out := necks(in); out > 0 {
			e.longest(out, y)
			left = min(left, y(coord{l: -out}))
		}
		beside(e.p, "FRONT", drawing.Pt(left, e.out.Centre().Y))
	})
}

// longest says over a side view how far the longest bottles stand out beyond the
// front aprons, and how deep the rack is with them.
func (e *elevation) longest(out length, y func(coord) drawing.Um) {
	r := e.p.in.Rack
	tip, front, back := coord{l: -out}, coord{}, coordOf(r, "carcase.depth")
	if r.HasTop() {
		back = back.plus(r, "overhang.back")
	}
	neck := e.out.Min.Y
	for _, b := range r.Bottles {
		if !inLastColumn(r)(b) {
			continue
		}
		if at := e.v.point(space.Point{Z: b.Neck.Z}).Y; neck == e.out.Min.Y || at < neck {
			neck = at // the highest one's
		}
	}
	stops := []dim.Stop{tip.stop(y(tip), neck), front.stop(y(front), e.out.Min.Y), back.stop(y(back), e.out.Min.Y)}
	e.dim.Chain(dim.Above, stops, dim.Options{})
	e.dim.Overall(dim.Above, stops[0], stops[2], dim.Options{})
	e.notes = append(e.notes, "above: with the longest bottles that fit, bases flush behind; drawn: usual ones of the right end column")
}

// inLastColumn returns whether a bottle lies in the right end column.
func inLastColumn(r *rack.Rack) func(rack.Bottle) bool {
	return func(b rack.Bottle) bool { return b.Column == len(r.Columns)-1 }
}

// beside letters a word to the left of a place.
func beside(p *page, text string, at drawing.Point) {
	l := drawing.Label(drawing.NoteText, p.sheet.Group(), drawing.Point{}, drawing.FigureHeight, drawing.Middle, drawing.Plain(text))
	l = l.CentredOn(drawing.Pt(at.X-3*drawing.MM-l.Width()/2, at.Y))
	p.sheet.Add(l)
}

// depths are the stops of the depth chain, from the front: top, apron, slats,
// apron, top.
func (e *elevation) depths(y func(coord) dim.Stop) []dim.Stop {
	r := e.p.in.Rack
	at := func(names ...string) dim.Stop { return y(coordOf(r, names...)) }
	stops := []dim.Stop{at(), at("apron.thickness"), at("carcase.depth", "-apron.thickness"), at("carcase.depth")}
	if r.HasTop() {
		stops = append([]dim.Stop{at("-overhang.front")}, append(stops, at("carcase.depth", "overhang.back"))...)
	}
	return ascending(stops...)
}

// note letters a word with its left end at a place.
func note(p *page, text string, at drawing.Point) {
	p.sheet.Add(drawing.Label(drawing.NoteText, p.sheet.Group(), at, drawing.FigureHeight, drawing.Left, drawing.Plain(text)))
}
