package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/geometry/strength"
	"slatwright/specs/table"
)

var slats = Check{
	Code:  "load.slat",
	Title: "slats bear their bottles",
	Doc: "Under the bottle that is worst for it, resting on one point in the middle, two slats bend apart, in the long run, by no more than " +
		"widens the gap to 0.90 of the smallest bottle, and their stress is within what boards can bear for good.",
	run: eachKind(lookSlat),
}

// lookSlat bends a slat both ways between the legs' inner edges: down by half
// the bottle's weight, sideways by the push that goes with it. The bottle that
// widens the gap most need not be the one under which the slat is nearest to
// breaking.
func lookSlat(r *rack.Rack, k rack.Kind) (Finding, bool) {
	list := presses(r, k)
	wide, ok := hardest(list, sideways)
	if !ok {
		return Finding{}, false
	}
	species := r.Design.Wood.Species
	span := (r.Len("slat.length") - 2*r.Len("leg.width")).MM()
	t, h := r.Len("slat.thickness").MM(), r.Len("slat.height").MM()
	upright := strength.Bar{Breadth: t, Depth: h, Elasticity: strength.Elasticity(species)}
	flat := strength.Bar{Breadth: h, Depth: t, Elasticity: upright.Elasticity}
	stress := func(p press) float64 {
		return upright.Stress(strength.Middle, p.down, span) + flat.Stress(strength.Middle, p.side, span)
	}
	near, _ := hardest(list, stress)
	share := stress(near) / strength.Allowable(species)
	wider := 2 * table.Value("load.creep") * flat.Deflection(strength.Middle, wide.side, span)
	limit := room(k).MM()
	f := Finding{
		Status: OK, Figure: figure(wider), Limit: figure(limit), Unit: "mm",
		Source: "Wood Handbook, eq. 9-2, without friction; " + sources("load.creep", "load.derate", "load.grade", "load.duration"),
	}
	bottle := func(p press) string { return p.bottle.ID + ", " + massOf(r, 2*p.down/gravity) }
	f.Says = fmt.Sprintf("%s, on slats %s between legs: the gap widens in the long run by %s, most %s; they are at %s of their strength",
		bottle(wide), r.Format.Unit(r.Len("slat.length")-2*r.Len("leg.width")), slight(r, wider), slight(r, limit), wholePercent(share))
	if near.bottle.ID != wide.bottle.ID {
		f.Says += " under " + bottle(near)
	}
	if limit == 0 { // fit.rest fails as drawn
		f.Says = fmt.Sprintf("%s: slats are at %s of their strength", bottle(near), wholePercent(share))
	}
	if share > 1 || limit == 0 {
		f.Figure, f.Limit, f.Unit = figure(share), "1", "ratio"
	}
	if share > 1 || limit > 0 && wider > limit {
		f.Status = Caution
		f.Change = fmt.Sprintf("make slats thicker or higher, or shorter: %s, %s, %s", named(r, "slat.thickness"), named(r, "slat.height"), named(r, "slat.length"))
	}
	if share > 2 { // beyond the derating, and so near breaking
		f.Status = Fail
	}
	return f, true
}

// wholePercent prints a share.
func wholePercent(share float64) string { return plain(100*share, 0) + " %" }
