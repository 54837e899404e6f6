package sheet

import (
	"slatwright/geometry/finish"
)

// topPanel returns how the cutting plan makes up the rack's top; the zero Panel
// where it comes from one board, or where there is no plan.
func topPanel(in Input) finish.Panel {
	if in.Cutting == nil || !in.Rack.HasTop() {
		return finish.Panel{}
	}
	for _, g := range in.Cutting.GlueUps {
		if g.Name == "top" {
			return finish.Panel{Tops: g.Count, Staves: g.Staves, StaveWidth: g.StaveWidth, Length: g.StaveLength}
		}
	}
	return finish.Panel{}
}
