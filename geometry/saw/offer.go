package saw

import (
	"cmp"
	"slices"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Offer says where a board of the job comes from.
type Offer struct {
	Example bool // at an example price; the design names no board
	Price   table.Origin
	Order   int           // into Plan.Orders: whose design names it
	Board   *design.Board // the line that names it; nil for an example
}

// offer lists the boards: those that any of the designs names, or else the
// usual boards of every thickness that the orders need.
func (p *Plan) offer() {
	stated := false
	for i, o := range p.Orders {
		boards, by := offeredBy(i, o.Rack.Design)
		for k, b := range boards {
			p.add(b, by[k])
		}
		stated = stated || len(o.Rack.Design.Boards) > 0
	}
	if stated {
		p.noteShared()
		return
	}
	for i, o := range p.Orders {
		for _, part := range o.Rack.Parts {
			p.usual(i, part)
		}
	}
}

// offeredBy lists what the [[board]]s of one design offer: the boards in the rack
// for nothing, those listed twice counted together, and as many as are wanted at
// a price.
func offeredBy(order int, d *design.Design) (boards []cutting.Board, by []Offer) {
	put := func(b cutting.Board, line *design.Board) {
		if i := slices.IndexFunc(boards, func(have cutting.Board) bool { return alike(have, b) }); i >= 0 {
			boards[i].OnHand += b.OnHand
			return
		}
		boards, by = append(boards, b), append(by, Offer{Order: order, Board: line})
	}
	for i := range d.Boards {
		line := &d.Boards[i]
		one := cutting.Board{Nominal: cmp.Or(line.Nominal.Name, "as measured"), Thickness: line.Thickness, Width: line.Width, Length: line.Length}
		if line.OnHand > 0 {
			own := one
			own.OnHand = line.OnHand
			put(own, line)
		}
		if line.Priced {
			one.Price = line.Price
			put(one, line)
		}
	}
	return boards, by
}

// alike reports whether two boards are the same, but for how many there are.
func alike(a, b cutting.Board) bool {
	if a.OnHand > 0 && b.OnHand > 0 {
		a.OnHand = b.OnHand
	}
	return a == b
}

// add adds a board of one design. One that another design names alike is the same
// board: bought from one yard, or lying in one rack (onhand.go).
func (p *Plan) add(b cutting.Board, by Offer) {
	i := slices.IndexFunc(p.Job.Boards, func(have cutting.Board) bool { return alike(have, b) })
	if i < 0 {
		i = len(p.Job.Boards)
		p.Job.Boards, p.Offers, p.lists = append(p.Job.Boards, b), append(p.Offers, by), append(p.lists, nil)
	}
	p.list(i, b.OnHand, by)
}

func (p *Plan) note(s string) {
	if !slices.Contains(p.Notes, s) {
		p.Notes = append(p.Notes, s)
	}
}

// usual adds the boards in their retail lengths that a part can be cut from: of
// the stock its design names, as measured there; and of the thickness it has, or
// else of the next thicker one, to be planed.
func (p *Plan) usual(order int, part rack.Part) {
	d := p.Orders[order].Rack.Design
	if s, ok := d.Stock(part.Name); ok && s.Nominal.Width > 0 {
		n := s.Nominal
		n.Thickness = part.Thickness
		if part.Width >= n.Width || n.Width-part.Width < unit.Inch/8 { // measured: a hair wider or narrower than dressed (the project's own figure)
			n.Width = part.Width
		}
		p.retail(order, n, part.Length)
	}
	for _, n := range thicknessClass(part.Thickness, d.Units) {
		p.retail(order, n, part.Length)
	}
}

// handy is the longest board that one person carries to the saw and turns
// round in a small shop (common practice, no source). Longer ones are offered
// only for parts that need them.
const handy = 12 * unit.Foot

// thicknessClass returns the sizes of the lumber table of a thickness, or of
// the next thicker one there is, from the kinds that a design in its units is
// made of.
func thicknessClass(thick unit.Length, sys unit.System) []table.Nominal {
	kinds := []table.Kind{table.Board, table.Dimension, table.Planed}
	if sys == unit.Metric {
		kinds = []table.Kind{table.Planed, table.Board, table.Dimension}
	}
	for _, k := range kinds { // of just this thickness
		if list := ofKind(k, thick); len(list) > 0 {
			return list
		}
	}
	for _, k := range kinds {
		next := unit.Length(0)
		for _, n := range table.Nominals() {
			if n.Kind == k && n.Thickness > thick && (next == 0 || n.Thickness < next) {
				next = n.Thickness
			}
		}
		if next > 0 {
			return ofKind(k, next)
		}
	}
	return nil
}

func ofKind(k table.Kind, thick unit.Length) []table.Nominal {
	var list []table.Nominal
	for _, n := range table.Nominals() {
		if n.Kind == k && n.Thickness == thick && n.Width > 0 {
			list = append(list, n)
		}
	}
	return list
}

// retail adds a size in the lengths that it is usually sold in.
func (p *Plan) retail(order int, n table.Nominal, part unit.Length) {
	lengths, _ := table.RetailLengths(n.Kind)
	for _, l := range lengths {
		if l > handy && part+2*p.Job.Shop.EndTrim <= handy {
			continue
		}
		price, from := table.ExamplePrice(p.Species.ID, n.Thickness, n.Width, l)
		b := cutting.Board{Nominal: n.Name, Thickness: n.Thickness, Width: n.Width, Length: l, Price: price}
		if !slices.Contains(p.Job.Boards, b) {
			p.Job.Boards = append(p.Job.Boards, b)
			p.Offers = append(p.Offers, Offer{Example: true, Price: from, Order: order})
		}
	}
}

// Examples reports whether some board of the plan stands at an example price.
func (p *Plan) Examples() bool {
	return slices.ContainsFunc(p.Boards, func(b cutting.BoardPlan) bool { return p.Offers[b.Index].Example })
}
