package sheet

import (
	"strings"

	"slatwright/geometry/sizes"
	"slatwright/render/drawing"
	"slatwright/render/typeface"
)

// Sizes composes a chart of sizes: each figure as a block of columns by rows,
// in several beside each other's place where the paper is too narrow for all
// columns. The input's rack is any of the chart; its design names the sheets.
func Sizes(in Input, t sizes.Table) ([]*drawing.Sheet, error) {
	f := &flow{in: in, name: "sizes", title: "Sizes"}
	f.notes(t.Head()...)
	for _, b := range t.Blocks() {
		for _, l := range sizeLedgers(b, f.in.room().W()) {
			f.block(b.Title, l)
		}
	}
	for _, m := range t.Marks() {
		f.notes(m[0] + "  " + m[1])
	}
	f.notes(t.Notes()...)
	return numbered(f.pages)
}

// sizeLedgers cuts a block into ledgers that are no wider than the paper, each
// with the block's first columns.
func sizeLedgers(b sizes.Block, width drawing.Um) []ledger {
	edge := b.Heads
	wide := make([]drawing.Um, len(b.Rows[0]))
	for _, row := range b.Rows {
		for i, cell := range row {
			wide[i] = max(wide[i], typeface.Width(drawing.Plain(cell), drawing.TableHeight, false)+ledgerGap+drawing.MM)
		}
	}
	var out []ledger
	for from := edge; from < len(wide); {
		l := ledger{}
		sum := drawing.Um(0)
		to := from
		for i := range edge {
			sum += wide[i]
		}
		for to < len(wide) && (to == from || sum+wide[to] <= width) {
			sum += wide[to]
			to++
		}
		pick := func(row []string) []string {
			var cells []string
			for _, c := range append(append([]string{}, row[:edge]...), row[from:to]...) {
				cells = append(cells, strings.TrimSpace(c))
			}
			return append(cells, "")
		}
		for i, title := range pick(b.Rows[0])[:edge+to-from] {
			k := i
			if i >= edge {
				k = from + i - edge
			}
			l.columns = append(l.columns, ledgerColumn{title: title, width: wide[k], right: true, small: true})
		}
		l.columns = append(l.columns, ledgerColumn{small: true}) // what is left of the width
		for _, row := range b.Rows[1:] {
			l.rows = append(l.rows, pick(row))
		}
		out = append(out, l)
		from = to
	}
	return out
}
