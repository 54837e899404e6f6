package sizes

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"slatwright/geometry/quote"
	"slatwright/specs/design"
	"slatwright/specs/unit"
)

// Table is a chart laid out for people: what Chart returned for the spans.
type Table struct {
	Sizes         []Size
	Columns, Rows Span
}

// Block is one figure of all sizes. The first row holds titles; all rows are of
// one length, and begin with cells that say what the row is of.
type Block struct {
	Title string
	Heads int // cells before the first of a number of columns
	Rows  [][]string
}

// figure is what a block shows of a size.
type figure struct {
	title  string
	priced bool // only of sizes that can be cut
	of     func(s Size) string
}

// Boards returns how many boards the cutting plan takes. The size must have a
// quote.
func (s Size) Boards() int {
	n := 0
	for _, b := range s.Quote.Cuts.Boards {
		n += b.Count
	}
	return n
}

// first returns the first size that fits at all.
func (t Table) first() (Size, bool) {
	for _, s := range t.Sizes {
		if s.Rack != nil {
			return s, true
		}
	}
	return Size{}, false
}

// Head returns the lines over a chart.
func (t Table) Head() []string {
	first, ok := t.first()
	if !ok {
		return []string{"no size can be built"}
	}
	name := first.Rack.Design.Title
	if name == "" {
		name = first.Rack.Design.Source.Name
	}
	lines := []string{fmt.Sprintf("%s: columns across, rows down; overall sizes in %s", name, first.Rack.Format.System.Name())}
	if t.plain() {
		lines = append(lines, "depth of all: "+first.Rack.Format.Unit(first.Rack.Len("rack.depth")))
	}
	return lines
}

// Blocks returns the figures of a chart: bottles, overall size where it does not
// stand at the edges, boards, weight, labour, price. There are none where no
// size fits.
func (t Table) Blocks() []Block {
	first, ok := t.first()
	if !ok {
		return nil
	}
	f, mass, price := first.Rack.Format, "lb", "price"
	if f.System == unit.Metric {
		mass = "kg"
	}
	if c := first.Rack.Design.Price.Currency; c != "" {
		price += ", " + c
	}
	figures := []figure{{"bottles", false, func(s Size) string { return strconv.Itoa(s.Rack.Counts.Bottles) }}}
	if !t.plain() {
		figures = append(figures, figure{"overall, width × depth × height, " + f.System.String(), false, func(s Size) string {
			return f.Text(s.Rack.Len("rack.width")) + " × " + f.Text(s.Rack.Len("rack.depth")) + " × " + f.Text(s.Rack.Len("rack.height"))
		}})
	}
	figures = append(figures,
		figure{"boards to take", true, func(s Size) string { return strconv.Itoa(s.Boards()) }},
		figure{"weight, " + mass, true, func(s Size) string { return tenths(s.Quote.Weight()) }},
		figure{"labour, hours", true, func(s Size) string { return hours(s.Quote.Minutes) }},
		figure{price, true, func(s Size) string { return quote.Hundredths(s.Quote.Price) }},
	)
	var out []Block
	for _, x := range figures {
		out = append(out, t.block(x))
	}
	return out
}

// plain reports whether the width follows from the columns alone, the height
// from the rows, and the depth is always the same.
func (t Table) plain() bool {
	wide, high, deep := map[int]unit.Length{}, map[int]unit.Length{}, map[int]unit.Length{}
	same := func(m map[int]unit.Length, n int, l unit.Length) bool {
		if _, ok := m[n]; !ok {
			m[n] = l
		}
		return m[n] == l
	}
	for _, s := range t.Sizes {
		if r := s.Rack; r != nil && !(same(wide, s.Columns, r.Len("rack.width")) && same(high, s.Rows, r.Len("rack.height")) && same(deep, 0, r.Len("rack.depth"))) {
			return false
		}
	}
	return true
}

// block lays out one figure, with overall sizes at the edges where they are
// plain.
func (t Table) block(x figure) Block {
	plain := t.plain()
	row := func(first, edge string) []string {
		if plain {
			return []string{first, edge}
		}
		return []string{first}
	}
	head, wide := row("rows", "overall"), row("", "")
	for n := t.Columns.Least; n <= t.Columns.Most; n++ {
		head = append(head, strconv.Itoa(n)+" col ")
		wide = append(wide, t.edge(func(s Size) bool { return s.Columns == n }, "rack.width")+markNone)
	}
	b := Block{Title: x.title, Heads: len(row("", "")), Rows: [][]string{head}}
	if plain {
		b.Rows = append(b.Rows, wide)
	}
	for n := t.Rows.Least; n <= t.Rows.Most; n++ {
		cells := row(strconv.Itoa(n), t.edge(func(s Size) bool { return s.Rows == n }, "rack.height"))
		for k := range t.Columns.Len() {
			cells = append(cells, x.cell(t.Sizes[(n-t.Rows.Least)*t.Columns.Len()+k]))
		}
		b.Rows = append(b.Rows, cells)
	}
	return b
}

