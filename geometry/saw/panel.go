package saw

import "slatwright/geometry/finish"

// Panel is how the plan makes up the top from staves; the zero Panel where it
// comes from one board, or where there is no plan.
func (p *Plan) Panel() finish.Panel {
	if p == nil {
		return finish.Panel{}
	}
	for _, g := range p.GlueUps {
		if g.Name == "top" {
			return finish.Panel{Tops: g.Count, Staves: g.Staves, StaveWidth: g.StaveWidth, Length: g.StaveLength}
		}
	}
	return finish.Panel{}
}
