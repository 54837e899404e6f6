package sheet

import (
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// sideView is the elevation from the right: depth and heights, with the end
// ladder's slats hidden behind its legs dashed, and the bottles' necks standing
// out at the front.
func sideView(in Input) *page {
	p := in.newPage("side", "Side elevation")
	e := p.elevate(withBottles(in.Rack), view.Right, margins{46 * drawing.MM, 20 * drawing.MM, 12 * drawing.MM, 38 * drawing.MM}, "Seen from the right", len(in.Rack.Pieces))
	stops := e.depths(func(c coord) dim.Stop {
		return c.stop(e.v.point(space.Point{Y: c.l}).X, e.v.point(space.Point{}).Y)
	})
	e.dim.Chain(dim.Below, stops, dim.Options{})
	e.dim.Overall(dim.Below, stops[0], stops[len(stops)-1], dim.Options{})
	e.heights()
	note(p, "FRONT", drawing.Pt(e.v.point(space.Point{}).X, e.out.Min.Y-4*drawing.MM))
	e.finish()
	return p
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
