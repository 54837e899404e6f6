package report

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
)

// InnerPage returns a quote for the maker: every cost with its quantity, rate
// and where the rate is from.
func InnerPage(q *quote.Quote, findings []check.Finding) []byte {
	var b bytes.Buffer
	w := quoteWriter{&b, q}
	w.line("INNER PAGE: costs, not for the customer")
	w.line("%s", quote.RackLine(q.Rack))
	for _, f := range findings {
		if f.Status == check.Fail {
			w.line("  FAILS  %s, %s: %s", f.Name, f.Where, f.Says)
		}
	}
	w.line("\n%s", q.WoodTitle())
	w.materials(quote.Wood)
	w.line("\nsupplies")
	w.materials(quote.Supplies)
	w.line("\n%s", q.Hourly())
	titles := []string{"", "times", "setup", "pieces", "each", "min", "amount", "times from", "counted by"}
	writeColumns(w.w, "lrrrrrrll", append([][]string{titles}, q.Work()...))
	w.line("\nprice")
	writeColumns(w.w, "lrrl", q.Steps())
	w.parcels()
	if q.Examples() {
		w.line("\nEXAMPLE marks figures invented for this program: state your own under [price], [price.minutes] and [[board]]")
	}
	return b.Bytes()
}

// quoteWriter writes the blocks of a quote.
type quoteWriter struct {
	w io.Writer
	q *quote.Quote
}

func (w quoteWriter) line(format string, args ...any) { fmt.Fprintf(w.w, format+"\n", args...) }

// materials lists a section whose lines are quantities of something bought.
func (w quoteWriter) materials(s quote.Section) {
	rows := [][]string{{"", "quantity", "", "rate", "amount", "rate from"}}
	yield := ""
	for _, row := range w.q.Materials(s) {
		count, unit, _ := strings.Cut(row[1], " ") // set apart, so that counts stand under each other
		rows = append(rows, slices.Concat(row[:1], []string{count, unit}, row[2:]))
		if row[5] != "" {
			yield = "yield"
		}
	}
	rows[0] = append(rows[0], yield)
	writeColumns(w.w, "lrlrrlr", rows)
}

// parcels lists weight and carton, sent in either state.
func (w quoteWriter) parcels() {
	f := w.q.Rack.Format
	rows := [][]string{{"parcel", "outside, " + f.System.String(), "weight", "by volume", "chargeable"}}
	for _, row := range w.q.Cartons() {
		if row[5] != "" {
			row[5] = "<- " + row[5]
		}
		rows = append(rows, row)
	}
	w.line("\nweight and carton")
	notes := w.q.PackingNotes()
	w.line("  %s", notes[0])
	writeColumns(w.w, "lrrrrl", rows)
	for _, n := range notes[1:] {
		w.line("  %s", n)
	}
}

// CustomerPage returns a quote for the customer: no costs.
func CustomerPage(q *quote.Quote, findings []check.Finding) []byte {
	var b bytes.Buffer
	w := quoteWriter{&b, q}
	w.line("QUOTE")
	for _, s := range q.Drafts(findings) {
		w.line("%s", s)
	}
	writeColumns(w.w, "ll", q.Facts())
	w.line("")
	writeColumns(w.w, "lr", q.Prices())
	w.line("\n%s", quote.Anchoring)
	return b.Bytes()
}
