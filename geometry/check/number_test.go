package check_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/golden"
	"slatwright/specs/design"
)

// thinApron is a rack whose aprons are as thick as a nail's head is set deep, or
// hardly thicker.
func thinApron(t *testing.T, inches, glue string) *rack.Rack {
	return racktest.Build(t, fmt.Sprintf("units = \"in\"\ngrid = \"1/32 in\"\n[rack]\ncolumns = 2\nrows = 2\n[bottles]\nfit = [\"claret-750\"]\n"+
		"[apron]\nthickness = %q\n[joint]\nglue = %s\napron_nail = \"18 ga x 1\"\n", inches, glue))
}

// A nail whose head leaves nothing of its part holds nothing, and the findings
// say so.
func TestNothingUnderTheHead(t *testing.T) {
	for _, c := range []struct {
		inches string
		want   check.Status
	}{{"1/32", check.Caution}, {"1/16", check.Caution}, {"3/32", check.OK}} {
		found := false
		for _, f := range check.All(thinApron(t, c.inches, "false")) {
			if f.Name != "joint.nail" || f.Where != "apron on leg" {
				continue
			}
			found = true
			if f.Status != c.want || strings.Contains(f.Says, "nothing is left under the head") != (c.want == check.Caution) {
				t.Errorf("apron of %s: %s, %s", c.inches, f.Status, f.Says)
			}
		}
		if !found {
			t.Errorf("apron of %s: its nails are not judged", c.inches)
		}
	}
}

// Figures and limits of all findings are finite decimals: the report writes them
// as numbers of JSON, which knows no others.
func TestFiguresAreNumbers(t *testing.T) {
	racks := map[string]*rack.Rack{}
	for _, inches := range []string{"1/32", "1/16", "3/32"} {
		racks["apron "+inches] = thinApron(t, inches, "false")
		racks["glued apron "+inches] = thinApron(t, inches, "true")
	}
	paths, _ := filepath.Glob(filepath.Join(golden.Root(t), "testdata", "designs", "*.toml"))
	for _, path := range paths {
		d, err := design.Load(path)
		if err != nil {
			t.Fatal(err)
		}
		if racks[path], err = rack.Build(d); err != nil {
			t.Fatal(err)
		}
	}
	for name, r := range racks {
		for _, f := range check.All(r) {
			for _, text := range []string{f.Figure, f.Limit} {
				if v, err := strconv.ParseFloat(text, 64); text != "" && (err != nil || math.IsNaN(v) || math.IsInf(v, 0)) {
					t.Errorf("%s: %s, %s: %q is no number", name, f.Name, f.Where, text)
				}
			}
			if strings.Contains(f.Says, "NaN") || strings.Contains(f.Says, "Inf") {
				t.Errorf("%s: %s says %s", name, f.Name, f.Says)
			}
		}
	}
}
