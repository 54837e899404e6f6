package check_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"slatwright/geometry/check"
	"slatwright/geometry/rack/racktest"
)

// Whatever nails a design states, the advice is a nail that serves when it is
// taken, at either end of its range, or says that none does and what else to
// change; then that change makes room for one.
func TestNailAdviceServes(t *testing.T) {
	take := regexp.MustCompile(`take a joint\.slat_nail \(line \d+\) of (?:(\d+) ga, )?(\d+) mm at most, (\d+) mm at least`)
	change := regexp.MustCompile(`(leg|slat)\.thickness \(line \d+\) (\d+) mm or (more|less)`)
	took, other, none := 0, 0, 0
	for _, slat := range []int{15, 20, 30} {
		for _, leg := range []int{5, 7, 9, 12, 20, 35} {
			for _, gauge := range []int{15, 18, 23} {
				for _, long := range []int{12, 25, 38, 60} {
					name := fmt.Sprintf("slat %d leg %d, %d ga x %d", slat, leg, gauge, long)
					f := slatNail(t, slat, leg, gauge, long)
					if f.Status == check.OK {
						continue
					}
					if m := take.FindStringSubmatch(f.Change); m != nil {
						took++
						if m[1] != "" {
							other++
							fmt.Sscan(m[1], &gauge)
						}
						for _, text := range m[2:] {
							var l int
							fmt.Sscan(text, &l)
							if g := slatNail(t, slat, leg, gauge, l); g.Status != check.OK {
								t.Errorf("%s: %q, but %d ga x %d is %s: %s", name, f.Change, gauge, l, g.Status, g.Says)
							}
						}
						continue
					}
					if strings.Contains(f.Change, "is usually sold") {
						continue
					}
					none++
					m := change.FindStringSubmatch(f.Change)
					if m == nil || !strings.Contains(f.Change, "no nail serves here") {
						t.Errorf("%s: %q", name, f.Change)
						continue
					}
					thick, behind := slat, leg
					if m[1] == "leg" {
						fmt.Sscan(m[2], &behind)
					} else {
						fmt.Sscan(m[2], &thick)
					}
					g := slatNail(t, thick, behind, gauge, long)
					if again := change.FindStringSubmatch(g.Change); again != nil && again[1] == m[1] {
						t.Errorf("%s: %q, and then %q", name, f.Change, g.Change)
					}
				}
			}
		}
	}
	if took == 0 || other == 0 || none == 0 {
		t.Errorf("%d told of a nail, %d of another gauge, %d of none: the table leaves something out", took, other, none)
	}
}

func slatNail(t *testing.T, slat, leg, gauge, long int) check.Finding {
	t.Helper()
	text := fmt.Sprintf("units = \"mm\"\n[rack]\ncolumns = 2\nrows = 2\n[slat]\nthickness = %d\n[leg]\nthickness = %d\n[joint]\nslat_nail = \"%d ga x %d\"\n", slat, leg, gauge, long)
	return at(t, check.All(racktest.Build(t, text)), "joint.nail", "slat")
}

// A top that no line says is nailed has no nail to judge; one that is nailed
// says to which aprons.
func TestTopNailWhereStated(t *testing.T) {
	for _, c := range []struct{ joint, want string }{
		{"", ""}, {"top = \"glued\"\n", ""},
		{"top_nail = \"18 ga x 1 1/2\"\n", "top on the front upper apron"},
		{"top = \"glued\"\ntop_nail = \"18 ga x 1 1/2\"\n", "top on the upper aprons"},
	} {
		got := ""
		for _, f := range inches(t, "rows = 3", "[joint]\n"+c.joint) {
			if f.Name == "joint.nail" && strings.HasPrefix(f.Where, "top") {
				got = f.Where
			}
		}
		if got != c.want {
			t.Errorf("%q: a finding on %q; want %q", c.joint, got, c.want)
		}
	}
}

// Anchors are what stand.anchor asks for.
func TestAnchorsAsTheCheckSays(t *testing.T) {
	for _, rows := range []string{"rows = 3", "rows = \"most\"\nheight = \"<= 40\"", "rows = \"most\"\nheight = \"<= 62\""} {
		r := racktest.Build(t, "units = \"in\"\n[rack]\ncolumns = 4\n"+rows+"\n")
		f := at(t, check.All(r), "stand.anchor", "rack")
		n, each := check.Anchors(r)
		if (n > 0) != (f.Status == check.Caution) || n > 0 && !strings.Contains(f.Says, "at two places, each to bear "+each) {
			t.Errorf("%s: %d anchors of %q; the check says %s", rows, n, each, f.Says)
		}
	}
}
