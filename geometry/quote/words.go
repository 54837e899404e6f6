package quote

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/specs/design"
	"slatwright/specs/unit"
	"slatwright/specs/word"
)

// Hundredths prints hundredths with two decimals.
func Hundredths(n int64) string { return fmt.Sprintf("%d.%02d", n/100, n%100) }

// Short is Hundredths without zeros that say nothing.
func Short(n int64) string {
	return strings.TrimSuffix(strings.TrimRight(Hundredths(n), "0"), ".")
}

// Money prints cents with the design's currency before them.
func Money(d *design.Design, cents int64) string {
	c := d.Price.Currency
	if c == "" {
		return Hundredths(cents)
	}
	if last := []rune(c); unicode.IsLetter(last[len(last)-1]) {
		c += " "
	}
	return c + Hundredths(cents)
}

// Word says in a word or two where a figure is from.
func (s Source) Word() string {
	switch s.Standing {
	case Example:
		return "EXAMPLE"
	case Stated:
		return fmt.Sprintf("line %d", s.Line)
	case OnHand:
		return fmt.Sprintf("on hand, line %d", s.Line)
	}
	return string(s.Standing)
}

// RateText says what the rate is, and for how many.
func (l Line) RateText() string {
	if l.Per == 100 {
		return Hundredths(l.Rate)
	}
	return Hundredths(l.Rate) + " for " + Short(l.Per)
}

// QuantityText says how many of what.
func (l Line) QuantityText() string {
	if l.Quantity == 100 && l.Unit == "board feet" {
		return "1 board foot"
	}
	if l.Quantity == 100 {
		return "1 " + strings.TrimSuffix(l.Unit, "s")
	}
	return strings.TrimSpace(Short(l.Quantity) + " " + l.Unit)
}

// In returns the lines of a section.
func (q *Quote) In(s Section) []Line {
	var out []Line
	for _, l := range q.Lines {
		if l.Section == s {
			out = append(out, l)
		}
	}
	return out
}

// WoodTitle says how the wood is reckoned.
func (q *Quote) WoodTitle() string {
	if _, byVolume := q.Rack.Design.Price.Item("wood"); byVolume {
		return "wood: what the parts hold, over the yield"
	}
	return "wood: whole boards, as the cutting plan takes them"
}

// WeightText prints hundredths of pounds or kilograms, rounded up to tenths.
func (q *Quote) WeightText(n int64) string {
	if n == 0 {
		return "not known"
	}
	tenths := (n + 9) / 10
	return fmt.Sprintf("%d.%d %s", tenths/10, tenths%10, q.WeightUnit())
}

// Outside prints the sides of a parcel.
func (p Parcel) Outside(f unit.Format) string {
	return fmt.Sprintf("%s × %s × %s", f.Text(p.Length), f.Text(p.Width), f.Text(p.Height))
}

// PackingNotes says how a flat rack lies in its parcel, and what the weights
// hang on.
func (q *Quote) PackingNotes() []string {
	p, f := q.Flat, q.Rack.Format
	lie := fmt.Sprintf("flat: %d ladders one on the other", q.Rack.Counts.Ladders)
	if p.Nested {
		lie = fmt.Sprintf("flat: %d ladders nested, every other one pushed along by %s", q.Rack.Counts.Ladders, f.Unit(p.Shift))
	}
	per := "cubic inches to the lb"
	if f.System == unit.Metric {
		per = "cubic cm to the kg"
	}
	from := "design, " + p.Divided.Word()
	if p.Divided.Standing == Tabled {
		from = "usual, not looked up: ask your carrier"
	}
	return []string{
		fmt.Sprintf("the rack itself: %s, wood at 12 %% moisture, without finish and fastenings", q.WeightText(q.Weight())),
		fmt.Sprintf("%s; %s over them, to be fixed on site", lie, loose(q.Rack)),
		fmt.Sprintf("by volume: %d %s (%s); padding %s a side; chargeable is the greater weight, rounded up", p.Divisor, per, from, f.Unit(p.Padding)),
	}
}

// loose names what is not on the ladders of a rack that is sent flat.
func loose(r *rack.Rack) string {
	if r.HasTop() {
		return "aprons and top"
	}
	return "aprons"
}

// RackLine says in one line what a rack is.
func RackLine(r *rack.Rack) string {
	name := strings.TrimSpace(r.Design.Order + "  " + r.Design.Title)
	if name == "" {
		name = r.Design.Source.Name
	}
	return fmt.Sprintf("%s: %s; %s, %s", name, countsOf(r), overall(r), r.Design.Wood.Species.Name)
}

func overall(r *rack.Rack) string {
	f := r.Format
	return fmt.Sprintf("%s wide, %s deep, %s high", f.Unit(r.Len("rack.width")), f.Unit(r.Len("rack.depth")), f.Unit(r.Len("rack.height")))
}

// countsOf says how many columns, rows and bottles there are.
func countsOf(r *rack.Rack) string {
	return word.Count(r.Counts.Columns, "column") + ", " + word.Count(r.Counts.Rows, "row") + ", " + word.Count(r.Counts.Bottles, "bottle")
}

