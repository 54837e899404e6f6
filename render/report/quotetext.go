package report

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"slatwright/geometry/check"
	"slatwright/geometry/quote"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// InnerPage returns a quote for the maker: every cost with its quantity, rate
// and where the rate is from.
func InnerPage(q *quote.Quote, findings []check.Finding) []byte {
	var b bytes.Buffer
	w := quoteWriter{&b, q}
	w.line("INNER PAGE: costs, not for the customer")
	w.line("%s", RackLine(q.Rack))
	for _, f := range findings {
		if f.Status == check.Fail {
			w.line("  FAILS  %s, %s: %s", f.Name, f.Where, f.Says)
		}
	}
	w.materials(quote.Wood, "wood: whole boards, as the cutting plan takes them")
	w.materials(quote.Supplies, "supplies")
	w.labour()
	w.sums()
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

// RackLine says in one line what a rack is.
func RackLine(r *rack.Rack) string {
	name := strings.TrimSpace(r.Design.Order + "  " + r.Design.Title)
	if name == "" {
		name = r.Design.Source.Name
	}
	return fmt.Sprintf("%s: %s; %s wide, %s deep, %s high, %s", name, countsOf(r),
		r.Format.Unit(r.Len("rack.width")), r.Format.Unit(r.Len("rack.depth")), r.Format.Unit(r.Len("rack.height")), r.Design.Wood.Species.Name)
}

// countsOf says how many columns, rows and bottles there are.
func countsOf(r *rack.Rack) string {
	many := func(n int, what string) string {
		if n != 1 {
			what += "s"
		}
		return fmt.Sprintf("%d %s", n, what)
	}
	return many(r.Counts.Columns, "column") + ", " + many(r.Counts.Rows, "row") + ", " + many(r.Counts.Bottles, "bottle")
}

// lines returns those of a section.
func (w quoteWriter) lines(s quote.Section) []quote.Line {
	var out []quote.Line
	for _, l := range w.q.Lines {
		if l.Section == s {
			out = append(out, l)
		}
	}
	return out
}

// standing says in a word or two where a figure is from.
func standing(s quote.Source) string {
	switch s.Standing {
	case quote.Example:
		return "EXAMPLE"
	case quote.Stated:
		return fmt.Sprintf("line %d", s.Line)
	case quote.OnHand:
		return fmt.Sprintf("on hand, line %d", s.Line)
	}
	return string(s.Standing)
}

// short prints hundredths without zeros that say nothing.
func short(n int64) string {
	return strings.TrimSuffix(strings.TrimRight(hundredths(n), "0"), ".")
}

// rate says what a line's rate is for.
func rate(l quote.Line) string {
	if l.Per == 100 {
		return hundredths(l.Rate)
	}
	return hundredths(l.Rate) + " for " + short(l.Per)
}

// singular takes the ending off what is counted once.
func singular(l quote.Line) string {
	if l.Quantity == 100 {
		return strings.TrimSuffix(l.Unit, "s")
	}
	return l.Unit
}

// materials lists a section whose lines are quantities of something bought.
func (w quoteWriter) materials(s quote.Section, title string) {
	rows := [][]string{{"", "quantity", "", "rate", "amount", "rate from"}}
	yields := false
	for _, l := range w.lines(s) {
		row := []string{l.What, short(l.Quantity), singular(l), rate(l), hundredths(l.Amount), standing(l.Source)}
		for _, in := range l.Inputs {
			if in.Name == "yield" {
				row = append(row, short(in.Hundredths)+" %")
				yields = true
			}
		}
		rows = append(rows, row)
	}
	if yields {
		rows[0] = append(rows[0], "yield")
	}
	rows = append(rows, []string{"sum", "", "", "", hundredths(w.q.Sum(s))})
	if _, byVolume := w.q.Rack.Design.Price.Item("wood"); byVolume && s == quote.Wood {
		title = "wood: what the parts hold, over the yield"
	}
	w.line("\n%s", title)
	writeColumns(w.w, "lrlrrlr", rows)
}

// labour lists the operations with what their time is made of.
func (w quoteWriter) labour() {
	rows := [][]string{{"", "times", "setup", "pieces", "each", "min", "amount", "times from", "counted by"}}
	var rateText, rateFrom string
	for _, l := range w.lines(quote.Labour) {
		rateText, rateFrom = rate(l), standing(l.Source)
		row := []string{l.What, "", "", "", "", hundredths(l.Quantity), hundredths(l.Amount), standing(l.Inputs[0].Source)}
		if len(l.Inputs) == 4 {
			setup, times, each, pieces := l.Inputs[0], l.Inputs[1], l.Inputs[2], l.Inputs[3]
			row[1], row[2], row[3], row[4] = short(times.Hundredths), hundredths(setup.Hundredths), short(pieces.Hundredths), hundredths(each.Hundredths)
			if other := standing(each.Source); other != row[7] {
				row[7] += ", " + other
			}
			row = append(row, times.Name+"; "+pieces.Name)
		}
		rows = append(rows, row)
	}
	rows = append(rows, []string{fmt.Sprintf("sum, %s h", short((w.q.Minutes+30)/60)), "", "", "", "", hundredths(w.q.Minutes), hundredths(w.q.Sum(quote.Labour))})
	w.line("\nlabour at %s min, %s", rateText, rateFrom)
	writeColumns(w.w, "lrrrrrrll", rows)
}

// sums lists what comes of the direct costs.
func (w quoteWriter) sums() {
	q := w.q
	var rows [][]string
	total := func(name string, amount int64) { rows = append(rows, []string{name, "", w.money(amount)}) }
	list := func(s quote.Section) {
		for _, l := range w.lines(s) {
			share := ""
			if l.Percent {
				share = short(l.Rate) + " %"
			}
			rows = append(rows, []string{l.What, share, hundredths(l.Amount), standing(l.Source)})
		}
	}
	for _, s := range []quote.Section{quote.Wood, quote.Supplies, quote.Labour} {
		rows = append(rows, []string{string(s), "", hundredths(q.Sum(s))})
	}
	list(quote.Packing)
	total("direct costs", q.Sum(quote.Direct()...))
	list(quote.Overhead)
	total("costs", q.Costs)
	list(quote.Profit)
	total("PRICE", q.Price)
	if q.Due != q.Price {
		list(quote.Delivery)
		list(quote.Tax)
		total("TO PAY", q.Due)
	}
	w.line("\nprice")
	writeColumns(w.w, "lrrl", rows)
}

// money prints cents with the currency.
func (w quoteWriter) money(cents int64) string { return Money(w.q.Rack.Design, cents) }

// Money prints cents with the design's currency before them.
func Money(d *design.Design, cents int64) string {
	c := d.Price.Currency
	if c == "" {
		return hundredths(cents)
	}
	if last := []rune(c); unicode.IsLetter(last[len(last)-1]) {
		c += " "
	}
	return c + hundredths(cents)
}

// weight prints hundredths of pounds or kilograms, rounded up to tenths.
func (w quoteWriter) weight(n int64) string {
	if n == 0 {
		return "not known"
	}
	tenths := (n + 9) / 10
	return fmt.Sprintf("%d.%d %s", tenths/10, tenths%10, w.q.WeightUnit())
}

// parcels lists weight and carton, sent in either state.
func (w quoteWriter) parcels() {
	f := w.q.Rack.Format
	rows := [][]string{{"parcel", "outside, " + f.System.String(), "weight", "by volume", "chargeable"}}
	for _, p := range []quote.Parcel{w.q.Assembled, w.q.Flat} {
		row := []string{p.Name, fmt.Sprintf("%s × %s × %s", f.Text(p.Length), f.Text(p.Width), f.Text(p.Height)),
			w.weight(p.Gross), w.weight(p.ByVolume), fmt.Sprintf("%d %s", p.Chargeable, w.q.WeightUnit())}
		if p.Name == w.q.Parcel().Name {
			row = append(row, "<- reckoned with")
		}
		rows = append(rows, row)
	}
	w.line("\nweight and carton")
	w.line("  the rack itself: %s, wood at 12 %% moisture, without finish and fastenings", w.weight(w.q.Weight()))
	writeColumns(w.w, "lrrrrl", rows)
	p := w.q.Flat
	w.line("  flat: %s; %s over them, to be fixed on site", w.stack(p), loose(w.q.Rack))
	per := "cubic inches to the lb"
	if f.System == unit.Metric {
		per = "cubic cm to the kg"
	}
	from := "design, " + standing(p.Divided)
	if p.Divided.Standing == quote.Tabled {
		from = "usual, not looked up: ask your carrier"
	}
	w.line("  by volume: %d %s (%s); padding %s a side; chargeable is the greater weight, rounded up", p.Divisor, per, from, f.Unit(p.Padding))
}

// loose names what is not on the ladders of a rack that is sent flat.
func loose(r *rack.Rack) string {
	if r.HasTop() {
		return "aprons and top"
	}
	return "aprons"
}

// stack says how the ladders lie.
func (w quoteWriter) stack(p quote.Parcel) string {
	n := w.q.Rack.Counts.Ladders
	if !p.Nested {
		return fmt.Sprintf("%d ladders one on the other", n)
	}
	return fmt.Sprintf("%d ladders nested, every other one pushed along by %s", n, w.q.Rack.Format.Unit(p.Shift))
}

// CustomerPage returns a quote for the customer: no costs.
func CustomerPage(q *quote.Quote, findings []check.Finding) []byte {
	var b bytes.Buffer
	w := quoteWriter{&b, q}
	d, f := q.Rack.Design, q.Rack.Format
	w.line("QUOTE")
	if q.Examples() {
		w.line("DRAFT, NOT AN OFFER: example figures stand behind this price")
	}
	if check.Worst(findings) == check.Fail {
		w.line("DRAFT, NOT AN OFFER: a check of this rack fails")
	}
	var rows [][]string
	row := func(name, text string) {
		if text != "" {
			rows = append(rows, []string{name, text})
		}
	}
	row("rack", d.Title)
	row("order", d.Order)
	row("customer", d.Customer)
	row("date", d.Date)
	row("revision", d.Revision)
	row("holds", countsOf(q.Rack)+": "+strings.Join(bottleNames(q.Rack), ", "))
	row("overall", fmt.Sprintf("%s wide, %s deep, %s high", f.Unit(q.Rack.Len("rack.width")), f.Unit(q.Rack.Len("rack.depth")), f.Unit(q.Rack.Len("rack.height"))))
	row("made of", d.Wood.Species.Name+", "+finished(d))
	row("weight", w.weight(q.Weight())+" empty")
	p := q.Parcel()
	sent := fmt.Sprintf("%s, in one carton of %s × %s × %s, %s", p.Name, f.Text(p.Length), f.Text(p.Width), f.Unit(p.Height), w.weight(p.Gross))
	if d.Price.Flat {
		sent += "; " + loose(q.Rack) + " are fixed on site"
	}
	row("sent", sent)
	writeColumns(w.w, "ll", rows)
	w.line("")
	rows = [][]string{{"price", w.money(q.Price)}}
	for _, l := range slices.Concat(w.lines(quote.Delivery), w.lines(quote.Tax)) {
		name := l.What
		if l.Percent {
			name += ", " + short(l.Rate) + " %"
		}
		rows = append(rows, []string{name, w.money(l.Amount)})
	}
	if q.Due != q.Price {
		rows = append(rows, []string{"to pay", w.money(q.Due)})
	}
	writeColumns(w.w, "lr", rows)
	w.line("\nA tall or loaded rack can tip: it is anchored to the building as local codes and a licensed practitioner advise.")
	return b.Bytes()
}

// bottleNames lists the bottles that any cell is made for.
func bottleNames(r *rack.Rack) []string {
	var out []string
	for _, k := range r.Kinds {
		for _, fit := range k.Fit {
			for _, b := range fit {
				if name := cmp.Or(b.Name, b.ID); !slices.Contains(out, name) {
					out = append(out, name)
				}
			}
		}
	}
	return out
}

// finished says what is on the wood.
func finished(d *design.Design) string {
	var on []string
	if d.Finish.Stained() {
		on = append(on, d.Finish.Stain.Name)
	}
	switch n := d.Finish.Coats; {
	case n == 1:
		on = append(on, "a coat of "+d.Finish.Coat.Name)
	case n > 1:
		on = append(on, fmt.Sprintf("%d coats of %s", n, d.Finish.Coat.Name))
	}
	if len(on) == 0 {
		return "bare"
	}
	return strings.Join(on, ", ")
}
