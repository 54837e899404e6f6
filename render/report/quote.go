package report

import (
	"bytes"
	"encoding/json"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
)

// The quote as it is written. Every line's amount is quantity * rate / per,
// rounded to the cent with halves up, and the sums are sums of amounts.
type (
	quoteFile struct {
		Format   int           `json:"format"`
		Title    string        `json:"title"`
		Order    string        `json:"order"`
		Customer string        `json:"customer"`
		Revision string        `json:"revision"`
		Mark     string        `json:"mark"`
		Units    string        `json:"units"`
		Status   string        `json:"status"`
		Currency string        `json:"currency"`
		Examples bool          `json:"examples"` // example figures stand behind the price
		Profit   string        `json:"profit"`   // "markup" on the costs or "margin" on the price
		Lines    []quoteLine   `json:"lines"`
		Sums     quoteSums     `json:"sums"`
		Minutes  json.Number   `json:"labour_min"`
		Weight   quoteWeight   `json:"weight"`
		Sent     string        `json:"sent"` // name of the parcel that is reckoned with
		Parcels  []quoteParcel `json:"parcels"`
	}
	quoteSource struct {
		Standing string `json:"standing"`
		Source   string `json:"source"`
		Line     int    `json:"line,omitempty"`
	}
	quoteInput struct {
		Name  string      `json:"name"`
		Value json.Number `json:"value"`
		Unit  string      `json:"unit,omitempty"`
		quoteSource
	}
	quoteLine struct {
		Section  string       `json:"section"`
		What     string       `json:"what"`
		Quantity json.Number  `json:"quantity"`
		Unit     string       `json:"unit"` // "currency" for an amount
		Rate     json.Number  `json:"rate"`
		RateIn   string       `json:"rate_in"` // "currency" or "%"
		Per      json.Number  `json:"per"`
		Amount   json.Number  `json:"amount"`
		Of       []string     `json:"of,omitempty"` // sections whose amounts make up the quantity
		Inputs   []quoteInput `json:"inputs,omitempty"`
		quoteSource
	}
	quoteSums struct {
		Direct json.Number `json:"direct"`
		Costs  json.Number `json:"costs"`
		Price  json.Number `json:"price"`
		Due    json.Number `json:"to_pay"`
	}
	quoteWeight struct {
		Rack json.Number `json:"rack"`
		Unit string      `json:"unit"`
		Says string      `json:"says"`
	}
	quoteParcel struct {
		Name       string      `json:"name"`
		Length     json.Number `json:"length_mm"`
		Width      json.Number `json:"width_mm"`
		Height     json.Number `json:"height_mm"`
		Padding    json.Number `json:"padding_mm"`
		Shift      json.Number `json:"shift_mm"`
		Nested     bool        `json:"nested"`
		Gross      json.Number `json:"weight"`
		ByVolume   json.Number `json:"by_volume"`
		Divisor    int         `json:"divisor"`
		Divided    quoteSource `json:"divisor_from"`
		Chargeable int64       `json:"chargeable"`
		Unit       string      `json:"unit"`
	}
)

// QuoteJSON returns a quote for other programs, with the inputs of every line.
func QuoteJSON(q *quote.Quote, findings []check.Finding) ([]byte, error) {
	d := q.Rack.Design
	f := quoteFile{
		Format: formatNumber, Title: d.Title, Order: d.Order, Customer: d.Customer, Revision: d.Revision, Mark: Mark(q.Rack),
		Units: d.Units.String(), Status: string(check.Worst(findings)), Currency: d.Price.Currency, Examples: q.Examples(), Profit: "markup",
		Sums:    quoteSums{money(q.Sum(quote.Direct()...)), money(q.Costs), money(q.Price), money(q.Due)},
		Minutes: money(q.Minutes), Weight: quoteWeight{money(q.Weight()), q.WeightUnit(), weightSays},
		Sent: q.Parcel().Name,
	}
	if q.Margin {
		f.Profit = "margin"
	}
	for _, l := range q.Lines {
		f.Lines = append(f.Lines, lineOf(l))
	}
	for _, p := range []quote.Parcel{q.Assembled, q.Flat} {
		f.Parcels = append(f.Parcels, quoteParcel{
			p.Name, json.Number(p.Length.Decimal()), json.Number(p.Width.Decimal()), json.Number(p.Height.Decimal()),
			json.Number(p.Padding.Decimal()), json.Number(p.Shift.Decimal()), p.Nested, money(p.Gross), money(p.ByVolume),
			p.Divisor, sourceOf(p.Divided), p.Chargeable, q.WeightUnit(),
		})
	}
	var b bytes.Buffer
	err := encode(&b, f, "  ")
	return b.Bytes(), err
}

// weightSays says what a rack's weight leaves out.
const weightSays = "wood at 12 % moisture; finish, glue and fastenings left out; 0 where the density is not known"

func sourceOf(s quote.Source) quoteSource {
	return quoteSource{string(s.Standing), s.Text, s.Line}
}

func lineOf(l quote.Line) quoteLine {
	out := quoteLine{
		Section: string(l.Section), What: l.What, Quantity: money(l.Quantity), Unit: l.Unit, Rate: money(l.Rate), RateIn: "currency",
		Per: money(l.Per), Amount: money(l.Amount), quoteSource: sourceOf(l.Source),
	}
	if l.Percent {
		out.Unit, out.RateIn = "currency", "%"
	}
	for _, s := range l.Of {
		out.Of = append(out.Of, string(s))
	}
	for _, in := range l.Inputs {
		out.Inputs = append(out.Inputs, quoteInput{in.Name, money(in.Hundredths), in.Unit, sourceOf(in.Source)})
	}
	return out
}
