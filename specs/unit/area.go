package unit

import (
	"math/big"
	"strconv"
)

// Area is an exact area in squares of the base unit. The zero Area is nothing.
// Areas are values: no method changes its receiver.
type Area struct{ n *big.Int }

// Rectangle returns the area of a rectangle, exactly; sides count without
// their signs.
func Rectangle(a, b Length) Area {
	n := big.NewInt(int64(a.Abs()))
	return Area{n.Mul(n, big.NewInt(int64(b.Abs())))}
}

// value returns the number of squares, not to be changed.
func (a Area) value() *big.Int {
	if a.n == nil {
		return new(big.Int)
	}
	return a.n
}

// Plus returns a + b.
func (a Area) Plus(b Area) Area { return Area{new(big.Int).Add(a.value(), b.value())} }

// Minus returns a - b, which may be negative.
func (a Area) Minus(b Area) Area { return Area{new(big.Int).Sub(a.value(), b.value())} }

// Times returns n times a.
func (a Area) Times(n int) Area {
	return Area{new(big.Int).Mul(a.value(), big.NewInt(int64(n)))}
}

// Cmp returns -1, 0 or 1 as a is less than, equal to or greater than b.
func (a Area) Cmp(b Area) int { return a.value().Cmp(b.value()) }

// Over returns a divided by b, exactly. It panics where b is zero.
func (a Area) Over(b Area) *big.Rat { return new(big.Rat).SetFrac(a.value(), b.value()) }

// The units that areas are printed in.
var (
	SquareFoot  = Rectangle(Foot, Foot)
	SquareInch  = Rectangle(Inch, Inch)
	SquareMetre = Rectangle(1000*Millimetre, 1000*Millimetre)
)

// AreaUnit returns the abbreviation of the unit that areas are printed in.
func (s System) AreaUnit() string {
	if s == Metric {
		return "m²"
	}
	return "sq ft"
}

// Area returns a as it is printed, with its unit.
func (f Format) Area(a Area) string { return f.AreaText(a) + " " + f.System.AreaUnit() }

// AreaText returns a as it is printed: in tenths of a square foot or in
// hundredths of a square metre, halves away from zero, without its unit and
// with "≈" before it where it was rounded.
func (f Format) AreaText(a Area) string {
	one, steps := SquareFoot, 10
	if f.System == Metric {
		one, steps = SquareMetre, 100
	}
	r := a.Times(steps).Over(one)
	places := len(strconv.Itoa(steps)) - 1
	text := new(big.Rat).Quo(r, big.NewRat(int64(steps), 1)).FloatString(places)
	if !r.IsInt() {
		return About + text
	}
	return text
}
