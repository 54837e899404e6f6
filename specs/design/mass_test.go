package design_test

import (
	"testing"

	"slatwright/specs/design"
)

// Masses are rounded to the gram, within limits that are allowed themselves.
// 1 lb is 453.59237 g, 1 oz 28.349523125 g.
func TestMass(t *testing.T) {
	for _, c := range []struct {
		text string
		want int64 // g
	}{
		{`"100 kg"`, 100_000}, {`"1 g"`, 1}, {`"1.5 g"`, 2}, {`1300`, 1300}, {`"1.3 kg"`, 1300}, {`"3 lb"`, 1361}, {`"46 oz"`, 1304},
	} {
		d, err := design.Read("test.toml", []byte("[bottles]\nfit = [\"mine\"]\n[bottle.mine]\ndiameter = \"75 mm\"\nmass = "+c.text+"\n"))
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if got := d.Bottles[0].Kind.Mass.Nominal; got != c.want {
			t.Errorf("%s is %d g; want %d", c.text, got, c.want)
		}
	}
}
