package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

var kept = Check{
	Code:  "default.kept",
	Title: "the defaults are kept",
	Doc:   "A length that the design leaves unsaid has its default. One that had to give way to what is stated is a caution.",
	run:   lookKept,
}

func lookKept(r *rack.Rack) []Finding {
	var list []Finding
	for _, l := range r.Lengths {
		usual, ok := table.FindDefault(l.Name)
		if !ok || l.From != rack.Default {
			continue
		}
		want := usual.Value(r.Design.Units)
		if want == l.Value {
			continue
		}
		list = append(list, Finding{
			Where: l.Name, Status: Caution, Figure: l.Value.Decimal(), Limit: want.Decimal(), Unit: "mm",
			Says: fmt.Sprintf("gave way from its default %s to %s", r.Format.Unit(want), r.Format.Unit(l.Value)),
		})
	}
	return list
}
