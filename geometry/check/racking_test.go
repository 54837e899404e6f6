package check_test

import (
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
)

// A caution about sway says which of its three limits was passed, and gives the
// figure and the limit of that one.
func TestSwaySaysWhatIsAmiss(t *testing.T) {
	for _, c := range []struct {
		name, text, unit, says string
		over                   bool // the figure is over its limit, not under it
	}{
		{"nails without a hold", "units = \"in\"\n[rack]\ncolumns = 2\nrows = 2\n[bottles]\nfit = [\"claret-750\"]\n[apron]\nthickness = \"1/16\"\n[joint]\nglue = false\napron_nail = \"18 ga x 1\"\n",
			"ratio", "too little for its weight", false},
		{"tall and nailed", "units = \"in\"\n[joint]\nglue = false\n[rack]\ncolumns = 2\nrows = 10\n[bottles]\nfit = [\"claret-750\"]\n",
			"mm", "goes over by more than a hundredth of its height", true},
		{"one tall column, glued", "units = \"in\"\n[rack]\ncolumns = 1\nrows = 14\n[bottles]\nfit = [\"claret-750\"]\n",
			"ratio", "that push twists each glued crossing", true},
	} {
		f := at(t, check.All(racktest.Build(t, c.text)), "stand.rack", "rack")
		figure, err1 := strconv.ParseFloat(f.Figure, 64)
		limit, err2 := strconv.ParseFloat(f.Limit, 64)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if f.Status != check.Caution || f.Unit != c.unit || !strings.Contains(f.Says, c.says) || figure > limit != c.over {
			t.Errorf("%s: %s, %s %s of %s, %s", c.name, f.Status, f.Figure, f.Unit, f.Limit, f.Says)
		}
	}
}
