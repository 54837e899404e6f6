package check_test

import (
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
)

// The base needs legs of 421.5 or so, and its rise is 100: legs of 522 hold one
// row more, of 521 none.
func TestEmptyHeightIsTold(t *testing.T) {
	for _, c := range []struct {
		legs         string
		status       check.Status
		says, change string
	}{
		{"length = 422", check.OK, "free above what the highest row needs, under one more rise of 100 mm", ""},
		{"length = 521", check.OK, "under one more rise", ""},
		{"length = 522", check.Caution, ": 1 more row would fit, at 100 mm each", "state 4 rows, rack.rows (line 4), or less height, leg.length (line 16)"},
		{"length = 722", check.Caution, ": 3 more rows would fit", "state 6 rows"},
	} {
		f := find(t, check.All(build(t, "length = 422", c.legs)), "space.empty")
		if f.Status != c.status || !strings.Contains(f.Says, c.says) || !strings.Contains(f.Change, c.change) || (c.change == "") != (f.Change == "") {
			t.Errorf("%s: %+v", c.legs, f)
		}
	}
}

// The rows that the check promises do fit, and one more than them does not.
func TestEmptyHeightHoldsTheRows(t *testing.T) {
	const text = "[rack]\ncolumns = 3\nrows = ROWS\nheight = 40\n[bottles]\nfit = [\"claret-750\"]\n"
	with := func(rows string) string { return strings.Replace(text, "ROWS", rows, 1) }
	for _, c := range []struct{ rows, says string }{
		{"1", ": 8 more rows would fit"}, {"4", ": 5 more rows would fit"}, {"8", ": 1 more row would fit"},
	} {
		f := find(t, check.All(racktest.Build(t, with(c.rows))), "space.empty")
		if f.Status != check.Caution || !strings.Contains(f.Says, c.says) {
			t.Errorf("%s rows: %+v; want %s", c.rows, f, c.says)
		}
	}
	r := racktest.Build(t, with(`"most"`))
	if f := find(t, check.All(r), "space.empty"); f.Status != check.OK || r.Counts.Rows != 9 {
		t.Errorf("%d rows at most: %+v", r.Counts.Rows, f)
	}
	for _, f := range check.All(racktest.Build(t, strings.Replace(with("4"), "height = 40\n", "", 1))) {
		if f.Name == "space.empty" {
			t.Errorf("no height is stated: %+v", f)
		}
	}
}

// Columns that differ are looked at one by one.
func TestEmptyHeightByColumn(t *testing.T) {
	r := racktest.Build(t, "[rack]\ncolumns = 2\nrows = \"most\"\nheight = 40\n[bottles]\nfit = [\"claret-750\"]\n[[column]]\nrows = 3\nfit = [\"magnum-1500\"]\n")
	list := check.All(r)
	if f := at(t, list, "space.empty", "column 1"); f.Status != check.Caution || !strings.Contains(f.Change, "column.1.rows (line 8)") {
		t.Errorf("the short column: %+v", f)
	}
	if f := at(t, list, "space.empty", "column 2"); f.Status != check.OK {
		t.Errorf("the full column: %+v", f)
	}
}
