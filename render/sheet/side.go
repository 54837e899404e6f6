package sheet

import (
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// sideView is the elevation from the right: depth and heights, with the end
// ladder's slats hidden behind its legs dashed, and the bottles' necks standing
// out at the front.
func sideView(in Input) *page {
	p := in.newPage("side", "Side elevation")
	r := in.Rack
	e := p.elevate(withBottles(r), view.Right, margins{46 * drawing.MM, 20 * drawing.MM, 12 * drawing.MM, 38 * drawing.MM}, "Seen from the right", len(r.Pieces))
	y := func(l unit.Length) dim.Stop {
		return dim.Stop{At: e.v.point(space.Point{Y: l}).X, Value: l, From: e.v.point(space.Point{}).Y}
	}
	e.dim.Chain(dim.Below, ascending(e.depths(y)...), dim.Options{})
	lo, hi := e.depthEnds()
	e.dim.Overall(dim.Below, y(lo), y(hi), dim.Options{Names: []string{"rack.depth"}})
	e.heights()
	e.finish()
	note(p, "FRONT", drawing.Pt(e.v.point(space.Point{}).X, e.out.Min.Y-4*drawing.MM))
	return p
}

// depthEnds are the front and the back of the rack, its top included.
func (e *elevation) depthEnds() (front, back unit.Length) {
	r := e.p.in.Rack
	if r.HasTop() {
		return -r.Len("overhang.front"), r.Len("carcase.depth") + r.Len("overhang.back")
	}
	return 0, r.Len("carcase.depth")
}

// depths are the stops of the depth chain: top, apron, slats, apron, top.
func (e *elevation) depths(y func(unit.Length) dim.Stop) []dim.Stop {
	r := e.p.in.Rack
	lo, hi := e.depthEnds()
	apron, deep := r.Len("apron.thickness"), r.Len("carcase.depth")
	return []dim.Stop{y(lo), y(0), y(apron), y(deep - apron), y(deep), y(hi)}
}

// note letters a word with its left end at a place.
func note(p *page, text string, at drawing.Point) {
	p.sheet.Add(drawing.Label(drawing.NoteText, p.sheet.Group(), at, drawing.FigureHeight, drawing.Left, drawing.Plain(text)))
}
