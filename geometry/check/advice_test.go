package check_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
)

// at returns the finding of the check on the place.
func at(t *testing.T, list []check.Finding, name, where string) check.Finding {
	t.Helper()
	for _, f := range list {
		if f.Name == name && strings.HasPrefix(f.Where, where) {
			return f
		}
	}
	t.Fatalf("no finding of %s on %s", name, where)
	return check.Finding{}
}

// Each check of advice turns on a design in which one thing was changed, and
// then says what to change and where its limit is from.
func TestEachAdviceTurns(t *testing.T) {
	more := func(lines string) string { return lines + "\n[bottles]" }
	for _, c := range []struct {
		name, where, old, new string
		want                  check.Status
	}{
		{"joint.nail", "slat", "[bottles]", more("[joint]\nslat_nail = \"18 ga x 38\""), check.Caution},   // 0.4 left
		{"joint.nail", "slat", "[bottles]", more("[joint]\nslat_nail = \"18 ga x 40\""), check.Fail},      // comes out
		{"joint.nail", "slat", "[bottles]", more("[joint]\nslat_nail = \"18 ga x 25\""), check.Caution},   // 5.5 diameters
		{"joint.nail", "slat", "[bottles]", more("[joint]\nslat_nail = \"18 ga x 18\""), check.Fail},      // ends in the slat, even set
		{"joint.nail", "slat", "[bottles]", more("[joint]\nslat_nail = \"23 ga x 32\""), check.Caution},   // not sold so long
		{"joint.nail", "apron", "[bottles]", more("[joint]\napron_nail = \"15 ga x 61\""), check.Caution}, // 41 of 45 mm
		{"joint.nail", "top", "[bottles]", more("[joint]\ntop_nail = \"18 ga x 25\""), check.Caution},
		{"joint.nail", "nails near ends", "[leg]\nthickness = 20", "[leg]\nthickness = 10", check.Caution},
		{"load.slat", "columns", "thickness = 20\nheight = 25", "thickness = 4\nheight = 4", check.Fail},
		{"load.joint", "columns", "[leg]\nthickness = 20\nwidth = 45\nlength = 422", "[leg]\nthickness = 4\nwidth = 20\nlength = 1400", check.Caution},
		{"load.joint", "slat", "[bottles]", more("[joint]\nslat_nail = \"23 ga x 21\""), check.Caution}, // bears nothing
		{"load.joint", "apron", "[bottles]", more("[joint]\napron_nail = \"23 ga x 22\""), check.Caution},
		{"stand.tip", "rack, empty", "length = 422", "length = 1500", check.Caution},
		{"stand.anchor", "rack", "length = 422", "length = 1500", check.Caution},
		{"stand.rack", "rack", "length = 422", "length = 6000", check.Caution},
		{"wood.top", "top", "[bottles]", more("[joint]\ntop = \"glued\""), check.Caution},
		{"wood.top", "top", "[bottles]", more("[joint]\ntop = \"glued\"\n[wood]\nspecies = \"american_beech\"\nhumidity = \"20 .. 80 %\""), check.Fail},
		{"wood.top", "top", "[bottles]", more("[wood]\nspecies = \"american_beech\"\nhumidity = \"5 .. 95 %\""), check.Caution},
		{"wood.cross", "rack", "[bottles]", more("[wood]\nspecies = \"american_beech\"\nhumidity = \"20 .. 80 %\""), check.Caution},
		{"shop.tolerance", "columns", "[bottles]", more("[shop]\ntolerance = 4"), check.Caution},
		{"shop.saw", "rips", "thickness = 20\nheight = 25", "thickness = 20\nheight = 15", check.Caution},
		{"shop.saw", "rips", "thickness = 20\nheight = 25", "thickness = 5\nheight = 25", check.Caution},
		{"shop.saw", "rips", "[bottles]", more("[shop]\nmin_rip_length = 200"), check.Caution},
	} {
		f := at(t, check.All(build(t, c.old, c.new)), c.name, c.where)
		if f.Status != c.want || f.Change == "" || f.Source == "" {
			t.Errorf("%s on %s with %q: %s, %s, change %q, source %q; want %s", c.name, c.where, c.new, f.Status, f.Says, f.Change, f.Source, c.want)
		}
		if _, err := strconv.ParseFloat(f.Figure, 64); err != nil {
			t.Errorf("%s: figure %v", c.name, err)
		}
		if _, err := strconv.ParseFloat(f.Limit, 64); err != nil {
			t.Errorf("%s: limit %v", c.name, err)
		}
	}
}

