package assembly

import (
	"math/big"

	"slatwright/geometry/rack"
	"slatwright/specs/unit"
)

// Diagonal is a rectangle to be checked for square: both its diagonals must
// measure alike.
type Diagonal struct {
	Name, Between string      // of what, and between which corners
	A, B          unit.Length // its sides
	Length        unit.Length // of the diagonal, as far as a tape is read
	Exact         bool        // whether that is no rounded figure
	Apart         unit.Length // by how much the two may differ
}

// Diagonals returns the rectangles to check, in the order of the glue-ups. Two
// diagonals may differ by the shop's tolerance at either end of the tape.
func Diagonals(r *rack.Rack) []Diagonal {
	list := []Diagonal{
		{Name: "ladder", Between: "outer corners of the legs", A: r.Len("slat.length"), B: r.Len("leg.length")},
		{Name: "carcase, front and back", Between: "outer corners of the end legs", A: r.Len("carcase.width"), B: r.Len("leg.length")},
		{Name: "carcase, from above", Between: "ends of the aprons", A: r.Len("carcase.width"), B: r.Len("carcase.depth")},
	}
	for i := range list {
		d := &list[i]
		d.Length, d.Exact = hypotenuse(d.A, d.B, tape(r.Format.System))
		d.Apart = 2 * r.Design.Shop.Tolerance
	}
	return list
}

// tape is how finely a tape is read.
func tape(sys unit.System) unit.Length {
	if sys == unit.Metric {
		return unit.Millimetre
	}
	return unit.Inch / 32
}

// hypotenuse returns the root of a² + b² to the nearest step, decided in whole
// numbers, and whether it is exact.
func hypotenuse(a, b, step unit.Length) (unit.Length, bool) {
	square := func(l unit.Length) *big.Int {
		n := big.NewInt(int64(l))
		return n.Mul(n, n)
	}
	sum := new(big.Int).Add(square(a), square(b))
	down := unit.Length(new(big.Int).Sqrt(sum).Int64()).Down(step)
	// Past the middle between two steps it is nearer to the upper one: compare
	// four times the sum with the square of twice the middle.
	if new(big.Int).Lsh(sum, 2).Cmp(square(2*down+step)) >= 0 {
		down += step
	}
	return down, sum.Cmp(square(down)) == 0
}

// Text prints the diagonal as a tape shows it, with the sign for a rounded
// figure where it is one.
func (d Diagonal) Text(sys unit.System) string {
	text := unit.Format{System: sys, Finest: tape(sys)}.Text(d.Length)
	if !d.Exact {
		return unit.About + text
	}
	return text
}
