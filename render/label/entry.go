package label

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// An entry is one label to be lettered: the nth of so many of a part.
type entry struct {
	part  int // into Rack.Parts
	piece int // into Rack.Pieces; -1 for a spare
	n, of int
}

// inPlace lists the pieces in the order of the rack.
func inPlace(r *rack.Rack) []entry {
	seen := make([]int, len(r.Parts))
	var out []entry
	for i, p := range r.Pieces {
		seen[p.Part]++
		out = append(out, entry{p.Part, i, seen[p.Part], r.Parts[p.Part].Count})
	}
	return out
}

// asCut lists the pieces as a plan's steps finish them: the first of a part that
// comes off the saw is the first of it in the rack. Spares follow their part.
func asCut(r *rack.Rack, plan *saw.Plan) []entry {
	left := inPlace(r)
	spare := make([]int, len(r.Parts))
	var out []entry
	for _, x := range plan.Sequence() {
		part := slices.IndexFunc(r.Parts, func(p rack.Part) bool { return p.Mark == x.Mark })
		if x.Spare {
			spare[part]++
			out = append(out, entry{part, -1, spare[part], saw.Spares(r, x.Name)})
			continue
		}
		i := slices.IndexFunc(left, func(e entry) bool { return e.part == part })
		out = append(out, left[i])
		left = slices.Delete(left, i, i+1)
	}
	return out
}
