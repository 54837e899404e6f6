package cutting_test

import (
	"fmt"

	"slatwright/geometry/cutting"
	"slatwright/specs/unit"
)

const (
	in  = unit.Inch
	in2 = unit.Inch / 2
	in4 = unit.Inch / 4
	in8 = unit.Inch / 8
	i16 = unit.Inch / 16
)

// A stream is a small generator of test data, the same on every machine.
type stream uint64

func (s *stream) below(n int) int {
	*s = *s*6364136223846793005 + 1442695040888963407
	return int(uint64(*s) >> 33 % uint64(n))
}

// shop is an ordinary saw.
var shop = cutting.Shop{Kerf: in8, EndTrim: in4, MinRipLength: 12 * in, ResawHeight: 6 * in, ResawAllowance: i16,
	JointAllowance: i16, GlueLength: in2, StaveGrid: i16, KeepOffcut: 12 * in}

// yard is what an invented yard sells: dressed sizes of softwood boards (PS 20
// minimum dressed), 6 to 12 ft, at invented prices.
func yard() []cutting.Board {
	var out []cutting.Board
	for _, b := range []struct {
		nominal string
		width   unit.Length
		cents   int64 // a foot
	}{
		{"1x2", 3 * in2, 62}, {"1x3", 5 * in2, 88}, {"1x4", 7 * in2, 117}, {"1x6", 11 * in2, 183}, {"1x8", 29 * in4, 251}, {"1x10", 37 * in4, 342},
	} {
		for _, feet := range []int64{6, 8, 10, 12} {
			out = append(out, cutting.Board{Nominal: b.nominal, Thickness: 3 * in4, Width: b.width, Length: unit.Length(feet) * unit.Foot,
				Price: b.cents*feet + 7*(12-feet)})
		}
	}
	return out
}

// rackParts is one invented order: a rack of c columns and r rows.
func rackParts(order string, c, r, variant int) []cutting.Part {
	v := unit.Length(variant)
	pitch := 39*in8 + v%7*i16
	rise := 4*in + v%5*in8
	width := unit.Length(c)*pitch + 3*in4
	depth := 9*in + v%11*in8
	return []cutting.Part{
		{Order: order, Mark: "A", Name: "slat", Thickness: 3 * in4, Width: in + v%2*in8, Length: depth, Count: 2 * c * r, Spares: 1},
		{Order: order, Mark: "B", Name: "leg", Thickness: 3 * in4, Width: 3 * in2, Length: unit.Length(r)*rise + 2*in, Count: 2 * (c + 1)},
		{Order: order, Mark: "C", Name: "apron", Thickness: 3 * in4, Width: 5 * in2, Length: width, Count: 4},
		{Order: order, Mark: "D", Name: "top", Thickness: 3 * in4, Width: depth + 2*in, Length: width + 3*in2, Count: 1},
	}
}

// batch is n invented orders of varied size, the same on every call.
func batch(n int) []cutting.Part {
	var out []cutting.Part
	s := stream(2024)
	for i := range n {
		out = append(out, rackParts(fmt.Sprintf("R-%03d", i+1), 2+s.below(4), 2+s.below(4), s.below(770))...)
	}
	return out
}
