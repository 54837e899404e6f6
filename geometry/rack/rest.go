package rack

import (
	"math/big"

	"slatwright/specs/unit"
)

// How a bottle lies on two slats. A round body of diameter D rests in a gap g
// on slat corners eased by a radius e. With r = D/2 its axis stands
//
//	h = sqrt((r+e)² − (g/2+e)²) − e
//
// above the slat tops and its lowest point s = r − h below them: plane geometry
// of a circle touching two smaller ones. The functions here work on doubled
// lengths, so that half a diameter stays whole, and decide every comparison
// through whole-number squares.

// root holds the whole number under the square root of 2h + 2e, that is
// (D+2e)² − (g+2e)².
func root(diameter, gap, eased unit.Length) *big.Int {
	a := big.NewInt(int64(diameter + 2*eased))
	b := big.NewInt(int64(gap + 2*eased))
	return new(big.Int).Sub(a.Mul(a, a), b.Mul(b, b))
}

// rested is root for the bounds: a bottle that falls through is taken to hang
// between the slats by its middle, so that a gap which the maker has stated too
// wide still gives a drawing. The check of the rest says what is wrong then.
func rested(diameter, gap, eased unit.Length) *big.Int {
	q := root(diameter, gap, eased)
	if q.Sign() < 0 {
		q.SetInt64(0)
	}
	return q
}

// AxisAbove returns how far the axis of a bottle stands above the slat tops,
// rounded to the nearest base unit, for drawing; ok is false where the bottle
// falls through.
func AxisAbove(diameter, gap, eased unit.Length) (h unit.Length, ok bool) {
	q := root(diameter, gap, eased)
	if q.Sign() < 0 {
		return 0, false
	}
	twice := new(big.Int).Sqrt(q).Int64() - 2*int64(eased)
	return unit.Length(twice / 2), true
}

// leastHalf returns the least whole n for which enough(n) holds, where enough
// turns from false to true once, near guess.
func leastHalf(guess int64, enough func(n int64) bool) unit.Length {
	n := guess
	for enough(n) {
		n--
	}
	for !enough(n) {
		n++
	}
	return unit.Length(n)
}

// sagBound is the least whole length that is at least the sag.
func sagBound(diameter, gap, eased unit.Length) unit.Length {
	q := rested(diameter, gap, eased)
	full := int64(diameter + 2*eased)
	guess := (full - new(big.Int).Sqrt(q).Int64()) / 2
	return leastHalf(guess, func(n int64) bool {
		return squareAtMost(full-2*n, q) // 2n >= D + 2e − sqrt(q)
	})
}

// standBound is the least whole length that is at least the height of the
// bottle's highest point above the slat tops, r + h.
func standBound(diameter, gap, eased unit.Length) unit.Length {
	q := rested(diameter, gap, eased)
	base := int64(diameter - 2*eased)
	guess := (base + new(big.Int).Sqrt(q).Int64()) / 2
	return leastHalf(guess, func(n int64) bool {
		return squareAtLeast(2*n-base, q) // 2n >= D − 2e + sqrt(q)
	})
}

// stackBound is the least rise, less the clearance, at which an upper bottle
// stays clear of a lower one: r + h of the lower and s of the upper. Beyond the
// gap that either of them falls through it stays as it is there: a bound that
// turned round would break what the solver takes for granted.
func stackBound(lower, upper, gap, eased unit.Length) unit.Length {
	gap = min(gap, lower, upper)
	ql, qu := rested(lower, gap, eased), rested(upper, gap, eased)
	base := int64(lower + upper)
	guess := (base + new(big.Int).Sqrt(ql).Int64() - new(big.Int).Sqrt(qu).Int64()) / 2
	return leastHalf(guess, func(n int64) bool {
		return rootsApart(2*n-base, ql, qu) // 2n − (Dl+Du) >= sqrt(ql) − sqrt(qu)
	})
}

// cornerBound is the least rise, less the slat's height, at which the inner
// lower corner of the slats above stays the clearance away from the bottle:
// h + sqrt((r+c)² − (g/2)²).
func cornerBound(diameter, clearance, gap, eased unit.Length) unit.Length {
	q := rested(diameter, gap, eased)
	a := big.NewInt(int64(diameter + 2*clearance))
	b := big.NewInt(int64(gap))
	p := new(big.Int).Sub(a.Mul(a, a), b.Mul(b, b))
	if p.Sign() < 0 {
		p.SetInt64(0)
	}
	shift := 2 * int64(eased)
	guess := (new(big.Int).Sqrt(q).Int64() + new(big.Int).Sqrt(p).Int64() - shift) / 2
	return leastHalf(guess, func(n int64) bool {
		return rootsSum(2*n+shift, q, p) // 2n + 2e >= sqrt(q) + sqrt(p)
	})
}

// squareAtMost reports whether k <= sqrt(q).
func squareAtMost(k int64, q *big.Int) bool {
	if k <= 0 {
		return true
	}
	b := big.NewInt(k)
	return b.Mul(b, b).Cmp(q) <= 0
}

// squareAtLeast reports whether k >= sqrt(q).
func squareAtLeast(k int64, q *big.Int) bool {
	if k < 0 {
		return false
	}
	b := big.NewInt(k)
	return b.Mul(b, b).Cmp(q) >= 0
}

// rootsApart reports whether k >= sqrt(a) − sqrt(b).
func rootsApart(k int64, a, b *big.Int) bool {
	if k < 0 {
		// sqrt(b) >= sqrt(a) + |k|: square both sides, then the rest.
		return rootsApartBy(-k, b, a)
	}
	// k + sqrt(b) >= sqrt(a)  ⇔  2k·sqrt(b) >= a − b − k²
	kk := big.NewInt(k)
	rest := new(big.Int).Sub(a, b)
	rest.Sub(rest, new(big.Int).Mul(kk, kk))
	if rest.Sign() <= 0 {
		return true
	}
	left := new(big.Int).Mul(kk, kk)
	left.Mul(left, b).Lsh(left, 2)
	return left.Cmp(rest.Mul(rest, rest)) >= 0
}

// rootsApartBy reports whether sqrt(a) >= sqrt(b) + k for k > 0.
func rootsApartBy(k int64, a, b *big.Int) bool {
	// a >= b + k² + 2k·sqrt(b)
	kk := big.NewInt(k)
	rest := new(big.Int).Sub(a, b)
	rest.Sub(rest, new(big.Int).Mul(kk, kk))
	if rest.Sign() < 0 {
		return false
	}
	right := new(big.Int).Mul(kk, kk)
	right.Mul(right, b).Lsh(right, 2)
	return rest.Mul(rest, rest).Cmp(right) >= 0
}

// rootsSum reports whether k >= sqrt(a) + sqrt(b).
func rootsSum(k int64, a, b *big.Int) bool {
	if k < 0 {
		return false
	}
	// k² − a − b >= 2·sqrt(ab)
	kk := big.NewInt(k)
	rest := new(big.Int).Mul(kk, kk)
	rest.Sub(rest, a).Sub(rest, b)
	if rest.Sign() < 0 {
		return false
	}
	ab := new(big.Int).Mul(a, b)
	return rest.Mul(rest, rest).Cmp(ab.Lsh(ab, 2)) >= 0
}
