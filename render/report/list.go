package report

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"slatwright/geometry/rack"
	"slatwright/geometry/saw"
)

// Parts returns the cut list: one row for each kind of part, sizes as they are
// printed on the drawings and in millimetres.
func Parts(r *rack.Rack) ([]byte, error) {
	u := r.Design.Units.String()
	rows := [][]string{{
		"mark", "part", "count", "spares", "thickness " + u, "width " + u, "length " + u,
		"thickness_mm", "width_mm", "length_mm", "stock", "grain", "cut after measuring",
	}}
	for _, p := range r.Parts {
		rows = append(rows, []string{
			p.Mark, p.Name, strconv.Itoa(p.Count), strconv.Itoa(saw.Spares(r, p.Name)),
			r.Format.Text(p.Thickness), r.Format.Text(p.Width), r.Format.Text(p.Length),
			p.Thickness.Decimal(), p.Width.Decimal(), p.Length.Decimal(), p.Stock, "along the length", strings.Join(r.Awaits(p), ", "),
		})
	}
	return encodeRows(rows)
}

// encodeRows writes rows as RFC 4180 asks.
func encodeRows(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	for _, row := range rows {
		for i, cell := range row {
			row[i] = guard(cell)
		}
		if err := w.Write(row); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// guard keeps a spreadsheet from taking text for a formula: text that begins
// like one gets an apostrophe before it, unless it is a plain number.
func guard(cell string) string {
	if cell == "" || !strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return cell
	}
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	return "'" + cell
}
