package quote

import (
	"slatwright/specs/design"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// from names the line of a design that states a figure.
func from(item design.PriceItem) Source { return Source{Stated, item.Text, item.Place.Line} }

// reckoned is the source of what is counted in the rack or its cutting plan.
func reckoned(text string) Source { return Source{Counted, text, 0} }

// charge returns the figure of the key: the design's, or else the example.
func (q *Quote) charge(key string) (rate int64, c table.Charge, s Source) {
	c = table.FindCharge(key, q.Rack.Design.Units)
	if item, ok := q.Rack.Design.Price.Item(key); ok {
		return item.Hundredths, c, from(item)
	}
	return c.Hundredths, c, Source{Example, c.Origin.Source, 0}
}

// add adds a line at the charge of the key. A line without a quantity is left
// out.
func (q *Quote) add(l Line, key string) {
	rate, c, s := q.charge(key)
	l.Rate, l.Per, l.Unit, l.Source = rate, 100*c.Per, c.Unit, s
	q.put(l)
}

// put adds a line that has its rate.
func (q *Quote) put(l Line) {
	if l.Quantity == 0 {
		return
	}
	l.Amount = Amount(l.Quantity, l.Rate, l.Per)
	q.Lines = append(q.Lines, l)
}

// percent adds a share of the lines of some sections.
func (q *Quote) percent(section Section, what, key string, of ...Section) {
	rate, _, s := q.charge(key)
	q.put(Line{Section: section, What: what, Quantity: q.Sum(of...), Rate: rate, Percent: true, Per: 100_00, Source: s, Of: of})
}

// profit adds the markup, a percent of the costs, or the margin, a percent of
// the price: of costs c and margin m the price is c / (1 - m), and so the
// margin c m / (100 - m).
func (q *Quote) profit() {
	all := append(Direct(), Overhead)
	if item, ok := q.Rack.Design.Price.Item("margin"); ok {
		q.Margin = true
		q.put(Line{
			Section: Profit, What: "margin, percent of the price", Quantity: q.Costs, Rate: item.Hundredths, Percent: true,
			Per: 100_00 - item.Hundredths, Source: from(item), Of: all,
		})
		return
	}
	q.percent(Profit, "markup, percent of the costs", "markup", all...)
}

// deliver adds what the design charges on top of the price, if anything.
func (q *Quote) deliver() {
	p := q.Rack.Design.Price
	if item, ok := p.Item("delivery"); ok {
		q.put(Line{Section: Delivery, What: "delivery", Quantity: 100, Unit: "order", Rate: item.Hundredths, Per: 100, Source: from(item)})
	}
	if item, ok := p.Item("freight"); ok {
		parcel := q.Parcel()
		unit, by := massUnit(q.Rack.Design.Units), reckoned("the greater of the parcel's weight and its weight by volume, rounded up")
		q.put(Line{
			Section: Delivery, What: "freight, by chargeable weight", Quantity: 100 * parcel.Chargeable, Unit: unit,
			Rate: item.Hundredths, Per: 100, Source: from(item),
			Inputs: []Input{{"weight with packing", parcel.Gross, unit, by}, {"weight by volume", parcel.ByVolume, unit, parcel.Divided}},
		})
	}
	if item, ok := p.Item("tax"); ok {
		of := append(Direct(), Overhead, Profit, Delivery)
		q.put(Line{Section: Tax, What: "tax", Quantity: q.Sum(of...), Rate: item.Hundredths, Percent: true, Per: 100_00, Source: from(item), Of: of})
	}
}

// massUnit is what parcels are weighed in.
func massUnit(sys unit.System) string {
	if sys == unit.Metric {
		return "kg"
	}
	return "lb"
}
