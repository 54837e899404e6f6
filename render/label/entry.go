package label

import (
	"slices"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// An entry is one label to be lettered: the nth of so many of a part.
type entry struct {
	rack  *rack.Rack
	order string // of the label; "" where the rack has none
	mark  string // of the rack's packet
	part  int    // into Rack.Parts
	piece int    // into Rack.Pieces; -1 for a spare
	n, of int
}

// inPlace lists the pieces in the order of the rack.
func inPlace(r *rack.Rack, order, mark string) []entry {
	seen := make([]int, len(r.Parts))
	var out []entry
	for i, p := range r.Pieces {
		seen[p.Part]++
		out = append(out, entry{r, order, mark, p.Part, i, seen[p.Part], r.Parts[p.Part].Count})
	}
	return out
}

// asCut lists the pieces as a plan's steps finish them: the first of a part that
// comes off the saw is the first of it in the rack. Spares follow their part.
func asCut(plan *saw.Plan, marks []string) []entry {
	var left [][]entry
	var spare [][]int
	for i, o := range plan.Orders {
		left = append(left, inPlace(o.Rack, o.Name, marks[i]))
		spare = append(spare, make([]int, len(o.Rack.Parts)))
	}
	var out []entry
	for _, x := range plan.Sequence() {
		k := slices.IndexFunc(plan.Orders, func(o saw.Order) bool { return o.Name == x.Order })
		r := plan.Orders[k].Rack
		part := slices.IndexFunc(r.Parts, func(p rack.Part) bool { return p.Mark == x.Mark })
		if x.Spare {
			spare[k][part]++
			out = append(out, entry{r, x.Order, marks[k], part, -1, spare[k][part], saw.Spares(r, x.Name)})
			continue
		}
		i := slices.IndexFunc(left[k], func(e entry) bool { return e.part == part })
		out = append(out, left[k][i])
		left[k] = slices.Delete(left[k], i, i+1)
	}
	return out
}
