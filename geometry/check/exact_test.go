package check

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	"slatwright/specs/unit"
)

// wide is a floating-point number of 300 bits: enough that the sign of a sum of
// two roots of these sizes is never in doubt unless the sum is 0.
func wide(n int64) *big.Float { return new(big.Float).SetPrec(300).SetInt64(n) }

func root(n *big.Int) *big.Float {
	f := new(big.Float).SetPrec(300).SetInt(n)
	return f.Sqrt(f)
}

// The exact comparisons agree with floating point of 300 bits.
func TestNotNegativeAgainstFloatingPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		A := unit.Length(rapid.Int64Range(-40_000_000, 40_000_000).Draw(t, "A"))
		a := big.NewInt(rapid.Int64Range(0, 200_000_000_000_000).Draw(t, "a"))
		b := big.NewInt(rapid.Int64Range(0, 200_000_000_000_000).Draw(t, "b"))
		sum := new(big.Float).Add(wide(int64(A)), root(a))
		sum.Sub(sum, root(b))
		if got, want := notNegative(A, a, b), sum.Sign() >= 0; got != want {
			t.Fatalf("notNegative(%d, %s, %s) = %v; want %v", A, a, b, got, want)
		}
		floor, _ := new(big.Float).Quo(sum, wide(2)).Int64()
		if got := int64(half(A, a, b)); got > floor+1 || got < floor-2 {
			t.Fatalf("half(%d, %s, %s) = %d; want about %d, not more", A, a, b, got, floor)
		}
	})
}

// Equality holds: whole roots make sums of exactly 0.
func TestNotNegativeAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		A, a, b int64
		want    bool
	}{
		{0, 0, 0, true}, {-3, 9, 0, true}, {-4, 9, 0, false}, {3, 0, 9, true}, {2, 0, 9, false},
		{-1, 25, 16, true}, {-2, 25, 16, false}, {1, 16, 25, true}, {0, 16, 25, false}, {5, 0, 0, true}, {-5, 0, 0, false},
		{-1, 2, 0, true}, {-2, 2, 0, false}, {-1, 8, 3, true}, {-2, 8, 3, false}, // √2 = 1.41, √8 − √3 = 1.10
	} {
		if got := notNegative(unit.Length(c.A), big.NewInt(c.a), big.NewInt(c.b)); got != c.want {
			t.Errorf("%d + √%d − √%d >= 0: %v; want %v", c.A, c.a, c.b, got, c.want)
		}
	}
}

func TestCoversRootAgainstFloatingPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-400_000_000_000_000, 400_000_000_000_000).Draw(t, "n")
		B := rapid.Int64Range(-20_000_000, 20_000_000).Draw(t, "B")
		q := big.NewInt(rapid.Int64Range(0, 200_000_000_000_000).Draw(t, "q"))
		right := new(big.Float).Mul(wide(2*B), root(q))
		if got, want := coversRoot(big.NewInt(n), unit.Length(B), q), wide(n).Cmp(right) >= 0; got != want {
			t.Fatalf("coversRoot(%d, %d, %s) = %v; want %v", n, B, q, got, want)
		}
	})
}

func TestPrinted(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{ratio(3, 4, false), "0.75"}, {ratio(2, 3, false), "0.666"}, {ratio(2, 3, true), "0.667"}, {ratio(4, 4, true), "1"},
		{decimal(0, 3), "0"}, {decimal(1050, 3), "1.05"}, {micro(unit.Millimetre*6 - 1), "5.999"}, {micro(-1), "-0.001"},
	} {
		if c.got != c.want {
			t.Errorf("got %s; want %s", c.got, c.want)
		}
	}
}
