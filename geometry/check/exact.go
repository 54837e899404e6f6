package check

import (
	"math/big"
	"strconv"

	"slatwright/specs/unit"
)

// A round body of diameter D on slats a gap g apart, their corners eased by a
// radius e, stands with its axis h above the slat tops:
//
//	2h + 2e = √q,  q = (D+2e)² − (g+2e)²
//
// from the right-angled triangle of the bottle's axis, a corner's centre and
// the middle of the gap. All sums here are of doubled lengths, so that half a
// diameter is whole. They have the form A + √a − √b and are decided exactly.

// under returns q. It is negative where the bottle falls through; then nothing
// holds the bottle and 0 is returned with falls set: it hangs by its middle.
func under(diameter, gap, eased unit.Length) (q *big.Int, falls bool) {
	bottle := square(diameter + 2*eased)
	q = bottle.Sub(bottle, square(gap+2*eased))
	if q.Sign() < 0 {
		return new(big.Int), true
	}
	return q, false
}

func square(l unit.Length) *big.Int {
	n := big.NewInt(int64(l))
	return n.Mul(n, n)
}

// notNegative reports whether A + √a − √b >= 0, for a and b not negative.
func notNegative(A unit.Length, a, b *big.Int) bool {
	// A + √a >= √b. Both sides are squared only where neither is negative.
	rest := new(big.Int).Sub(b, a)
	rest.Sub(rest, square(A)) // b − a − A²
	if A >= 0 {
		return atLeast(A, a, rest) // 2A√a >= b − a − A²
	}
	// √a >= √b + |A|, that is a − b − A² >= 2|A|√b.
	left := new(big.Int).Sub(a, b)
	left.Sub(left, square(A))
	return left.Sign() >= 0 && left.Mul(left, left).Cmp(fourfold(A, b)) >= 0
}

// atLeast reports whether 2A√a >= n, for A and a not negative.
func atLeast(A unit.Length, a, n *big.Int) bool {
	if n.Sign() <= 0 {
		return true
	}
	return fourfold(A, a).Cmp(new(big.Int).Mul(n, n)) >= 0
}

// fourfold returns 4A²a, the square of 2A√a.
func fourfold(A unit.Length, a *big.Int) *big.Int {
	n := square(A)
	n.Mul(n, a)
	return n.Lsh(n, 2)
}

// half returns (A + √a − √b)/2 rounded down, off by a base unit at most: a
// figure to print, which decides nothing.
func half(A unit.Length, a, b *big.Int) unit.Length {
	down := new(big.Int).Sqrt(a).Int64()
	up := rootUp(b)
	return unit.Length(int64(A)+down-up).Down(2) / 2
}

// rootUp returns √n rounded up.
func rootUp(n *big.Int) int64 {
	r := new(big.Int).Sqrt(n)
	if new(big.Int).Mul(r, r).Cmp(n) < 0 {
		return r.Int64() + 1
	}
	return r.Int64()
}

// ratio prints num/den to three decimals, rounded down or up, for num not
// negative and den positive.
func ratio(num, den unit.Length, up bool) string {
	n := int64(num) * 1000
	t := n / int64(den)
	if up && n%int64(den) != 0 {
		t++
	}
	return decimal(t, 3)
}

// decimal prints n / 10^places without trailing zeros, for n not negative.
func decimal(n int64, places int) string {
	whole := int64(1)
	for range places {
		whole *= 10
	}
	text := strconv.FormatInt(n/whole, 10)
	rest := strconv.FormatInt(n%whole+whole, 10)[1:]
	for len(rest) > 0 && rest[len(rest)-1] == '0' {
		rest = rest[:len(rest)-1]
	}
	if rest == "" {
		return text
	}
	return text + "." + rest
}