// Drafts says why a quote is no offer, if it is none.
func (q *Quote) Drafts(findings []check.Finding) []string {
	var out []string
	if q.Examples() {
		out = append(out, "DRAFT, NOT AN OFFER: example figures stand behind this price")
	}
	if check.Worst(findings) == check.Fail {
		out = append(out, "DRAFT, NOT AN OFFER: a check of this rack fails")
	}
	return out
}

// Sent says how the rack is sent: in what state, in how large a carton, how heavy.
func (q *Quote) Sent() string {
	p, f := q.Parcel(), q.Rack.Format
	return fmt.Sprintf("%s, in one carton of %s %s, %s", p.Name, p.Outside(f), f.System, q.WeightText(p.Gross))
}

// Facts returns what the customer is told besides the price, a name and a text
// each. No cost is among them.
func (q *Quote) Facts() [][]string {
	r, d := q.Rack, q.Rack.Design
	sent := q.Sent()
	if d.Price.Flat {
		sent += "; " + loose(r) + " are fixed on site"
	}
	all := [][]string{
		{"rack", d.Title}, {"order", d.Order}, {"customer", d.Customer}, {"date", d.Date}, {"revision", d.Revision},
		{"holds", countsOf(r) + ": " + strings.Join(bottleNames(r), ", ")},
		{"overall", overall(r)},
		{"made of", d.Wood.Species.Name + ", " + finished(d)},
		{"weight", q.WeightText(q.Weight()) + " empty"},
		{"sent", sent},
	}
	return slices.DeleteFunc(all, func(row []string) bool { return row[1] == "" })
}

// Prices returns what the customer is asked for, a name and an amount each.
func (q *Quote) Prices() [][]string {
	d := q.Rack.Design
	rows := [][]string{{"price", Money(d, q.Price)}}
	for _, l := range slices.Concat(q.In(Delivery), q.In(Tax)) {
		name := l.What
		if l.Percent {
			name += ", " + Short(l.Rate) + " %"
		}
		rows = append(rows, []string{name, Money(d, l.Amount)})
	}
	if len(rows) > 1 {
		rows = append(rows, []string{"to pay", Money(d, q.Due)})
	}
	return rows
}

// Steps returns the way from the sums of costs to the price: a name, a share, an
// amount, and where the share is from.
func (q *Quote) Steps() [][]string {
	var rows [][]string
	total := func(name string, amount int64) {
		rows = append(rows, []string{name, "", Money(q.Rack.Design, amount), ""})
	}
	list := func(s Section) {
		for _, l := range q.In(s) {
			share := ""
			if l.Percent {
				share = Short(l.Rate) + " %"
			}
			rows = append(rows, []string{l.What, share, Hundredths(l.Amount), l.Source.Word()})
		}
	}
	for _, s := range []Section{Wood, Supplies, Labour} {
		rows = append(rows, []string{string(s), "", Hundredths(q.Sum(s)), ""})
	}
	list(Packing)
	total("direct costs", q.Sum(Direct()...))
	list(Overhead)
	total("costs", q.Costs)
	list(Profit)
	total("PRICE", q.Price)
	if len(q.In(Delivery))+len(q.In(Tax)) > 0 {
		list(Delivery)
		list(Tax)
		total("TO PAY", q.Due)
	}
	return rows
}

// Work returns the lines of labour: the operation, settings and time of each,
// pieces and time of each, minutes, amount, where the times are from, and what
// is counted. The last row is the sum.
func (q *Quote) Work() [][]string {
	var rows [][]string
	for _, l := range q.In(Labour) {
		row := []string{l.What, "", "", "", "", Hundredths(l.Quantity), Hundredths(l.Amount), l.Inputs[0].Source.Word(), ""}
		if len(l.Inputs) == 4 {
			setup, times, each, pieces := l.Inputs[0], l.Inputs[1], l.Inputs[2], l.Inputs[3]
			copy(row[1:], []string{Short(times.Hundredths), Hundredths(setup.Hundredths), Short(pieces.Hundredths), Hundredths(each.Hundredths)})
			if other := each.Source.Word(); other != row[7] {
				row[7] += ", " + other
			}
			row[8] = times.Name + "; " + pieces.Name
		}
		rows = append(rows, row)
	}
	sum := fmt.Sprintf("sum, %s h", Short((q.Minutes+30)/60))
	return append(rows, []string{sum, "", "", "", "", Hundredths(q.Minutes), Hundredths(q.Sum(Labour)), "", ""})
}

// Hourly says at what rate the work is reckoned, and where that is from.
func (q *Quote) Hourly() string {
	l := q.In(Labour)
	if len(l) == 0 {
		return "labour"
	}
	return fmt.Sprintf("labour at %s min, %s", l[0].RateText(), l[0].Source.Word())
}

// Anchoring is what every customer is told.
const Anchoring = "A tall or loaded rack can tip: it is anchored to the building as local codes and a licensed practitioner advise."

// bottleNames lists the bottles that any cell is made for.
func bottleNames(r *rack.Rack) []string {
	var out []string
	for _, k := range r.Kinds {
		for _, fit := range k.Fit {
			for _, b := range fit {
				if !slices.Contains(out, b.Name) {
					out = append(out, b.Name)
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
		stain := d.Finish.Stain.Name
		if c := d.Finish.Colour; c != "" {
			stain += " (" + c + ")"
		}
		on = append(on, stain)
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
