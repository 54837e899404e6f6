package finish

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"

	"slatwright/geometry/rack"
	"slatwright/specs/table"
	"slatwright/specs/unit"
)

// Panel is how the top is made up in width. The zero value is a top from one
// board, or none.
type Panel struct {
	Tops               int // so made, spares included
	Staves             int // in one
	StaveWidth, Length unit.Length
}

// GluedUp reports whether the top is made of staves.
func (p Panel) GluedUp() bool { return p.Tops > 0 && p.Staves > 1 }

// Joints returns the area between staves, each joint counted once.
func (p Panel) Joints(r *rack.Rack) unit.Area {
	if !p.GluedUp() {
		return unit.Area{}
	}
	return unit.Rectangle(p.Length, r.Len("top.thickness")).Times(p.Tops * (p.Staves - 1))
}

// bench is the most that parts lying side by side take of a bench (the
// project's own).
const bench = 1200 * unit.Millimetre

// Abreast returns how many parts of the row lie side by side on the bench, at
// least one.
func (w Row) Abreast() int { return max(1, min(w.Count, int(bench/w.Across))) }

// tapeOver is how far tape reaches over the outer parts at either end (common
// practice, no source).
const tapeOver = unit.Inch

// Tape is masking tape of one width.
type Tape struct{ Wide, Long unit.Length }

// Tapes returns the tape that covers what stays bare, by its width, narrow first,
// a tenth more of each for what is lost (common practice, no source); none where
// nothing is finished. A strip across parts takes their widths and what reaches
// over; a patch that ends within its face is taped along its longer side, and so
// is a face that is bare from end to end.
func Tapes(r *rack.Rack) []Tape {
	if f := r.Design.Finish; f.Coats == 0 && !f.Stained() {
		return nil
	}
	var list []Tape
	add := func(wide, long unit.Length) {
		k := slices.IndexFunc(list, func(t Tape) bool { return t.Wide == wide })
		if k < 0 {
			list, k = append(list, Tape{Wide: wide}), len(list)
		}
		list[k].Long += long
	}
	for _, w := range Rows(r) {
		for _, s := range w.Strips {
			if w.Whole() && s.To-s.From < w.Length {
				n := unit.Length((w.Count + w.Abreast() - 1) / w.Abreast())
				add(s.To-s.From, unit.Length(w.Count)*w.Across+2*n*tapeOver)
				continue
			}
			a, b := s.To-s.From, s.High-s.Low
			add(min(a, b), unit.Length(w.Count)*max(a, b))
		}
	}
	for i := range list {
		list[i].Long += list[i].Long / 10
	}
	slices.SortFunc(list, func(a, b Tape) int { return cmp.Compare(a.Wide, b.Wide) })
	return list
}

// CoverageText prints a coverage in the unit of the design: square feet to the
// US gallon, or tenths of a square metre to the litre, rounded to the nearest.
func CoverageText(sys unit.System, c table.Coverage) string {
	if sys != unit.Metric {
		return c.String()
	}
	// A square foot is 0.3048² m², exactly; the gallon is in millilitres.
	v := new(big.Rat).Mul(big.NewRat(c.SquareFeet, 1), big.NewRat(9_290_304, 100_000_000))
	v.Mul(v, big.NewRat(1000, 1)).Quo(v, gallon)
	return fmt.Sprintf("%s m² to the litre", v.FloatString(1))
}
