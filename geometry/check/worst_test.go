package check_test

import (
	"fmt"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
)

// The nails of a slat bear one bottle, whatever lies above it: rows more of
// another column leave what they bear as it is. The heavy bottle of few rows
// peels its slats off, though the many light ones push harder all together.
func TestRowsDoNotEasePeeling(t *testing.T) {
	look := func(rows int) check.Finding {
		return at(t, check.All(racktest.Build(t, fmt.Sprintf("units = \"in\"\n[bottles]\nfit = [\"claret-750\"]\n[joint]\nglue = false\nslat_nail = \"18 ga x 1 7/8\"\n"+
			"[slat]\nthickness = \"1 1/2\"\nheight = \"3/4\"\n[[column]]\ncount = 3\nrows = %d\nfit = [\"claret-750\"]\n[[column]]\ncount = 2\nrows = 2\nfit = [\"jeroboam-3000\"]\n", rows))), "load.joint", "slat")
	}
	few, many := look(2), look(14)
	if few.Status != check.Caution || few.Figure != many.Figure || few.Says != many.Says {
		t.Errorf("2 rows: %s, %s; 14 rows: %s, %s; want the same caution", few.Figure, few.Says, many.Figure, many.Says)
	}
}

// The thick bottle peels: its own least diameter presses further out than its
// greatest, which is judged.
func TestThickBottlesPeelMost(t *testing.T) {
	look := func(diameter string) check.Finding {
		text := strings.Replace(base, "thickness = 20\nheight = 25", "thickness = 25\nheight = 20", 1)
		text = strings.Replace(text, "first = 60", "first = 70", 1)
		text = strings.Replace(text, "claret-750\"]", "mine\"]\n[bottle.mine]\nmass = \"9 kg\"\ndiameter = \""+diameter+"\"", 1)
		return at(t, check.All(racktest.Build(t, text)), "load.joint", "slat")
	}
	if thick, both := look("78 mm"), look("66 .. 78 mm"); thick.Figure != both.Figure {
		t.Errorf("%s, with thinner ones besides %s", thick.Figure, both.Figure)
	}
}

// A thin bottle pushes its slats apart most, a heavy one brings them nearest to
// breaking: neither hides behind the other.
func TestSlatsUnderTwoBottles(t *testing.T) {
	look := func(fit string) check.Finding {
		text := strings.Replace(base, "[\"claret-750\"]", fit+"\n[bottle.thin]\ndiameter = 65\nmass = \"18 kg\"\n[bottle.thick]\ndiameter = 80\nmass = \"30 kg\"", 1)
		return at(t, check.All(racktest.Build(t, text)), "load.slat", "columns")
	}
	strength := func(f check.Finding) string {
		_, tail, ok := strings.Cut(f.Says, "they are at ")
		if !ok {
			t.Fatal(f.Says)
		}
		return tail[:strings.Index(tail, " %")]
	}
	thin, thick, both := look(`["thin"]`), look(`["thick"]`), look(`["thin", "thick"]`)
	if strength(both) != strength(thick) || strength(thin) == strength(thick) {
		t.Errorf("at %s %% of their strength, with the thick one alone %s, the thin one %s", strength(both), strength(thick), strength(thin))
	}
	if both.Figure != thin.Figure || thin.Figure == thick.Figure {
		t.Errorf("the gap widens by %s, with the thin one alone %s, the thick one %s", both.Figure, thin.Figure, thick.Figure)
	}
}
