// Package quote reckons what a rack costs to make and what is asked for it. In
// go a solved rack and its cutting plan; out comes a Quote: lines, each a
// quantity times a rate with where both are from, their sums, the price, what
// the rack weighs and how it is packed. All money is whole cents, and every
// amount follows from its own line by one rule, Amount, so that a quote can be
// added up again by hand. The quote and sizes commands print it.
package quote

import (
	"math/big"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// Section is what a line is about.
type Section string

// The sections, in the order of a quote. The first four are the direct costs.
const (
	Wood     Section = "wood"
	Supplies Section = "supplies"
	Labour   Section = "labour"
	Packing  Section = "packing"
	Overhead Section = "overhead" // on the direct costs
	Profit   Section = "profit"   // markup on the costs, or margin on the price
	Delivery Section = "delivery" // on top of the price
	Tax      Section = "tax"      // on price and delivery
)

// Direct returns the sections that overhead is reckoned on.
func Direct() []Section { return []Section{Wood, Supplies, Labour, Packing} }

// Standing says what kind of word stands behind a figure.
type Standing string

// The standings of a quote's figures.
const (
	Stated  Standing = "stated"     // by a line of the design
	Example Standing = "example"    // invented for the program: nobody sells at it
	OnHand  Standing = "on hand"    // lies in the shop
	Counted Standing = "reckoned"   // from the rack, its cutting plan, or lines above
	Tabled  Standing = "from table" // of the tables that come with the program
)

// Source says where a figure is from.
type Source struct {
	Standing Standing
	Text     string
	Line     int // of the design, where Standing is Stated or OnHand
}

// Input is a figure that a line's quantity is made of.
type Input struct {
	Name       string
	Hundredths int64
	Unit       string
	Source     Source
}

// Line is one line of a quote. Quantity, Rate and Per are in hundredths: of the
// Unit or of the currency, of the currency or of a percent, and of what the rate
// is for.
type Line struct {
	Section  Section
	What     string
	Quantity int64
	Unit     string // "" for an amount of the currency
	Rate     int64
	Percent  bool // Rate is a percent
	Per      int64
	Amount   int64 // cents
	Source   Source
	Inputs   []Input // what Quantity follows from
	Of       []Section
}

// Amount returns quantity times rate over per in whole cents, a half rounded
// up: what each line's amount is.
func Amount(quantity, rate, per int64) int64 {
	v := new(big.Int).Mul(big.NewInt(quantity), big.NewInt(rate))
	return v.Lsh(v, 1).Add(v, big.NewInt(per)).Quo(v, big.NewInt(2*per)).Int64()
}

// Quote is what a rack costs. All amounts are cents.
type Quote struct {
	Rack  *rack.Rack
	Cuts  *saw.Plan
	Lines []Line

	Costs  int64 // direct costs and overhead
	Price  int64 // of the rack: Costs and Profit
	Due    int64 // with delivery and tax
	Margin bool  // Profit is a margin on the price; else a markup on the costs

	Minutes   int64 // of labour, in hundredths
	Grams     int64 // of the rack as it stands; 0 where its wood's density is not known
	Assembled Parcel
	Flat      Parcel
}

// Sum returns what the lines of the sections add up to.
func (q *Quote) Sum(of ...Section) int64 {
	sum := int64(0)
	for _, l := range q.Lines {
		for _, s := range of {
			if l.Section == s {
				sum += l.Amount
			}
		}
	}
	return sum
}

// Examples reports whether an example figure stands behind any line.
func (q *Quote) Examples() bool {
	for _, l := range q.Lines {
		if l.Source.Standing == Example && l.Amount > 0 {
			return true
		}
		for _, in := range l.Inputs {
			if in.Source.Standing == Example {
				return true
			}
		}
	}
	return false
}

// Parcel returns the parcel in which the rack is sent.
func (q *Quote) Parcel() Parcel {
	if q.Rack.Design.Price.Flat {
		return q.Flat
	}
	return q.Assembled
}

// Weighed returns a rack's weight and parcels alone, without any price.
func Weighed(r *rack.Rack) *Quote {
	q := &Quote{Rack: r, Grams: weigh(r)}
	q.Assembled, q.Flat = assembled(r, q.Grams), flat(r, q.Grams)
	return q
}

// Make reckons a rack whose boards are cut by the plan.
func Make(r *rack.Rack, cuts *saw.Plan) *Quote {
	q := Weighed(r)
	q.Cuts = cuts
	q.wood()
	q.supplies()
	q.labour()
	q.add(Line{Section: Packing, What: "packing, " + q.Parcel().Name, Quantity: 100}, "packing")
	q.percent(Overhead, "overhead", "overhead", Direct()...)
	q.Costs = q.Sum(append(Direct(), Overhead)...)
	q.profit()
	q.Price = q.Costs + q.Sum(Profit)
	q.deliver()
	q.Due = q.Price + q.Sum(Delivery, Tax)
	return q
}
