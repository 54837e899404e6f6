package label

import (
	"slices"

	"slatwright/geometry/assembly"
	"slatwright/geometry/fixing"
	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// An entry is one label to be lettered: the nth of so many of a part.
type entry struct {
	rack  *rack.Rack
	order string // of the label; "" where the rack has none
	mark  string // of the rack's packet
	part  rack.Part
	piece int // into Rack.Pieces; -1 for a spare and for blocks
	n, of int

	pieces int // of a ladder under one label, or of blocks; 0 where the label is one piece's own
}

// block is the name of the part that holds a top which is not glued all round.
const block = "slotted block"

// inPlace lists the pieces in the order of the rack, then the blocks under its
// top.
func inPlace(r *rack.Rack, order, mark string) []entry {
	seen := make([]int, len(r.Parts))
	var out []entry
	for i, p := range r.Pieces {
		seen[p.Part]++
		part := r.Parts[p.Part]
		out = append(out, entry{rack: r, order: order, mark: mark, part: part, piece: i, n: seen[p.Part], of: part.Count})
	}
	return append(out, blocks(r, order, mark)...)
}

// blocks returns the label of a rack's slotted blocks: they are alike, and smaller
// than most labels, so that one serves for all.
func blocks(r *rack.Rack, order, mark string) []entry {
	t, ok := fixing.Of(r)
	if !ok || t.Glued {
		return nil
	}
	part := rack.Part{Mark: assembly.BlockMark(r), Name: block, Count: len(t.Middles), Thickness: t.Block.Z, Width: t.Block.Y, Length: t.Block.X}
	return []entry{{rack: r, order: order, mark: mark, part: part, piece: -1, n: 1, of: 1, pieces: part.Count}}
}

// asCut lists the pieces as a plan's steps finish them: the first of a part that
// comes off the saw is the first of it in the rack. Spares follow their part;
// blocks, which are made of what is left, come last.
func asCut(plan *saw.Plan, marks []string) []entry {
	type part struct{ order, mark string }
	pieces, spares := map[part][]entry{}, map[part]int{}
	orders := map[string]int{}
	var last []entry
	for i, o := range plan.Orders {
		orders[o.Name] = i
		for _, e := range inPlace(o.Rack, o.Name, marks[i]) {
			if e.part.Name == block {
				last = append(last, e)
				continue
			}
			k := part{o.Name, e.part.Mark}
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
		out = append(out, entry{rack: r, order: x.Order, mark: marks[i], part: r.Parts[n], piece: -1, n: spares[k], of: saw.Spares(r, x.Name)})
	}
	return append(out, last...)
}
