package unit

import (
	"math/big"
	"testing"
)

func TestVolume(t *testing.T) {
	// A litre overflows 64 bits: 8,000,000 base units cubed.
	if got, want := Volume(100*Millimetre, 100*Millimetre, 100*Millimetre).String(), "512000000000000000000"; got != want {
		t.Errorf("a litre is %s; want %s", got, want)
	}
	if got := Volume(2, 3, 5); got.Cmp(big.NewInt(30)) != 0 {
		t.Errorf("2 by 3 by 5 is %v; want 30", got)
	}
}

func TestRoundUp(t *testing.T) {
	for _, c := range []struct{ num, den, want int64 }{{0, 1, 0}, {1, 7, 1}, {7, 7, 1}, {8, 7, 2}, {14, 7, 2}} {
		if got := RoundUp(big.NewRat(c.num, c.den)); got != c.want {
			t.Errorf("%d/%d rounds up to %d; want %d", c.num, c.den, got, c.want)
		}
	}
}