// edge returns the length that all sizes of a column or row have.
func (t Table) edge(of func(Size) bool, name string) string {
	for _, s := range t.Sizes {
		if s.Rack != nil && of(s) {
			return s.Rack.Format.Text(s.Rack.Len(name))
		}
	}
	return ""
}

// The marks behind the figures of sizes that do not simply fit.
const (
	markNone  = " "
	markFails = "!"
	markNoFit = "-"
	markUncut = "?"
)

// cell returns the figure of a size with its mark.
func (x figure) cell(s Size) string {
	switch {
	case s.Outcome == NoFit:
		return markNoFit + markNone
	case s.Outcome == Uncut && x.priced:
		return markUncut + markNone
	case s.Outcome == Uncut:
		return x.of(s) + markUncut
	case s.Outcome == Fails:
		return x.of(s) + markFails
	}
	return x.of(s) + markNone
}

// Marks says what the marks mean: a mark, and a reason with the sizes it is
// about.
func (t Table) Marks() [][]string {
	type reason struct{ mark, text string }
	var order []reason
	count, first := map[reason]int{}, map[reason]string{}
	marks := map[Outcome]string{Fails: markFails, NoFit: markNoFit, Uncut: markUncut}
	for _, s := range t.Sizes {
		if s.Outcome == Fits {
			continue
		}
		r := reason{marks[s.Outcome], string(s.Outcome) + ": " + s.Why}
		if count[r]++; count[r] == 1 {
			order = append(order, r)
			first[r] = fmt.Sprintf("%d × %d", s.Columns, s.Rows)
		}
	}
	var out [][]string
	for _, r := range order {
		about := "size " + first[r]
		if count[r] > 1 {
			about = fmt.Sprintf("%d sizes, the first %s", count[r], first[r])
		}
		out = append(out, []string{r.mark, r.text + " (" + about + ")"})
	}
	return out
}

// Notes returns what else is to be said of the figures.
func (t Table) Notes() []string {
	examples, unproven := false, 0
	for _, s := range t.Sizes {
		if s.Quote != nil {
			examples = examples || s.Quote.Examples()
			if !s.Proven() {
				unproven++
			}
		}
	}
	out := t.described()
	if unproven > 0 {
		out = append(out, fmt.Sprintf("the cutting plans of %d sizes are not proven: quote may find a lower price", unproven))
	}
	if examples {
		out = append(out, "EXAMPLE figures stand behind the prices: slatwright quote shows which; state your own under [price] and [[board]]")
	}
	return out
}

// described says how the columns of a chart are made up where the design
// describes some of them; nothing where it does not.
func (t Table) described() []string {
	var own []design.Count
	some := false
	for _, s := range t.Sizes {
		if s.Rack == nil {
			continue
		}
		for i := range s.Rack.Design.Columns {
			some = true
			c, said := s.Rack.Design.Count(fmt.Sprintf("column.%d.rows", i+1))
			if said && !slices.ContainsFunc(own, func(o design.Count) bool { return o.Name == c.Name }) {
				own = append(own, c)
			}
		}
	}
	if !some {
		return nil
	}
	out := []string{"columns are counted from the left: those of the [[column]]s first, then columns as the rest of the file has them"}
	if len(own) > 0 {
		slices.SortFunc(own, func(a, b design.Count) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
		out = append(out, "columns that state their rows keep them, whatever the rows of the chart: "+quoted(own))
	}
	return out
}

// hours prints hundredths of minutes as the nearest tenth of an hour; "?" for
// nothing known. A quote sums its hours the same way.
func hours(n int64) string {
	if n == 0 {
		return "?"
	}
	n = (n + 300) / 600
	return fmt.Sprintf("%d.%d", n/10, n%10)
}

// tenths prints hundredths in tenths, rounded up as weights of parcels are; "?"
// for nothing known.
func tenths(n int64) string {
	if n == 0 {
		return "?"
	}
	n = (n + 9) / 10
	return fmt.Sprintf("%d.%d", n/10, n%10)
}
