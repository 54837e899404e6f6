package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
	"slatwright/geometry/strength"
	"slatwright/specs/table"
)

var racking = Check{
	Code:  "stand.rack",
	Title: "what keeps the rack square sideways",
	Doc: "The crossings of aprons and legs, glued or nailed, keep the legs upright. A push of 10 lbf at the top moves the full rack by no " +
		"more than a hundredth of its height, and it would take three times its weight to fold it.",
	run: lookRacking,
}

// lookRacking takes the rack for legs between stiff rows of aprons. A leg whose
// ends are glued fast gives by bending, h³/12EI for a force; nails let each end
// turn too, h²/2c for a joint of stiffness c. The weight pushes it further over:
// it folds where the stiffness times the height is the weight.
func lookRacking(r *rack.Rack) []Finding {
	full := fullLoad(r)
	_, _, z := full.at()
	push, high := table.Value("tip.push"), r.Len("rack.height").MM()
	glued, nailed := swayStiffness(r, true), swayStiffness(r, false)
	stiff, how := glued, "glued aprons keep it square"
	if !r.Design.Joint.Glue {
		stiff, how = nailed, "nails alone keep it square"
	}
	ratio := func(k float64) float64 { return k * high * high / (full.newton() * z) }
	drift := func(k float64) float64 { return push / k / max(1-1/ratio(k), 1e-6) }
	least := table.Value("rack.sway")
	f := Finding{
		Where: "rack", Status: OK, Figure: figure(ratio(stiff)), Limit: figure(least), Unit: "ratio",
		Source: "statics and Wood Handbook, eq. 8-3 and 9-2; " + sources("rack.sway", "rack.drift", "nail.slip_load"),
	}
	f.Says = fmt.Sprintf("%s, %s times as stiff as its weight needs, least %s; gives %s to %s",
		how, times(ratio(stiff)), figure(least), gives(r, ratio(stiff), drift(stiff)), force(r, push))
	if r.Design.Joint.Glue {
		f.Says += fmt.Sprintf("; without glue %s times", times(ratio(nailed)))
	}
	asked := 0.0 // of the glue
	if r.Design.Joint.Glue {
		asked = push * clearLeg(r) / 2 / float64(r.Counts.Legs) / strength.GlueTwist(r.Design.Wood.Species, r.Len("leg.thickness").MM(), r.Len("apron.height").MM())
	}
	why := looseness(r, ratio(stiff), drift(stiff), asked)
	if len(why) > 0 {
		f.Status = Caution
		f.Figure, f.Limit, f.Unit = figure(why[0].figure), figure(why[0].limit), why[0].unit
		for i, w := range why {
			f.Says += [...]string{": ", "; "}[min(i, 1)] + w.says
		}
		f.Change = "add a back panel or a diagonal, fix it to the wall, or make aprons higher: " + named(r, "apron.height")
		if !r.Design.Joint.Glue {
			f.Change = "glue the crossings: " + stated("joint.glue", r.Design.Joint.GluePlace) + "; or " + f.Change
		}
	}
	return []Finding{f}
}

// A loose is one way in which the rack is not stiff enough.
type loose struct {
	figure, limit float64
	unit, says    string
}

// looseness lists what is amiss: the weight folds it, or nearly; a push moves it
// too far; that push asks more of the glue than it bears (asked over 1).
func looseness(r *rack.Rack, ratio, drift, asked float64) (list []loose) {
	least, most := table.Value("rack.sway"), r.Len("rack.height").MM()/table.Value("rack.drift")
	if ratio < least {
		list = append(list, loose{ratio, least, "ratio", "too little for its weight"})
	}
	if ratio > 1 && drift > most {
		list = append(list, loose{drift, most, "mm", "goes over by more than a hundredth of its height, " + slight(r, most)})
	}
	if asked > 1 {
		list = append(list, loose{asked, 1, "ratio", "that push twists each glued crossing " + plain(asked, 2) + " times as hard as it can bear"})
	}
	return list
}

// times prints a ratio; over a hundred its figures say no more.
func times(ratio float64) string {
	if ratio > 100 {
		return "over 100"
	}
	return plain(ratio, 1)
}

// gives says how far the rack goes over, where it does not fold.
func gives(r *rack.Rack, ratio, mm float64) string {
	if ratio <= 1 {
		return "way and folds"
	}
	return slight(r, mm)
}

// clearLeg is the leg between the aprons, in mm.
func clearLeg(r *rack.Rack) float64 {
	return (r.Len("leg.length") - r.Len("apron.lift") - 2*r.Len("apron.height")).MM()
}

// swayStiffness returns the force sideways at the top over the way it goes, in
// N/mm, over all legs.
func swayStiffness(r *rack.Rack, glued bool) float64 {
	species := r.Design.Wood.Species
	leg := strength.Bar{Breadth: r.Len("leg.width").MM(), Depth: r.Len("leg.thickness").MM(), Elasticity: strength.Elasticity(species)}
	h := max(clearLeg(r), 1)
	give := 0.0
	if !glued {
		h += r.Len("apron.height").MM()
		give = h * h / (2 * turning(r))
	}
	give += h * h * h / (12 * leg.Elasticity * leg.Inertia())
	return float64(r.Counts.Legs) / give
}

// turning returns the moment over the angle of the nails of one crossing of an
// apron and a leg, in N mm: the sum of k r² about their middle.
func turning(r *rack.Rack) float64 {
	patch := space.Box{Max: space.Point{X: r.Len("leg.thickness"), Z: r.Len("apron.height")}}
	places := r.NailPlaces(patch, space.Y, false)
	dx, dz := (places[1].X - places[0].X).MM(), (places[1].Z - places[0].Z).MM()
	k := jointOf(r, "apron").bears(r).Stiffness(r.Design.Wood.Species)
	return k * (dx*dx + dz*dz) / 2
}
