package finish

import (
	"fmt"
	"math/big"

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

// Tape returns the length of tape that covers what stays bare, a tenth more for
// what is lost (common practice, no source); 0 where nothing is finished. A
// strip across parts takes their widths and what reaches over; a patch that
// ends within its face takes its longer side.
func Tape(r *rack.Rack) unit.Length {
	if f := r.Design.Finish; f.Coats == 0 && !f.Stained() {
		return 0
	}
	sum := unit.Length(0)
	for _, w := range Rows(r) {
		if w.Whole() && len(w.Strips) > 0 && w.Strips[0].To-w.Strips[0].From < w.Length {
			n := unit.Length((w.Count + w.Abreast() - 1) / w.Abreast())
			sum += unit.Length(len(w.Strips)) * (unit.Length(w.Count)*w.Across + 2*n*tapeOver)
			continue
		}
		for _, s := range w.Strips {
			sum += unit.Length(w.Count) * max(s.To-s.From, s.High-s.Low)
		}
	}
	return sum + sum/10
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
