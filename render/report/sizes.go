package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strconv"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/geometry/sizes"
	"slatwright/specs/unit"
)

// A measureOf is a figure of a size as a chart shows it.
type measureOf struct {
	title  string
	priced bool // only of sizes that can be cut
	of     func(s sizes.Size) string
}

// SizesText returns a chart of sizes: a block of columns by rows for each
// figure, and why sizes are marked.
func SizesText(list []sizes.Size, columns, rows sizes.Span) []byte {
	var b bytes.Buffer
	c := chart{&b, list, columns, rows}
	first, ok := c.first()
	if !ok {
		fmt.Fprintln(&b, "no size can be built")
		c.reasons()
		return b.Bytes()
	}
	d, f := first.Rack.Design, first.Rack.Format
	long, mass := "inches", "lb"
	if f.System == unit.Metric {
		long, mass = "millimetres", "kg"
	}
	fmt.Fprintf(&b, "%s: columns across, rows down; overall sizes in %s\n", sizesTitle(first.Rack), long)
	blocks := []measureOf{
		{"bottles", false, func(s sizes.Size) string { return strconv.Itoa(s.Rack.Counts.Bottles) }},
	}
	if !c.plain() {
		blocks = append(blocks, measureOf{"overall, width × depth × height, " + f.System.String(), false, func(s sizes.Size) string {
			return f.Text(s.Rack.Len("rack.width")) + " × " + f.Text(s.Rack.Len("rack.depth")) + " × " + f.Text(s.Rack.Len("rack.height"))
		}})
	} else {
		fmt.Fprintf(&b, "depth of all: %s\n", f.Unit(first.Rack.Len("rack.depth")))
	}
	currency := ""
	if d.Price.Currency != "" {
		currency = ", " + d.Price.Currency
	}
	blocks = append(blocks,
		measureOf{"boards to take", true, func(s sizes.Size) string { return strconv.Itoa(boardCount(s)) }},
		measureOf{"weight, " + mass, true, func(s sizes.Size) string { return tenths(s.Quote.Weight()) }},
		measureOf{"labour, hours", true, func(s sizes.Size) string { return tenths(s.Quote.Minutes / 60) }},
		measureOf{"price" + currency, true, func(s sizes.Size) string { return hundredths(s.Quote.Price) }},
	)
	for _, m := range blocks {
		c.block(m)
	}
	c.reasons()
	return b.Bytes()
}

func sizesTitle(r *rack.Rack) string {
	if r.Design.Title != "" {
		return r.Design.Title
	}
	return r.Design.Source.Name
}

// chart writes the blocks of a chart.
type chart struct {
	w             io.Writer
	list          []sizes.Size
	columns, rows sizes.Span
}

func (c chart) at(column, row int) sizes.Size {
	return c.list[(row-c.rows.Least)*c.columns.Len()+column-c.columns.Least]
}

// first returns the first size that has a price.
func (c chart) first() (sizes.Size, bool) {
	for _, s := range c.list {
		if s.Quote != nil {
			return s, true
		}
	}
	return sizes.Size{}, false
}

// plain reports whether the width follows from the columns alone, the height
// from the rows, and the depth is always the same.
func (c chart) plain() bool {
	first, _ := c.first()
	wide, high := map[int]unit.Length{}, map[int]unit.Length{}
	same := func(m map[int]unit.Length, n int, l unit.Length) bool {
		if _, ok := m[n]; !ok {
			m[n] = l
		}
		return m[n] == l
	}
	for _, s := range c.list {
		if s.Rack == nil {
			continue
		}
		if !same(wide, s.Columns, s.Rack.Len("rack.width")) || !same(high, s.Rows, s.Rack.Len("rack.height")) || s.Rack.Len("rack.depth") != first.Rack.Len("rack.depth") {
			return false
		}
	}
	return true
}

