package solve

import (
	"math"
	"math/big"
	"math/bits"
)

// rat is an exact rational number. It works in 64 bits and goes over to
// big.Rat by itself where they do not hold the result, so that no operation
// ever rounds. The zero value is 0.
type rat struct {
	n    int64
	dec  int64    // denominator less one
	wide *big.Rat // in use when not nil; then it does not fit in n and dec
}

func whole(n int64) rat { return rat{n: n} }

// ratio returns n/d for d > 0.
func ratio(n, d int64) rat {
	g := gcd(n, d)
	return rat{n: n / g, dec: d/g - 1}
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	if a < 0 {
		return -a
	}
	return a
}

func (a rat) den() int64 { return a.dec + 1 }

func (a rat) big() *big.Rat {
	if a.wide != nil {
		return a.wide
	}
	return big.NewRat(a.n, a.den())
}

// narrow takes a fresh big.Rat back into 64 bits where it fits, so that equal
// numbers have one form.
func narrow(b *big.Rat) rat {
	if b.Num().IsInt64() && b.Denom().IsInt64() && b.Num().Int64() != math.MinInt64 {
		return rat{n: b.Num().Int64(), dec: b.Denom().Int64() - 1}
	}
	return rat{wide: b}
}

func (a rat) sign() int {
	switch {
	case a.wide != nil:
		return a.wide.Sign()
	case a.n > 0:
		return 1
	case a.n < 0:
		return -1
	}
	return 0
}

func (a rat) isZero() bool  { return a.n == 0 && a.wide == nil }
func (a rat) isWhole() bool { return a.wide == nil && a.dec == 0 || a.wide != nil && a.wide.IsInt() }

func (a rat) neg() rat {
	if a.wide != nil {
		return narrow(new(big.Rat).Neg(a.wide))
	}
	return rat{n: -a.n, dec: a.dec}
}

func (a rat) abs() rat {
	if a.sign() < 0 {
		return a.neg()
	}
	return a
}

func (a rat) add(b rat) rat {
	if a.wide == nil && b.wide == nil {
		if s, ok := addSmall(a, b); ok {
			return s
		}
	}
	return narrow(new(big.Rat).Add(a.big(), b.big()))
}

func addSmall(a, b rat) (rat, bool) {
	if a.dec == 0 && b.dec == 0 {
		s, ok := addInt(a.n, b.n)
		return rat{n: s}, ok
	}
	ad, bd := a.den(), b.den()
	g := gcd(ad, bd)
	x, ok1 := mulInt(a.n, bd/g)
	y, ok2 := mulInt(b.n, ad/g)
	n, ok3 := addInt(x, y)
	d, ok4 := mulInt(ad/g, bd)
	if !ok1 || !ok2 || !ok3 || !ok4 {
		return rat{}, false
	}
	return ratio(n, d), true
}

func (a rat) sub(b rat) rat { return a.add(b.neg()) }

func (a rat) mul(b rat) rat {
	if a.wide == nil && b.wide == nil {
		if a.n == 0 || b.n == 0 {
			return rat{}
		}
		ad, bd := a.den(), b.den()
		g, h := gcd(a.n, bd), gcd(b.n, ad)
		n, ok1 := mulInt(a.n/g, b.n/h)
		d, ok2 := mulInt(ad/h, bd/g)
		if ok1 && ok2 {
			return rat{n: n, dec: d - 1}
		}
	}
	return narrow(new(big.Rat).Mul(a.big(), b.big()))
}

// inv returns 1/a; a must not be nought.
func (a rat) inv() rat {
	switch {
	case a.wide != nil:
		return narrow(new(big.Rat).Inv(a.wide))
	case a.n < 0:
		return rat{n: -a.den(), dec: -a.n - 1}
	}
	return rat{n: a.den(), dec: a.n - 1}
}

func (a rat) quo(b rat) rat { return a.mul(b.inv()) }

func (a rat) cmp(b rat) int {
	if a.wide != nil || b.wide != nil {
		return a.big().Cmp(b.big())
	}
	if a.dec == b.dec {
		return cmpInt(a.n, b.n)
	}
	if s, t := a.sign(), b.sign(); s != t {
		return cmpInt(int64(s), int64(t))
	}
	h1, l1 := bits.Mul64(uint64(absInt(a.n)), uint64(b.den()))
	h2, l2 := bits.Mul64(uint64(absInt(b.n)), uint64(a.den()))
	c := 0
	switch {
	case h1 != h2:
		c = 1 - 2*b2i(h1 < h2)
	case l1 != l2:
		c = 1 - 2*b2i(l1 < l2)
	}
	if a.n < 0 {
		return -c
	}
	return c
}

func (a rat) less(b rat) bool { return a.cmp(b) < 0 }
func (a rat) eq(b rat) bool   { return a.cmp(b) == 0 }

func (a rat) floor() rat {
	if a.isWhole() {
		return a
	}
	if a.wide != nil {
		// Div is Euclidean, which for a positive divisor is the floor.
		return narrow(new(big.Rat).SetInt(new(big.Int).Div(a.wide.Num(), a.wide.Denom())))
	}
	return whole(floorDiv(a.n, a.den()))
}

func (a rat) ceil() rat { return a.neg().floor().neg() }

// denominator returns the denominator in lowest terms.
func (a rat) denominator() rat {
	if a.wide == nil {
		return whole(a.den())
	}
	return narrow(new(big.Rat).SetInt(a.wide.Denom()))
}

// int returns a whole a that fits in 64 bits.
func (a rat) int() (int64, bool) {
	return a.n, a.wide == nil && a.dec == 0
}

func cmpInt(a, b int64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

func absInt(a int64) int64 {
	if a < 0 {
		return -a
	}
	return a
}

func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b != 0 && (a < 0) != (b < 0) {
		q--
	}
	return q
}

func ceilDiv(a, b int64) int64 { return -floorDiv(-a, b) }

// addInt and mulInt refuse MinInt64 too, so that a result can be negated.
func addInt(a, b int64) (int64, bool) {
	s := a + b
	return s, (s > a) == (b > 0) && s != math.MinInt64
}

func mulInt(a, b int64) (int64, bool) {
	if a == 0 || b == 0 {
		return 0, true
	}
	hi, lo := bits.Mul64(uint64(absInt(a)), uint64(absInt(b)))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if (a < 0) != (b < 0) {
		return -int64(lo), true
	}
	return int64(lo), true
}
