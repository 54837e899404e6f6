package revision_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
	"slatwright/geometry/revision"
)

const plain = "[rack]\ncolumns = 3\nrows = 4\n[bottles]\nfit = [\"claret-750\"]\n"

func moves(p revision.Parts) []string {
	out := []string{}
	for _, m := range p.Moves {
		text := fmt.Sprintf("%d %s", m.Count, m.Use)
		if m.Old != nil {
			text += " from " + m.Old.Name
		}
		if m.New != nil {
			text += " for " + m.New.Name
		}
		for _, c := range m.Cuts {
			text += ", " + string(c)
		}
		if m.Old != nil && m.Old.Measured {
			text += ", as measured"
		}
		out = append(out, text)
	}
	return out
}

func TestCompareParts(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		want           []string
	}{
		{"the same", plain, plain, []string{"24 serves from slat for slat", "8 serves from leg for leg", "4 serves from apron for apron", "1 serves from top for top"}},
		// By hand: a column more is a ladder more, two legs and eight slats; a wider
		// carcase needs other aprons and another top, and nothing old is long enough;
		// the old aprons can each
		// become a slat, the top, which is glued up, cannot.
		{"a column more", plain, strings.Replace(plain, "3", "4", 1), []string{
			"24 serves from slat for slat", "4 recut from apron for slat, width, length", "4 make for slat",
			"8 serves from leg for leg", "2 make for leg", "4 make for apron", "1 make for top", "1 left over from top",
		}},
		// A row less: the slats of three rows serve, legs are cut shorter.
		{"a row less", plain, strings.Replace(plain, "rows = 4", "rows = 3", 1), []string{
			"18 serves from slat for slat", "8 recut from leg for leg, length", "4 serves from apron for apron", "1 serves from top for top", "6 left over from slat",
		}},
		// A greater lift of the slats in legs that stay as long: the same legs, marked out anew.
		{"slats higher up", plain + "[slat]\nfirst = 3\n[leg]\nlength = 24\n", plain + "[slat]\nfirst = \"3 1/2\"\n[leg]\nlength = 24\n", []string{
			"24 serves from slat for slat", "8 mark out from leg for leg", "4 serves from apron for apron", "1 serves from top for top",
		}},
		// Spares count on both sides.
		{"spares", plain + "[shop]\nspares.slat = 2\n", plain, []string{
			"24 serves from slat for slat", "8 serves from leg for leg", "4 serves from apron for apron", "1 serves from top for top", "2 left over from slat",
		}},
		// Slats of 9 1/2 in are shorter than the shop rips, so none becomes lower; the
		// old legs are too short for the new ones, but make slats.
		{"lower slats", plain, plain + "[slat]\nheight = \"7/8\"\n[leg]\nlength = 24\n[cell]\nrise = 4\n", []string{
			"8 recut from leg for slat, width, length", "16 make for slat", "8 make for leg", "4 serves from apron for apron", "1 serves from top for top", "24 left over from slat",
		}},
		// Aprons and top were waiting for a cell to be measured: none is cut yet.
		{"measured", plain + "[measured]\ncell.channel = \"later\"\n", plain + "[measured]\ncell.channel = \"3 23/32\"\n", []string{
			"24 serves from slat for slat", "8 serves from leg for leg", "4 make for apron", "1 make for top",
		}},
		// The stock that slats and legs were cut from was measured: they are as thin.
		// Aprons were cut to a carcase that is now shorter, and the top with them.
		{"stock measured", plain, plain + "[measured]\nslat.thickness = \"23/32\"\nleg.thickness = \"23/32\"\n", []string{
			"24 serves from slat for slat, as measured", "8 serves from leg for leg, as measured", "4 recut from apron for apron, length", "1 recut from top for top, length",
		}},
		// Measured before and measured again: then it is other stock, and slats are too
		// short to be planed.
		{"other stock", plain + "[measured]\nslat.thickness = \"3/4\"\n", plain + "[measured]\nslat.thickness = \"23/32\"\n", []string{
			"24 make for slat", "8 serves from leg for leg", "4 recut from apron for apron, length", "1 recut from top for top, length", "24 left over from slat",
		}},
		{"other wood", plain, plain + "[wood]\nspecies = \"radiata_pine\"\n", []string{
			"24 make for slat", "8 make for leg", "4 make for apron", "1 make for top",
			"24 left over from slat", "8 left over from leg", "4 left over from apron", "1 left over from top",
		}},
	} {
		got := moves(revision.CompareParts(racktest.Build(t, c.old), racktest.Build(t, c.new)))
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

// The left end's front leg is the right end's back leg turned about: a rack has
// two kinds of leg at its ends and two inside, not four and two for each place.
func TestTurnedPiecesAreAlike(t *testing.T) {
	legs := map[string]int{}
	for _, l := range revision.Lots(racktest.Build(t, plain)) {
		switch l.Name {
		case "leg":
			legs[l.Seats] += l.Count
		case "slat":
			if l.Count != 24 {
				t.Errorf("%d slats are alike; want all 24", l.Count)
			}
		}
	}
	counts := map[int]int{}
	for _, n := range legs {
		counts[n]++
	}
	if counts[2] != 2 || counts[4] != 1 || len(counts) != 2 {
		t.Errorf("legs alike: %v; want twice 2 at the ends and once 4 inside", counts)
	}
}

func TestStatementsCountsLengths(t *testing.T) {
	old, new := racktest.Build(t, plain+"[top]\npresent = true\n"), racktest.Build(t, "# moved down\n"+strings.Replace(plain, "rows = 4", "rows  =  5", 1)+"[top]\npresent = false\n[leg]\nthickness = \"3/4\"\n")
	var got []string
	for _, s := range revision.Statements(old.Design, new.Design) {
		switch {
		case s.Old == nil:
			got = append(got, "+ "+s.New.Name)
		case s.New == nil:
			got = append(got, "- "+s.Old.Name)
		default:
			got = append(got, s.New.Name+" "+s.Old.Value+" "+s.New.Value)
		}
	}
	for _, c := range revision.Counts(old, new) {
		got = append(got, fmt.Sprintf("%s %d %d", c.Name, c.Old, c.New))
	}
	for _, l := range revision.Lengths(old, new) {
		if l.Name == "top.length" || l.Name == "leg.thickness" || l.Name == "rack.height" {
			got = append(got, fmt.Sprintf("%s %t %t", l.Name, l.Old != nil, l.New != nil))
		}
	}
	want := []string{
		"rack.rows 4 5", "top.present true false", "+ leg.thickness",
		"rows 4 5", "bottles 12 15", "slats 24 30", "rack.height true true", "top.length true false",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestChecks(t *testing.T) {
	f := func(name, where string, s check.Status) check.Finding {
		return check.Finding{Name: name, Where: where, Status: s}
	}
	old := []check.Finding{f("fit.rest", "columns 1-3", check.OK), f("fit.side", "columns 1-3", check.OK), f("default.kept", "leg.width", check.Caution)}
	new := []check.Finding{f("fit.rest", "columns 1-4", check.Fail), f("fit.side", "columns 1-4", check.OK), f("site.raise", "rack", check.OK), f("default.kept", "slat.height", check.Caution)}
	var got []string
	for _, c := range revision.Checks(old, new) {
		text := ""
		for _, x := range []*check.Finding{c.Old, c.New} {
			if x == nil {
				text += "- "
				continue
			}
			text += x.Name + " " + x.Where + " " + string(x.Status) + "; "
		}
		got = append(got, text)
	}
	want := []string{"fit.rest columns 1-3 ok; fit.rest columns 1-4 fail; ", "- default.kept slat.height caution; ", "default.kept leg.width caution; - "}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A rack compared with itself changes nothing, whatever it is.
func TestNothingChanges(t *testing.T) {
	r := racktest.Build(t, "[rack]\nwidth = \"<= 40\"\nrows = 3\n[[column]]\ncount = 1\nfit = [\"magnum-1500\"]\nrows = 2\n[[column]]\nfit = [\"claret-750\"]\n")
	if n := len(revision.Statements(r.Design, r.Design)) + len(revision.Counts(r, r)) + len(revision.Lengths(r, r)) + len(revision.Checks(check.All(r), check.All(r))); n != 0 {
		t.Errorf("%d changes of a rack against itself", n)
	}
	for _, m := range revision.CompareParts(r, r).Moves {
		if m.Use != revision.Serves {
			t.Errorf("%d %s: %s; want all to serve", m.Count, m.New.Name, m.Use)
		}
	}
}
