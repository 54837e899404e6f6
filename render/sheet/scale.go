package sheet

import "slatwright/specs/unit"

// shopScales returns the divisors of the scales in use, the largest picture
// first: for inches those of the shop's foot rules (full size, 6, 3, 1 1/2, 1,
// 3/4, 1/2 in to the foot and down), for millimetres those of ISO 5455, its
// intermediate steps included.
func shopScales(in Input) []int64 {
	if in.Rack.Format.System == unit.Imperial {
		return []int64{1, 2, 4, 8, 12, 16, 24, 32, 48, 96}
	}
	return []int64{1, 2, 5, 10, 20, 50, 100}
}

// nextScale returns the divisor after one: of those in use or, past the last of
// them, the next whole hundred.
func nextScale(in Input, den int64) int64 {
	for _, d := range shopScales(in) {
		if d > den {
			return d
		}
	}
	return den/100*100 + 100
}

// leastScale is a divisor that no picture of a rack needs.
const leastScale = 1_000_000

// largestScale returns the divisor of the largest scale at which what is to be
// drawn fits. It panics where none does, as there is no room at all then.
func largestScale(in Input, fits func(den int64) bool) int64 {
	den := int64(1)
	for !fits(den) {
		if den = nextScale(in, den); den > leastScale {
			panic("sheet: no room for a picture")
		}
	}
	return den
}

// smallestScale returns the divisor of the smallest scale in use at which what is
// drawn still has the size it must; 1 where none has.
func smallestScale(in Input, enough func(den int64) bool) int64 {
	den := int64(1)
	for _, d := range shopScales(in) {
		if enough(d) {
			den = d
		}
	}
	return den
}
