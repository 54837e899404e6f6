package sheet

import (
	"slatwright/geometry/check"
	"slatwright/geometry/quote"
	"slatwright/render/drawing"
)

// CustomerQuote composes the sheet that goes to the customer: what the rack is,
// what is asked for it, and no cost.
func CustomerQuote(in Input, q *quote.Quote) ([]*drawing.Sheet, error) {
	f := &flow{in: in, name: "quote", title: "Quote"}
	w := f.turn()
	for _, s := range q.Drafts(in.Findings) {
		w.heading(s)
	}
	w.skip(2 * drawing.MM)
	f.block("the rack", ledger{columns: []ledgerColumn{{width: 40 * drawing.MM, bold: true}, {}}, rows: q.Facts()})
	prices := ledger{columns: []ledgerColumn{{width: 84 * drawing.MM}, {title: "amount", width: 50 * drawing.MM, right: true, bold: true}, {}}}
	for _, row := range q.Prices() {
		prices.rows = append(prices.rows, append(row, ""))
	}
	f.block("the price", prices)
	f.notes(quote.Anchoring)
	return numbered(f.pages)
}

// InnerQuote composes the maker's sheets: every cost with its quantity, its rate
// and where that is from.
func InnerQuote(in Input, q *quote.Quote) ([]*drawing.Sheet, error) {
	f := &flow{in: in, name: "quote-inner", title: "Quote: costs, inner"}
	for _, x := range in.Findings {
		if x.Status == check.Fail {
			f.notes("FAILS " + x.Name + ", " + x.Where + ": " + x.Says)
		}
	}
	f.block(q.WoodTitle(), materialCosts(q, quote.Wood))
	f.block("supplies", materialCosts(q, quote.Supplies))
	f.block(q.Hourly(), workCosts(q))
	f.block("price", ledger{columns: []ledgerColumn{
		{title: "", small: true}, {title: "share", width: 22 * drawing.MM, right: true, small: true},
		{title: "amount", width: 34 * drawing.MM, right: true, small: true}, {title: "from", width: 40 * drawing.MM, small: true},
	}, rows: q.Steps()})
	f.block("weight and carton", parcelSizes(in, q))
	f.notes(q.PackingNotes()...)
	if q.Examples() {
		f.notes("EXAMPLE marks figures invented for this program: state your own under [price], [price.minutes] and [[board]].")
	}
	return numbered(f.pages)
}

// materialCosts lists a section whose lines are quantities of something bought.
func materialCosts(q *quote.Quote, s quote.Section) ledger {
	l := ledger{rows: q.Materials(s), columns: []ledgerColumn{
		{title: "", small: true}, {title: "quantity", width: 30 * drawing.MM, right: true, small: true}, {title: "rate", width: 36 * drawing.MM, right: true, small: true},
		{title: "amount", width: 24 * drawing.MM, right: true, small: true}, {title: "rate from", width: 36 * drawing.MM, small: true},
		{title: "yield", width: 16 * drawing.MM, right: true, small: true},
	}}
	if s != quote.Wood {
		l.columns[5].title = ""
	}
	return l
}

// workCosts lists the operations with what their time is made of.
func workCosts(q *quote.Quote) ledger {
	right := func(title string, width drawing.Um) ledgerColumn {
		return ledgerColumn{title: title, width: width * drawing.MM, right: true, small: true}
	}
	return ledger{columns: []ledgerColumn{
		{title: "", small: true}, right("times", 14), right("setup, min", 20), right("pieces", 16), right("each, min", 20), right("min", 20), right("amount", 22),
		{title: "times from", width: 30 * drawing.MM, small: true}, {title: "counted by", width: 64 * drawing.MM, small: true},
	}, rows: q.Work()}
}

// parcelSizes lists the two states in which a rack can be sent.
func parcelSizes(in Input, q *quote.Quote) ledger {
	right := func(title string) ledgerColumn {
		return ledgerColumn{title: title, width: 32 * drawing.MM, right: true, small: true}
	}
	return ledger{rows: q.Cartons(), columns: []ledgerColumn{
		{title: "parcel", small: true}, {title: "outside, " + in.Rack.Format.System.String(), width: 48 * drawing.MM, right: true, small: true},
		right("weight"), right("by volume"), right("chargeable"), {title: "", width: 36 * drawing.MM, small: true},
	}}
}
