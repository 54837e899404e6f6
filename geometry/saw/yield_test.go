package saw_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slatwright/geometry/cutting"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/saw"
	"slatwright/specs/unit"
)

func TestCounted(t *testing.T) {
	for _, c := range []struct {
		all, spares int
		thing, want string
	}{
		{40, 0, "piece", "40 pieces"}, {1, 0, "piece", "1 piece"}, {41, 1, "piece", "40 pieces and 1 spare"},
		{41, 1, "", "40 and 1 spare"}, {6, 2, "", "4 and 2 spares"}, {1, 1, "piece", "1 spare"}, {40, 0, "", "40"},
	} {
		if got := saw.Counted(c.all, c.spares, c.thing); got != c.want {
			t.Errorf("%d with %d spares: %q, want %q", c.all, c.spares, got, c.want)
		}
	}
}

// What the steps say of a part adds up to what the rack takes, spares apart, and
// strips say what they become.
func TestStepsCountSpares(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 3\nrows = 4\n[shop]\nspares.slat = 3\nspares.leg = 1\n")
	p, err := saw.Make([]*rack.Rack{r}, saw.Quick)
	if err != nil {
		t.Fatal(err)
	}
	slat, _ := r.PartNamed("slat")
	var all, spares int
	for _, s := range p.Steps {
		head, marks, _ := strings.Cut(p.Yields(s), ": ")
		if marks, _, _ = strings.Cut(marks, ";"); marks != slat.Mark {
			continue
		}
		for _, counted := range strings.Split(head, " and ") {
			n, thing := 0, ""
			if _, err := fmt.Sscan(counted, &n, &thing); err != nil {
				t.Fatalf("%q: %v", head, err)
			}
			if all += n; strings.HasPrefix(thing, "spare") {
				spares += n
			}
		}
	}
	if all != slat.Count+3 || spares != 3 {
		t.Errorf("the steps count %d slats, %d of them spares, want %d and 3", all, spares, slat.Count+3)
	}
	told := slices.ContainsFunc(p.Steps, func(s cutting.Step) bool { return strings.HasSuffix(p.Yields(s), ", for slats A") })
	if !told {
		t.Error("no rip says that its strips are for slats A")
	}
}

// A bought piece has one end trimmed, leaves 6 in behind its last cut, and is never shorter than the 12
// in that can be ripped.
func TestBoughtPieceCanBeHeld(t *testing.T) {
	const in = unit.Inch
	for _, c := range []struct{ cuts, want unit.Length }{
		{2 * in, 12 * in}, {11 * in / 2, 12 * in}, {17 * in / 2, 15 * in}, {40 * in, 93 * in / 2},
	} {
		if got := saw.Bought(c.cuts, in/2); got != c.want {
			t.Errorf("%d: %d, want %d", c.cuts, got, c.want)
		}
	}
}
