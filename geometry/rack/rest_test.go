package rack

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"slatwright/specs/unit"
)

// flt is a number of 200 bits: enough that rounding decides no comparison here.
func flt(l unit.Length) *big.Float { return new(big.Float).SetPrec(200).SetInt64(int64(l)) }

func plus(a, b *big.Float) *big.Float  { return new(big.Float).SetPrec(200).Add(a, b) }
func minus(a, b *big.Float) *big.Float { return new(big.Float).SetPrec(200).Sub(a, b) }
func half(a *big.Float) *big.Float     { return new(big.Float).SetPrec(200).Quo(a, big.NewFloat(2)) }

// cathetus is sqrt(a² − b²).
func cathetus(a, b *big.Float) *big.Float {
	q := minus(new(big.Float).SetPrec(200).Mul(a, a), new(big.Float).SetPrec(200).Mul(b, b))
	return new(big.Float).SetPrec(200).Sqrt(q)
}

// axis is h as the formula is printed, in binary floating point.
func axis(d, g, e unit.Length) *big.Float {
	return minus(cathetus(plus(half(flt(d)), flt(e)), plus(half(flt(g)), flt(e))), flt(e))
}

// ceil is the least whole length at or above x.
func ceil(x *big.Float) unit.Length {
	n, acc := x.Int64()
	if acc == big.Below {
		n++
	}
	return unit.Length(n)
}

func TestBoundsAgainstFloatingPoint(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	mm := func(lo, hi int64) unit.Length { return unit.Length(rng.Int64N((hi-lo)*80000)) + unit.Length(lo*80000) }
	for range 3000 {
		d := mm(60, 120)
		u := mm(60, 120)
		g := mm(20, 54)
		e := mm(0, 5)
		c := mm(0, 10)
		h := axis(d, g, e)
		if got, want := sagBound(d, g, e), ceil(minus(half(flt(d)), h)); got != want {
			t.Fatalf("sag of %d in %d eased %d: %d, want %d", d, g, e, got, want)
		}
		if got, want := standBound(d, g, e), ceil(plus(half(flt(d)), h)); got != want {
			t.Fatalf("stand of %d in %d eased %d: %d, want %d", d, g, e, got, want)
		}
		stack := plus(plus(half(flt(d)), h), minus(half(flt(u)), axis(u, g, e)))
		if got, want := stackBound(d, u, g, e), ceil(stack); got != want {
			t.Fatalf("stack of %d under %d in %d eased %d: %d, want %d", d, u, g, e, got, want)
		}
		corner := plus(h, cathetus(plus(half(flt(d)), flt(c)), half(flt(g))))
		if got, want := cornerBound(d, c, g, e), ceil(corner); got != want {
			t.Fatalf("corner of %d, %d clear, in %d eased %d: %d, want %d", d, c, g, e, got, want)
		}
	}
}

// A hand example: a 5 in bottle on a 4 in gap makes the 3-4-5 triangle, so its
// axis stands 1 1/2 in above the slats and it sags 1 in.
func TestRestByHand(t *testing.T) {
	in := unit.Inch
	if h, ok := AxisAbove(5*in, 4*in, 0); !ok || h != 3*in/2 {
		t.Errorf("axis %v, %v", h, ok)
	}
	if s := sagBound(5*in, 4*in, 0); s != in {
		t.Errorf("sag %v", s)
	}
	if _, ok := AxisAbove(4*in, 5*in, 0); ok {
		t.Error("a 4 in bottle lies on a 5 in gap")
	}
}

// The solver takes each bound to rise or fall over the whole range of the gap.
// The stack's once turned round where the upper bottle fell through, and a
// solution was lost there.
func TestBoundsNeverTurnRound(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 5))
	size := func(lo, hi int64) unit.Length { return unit.Length(lo+rng.Int64N(hi-lo)) * unit.Millimetre }
	for range 200 {
		lower, upper, clear, eased := size(50, 130), size(50, 130), size(0, 20), size(0, 12)
		for _, rule := range []struct {
			name    string
			falling bool
			bound   func(gap unit.Length) unit.Length
		}{
			{"stack", lower < upper, func(g unit.Length) unit.Length { return stackBound(lower, upper, g, eased) }},
			{"corner", true, func(g unit.Length) unit.Length { return cornerBound(lower, clear, g, eased) }},
			{"sag", false, func(g unit.Length) unit.Length { return sagBound(lower, g, eased) }},
			{"stand", true, func(g unit.Length) unit.Length { return standBound(lower, g, eased) }},
		} {
			last := rule.bound(0)
			for gap := unit.Millimetre; gap < 300*unit.Millimetre; gap += unit.Millimetre {
				b := rule.bound(gap)
				if rule.falling && b > last || !rule.falling && b < last {
					t.Fatalf("%s of %v under %v, eased %v, clear %v: %v at a gap of %v, after %v", rule.name, lower, upper, eased, clear, b, gap, last)
				}
				last = b
			}
		}
	}
}
