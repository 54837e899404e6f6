package sheet

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/view"
	"slatwright/render/dim"
	"slatwright/render/drawing"
)

// plan is the view from above: the top's outline with the ladders and aprons
// under it dashed.
func plan(in Input) *page {
	p := in.newPage("plan", "Plan")
	r := in.Rack
	s := sceneOf(r, func(rack.Piece) bool { return true })
	e := p.elevate(s, view.Top, margins{46 * drawing.MM, 20 * drawing.MM, 36 * drawing.MM, 38 * drawing.MM}, "Seen from above", len(r.Pieces))
	depths := e.depths(func(c coord) dim.Stop {
		return c.stop(e.v.point(space.Point{Y: c.l}).Y, e.out.Min.X)
	})
	slices.Reverse(depths)
	e.dim.Chain(dim.LeftOf, depths, dim.Options{})
	e.dim.Overall(dim.LeftOf, depths[0], depths[len(depths)-1], dim.Options{})
	e.ladders()
	e.widths()
	note(p, "FRONT", drawing.Pt(e.out.Max.X+3*drawing.MM, e.out.Max.Y))
	e.finish()
	return p
}