// Rips that are too narrow, too thin and too short are all told, the first with
// its figure.
func TestAllThatIsAmissAtTheSaw(t *testing.T) {
	text := strings.Replace(base, "thickness = 20\nheight = 25", "thickness = 5\nheight = 15", 1)
	f := at(t, check.All(racktest.Build(t, strings.Replace(text, "[bottles]", "[shop]\nmin_rip_length = 200\n[bottles]", 1))), "shop.saw", "rips")
	for _, want := range []string{"slat is 5 mm thin", "blanks down to 200 mm"} {
		if !strings.Contains(f.Says, want) {
			t.Errorf("%q does not say %q", f.Says, want)
		}
	}
	for _, want := range []string{"make it wider: slat.height", "make it thicker: slat.thickness", "state shop.min_rip_length of 300 mm"} {
		if !strings.Contains(f.Change, want) {
			t.Errorf("%q does not advise %q", f.Change, want)
		}
	}
	if f.Status != check.Caution || f.Figure != "15" || f.Limit != "19.05" {
		t.Errorf("%s, %s of %s", f.Status, f.Figure, f.Limit)
	}
}

// Where the wood gets drier or moister than the equation of movement is meant
// for, what rests on it says so; 30 to 60 % humidity is 6.2 to 11 %.
func TestBeyondTheEquationOfMovement(t *testing.T) {
	for _, c := range []struct {
		wood string
		want bool
	}{
		{"humidity = \"30 .. 60 %\"", false}, {"humidity = \"20 .. 60 %\"", true}, {"humidity = \"30 .. 80 %\"", true},
		{"humidity = \"30 .. 60 %\"\nmoisture = \"15 %\"", true},
	} {
		for _, top := range []string{"glued", "slotted"} {
			list := check.All(racktest.Build(t, strings.Replace(base, "[bottles]", "[joint]\ntop = \""+top+"\"\n[wood]\n"+c.wood+"\n[bottles]", 1)))
			for _, f := range []check.Finding{find(t, list, "wood.top"), find(t, list, "wood.cross")} {
				if got := strings.Contains(f.Says, "beyond 6 to 14 %"); got != c.want {
					t.Errorf("%s, top %s: %s says %q", c.wood, top, f.Name, f.Says)
				}
			}
		}
	}
}

// inches is a rack of four columns and the rows, with what is added.
func inches(t *testing.T, rows, more string) []check.Finding {
	t.Helper()
	return check.All(racktest.Build(t, "units = \"in\"\n[rack]\ncolumns = 4\n"+rows+"\n"+more))
}

// A nail of 1 1/2 in through 3/4 on 3/4 comes out; one of 1 1/4 in does not, and
// what it goes in with its head set, and what is left, come to the leg's 3/4 in. The line of the nail is named.
func TestNailLength(t *testing.T) {
	long := at(t, inches(t, "rows = 3", "[joint]\nslat_nail = \"18 ga x 1 1/2\"\n"), "joint.nail", "slat")
	if long.Status != check.Fail || !strings.Contains(long.Says, "it comes out") || !strings.Contains(long.Change, "joint.slat_nail (line 6)") {
		t.Errorf("1 1/2 in: %+v", long)
	}
	good := at(t, inches(t, "rows = 3", "[joint]\nslat_nail = \"18 ga x 1 1/4\"\n"), "joint.nail", "slat")
	if good.Status != check.OK || good.Figure != "14.287" || !strings.Contains(good.Says, "set 1/16 in below the surface: 9/16 in into the leg, 11.8 diameters, least 6, 3/16 in left") ||
		!strings.Contains(good.Says, "bears 10 lbf sideways, 3.8 lbf pulled (by equations for thicker nails)") {
		t.Errorf("1 1/4 in: %+v", good)
	}
	other := at(t, inches(t, "rows = 3", "[joint]\nslat_nail = \"18 ga x 1 3/8\"\n"), "joint.nail", "slat")
	if other.Status != check.Caution || !strings.Contains(other.Change, "1 5/16 in at most") {
		t.Errorf("1 3/8 in: %+v", other)
	}
}

// A rack some 15 in high needs no anchor; one some 62 in high, of the same
// columns, does: with a push under 10 lbf, and the pull that anchors are to bear.
func TestLowAndTall(t *testing.T) {
	low, tall := inches(t, "rows = \"most\"\nheight = \"<= 15\"", ""), inches(t, "rows = \"most\"\nheight = \"<= 62\"", "")
	f := at(t, low, "stand.anchor", "rack")
	if f.Status != check.OK || !strings.Contains(f.Says, "needs no anchor") {
		t.Errorf("15 in: %+v", f)
	}
	for _, s := range []string{"rack, empty", "rack, full", "rack, only upper rows full"} {
		if g := at(t, low, "stand.tip", s); g.Status != check.OK {
			t.Errorf("15 in, %s: %+v", s, g)
		}
	}
	f = at(t, tall, "stand.anchor", "rack")
	if f.Status != check.Caution || !strings.Contains(f.Says, "anchor it near the top") || !strings.Contains(f.Says, "to bear 50 lbf") ||
		!strings.Contains(f.Change, "licensed practitioner") {
		t.Errorf("62 in: %+v", f)
	}
	if empty := at(t, tall, "stand.tip", "rack, empty"); empty.Status != check.Caution {
		t.Errorf("62 in, empty: %+v", empty)
	}
	if nails := at(t, inches(t, "rows = \"most\"\nheight = \"<= 62\"", "[joint]\nglue = false\n"), "stand.rack", "rack"); nails.Status != check.Caution ||
		!strings.Contains(nails.Change, "glue the crossings: joint.glue (line 7)") {
		t.Errorf("62 in, nailed only: %+v", nails)
	}
}

