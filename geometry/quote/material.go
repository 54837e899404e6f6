package quote

import (
	"fmt"
	"math/big"

	"slatwright/geometry/finish"
	"slatwright/geometry/fixing"
	"slatwright/geometry/saw"
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// wood adds the whole boards that the cutting plan takes; or, where the design
// prices wood by its volume, what the parts hold, divided by the yield.
func (q *Quote) wood() {
	if item, ok := q.Rack.Design.Price.Item("wood"); ok {
		q.woodByVolume(item)
		return
	}
	f := q.Rack.Format
	for _, n := range q.Cuts.Needs() {
		b := n.Board
		l := Line{
			Section: Wood, Quantity: int64(100 * n.Count), Unit: "boards", Rate: b.Price, Per: 100,
			What:   fmt.Sprintf("%s, %s × %s × %s", b.Nominal, f.Text(b.Thickness), f.Text(b.Width), f.Unit(b.Length)),
			Inputs: []Input{{"yield", int64(100 * n.Yield), "%", reckoned("faces of the parts over faces of these boards, by the cutting plan")}},
		}
		switch {
		case n.Offer.Example:
			l.Source = Source{Example, n.Offer.Price.Source, 0}
		case b.OnHand > 0:
			l.Source = Source{OnHand, n.Offer.Board.Text, n.Offer.Board.Place.Line}
		default:
			l.Source = Source{Stated, n.Offer.Board.Text, n.Offer.Board.Place.Line}
		}
		q.put(l)
	}
}

// boardFoot and litre are the units of wood by its volume.
var (
	boardFoot = unit.Volume(unit.Foot, unit.Foot, unit.Inch)
	litre     = unit.Volume(100*unit.Millimetre, 100*unit.Millimetre, 100*unit.Millimetre)
)

// woodByVolume adds the wood of the parts, spares included, over the yield: that
// which the design states, or else that of the cutting plan.
func (q *Quote) woodByVolume(item design.PriceItem) {
	sum := new(big.Int)
	for _, p := range q.Rack.Parts {
		one := unit.Volume(p.Thickness, p.Width, p.Length)
		sum.Add(sum, one.Mul(one, big.NewInt(int64(p.Count+saw.Spares(q.Rack, p.Name)))))
	}
	name, one, per := "board feet", boardFoot, int64(100)
	if q.Rack.Design.Units == unit.Metric {
		name, one, per = "litres", litre, 1000_00 // a price is for a cubic metre
	}
	share := Input{"yield", int64(100 * max(q.Cuts.TotalYield(), 1)), "%", reckoned("faces of the parts over faces of the boards, by the cutting plan")}
	if y, ok := q.Rack.Design.Price.Item("yield"); ok {
		share.Hundredths, share.Source = y.Hundredths, from(y)
	}
	net := unit.RoundUp(new(big.Rat).SetFrac(new(big.Int).Mul(sum, big.NewInt(100)), one))
	q.put(Line{
		Section: Wood, What: "wood in the parts, over the yield", Unit: name, Rate: item.Hundredths, Per: per, Source: from(item),
		Quantity: unit.RoundUp(big.NewRat(net*100_00, share.Hundredths)),
		Inputs:   []Input{{"parts, spares included", net, name, reckoned("their sizes, rounded up")}, share},
	})
}

// supplyKeys are the names of the prices of supplies.
var supplyKeys = map[finish.Kind]string{
	finish.Conditioner: "conditioner", finish.Stain: "stain", finish.Coat: "finish", finish.Glue: "glue",
}

// supplies adds what is used up: finish and glue, nails, sandpaper, screws.
func (q *Quote) supplies() {
	r, lost := q.Rack, table.FinishLost()
	for _, s := range finish.Supplies(r, q.Cuts.Panel()) {
		quantity := 100 * s.Millilitres
		if r.Design.Units == unit.Imperial {
			quantity = 100 * finish.Ounces(s.Millilitres)
		}
		one, per := unit.SquareFoot, "sq ft"
		if r.Design.Units == unit.Metric {
			one, per = unit.SquareMetre, "m²"
		}
		area := unit.RoundUp(s.Area.Times(100).Over(one))
		q.add(Line{Section: Supplies, What: s.Name, Quantity: quantity, Inputs: []Input{
			{"area", area, per, reckoned("faces of the parts, exact but for this rounding up")},
			{"coats", int64(100 * s.Coats), "", reckoned("[finish]")},
			{"lost", int64(100 * lost.Value), "%", Source{Tabled, lost.Origin.Source, 0}},
			{"coverage", 100 * s.Coverage.SquareFeet, "sq ft to the US gallon", Source{Tabled, s.Coverage.Origin.Source, 0}},
		}}, supplyKeys[s.Kind])
	}
	q.nails()
	sheets := Line{Section: Supplies, What: "sandpaper"}
	for _, p := range finish.Papers(r) {
		passes := int64(100 * p.Sheets)
		sheets.Quantity += passes
		sheets.Inputs = append(sheets.Inputs, Input{fmt.Sprintf("grit %d", p.Grit), passes, "sheets", reckoned("the area that is sanded")})
	}
	q.add(sheets, "sandpaper")
	q.add(Line{Section: Supplies, What: "screws, anchors", Quantity: 100}, "hardware")
}

// nails adds the nails of each joint: two at every crossing of slat or apron
// with a leg; for the top those that its fixing has, none as a rule.
func (q *Quote) nails() {
	r, j := q.Rack, q.Rack.Design.Joint
	top, _ := fixing.Of(r)
	for _, n := range []struct {
		joint string
		nail  design.Nail
		count int
		says  string
	}{
		{"slats", j.SlatNail, fixing.Nails(r, "slat"), "two at each crossing of slat and leg"},
		{"aprons", j.ApronNail, fixing.Nails(r, "apron"), "two at each crossing of apron and leg"},
		{"the top", j.TopNail, top.Nails, "those of the top's fixing"},
	} {
		if n.count == 0 {
			continue
		}
		q.add(Line{
			Section: Supplies, What: fmt.Sprintf("nails, %s: %d ga × %s", n.joint, n.nail.Gauge, r.Format.Unit(n.nail.Length)),
			Quantity: int64(100 * n.count), Inputs: []Input{{"nails", int64(100 * n.count), "", reckoned(n.says)}},
		}, "nails")
	}
}
