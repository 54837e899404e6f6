package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/geometry/strength"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var thrust = Check{
	Code:  "load.joint",
	Title: "legs and nails stand the push of bottles between slats",
	Doc: "Bottles press their two slats apart. Where the column beside is empty nothing pushes back: then the legs may bow, in the " +
		"long run, until the gap is 0.90 of the smallest bottle, and the nails of aprons and slats bear what comes to them.",
	run: lookThrust,
}

func lookThrust(r *rack.Rack) []Finding {
	list := eachKind(lookBow)(r)
	var worst press
	var rows int
	var all []press
	for _, k := range r.Kinds {
		one := presses(r, k)
		if p, ok := hardest(one, sideways); ok && p.side*float64(k.Rows) > worst.side*float64(rows) {
			worst, rows = p, k.Rows
		}
		all = append(all, one...)
	}
	if rows == 0 {
		return list
	}
	return append(list, apronNails(r, worst, rows), slatNails(r, all))
}

// lookBow bends the two legs of the ladders on both sides of a full column
// whose neighbours are empty. A glued crossing holds a leg's end fast; nails let
// it turn.
func lookBow(r *rack.Rack, k rack.Kind) (Finding, bool) {
	p, ok := hardest(presses(r, k), sideways)
	if !ok {
		return Finding{}, false
	}
	free := r.Len("leg.length") - r.Len("apron.lift") - 2*r.Len("apron.height")
	held, how := strength.Fixed, "glued"
	if !r.Design.Joint.Glue {
		free += r.Len("apron.height")
		held, how = strength.Uniform, "nailed only"
	}
	leg := strength.Bar{Breadth: r.Len("leg.width").MM(), Depth: r.Len("leg.thickness").MM(), Elasticity: strength.Elasticity(r.Design.Wood.Species)}
	total := p.side * float64(k.Rows)
	both := 2 * table.Value("load.creep") * leg.Deflection(held, total/2, free.MM())
	limit := room(k)
	if limit == 0 {
		return Finding{}, false // fit.rest fails as drawn
	}
	f := Finding{
		Status: OK, Figure: figure(both), Limit: micro(limit), Unit: "mm",
		Source: "Wood Handbook, eq. 9-2, without friction; " + sources("load.creep", "load.shear_modulus"),
	}
	f.Says = fmt.Sprintf("full between empty ones, pushes %s on each ladder; %s legs bow over %s: the gap widens in the long run by %s, most %s",
		force(r, total), how, r.Format.Unit(free), bow(r, both, limit), slight(r, limit.MM()))
	if both > limit.MM() {
		f.Status = Caution
		f.Change = "tie the ladders halfway up with a pair of aprons, or make legs thicker: " + named(r, "leg.thickness")
		if !r.Design.Joint.Glue {
			f.Change += "; or glue the crossings: " + stated("joint.glue", r.Design.Joint.GluePlace)
		}
	}
	return f, true
}

// bow prints how far the gap widens; many times over the limit the equation
// says no more than that.
func bow(r *rack.Rack, mm float64, limit unit.Length) string {
	if mm > 10*limit.MM() {
		return "more than " + slight(r, 10*limit.MM())
	}
	return slight(r, mm)
}

// room is how far the gap may widen until it is 0.90 of the smallest bottle; zero
// where it is wider as drawn.
func room(k rack.Kind) unit.Length {
	least, found := unit.Length(0), false
	for _, fit := range k.Fit {
		for _, b := range fit {
			if !found || b.Diameter.Min < least {
				least, found = b.Diameter.Min, true
			}
		}
	}
	return max(0, least*mostShare/100-k.Gap)
}

// apronNails judges the nails of an apron on an end leg: each leg's push comes
// half to its foot and half to its head.
func apronNails(r *rack.Rack, p press, rows int) Finding {
	j := jointOf(r, "apron")
	load := p.side * float64(rows) / 4 / nailsEach
	can := j.bears(r).Sideways(r.Design.Wood.Species)
	f := Finding{Where: j.where, Status: OK, Figure: figure(load), Limit: figure(can), Unit: "N", Source: sources("nail.bearing", "nail.full", "load.duration")}
	f.Says = fmt.Sprintf("a full column beside an empty one: %s sideways on each of two nails, most %s%s", force(r, load), force(r, can), extrapolated(r, j))
	if load > can {
		f.Status = Caution
		f.Change = "take thicker or more nails, and glue: " + stated(j.key, j.nail.Place)
	}
	return f
}

// nailsEach is how many nails a crossing has, as NailPlaces sets them.
const nailsEach = 2

// A peeling is what one nail of a slat bears, in N: the push across it, and the
// pull along it.
type peeling struct{ side, pulled float64 }

// peelingOf returns what comes of one bottle: a quarter of its weight goes down
// on each crossing. The push lands on the leg's face above the slat's lower edge,
// or else it peels the slat off, and then the nails are pulled too.
func peelingOf(r *rack.Rack, p press) peeling {
	t, h := r.Len("slat.thickness").MM(), r.Len("slat.height").MM()
	down := p.down / 2
	out := peeling{side: down / nailsEach}
	if peel := down * (t - h*p.tangent); peel > 0 {
		out.pulled = peel / (h / 2) / nailsEach
	}
	return out
}

// used is the share of what a nail can bear that is asked of it.
func (p peeling) used(can peeling) float64 {
	share := 0.0
	if p.side > 0 {
		share = p.side / max(can.side, 1e-9)
	}
	if p.pulled > 0 {
		share += p.pulled / max(can.pulled, 1e-9)
	}
	return share
}

// slatNails judges the nails of a slat under that bottle of the rack which asks
// most of them. How many lie above it does not matter: each has its own slats.
func slatNails(r *rack.Rack, all []press) Finding {
	j := jointOf(r, "slat")
	n, species := j.bears(r), r.Design.Wood.Species
	can := peeling{n.Sideways(species), n.Pull(species)}
	worst, _ := hardest(all, func(p press) float64 { return peelingOf(r, p).used(can) })
	bears := peelingOf(r, worst)
	used := bears.used(can)
	f := Finding{Where: j.where, Status: OK, Figure: figure(min(used, 999)), Limit: "1", Unit: "ratio", Source: sources("nail.bearing", "nail.withdraw_nds", "nail.withdraw_metric", "load.duration")}
	f.Says = fmt.Sprintf("%s sideways on each of two nails, most %s%s", force(r, bears.side), force(r, can.side), extrapolated(r, j))
	if bears.pulled > 0 {
		f.Says += fmt.Sprintf(", and is pulled with %s, most %s", force(r, bears.pulled), force(r, can.pulled))
	} else {
		f.Says += ", none pulled"
	}
	if used > 1 {
		f.Status = Caution
		f.Change = "glue as well as nail, or take longer nails: " + stated(j.key, j.nail.Place)
	}
	return f
}

// extrapolated says so where the nail is thinner than the equation covers.
func extrapolated(r *rack.Rack, j joint) string {
	if j.bears(r).Extrapolated() {
		return " (by equations for thicker nails)"
	}
	return ""
}
