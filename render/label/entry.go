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

	pieces int // of a ladder under one label; 0 where the label is one piece's own
}

// inPlace lists the pieces in the order of the rack.
func inPlace(r *rack.Rack, order, mark string) []entry {
	seen := make([]int, len(r.Parts))
	var out []entry
	for i, p := range r.Pieces {
		seen[p.Part]++
		out = append(out, entry{rack: r, order: order, mark: mark, part: p.Part, piece: i, n: seen[p.Part], of: r.Parts[p.Part].Count})
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
		out = append(out, entry{rack: r, order: x.Order, mark: marks[i], part: n, piece: -1, n: spares[k], of: saw.Spares(r, x.Name)})
	}
	return out
}
