package check_test

import (
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
	"slatwright/specs/unit"
)

// Each demo design passes its checks, except for the one made to fail.
func TestDemoDesigns(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(golden.Root(t), "testdata", "designs", "*.toml"))
	if err != nil || len(paths) < 6 {
		t.Fatalf("%d demo designs, %v; want at least 6", len(paths), err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			d, err := design.Load(path)
			if err != nil {
				t.Fatal(err)
			}
			r, err := rack.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			list := check.All(r)
			want := filepath.Base(path) == "counter-wide-gap.toml"
			if got := check.Worst(list) == check.Fail; got != want {
				t.Errorf("a check fails: %v; want %v", got, want)
			}
		})
	}
}

// base is a metric rack all of whose lengths are stated, so that the checks
// judge it whatever they find.
const base = `units = "mm"
[rack]
columns = 3
rows = 3
[cell]
gap = 57
rise = 100
[slat]
thickness = 20
height = 25
length = 240
first = 60
[leg]
thickness = 20
width = 45
length = 422
[apron]
thickness = 20
height = 65
lift = 0
[top]
thickness = 20
[overhang]
side = 20
front = 12
back = 0
[bottles]
fit = ["claret-750"]
[site]
ceiling = 2300
doorway = 800
`

// build solves base with one text in it exchanged for another.
func build(t *testing.T, old, new string) *rack.Rack {
	t.Helper()
	if !strings.Contains(base, old) {
		t.Fatalf("the base does not say %q", old)
	}
	return racktest.Build(t, strings.Replace(base, old, new, 1))
}

// find returns the finding of the check.
func find(t *testing.T, list []check.Finding, name string) check.Finding {
	t.Helper()
	for _, f := range list {
		if f.Name == name {
			return f
		}
	}
	t.Fatalf("no finding of %s", name)
	return check.Finding{}
}

// Each check passes on the base and fails on a design in which one figure was
// changed, and only for what that figure spoils.
func TestEachCheckCanFail(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		want           check.Status
	}{
		{"fit.rest", "gap = 57", "gap = 57", check.OK},
		{"fit.rest", "gap = 57", "gap = 64", check.Caution},
		{"fit.rest", "gap = 57", "gap = 70", check.Fail},
		{"fit.rest", "gap = 57", "gap = 39", check.Fail},
		{"fit.side", "thickness = 20\nheight = 25", "thickness = 14\nheight = 25", check.Fail}, // channel 85, 2.5 each side
		{"fit.above", "rise = 100", "rise = 88", check.Fail},
		{"fit.lower_apron", "first = 60", "first = 50", check.Fail},
		{"fit.upper_apron", "length = 422", "length = 421", check.Fail},
		{"fit.depth", "length = 240", "length = 100", check.Fail},
		{"site.raise", "ceiling = 2300", "ceiling = 400", check.Fail},
		{"site.doorway", "doorway = 800", "doorway = 200", check.Fail},
		{"site.air", "doorway = 800", "width = 423", check.OK}, // the rack is 411 wide
		{"site.air", "doorway = 800", "width = \"422.99 mm\"", check.Caution},
		{"site.air", "doorway = 800", "height = 448", check.OK}, // and 442 high
		{"site.air", "doorway = 800", "height = 447", check.Caution},
		{"site.front", "doorway = 800", "depth = 400", check.OK},
		{"site.front", "doorway = 800", "depth = 300", check.Caution},
	} {
		if got := find(t, check.All(build(t, c.old, c.new)), c.name); got.Status != c.want {
			t.Errorf("%s with %s: %s, %s; want %s", c.name, c.new, got.Status, got.Says, c.want)
		}
	}
	for _, f := range check.All(build(t, "", "")) {
		if f.Status != check.OK {
			t.Errorf("the base: %s %s, %s", f.Name, f.Status, f.Says)
		}
	}
}

// The limit beside a gap is the one that it has passed, or may not pass.
func TestLimitsOfTheGap(t *testing.T) {
	for _, c := range []struct{ gap, limit string }{{"gap = 57", "0.9"}, {"gap = 64", "0.85"}, {"gap = 70", "0.9"}, {"gap = 39", "0.5"}} {
		if f := find(t, check.All(build(t, "gap = 57", c.gap)), "fit.rest"); f.Limit != c.limit {
			t.Errorf("%s: %s, %s of %s; want %s", c.gap, f.Status, f.Figure, f.Limit, c.limit)
		}
	}
}

// The figures, worked out here in floating point from the sizes of the base and
// of the bottle in the table: diameter 73 to 80 mm.
func TestFiguresByHand(t *testing.T) {
	list := check.All(build(t, "", ""))
	h := func(d float64) float64 { return math.Sqrt(d*d-57*57) / 2 }
	corner := math.Hypot(57.0/2, 100-25-h(80)) - 40
	for _, c := range []struct {
		name string
		want float64
	}{
		{"fit.rest", 57.0 / 73},
		{"fit.side", (97.0 - 80) / 2},
		{"fit.above", min(corner, 100-(40+h(80))+h(73)-36.5)},
		{"fit.lower_apron", 60 + 25 + h(73) - 36.5 - 65},
		{"fit.upper_apron", 422 - 65 - (60 + 200 + 25) - h(80) - 40},
		{"site.raise", math.Hypot(422+20, 240+40+12)},
		{"site.doorway", 240 + 40 + 12},
	} {
		got, err := strconv.ParseFloat(find(t, list, c.name).Figure, 64)
		if err != nil || math.Abs(got-c.want) > 0.0011 {
			t.Errorf("%s = %v, %v; want %.4f", c.name, got, err, c.want)
		}
	}
}

// A ceiling that equals the diagonal to the last unit is enough; one base unit
// less is not. 3-4-5 makes the diagonal whole.
func TestRaiseIsExact(t *testing.T) {
	const height = 300
	for _, c := range []struct {
		ceiling string
		want    check.Status
	}{{"500 mm", check.OK}, {"499.99 mm", check.Fail}} {
		r := build(t, "ceiling = 2300", `ceiling = "`+c.ceiling+`"`)
		for i := range r.Lengths {
			switch r.Lengths[i].Name {
			case "rack.height":
				r.Lengths[i].Value = height * unit.Millimetre
			case "rack.depth":
				r.Lengths[i].Value = 400 * unit.Millimetre
			}
		}
		if got := find(t, check.All(r), "site.raise"); got.Status != c.want {
			t.Errorf("ceiling %s: %s, %s; want %s", c.ceiling, got.Status, got.Says, c.want)
		}
	}
}

// A default that gives way to what is stated is told with both figures.
func TestDefaultGivesWay(t *testing.T) {
	d, err := design.Read("tight.toml", []byte("[rack]\ncolumns = 3\nrows = 2\nwidth = \"<= 14 1/2\"\n[cell]\ngap = \"2 3/16\"\n[bottles]\nfit = [\"claret-750\"]\n"))
	if err != nil {
		t.Fatal(err)
	}
	r, err := rack.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	f := find(t, check.All(r), "default.kept")
	if f.Status != check.Caution || !strings.Contains(f.Says, "gave way from its default") {
		t.Errorf("%+v", f)
	}
}