// block writes one figure of all sizes, with overall sizes at the edges where
// they are plain.
func (c chart) block(m measureOf) {
	head, wide := []string{"rows", ""}, []string{"", "overall"}
	align := "rr"
	plain := c.plain()
	for n := c.columns.Least; n <= c.columns.Most; n++ {
		head = append(head, strconv.Itoa(n)+" col")
		wide = append(wide, c.edge(func(s sizes.Size) bool { return s.Columns == n }, "rack.width"))
		align += "r"
	}
	rows := [][]string{head}
	if plain {
		rows = append(rows, wide)
	}
	for n := c.rows.Least; n <= c.rows.Most; n++ {
		row := []string{strconv.Itoa(n), ""}
		if plain {
			row[1] = c.edge(func(s sizes.Size) bool { return s.Rows == n }, "rack.height")
		}
		for k := c.columns.Least; k <= c.columns.Most; k++ {
			row = append(row, cell(c.at(k, n), m))
		}
		rows = append(rows, row)
	}
	fmt.Fprintf(c.w, "\n%s\n", m.title)
	writeColumns(c.w, align, rows)
}

// edge returns the length that all sizes of a column or row have.
func (c chart) edge(of func(sizes.Size) bool, name string) string {
	for _, s := range c.list {
		if s.Rack != nil && of(s) {
			return s.Rack.Format.Text(s.Rack.Len(name))
		}
	}
	return ""
}

// The marks of sizes that do not simply fit.
const (
	markNone  = " "
	markFails = "!"
	markNoFit = "-"
	markUncut = "?"
)

// cell returns the figure of a size with its mark.
func cell(s sizes.Size, m measureOf) string {
	switch {
	case s.Outcome == sizes.NoFit:
		return markNoFit + markNone
	case s.Outcome == sizes.Uncut && m.priced:
		return markUncut + markNone
	case s.Outcome == sizes.Uncut:
		return m.of(s) + markUncut
	case s.Outcome == sizes.Fails:
		return m.of(s) + markFails
	}
	return m.of(s) + markNone
}

// reasons says what the marks mean: each reason with the sizes it is about.
func (c chart) reasons() {
	examples, unproven := false, 0
	type reason struct{ mark, text string }
	var order []reason
	count, first := map[reason]int{}, map[reason]string{}
	for _, s := range c.list {
		if s.Quote != nil {
			examples = examples || s.Quote.Examples()
			if !s.Proven() {
				unproven++
			}
		}
		if s.Outcome == sizes.Fits {
			continue
		}
		r := reason{map[sizes.Outcome]string{sizes.Fails: markFails, sizes.NoFit: markNoFit, sizes.Uncut: markUncut}[s.Outcome], string(s.Outcome) + ": " + s.Why}
		if count[r]++; count[r] == 1 {
			order = append(order, r)
			first[r] = fmt.Sprintf("%d × %d", s.Columns, s.Rows)
		}
	}
	if len(order) > 0 {
		fmt.Fprintln(c.w, "\nmarks, columns × rows")
	}
	for _, r := range order {
		about := "size " + first[r]
		if count[r] > 1 {
			about = fmt.Sprintf("%d sizes, the first %s", count[r], first[r])
		}
		fmt.Fprintf(c.w, "  %s  %s (%s)\n", r.mark, r.text, about)
	}
	if unproven > 0 {
		fmt.Fprintf(c.w, "\nthe cutting plans of %d sizes are not proven: quote may find a lower price\n", unproven)
	}
	if examples {
		fmt.Fprintln(c.w, "\nEXAMPLE figures stand behind the prices: slatwright quote shows which; state your own under [price] and [[board]]")
	}
}

// tenths prints hundredths in tenths, rounded up; "?" for nothing known.
func tenths(n int64) string {
	if n == 0 {
		return "?"
	}
	n = (n + 9) / 10
	return fmt.Sprintf("%d.%d", n/10, n%10)
}

func boardCount(s sizes.Size) int {
	n := 0
	for _, b := range s.Quote.Cuts.Boards {
		n += b.Count
	}
	return n
}

