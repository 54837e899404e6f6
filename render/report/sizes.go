package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"slatwright/geometry/cutting"
	"slatwright/geometry/quote"
	"slatwright/geometry/sizes"
)

// SizesText returns a chart of sizes: a block of columns by rows for each
// figure, and why sizes are marked.
func SizesText(c sizes.Table) []byte {
	var b bytes.Buffer
	for _, s := range c.Head() {
		fmt.Fprintln(&b, s)
	}
	for _, block := range c.Blocks() {
		fmt.Fprintf(&b, "\n%s\n", block.Title)
		writeColumns(&b, strings.Repeat("r", len(block.Rows[0])), block.Rows)
	}
	if marks := c.Marks(); len(marks) > 0 {
		fmt.Fprintln(&b, "\nmarks, columns × rows")
		writeColumns(&b, "ll", marks)
	}
	for _, n := range c.Notes() {
		fmt.Fprintf(&b, "\n%s\n", n)
	}
	return b.Bytes()
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
				strconv.Itoa(s.Boards()), quote.Hundredths(q.Cuts.Cost), yes(q.Cuts.Proven), quote.Hundredths(q.Weight()), q.WeightUnit(),
				quote.Hundredths((q.Minutes + 30) / 60), quote.Hundredths(q.Price), quote.Hundredths(q.Due), q.Rack.Design.Price.Currency, yes(q.Examples()),
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
