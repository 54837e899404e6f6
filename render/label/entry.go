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
	type part struct{ order, mark string }
	pieces, spares := map[part][]entry{}, map[part]int{}
	orders := map[string]int{}
	for i, o := range plan.Orders {
		orders[o.Name] = i
		for _, e := range inPlace(o.Rack, o.Name, marks[i]) {
			k := part{o.Name, o.Rack.Parts[e.part].Mark}
			pieces[k] = append(pieces[k], e)
		}
	}
	var out []entry
	for _, x := range plan.Sequence() {
		k := part{x.Order, x.Mark}
		if !x.Spare {
			out = append(out, pieces[k][0])
			pieces[k] = pieces[k][1:]
			continue
		}
		i := orders[x.Order]
		r := plan.Orders[i].Rack
		spares[k]++
		n := slices.IndexFunc(r.Parts, func(p rack.Part) bool { return p.Mark == x.Mark })
		out = append(out, entry{r, x.Order, marks[i], n, -1, spares[k], saw.Spares(r, x.Name)})
	}
	return out
}
