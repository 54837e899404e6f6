package sheet_test

import (
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
	"slatwright/geometry/sizes"
	"slatwright/render/drawing"
	"slatwright/render/sheet"
)

// texts joins all lettering of sheets.
func texts(sheets []*drawing.Sheet) string {
	var all []string
	for _, s := range sheets {
		for _, m := range s.Marks {
			if t, ok := m.(drawing.Text); ok {
				all = append(all, t.String())
			}
		}
	}
	return strings.Join(all, "\n")
}

// The quote of every demo design can be read; the customer's sheet has the price
// and no cost, the inner ones every amount.
func TestQuoteSheets(t *testing.T) {
	for name, r := range demos(t) {
		in := sheet.Input{Rack: r, Findings: check.All(r), Mark: "0123abcd", Cutting: planned(t, r)}
		q := quote.Make(r, in.Cutting)
		customer, err := sheet.CustomerQuote(in, q)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		inner, err := sheet.InnerQuote(in, q)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, s := range append(customer, inner...) {
			for _, f := range drawing.Legible(s) {
				t.Errorf("%s: %v", name, f)
			}
		}
		page, costs := texts(customer), texts(inner)
		if !strings.Contains(page, quote.Money(r.Design, q.Price)) || !strings.Contains(page, "NOT AN OFFER") {
			t.Errorf("%s: the customer's sheet is not whole:\n%s", name, page)
		}
		for _, l := range q.Lines {
			amount := quote.Hundredths(l.Amount)
			if !strings.Contains(costs, amount) {
				t.Errorf("%s: the inner sheets have no %s for %s", name, amount, l.What)
			}
		}
		for _, s := range append(quote.Direct(), quote.Overhead, quote.Profit) {
			if amount := quote.Hundredths(q.Sum(s)); strings.Contains(page, amount) {
				t.Errorf("%s: the customer reads what %s costs, %s", name, s, amount)
			}
		}
	}
}

// A chart too wide and too long for one sheet shows every size.
func TestSizesSheets(t *testing.T) {
	r := demos(t)["harbour-small.toml"]
	columns, rows := sizes.Span{Least: 1, Most: 16}, sizes.Span{Least: 1, Most: 3}
	list, err := sizes.Chart(r.Design, columns, rows)
	if err != nil {
		t.Fatal(err)
	}
	sheets, err := sheet.Sizes(sheet.Input{Rack: r, Mark: "0123abcd"}, sizes.Table{Sizes: list, Columns: columns, Rows: rows})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range sheets {
		for _, f := range drawing.Legible(s) {
			t.Error(f)
		}
	}
	all := texts(sheets)
	for _, s := range list {
		if price := quote.Hundredths(s.Quote.Price); !strings.Contains(all, price) {
			t.Errorf("%d x %d: no price %s", s.Columns, s.Rows, price)
		}
	}
}
