package sheet

import (
	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// plan is the view from above: the top's outline with the ladders and aprons
// under it dashed.
func plan(in Input) *page {
	p := in.newPage("plan", "Plan")
	r := in.Rack
	s := sceneOf(r, func(rack.Piece) bool { return true })
	e := p.elevate(s, view.Top, margins{46 * drawing.MM, 20 * drawing.MM, 36 * drawing.MM, 38 * drawing.MM}, "Seen from above", len(r.Pieces))
	y := func(l unit.Length) dim.Stop {
		return dim.Stop{At: e.v.point(space.Point{Y: l}).Y, Value: -l, From: e.out.Min.X}
	}
	var depths []dim.Stop
	for _, s := range e.depths(y) {
		depths = append([]dim.Stop{s}, depths...)
	}
	e.dim.Chain(dim.LeftOf, ascending(depths...), dim.Options{})
	lo, hi := e.depthEnds()
	e.dim.Overall(dim.LeftOf, y(hi), y(lo), dim.Options{Names: []string{"rack.depth"}})

	var faces []dim.Stop
	for _, l := range r.Ladders {
		faces = append(faces, e.x(l.X, dim.Above))
	}
	e.dim.Running(dim.Above, "LEFT", e.thinned(faces, e.out.W()), dim.Options{})
	e.widths()
	e.finish()
	note(p, "FRONT", drawing.Pt(e.out.Max.X+3*drawing.MM, e.out.Max.Y))
	return p
}
