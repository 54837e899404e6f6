package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
)

var kept = Check{
	Code:  "default.kept",
	Title: "the defaults are kept",
	Doc: "A length that the design leaves unsaid has its default. One that had to give way to what is stated is a caution, " +
		"and one that gave way below the least that is still a board to build from fails: state it if it is meant.",
	run: lookKept,
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
		f := Finding{
			Where: l.Name, Status: Caution, Figure: l.Value.Decimal(), Limit: want.Decimal(), Unit: "mm",
			Says: fmt.Sprintf("%s gave way from its default %s to %s", l.Name, r.Format.Unit(want), r.Format.Unit(l.Value)),
		}
		if least := usual.Least(r.Design.Units); l.Value < least {
			f.Status, f.Limit = Fail, least.Decimal()
			f.Says += fmt.Sprintf(", less than %s: too little to build from; ask for fewer bottles or more room, or state %s if it is meant",
				r.Format.Unit(least), l.Name)
		}
		list = append(list, f)
	}
	return list
}
