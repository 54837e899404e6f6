package unit

import "math/big"

// Volume returns a by b by c in cubes of the base unit, exactly.
func Volume(a, b, c Length) *big.Int {
	v := new(big.Int).Mul(big.NewInt(int64(a)), big.NewInt(int64(b)))
	return v.Mul(v, big.NewInt(int64(c)))
}

// RoundUp returns the least whole number that is not below v, which must not be
// negative.
func RoundUp(v *big.Rat) int64 {
	n := new(big.Int).Add(v.Num(), v.Denom())
	n.Sub(n, big.NewInt(1))
	return n.Quo(n, v.Denom()).Int64()
}
