package design_test

import "testing"

// What is in percent may be less than one of it where the sign says so, and
// nought as it stands.
func TestSmallShares(t *testing.T) {
	for _, c := range []struct {
		value string
		want  int64
	}{
		{`"0.3 %"`, 30}, {`"0.3%"`, 30}, {`0`, 0}, {`0.00`, 0}, {`1`, 100}, {`"30 %"`, 3000},
	} {
		d := read(t, "[price]\nmarkup = "+c.value+"\n")
		if got, ok := d.Price.Item("markup"); !ok || got.Hundredths != c.want {
			t.Errorf("%s: %+v; want %d hundredths of a percent", c.value, got, c.want)
		}
	}
	d := read(t, "[price]\nnails = 0.30\nlabour = 0.5\n")
	if got, ok := d.Price.Item("nails"); !ok || got.Hundredths != 30 {
		t.Errorf("an amount under one: %+v", got)
	}
}
