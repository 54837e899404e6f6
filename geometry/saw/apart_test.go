package saw

import (
	"fmt"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
)

// Plans put side by side hold every part, cost the sum, and set the saw once for
// each setting; each step counts what its boards give.
func TestJoined(t *testing.T) {
	const board = "[top]\npresent = false\n[[board]]\nnominal = \"1x3\"\nlength = \"8 ft\"\nprice = 5\n"
	var racks []*rack.Rack
	for i := range 3 {
		racks = append(racks, racktest.Build(t, fmt.Sprintf("order = \"R-%d\"\n[rack]\ncolumns = %d\nrows = %d\n", i, 1+i, 2)+board))
	}
	orders := named(racks)
	p, err := plan(orders, Quick)
	if err != nil {
		t.Fatal(err)
	}
	var alone []*Plan
	var cost int64
	pieces := map[cutting.Operation]int{}
	for i := range orders {
		one, err := plan(orders[i:i+1], Quick)
		if err != nil || !p.offers(one) {
			t.Fatal(err)
		}
		alone = append(alone, one)
		cost += one.Cost
		for _, s := range one.Steps {
			pieces[s.Operation] += s.Count
		}
	}
	got := p.joined(alone)
	if got.Cost != cost || got.Bound != p.Bound || got.Proven != (got.Cost == got.Bound) {
		t.Errorf("cost %d, bound %d, proven %v; want %d, %d", got.Cost, got.Bound, got.Proven, cost, p.Bound)
	}
	seen := map[string]bool{}
	for _, s := range got.Steps {
		key := fmt.Sprint(s.Operation, s.Setting)
		if seen[key] {
			t.Errorf("%s is set twice", key)
		}
		seen[key] = true
		pieces[s.Operation] -= s.Count
		for _, b := range s.Boards {
			if b < 0 || b >= len(got.Boards) {
				t.Errorf("%s: board %d of %d", key, b, len(got.Boards))
			}
		}
	}
	for op, n := range pieces {
		if n != 0 {
			t.Errorf("%s: %d pieces are lost", op, n)
		}
	}
	p.Plan = got
	parts := map[string]int{}
	for _, x := range p.Sequence() {
		if x.Step < 0 {
			t.Errorf("%s %s is never finished", x.Order, x.Mark)
		}
		parts[x.Order+x.Mark]++
	}
	for _, x := range p.Job.Parts {
		if parts[x.Order+x.Mark] != x.Count+x.Spares {
			t.Errorf("%s %s: %d, want %d", x.Order, x.Mark, parts[x.Order+x.Mark], x.Count+x.Spares)
		}
	}
}

// Orders cut together never cost more than each by itself, however little the
// search may try.
func TestTogetherIsNeverDearer(t *testing.T) {
	var racks []*rack.Rack
	for i := range 6 {
		racks = append(racks, racktest.Build(t, fmt.Sprintf("order = \"R-%d\"\n[rack]\ncolumns = %d\nrows = %d\n[top]\npresent = false\n"+
			"[[board]]\nnominal = \"1x6\"\nlength = \"8 ft\"\nprice = 9\n", i, 1+i%3, 1+i%4)))
	}
	p, err := Make(racks, 1)
	if err != nil {
		t.Fatal(err)
	}
	if p.Apart == 0 || p.Cost > p.Apart || p.Bound > p.Cost {
		t.Errorf("together %d, apart %d, bound %d", p.Cost, p.Apart, p.Bound)
	}
}
