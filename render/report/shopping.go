package report

import (
	"cmp"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// board is a board that can be bought or lies in the rack.
type board struct {
	nominal                  string
	thickness, width, length unit.Length
	price                    int64 // hundredths; a volume where nothing is priced
	priced                   bool
	onHand                   int // 0: as many as wanted
}

// choice is the boards that one kind of part is cut from.
type choice struct {
	board  board
	count  int
	staves int // strips side by side in one part; 1 where it is in one piece
}

// cost is what the boards cost together.
func (c choice) cost() int64 { return c.board.price * int64(c.count) }

// choose picks, for one kind of part, the board that makes it of the fewest
// strips, then the one that costs least, then the one with fewest boards, then
// the first offered. Every kind of part is cut from boards of its own here: an
// amount that is surely enough. A plan that shares boards between parts and
// orders needs fewer.
func choose(r *rack.Rack, p rack.Part, offers []board) (best choice, found bool) {
	for _, b := range offers {
		if b.thickness != p.Thickness {
			continue
		}
		c, ok := cutFrom(r, p, b)
		if !ok {
			continue
		}
		better := cmp.Or(cmp.Compare(c.staves, best.staves), cmp.Compare(c.cost(), best.cost()), cmp.Compare(c.count, best.count))
		if !found || better < 0 {
			best, found = c, true
		}
	}
	return best, found
}

// cutFrom counts the boards of one sort that a kind of part takes. A part wider
// than the board is glued up from equal strips.
func cutFrom(r *rack.Rack, p rack.Part, b board) (choice, bool) {
	shop := r.Design.Shop
	staves := (p.Width + b.width - 1) / b.width
	width := ((p.Width + staves - 1) / staves).Up(r.Design.Grid)
	if staves == 1 {
		width = p.Width
	}
	along := int((b.length - 2*shop.EndTrim + shop.Kerf) / (p.Length + shop.Kerf))
	across := 1
	if width < b.width { // ripped; a strip as wide as its board keeps both edges
		across = int((b.width - 2*shop.EdgeTrim + shop.Kerf) / (width + shop.Kerf))
	}
	if along < 1 || across < 1 {
		return choice{}, false
	}
	wanted := (p.Count + spares(r, p.Name)) * int(staves)
	c := choice{board: b, count: (wanted + along*across - 1) / (along * across), staves: int(staves)}
	return c, b.onHand == 0 || c.count <= b.onHand
}

// offered returns the boards that the design offers, those on hand first and
// free, or else the usual retail boards of each thickness that the rack needs.
func offered(r *rack.Rack) []board {
	var list []board
	for _, b := range r.Design.Boards {
		one := board{nominal: cmp.Or(b.Nominal.Name, "as measured"), thickness: b.Thickness, width: b.Width, length: b.Length}
		if b.OnHand > 0 {
			one.onHand = b.OnHand
			list = append(list, one)
			one.onHand = 0
		}
		if b.Priced {
			one.price, one.priced = b.Price, true
			list = append(list, one)
		}
	}
	if len(r.Design.Boards) == 0 {
		list = usual(r)
	}
	return list
}

// usual returns the retail boards of every thickness that the rack needs. A
// thickness that no table has, such as a measured one, is offered in the
// widths of its own parts.
func usual(r *rack.Rack) []board {
	var list []board
	var seen []unit.Length
	for _, p := range r.Parts {
		if slices.Contains(seen, p.Thickness) {
			continue
		}
		seen = append(seen, p.Thickness)
		found := ofThickness(p.Thickness, sorts(r))
		if len(found) == 0 {
			found = measured(r, p.Thickness)
		}
		list = append(list, found...)
	}
	return list
}

// sorts returns the kinds of lumber that a design in its units is made from.
func sorts(r *rack.Rack) []table.Kind {
	if r.Design.Units == unit.Metric {
		return []table.Kind{table.Planed, table.Board}
	}
	return []table.Kind{table.Board, table.Planed}
}

// ofThickness returns the boards of the first kind that has the thickness.
func ofThickness(thick unit.Length, sorts []table.Kind) []board {
	for _, sort := range sorts {
		var list []board
		for _, n := range table.Nominals() {
			if n.Kind == sort && n.Thickness == thick && n.Width > 0 {
				list = append(list, retail(n.Name, n.Thickness, n.Width, sort)...)
			}
		}
		if len(list) > 0 {
			return list
		}
	}
	return nil
}

// measured returns boards of a thickness that no table has.
func measured(r *rack.Rack, thick unit.Length) []board {
	var list []board
	var seen []unit.Length
	for _, p := range r.Parts {
		if p.Thickness == thick && !slices.Contains(seen, p.Width) {
			seen = append(seen, p.Width)
			list = append(list, retail("as measured", thick, p.Width, sorts(r)[0])...)
		}
	}
	return list
}

// retail returns a board in every length it is usually sold in.
func retail(name string, thick, width unit.Length, sort table.Kind) []board {
	lengths, _ := table.RetailLengths(sort)
	var list []board
	for _, l := range lengths {
		list = append(list, board{nominal: name, thickness: thick, width: width, length: l, price: volume(thick, width, l)})
	}
	return list
}

// volume is a board's volume in cubic centimetres, at least 1: what stands for
// a price where there is none.
func volume(thick, width, length unit.Length) int64 {
	const tenth = unit.Millimetre / 10 // fine enough, and no product overflows
	return max(int64(thick/tenth)*int64(width/tenth)*int64(length/tenth)/1_000_000, 1)
}