// A top of red oak, 13 in across, glued all round, moves by 13 x 0.00369 x 5.02
// = 0.241 in between 35 and 65 % humidity (6.94 and 11.96 % moisture) and fails;
// slotted it passes, with slots and the screw's place by today's moisture.
func TestOakTop(t *testing.T) {
	oak := "[overhang]\nback = 0\nfront = 2\n[wood]\nspecies = \"red_oak_commercial\"\nhumidity = \"35 .. 65 %\"\n"
	glued := at(t, inches(t, "rows = 3", oak+"[joint]\ntop = \"glued\"\n"), "wood.top", "top")
	got, err := strconv.ParseFloat(glued.Figure, 64)
	if glued.Status != check.Fail || err != nil || math.Abs(got-13*0.00369*5.02*25.4) > 0.02 || !strings.Contains(glued.Says, "over 13 in") ||
		!strings.Contains(glued.Change, `joint.top (line 12) = "slotted"`) {
		t.Errorf("glued: %+v", glued)
	}
	// From the middle of the front apron to that of the blocks, 1 1/2 in deep
	// behind an inside depth of 9 1/2 in: 9 1/8 in.
	dry := at(t, inches(t, "rows = 3", oak+"moisture = 7\n"), "wood.top", "top")
	moves := 9.125 * 0.00369 * 5.02 // in
	got, err = strconv.ParseFloat(dry.Figure, 64)
	if dry.Status != check.OK || err != nil || math.Abs(got-moves*25.4) > 0.02 {
		t.Errorf("slotted: %+v; want a figure of %.3f", dry, moves*25.4)
	}
	// The slot: 0.164 + 0.169 + 1/16 = 0.396, up to 7/16 in. At 7 % the wood is at
	// its driest, and the screw near the front end; at 12 % near the back.
	if !strings.Contains(dry.Says, "7/16 in long, the screw's middle 1/8 in from the front end at 7 % as today") {
		t.Errorf("dry: %s", dry.Says)
	}
	moist := at(t, inches(t, "rows = 3", oak+"moisture = 12\n"), "wood.top", "top")
	if !strings.Contains(moist.Says, "7/16 in long, the screw's middle 9/32 in from the front end at 12 % as today") {
		t.Errorf("moist: %s", moist.Says)
	}
	// Quarter-sawn boards move by the radial coefficient, 0.00158.
	quarter := at(t, inches(t, "rows = 3", oak+"sawn = \"quarter\"\n[joint]\ntop = \"glued\"\n"), "wood.top", "top")
	got, err = strconv.ParseFloat(quarter.Figure, 64)
	if err != nil || math.Abs(got-13*0.00158*5.02*25.4) > 0.02 || quarter.Status != check.Caution {
		t.Errorf("quarter-sawn: %+v", quarter)
	}
}

// A high wall of bottles is more than a floor at home is made for.
func TestFloor(t *testing.T) {
	f := at(t, inches(t, "rows = 20", ""), "site.floor", "rack")
	if f.Status != check.Caution || !strings.Contains(f.Change, "licensed practitioner") {
		t.Errorf("%+v", f)
	}
}

// A single column is narrower than deep, and tips sideways.
func TestNarrowTipsSideways(t *testing.T) {
	list := check.All(racktest.Build(t, "[rack]\ncolumns = 1\nrows = 12\n"))
	if f := at(t, list, "stand.tip", "rack, full"); !strings.Contains(f.Says, "tips sideways") {
		t.Errorf("%+v", f)
	}
}

// Checks of fit that do not hold name the lengths to change, and their lines.
func TestFitNamesWhatToChange(t *testing.T) {
	f := find(t, check.All(build(t, "gap = 57", "gap = 70")), "fit.rest")
	if !strings.Contains(f.Change, "cell.gap 65 mm (line 6)") || f.Source == "" {
		t.Errorf("%+v", f)
	}
}

// Without a top nothing is said of it.
func TestNoTop(t *testing.T) {
	for _, f := range inches(t, "rows = 3", "[top]\npresent = false\n") {
		if f.Name == "wood.top" || strings.HasPrefix(f.Where, "top") {
			t.Errorf("%+v", f)
		}
	}
}

// A gap that its bottles drop through is for the checks of fit to say: those of
// load and tolerance do not repeat it.
func TestWideGapIsSaidOnce(t *testing.T) {
	for _, f := range check.All(build(t, "gap = 57", "gap = 70")) {
		if f.Status != check.OK && (strings.HasPrefix(f.Name, "load.") || strings.HasPrefix(f.Name, "shop.")) {
			t.Errorf("%+v", f)
		}
	}
}
