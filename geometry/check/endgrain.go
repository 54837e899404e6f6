package check

import (
	"fmt"
	"strconv"

	"slatwright/geometry/rack"
	"slatwright/geometry/space"
)

var endGrain = Check{
	Code:  "joint.end_grain",
	Title: "no joint hangs on end grain",
	Doc: "A piece that is nailed on is nailed into side grain of at least one piece behind it; every slat and apron at each " +
		"of its crossings. In end grain a nail holds no pull, and glue next to nothing.",
	run: lookEndGrain,
}

func lookEndGrain(r *rack.Rack) []Finding {
	weak, ends, where := 0, 0, ""
	for i, p := range r.Pieces {
		name := r.Parts[p.Part].Name
		if name == "leg" {
			continue
		}
		sides := 0
		n := 0
		for _, c := range p.Fixed {
			switch behind := r.Pieces[c.Piece]; {
			case !carries(r, i, c):
			case c.Axis == behind.Grain:
				n++
			default:
				sides++
			}
		}
		ends += n
		// The top needs the aprons only; others need every crossing.
		if n > 0 && (name != "top" || sides == 0) {
			if weak == 0 {
				where = p.Name
			}
			weak += n
		}
	}
	f := Finding{
		Where: "rack", Status: OK, Figure: strconv.Itoa(weak), Limit: "0", Unit: "joints",
		Says: "all in side grain", Source: sources("nail.end_grain"),
	}
	if ends > weak {
		f.Says += fmt.Sprintf("; the ends of %d legs under the top hold no pull", ends-weak)
	}
	if weak > 0 {
		f.Status = Caution
		f.Says = fmt.Sprintf("%d joints hang on end grain, the first at %s", weak, where)
		f.Change = "turn the grain of the piece behind, or fix it with a dowel or a screw into side grain"
	}
	return []Finding{f}
}

// carries reports whether the contact is one of a piece that is nailed on with
// the piece it is nailed to: slats and aprons on legs, the top on what it lies on.
func carries(r *rack.Rack, piece int, c rack.Contact) bool {
	behind := r.Parts[r.Pieces[c.Piece].Part].Name
	if r.Parts[r.Pieces[piece].Part].Name == "top" {
		return c.Axis == space.Z
	}
	return behind == "leg"
}
