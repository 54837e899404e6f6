package check_test

import (
	"strings"
	"testing"

	"slatwright/geometry/check"
)

// The air is told with its figures; who has measured at three places is not told
// to do so again. The base is 411 wide, 442 high.
func TestAirIsTold(t *testing.T) {
	for _, c := range []struct {
		site, where, figure string
		status              check.Status
		says, change        string
	}{
		{"width = 414", "rack, width", "1.5", check.Caution, "1.5 mm of air on each side of the rack in a width of 414 mm, least 6 mm: walls are seldom square or plumb",
			"measure at three places, floor, middle and top, in front and behind, and list the figures: site.width (line 31); or keep air: site.fit"},
		{"width = [420, 414, 416]", "rack, width", "1.5", check.Caution, "this is the least of 3 places", "keep air: site.fit"},
		{"width = 414\nfit = 1", "rack, width", "1.5", check.Caution, "1.5 mm", "or keep air: site.fit (line 32)"},
		{"height = 442", "rack, height", "0", check.Caution, "0 mm of air above the rack in a height of 442 mm", "left, middle and right"},
		{"height = 500", "rack, height", "58", check.OK, "58 mm of air above", ""},
	} {
		f := at(t, check.All(build(t, "doorway = 800", c.site)), "site.air", c.where)
		if f.Status != c.status || f.Figure != c.figure || !strings.Contains(f.Says, c.says) || !strings.Contains(f.Change, c.change) {
			t.Errorf("%s: %+v", c.site, f)
		}
		if strings.Contains(c.site, "[") == strings.Contains(f.Change, "measure at") && f.Status != check.OK {
			t.Errorf("%s: change %q", c.site, f.Change)
		}
		if !strings.Contains(f.Source, "common practice") {
			t.Errorf("%s: source %q", c.site, f.Source)
		}
	}
	for _, f := range check.All(build(t, "", "")) {
		if f.Name == "site.air" || f.Name == "site.front" {
			t.Errorf("no size of the site is stated: %+v", f)
		}
	}
}

// A claret is 330 long at most, the carcase 280 deep, the top 12 more in front:
// in a site of 320 the bottle stands out by 10, and by 5 more with air kept at
// the wall.
func TestFrontIsTold(t *testing.T) {
	for _, c := range []struct {
		site, figure string
		status       check.Status
		says         string
	}{
		{"depth = 320", "330", check.Caution, "claret-750, at its longest, its base flush with the back, reaches 330 mm from the wall, in a depth of 320 mm: it stands out by 10 mm, 38 mm beyond the rack"},
		{"depth = 320\nfit = 5", "335", check.Caution, "it stands out by 15 mm, 38 mm beyond the rack"},
		{"depth = 330", "330", check.OK, "in a depth of 330 mm"},
		{"depth = \"329.99 mm\"", "330", check.Caution, "it stands out by"},
	} {
		f := at(t, check.All(build(t, "doorway = 800", c.site)), "site.front", "columns 1-3")
		if f.Status != c.status || f.Figure != c.figure || !strings.Contains(f.Says, c.says) {
			t.Errorf("%s: %+v", c.site, f)
		}
		if (f.Status == check.Caution) != strings.Contains(f.Change, "site.depth (line 31)") {
			t.Errorf("%s: change %q", c.site, f.Change)
		}
	}
}
