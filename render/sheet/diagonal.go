package sheet

import (
	"math/big"

	"slatwright/render/drawing"
	"slatwright/specs/unit"
)

// diagonalOf returns the diagonal of a rectangle, for checking it square, as
// far as a tape is read: to 1/32 in or 1 mm, with the sign for a rounded figure
// where it is not exact. It is sqrt(a² + b²), found in whole numbers.
func diagonalOf(f unit.Format, a, b length) (printed length, text string) {
	square := func(l length) *big.Int {
		n := big.NewInt(int64(l))
		return n.Mul(n, n)
	}
	sum := new(big.Int).Add(square(a), square(b))
	root := new(big.Int).Sqrt(sum)
	whole := new(big.Int).Mul(root, root).Cmp(sum) == 0
	step := unit.Inch / 32
	if f.System == unit.Metric {
		step = unit.Millimetre
	}
	// The root rounded down is off by less than a base unit, which does not
	// change what it rounds to unless it lies on a half: then it is short of it
	// only where the root is not whole, and the true one lies above.
	l := length(root.Int64())
	printed = l.Nearest(step)
	text = unit.Format{System: f.System, Finest: step}.Text(printed)
	if !whole || printed != l {
		text = unit.About + text
	}
	return printed, text
}

// noted records a figure that stands in a note at a place.
func noted(s *drawing.Sheet, at drawing.Point, v length, text string) {
	s.Dims = append(s.Dims, drawing.DimRecord{Role: drawing.Note, Value: v, Printed: text, From: at, To: at, ScaleNum: 1, ScaleDen: 1})
}
