package check

import (
	"fmt"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

var raise = Check{
	Code:  "site.raise",
	Title: "the rack can be tipped up under the ceiling",
	turn:  []string{"rack.height", "rack.depth"},
	Doc:   "The diagonal of rack.height and rack.depth is at most site.ceiling. Looked at where the design states a ceiling.",
	run:   lookRaise,
}

var doorway = Check{
	Code:  "site.doorway",
	Title: "the rack passes the doorway",
	turn:  []string{"rack.depth", "rack.width"},
	Doc:   "The smaller of rack.width and rack.depth is at most site.doorway. Looked at where the design states a doorway.",
	run:   lookDoorway,
}

func lookRaise(r *rack.Rack) []Finding {
	ceiling, ok := r.Design.Length("site.ceiling")
	if !ok {
		return nil
	}
	diagonal := square(r.Len("rack.height"))
	diagonal.Add(diagonal, square(r.Len("rack.depth")))
	figure := unit.Length(rootUp(diagonal))
	fits := diagonal.Cmp(square(ceiling.Lo)) <= 0
	return []Finding{limited(r, figure, ceiling.Lo, fits, "corner to corner of the side, tipped up on its back edge, under a ceiling of")}
}

func lookDoorway(r *rack.Rack) []Finding {
	door, ok := r.Design.Length("site.doorway")
	if !ok {
		return nil
	}
	least := min(r.Len("rack.width"), r.Len("rack.depth"))
	return []Finding{limited(r, least, door.Lo, least <= door.Lo, "across the narrower way, through a doorway of")}
}

// limited is the finding on a figure of the whole rack with a limit above.
func limited(r *rack.Rack, figure, limit unit.Length, fits bool, says string) Finding {
	f := Finding{Where: "rack", Status: OK, Figure: figure.Up(unit.Micrometre).Decimal(), Limit: limit.Decimal(), Unit: "mm"}
	f.Says = fmt.Sprintf("%s %s %s", r.Format.Unit(figure), says, r.Format.Unit(limit))
	if !fits {
		f.Status = Fail
		f.Says += ": too much"
	}
	return f
}
