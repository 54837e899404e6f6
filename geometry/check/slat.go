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
	Doc: "Under the heaviest bottle, resting on one point in the middle, two slats bend apart, in the long run, by no more than " +
		"widens the gap to 0.90 of the smallest bottle, and their stress is within what boards can bear for good.",
	run: eachKind(lookSlat),
}

// lookSlat bends a slat both ways between the legs' inner edges: down by half
// the bottle's weight, sideways by the push that goes with it.
func lookSlat(r *rack.Rack, k rack.Kind) (Finding, bool) {
	p, ok := worstPress(r, k)
	if !ok {
		return Finding{}, false
	}
	species := r.Design.Wood.Species
	span := (r.Len("slat.length") - 2*r.Len("leg.width")).MM()
	t, h := r.Len("slat.thickness").MM(), r.Len("slat.height").MM()
	upright := strength.Bar{Breadth: t, Depth: h, Elasticity: strength.Elasticity(species)}
	sideways := strength.Bar{Breadth: h, Depth: t, Elasticity: upright.Elasticity}
	stress := upright.Stress(strength.Middle, p.down, span) + sideways.Stress(strength.Middle, p.side, span)
	share := stress / strength.Allowable(species)
	wider := 2 * table.Value("load.creep") * sideways.Deflection(strength.Middle, p.side, span)
	limit := room(k).MM()
	f := Finding{
		Status: OK, Figure: figure(wider), Limit: figure(limit), Unit: "mm",
		Source: "Wood Handbook, eq. 9-2, without friction; " + sources("load.creep", "load.derate", "load.grade", "load.duration"),
	}
	f.Says = fmt.Sprintf("%s, %s, on slats %s between legs: the gap widens in the long run by %s, most %s; they are at %s of their strength",
		p.bottle.ID, massOf(r, 2*p.down/gravity), r.Format.Unit(r.Len("slat.length")-2*r.Len("leg.width")), slight(r, wider), slight(r, limit), wholePercent(share))
	if limit == 0 { // fit.rest fails as drawn
		f.Says = fmt.Sprintf("%s, %s: slats are at %s of their strength", p.bottle.ID, massOf(r, 2*p.down/gravity), wholePercent(share))
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
