package inspect_test

import (
	"math"
	"testing"

	"slatwright/geometry/inspect"
	"slatwright/geometry/rack"
	"slatwright/geometry/rack/racktest"
	"slatwright/specs/unit"
)

const (
	in = unit.Inch
	mm = unit.Millimetre
)

func find(t *testing.T, r *rack.Rack, name string) inspect.Dimension {
	t.Helper()
	for _, d := range inspect.Dimensions(r) {
		if d.Name == name {
			return d
		}
	}
	t.Fatalf("no dimension %s", name)
	return inspect.Dimension{}
}

// A gap of 60 mm for bottles of 76 to 80 mm by hand, in millimetres, with room
// to spare above and below. The channel goes with it: two slats of 20 more. At most
// 0.90 x 76 = 68.4. At least 0.50 x 80 = 40, but the channel of gap + 40 must be
// 80 + 2 x 3: 46.
func TestGapByHand(t *testing.T) {
	text := "units = \"mm\"\n[rack]\ncolumns = 2\nrows = 1\n[cell]\ngap = 60\n[slat]\nfirst = 120\n[leg]\nlength = 400\n[bottles]\nfit = [\"house\"]\n[bottle.house]\ndiameter = \"76 .. 80\"\nheight = 300\n"
	d := find(t, racktest.Build(t, text), "sideways gap")
	if d.Least != 46*mm || d.LeastBy != "fit.side" || d.Greatest != 684*mm/10 || d.GreatestBy != "fit.rest" || d.Count != 2*2 {
		t.Errorf("gap %+v", d)
	}
	d = find(t, racktest.Build(t, text), "channel")
	if d.Drawn != 100*mm || d.Least != 86*mm || d.LeastBy != "fit.side" || d.Greatest != 1084*mm/10 || d.Count != 2*2 {
		t.Errorf("channel %+v", d)
	}
}

// The opening between slats in floating point: the least rise for two bottles
// of one diameter is that diameter and the clearance, or what keeps the slats'
// lower corners clear.
func TestOpeningInFloatingPoint(t *testing.T) {
	text := "units = \"mm\"\n[rack]\ncolumns = 2\nrows = 3\n[cell]\ngap = 60\nrise = 100\n[leg]\nlength = 500\n[bottles]\nfit = [\"house\"]\n[bottle.house]\ndiameter = 80\nheight = 300\n"
	r := racktest.Build(t, text)
	d := find(t, r, "upright gap")
	top := r.Len("cell.top_clearance").MM()
	h := math.Sqrt(40*40 - 30*30)
	stacked := 80 + top
	cornered := 25 + h + math.Sqrt((40+top)*(40+top)-30*30)
	want := math.Ceil((math.Max(stacked, cornered)-25)*10-1e-9) / 10
	if d.Drawn != 75*mm || math.Abs(d.Least.MM()-want) > 1e-9 || d.LeastBy != "fit.above" {
		t.Errorf("between slats %+v; want at least %v mm", d, want)
	}
}

// On every demo design, the limits found by halving are those that a walk in
// single steps finds: the checks hold all the way to the edge and fail after it.
func TestLimitsByWalking(t *testing.T) {
	for f, r := range racktest.DemoRacks(t) {
		for _, w := range inspect.Walk(r) {
			if w.Got != w.Want {
				t.Errorf("%s: %s: limits %v .. %v; walking %v .. %v", f, w.Name, w.Got[0], w.Got[1], w.Want[0], w.Want[1])
			}
		}
	}
}

// A rack that fails has no limits to measure by, and says which check fails.
func TestFailingRackHasNoLimits(t *testing.T) {
	d := find(t, racktest.DemoRacks(t)["counter-wide-gap.toml"], "sideways gap")
	if d.Fails != "fit.rest" || d.Least != 0 || d.Greatest != 0 {
		t.Errorf("gap %+v", d)
	}
}

// What the room and the design state limits the sizes over all.
func TestOverall(t *testing.T) {
	text := "[site]\nwidth = [\"40 1/2\", \"40 1/4\"]\nfit = \"1/4\"\nheight = 60\n[rack]\ncolumns = 4\nrows = 5\nwidth = \"18 .. 39\"\n"
	r := racktest.Build(t, text)
	if d := find(t, r, "width over all"); d.Least != 18*in || d.Greatest != 39*in || d.GreatestBy != "rack.width" {
		t.Errorf("width %+v", d)
	}
	if d := find(t, r, "height over all"); d.Greatest != 60*in-in/4 || d.GreatestBy != "site.height" || d.Drawn != r.Len("rack.height") {
		t.Errorf("height %+v", d)
	}
	if d := find(t, r, "depth over all"); d.Greatest != 0 || d.Least != 0 {
		t.Errorf("depth %+v", d)
	}
}

func TestGauges(t *testing.T) {
	list := []inspect.Dimension{
		{Name: "sideways gap", Least: in, Greatest: 2 * in}, {Name: "channel", Least: 3 * in}, {Name: "inside depth", Least: in},
		{Name: "upright gap", Where: "column 2"}, {Name: "upright gap", Where: "column 3", Drawn: 3 * in, Least: 3 * in},
		{Name: "upright gap", Where: "column 4", Least: 4 * in, Greatest: 4 * in},
	}
	got := inspect.Gauges(list)
	if len(got) != 2 || got[0].Go != in || got[0].NoGo != 2*in || got[1].Where != "column 3" || got[1].Go != 3*in || got[1].NoGo != 0 {
		t.Errorf("gauges %+v", got)
	}
	if got := inspect.Ungauged(list); len(got) != 1 || got[0].Where != "column 4" {
		t.Errorf("without gauges %+v", got)
	}
}
