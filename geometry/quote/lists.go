package quote

import (
	"fmt"

	"slatwright/geometry/saw"
)

// Gap says by how much at most a cutting plan that is not proven costs too much.
func Gap(p *saw.Plan) string {
	return fmt.Sprintf("at most %s over the least possible", Hundredths(p.Cost-p.Bound))
}

// Saved says what orders save by being cut together, or why that cannot be
// told; "" where they save nothing.
func Saved(p *saw.Plan) string {
	switch {
	case p.Untold != "":
		return "what cutting together saves cannot be told: " + p.Untold
	case p.Apart > p.Cost && p.Doubled:
		return fmt.Sprintf("each order by itself would cost %s in all, with more boards on hand than there are: cut together they save at least %s",
			Hundredths(p.Apart), Hundredths(p.Apart-p.Cost))
	case p.Doubled:
		return "what cutting together saves cannot be told: planned each by itself, the orders would take more boards on hand than there are"
	case p.Apart <= p.Cost:
		return ""
	}
	return fmt.Sprintf("each order by itself would cost %s in all: cut together they save %s", Hundredths(p.Apart), Hundredths(p.Apart-p.Cost))
}

// Materials returns the lines of a section whose quantities are bought: what,
// quantity, rate, amount, where the rate is from, and the yield where one is
// reckoned with. The last row is the sum.
func (q *Quote) Materials(s Section) [][]string {
	var rows [][]string
	for _, l := range q.In(s) {
		row := []string{l.What, l.QuantityText(), l.RateText(), Hundredths(l.Amount), l.Source.Word(), ""}
		for _, in := range l.Inputs {
			if in.Name == "yield" {
				row[5] = Short(in.Hundredths) + " %"
			}
		}
		rows = append(rows, row)
	}
	return append(rows, []string{"sum", "", "", Hundredths(q.Sum(s)), "", ""})
}

// Cartons returns the two states in which a rack can be sent: the state, the
// carton's sides, the weight, that by volume, the chargeable one, and a word at
// the state that the quote reckons with.
func (q *Quote) Cartons() [][]string {
	var rows [][]string
	for _, p := range []Parcel{q.Assembled, q.Flat} {
		row := []string{p.Name, p.Outside(q.Rack.Format), q.WeightText(p.Gross), q.WeightText(p.ByVolume), fmt.Sprintf("%d %s", p.Chargeable, q.WeightUnit()), ""}
		if p.Name == q.Parcel().Name {
			row[5] = "reckoned with"
		}
		rows = append(rows, row)
	}
	return rows
}
