package unit_test

import (
	"math/big"
	"testing"

	"slatwright/specs/unit"
)

func TestArea(t *testing.T) {
	const in, mm = unit.Inch, unit.Millimetre
	big1 := unit.Rectangle(100*unit.Foot, 100*unit.Foot) // its square overflows 64 bits
	for _, c := range []struct {
		name     string
		got      unit.Area
		in, mmmm string
	}{
		{"nothing", unit.Area{}, "0.0 sq ft", "0.00 m²"},
		{"a square foot", unit.Rectangle(12*in, 12*in), "1.0 sq ft", "≈0.09 m²"},
		{"an inch", unit.Rectangle(in, in), "≈0.0 sq ft", "≈0.00 m²"},
		{"half a tenth rounds up", unit.Rectangle(12*in, 3*in/5), "≈0.1 sq ft", "≈0.00 m²"},
		{"a metre", unit.Rectangle(1000*mm, 1000*mm), "≈10.8 sq ft", "1.00 m²"},
		{"a sign does not count", unit.Rectangle(-12*in, 12*in), "1.0 sq ft", "≈0.09 m²"},
		{"large", big1.Times(3), "30000.0 sq ft", "≈2787.09 m²"},
		{"less", big1.Minus(big1.Times(2)), "-10000.0 sq ft", "≈-929.03 m²"},
	} {
		if got := (unit.Format{}).Area(c.got); got != c.in {
			t.Errorf("%s: %q; want %q", c.name, got, c.in)
		}
		if got := (unit.Format{System: unit.Metric}).Area(c.got); got != c.mmmm {
			t.Errorf("%s: %q; want %q", c.name, got, c.mmmm)
		}
	}
	if got := unit.SquareMetre.Over(unit.SquareInch); got.Cmp(big.NewRat(100_000_000, 64_516)) != 0 { // 1 in is 25.4 mm
		t.Errorf("a square metre is %v square inches", got)
	}
	if unit.SquareFoot.Cmp(unit.SquareMetre) != -1 || unit.SquareFoot.Plus(unit.SquareFoot).Cmp(unit.SquareFoot.Times(2)) != 0 {
		t.Error("areas do not add up or compare")
	}
}
