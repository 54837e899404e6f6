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
	r := in.Rack
	s := sceneOf(r, func(rack.Piece) bool { return true })
	return elevated(in, "plan", "Plan", s, view.Top, "Seen from above", len(r.Pieces), func(e *elevation) {
		depths := e.depths(func(c coord) dim.Stop {
			return c.stop(e.v.point(space.Point{Y: c.l}).Y, e.out.Min.X)
		})
		slices.Reverse(depths)
		e.dim.Chain(dim.LeftOf, depths, dim.Options{})
		e.dim.Overall(dim.LeftOf, depths[0], depths[len(depths)-1], dim.Options{})
		e.ladders()
		e.widths()
		e.front()
	})
}

// front names the lower edge of a plan, beside it: over and under it stand figures.
func (e *elevation) front() {
	note(e.p, "FRONT", drawing.Pt(e.out.Max.X+3*drawing.MM, e.out.Max.Y-drawing.MM))
}
