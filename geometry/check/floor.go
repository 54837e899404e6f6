package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

var floor = Check{
	Code:  "site.floor",
	Title: "what the full rack weighs on the floor",
	Doc: "Full of its heaviest bottles the rack, spread over its width and its depth with 3 ft of clear floor before it, is no more than " +
		"a floor at home is made for, 40 lb/ft². Over that somebody who may judge floors should look at it.",
	run: lookFloor,
}

func lookFloor(r *rack.Rack) []Finding {
	full := fullLoad(r)
	area := r.Len("rack.width").MM() * (r.Len("rack.depth").MM() + table.Value("floor.walk")) / 1e6 // m²
	load, most := full.newton()/1000/area, table.Value("floor.load")
	f := Finding{
		Where: "rack", Status: OK, Figure: figure(load), Limit: figure(most), Unit: "kN/m2",
		Says:   fmt.Sprintf("full of its heaviest bottles it weighs %s, %s with the clear floor before it, most %s", mass(r, full.kg), perArea(r, load), perArea(r, most)),
		Source: sources("floor.load", "floor.walk"),
	}
	if load > most {
		f.Status = Caution
		f.Change = "have the floor looked at by a licensed practitioner, set the rack across the joists or near a bearing wall, or make it smaller"
	}
	return []Finding{f}
}

// perArea prints kN/m² in the design's own unit.
func perArea(r *rack.Rack, load float64) string {
	if r.Design.Units == unit.Metric {
		return plain(load, 2) + " kN/m²"
	}
	const foot = 0.3048
	return plain(load*1000/unit.PoundForce*foot*foot, 0) + " lb/ft²"
}
