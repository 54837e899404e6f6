package sheet

import "slatwright/geometry/finish"

// topPanel returns how the cutting plan makes up the rack's top.
func topPanel(in Input) finish.Panel {
	if !in.Rack.HasTop() {
		return finish.Panel{}
	}
	return in.Cutting.Panel()
}
