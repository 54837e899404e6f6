package rack_test

import (
	"testing"

	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
)

func TestPlaces(t *testing.T) {
	for _, c := range []struct {
		numbers []int
		want    string
	}{
		{[]int{2}, "ladder 2"},
		{[]int{3, 4}, "ladders 3 and 4"},
		{[]int{2, 3, 4}, "ladders 2 to 4"},
		{[]int{2, 5, 6, 7, 8, 11}, "ladders 2, 5 to 8 and 11"},
	} {
		if got := rack.Places("ladder", c.numbers); got != c.want {
			t.Errorf("%v: %q, want %q", c.numbers, got, c.want)
		}
	}
}

// Every ladder stands at one place, that of its shape.
func TestLaddersOf(t *testing.T) {
	r := racktest.Build(t, "[[column]]\ncount = 2\nrows = 3\n[[column]]\ncount = 3\nrows = 4\n")
	n := 0
	for i, s := range r.Shapes {
		places := r.LaddersOf(i)
		if len(places) != s.Count {
			t.Errorf("%s: %v, want %d", s.Name, places, s.Count)
		}
		for _, k := range places {
			if n++; r.Ladders[k-1].Shape != i {
				t.Errorf("ladder %d is of shape %d, not %d", k, r.Ladders[k-1].Shape, i)
			}
		}
	}
	if n != len(r.Ladders) {
		t.Errorf("%d places for %d ladders", n, len(r.Ladders))
	}
}