// SizesCSV returns a chart of sizes, a row for each.
func SizesCSV(list []sizes.Size) ([]byte, error) {
	u := "in"
	for _, s := range list {
		if s.Rack != nil {
			u = s.Rack.Format.System.String()
		}
	}
	rows := [][]string{{
		"columns", "rows", "outcome", "why", "bottles", "width " + u, "depth " + u, "height " + u, "width_mm", "depth_mm", "height_mm",
		"boards", "board cost", "plan proven", "weight", "weight unit", "labour h", "price", "to pay", "currency", "example figures",
	}}
	for _, s := range list {
		row := make([]string, len(rows[0]))
		row[0], row[1], row[2], row[3] = strconv.Itoa(s.Columns), strconv.Itoa(s.Rows), string(s.Outcome), s.Why
		if r := s.Rack; r != nil {
			row[4] = strconv.Itoa(r.Counts.Bottles)
			for i, name := range []string{"rack.width", "rack.depth", "rack.height"} {
				row[5+i], row[8+i] = r.Format.Text(r.Len(name)), r.Len(name).Decimal()
			}
		}
		if q := s.Quote; q != nil {
			copy(row[11:], []string{
				strconv.Itoa(boardCount(s)), hundredths(q.Cuts.Cost), yes(q.Cuts.Proven), hundredths(q.Weight()), q.WeightUnit(),
				hundredths(q.Minutes / 60), hundredths(q.Price), hundredths(q.Due), q.Rack.Design.Price.Currency, yes(q.Examples()),
			})
		}
		rows = append(rows, row)
	}
	return encodeRows(rows)
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// The chart as it is written for other programs. Fields that a size has not are
// left out.
type (
	sizesFile struct {
		Format int        `json:"format"`
		Sizes  []sizeItem `json:"sizes"`
	}
	sizeItem struct {
		Columns int         `json:"columns"`
		Rows    int         `json:"rows"`
		Outcome string      `json:"outcome"`
		Why     string      `json:"why,omitempty"`
		Bottles int         `json:"bottles,omitempty"`
		Width   json.Number `json:"width_mm,omitempty"`
		Depth   json.Number `json:"depth_mm,omitempty"`
		Height  json.Number `json:"height_mm,omitempty"`
		*sizePriced
	}
	sizePriced struct {
		Boards     []sizeBoard `json:"boards"`
		BoardCost  json.Number `json:"board_cost"`
		Proven     bool        `json:"plan_proven"`
		Weight     json.Number `json:"weight"`
		WeightUnit string      `json:"weight_unit"`
		Minutes    json.Number `json:"labour_min"`
		Price      json.Number `json:"price"`
		Due        json.Number `json:"to_pay"`
		Examples   bool        `json:"examples"`
	}
	sizeBoard struct {
		Nominal string      `json:"nominal"`
		Length  json.Number `json:"length_mm"`
		Count   int         `json:"count"`
		OnHand  bool        `json:"on_hand"`
	}
)

// SizesJSON returns a chart of sizes for other programs.
func SizesJSON(list []sizes.Size) ([]byte, error) {
	f := sizesFile{Format: formatNumber}
	for _, s := range list {
		item := sizeItem{Columns: s.Columns, Rows: s.Rows, Outcome: string(s.Outcome), Why: s.Why}
		if r := s.Rack; r != nil {
			item.Bottles = r.Counts.Bottles
			item.Width, item.Depth, item.Height = mm(r.Len("rack.width")), mm(r.Len("rack.depth")), mm(r.Len("rack.height"))
		}
		if q := s.Quote; q != nil {
			item.sizePriced = &sizePriced{
				BoardCost: money(q.Cuts.Cost), Proven: q.Cuts.Proven, Weight: money(q.Weight()), WeightUnit: q.WeightUnit(),
				Minutes: money(q.Minutes), Price: money(q.Price), Due: money(q.Due), Examples: q.Examples(),
			}
			for _, n := range q.Cuts.Needs() {
				item.Boards = append(item.Boards, boardItem(n.Board, n.Count))
			}
		}
		f.Sizes = append(f.Sizes, item)
	}
	var b bytes.Buffer
	err := encode(&b, f, "  ")
	return b.Bytes(), err
}

func boardItem(b cutting.Board, count int) sizeBoard {
	return sizeBoard{b.Nominal, mm(b.Length), count, b.OnHand > 0}
}
