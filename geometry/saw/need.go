package saw

import "slatwright/geometry/cutting"

// Need is a kind of board that a plan takes, and how many of them.
type Need struct {
	Board   cutting.Board
	Offer   Offer
	Count   int
	Layouts []int // into Plan.Boards
	Yield   int   // percent of their faces that becomes parts
}

// Needs lists the boards that the plan takes, in cutting order.
func (p *Plan) Needs() []Need {
	var out []Need
	at := map[int]int{}
	used, all := map[int]int64{}, map[int]int64{}
	for i, b := range p.Boards {
		k, ok := at[b.Index]
		if !ok {
			k = len(out)
			at[b.Index] = k
			out = append(out, Need{Board: b.Board, Offer: p.Offers[b.Index]})
		}
		out[k].Count += b.Count
		out[k].Layouts = append(out[k].Layouts, i)
		u, a := faces(b)
		used[k] += u * int64(b.Count)
		all[k] += a * int64(b.Count)
		out[k].Yield = percent(used[k], all[k])
	}
	return out
}
